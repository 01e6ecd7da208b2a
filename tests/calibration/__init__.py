"""Calibrating the forecast on published statements: what is read, and what is kept of it."""
