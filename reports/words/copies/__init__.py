"""The book as a whole, in words."""
