"""Rows: their labels, their stitches, and how they come again."""
