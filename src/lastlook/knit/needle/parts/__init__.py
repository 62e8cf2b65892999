"""Edges, parts and other pieces: which edge is meant, what divides, what waits, what is copied, how a piece ends."""
