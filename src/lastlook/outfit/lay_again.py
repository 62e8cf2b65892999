"""Laying a garment again: the search for it, and its lay written into the outfit's folder."""

from __future__ import annotations

import json
from collections.abc import Callable

from lastlook import lay
from lastlook.finding import Edit
from lastlook.outfit.derive import Derived
from lastlook.outfit.garment.sewn import Sewn
from lastlook.outfit.written.change import change
from lastlook.outfit.written.document import Document

SEED = 1


def needs_laying(derived: Derived) -> tuple[Sewn, ...]:
    """Return the garments that have no lay, or whose lay broke when a piece changed."""
    return tuple(
        one for one in derived.sewn if one.problem is not None and (one.judgement is None or not one.judgement.proven)
    )


def lay_again(one: Sewn, passes: int | None, may_go_on: Callable[[lay.Progress], bool]) -> lay.Lay:
    """Search a lay for a garment; `may_go_on` is asked on the way and sees the best so far."""
    assert one.problem is not None
    return lay.search(one.problem, seed=SEED, passes=passes, may_go_on=may_go_on, made=one.cut)


def with_lay(folder: Document, one: Sewn, found: lay.Lay) -> Document:
    """Return the document with a proven lay written into it."""
    name = one.plan.lay or f"lays/{one.plan.name}.json"
    placements = [lay.placement_as_json(place) for place in found.placements]
    text = json.dumps({"placements": placements}, indent=1) + "\n"
    return change(folder.with_file(name, text.encode("utf-8")), [Edit(f"sewing.{one.plan.name}.lay", name)])
