"""What a glass delivers and costs, in words."""
