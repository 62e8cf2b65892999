"""The order of work of a sewn skirt as its sheet prints it: the steps of its making, what to mind beneath each."""

from __future__ import annotations

from lastlook import outfit
from lastlook.paper import make
from lastlook.quantity import Missing
from lastlook.sheet.manner import Manner
from lastlook.sheet.schedule import Task

LEAST_SHRINKAGE = 0.005
"""A cloth that was washed loses less than this."""
Parts = tuple[tuple[str, tuple[Task, ...]], ...]


def sewing_order(one: outfit.Sewn, manner: Manner) -> Parts:
    """Return the order of work of a skirt, part by part; empty where nothing is drafted."""
    making = make.Making(
        one.drafted,
        one.cloth.fibre if one.cloth else "",
        one.plan.opening,
        one.plan.elastic,
        _shrinks(one),
        manner.units,
        _child_mm(one),
    )
    return tuple((stage.name, tuple(_task(step) for step in stage.steps)) for stage in make.order_of_work(making))


def _task(step: make.Step) -> Task:
    why = " ".join(words for words in (step.why, step.care) if words)
    return Task(step.do, why, is_final=step.last_look is not None)


def _shrinks(one: outfit.Sewn) -> bool | None:
    if one.cloth is None or isinstance(one.cloth.shrinkage, Missing):
        return None
    return one.cloth.shrinkage.best > LEAST_SHRINKAGE


def _child_mm(one: outfit.Sewn) -> float:
    """Return the height of a wearer who may be a child, 0 for a grown one."""
    stature = one.drafted.measures.get("stature", 0.0)
    return stature if stature < GROWN_MM else 0.0


GROWN_MM = 1400.0
"""Below this height a wearer is taken for a child, so that the rules on cords are shown (our own bound)."""
