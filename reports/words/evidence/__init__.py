"""What was verified or proved, in words."""
