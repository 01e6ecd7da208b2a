"""Fuzzing: every reader of text from outside, led by coverage. ``python -m tests.fuzz``."""
