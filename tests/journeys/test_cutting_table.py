"""The cutting table under the hands: laid by search, moved by mouse, touch and keys, judged while it moves."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from lastlook import lay, outfit
from lastlook.finding import Edit
from lastlook.web.behind import laying
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

TABLE = "/table/skirt"


def _placements(served: Served) -> list[dict[str, object]]:
    text = served.document().text("lays/skirt.json")
    return [] if text is None else json.loads(text)["placements"]


def _place(served: Served, name: str) -> dict[str, object]:
    return next(one for one in _placements(served) if one["id"] == name)


@pytest.fixture(scope="module")
def lay_found() -> outfit.Document:
    """The outfit with a lay of its skirt, found once for all journeys."""
    (one,) = outfit.derive(outfit.read(harbour())).sewn
    assert one.problem is not None
    found = lay.search(one.problem, passes=400, seed=1)
    assert found.proven
    return outfit.with_lay(harbour(), one, found)


@pytest.fixture
def laid(serve: Callable[..., Served], page: Page, lay_found: outfit.Document) -> Served:
    """An outfit whose skirt lies on its cloth."""
    served = serve(lay_found)
    page.goto(served.url(TABLE))
    expect(page.locator("h1")).to_contain_text("Left over:")
    return served


def _drag(page: Page, name: str, x: float, y: float) -> None:
    piece = page.locator(f'g[data-name^="cut "][data-name$="{name}"] > path').first
    piece.scroll_into_view_if_needed()
    box = piece.bounding_box()
    assert box
    from_x, from_y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(from_x, from_y)
    page.mouse.down()
    page.mouse.move(from_x + x, from_y + y, steps=6)


def test_a_search_lays_everything_and_the_headline_says_what_is_left(serve: Callable[..., Served], page: Page) -> None:
    laid = serve(harbour())
    page.goto(laid.url(TABLE))
    expect(page.locator("h1")).to_have_text("Not laid yet")
    page.click("#search")
    expect(page.locator("h1")).to_contain_text("Left over:", timeout=60_000)
    assert {one["id"] for one in _placements(laid)} >= {"Front", "Back"}
    assert barriers(page) == []
    assert "Proven" in page.inner_text(".lead")
    assert laid.room.desk(laid.number).derived.sewn[0].judgement is not None


def test_the_judge_answers_while_a_piece_is_dragged(laid: Served, page: Page) -> None:
    before = _place(laid, "Front")
    _drag(page, "Back", 60, 30)
    expect(page.locator("#verdict")).not_to_have_text("It may lie here.")
    expect(page.locator("#verdict")).not_to_be_empty()
    expect(page.locator("g.held.wrong")).to_have_count(1)
    page.mouse.up()
    expect(page.locator("h1")).to_have_text("The lay no longer holds")
    assert _place(laid, "Front") == before
    page.click("#undo")
    expect(page.locator("h1")).to_contain_text("Left over:")


def test_a_piece_lies_where_it_was_let_go(laid: Served, page: Page) -> None:
    before = _place(laid, "Waistband")
    scale = page.evaluate("document.querySelector('#bench svg').getScreenCTM().a")
    times = page.evaluate("JSON.parse(document.getElementById('bench').dataset.hands).times")
    _drag(page, "Waistband", 40, -12)
    page.mouse.up()
    expect(page.locator("#undo")).to_have_attribute("title", "Waistband was moved on the cloth.")
    after = _place(laid, "Waistband")
    assert float(str(after["x"])) - float(str(before["x"])) == pytest.approx(40 / scale / times, abs=1.0)
    assert float(str(after["y"])) - float(str(before["y"])) == pytest.approx(12 / scale / times, abs=1.0)


def test_keys_move_and_a_piece_held_fast_stays(laid: Served, page: Page) -> None:
    band = page.locator("li", has=page.get_by_role("button", name="Waistband", exact=False)).last
    before = _place(laid, "Waistband")
    band.locator(".take").click()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowRight")
    expect(page.locator("#undo")).to_have_attribute("title", "Waistband was moved on the cloth.")
    moved = _place(laid, "Waistband")
    assert float(str(moved["x"])) - float(str(before["x"])) == pytest.approx(11.0, abs=0.05)
    band.get_by_label("hold fast").check()
    page.keyboard.press("ArrowRight")
    page.click("#search")
    expect(page.locator("#undo")).to_have_attribute("title", "The rest of the skirt was laid anew.", timeout=60_000)
    assert _place(laid, "Waistband") == moved
    expect(band.get_by_label("hold fast")).to_be_checked()
    expect(page.locator("h1")).to_contain_text("Left over:")


def test_a_piece_turned_round_keeps_its_middle(laid: Served, page: Page) -> None:
    box = page.locator('g[data-name$="Waistband"] > path').first.bounding_box()
    band = page.locator("li", has=page.get_by_role("button", name="Waistband", exact=False)).last
    band.get_by_role("button", name="Turn").click()
    expect(page.locator("#undo")).to_have_attribute("title", "Waistband was moved on the cloth.")
    after = page.locator('g[data-name$="Waistband"] > path').first.bounding_box()
    assert box and after
    assert after["width"] == pytest.approx(box["width"], abs=1.5)
    page.locator("#bench").scroll_into_view_if_needed()
    assert after["height"] == pytest.approx(box["height"], abs=1.5)


def test_a_long_search_is_stopped(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour(Edit("stock.cloth.green-flannel.length", "24 in")))
    page.goto(served.url(TABLE))
    page.click("#search")
    if page.locator("#stop").is_visible():
        page.click("#stop")
    expect(page.locator("#search")).to_be_enabled(timeout=20_000)
    assert _placements(served) == []
    expect(page.locator("#verdict")).not_to_be_empty()


@pytest.fixture
def phone(browser: Browser) -> Iterator[Page]:
    """A small window that is touched, not pointed at."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
    yield context.new_page()
    context.close()


