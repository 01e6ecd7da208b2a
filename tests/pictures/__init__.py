"""The pictures of the papers: drawn anew, and compared with those that were looked at."""
