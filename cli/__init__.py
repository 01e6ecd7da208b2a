"""The command `pottle`: words in, one call to the book, words out.

Guarantees: help loads neither the store nor the papers. Refuses: rules and sums; they live in
`ledger`.
"""
