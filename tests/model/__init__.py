"""A second model of what is in the jars, and random books that the book is held to it by."""
