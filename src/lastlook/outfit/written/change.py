"""One change of an outfit's document: a fact of `outfit.toml` set or taken away; the rest stays to the letter.

A *fact* is named by a dotted path, `knitting.pullover.size`. A part of the path that is itself not a plain
word is the last one: everything after `readings.` or `corrections.` is one key.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable
from typing import Any

import tomlkit

from lastlook.finding import Edit
from lastlook.outfit.written.document import MAIN, Document

WHOLE_KEYS = ("readings", "corrections")
"""Tables whose keys are sentences: the rest of the path is one key."""
TAKEN_AWAY = ""
"""A fact that is set to nothing is taken away."""


def change(folder: Document, edits: Iterable[Edit]) -> Document:
    """Return the document with the edits made, in order."""
    main = tomlkit.parse(folder.text(MAIN) or "")
    for edit in edits:
        _set(main, path_of(edit.fact), edit.value)
    return folder.with_file(MAIN, tomlkit.dumps(main).encode("utf-8"))


def path_of(fact: str) -> list[str]:
    """Return the keys of a fact's path.

    >>> path_of("knitting.pullover.readings.sleeves: dec 1 st. at each end")
    ['knitting', 'pullover', 'readings', 'sleeves: dec 1 st. at each end']
    """
    parts = fact.split(".")
    for place, part in enumerate(parts):
        if part in WHOLE_KEYS:
            return [*parts[: place + 1], ".".join(parts[place + 1 :])]
    return parts


def _set(main: Any, path: list[str], value: object) -> None:
    """Walk to the fact, making tables on the way; a number in the path counts entries of a list from 0."""
    spot = main
    for key, after in itertools.pairwise(path):
        if isinstance(spot, list):
            spot = spot[int(key)]
            continue
        if key not in spot:
            spot[key] = tomlkit.aot() if after == "+" else tomlkit.table()
        spot = spot[key]
    _put(spot, path[-1], value)


def _put(spot: Any, key: str, value: object) -> None:
    if key == "+":
        spot.append(tomlkit.item(dict(value) if isinstance(value, tuple) else value))
    elif isinstance(spot, list):
        spot[int(key)] = value
    elif value == TAKEN_AWAY:
        spot.pop(key, None)
    else:
        spot[key] = value
