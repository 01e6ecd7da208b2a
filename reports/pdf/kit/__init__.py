"""What every paper shares: page, type, marks, rows."""
