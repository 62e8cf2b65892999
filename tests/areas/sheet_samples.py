"""Invented things to print: a skirt in three pieces, a pullover's back, a lay, and what stands open."""

from __future__ import annotations

from lastlook.finding import Certainty, Finding, Span
from lastlook.geometry import Cubic, Line, Path, polygon, polyline
from lastlook.knit import Act, Ended, Shaping, Side, WorkedPiece, WorkedRow
from lastlook.lay import Cloth, Fold, LeftOver, Placement
from lastlook.outfit import LastLook, Step
from lastlook.paper import Level, Notch, PaperPiece, SeamEdge, Use
from lastlook.quantity import Gauge, Origin, gauge_of
from lastlook.sheet.draw.hoops import Hoop
from lastlook.sheet.draw.table import Laid, Table
from lastlook.sheet.record import Came, Material, Record
from lastlook.sheet.schedule import Schedule, Task


def _straight(*points: tuple[float, float]) -> Path:
    return polyline(points)


def skirt() -> tuple[PaperPiece, ...]:
    """Return an A-line front and back on the fold and a straight band."""
    return (_panel("Front", 178.0, 12.0), _panel("Back", 172.0, 22.0), _band())


def _panel(name: str, waist: float, intake: float) -> PaperPiece:
    """Half a panel: centre on the left at x = 0, waist at y = 0, hem at y = -620."""
    wide, hip, hem = waist + intake, 246.0, 310.0
    mouth = wide * 0.45
    first, second = (mouth + intake, 3.0), (mouth, 2.0)
    waist_parts = (
        Path((Cubic((wide, 12.0), (wide - 25, 8.0), (first[0] + 20, 4.0), first),)),
        Path((Cubic(second, (mouth - 20, 1.0), (20.0, 0.0), (0.0, 0.0)),)),
    )
    side = Path(
        (Line((hem, -612.0), (hip, -200.0)), Cubic((hip, -200.0), (hip - 8, -130.0), (wide + 14, -60.0), (wide, 12.0)))
    )
    hem_edge = Path((Cubic((0.0, -620.0), (110.0, -620.0), (220.0, -618.0), (hem, -612.0)),))
    sides = (
        SeamEdge("hem", (hem_edge,), (), 40.0, Use.HEM),
        SeamEdge("side", (side,), (), 15.0),
        SeamEdge("waist", waist_parts, ((mouth + intake / 2, -100.0),), 15.0),
        SeamEdge("centre", (_straight((0.0, 0.0), (0.0, -620.0)),), (), 0.0, Use.FOLD),
    )
    notches = (Notch("hip", "side", (hip, -200.0)),)
    grain = ((90.0, -160.0), (90.0, -540.0))
    return PaperPiece(name, sides, 1, False, notches, (Level("hip", -200.0),), grain)


def _band() -> PaperPiece:
    sides = (
        SeamEdge("waist", (_straight((0.0, 0.0), (740.0, 0.0)),), (), 15.0),
        SeamEdge("end", (_straight((740.0, 0.0), (740.0, 60.0)),), (), 15.0, Use.OPEN),
        SeamEdge("inside", (_straight((740.0, 60.0), (0.0, 60.0)),), (), 15.0),
        SeamEdge("lap", (_straight((0.0, 60.0), (0.0, 0.0)),), (), 15.0, Use.OPEN),
    )
    notches = (Notch("side", "waist", (355.0, 0.0)),)
    return PaperPiece("Waistband", sides, 1, False, notches, (), ((120.0, 15.0), (620.0, 15.0)), role="band")