def test_a_finger_moves_a_piece_for_a_left_handed_cutter(
    serve: Callable[..., Served], phone: Page, lay_found: outfit.Document
) -> None:
    served = serve(outfit.change(lay_found, [Edit("outfit.hand", "left")]))
    phone.goto(served.url(TABLE))
    assert "begins on your right" in phone.inner_text(".lead")
    before = _place(served, "Waistband")
    piece = phone.locator('g[data-name$="Waistband"] > path').first
    piece.scroll_into_view_if_needed()
    box = piece.bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    touch = phone.context.new_cdp_session(phone)
    for kind, at in (("touchStart", x), ("touchMove", x - 6), ("touchMove", x - 14), ("touchEnd", None)):
        points = [] if at is None else [{"x": at, "y": y}]
        touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})
    expect(phone.locator("#undo")).to_have_attribute("title", "Waistband was moved on the cloth.")
    assert float(str(_place(served, "Waistband")["x"])) > float(str(before["x"])) + 10


def test_what_would_make_it_fit_is_tried_proven_and_taken(
    serve: Callable[..., Served], page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(laying, "LONGEST_S", 1.0)
    monkeypatch.setattr(laying, "CHOICES_S", 12.0)
    served = serve(harbour(Edit("stock.cloth.green-flannel.length", "44 in")))
    page.goto(served.url(TABLE))
    page.click("#search")
    take = page.locator(".choices button").first
    expect(take).to_be_visible(timeout=90_000)
    assert barriers(page) == []
    take.click()
    expect(page.locator(".lead")).to_contain_text("Proven")
    one = served.room.desk(served.number).derived.sewn[0]
    assert one.judgement is not None
    assert one.judgement.proven


def test_a_finger_moves_a_piece_step_by_step(laid: Served, phone: Page) -> None:
    before = _place(laid, "Waistband")
    phone.goto(laid.url(TABLE))
    phone.locator(".cuts li", has_text="Waistband").locator(".take").tap()
    phone.locator("#nudge-ArrowRight").tap()
    phone.locator("#nudge-ArrowRight").tap()
    expect(phone.locator("#undo")).to_have_attribute("title", "Waistband was moved on the cloth.")
    after = _place(laid, "Waistband")
    assert float(str(after["x"])) - float(str(before["x"])) == pytest.approx(10.0, abs=0.05)


def test_a_cut_is_a_fact_and_the_rest_is_laid_round_it(laid: Served, page: Page) -> None:
    before = _place(laid, "Front")
    front = page.locator(".cuts li", has_text="Front")
    front.get_by_role("button", name="it is cut").click()
    expect(front).to_contain_text("cut out")
    plan = laid.room.desk(laid.number).outfit.sewings[0]
    assert [(one.piece, one.day) for one in plan.cut] == [("Front", "1951-03-02")]
    assert barriers(page) == []
    front.locator(".take").click()
    page.keyboard.press("ArrowRight")
    page.click("#search")
    expect(page.locator("#undo")).to_have_attribute("title", "The rest of the skirt was laid anew.", timeout=60_000)
    assert _place(laid, "Front") == before
    page.click("#undo")
    page.click("#undo")
    expect(front.get_by_role("button", name="it is cut")).to_be_visible()


def test_every_core_is_at_it_where_it_is_hard(
    serve: Callable[..., Served], page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(laying, "HARD_S", 0.0)
    monkeypatch.setattr(laying, "LONGEST_S", 60.0)
    served = serve(harbour())
    page.goto(served.url(TABLE))
    page.click("#search")
    expect(page.locator("h1")).to_contain_text("Left over:", timeout=60_000)
    assert json.loads(served.document().text("lays/skirt.json") or "")["placements"]
