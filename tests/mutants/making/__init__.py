"""Making mutants: the places of the source, and what is written there instead."""
