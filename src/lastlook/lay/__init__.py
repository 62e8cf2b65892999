"""Paper pieces on a cloth."""
