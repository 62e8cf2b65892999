"""Every screen stands on its feet: nothing in the way of anybody, no sideways scrolling on a phone, all reachable."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

SCREENS = [
    "",
    "/leaflet/pullover",
    "/wearer",
    "/cupboard",
    "/paper/skirt",
    "/toile/skirt",
    "/table/skirt",
    "/last-look",
    "/sheets",
    "/record",
    "/needles/pullover",
    "/add",
]
BESIDE = ["/design", "/pages", "/facts"]
"""Screens that another leads to."""
NEVER = ("worked piece", "finding", " mate ", "invalid", "error", "oops", "please")
"""Words that stay in the code."""


@pytest.mark.parametrize("width", [1280, 390])
@pytest.mark.parametrize("path", SCREENS + BESIDE)
def test_a_screen_has_no_barrier(serve: Callable[..., Served], page: Page, path: str, width: int) -> None:
    served = serve(harbour())
    page.set_viewport_size({"width": width, "height": 844})
    page.goto(served.url(path))
    assert page.locator("h1").count() == 1
    assert barriers(page) == []
    assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    shown = page.inner_text("main").lower()
    assert [word for word in NEVER if word in shown] == []


def test_every_place_is_reached_from_the_first_page(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.address)
    places = [one.get_attribute("href") for one in page.locator("nav a").all()]
    assert places == [served.url(path).removeprefix(served.address) for path in SCREENS]
    for place in places:
        page.goto(f"{served.address}{place}")
        assert page.locator('nav a[aria-current="page"]').get_attribute("href") == place


def test_a_page_that_is_not_there_says_so(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    for path in ("/leaflet/balaclava", "/table/apron"):
        answer = page.request.get(served.url(path))
        assert answer.status == 404
        assert "Nothing lies here" in answer.text()
