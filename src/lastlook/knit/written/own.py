"""The leaflet's own words for a row, taken only where they do exactly what was worked.

Words may stand for several rows ('at beg of next 2 rows'), for the other edge ('reversing shaping') or leave open how
often a repeat is worked; so they are laid over the stitches of the row again before they are used.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from lastlook import leaflet as paper
from lastlook.knit.needle.rows.ahead import own_stitches, unclear_of
from lastlook.knit.needle.solve import Solved, solve
from lastlook.knit.worked import Act, Shaping, Side, WorkedRow
from lastlook.leaflet import instruction as say
from lastlook.leaflet.instruction import Run

ACTS = {"dec": Act.DECREASE, "inc": Act.INCREASE, "bind off": Act.BIND_OFF, "cast on": Act.CAST_ON,
        "hold": Act.HOLD, "pick up": Act.PICK_UP}  # fmt: skip


@dataclass(frozen=True)
class Told:
    """What the words of a row say: its body without the label, the numbers it is called by, the rows it refers to."""

    body: str
    numbers: tuple[int, ...] = ()
    like: tuple[int, ...] = ()


def own_words(row: WorkedRow, words: str, ahead: int) -> str | None:
    """Return the words, made clear where they may be meant in two ways; None where they do something else."""
    for body in _variants(words):
        run = _run(body)
        if run is None or unclear_of(run) is not None:
            continue
        laid = own_stitches(run, ahead, 0)
        solved = solve(laid, ahead, 0, "left" if row.side is Side.WRONG else "right")
        if _does(solved, row, 0):
            return body
        even = _evenly(row)
        if even and _does(solved, row, even.stitches):
            verb = "inc" if even.act is Act.INCREASE else "dec"
            return f"{body}, {verb} {even.stitches} sts evenly"
    return None


@lru_cache(maxsize=4000)
def told(words: str) -> Told:
    """Return what the words of a row say, with its label cut off where it is read as one."""
    lead = "BACK\n"
    parts = paper.read(f"{lead}{words}.\n").parts
    rows = [step for part in parts for step in part.steps if isinstance(step, say.RowOf)]
    if len(rows) != 1:
        return Told(words)
    row = rows[0]
    numbers = row.label.numbers if row.label else ()
    starts = [item.span.start for item in row.run if item.span.end]
    if not row.label or not starts or row.like:
        return Told(words, numbers, row.like)
    return Told(words[min(starts) - len(lead) :].strip(" .;,"), numbers)


def _variants(words: str) -> list[str]:
    more = re.compile(r"(\d+|once|twice|thrice) ?(times?)?(?! (?:more|in all))\b", re.I)
    spots = [match for match in more.finditer(words) if match[2] or match[1].lower() in ("twice", "thrice", "once")]
    if not spots:
        return [words]
    last = spots[-1]
    return [words, *(f"{words[: last.end()]} {how}{words[last.end() :]}" for how in ("more", "in all"))]


@lru_cache(maxsize=4000)
def _run(body: str) -> Run | None:
    """Return the stitches of a row, None where the words are more or less than one row."""
    parts = paper.read(f"BACK\nRow 2: {body} -- 12 sts.\n").parts
    steps = [step for part in parts for step in part.steps if not isinstance(step, say.Nothing)]
    if len(steps) == 2 and isinstance(steps[1], say.Printed):
        del steps[1]
    if len(steps) != 1 or not isinstance(steps[0], say.RowOf):
        return None
    row = steps[0]
    plain = row.label is not None and row.label.numbers == (2,) and not (row.like or row.needles or row.crochet)
    return row.run if plain and row.run else None


def _does(solved: Solved, row: WorkedRow, even: int) -> bool:
    """Whether a run does on its stitches what the row did."""
    if solved.used != row.used or solved.left < 0 or (solved.left and not solved.turned):
        return False
    shaped = list(row.shapings)
    gives = row.gives
    if even:
        gives -= shaped[-1].stitches if shaped[-1].act is Act.INCREASE else -shaped[-1].stitches
        shaped = shaped[:-1]
    if solved.gives != gives or solved.spare:
        return False
    mine = sorted((ACTS[one.act].value, one.edge, one.n, one.lean) for one in solved.events)
    theirs = sorted((one.act.value, one.edge, one.stitches, one.lean or "") for one in shaped)
    return len(mine) == len(theirs) and all(
        a[:3] == b[:3] and (not b[3] or a[3] == b[3]) for a, b in zip(mine, theirs, strict=True)
    )


def _evenly(row: WorkedRow) -> Shaping | None:
    last = row.shapings[-1] if row.shapings else None
    found = last is not None and last.edge == "inside" and last.act in (Act.INCREASE, Act.DECREASE)
    return last if found else None
