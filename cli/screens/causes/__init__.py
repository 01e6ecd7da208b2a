"""Screens: why it failed."""
