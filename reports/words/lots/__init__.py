"""Lots in words: a record, a trace, dates, what is due."""
