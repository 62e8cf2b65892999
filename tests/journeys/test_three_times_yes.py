"""The demo outfit on screen: every remedy that is offered taken, the one missing fact given, three times yes."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served

SWATCH = {
    "stitches": "50",
    "width": "8 in",
    "rows": "64",
    "height": "8 in",
    "grams": "17.8 g",
    "scale": "0.1 g",
    "washed": "yes",
}
MOST_REMEDIES = 8


def _answers(page: Page) -> list[str]:
    return [one.inner_text() for one in page.locator(".question .answer").all()]


def test_the_offered_remedies_lead_to_three_times_yes(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    page.goto(served.url())
    assert _answers(page)[:2] == ["no", "not known yet"]
    page.goto(served.url("/cupboard"))
    for key, value in SWATCH.items():
        page.fill(f"#new-pullover-{key}", value)
    page.locator("section", has=page.locator("#new-pullover-stitches")).get_by_role("button").click()
    expect(page.locator("#new-pullover-stitches")).to_have_count(0)
    page.goto(served.url("/table/skirt"))
    page.click("#search")
    expect(page.locator("h1")).to_contain_text("Left over:", timeout=60_000)
    page.goto(served.url())
    for _ in range(MOST_REMEDIES):
        remedy = page.locator(".question .cures button").first
        if not remedy.count():
            break
        before = page.locator("#undo").get_attribute("title")
        remedy.click()
        expect(page.locator("#undo")).not_to_have_attribute("title", before or "")
    assert _answers(page) == ["yes", "yes", "yes"]
    assert served.room.desk(served.number).verdict.is_yes()
    assert barriers(page) == []
