"""What a batch that follows a formula is compared with."""
