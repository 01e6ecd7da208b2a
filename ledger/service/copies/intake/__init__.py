"""Taking tables in: the rows of a maker's own spreadsheets as entries."""
