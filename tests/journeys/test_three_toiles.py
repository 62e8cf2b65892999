"""A printed size too small in the waist: three toiles, and in the end a waist seam that meets its band."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from lastlook.outfit import Answer
from lastlook.piece import Meets
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served

PRINTED_MM = -11.0
"""By how much each side edge of the printed size is too narrow at the waist; its band is as short."""


def _printed() -> outfit.Document:
    """Return the demo outfit with the skirt in a printed size that is 44 mm too small in the waist, band and all."""
    edits = [
        Edit("sewing.skirt.alterations.0.by", f"{PRINTED_MM} mm"),
        Edit("sewing.skirt.alterations.1.by", f"{PRINTED_MM} mm"),
        Edit(
            "sewing.skirt.alterations.+",
            (("kind", "band-length"), ("piece", "Waistband"), ("by_mm", 4 * PRINTED_MM)),
        ),
    ]
    return outfit.change(outfit.demo(), edits)


def _waist(served: Served) -> tuple[float, float]:
    """Return the girth at the waist and how far the skirt top and the band are apart, in mm."""
    drafted = served.room.desk(served.number).derived.sewn[0].drafted
    seam = next(seam for seam in drafted.seams if seam.mate.b.edge == "waist")
    return drafted.girths_mm["waist"] or 0.0, seam.difference


def _put_on(page: Page, number: int, sewn_to: str) -> None:
    page.fill("#toile-cloth", "calico")
    page.select_option("#toile-to", sewn_to)
    page.click("#put-on")
    expect(page.locator("h2", has_text=f"Muslin {number}, of calico, sewn to the {sewn_to}")).to_be_visible()


def _write_down(page: Page, at: str, what: str, amount: str = "") -> None:
    page.select_option("#seen-at", at)
    page.select_option("#seen-what", what)
    page.fill("#seen-amount", amount)
    page.get_by_role("button", name="Write it down").click()


def test_three_toiles_end_with_a_waist_seam_that_meets(serve: Callable[..., Served], page: Page) -> None:
    served = serve(_printed())
    fits = served.room.desk(served.number).verdict.fits
    assert next(part for part in fits.parts if part.subject == "Skirt at the waist").answer is Answer.NO
    small, _ = _waist(served)
    page.goto(served.url("/toile/skirt"))

    _put_on(page, 1, "hip")
    _write_down(page, "waist", "needs more", "2 1/4 in")
    page.locator(".answers .cures button").first.click()
    expect(page.locator(".on-paper")).to_have_count(1)
    assert _waist(served)[0] == pytest.approx(small + 57.2, abs=2.0)

    _put_on(page, 2, "hip")
    _write_down(page, "waist", "pinched out", "1/4 in")
    expect(page.locator(".answers .say").first).to_contain_text("13 mm in all")
    page.locator(".answers .cures button").first.click()
    expect(page.locator(".on-paper")).to_have_count(2)
    assert _waist(served)[0] == pytest.approx(small + 57.2 - 12.7, abs=2.0)

    _put_on(page, 3, "hem")
    _write_down(page, "waist", "fits")
    expect(page.locator(".answers .say").first).to_contain_text("At the waist: fits.")
    assert barriers(page) == []
    wide, apart = _waist(served)
    assert apart == pytest.approx(44.0, abs=3.0)

    page.get_by_role("link", name="the paper", exact=True).first.click()
    page.locator(".cures button", has_text="Waistband").first.click()
    expect(page.locator("tr", has_text="Waistband: waist").locator("td").last).to_have_text("exactly")
    assert abs(_waist(served)[1]) <= 0.1
    assert _waist(served)[0] == pytest.approx(wide, abs=0.5)
    seams = served.room.desk(served.number).derived.sewn[0].drafted.seams
    assert all(seam.meets is Meets.EXACTLY for seam in seams)
    waist = served.room.desk(served.number).verdict.fits
    assert next(part for part in waist.parts if part.subject == "Skirt at the waist").answer is Answer.YES


def test_what_lies_below_the_seams_says_nothing_and_contradictions_are_said(
    serve: Callable[..., Served], page: Page
) -> None:
    served = serve(_printed())
    page.goto(served.url("/toile/skirt"))
    _put_on(page, 1, "hip")
    _write_down(page, "hem", "needs more", "2 cm")
    expect(page.locator(".worn .help").last).to_contain_text("says nothing yet")
    _write_down(page, "waist", "needs more", "2 cm")
    expect(page.locator(".answers .say")).to_have_count(1)
    _write_down(page, "waist", "pinched out", "1 cm")
    expect(page.locator(".worn .note")).to_contain_text("exclude each other")
    _write_down(page, "hip", "pinched out", "a little")
    expect(page.locator(".refusal")).to_contain_text("a little")
    assert len(served.room.desk(served.number).outfit.sewings[0].toiles[0].observations) == 3
