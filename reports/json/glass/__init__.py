"""What a glass delivers and costs, for machines."""
