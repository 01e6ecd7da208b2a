"""Screens: who and what there is."""
