"""The one way rows get into the book."""
