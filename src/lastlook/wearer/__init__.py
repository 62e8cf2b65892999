"""A body, by its measurements."""
