"""Names of things as sentences use them."""

from __future__ import annotations


def title(name: str) -> str:
    """Return a garment's or a lot's name as a sentence begins with it.

    >>> title("bottle-green")
    'Bottle green'
    """
    return name[:1].upper() + name[1:].replace("-", " ").replace("_", " ")
