"""Screens: the sheet of a batch."""
