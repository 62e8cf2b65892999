"""Alterations in plain text: a table with a kind, a piece, and amounts in mm, as the outfit's document keeps them.

Amounts may also be written as a maker writes a length: `by = "2 cm"` in place of `by_mm = 20`.
"""

from __future__ import annotations

import json
import shlex
from collections.abc import Mapping
from dataclasses import MISSING, fields
from typing import Any

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.alter.allowance import Allowance
from lastlook.paper.alter.alteration import Alteration
from lastlook.paper.alter.dart import DartAdd, DartJoin, DartLength, DartMove, DartRemove, DartSplit, DartWidth
from lastlook.paper.alter.flare import Flare
from lastlook.paper.alter.fold import Refold, Unfold
from lastlook.paper.alter.length import Lengthen
from lastlook.paper.alter.spread import Spread
from lastlook.paper.alter.waist_edge import FullAbdomen, FullSeat, HighHip, RaiseWaist, SwayBack, TiltWaist
from lastlook.paper.alter.width import BandLength, Widen
from lastlook.quantity import Unread, read_length

ALTERATIONS: Mapping[str, Any] = {
    "lengthen": Lengthen,
    "widen": Widen,
    "band-length": BandLength,
    "flare": Flare,
    "spread": Spread,
    "raise-waist": RaiseWaist,
    "tilt-waist": TiltWaist,
    "sway-back": SwayBack,
    "full-seat": FullSeat,
    "full-abdomen": FullAbdomen,
    "high-hip": HighHip,
    "unfold": Unfold,
    "refold": Refold,
    "allowance": Allowance,
    "dart-width": DartWidth,
    "dart-length": DartLength,
    "dart-move": DartMove,
    "dart-split": DartSplit,
    "dart-join": DartJoin,
    "dart-remove": DartRemove,
    "dart-add": DartAdd,
}
OPPOSITES = {
    "shorten": "lengthen", "narrow": "widen", "drop-waist": "raise-waist", "close": "spread",
}  # fmt: skip
"""Words for the same alteration the other way round."""
FURTHEST_MM = 5000.0


def write_alteration(alteration: Alteration) -> dict[str, Any]:
    """Return an alteration as a table; what stands at its default is left out."""
    kind = next(name for name, made in ALTERATIONS.items() if type(alteration) is made)
    out: dict[str, Any] = {"kind": kind}
    for field in fields(ALTERATIONS[kind]):
        value = getattr(alteration, field.name)
        if value is not None and (field.name == "piece" or value != field.default):
            out[field.name] = _plain(value)
    return out


def _plain(value: Any) -> Any:
    return [_plain(one) for one in value] if isinstance(value, tuple) else value


def read_alteration(table: Mapping[str, Any], fact: str | None = None) -> Alteration | Finding:
    """Return the alteration that a table says, or what in it can't be read; `fact` is where the table stands."""
    word = str(table.get("kind", ""))
    kind = OPPOSITES.get(word, word)
    made = ALTERATIONS.get(kind)
    if made is None:
        kinds = ", ".join([*ALTERATIONS, *OPPOSITES])
        return _unread(f"There is no alteration called “{word}”.", f"The kinds are {kinds}.", "Name one of them.", fact)
    known = {field.name: field for field in fields(made)}
    values: dict[str, Any] = {}
    for key, value in table.items():
        if key == "kind":
            continue
        name = key if key in known else f"{key}_mm"
        if name not in known:
            return _unread(f"{kind} knows no “{key}”.", f"It has {', '.join(known)}.", "Leave it out.", fact)
        read = _value(name, value)
        if isinstance(read, Unread):
            return _unread(read.why, f"It stands at {key} of {kind}.", read.attempt, fact)
        values[name] = read
    lacking = [name for name, field in known.items() if field.default is MISSING and name not in values]
    if lacking:
        words = ", ".join(lacking)
        return _unread(f"{kind} does not say its {words}.", "Without it nothing can be altered.", f"Add {words}.", fact)
    if word in OPPOSITES and "by_mm" in values:
        values["by_mm"] = -values["by_mm"]
    alteration: Alteration = made(**values)
    return alteration


def read_words(text: str) -> Alteration | Finding:
    """Return the alteration that a line says, as in `widen piece=Front by=8mm at=waist`."""
    try:
        word, *rest = shlex.split(text)
    except ValueError:
        word, rest = "", []
    table: dict[str, Any] = {"kind": word}
    for one in rest:
        key, equals, value = one.partition("=")
        if not equals:
            return _unread(
                f"“{one}” says nothing of “{word}”.", "Every word after the kind is key=value.", "Write by=8mm.", None
            )
        table[key] = _typed(key, value)
    return read_alteration(table)


def _typed(key: str, value: str) -> Any:
    """Return a written value as the document would hold it: a number of a dart, a switch, a place, or words."""
    if key == "dart" and value.isdigit():
        return int(value)
    if key == "on" and value in ("true", "false"):
        return value == "true"
    if value.startswith("["):
        try:
            return json.loads(value)
        except ValueError:
            return value
    return value


def _value(name: str, value: Any) -> Any:
    if name == "on":
        return (
            value
            if isinstance(value, bool)
            else Unread(str(value), f"“{value}” is neither true nor false.", "Write on = false to switch it off.")
        )
    if name == "dart":
        good = isinstance(value, int) and not isinstance(value, bool)
        return (
            value
            if good
            else Unread(str(value), f"“{value}” is no number of a dart.", "Count darts from the centre: 1, 2.")
        )
    if name.endswith("_mm"):
        return _length(value)
    if name in ("hinge", "opens", "first", "second", "point", "slants_deg"):
        return _pair(value)
    if name == "places":
        return _pairs(value)
    return value if isinstance(value, str) else Unread(str(value), f"“{value}” is no name.", "Write a name.")


def _pairs(value: Any) -> tuple[tuple[float, float], ...] | Unread:
    pairs = [_pair(one) for one in value] if isinstance(value, list | tuple) else []
    good = tuple(one for one in pairs if not isinstance(one, Unread))
    if len(good) == len(pairs) and len(good) in (0, 8):
        return good
    return Unread(str(value), "A split is written with eight places.", "Leave them out for an even split.")


def _length(value: Any) -> float | Unread:
    if isinstance(value, str):
        text = value.strip()
        read = read_length(text.removeprefix("-").strip())
        if isinstance(read, Unread):
            return read
        number = -read if text.startswith("-") else read
    elif isinstance(value, int | float) and not isinstance(value, bool):
        number = float(value)
    else:
        return Unread(str(value), f"“{value}” is no length.", 'Write millimetres, or a length such as "2 cm".')
    if not abs(number) <= FURTHEST_MM:
        return Unread(str(value), f"“{value}” is more than any skirt changes by.", "Look at its unit again.")
    return number


def _pair(value: Any) -> tuple[float, float] | Unread:
    if isinstance(value, list | tuple) and len(value) == 2:
        both = [_length(one) for one in value]
        if isinstance(both[0], float) and isinstance(both[1], float):
            return (both[0], both[1])
    return Unread(str(value), f"“{value}” is no place on the paper.", "Write two numbers in mm, as in [120.0, -40.0].")


def _unread(say: str, why: str, attempt: str, fact: str | None) -> Finding:
    return Finding("alteration-unread", Certainty.PROVEN, say, why, attempt, where=Where(fact=fact))
