"""Published and worked figures on skirts against our own functions and drafts; each row names its source.

`drafting_values.csv` says of every row where it was read or whether it is remembered; no row outranks a tape measure.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Callable
from pathlib import Path

import pytest

from lastlook import paper
from lastlook.paper import fit
from lastlook.paper.alter.length import BELOW_HIP_MM
from lastlook.paper.draft import ask, circle, gored, pleated
from lastlook.paper.easing import eased_share
from lastlook.paper.fit import elastic, hem, seated, sharing

ROWS = list(csv.DictReader(io.StringIO((Path(__file__).parent / "drafting_values.csv").read_text(encoding="utf-8"))))
INCH, CM = 25.4, 10.0
HANDOUT = paper.draft(
    "straight",
    {"waist_girth": 760, "hip_girth": 1000, "waist_to_hip": 200},
    {"length_mm": 600, "ease_waist_mm": 24, "ease_hip_mm": 50, "dart_mm": 20},
)


def edge(name: str, side: str, drafted: paper.Drafted = HANDOUT) -> float:
    piece = drafted.piece(name)
    found = piece.side(side) if piece else None
    assert found is not None
    return found.sewn_mm


def before_dart(name: str) -> float:
    piece = HANDOUT.piece(name)
    assert piece is not None
    return edge(name, "waist") + sum(dart.intake_mm for dart in piece.darts)


def hip_width(name: str) -> float:
    piece = HANDOUT.piece(name)
    assert piece is not None
    return piece.width_mm(-200) or 0.0


def circle_draft(fraction: float, waist_mm: float) -> paper.Drafted:
    kind = next(name for name, part in circle.FRACTIONS.items() if part == fraction)
    return paper.draft(kind, {"waist_girth": waist_mm}, {"length_mm": 600, "ease_waist_mm": 0})


def drawn_radius(fraction: float, waist_mm: float) -> float:
    piece = circle_draft(fraction, waist_mm).pieces[0]
    waist = piece.side("waist")
    assert waist is not None and piece.centre is not None
    return math.dist(waist.start, piece.centre)


def band(waist_mm: float, ease_mm: float, lap_mm: float) -> float:
    measures = {"waist_girth": waist_mm, "hip_girth": waist_mm + 250, "waist_to_hip": 200}
    options = {"length_mm": 600, "ease_waist_mm": ease_mm, "lap_mm": lap_mm}
    return edge("Waistband", "inside", paper.draft("straight", measures, options))


def eased_top(band_mm: float, ease_in_mm: float) -> float:
    measures = {"waist_girth": band_mm, "hip_girth": 960, "waist_to_hip": 200}
    options = {"length_mm": 600, "ease_waist_mm": 0, "ease_in_mm": ease_in_mm}
    return next(s.a_length for s in paper.draft("a-line", measures, options).seams if s.mate.b.piece == "Waistband")


def gore_waist(waist_mm: float, count: int) -> float:
    return gored.gore_shares(waist_mm, count)


CHECKS: dict[str, Callable[[], float]] = {
    "C110": lambda: drawn_radius(1, 725) / CM,
    "C111": lambda: drawn_radius(0.5, 725) / CM,
    "C112": lambda: drawn_radius(0.25, 725) / CM,
    "C113": lambda: drawn_radius(0.75, 725) / CM,
    "C114": lambda: circle.waist_radius_mm(41.25 * INCH, 1) / INCH,
    "C115": lambda: circle.hem_girth_mm(115.4, 600, 1) / CM,
    "C116": lambda: gore_waist(25 * INCH, 5) / INCH,
    "C117": lambda: gore_waist(40 * INCH, 5) / INCH,
    "C118": lambda: gored.gore_shares(2.25 * 36 * INCH, 5, 10 * INCH) / INCH,
    "C119": lambda: fit.foundation_mm(40 * INCH, 80 * INCH)[0] / INCH,
    "C120": lambda: fit.foundation_mm(40 * INCH, 80 * INCH)[1] / INCH,
    "C121": lambda: fit.foundation_mm(40 * INCH, 80 * INCH)[2] / INCH,
    "C122": lambda: (hip_width("Front") + hip_width("Back")) / CM,
    "C123": lambda: hip_width("Back") / CM,
    "C124": lambda: before_dart("Back") / CM,
    "C125": lambda: before_dart("Front") / CM,
    "C126": lambda: (HANDOUT.girths_mm["waist"] or 0) / CM,
    "C127": lambda: (hip_width("Back") - before_dart("Back")) / CM,
    "C128": lambda: fit.half_block_mm(36 * INCH, INCH) / INCH,
    "C129": lambda: fit.suppression_mm(1000, 50, 760, 24) / CM,
    "C130": lambda: fit.at_each_side_edge_mm(266, 4, 30) / CM,
    "C131": lambda: seated.USUAL_MM["waist"][0] / INCH,
    "C132": lambda: ask.DEFAULTS["ease_waist_mm"] / INCH,
    "C133": lambda: ask.DEFAULTS["ease_hip_mm"] / INCH,
    "C134": lambda: seated.USUAL_MM["hip"][1] / INCH,
    "C135": lambda: band(24 * INCH, INCH, 0.75 * INCH) / INCH,
    "C136": lambda: band(28 * INCH, 0, INCH) / INCH,
    "C137": lambda: eased_share(29, 28) * 100,
    "C138": lambda: eased_top(710, 25) / CM,
    "C141": lambda: float(elastic.needs_no_opening(28 * INCH, 38 * INCH)),
    "C142": lambda: float(elastic.needs_no_opening(28 * INCH, 39 * INCH)),
    "C143": lambda: pleated.take_up_mm(44, 14),
    "C144": lambda: pleated.take_up_mm(44, 20),
    "C145": lambda: pleated.take_up_mm(44, 27.5),
    "C146": lambda: pleated.per_pleat_mm(30, 2.125, 1),
    "C147": lambda: pleated.per_pleat_mm(24, 2.125, 7),
    "C148": lambda: pleated.pleated_cloth_mm(700, 20, 30) / CM,
    "C149": lambda: hem.usual_depth_mm(2.0) / INCH,
    "C150": lambda: hem.usual_depth_mm(2 * math.pi) / INCH,
    "C151": lambda: hem.usual_depth_mm(0.6) / INCH,
    "C152": lambda: hem.hem_excess_mm(6.283185, 25) / CM,
    "C153": lambda: hem.hem_excess_mm(hem.flare(1000, 1400, 400), 40) / CM,
    "C154": lambda: sharing.mixed_allowances_mm(8, 0.625 * INCH, 15) / CM,
    "C155": lambda: sharing.in_two_places_mm(5 * INCH)[1] / INCH,
    "C156": lambda: BELOW_HIP_MM / INCH,
    "C157": lambda: ask.PRINTED_HIP_DEPTH_MM / INCH,
    "C158": lambda: sharing.per_edge_mm(40, 2) / CM,
    "C159": lambda: sharing.per_edge_mm(3 * INCH, 6) / INCH,
    "C160": lambda: sharing.per_half_mm(34 * INCH, 30 * INCH) / INCH,
    "C180": lambda: elastic.stretch_share(100, 140) * 100,
    "C181": lambda: elastic.elastic_cut_mm(720) / CM,
    "C182": lambda: elastic.elastic_shorter_mm(30 * INCH) / INCH,
}


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_figure(row: dict[str, str]) -> None:
    allowed = float(row["tolerance"]) or 1e-9
    assert CHECKS[row["id"]]() == pytest.approx(float(row["expected"]), abs=allowed), row["source"]


def test_every_row_has_its_check() -> None:
    assert sorted(CHECKS) == sorted(row["id"] for row in ROWS)


@pytest.mark.parametrize("kind, fraction", sorted(circle.FRACTIONS.items()))
def test_the_waist_seam_of_a_circle_is_2_pi_r(kind: str, fraction: float) -> None:
    drafted = paper.draft(kind, {"waist_girth": 710}, {"length_mm": 620})
    sewn = sum(edge(p.name, "waist", drafted) * p.times for p in drafted.pieces if p.role == "skirt")
    piece = drafted.pieces[0]
    waist = piece.side("waist")
    assert waist is not None and piece.centre is not None
    radius = math.dist(waist.start, piece.centre)
    assert sewn == pytest.approx(2 * math.pi * fraction * radius, abs=0.1)
    assert drafted.girths_mm["hem"] == pytest.approx(2 * math.pi * fraction * (radius + 620), abs=0.5)
