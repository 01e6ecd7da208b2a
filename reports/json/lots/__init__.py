"""Lots for machines."""
