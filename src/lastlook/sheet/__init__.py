"""Anything printed, as values first, then bytes."""
