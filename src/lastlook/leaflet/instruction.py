"""What a leaflet tells the hands to do, as values: one for each form of wording.

A *run* is the stitches of a row in order. A *step* is one instruction with the words it was read from; figures
may differ from size to size. Nothing here knows how many stitches are on the needle.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from lastlook.finding import Span
from lastlook.leaflet.trade.sizelist import Figure as Figure

ONE = Figure((1.0,))
UNKNOWN = Span(0, 0)


@dataclass(frozen=True)
class Work:
    """Stitches worked alike: each uses and gives so many."""

    name: str
    n: Figure | None
    """How many times; None where `reach` says how far."""
    uses: int = 1
    gives: int = 1
    lean: str = ""
    reach: str = ""
    """'end', 'last' (to the last `rest` stitches) or 'all'."""
    rest: Figure | None = None
    span: Span = UNKNOWN


@dataclass(frozen=True)
class Group:
    """Stitches repeated together."""

    items: tuple[Item, ...]
    times: Figure | None
    """None where the group fills what `reach` says."""
    reach: str = ""
    rest: Figure | None = None
    count: str = "in all"
    """'in all', 'more' (worked once and so often again) or 'unclear' where the leaflet does not say."""
    tail: tuple[Item, ...] = ()
    """How the row ends after the repeats."""
    tail_replaces: str = ""
    """'last' where the tail is the end of the last repeat, 'unclear' where it may be either."""
    one_stitch: bool = False
    """Whether the whole group is worked into one stitch."""
    span: Span = UNKNOWN


@dataclass(frozen=True)
class BindOff:
    """Stitches bound off within a row; None binds off the rest."""

    n: Figure | None
    span: Span = UNKNOWN


@dataclass(frozen=True)
class CastOnInRow:
    """Stitches cast on within or at the end of a row."""

    n: Figure
    span: Span = UNKNOWN


@dataclass(frozen=True)
class Held:
    """Stitches moved to a holder; None moves the rest."""

    n: Figure | None
    span: Span = UNKNOWN


@dataclass(frozen=True)
class Taken:
    """Stitches that come onto the needle: picked up along an edge, or knitted from a holder."""

    n: Figure | None
    source: str
    picked_up: bool
    span: Span = UNKNOWN


@dataclass(frozen=True)
class Turn:
    """The work is turned before the row's end."""

    span: Span = UNKNOWN


@dataclass(frozen=True)
class Parted:
    """A second ball is joined: what follows is worked apart."""

    span: Span = UNKNOWN


Item = Work | Group | BindOff | CastOnInRow | Held | Taken | Turn | Parted
Run = tuple[Item, ...]


@dataclass(frozen=True)
class Label:
    """What a row is called."""

    numbers: tuple[int, ...] = ()
    ends: Figure | None = None
    """Where the last number differs from size to size."""
    rows: Figure | None = None
    """'Next 8 rows'."""
    every: str = ""
    """'alt' for '2nd and every alternate row'."""
    side: str = ""
    name: str = ""
    round: bool = False
    needle: bool = False
    """Whether it names a needle of the round rather than a row."""


@dataclass(frozen=True)
class Goal:
    """How far an instruction goes on; whatever does not apply is None."""

    times: Figure | None = None
    count: str = ""
    """For `times`: 'in all', 'more' or 'unclear'."""
    until: Figure | None = None
    """Until so many stitches are on the needle."""
    until_what: str = ""
    """'' for all stitches, or the needle they are counted on."""
    mm: Figure | None = None
    place: str = "beg"
    """Where the length is measured from: 'beg', 'here', 'armhole', 'underarm', …"""
    rows: Figure | None = None
    like: str = ""
    """The piece whose length it matches."""
    to: str = ""
    """Up to which shaping it matches."""
    optional: bool = False
    """'Or desired length'."""


@dataclass(frozen=True)
class Ending:
    """The row that is worked last: 'p', 'k', 'ws', 'rs', or an edge where the yarn is then."""

    row: str = ""
    edge: str = ""
    span: Span = UNKNOWN


@dataclass(frozen=True)
class Cadence:
    """On which rows a shaping is worked."""

    every: Figure | None = None
    """Every so many rows."""
    mm: Figure | None = None
    """Every so many millimetres."""
    on: str = ""
    """'rs' or 'ws' where only such rows count."""
    first: Figure | None = None
    """The row it starts on, counted from here; None where the leaflet does not say."""
    alternate: Figure | None = None
    """The other interval of 'every 4th and 6th row alternately'."""
    goal: Goal = Goal()
    same: bool = False
    """'As before': the cadence that was used last at this edge."""


