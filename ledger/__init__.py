"""The book: entries, rules, sums, storage and the verbs of the trade; prints nothing."""
