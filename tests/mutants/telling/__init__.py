"""Telling what became of mutants, by area and kind."""
