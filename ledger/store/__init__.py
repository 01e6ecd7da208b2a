"""The only place that knows how the book is stored."""