def back() -> WorkedPiece:
    """Return the back of a raglan pullover: 100 stitches, a rib, a straight body, raglans, a neck."""
    rows: list[WorkedRow] = []

    def work(words: str, structure: str = "stockinette", shapings: tuple[Shaping, ...] = ()) -> None:
        before = rows[-1].after if rows else 100
        change = sum(one.stitches * (1 if one.act is Act.INCREASE else -1) for one in shapings)
        number = len(rows) + 1
        side = Side.RIGHT if number % 2 else Side.WRONG
        after = before + change
        rows.append(WorkedRow(number, side, before, before, after, after, shapings, Span(0, 0), structure, words))

    for _ in range(24):
        work("*K1, p1; rep from * to end.", "rib 1x1")
    for number in range(84):
        work("P." if number % 2 else "K.")
    for edge in ("right", "left"):
        words = "Bind off 4 sts, k to end." if edge == "right" else "Bind off 4 sts, p to end."
        work(words, shapings=(Shaping(Act.BIND_OFF, edge, 4),))
    for _ in range(30):
        both = tuple(Shaping(Act.DECREASE, edge, 1, 2, edge_lean) for edge, edge_lean in _LEANS)
        work("K2, ssk, k to last 4 sts, k2tog, k2.", shapings=both)
        work("P.")
    marks = (("underarm", 108),)
    return WorkedPiece("Back", None, 1, 100, tuple(rows), rows[-1].after, Ended.BOUND_OFF, (), (), marks)


_LEANS = (("right", "left"), ("left", "right"))


def fronts() -> tuple[WorkedPiece, WorkedPiece]:
    """Return the two fronts of a cardigan, mirrored: a rib, a body, bind-offs a row apart, a raglan, a neck edge."""
    return _front("Left Front", "right", 85), _front("Right Front", "left", 86)


def _front(name: str, outer: str, bound: int) -> WorkedPiece:
    """`outer` is the side edge; the underarm is bound off in row `bound`."""
    rows: list[WorkedRow] = []
    inner = "left" if outer == "right" else "right"
    begin, end = ("K2, ssk, k to end.", "K to last 4 sts, k2tog, k2.")
    while len(rows) < 120:
        number = len(rows) + 1
        side = Side.RIGHT if number % 2 else Side.WRONG
        before = rows[-1].after if rows else 50
        words, shapings = ("K." if side is Side.RIGHT else "P."), ()
        if number <= 20:
            words = "*K1, p1; rep from * to end."
        elif number == bound:
            words = f"Bind off 4 sts, {words.lower()[0]} to end."
            shapings = (Shaping(Act.BIND_OFF, outer, 4),)
        elif number > 86 and number % 2:
            words = begin if outer == "right" else end
            shapings = (Shaping(Act.DECREASE, outer, 1, 2, "left" if outer == "right" else "right"),)
            if number % 6 == 3:
                words = begin.replace("end", "last 4 sts, k2tog, k2")
                shapings = (*shapings, Shaping(Act.DECREASE, inner, 1, 2))
        after = before - sum(one.stitches for one in shapings)
        structure = "rib 1x1" if number <= 20 else "stockinette"
        row = WorkedRow(number, side, before, before, after, after, shapings, Span(0, 0), structure, words)
        rows.append(row)
    return WorkedPiece(name, None, 1, 50, tuple(rows), rows[-1].after, Ended.BOUND_OFF, (), (), (("underarm", 84),))


def gauge() -> Gauge:
    """Return a measured gauge of 22 stitches and 30 rows."""
    return gauge_of(22, 30, Origin.MEASURED)


def outline_of(piece: WorkedPiece) -> Path:
    """Return the outline of a piece that is shaped alike on both sides."""
    across, up = 100 / 22, 100 / 30
    middle = (piece.cast_on or 0) * across / 2
    widths = [piece.cast_on or 0, *(row.after for row in piece.rows)]
    right = [(middle + count * across / 2, number * up) for number, count in enumerate(widths)]
    left = [(2 * middle - x, y) for x, y in reversed(right)]
    return polygon([*right, *left])


