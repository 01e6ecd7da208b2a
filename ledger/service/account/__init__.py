"""What a lot is, for the rules and for everybody: contents, dates, state."""
