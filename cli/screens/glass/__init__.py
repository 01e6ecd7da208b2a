"""Screens: what a glass delivers."""
