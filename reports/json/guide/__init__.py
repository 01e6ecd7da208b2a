"""The guide, for machines."""
