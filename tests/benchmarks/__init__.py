"""Benchmarks, run on demand: ratios of what Pottle does to the bare work, in one run.

Each is a module: ``python -m tests.benchmarks.NAME``. None is a test; their figures stand in
RESULTS.md here.
"""
