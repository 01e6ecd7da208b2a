"""The form of the book: tables, columns, guards, and the book made by them."""
