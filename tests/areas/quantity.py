"""Lengths and weights as typed, one a line, with what they are taken for."""

from __future__ import annotations

from lastlook.quantity import Unread, read_length, read_weight


def answer(given: str, asked: str) -> str:
    read = read_weight if "weight" in asked else read_length
    unit = "g" if "weight" in asked else "mm"
    out = []
    for line in given.splitlines():
        value = read(line)
        out.append(f"{value.why} {value.attempt}" if isinstance(value, Unread) else f"{value:.3f} {unit}")
    return "\n".join(out)
