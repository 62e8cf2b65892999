"""What every screen has at hand: the shelf, a clock, and what was worked out of the outfit as it stands.

A *desk* is one outfit laid out: its document, its values, what was derived and the verdict. Desks are remembered by
their document, so going back and forth costs nothing.
"""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from threading import RLock
from typing import TypeVar

from lastlook import keep, sheet
from lastlook.finding import Edit, Finding
from lastlook.outfit import (
    Derived,
    Document,
    Knitted,
    Outfit,
    Sewn,
    Verdict,
    change,
    derive,
    read,
    verdict,
    with_pieces,
)

_Garment = TypeVar("_Garment")
MOST_DESKS = 24


@dataclass(frozen=True)
class Desk:
    """One outfit laid out, at one revision; whatever is not looked at is not worked out."""

    document: Document

    @cached_property
    def outfit(self) -> Outfit:
        """Return the outfit's values."""
        return read(self.document)

    @cached_property
    def derived(self) -> Derived:
        """Return what follows from them."""
        return derive(self.outfit)

    @cached_property
    def verdict(self) -> Verdict:
        """Return the three answers."""
        return verdict(self.derived)

    def knitted(self, name: str) -> Knitted:
        """Return the garment to be knitted of that name; raises LookupError where there is none."""
        return _named(name, {one.plan.name: one for one in self.derived.knitted})

    def sewn(self, name: str) -> Sewn:
        """Return the garment to be sewn of that name; raises LookupError where there is none."""
        return _named(name, {one.plan.name: one for one in self.derived.sewn})

    @cached_property
    def printed(self) -> sheet.Printed:
        """Return every sheet as it would be printed now."""
        return sheet.sheets_of(self.derived, self.verdict)


def _named(name: str, known: dict[str, _Garment]) -> _Garment:
    if name not in known:
        raise LookupError(f"The outfit has no garment called {name}.")
    return known[name]


class Room:
    """The shelf and the clock, with the desks remembered."""

    def __init__(self, shelf: keep.Shelf, clock: Callable[[], str]) -> None:
        """Work on this shelf; `clock` tells the time as it is to be kept."""
        self.shelf = shelf
        self.clock = clock
        self.opens_on: int | None = None
        """The outfit that the door leads to; the one that came last if nobody said."""
        self.slips: dict[int, Finding] = {}
        """What an outfit's last act could not take, shown once on the next page."""
        self._desks: OrderedDict[Document, Desk] = OrderedDict()
        self._stood: dict[int, tuple[int, Desk]] = {}
        """The desk of each outfit at the revision at which it stood last; a revision never changes."""
        self._turn = RLock()

    def kept(self, number: int) -> keep.Kept:
        """Return the outfit of that number; raises LookupError where there is none."""
        found = next((one for one in self.shelf.outfits() if one.id == number), None)
        if found is None:
            raise LookupError(f"There is no outfit {number} on this shelf.")
        return found

    def follow(self, number: int) -> Finding | None:
        """Take in what was changed in the outfit's folder, and bring the folder up to date."""
        with self._turn:
            return keep.follow(self.shelf, self.kept(number), self.clock())

    def desk(self, number: int) -> Desk:
        """Return the outfit as it stands, laid out, with what was changed in its folder by hand taken in."""
        slip = self.follow(number)
        if slip:
            self.slips[number] = slip
        stands = self.shelf.stands_at(number).id
        with self._turn:
            last = self._stood.get(number)
        if last is not None and last[0] == stands:
            return last[1]
        desk = self.lay_out(self.shelf.document_at(stands))
        with self._turn:
            self._stood[number] = (stands, desk)
        return desk

    def lay_out(self, document: Document) -> Desk:
        """Return the desk of a document."""
        with self._turn:
            desk = self._desks.pop(document, None) or Desk(document)
            self._desks[document] = desk
            while len(self._desks) > MOST_DESKS:
                self._desks.popitem(last=False)
        return desk

    def change(self, number: int, edits: Iterable[Edit], said: str) -> Finding | None:
        """Make the edits and keep the outcome as a revision; edits that change nothing are not kept.

        Where the outfit's own file can't be read it is not written either, and the finding says so.
        """
        desk = self.desk(number)
        unread = next((one for one in desk.outfit.findings if one.kind == "outfit-unread"), None)
        if unread is None:
            self.keep(number, change(desk.document, edits), said)
        return unread

    def keep(self, number: int, holding: Document, said: str) -> None:
        """Keep a document as the outfit's next revision."""
        if holding != self.shelf.document(number):
            self.shelf.keep(number, with_pieces(self.lay_out(holding).derived), said, self.clock())
            self.follow(number)

    def close(self) -> None:
        """Put everything away."""
        self.shelf.close()
