"""Causes and trials, for machines."""
