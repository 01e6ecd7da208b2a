"""A recall for machines."""
