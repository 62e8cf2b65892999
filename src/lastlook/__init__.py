"""Last Look: does it add up, will it fit, is there enough?

Read `ARCHITECTURE.md` for the map; start with `outfit/verdict.py`.
"""

__version__ = "0.1.0"
