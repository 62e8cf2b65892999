"""Stitches, runs of them with their repeats, and crochet."""
