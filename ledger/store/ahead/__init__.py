"""What acts will ask of the book, foretold, so that a server is asked all of it at once."""
