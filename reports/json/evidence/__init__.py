"""Trust, for machines."""
