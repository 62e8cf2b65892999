"""Single-number slips: change one figure in a leaflet that adds up, and see whether the reading notices.

Which changes can be proven wrong from the text is decided without the reader, in two ways. By hand: our own truths
list figures that are *bound* (any of the named changes contradicts something printed) and *free* (nothing does); the
truths in a folder `../shared` say it of each figure: always, sometimes, never. By arithmetic: `slips_made` puts
together leaflets whose figures must fulfil sums that are written beside them. A change counts as *found* where
something is proven, as *doubted* where the reading only asks or doubts, as *missed* where it says nothing.
"""

from __future__ import annotations

import os
import re
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from benchmarks import slips_made
from tests import corpus

ROOT = Path(__file__).resolve().parent.parent
TABLE = Path(__file__).with_suffix(".md")
SHARED = Path(os.environ.get("LASTLOOK_SHARED", ROOT.parent / "shared")) / "examples" / "leaflets"
CLASSES = ("counts", "sizes", "repeats", "cadences", "lengths", "neighbours")
REPEATS = {"times", "rows", "increase"}
NUMBER = re.compile(r"\d+")


@dataclass(frozen=True)
class Slip:
    """One figure changed in one leaflet."""

    leaflet: str
    sort: str
    """One of CLASSES."""
    bound: bool
    """Whether the change can be proven wrong from the text."""
    what: str
    text: str


def own() -> Iterator[Slip]:
    """Yield the slips that our own truths name."""
    for leaflet in corpus.leaflets():
        if "slip" in leaflet.truth:
            continue
        for bound in (True, False):
            for figure in leaflet.truth.get("bound" if bound else "free", []):
                start, end = corpus.place(leaflet.text, figure["at"])
                quote = leaflet.text[start:end]
                for new in figure["to"]:
                    changed = exchanged(quote, figure["n"], new)
                    text = leaflet.text[:start] + changed + leaflet.text[end:]
                    what = f"{' '.join(quote.split())!r}: {figure['n']} -> {new}"
                    yield Slip(leaflet.name, figure["as"], bound, what, text)


def exchanged(quote: str, old: str, new: str) -> str:
    """Return a quotation with one figure exchanged where it first stands alone."""
    before = r"(?<![\d/])" if old[0].isdigit() else r"(?<!\w)"
    after = r"(?![\d/½¼¾])" if old[-1].isdigit() else ""
    pattern = before + r"\s+".join(re.escape(word) for word in old.split()) + after
    changed, times = re.subn(pattern, new, quote, count=1)
    assert times, f"{old!r} does not stand in {quote!r}"
    return changed


def shared() -> Iterator[Slip]:
    """Yield the slips that the shared truths judge, where that folder is there."""
    if not SHARED.is_dir():
        return
    import yaml

    for path in sorted(SHARED.glob("*.truth.yaml")):
        truth = yaml.safe_load(path.read_text(encoding="utf-8"))
        if not truth["correct"]:
            continue
        text = path.with_name(truth["leaflet"]).read_text(encoding="utf-8")
        for figure in truth["numbers"]:
            yield from _of_figure(truth, text, figure)


def _of_figure(truth: dict[str, Any], text: str, figure: dict[str, Any]) -> Iterator[Slip]:
    spot = _spot(text, figure)
    if spot is None:
        return
    start, end = spot
    marks = list(NUMBER.finditer(text[start:end]))
    for number, value in enumerate(figure["values"]):
        mark = marks[figure["number"] + number]
        if mark.group() != str(value):
            continue
        size = truth["sizes"][number] if len(figure["values"]) > 1 else "all"
        for new in _neighbours(value):
            if figure["change"] != "never" and new in _listed(figure, "unseen", size):
                continue
            only = new in _listed(figure, "pieces_only", size)
            changed = text[: start + mark.start()] + str(new) + text[start + mark.end() :]
            what = f"{figure['quote']!r}, {size}: {value} -> {new}"
            yield Slip(truth["leaflet"], _sort(figure["role"], only), figure["change"] != "never", what, changed)


def _spot(text: str, figure: dict[str, Any]) -> tuple[int, int] | None:
    words = (re.escape(word) for word in figure["quote"].split())
    found = list(re.finditer(r"\s+".join(words), text))
    nth = figure.get("occurrence", 0)
    return found[nth].span() if nth < len(found) else None


def _neighbours(value: int) -> list[int]:
    """Return the value one and two off, and with two digits swapped."""
    swapped = int(str(value)[::-1]) if 10 <= value <= 99 else value
    return sorted({new for new in (value - 1, value + 1, value + 2, swapped) if new > 0 and new != value})


def _listed(figure: dict[str, Any], key: str, size: str) -> list[int]:
    lists = figure.get(key, {})
    return [*lists.get("all", []), *lists.get(size, [])]


