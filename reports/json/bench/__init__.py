"""The bench for machines."""
