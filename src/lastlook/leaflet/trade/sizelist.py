"""Figures that differ from size to size, as one value: `34 (36-38)`, `32 [34, 36]`, `90 (96, 102); 108, 114`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lastlook.leaflet.trade.lexeme import Lexeme

OPEN, CLOSE = frozenset({"("}), frozenset({")"})
BETWEEN = frozenset({",", "-", "--", "/", ";", "and", "inchmark", "inch", "in", "st", "cm", "or"})


@dataclass(frozen=True)
class Figure:
    """One number for all sizes, or one for each."""

    values: tuple[float, ...]

    def at(self, size: int) -> float:
        """Return the number for a size, counted from 0; a list that is too short gives its last."""
        if len(self.values) == 1:
            return self.values[0]
        return self.values[min(size, len(self.values) - 1)]

    def whole(self, size: int) -> int:
        """Return the number for a size as a count."""
        return round(self.at(size))

    def fits(self, sizes: int) -> bool:
        """Whether there is one value for all or one for each of the sizes."""
        return len(self.values) in (1, sizes)


def write_values(values: Sequence[float]) -> str:
    """Return numbers in the canonical text: '<34|36|38>'."""
    return "<" + "|".join(f"{value:.6g}" for value in values) + ">"


def read_values(canonical: str) -> Figure:
    """Return the figure that a canonical number stands for.

    >>> read_values("<34|36>").values
    (34.0, 36.0)
    """
    return Figure(tuple(float(part) for part in canonical.strip("<>").split("|")))


UNITS = frozenset({"st", "inch", "in", "row", "rnd", "x", "cm", ".", "inchmark"})


def united_sizes(stream: list[Lexeme], sizes: int) -> list[Lexeme]:
    """Close up `cast on 72 sts. (80 sts.)`: the unit stands again in the bracket of each further size."""
    if sizes < 2:
        return stream
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        found = _united(stream, spot, out, sizes)
        if found is None:
            out.append(stream[spot])
            spot += 1
            continue
        at, values, last, spot = found
        out[at] = replace(out[at], canon=write_values(values), figures=values)
        out[-1] = replace(out[-1], end=last)
    return out


BEGINS = frozenset({"cast", "pick", "bind", "co", "pu", "bo", "picked"})


def _united(
    stream: list[Lexeme], spot: int, out: list[Lexeme], sizes: int
) -> tuple[int, tuple[float, ...], int, int] | None:
    if stream[spot].canon not in OPEN:
        return None
    at = next((back for back in range(len(out) - 1, max(-1, len(out) - 4), -1) if out[back].figures), None)
    if at is None or at + 1 >= len(out) or out[at + 1].canon not in ("st", "inch", "in"):
        return None
    if len(out[at].figures) != 1 or not any(one.canon in BEGINS for one in out[max(0, at - 16) : at]):
        return None
    values = list(out[at].figures)
    for place in range(spot + 1, min(len(stream), spot + 2 + 4 * sizes)):
        one = stream[place]
        if one.figures and len(one.figures) == 1:
            values.append(one.figures[0])
        elif one.canon in CLOSE:
            with_unit = any(part.canon == out[at + 1].canon for part in stream[spot:place])
            return (at, tuple(values), one.end, place + 1) if with_unit and len(values) == sizes else None
        elif one.canon not in (out[at + 1].canon, ".", ",", "-", "and"):
            return None
    return None


def labelled_sizes(stream: list[Lexeme]) -> list[Lexeme]:
    """Close up `66 sts. (Size 4--72 sts.) (Size 6--78 sts.)`: each further size in a bracket of its own."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        more, stop, last = _labelled_values(stream, spot)
        at = next((back for back in range(len(out) - 1, max(-1, len(out) - 4), -1) if out[back].figures), None)
        if more and at is not None and all(one.canon in UNITS for one in out[at + 1 :]):
            values = (*out[at].figures, *more)
            out[at] = replace(out[at], canon=write_values(values), figures=values)
            if len(out) > at + 1:
                out[-1] = replace(out[-1], end=last)
            out = out[: at + 1] + [one for one in out[at + 1 :] if one.canon != "."]
            spot = stop
        else:
            out.append(stream[spot])
            spot += 1
    return out


def _labelled_values(stream: list[Lexeme], spot: int) -> tuple[list[float], int, int]:
    """Return the values of one or more labelled brackets from here, and where they end."""
    values: list[float] = []
    last = 0
    while spot < len(stream) and stream[spot].canon == "(":
        close = next((at for at in range(spot, min(len(stream), spot + 14)) if stream[at].canon == ")"), None)
        inside = stream[spot + 1 : close] if close else []
        dash = next((at for at, one in enumerate(inside) if one.canon in ("--", ":", "-")), None)
        value = inside[dash + 1] if dash is not None and dash + 1 < len(inside) else None
        labelled = (inside[:1] and inside[0].canon in ("size", "sizes")) or (
            dash == 2 and inside[1].canon in ("mos", "months", "years", "yrs", "year")
        )
        comma = next((at for at, one in enumerate(inside) if one.canon == ","), None)
        if (
            not labelled
            and comma
            and inside[0].figures
            and inside[comma + 1 :][:1]
            and inside[comma + 1].canon == "size"
        ):
            value, labelled = inside[0], True  # '(80 sts, size 1)'
        if close is None or value is None or not value.figures or not labelled:
            break
        values.append(value.figures[0])
        spot, last = close + 1, stream[close].end
        if spot + 1 < len(stream) and stream[spot].canon == "." and stream[spot + 1].canon == "(":
            spot += 1
    return values, spot, last


