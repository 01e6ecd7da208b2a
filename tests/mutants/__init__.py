"""Mutants: small faults put into the source on purpose. ``python -m tests.mutants``."""
