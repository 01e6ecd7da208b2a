"""Who and what there is, for machines."""
