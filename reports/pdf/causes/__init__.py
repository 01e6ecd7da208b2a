"""A trial on paper."""
