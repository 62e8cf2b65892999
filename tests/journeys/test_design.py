"""Designed from measures: asked for in words, shown with its drawing and its leaflet, kept in the outfit."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

RIDGES = """Multiple of 4 plus 2
Row 1: *K 2, p 2; rep from * to last 2 sts, k 2.
Row 2: *P 2, k 2; rep from * to last 2 sts, p 2.
"""


def test_a_slipover_is_designed_and_kept(serve: Callable[..., Served], page: Page) -> None:
    swatch = (("stitches", "33"), ("width", "14 cm"), ("rows", "44"), ("height", "14 cm"), ("washed", "yes"))
    served = serve(harbour(*(Edit(f"stock.swatch.square.{key}", value) for key, value in swatch)))
    page.goto(served.url("/add"))
    page.get_by_role("link", name="Design one from your measures").click()
    expect(page.locator("#d-ease option", has_text="standard")).to_contain_text("more than you")
    page.select_option("#d-garment", "slipover")
    page.select_option("#d-neck", "v")
    page.click("#design")
    expect(page.locator("h1")).to_contain_text("slipover")
    expect(page.locator("tr", has_text="Bust girth")).to_contain_text("in")
    expect(page.locator("figure")).not_to_have_count(0)
    assert barriers(page) == []
    shown = page.locator(".typed").text_content()
    page.fill("#d-name", "Best slipover")
    page.select_option("#d-yarn", "bottle-green")
    page.click("#keep-design")
    expect(page.locator(".sizes")).to_contain_text("adds up")
    kept = outfit.read(served.document()).knittings[-1]
    assert (kept.name, kept.yarn, kept.swatch) == ("best-slipover", "bottle-green", "square")
    assert served.document().text(kept.leaflet) == shown


def test_what_can_t_be_designed_is_said(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/design"))
    page.click("#design")
    expect(page.locator(".note")).to_contain_text("without a gauge")
    page.fill("#d-stitches", "many")
    page.fill("#d-rows", "32")
    page.click("#design")
    expect(page.locator(".note")).to_contain_text("are no gauge")
    page.fill("#d-stitches", "24")
    page.fill("#d-body", "3 miles")
    page.click("#design")
    expect(page.locator(".note")).to_contain_text("3 miles")
    assert len(outfit.read(served.document()).knittings) == 1


def test_a_texture_and_buttons_are_laid_in(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/design"))
    page.select_option("#d-garment", "set-in-cardigan")
    page.fill("#d-stitches", "24")
    page.fill("#d-rows", "32")
    page.fill("#d-buttons", "7 x 24 ligne")
    page.get_by_text("A texture or lace for all of it").click()
    page.fill("#d-texture", "No multiple here")
    page.click("#design")
    expect(page.locator(".note")).to_contain_text("does not say its multiple")
    page.fill("#d-texture", RIDGES)
    page.click("#design")
    expect(page.locator(".typed")).to_contain_text("PATTERN STITCH (multiple of 4 sts plus 4)")
    assert barriers(page) == []
