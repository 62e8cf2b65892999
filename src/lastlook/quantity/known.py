"""What is not known, as a value: `Missing` was never given, `Unread` was given but can't be understood.

Neither is ever zero, None or NaN, and each says the shortest way to a figure.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Missing:
    """A fact that nobody has given yet."""

    what: str
    """The fact, as a noun: 'upper arm girth'."""
    find_out: str
    """The shortest way to it, as a sentence: 'Measure round the fullest part of the arm.'"""


@dataclass(frozen=True)
class Unread:
    """Something typed that can't be taken as what was asked for."""

    text: str
    why: str
    """One sentence that stands alone and names the text."""
    attempt: str
    """What to type instead, as a sentence."""
