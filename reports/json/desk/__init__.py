"""What is answered to an act, for machines."""
