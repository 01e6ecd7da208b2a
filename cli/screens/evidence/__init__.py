"""Screens: seals and proofs."""
