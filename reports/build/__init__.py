"""View models built from what the book says: words are chosen here, layout elsewhere.

Guarantees: the same words on screen and paper. Refuses: to read the book by itself.
"""
