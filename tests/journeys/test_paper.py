"""The paper pieces: a seam that does not meet, its remedies taken, strips of tape laid on and lifted off."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.piece import Meets
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served

PAPER = "/paper/skirt"


def _gap_mm(served: Served) -> float:
    seams = served.room.desk(served.number).derived.sewn[0].drafted.seams
    return next(seam.difference for seam in seams if seam.mate.b.edge == "waist")


def test_an_offered_remedy_closes_the_waist_seam(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    assert abs(_gap_mm(served)) > 10
    page.goto(served.url(PAPER))
    row = page.locator("tr", has_text="Waistband: waist")
    expect(row.locator("td").last).to_have_text("no")
    page.locator(".cures button").first.click()
    expect(row.locator("td").last).to_have_text("exactly")
    assert abs(_gap_mm(served)) <= 0.1
    assert barriers(page) == []
    seams = served.room.desk(served.number).derived.sewn[0].drafted.seams
    assert all(seam.meets is Meets.EXACTLY for seam in seams)


def test_a_strip_is_laid_on_lifted_off_and_laid_on_again(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    page.goto(served.url(PAPER))
    before = _gap_mm(served)
    page.select_option("#strip-piece", "Front")
    page.select_option("#strip-way", "in-waist")
    page.fill("#strip-by", "3 mm")
    page.get_by_role("button", name="Lay it on").click()
    strip = page.locator(".taped", has_text="Take in 3 mm")
    expect(strip).to_be_visible()
    after = _gap_mm(served)
    assert after == pytest.approx(before - 6, abs=1.0)
    strip.get_by_role("button").click()
    expect(strip.get_by_role("button")).to_have_text("Lay on again")
    assert _gap_mm(served) == pytest.approx(before, abs=1e-6)
    strip.get_by_role("button").click()
    expect(strip.get_by_role("button")).to_have_text("Lift off")
    assert _gap_mm(served) == pytest.approx(after, abs=1e-6)
    page.click("#undo")
    page.click("#undo")
    page.click("#undo")
    expect(strip).to_have_count(0)
    assert served.document() == outfit.demo()


def test_an_amount_that_can_t_be_read_is_said_and_nothing_is_kept(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    page.goto(served.url(PAPER))
    page.fill("#strip-by", "a bit")
    page.press("#strip-by", "Enter")
    expect(page.locator(".refusal")).to_contain_text("a bit")
    assert served.document() == outfit.demo()


def test_versions_lie_over_each_other(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    page.goto(served.url(PAPER))
    page.fill("#strip-by", "1 in")
    page.select_option("#strip-way", "longer")
    page.press("#strip-by", "Enter")
    expect(page.locator(".taped", has_text="Lengthen Front")).to_be_visible()
    page.select_option("#against", label="Taken in as it was.")
    page.get_by_role("button", name="Compare").click()
    shown = page.locator("section", has=page.locator("#over-heading"))
    expect(shown.locator("figcaption")).to_have_text(["Front, before and now"])
    expect(shown.locator("svg")).to_contain_text("side 1 in longer")
    page.select_option("#over", label="Taken in as it was.")
    page.get_by_role("button", name="Compare").click()
    expect(shown).to_contain_text("Nothing differs.")
