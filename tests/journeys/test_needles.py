"""Beside the needles: the way back when the count is off, two pieces at once, the time it takes."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

NEEDLES = "/needles/pullover"


def test_a_count_that_is_off_is_explained(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour(Edit("knitting.pullover.place.Back", 118)))
    page.goto(served.url(f"{NEEDLES}?piece=Back"))
    page.locator("#astray summary").click()
    page.fill("#astray-found", "78")
    page.get_by_role("button", name="What happened?").click()
    expect(page.locator("#astray")).to_contain_text("there should be 76 stitches; you have 78")
    expect(page.locator("#astray")).to_contain_text("was left out")
    expect(page.locator("#astray")).to_contain_text("Rip back to the end of row")
    assert barriers(page) == []
    page.fill("#astray-after", "")
    page.fill("#astray-found", "100")
    page.get_by_role("button", name="What happened?").click()
    expect(page.locator("#astray .reach")).to_contain_text("are on the needle after row")
    assert "log" not in (served.document().text("outfit.toml") or "")


def test_sleeves_are_worked_at_once(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(NEEDLES))
    page.get_by_role("link", name="First Sleeve and Second Sleeve, at once").click()
    expect(page.locator(".needle")).to_have_count(2)
    page.click("#done")
    expect(page.locator(".row-words span").first).to_contain_text("Row 2 of")
    expect(page.locator(".row-words span").last).to_contain_text("Row 2 of")
    assert barriers(page) == []
    page.click("#back")
    expect(page.locator(".row-words span").last).to_contain_text("Row 1 of")


def test_a_sitting_gives_the_pace_and_the_hours_left(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(f"{NEEDLES}?piece=Back"))
    page.locator("#jump summary").click()
    page.fill("#place", "20")
    page.get_by_role("button", name="I am there").click()
    expect(page.locator(".row-words span")).to_contain_text("Row 21 of")
    page.fill("#sitting", "soon")
    page.get_by_role("button", name="Note it").click()
    expect(page.locator(".refusal")).to_contain_text("no span of time")
    page.fill("#sitting", "1 h 44 min")
    page.get_by_role("button", name="Note it").click()
    expect(page.locator(".time")).to_contain_text("Your pace: 5.0 minutes for 100 stitches, from 1 sitting.")
    expect(page.locator(".time")).to_contain_text("All that is left: about")
    (sitting,) = outfit.read(served.document()).knittings[0].log
    assert (sitting.piece, sitting.first, sitting.last, sitting.minutes) == ("Back", 1, 20, 104.0)
    assert sitting.day == "1951-03-02"


def test_hands_that_loosened_are_seen_and_taken(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(f"{NEEDLES}?piece=Back"))
    page.locator("#in-work summary").click()
    for key, typed in (("stitches", "21"), ("width", "4 in"), ("rows", "15"), ("height", "2 in")):
        page.fill(f"#now-{key}", typed)
    page.get_by_role("button", name="Hold it against the plan").click()
    expect(page.locator("#in-work .note")).to_contain_text("knitted looser than planned")
    assert barriers(page) == []
    page.click("#take-gauge")
    expect(page.locator(".latest")).to_contain_text("was counted on the needles.")
    plan = served.room.desk(served.number).knitted("pullover")
    assert plan.plan.swatch == "pullover-on-the-needles"
    assert plan.working_gauge is not None
    assert round(plan.working_gauge.stitches.best, 1) == 20.7


def test_a_note_is_pinned_to_a_row_and_seen_when_it_comes(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(f"{NEEDLES}?piece=Back"))
    page.fill("#pin-row", "2")
    page.fill("#pin-note", "second ball begins")
    page.get_by_role("button", name="Pin it").click()
    expect(page.locator(".latest")).to_contain_text("Back, row 2: second ball begins")
    expect(page.locator(".pinned-note")).to_have_count(0)
    page.click("#done")
    expect(page.locator(".pinned-note")).to_have_text("second ball begins")
    page.click("#done")
    expect(page.locator(".lately .pinned-note")).to_have_text("second ball begins")
    assert [(one.piece, one.row) for one in outfit.read(served.document()).knittings[0].notes] == [("Back", 2)]
