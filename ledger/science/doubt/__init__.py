"""Doubt: what a figure may be off by, and whether it is below or above a limit for all that."""
