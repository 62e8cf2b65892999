"""Lays: a problem is searched with `passes=` and `seed=`; with placements beside it, or `judge`, those are judged.

Where the input leaves out the cloth's or a piece's outline, `size` [length, width] stands for a rectangle.
"""

from __future__ import annotations

import json
from typing import Any

from lastlook import lay
from lastlook.finding import Finding, say


def answer(given: str, asked: str) -> str:
    value = json.loads(given)
    placements = value.pop("placements", None) if isinstance(value, dict) else None
    locked = value.pop("locked", []) if isinstance(value, dict) else []
    _fill(value)
    problem = lay.read_problem(value)
    if not isinstance(problem, lay.Problem):
        return "\n\n".join(say(one) for one in problem)
    if placements is not None:
        return _judged(problem, lay.read_placements(placements) or ())
    words = dict(word.split("=", 1) for word in asked.split() if "=" in word)
    passes, seed = int(words.get("passes", "120")), int(words.get("seed", "1"))
    found = lay.search(problem, seed=seed, passes=passes, locked=lay.read_placements(locked) or ())
    if "fold" in asked.split():
        return "\n".join([_told(found), *_where(found)])
    return "\n\n".join([_told(found), *map(say, found.findings)])


def _fill(value: Any) -> None:
    for piece in value.get("pieces", []) if isinstance(value, dict) else []:
        if isinstance(piece, dict) and "size" in piece:
            x, y = piece.pop("size")
            piece["outline"] = [[0, 0], [x, 0], [x, y], [0, y]]


def _judged(problem: lay.Problem, placements: tuple[lay.Placement, ...]) -> str:
    judgement = lay.judge(problem, placements)
    told: list[Finding] = list(judgement.findings)
    return "\n\n".join(["proven" if judgement.proven else "not proven", *(say(one) for one in told)])


def _told(found: lay.Lay) -> str:
    if not found.fits:
        return "does not fit"
    told = f"fits, {'proven' if found.proven else 'not proven'}, uses {found.used_length_mm:.0f} mm"
    rest = [f"{one.width_mm:.0f} across by {one.length_mm:.0f} along" for one in found.left_over[:1]]
    return f"{told}; left over {rest[0] if rest else 'scraps'}"


def _where(found: lay.Lay) -> list[str]:
    return [
        f"{one.id} {one.copy}: {one.layer}, y {one.y:.1f}, {'mirrored' if one.mirrored else 'as drawn'}"
        for one in found.placements
    ]
