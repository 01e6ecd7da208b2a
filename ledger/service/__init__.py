"""The verbs of the book: each checks, orders, hashes and stores one entry or reads some."""
