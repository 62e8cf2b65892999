"""Which words a leaflet is made of, and the one change that turns an unknown word into a known one."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from importlib import resources
from itertools import pairwise

from lastlook.leaflet.trade.vocabulary import vocabulary

LOOK_ALIKE = (
    ("m", "rn"),
    ("rn", "m"),
    ("0", "o"),
    ("1", "l"),
    ("1", "i"),
    ("l", "i"),
    ("i", "l"),
    ("5", "s"),
    ("|", "l"),
    ("cl", "d"),
    ("vv", "w"),
    ("ii", "n"),
    ("li", "h"),
    ("8", "s"),
    ("I", "l"),
    ("b", "h"),
)
"""What an eye or an engine takes for another: what it saw, what was printed."""
SHORTEST_PART = 2
MOST_TRIED = 40
LONGEST = 40


@cache
def known() -> frozenset[str]:
    """Return the words of the trade and the plain ones that leaflets use, in lower case."""
    trade = vocabulary()
    plain = resources.files("lastlook.leaflet.repairs").joinpath("words.txt").read_text(encoding="utf-8")
    listed = {word for line in plain.splitlines() if not line.startswith("#") for word in line.split()}
    return frozenset({*trade.words, *trade.numbers, *trade.ordinals, *trade.noise, *trade.fused, *listed})


def understands(core: str) -> bool:
    """Whether a word stands in the list, whole or part by part where hyphens or strokes join it."""
    low = core.lower().replace("’", "'").removesuffix("'s")
    if low in known() or not any(sign.isalpha() for sign in low):
        return True
    for joint in "-—–/.,":
        if joint in low:
            return all(understands(part) for part in low.split(joint) if part)
    return False


def confused(core: str) -> str | None:
    """Return the one known word that differs from this one by signs that look alike, None where none or several do."""
    if not 2 <= len(core) <= LONGEST:
        return None
    few = len(core) < 3 and core.isalpha()
    found = sorted(made for made in _changed(core) if made.lower() in known() and not (few and len(made) <= len(core)))
    return found[-1] if len({made.lower() for made in found}) == 1 else None


def allowed(core: str, may_be: Sequence[str]) -> str | None:
    """Return the known word that the picture allows too; `may_be` holds each sign's other letters, likeliest first."""
    first = (core[:spot] + other + core[spot + 1 :] for spot, others in enumerate(may_be) for other in others)
    made = list(dict.fromkeys(first))[:MOST_TRIED]
    for word in made:
        if is_known(word):
            return word
    for word in made:
        twice = (word[:spot] + other + word[spot + 1 :] for spot, others in enumerate(may_be) for other in others)
        found = next((one for one in twice if len(one) > 3 and is_known(one)), None)
        if found:
            return found
    return None


def is_known(word: str) -> bool:
    """Whether a word stands in the list as it is, a stop or comma behind it apart."""
    return len(word) > 1 and word.rstrip(",.;:").lower() in known()


def _changed(core: str) -> set[str]:
    out = set()
    for saw, printed in LOOK_ALIKE:
        spot = core.find(saw)
        while spot >= 0:
            out.add(core[:spot] + printed + core[spot + len(saw) :])
            spot = core.find(saw, spot + 1)
        out.add(core.replace(saw, printed))
    return out - {core}


def split(core: str) -> str | None:
    """Return the word cut into the fewest known ones, None where it can't be or where two ways are as good.

    >>> split("knitacross")
    'knit across'
    """
    low = core.lower()
    if not 4 <= len(low) <= LONGEST:
        return None
    ways: list[list[list[int]]] = [[[]]]
    for stop in range(1, len(low) + 1):
        here = [
            [*way, stop]
            for start in range(stop)
            if _is_part(low[start:stop])
            for way in ways[start]
            if start == 0 or way
        ]
        fewest = min((len(way) for way in here), default=0)
        ways.append([way for way in here if len(way) == fewest][:4])
    whole = [way for way in ways[-1] if len(way) > 1]
    if len(whole) != 1 or len(whole[0]) > 4:
        return None
    cuts = [0, *whole[0]]
    return " ".join(core[start:stop] for start, stop in pairwise(cuts))


def _is_part(low: str) -> bool:
    return low == "a" or (len(low) >= SHORTEST_PART and low in known() and low not in _NEVER_PARTS)


_NEVER_PARTS = frozenset(
    {
        "st",
        "ea",
        "sl",
        "ch",
        "sc",
        "dc",
        "tr",
        "ss",
        "mm",
        "cm",
        "pl",
        "alt",
        "inc",
        "pat",
        "rem",
        "rep",
        "nos",
        "ins",
        "lp",
    }
)
"""Abbreviations that also end or begin plain words; a word is not cut at them."""
