"""One length of cloth: its width, its length, what is wrong with it, and how it behaves.

The cloth lies with its selvedges left and right: *across* runs from the left selvedge, *along* from the cut end.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lastlook.finding import Certainty, Finding, Where
from lastlook.quantity import Missing, Spread, Unread, give_or_take, read_length
from lastlook.quantity.length import read_number
from lastlook.stock.entry import Entry, missing

MOST_WIDTH_MM = 4_000.0
MOST_LENGTH_MM = 100_000.0
SELVEDGE_MM = 10.0
"""A centimetre on either side can't be used: common practice, no source."""
SHRINKAGE = {
    "cotton": (0.03, 0.05),
    "linen": (0.04, 0.10),
    "rayon": (0.05, 0.10),
    "viscose": (0.05, 0.10),
    "wool": (0.03, 0.04),
    "silk": (0.03, 0.10),
    "polyester": (0.0, 0.03),
}
"""Shares lost along the warp in the first wash (fabricis, modacrylic-xf, aftagley 2012; they disagree)."""
NAPS = ("none", "one way")
NOT_WASHED = Missing("shrinkage", "Wash a 50 cm square as it will be cared for, and measure it.")


@dataclass(frozen=True)
class Flaw:
    """A place no piece may lie on."""

    across_mm: float
    along_mm: float
    width_mm: float
    length_mm: float
    what: str


@dataclass(frozen=True)
class Cloth:
    """One length of cloth at hand."""

    name: str
    width_mm: float
    length_mm: float
    flaws: tuple[Flaw, ...] = ()
    selvedge_mm: float = SELVEDGE_MM
    shrinkage: Spread | Missing = NOT_WASHED
    """Share lost along the warp in the first wash; 0 once it was washed."""
    nap: str = "none"
    fibre: str = ""
    repeat_mm: tuple[float, float] | None = None
    """Of a plaid or stripe: across, along; 0 where it does not repeat."""

    @property
    def usable_width_mm(self) -> float:
        """Return the width between the selvedges."""
        return self.width_mm - 2 * self.selvedge_mm


def read_cloth(name: str, table: Mapping[str, object]) -> tuple[Cloth | Missing, tuple[Finding, ...]]:
    """Return a cloth from a table with `width`, `length` and, if known, the rest."""
    entry = Entry("cloth", name, table)
    width, length = entry.length_mm("width", MOST_WIDTH_MM), entry.length_mm("length", MOST_LENGTH_MM)
    fibre = entry.text("fibre")
    selvedge = _selvedge(entry)
    shrinkage = _shrinkage(entry, fibre)
    nap = _nap(entry)
    repeats = [entry.length_mm(key, 2_000) for key in ("repeat_across", "repeat_along")]
    raw = table.get("flaws", ())
    entry.known.add("flaws")
    if width is None or length is None:
        return missing(entry, "width and length", "Lay a tape along and across the cloth."), entry.close()
    repeat = (repeats[0] or 0.0, repeats[1] or 0.0) if any(repeats) else None
    flaws = _flaws(entry, raw, width, length)
    cloth = Cloth(name, width, length, flaws, selvedge, shrinkage, nap, fibre, repeat)
    if cloth.usable_width_mm <= 0:
        why = f"two selvedges of {selvedge:.0f} mm leave nothing of a width of {width:.0f} mm."
        entry.unread("selvedge", Unread(str(selvedge), why, "Measure the selvedge again."))
    return cloth, entry.close()


def _selvedge(entry: Entry) -> float:
    if entry.text("selvedge") in ("0", "none", "cut off", "0 mm", "0 cm"):
        return 0.0
    return entry.length_mm("selvedge", 200) or SELVEDGE_MM


def _nap(entry: Entry) -> str:
    word = entry.text("nap", "none").lower().replace("-", " ").replace("_", " ")
    nap = {"no": "none", "false": "none", "": "none", "yes": "one way", "true": "one way"}.get(word, word)
    if nap not in NAPS:
        entry.unread("nap", Unread(word, f"“{word}” is no nap.", "Write none or one way."))
        return "one way"
    return nap


def _shrinkage(entry: Entry, fibre: str) -> Spread | Missing:
    text = entry.text("shrinkage")
    if entry.yes_or_no("washed"):
        return give_or_take(0.0, 0.01)
    if text:
        value = read_number(text.replace("%", "").strip())
        if value is None or not 0 <= value < 50:
            entry.unread("shrinkage", Unread(text, f"“{text}” is no shrinkage.", "Write it like 4 %."))
        else:
            return give_or_take(value / 100.0, 0.005)
    known = next((SHRINKAGE[word] for word in SHRINKAGE if word in fibre.lower()), None)
    if known is None:
        return missing(entry, "shrinkage", "Wash a 50 cm square as it will be cared for, and measure it.")
    return Spread(sum(known) / 2, *known)


def _flaws(entry: Entry, raw: object, width_mm: float, length_mm: float) -> tuple[Flaw, ...]:
    if not isinstance(raw, Sequence) or isinstance(raw, str):
        entry.unread("flaws", Unread(str(raw), "the flaws are no list.", "Write one table for each flaw."))
        return ()
    return tuple(flaw for one in raw if (flaw := _flaw(entry, one, width_mm, length_mm)) is not None)


def _flaw(entry: Entry, raw: object, width_mm: float, length_mm: float) -> Flaw | None:
    table = raw if isinstance(raw, Mapping) else {}
    values = []
    for key in ("across", "along", "width", "length"):
        mm = read_length(str(table.get(key, "")))
        if isinstance(mm, Unread):
            entry.unread("flaws", Unread(str(raw), f"a flaw has no {key}: {mm.why}", mm.attempt))
            return None
        values.append(mm)
    flaw = Flaw(values[0], values[1], values[2], values[3], str(table.get("what", "flaw")))
    if flaw.across_mm >= width_mm or flaw.along_mm >= length_mm:
        entry.findings.append(
            Finding(
                "flaw-off-cloth",
                Certainty.PROVEN,
                f"The {flaw.what} at {flaw.across_mm:.0f} mm across and {flaw.along_mm:.0f} mm along lies outside"
                f" cloth “{entry.name}”, which is {width_mm:.0f} by {length_mm:.0f} mm.",
                "A flaw in the wrong place would end up in the middle of a piece.",
                "Measure it again from the left selvedge and from the cut end.",
                where=Where(fact=f"{entry.fact}.flaws"),
            )
        )
    return flaw
