"""What the hands hold while a piece is made, and what all pieces share."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from lastlook.finding import Span
from lastlook.knit.needle.chooser import Chooser, Option, Point
from lastlook.knit.needle.live import Event, Live, Row
from lastlook.knit.needle.trouble import Trouble, is_far
from lastlook.leaflet.instruction import Cadence, Figure, Item, RowOf, Run, Step

NOWHERE = Span(0, 0)
LONG = frozenset({"length-too-short", "buttonholes-do-not-fit"})
"""Troubles of length, which words not understood may explain even where every count is borne out."""


@dataclass(frozen=True)
class Count:
    """A printed count beside the worked one."""

    span: Span
    stated: int
    worked: int
    row: int
    what: str = ""


@dataclass
class World:
    """What the pieces of one size share."""

    size: int
    sizes: int
    rows_per_mm: float | None
    pieces: dict[str, Hands] = field(default_factory=dict)
    holders: dict[str, int] = field(default_factory=dict)
    patterns: dict[str, list[Run]] = field(default_factory=dict)
    pattern_spans: dict[str, list[Span]] = field(default_factory=dict)
    pattern_unsure: bool = False
    """Whether words of the pattern's own rows were not understood."""
    multiples: tuple[tuple[str, int, int], ...] = ()
    words: str = ""
    """The text of the leaflet, for keys and rows."""
    rows_made: int = 0
    holders_checked: set[Span] = field(default_factory=set)
    used_holders: set[str] = field(default_factory=set)
    waiting: dict[str, int] = field(default_factory=dict)
    """Stitches that a piece left on a holder for another, by that one's name."""
    on_needle: tuple[int, bool] | None = None
    """Stitches that the piece before left on the needle, and whether in rounds."""


@dataclass
class Recent:
    """A row that can be repeated."""

    run: Run
    span: Span
    number: int = 0
    structure: str = ""
    needles: tuple[Run, ...] = ()


@dataclass
class Fingers:
    """The fingers of a glove, and what of the hand is left for them."""

    pool: int
    gathers: bool = False
    """Whether the finger is still being put together."""
    is_thumb: bool = False
    took: int = 0
    """How many stitches of the hand the finger took."""
    made: list[tuple[Live, int]] = field(default_factory=list)
    model: Live | None = None
    """The finger that this one is worked as, until its end is taken over."""


