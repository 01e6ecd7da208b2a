"""What a glass delivers and the spirit account, on paper."""
