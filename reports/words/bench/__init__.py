"""What is done to a batch, in words: the sheet and what to draw."""
