"""A measure edited on the screen changes the answers; undo and redo reach through a restart."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import keep, web
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour


def test_a_changed_waist_changes_the_answer_and_comes_back(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/wearer"))
    row = page.locator("tr", has_text="Skirt at the waist").first
    before = row.inner_text()
    page.fill("#m-waist_girth", "31 in")
    page.press("#m-waist_girth", "Enter")
    expect(row).not_to_have_text(before)
    expect(row).to_contain_text("31 in")
    assert page.evaluate("document.activeElement.id") == "m-waist_girth"
    page.click("#undo")
    expect(row).to_contain_text("27 in")
    page.keyboard.press("Control+Shift+Z")
    expect(row).to_contain_text("31 in")


def test_undo_reaches_through_a_restart(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/wearer"))
    page.fill("#m-hip_girth", "38 in")
    page.press("#m-hip_girth", "Enter")
    expect(page.locator("#undo")).to_be_enabled()
    assert served.room.shelf.may_undo(served.number)
    again = web.Room(served.room.shelf, served.room.clock)
    assert isinstance(again.shelf, keep.Shelf)
    page.goto(served.url(""))
    page.keyboard.press("Control+z")
    expect(page.locator("#undo")).to_be_disabled()
    assert served.document() == harbour()


def test_what_can_t_be_read_stands_beside_its_field(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/wearer"))
    page.fill("#m-waist_girth", "5'13\"")
    page.press("#m-waist_girth", "Enter")
    beside = page.locator("li.measure", has=page.locator("#m-waist_girth"))
    expect(beside.locator(".note")).to_be_visible()
    expect(page.locator("#m-waist_girth")).to_have_value("5'13\"")


def test_screens_work_without_scripts(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    context = page.context.browser.new_context(java_script_enabled=False)  # type: ignore[union-attr]
    plain = context.new_page()
    plain.goto(served.url("/wearer"))
    plain.fill("#m-hip_girth", "38 in")
    plain.press("#m-hip_girth", "Enter")
    plain.wait_for_load_state()
    assert 'hip_girth = "38 in"' in (served.document().text("outfit.toml") or "")
    assert plain.url == served.url("/wearer")
    context.close()


def test_a_swatch_is_counted_and_the_fit_becomes_known(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/cupboard"))
    expect(page.locator(".strip")).to_contain_text("Fits? not known yet")
    for key, value in (("stitches", "36"), ("width", "6 in"), ("rows", "48"), ("height", "6 in"), ("washed", "yes")):
        page.fill(f"#new-pullover-{key}", value)
    page.locator("section", has=page.locator("#new-pullover-stitches")).get_by_role("button").click()
    expect(page.locator(".strip")).not_to_contain_text("Fits? not known yet")
    page.goto(served.url("/wearer"))
    expect(page.locator("tr", has_text="Pullover at the bust")).to_be_visible()
