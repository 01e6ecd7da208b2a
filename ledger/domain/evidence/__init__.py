"""Trust: the Merkle tree over the entries, seals and proofs."""
