"""What README, DEVELOPERS.md, the guide, the man page and lists of law claim, held by tests."""
