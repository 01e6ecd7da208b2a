"""What stands in the way of a lot's leaving."""
