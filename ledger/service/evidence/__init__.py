"""Trust: corrections, verification, seals, proofs."""
