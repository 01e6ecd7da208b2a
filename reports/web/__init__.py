"""Pages for a browser; they know nothing of paper."""
