"""Screens: copies and the demonstration."""
