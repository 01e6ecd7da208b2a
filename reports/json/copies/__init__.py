"""The book as a whole, for machines."""