@dataclass
class Hands:
    """One piece in the making."""

    name: str
    make: int
    world: World
    chooser: Chooser
    lives: list[Live] = field(default_factory=list)
    live: Live = field(default_factory=lambda: Live(0))
    parts: list[Live] = field(default_factory=list)
    """Every group there was, the first being the whole piece."""
    held: list[Live] = field(default_factory=list)
    """Groups of this piece that wait."""
    kept: dict[str, int] = field(default_factory=dict)
    """Stitches that were put away: 'center', 'all'."""
    cast_on: int | None = None
    fabric: str = "plain"
    fabric_run: Run = ()
    cycle: list[Run] = field(default_factory=list)
    cycle_spans: list[Span] = field(default_factory=list)
    cycle_spot: int = 0
    section: str = ""
    sections: dict[str, int] = field(default_factory=dict)
    section_steps: dict[str, list[Step]] = field(default_factory=dict)
    recent: list[Recent] = field(default_factory=list)
    book: dict[int, Recent] = field(default_factory=dict)
    pending: list[Item] = field(default_factory=list)
    pending_step: RowOf | None = None
    counts: list[Count] = field(default_factory=list)
    troubles: list[Trouble] = field(default_factory=list)
    cadences: dict[str, Cadence] = field(default_factory=dict)
    cast_off_start: int = 0
    armhole_row: int | None = None
    span: Span = NOWHERE
    worked: set[Span] = field(default_factory=set)
    crochet: bool = False
    last_edge: str = ""
    holes: int | None = None
    marker_mm: float | None = None
    marker_row: int | None = None
    off_by: set[int] = field(default_factory=set)
    lengths_unknown: bool = False
    ended: str = "open"
    picked: list[tuple[str, int]] = field(default_factory=list)
    copied: str = ""
    mirrored: bool = False
    fixed_rows: list[tuple[Span, int]] = field(default_factory=list)
    corners: int = 0
    sides: list[int] = field(default_factory=list)
    crochet_holes: int = 0
    mirrored_counts: bool = False
    shown: int = 0
    """Stitches of the row that is being shown after the piece has ended."""
    was_round: bool = False
    fingers: Fingers | None = None
    is_heir: bool = False
    """Whether it goes on with stitches of a piece that does not add up, so that its troubles follow from there."""
    left: dict[str, int] = field(default_factory=dict)
    """Stitches left on holders for other pieces, by their names."""
    threads: list[int] = field(default_factory=list)
    """Stitches put on a thread within a row, in the order in which that was told."""
    flanks: tuple[int, int] | None = None
    """Stitches that wait to the right and to the left of those worked by themselves; None where none wait."""
    dark: list[Span] = field(default_factory=list)
    """Words not understood, of this piece or of one it is worked as, that may hide stitches: no count after them
    bears the piece out yet."""
    dim: list[Span] = field(default_factory=list)
    """Words taken for prose that speak of stitches: where a count differs after them, it may come from them."""
    clouded: bool = False
    """Whether words of the sentence that is being worked were not understood."""
    hidden: bool = False
    """Whether a count had to be taken from the print, since words before it were not understood."""
    unread: bool = False
    """Whether words that may move stitches or rows were not understood at all."""
    picked_up: int = 0
    """Stitches that a piece began with by picking up."""
    claimed: tuple[Span, int] | None = None
    """A count of part of the stitches that was printed before the work divides."""
    following: Step | None = None
    """The step after the one that is being carried out."""
    row_begun: bool = False
    """Whether a row was named, 'Next round', and what it is comes in the words after."""
    counted: int = 0
    """Stitches of a round that were counted off by knitting them, for the heel."""
    slipped: int = 0
    """Stitches slipped to the same needle."""
    heel_taken: int = 0
    """Stitches of the heel that were knitted on to the last needle after picking up along it."""
    needle_parts: list[int] = field(default_factory=list)
    parts_shaped: bool = False
    """Whether the piece was shaped after its pattern began, so that its rows no longer fit as printed."""

    @property
    def blind(self) -> bool:
        """Whether the count may be another one for words that were not understood."""
        return self.clouded or bool(self.dark or self.dim)

    def at(self, value: Figure | None, default: int = 1) -> int:
        """Return a figure in this size as a count."""
        return value.whole(self.world.size) if value is not None else default

    def done(self, step: Step) -> None:
        """Remember that a step entered the chain."""
        self.worked.add(step.span)
        if isinstance(step, RowOf) and step.covers:
            self.worked.update(step.covers)

    def trouble(self, kind: str, span: Span, worked: float, stated: float, words: str = "") -> None:
        """Remember what does not add up; what only follows from an earlier trouble is marked so."""
        follows = self.is_heir or any(not one.follows for one in self.troubles)
        row = self.live.number if self.live else None
        blind = self.blind or (self.unread and kind in LONG)
        far = not blind and (is_far(kind, worked, stated) or any(one.far for one in self.troubles))
        self.troubles.append(Trouble(kind, span, self.name, row, worked, stated, words, blind, follows, far))

    def settle_last(self) -> None:
        """The gap of the trouble told last is no misreading, however wide it is."""
        self.troubles[-1] = replace(self.troubles[-1], far=False)

    def choose(self, what: str, span: Span, options: tuple[tuple[str, int], ...], matters: str = "counts") -> int:
        """Ask which of several meanings is taken; the key is the piece and the phrase."""
        phrase = " ".join(self.world.words[span.start : span.end].split()).lstrip(",;.:—- ")
        key = f"{self.name.lower()}: {phrase}" + (f" ({what})" if what != "times" else "")
        point = Point(key, span, self.name, tuple(Option(meaning, value) for meaning, value in options), matters)
        return self.chooser.pick(point)

    def words_of(self, span: Span) -> str:
        """Return the words of a span on one line."""
        return " ".join(self.world.words[span.start : span.end].split())

    def open_section(self, name: str) -> None:
        """Begin a named part of the piece."""
        self.section = name
        self.sections.setdefault(name, self.live.number + 1)

    def add(
        self, used: int, gives: int, events: tuple[Event, ...], span: Span, structure: str = "", words: str = ""
    ) -> Row:
        """Work one row of the live group."""
        self.world.rows_made += 1
        return self.live.add(used, gives, events, (span, structure or self.fabric, words, self.section))

    def begin(self, n: int) -> None:
        """Put the first stitches on the needle."""
        live = Live(n, name=self.name)
        live.outer, live.inner = self.live.outer, self.live.inner
        self.live = live
        self.lives = [live]
        self.parts.append(live)
