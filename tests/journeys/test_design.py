"""Designed from measures: asked for in words, shown with its drawing and its leaflet, kept in the outfit."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour


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
