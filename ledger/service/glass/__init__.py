"""What a glass delivers and costs, and the spirit account."""
