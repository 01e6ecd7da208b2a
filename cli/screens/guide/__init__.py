"""Screens: pages of the guide."""
