"""Screens: looking lots up."""
