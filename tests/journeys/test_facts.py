"""An outfit whose own file is broken: the trouble is said, and it can be mended on the screen."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from lastlook import outfit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

SCREENS = ("", "/wearer", "/cupboard", "/last-look", "/sheets", "/record", "/add", "/design")


def test_a_broken_file_is_said_and_mended(serve: Callable[..., Served], page: Page) -> None:
    whole = harbour()
    text = whole.text(outfit.MAIN) or ""
    served = serve(whole.with_file(outfit.MAIN, text.replace("[wearer]", "[wearer").encode()))
    page.goto(served.url())
    expect(page.locator("main")).to_contain_text("can't be read")
    page.get_by_role("link", name="Go to the outfit's own words").first.click()
    expect(page.locator("h1")).to_have_text("The outfit's own words")
    assert barriers(page) == []
    page.fill("#facts", page.input_value("#facts").replace("[wearer", "[wearer]", 1))
    page.click("#keep-facts")
    expect(page.locator(".whose")).to_contain_text("for Dorrit")
    expect(page.locator(".note")).to_have_count(0)
    assert served.document().text(outfit.MAIN) == text
    page.click("#undo")
    expect(page.locator(".note")).to_contain_text("can't be read")


@pytest.mark.parametrize("broken", [b"[wearer", b"\xff\xfe\x00", b'[stock]\nyarn = 3\n[knitting]\nx = "y"\n'])
def test_every_screen_answers_whatever_the_file_says(serve: Callable[..., Served], page: Page, broken: bytes) -> None:
    served = serve(harbour().with_file(outfit.MAIN, broken))
    for path in SCREENS:
        assert page.request.get(served.url(path)).status == 200, path
