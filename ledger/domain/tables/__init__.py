"""Tables that a maker hands in: their cells, numbers, days and rows, before they are entries."""
