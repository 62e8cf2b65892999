"""A reading worked row by row, and a shape written down as rows."""