def size_list(stream: list[Lexeme], sizes: int) -> list[Lexeme]:
    """Join a number and the bracket of numbers after it into one lexeme."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        one = stream[spot]
        if one.canon.endswith(">th") and not one.figures:
            joined, spot = _ordinals(stream, spot)
            out.append(joined)
            continue
        if not one.figures:
            omitted = _omitted(stream, spot, sizes) if one.canon == "--" else None
            if omitted:
                values, spot = omitted
                figures = tuple(values)
                out.append(replace(one, canon=write_values(values), end=stream[spot - 1].end, figures=figures))
            else:
                out.append(one)
                spot += 1
            continue
        values, stop = _bracket(stream, spot)
        if len(values) == 1 and sizes > 1:
            values, stop = _after_comma(stream, spot, sizes)
        if len(values) > 1 and sizes > len(values):
            values, stop = _second_group(stream, stop, values, sizes)
        if len(values) > 1 and _is_list(values, sizes, stream, stop):
            out.append(replace(one, canon=write_values(values), end=stream[stop - 1].end, figures=tuple(values)))
            spot = stop
        else:
            out.append(one)
            spot += 1
    return out


def _ordinals(stream: list[Lexeme], spot: int) -> tuple[Lexeme, int]:
    """Join `14th [16th, 18th]`."""
    one = stream[spot]
    values, at = [one.canon[1:-3]], spot + 1
    if at < len(stream) and stream[at].canon in OPEN:
        at += 1
        while at < len(stream):
            part = stream[at]
            if part.canon.endswith(">th"):
                values.append(part.canon[1:-3])
            elif part.canon in CLOSE and len(values) > 1:
                return replace(one, canon="<" + "|".join(values) + ">th", end=part.end), at + 1
            elif part.canon not in BETWEEN:
                break
            at += 1
    return one, spot + 1


def _is_list(values: list[float], sizes: int, stream: list[Lexeme], stop: int) -> bool:
    """A bracket of one number after a number, in a leaflet of one size, is something else."""
    if sizes == 1:
        return False
    return sizes == 0 or len(values) == sizes or len(values) > 2 or stop >= len(stream)


def _bracket(stream: list[Lexeme], spot: int) -> tuple[list[float], int]:
    """Return the values of `34 (36-38)` from its first number, and where it ends."""
    values = [stream[spot].figures[0]]
    at = spot + 1
    if at < len(stream) and stream[at].canon in ("inchmark", "inch", "in"):
        at += 1
    if at >= len(stream) or stream[at].canon not in OPEN:
        return values, spot + 1
    at += 1
    while at < len(stream):
        one = stream[at]
        if one.figures and len(one.figures) == 1:
            values.append(one.figures[0])
        elif one.canon in ("o", "O", "yo"):
            values.append(0.0)
        elif one.canon in CLOSE and len(values) > 1:
            return values, at + 1
        elif one.canon not in BETWEEN:
            return values[:1], spot + 1
        at += 1
    return values[:1], spot + 1


def _after_comma(stream: list[Lexeme], spot: int, sizes: int) -> tuple[list[float], int]:
    """Return the values of `6, (6-7-8-9)`, where a comma slipped in before a bracket that has a value for each further size."""
    one = stream[spot]
    if spot + 2 < len(stream) and stream[spot + 1].canon == "," and stream[spot + 2].canon in OPEN:
        values, stop = _bracket([one, *stream[spot + 2 : spot + 3 + 4 * sizes]], 0)
        if len(values) == sizes:
            return values, spot + 1 + stop
    return [one.figures[0]], spot + 1


def _omitted(stream: list[Lexeme], spot: int, sizes: int) -> tuple[list[float], int] | None:
    """Return the values of `— (— - — - 2-3)`: a dash stands for none in that size."""
    if spot + 1 >= len(stream) or stream[spot + 1].canon not in OPEN or sizes < 2:
        return None
    values = [0.0]
    for at in range(spot + 2, min(len(stream), spot + 3 + 4 * sizes)):
        one = stream[at]
        if one.canon == "--":
            values.append(0.0)
        elif one.figures and len(one.figures) == 1:
            values.append(one.figures[0])
        elif one.canon in CLOSE:
            return (values, at + 1) if len(values) == sizes else None
        elif one.canon not in BETWEEN:
            return None
    return None


def _second_group(stream: list[Lexeme], stop: int, values: list[float], sizes: int) -> tuple[list[float], int]:
    """Add `; 108, 114, 120` or `30 (34, 38)` where that makes up the number of sizes."""
    more, at = list(values), stop
    while at < len(stream) and len(more) < sizes:
        one = stream[at]
        if one.figures:
            part, after = _bracket(stream, at)
            more += part
            at = after
        elif one.canon in BETWEEN:
            at += 1
        else:
            break
    return (more, at) if len(more) == sizes else (values, stop)
