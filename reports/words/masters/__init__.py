"""Who and what there is, in words."""
