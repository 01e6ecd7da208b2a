"""A recall in words and in its tables."""
