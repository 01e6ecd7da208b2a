"""Trying mutants: which tests run a line, and whether one of them fails."""
