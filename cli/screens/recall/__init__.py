"""Screens: getting it back."""
