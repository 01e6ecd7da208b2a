"""What is known beforehand: formulas, limits, and the text of their files."""