def _sort(role: str, only_between_pieces: bool) -> str:
    if only_between_pieces or "button" in role:
        return "neighbours"
    if role in REPEATS:
        return "repeats"
    return "cadences" if role == "interval" else "counts"


def noticed(text: str) -> str:
    """Return 'found', 'doubted' or 'missed' for a text."""
    findings = corpus.read(text)["findings"]
    if any(one["certainty"] == "proven" for one in findings):
        return "found"
    return "doubted" if any(one["asks"] or one["certainty"] == "doubtful" for one in findings) else "missed"


def main(words: list[str]) -> int:
    """Try every slip, print the table and, with `missed`, what was missed; with `keep`, write the table."""
    with corpus.without_remedies():
        table = _tried(words)
    print(table)
    if "keep" in words:
        TABLE.write_text(table, encoding="utf-8")
    return 0


@dataclass
class Tally:
    """How the changes of one source came out."""

    heading: str
    came: Counter[tuple[str, bool, str]]
    alarmed: list[str]
    consistent: int


def _tried(words: list[str]) -> str:
    began = time.monotonic()
    plain = {leaflet.name: leaflet.text for leaflet in corpus.leaflets() if "slip" not in leaflet.truth}
    for path in sorted(SHARED.glob("*.txt")) if SHARED.is_dir() else []:
        plain[path.name] = path.read_text(encoding="utf-8")
    by_hand = _counted("judged by hand", plain, set(_consistent()), [*own(), *shared()], words)
    made = slips_made.leaflets(4, 8)
    texts = {f"{one.name} {number}": one.text(one.figures) for number, one in enumerate(made)}
    by_sums = _counted("judged by sums", texts, set(texts), list(slips_made.changes(made)), words)
    both = [by_hand, by_sums]
    many = sum(sum(one.came.values()) for one in both)
    head = ["# Single-number slips", "", "Run by `python -m benchmarks slips keep` on 2 cores, "
            f"{many} changed leaflets in {time.monotonic() - began:.0f} s.", "",
            "Which changes can be proven wrong from the text is decided without the reader: by hand in the truths",
            "of the leaflets, and by sums in leaflets made for this (`benchmarks/slips_made.py`).", ""]  # fmt: skip
    return "\n".join([*head, *(line for one in both for line in _table(one))])


def _counted(
    heading: str,
    plain: dict[str, str],
    consistent: set[str],
    slips: Sequence[Slip | slips_made.Changed],
    words: list[str],
) -> Tally:
    alarmed = {name for name, text in plain.items() if noticed(text) == "found"}
    came: Counter[tuple[str, bool, str]] = Counter()
    for slip in slips:
        told = "unasked" if slip.leaflet in alarmed else noticed(slip.text)
        came[slip.sort, slip.bound, told] += 1
        if "missed" in words and told not in ("unasked", "found" if slip.bound else "missed"):
            print(f"{told}\t{slip.sort}\t{'bound' if slip.bound else 'free'}\t{slip.leaflet}\t{slip.what}")
    return Tally(heading, came, sorted(alarmed & consistent), len(consistent))


def _consistent() -> list[str]:
    own_names = [one.name for one in corpus.leaflets() if set(one.truth["verdict"]) <= {corpus.GOOD}]
    return own_names + sorted({slip.leaflet for slip in shared()})


def _table(one: Tally) -> list[str]:
    out = [f"## Changes {one.heading}", "", "| class | can be proven | found | doubted | missed | found of these |",
           "|---|---|---|---|---|---|"]  # fmt: skip
    sums: dict[bool, Counter[str]] = {True: Counter(), False: Counter()}
    for (_, bound, came), n in one.came.items():
        sums[bound][came] += n
    for sort in CLASSES:
        told = {key[2]: n for key, n in one.came.items() if key[:2] == (sort, True)}
        if told:
            out.append(_line(sort, told))
    out.append(_line("all", dict(sums[True])))
    free = sums[False]
    harmless = sum(free.values()) - free["unasked"]
    alarms = f" ({', '.join(one.alarmed)})" if one.alarmed else ""
    out += ["", f"Harmless changes: {harmless} tried, {free['found']} called wrong, {free['doubted']} doubted.", "",
            f"Leaflets that add up: {one.consistent} read, {len(one.alarmed)} called wrong{alarms}.",
            f"Not asked, the leaflet being called wrong as it stands: {sums[True]['unasked']}.", ""]  # fmt: skip
    return out


def _line(sort: str, came: dict[str, int]) -> str:
    found, doubted, missed = (came.get(key, 0) for key in ("found", "doubted", "missed"))
    asked = found + doubted + missed
    rate = f"{found / asked:.0%}" if asked else "-"
    return f"| {sort} | {asked} | {found} | {doubted} | {missed} | {rate} |"
