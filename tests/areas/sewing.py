"""Fit and making of a skirt: standing and sitting, printed sizes, order of work, reserves, two versions.

The input drafts as `tests/areas/paper.py` does; what is asked is the name of a function below, and its words.
"""

from __future__ import annotations

from collections.abc import Callable

from lastlook import paper
from lastlook.paper import fit, make, toile
from tests.areas.paper import made


def answer(given: str, asked: str) -> str:
    name, *words = asked.split()
    before, after = made(given)
    return "\n".join(ASKED[name](before, after, words))


def _levels(_: paper.Drafted, one: paper.Drafted, words: list[str]) -> list[str]:
    """Say waist and hip standing and sitting; the words are sitting girths in mm."""
    sitting = {f"{level}_girth_sitting": float(mm) for level, mm in zip(("waist", "hip"), words, strict=False)}
    fits = fit.fit_of(one, {**one.measures, **sitting}, {})
    return [
        f"{each.level}: {each.ease_mm:.1f} mm standing, {each.seated_ease_mm:.1f} mm sitting "
        f"({'measured' if each.seated_measured else 'assumed'})"
        for each in fits
    ]


def _order(_: paper.Drafted, one: paper.Drafted, words: list[str]) -> list[str]:
    """Say every step; the words are the fibre, then `child=MM`, `KIND=MM` of an opening, or `elastic=MM`."""
    said = {key: float(mm) for key, mm in (word.split("=") for word in words[1:])}
    opening = next((fit.Opening(kind, mm) for kind, mm in said.items() if kind in fit.LEAST_MM), None)
    elastic = fit.Elastic(said["elastic"]) if "elastic" in said else None
    making = make.Making(one, words[0], opening, elastic, False, child_mm=said.get("child", 0.0))
    out = []
    for stage in make.order_of_work(making):
        out.append(stage.name)
        for step in stage.steps:
            look = f" [last look: {step.last_look}]" if step.last_look else ""
            more = " ".join(text for text in (step.why, step.care) if text)
            out.append(f"  {step.do}{look}" + (f" ({more})" if more else ""))
    return out


def _reserve(_: paper.Drafted, one: paper.Drafted, words: list[str]) -> list[str]:
    return [
        f"{each.piece}: {each.edge} {each.each_edge_mm:.1f} mm an edge, {each.all_round_mm:.1f} mm in all"
        for each in make.reserves(one)
    ]


def _changes(before: paper.Drafted, after: paper.Drafted, words: list[str]) -> list[str]:
    return [
        f"{one.piece}: {one.edge} {round(one.longer_mm or 0.0, 1) + 0.0:+.1f} mm, moved {one.moved_mm or 0.0:.1f} mm"
        for one in toile.changes(before, after)
    ]


def _size(_: paper.Drafted, one: paper.Drafted, words: list[str]) -> list[str]:
    """Choose among sizes written 14=660/890 (waist and hip in mm)."""
    sizes = []
    for word in words:
        name, _, figures = word.partition("=")
        waist, hip = figures.split("/")
        sizes.append(fit.PrintedSize(name, float(waist), float(hip)))
    choice = fit.closest(sizes, one.measures["waist_girth"], one.measures["hip_girth"], None)
    assert choice is not None
    return [f"size {choice.size.name}: waist {choice.waist_mm:+.0f} mm, hip {choice.hip_mm:+.0f} mm left to alter"]


ASKED: dict[str, Callable[[paper.Drafted, paper.Drafted, list[str]], list[str]]] = {
    "levels": _levels,
    "order": _order,
    "reserve": _reserve,
    "changes": _changes,
    "size": _size,
}
