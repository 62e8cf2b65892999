"""Longer proofs and timings than the tests can hold; `python -m benchmarks` runs the quick table."""
