"""Every sheet of an outfit, as files: booklets, cutting sheets, paper pieces, last looks, drawings.

What can't be printed yet is told instead, each in a sentence; nothing is printed with a gap in it.
"""

from __future__ import annotations

from dataclasses import dataclass

from lastlook import outfit
from lastlook.quantity import Missing
from lastlook.sheet.draw.hoops import Hoop, draw_hoops
from lastlook.sheet.last_look import Look, last_look
from lastlook.sheet.layout.page import Paper
from lastlook.sheet.pdf import pdf
from lastlook.sheet.record import record
from lastlook.sheet.svg import svg
from lastlook.sheet.whole.kept import record_of
from lastlook.sheet.whole.knitted import knitted_files
from lastlook.sheet.whole.naming import File, manner_of, named, whose
from lastlook.sheet.whole.sewn import cutting_files, order_files, paper_files

HOOP = 0.12
"""Scale of the hoops."""


@dataclass(frozen=True)
class Printed:
    """Files by name, and what could not be printed yet."""

    files: tuple[tuple[str, bytes], ...]
    lacking: tuple[str, ...] = ()


def sheets_of(
    derived: outfit.Derived, judged: outfit.Verdict, paper: Paper | None = None, pieces: tuple[str, ...] = ()
) -> Printed:
    """Return every sheet of an outfit; with names of paper pieces, only those are laid out at true size."""
    manner = manner_of(derived.outfit, paper)
    found: list[list[File] | str] = [knitted_files(derived, judged, one, manner) for one in derived.knitted]
    for sewn in derived.sewn:
        found.append(paper_files(derived, sewn, pieces, manner))
        found.append(order_files(derived, sewn, manner))
        found.append(cutting_files(derived, judged, sewn, manner))
    levels = outfit.fit_table(derived)
    if levels:
        found.append([("fit.svg", svg(draw_hoops(tuple(map(_hoop, levels)), HOOP, manner)).encode())])
    looks = Look(derived.outfit.name, whose(derived.outfit), judged.last_looks)
    found.append([("last-look.pdf", pdf(last_look(looks, manner)))])
    found.append([("record.pdf", pdf(record(record_of(derived), manner)))])
    files = tuple(file for some in found if not isinstance(some, str) for file in some)
    return Printed(files, tuple(some for some in found if isinstance(some, str)))


def _hoop(level: outfit.Level) -> Hoop:
    body = None if isinstance(level.body, Missing) else level.body.mm.best
    gets = None if isinstance(level.gets, Missing) else level.gets
    lack = next((one for one in (level.body, level.gets) if isinstance(one, Missing)), None)
    because = f"not known yet: no {lack.what}" if lack else ""
    name = f"{named(level.garment)}, {level.name}"
    return Hoop(name, body, gets.best if gets else None, gets.plus_minus if gets else 0.0, because)