def look(before: Step, piece: str | None = None) -> LastLook:
    """Return a last look with one thing of each kind open."""
    open_ = (
        Finding(
            "count-short",
            Certainty.PROVEN,
            "Row 14 of Back leaves 86 stitches; the leaflet says 88.",
            "Row 13 leaves 88, and this row takes two away.",
            "Read the count as 86; rows 15 to 40 then agree.",
            checked=True,
        ),
        Finding(
            "gauge-missing",
            Certainty.UNKNOWN,
            "How wide Back comes out is not known yet: no gauge was measured for this yarn.",
            "110 stitches are 458 mm at 24 to 100 mm, and 500 mm at 22.",
            "Knit 30 stitches by 40 rows, wash and dry it, and count the stitches in 100 mm.",
        ),
        Finding(
            "cadence-unclear",
            Certainty.DOUBTFUL,
            "“Every 4th row 6 times” can begin on the next row or four rows on.",
            "Both reach 64 stitches.",
            asks=True,
            readings=("from the next row: 21 rows, 7 cm", "four rows on: 24 rows, 8 cm"),
        ),
    )
    proven = ("Every count printed for Back is the one that is worked.", "The raglan edges meet row for row.")
    cautions = ("Count the needles before you put the work away; one left in a cushion finds a hand.",)
    return LastLook(before, piece, open_, proven, cautions)


def table(fold: Fold = Fold.NONE) -> Table:
    """Return the skirt on a cloth 140 cm wide with a flaw, flat or folded lengthwise."""
    front, back_, band = skirt()
    flaw = ((1180.0, 900.0), (1230.0, 900.0), (1230.0, 930.0), (1180.0, 930.0))
    if fold is Fold.NONE:
        cloth = Cloth(1400.0, 1550.0, flaws=(flaw,), selvedge_mm=10.0, one_way=True)
        places = ((front, 45.0, 345.0, 90.0), (back_, 45.0, 1045.0, 90.0), (band, 760.0, 40.0, 0.0))
        rests = (LeftOver(560.0, 430.0, 740.0, 120.0), LeftOver(120.0, 780.0, 740.0, 1260.0))
    else:
        cloth = Cloth(1400.0, 1550.0, flaws=(flaw,), selvedge_mm=10.0, fold=fold)
        places = ((front, 700.0, 700.0, -90.0), (back_, 1420.0, 700.0, -90.0), (band, 30.0, 40.0, 0.0))
        rests = (LeftOver(250.0, 700.0, 800.0, 20.0),)
    laid = tuple(_laid(piece, (x, y), angle) for piece, x, y, angle in places)
    return Table(cloth, cloth.length_mm or 0.0, laid, rests)


def _laid(piece: PaperPiece, at: tuple[float, float], angle: float) -> Laid:
    outline = piece.cut_line.points(0.05)[:-1]
    return Laid(piece.name, Placement(piece.name, 1, *at, angle), outline, piece.grain, piece.fold)


def altered() -> tuple[PaperPiece, PaperPiece]:
    """Return the skirt's front before and after its waist was taken in."""
    return _panel("Front", 178.0, 12.0), _panel("Front", 170.0, 20.0)


HOOPS = (
    Hoop("bust", 870.0, 960.0, 12.0),
    Hoop("waist", 700.0, 690.0, 9.0),
    Hoop("hip", 960.0, None, because="not known yet: no hip was measured"),
)
RECORD = Record(
    "Harbour choir, spring 1951",
    "for Nell",
    (Material("Bottle green", "wool, 454 g", "a thread"), Material("Green flannel", "137 cm wide", "a snip")),
    (Came("Back", 170, 172, 100, 455.0, 567.0, 118.0), Came("Front", 170)),
)
SCHEDULE = Schedule(
    "Harbour skirt",
    "for Nell",
    (
        ("Before cutting", (Task("Wash the cloth."), Task("Cut, the largest piece first.", is_final=True))),
        ("Sewing", (Task("Sew the darts.", "They turn towards the centre."),)),
    ),
)
