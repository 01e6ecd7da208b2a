"""The record and the trace of a lot on paper."""
