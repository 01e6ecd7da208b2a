"""Amounts: units, numbers as makers write them, exact quantities of liquid, solid and things."""
