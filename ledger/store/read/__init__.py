"""Reading the book: every question that is asked of its rows."""
