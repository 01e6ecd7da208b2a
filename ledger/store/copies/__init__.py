"""The book as lines of text or as a copied file, and taken in again."""
