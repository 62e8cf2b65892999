"""Searches for lays, each on a thread of its own: watched, stopped, and its outcome kept as a revision.

A search holds the best lay so far; what it finds is kept only if the pieces are still those it was asked for.
"""

from __future__ import annotations

import threading
import time
from dataclasses import dataclass, field

from lastlook import cores, lay, outfit
from lastlook.web.room import Room

SHARE_S = 0.002
"""How long a search stands aside after each pass, so that the screens answer at once."""
LONGEST_S = 12.0
"""How long everything is looked for as it is, before what would make it fit is looked for."""
CHOICES_S = 60.0
HARD_S = 3.0
"""After so long without a lay every core searches, in processes of their own."""
SEED = 1
LAID = "The {name} was laid."
MORE = "The rest of the {name} was laid anew."


@dataclass
class Search:
    """One search that goes on or has ended."""

    name: str
    problem: lay.Problem
    made: tuple[lay.Placement, ...]
    """What is cut already."""
    started: float
    passes: int = 0
    overlapping: int = 0
    best: lay.Lay | None = None
    stopped: bool = False
    ended: bool = False
    say: str = ""
    choices: tuple[outfit.WouldFit, ...] = ()
    """What would make it fit, where nothing was found as it is."""
    conceding: bool = False
    revision: int | None = None
    """The revision at which the outfit stood when the search ended."""
    thread: threading.Thread | None = field(default=None, repr=False)
    is_hard: bool = False
    """Whether it has gone on for a while with nothing laid, so that all cores are at it."""

    def may_go_on(self, progress: lay.Progress) -> bool:
        """Note how far it is; say whether it may go on."""
        self.passes, self.best, self.overlapping = progress.passes, progress.best, progress.overlapping
        time.sleep(SHARE_S)
        fits = progress.best is not None and progress.best.fits
        if not (fits or self.conceding or self.is_hard) and time.monotonic() - self.started > HARD_S:
            self.is_hard = True
            return False
        return not self.stopped and time.monotonic() - self.started < (CHOICES_S if self.conceding else LONGEST_S)

    def stop(self) -> None:
        """Ask it to end with the best it has."""
        self.stopped = True


class Laying:
    """The searches of a room, one a garment."""

    def __init__(self, room: Room) -> None:
        """Search for the outfits of this room."""
        self.room = room
        self._searches: dict[tuple[int, str], Search] = {}
        self._turn = threading.Lock()

    def of(self, number: int, garment: str) -> Search | None:
        """Return the search for a garment, going on or ended."""
        return self._searches.get((number, garment))

    def start(self, number: int, one: outfit.Sewn, locked: tuple[lay.Placement, ...] = ()) -> Search | None:
        """Start a search for a garment; one that goes on already is left to it."""
        if one.problem is None:
            return None
        locked = tuple(place for place in locked if place not in one.cut)
        with self._turn:
            going = self.of(number, one.plan.name)
            if going and not going.ended and going.problem == one.problem and going.made == one.cut:
                return going
            if going:
                going.stop()
            search = Search(one.plan.name, one.problem, one.cut, time.monotonic())
            search.thread = threading.Thread(target=self._run, args=(number, search, locked), daemon=True)
            self._searches[number, one.plan.name] = search
        search.thread.start()
        return search

    def start_behind(self, number: int) -> None:
        """Start a search for every garment whose lay broke when a piece changed."""
        for one in outfit.needs_laying(self.room.desk(number).derived):
            if one.judgement is not None:
                self.start(number, one)

    def close(self) -> None:
        """End every search."""
        for search in self._searches.values():
            search.stop()
        for search in self._searches.values():
            if search.thread:
                search.thread.join(2.0)

    def _run(self, number: int, search: Search, locked: tuple[lay.Placement, ...]) -> None:
        try:
            found = lay.search(search.problem, seed=SEED, may_go_on=search.may_go_on, locked=locked, made=search.made)
            if search.is_hard and not search.stopped:
                asked = cores.Asked(search.problem, LONGEST_S - HARD_S, SEED + 1, locked, search.made)
                found = lay.best_of([found, cores.search(asked, search.may_go_on)])
            self._keep(number, search, found, locked)
            search.revision = self.room.shelf.stands_at(number).id
        finally:
            search.ended = True

    def choose(self, number: int, garment: str, spot: int) -> None:
        """Take one of the changes that would make it fit, with its lay; nothing happens where the pieces changed."""
        search, desk = self.of(number, garment), self.room.desk(number)
        if search is None or not 0 <= spot < len(search.choices) or not search.choices[spot].edits:
            return
        chosen = search.choices[spot]
        changed = self.room.lay_out(outfit.change(desk.document, chosen.edits))
        one = next((one for one in changed.derived.sewn if one.plan.name == garment), None)
        if one is not None:
            self.room.keep(number, outfit.with_lay(changed.document, one, chosen.lay), chosen.say)

    def _keep(self, number: int, search: Search, found: lay.Lay, locked: tuple[lay.Placement, ...]) -> None:
        desk = self.room.desk(number)
        one = next((one for one in desk.derived.sewn if one.plan.name == search.name), None)
        if one is None or one.problem != search.problem or one.cut != search.made:
            search.say = "The pieces changed in the meantime; what was found is not kept."
        elif not found.proven:
            search.say = found.findings[0].say if found.findings else "No lay was found in this time."
            if not search.stopped and not locked:
                search.conceding = True
                search.choices = outfit.would_fit(one, search.may_go_on)
        else:
            said = (MORE if locked or search.made else LAID).format(name=search.name)
            self.room.keep(number, outfit.with_lay(desk.document, one, found), said)
            search.say = "Found, and proven."
