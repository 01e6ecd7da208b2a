"""Each kind of entry in words."""
