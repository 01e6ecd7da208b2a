"""What a lot is at a moment, and what moves when something is done to it."""