@dataclass(frozen=True)
class Step:
    """One instruction; `span` marks its words."""

    span: Span = field(kw_only=True, default=UNKNOWN)


@dataclass(frozen=True)
class CastOn(Step):
    """Cast on, at the start of a piece or at the beginning or end of rows."""

    n: Figure
    rows: Figure | None = None
    edge: str = ""
    until: Figure | None = None


@dataclass(frozen=True)
class RowOf(Step):
    """A row told stitch by stitch; by reference where `like` names another."""

    label: Label | None
    run: Run
    like: tuple[int, ...] = ()
    crochet: bool = False
    needles: tuple[Run, ...] = ()
    """The round told needle by needle."""
    covers: tuple[Span, ...] = ()
    """The spans of all its needles."""


@dataclass(frozen=True)
class Structure(Step):
    """A fabric that is worked from here on."""

    name: str
    run: Run = ()


@dataclass(frozen=True)
class WorkOn(Step):
    """Working on without shaping, in whatever structure, up to a goal."""

    structure: str = ""
    run: Run = ()
    goal: Goal = Goal()
    ending: Ending = Ending()
    on: Figure | None = None
    when: bool = False
    """Whether it only says when the next shaping starts."""


@dataclass(frozen=True)
class Shape(Step):
    """Increases or decreases by a schedule."""

    act: str
    n: Figure = ONE
    edge: str = ""
    cadences: tuple[Cadence, ...] = ()
    ending: Ending = Ending()
    same_time: bool = False
    start: WorkOn | None = None
    """When it starts, for 'at the same time, when piece measures'."""
    places: int = 1
    style: str = ""
    to: Figure | None = None
    """Evenly to so many stitches."""


@dataclass(frozen=True)
class BindOffs(Step):
    """Binding off at the beginning of rows or at an edge."""

    n: Figure
    rows: Figure | None = None
    edge: str = ""
    times: Figure | None = None
    cadence: Cadence | None = None
    both: bool = False


@dataclass(frozen=True)
class Finish(Step):
    """What is left is bound off, fastened off, drawn up, left on a holder or grafted."""

    how: str
    n: Figure | None = None
    parts: tuple[Figure, ...] = ()


@dataclass(frozen=True)
class RepeatRows(Step):
    """Rows worked before are worked again."""

    last: Figure | None = None
    rows: tuple[int, ...] = ()
    goal: Goal = Goal()
    ending: Ending = Ending()
    pattern: bool = False
    piece: str = ""
    section: str = ""


@dataclass(frozen=True)
class Printed(Step):
    """A count that is printed: total, on one needle, of rows, each side, or a difference."""

    n: Figure
    of: str = ""


@dataclass(frozen=True)
class Hold(Step):
    """Stitches go to a holder: all, the center ones, the first or last ones."""

    n: Figure | None
    which: str = "all"


@dataclass(frozen=True)
class Resume(Step):
    """Work goes on with held stitches."""

    n: Figure | None
    which: str = "rem"


@dataclass(frozen=True)
class Copy(Step):
    """Work as another piece, or a part of one."""

    piece: str
    section: str = ""
    mirrored: bool = False
    goal: Goal = Goal()
    ending: Ending = Ending()
    until_section: str = ""
    same_time: bool = False


@dataclass(frozen=True)
class OtherSide(Step):
    """The second side of a divided piece, to match the first."""


@dataclass(frozen=True)
class Section(Step):
    """The name of a part of a piece: 'raglan', 'neck'."""

    name: str


@dataclass(frozen=True)
class Needles(Step):
    """Stitches divided over needles: a check, no movement."""

    parts: tuple[Figure, ...]
    spans: tuple[Span, ...] = ()


@dataclass(frozen=True)
class Progress(Step):
    """'Continue in this way, one stitch less between decreases each time'."""

    change: int
    goal: Goal
    every: Figure | None = None
    ending: Ending = Ending()


@dataclass(frozen=True)
class Buttonholes(Step):
    """How many buttonholes, and on which rows."""

    n: Figure | None
    first: Figure | None = None
    every: Figure | None = None


@dataclass(frozen=True)
class Marker(Step):
    """A marker at an edge, at a height."""

    mm: Figure | None = None


@dataclass(frozen=True)
class Rounds(Step):
    """The work is joined into a round, or goes back to rows."""

    joined: bool = True


@dataclass(frozen=True)
class Apart(Step):
    """Both sides are worked at once, each with its own ball."""


@dataclass(frozen=True)
class Nothing(Step):
    """Words that move no stitch: prose, needles, colours, sewing."""

    why: str = "prose"


@dataclass(frozen=True)
class Unread(Step):
    """Words that were not understood."""
