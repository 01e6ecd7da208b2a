"""Pure rules and data of the book: standard library only, no clock, no files, no SQL."""
