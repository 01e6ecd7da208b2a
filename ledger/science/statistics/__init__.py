"""What is behind failed lots, and what a trial tells."""
