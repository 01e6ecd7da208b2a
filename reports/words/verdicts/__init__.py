"""May it leave, in words."""
