"""Pages of goods for a browser."""
