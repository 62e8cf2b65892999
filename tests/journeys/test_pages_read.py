"""From photographs to a leaflet on the screen: doubtful figures beside their pictures, put right by hand, and kept."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.scan import engine
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour
from tests.photograph import Camera, Print, set_pages, taken

CUFF = "CUFF\n\nCast on 60 sts. and k. 8 rows.\nRow 9: K 2, k 2 tog, k to end. (59 sts.)\nBind off.\n"


def _photograph(place: Path) -> Path:
    (page, _), *_ = set_pages(CUFF, Print(measure=900, longest=700))
    place.write_bytes(taken(page, Camera(tilt=2, blur=1.2, noise=8, shade=0.3, scale=0.6)))
    return place


def test_photographs_become_a_leaflet(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    page.goto(served.url("/add"))
    page.fill("#pages-name", "Cuff")
    page.set_input_files("#pages-files", _photograph(tmp_path / "page.jpg"))
    page.click("#add-pages-button")
    expect(page.locator("h1")).to_contain_text("Reading 1 page")
    expect(page.locator("h1")).to_have_text("Paper beside text", timeout=60_000)
    expect(page.locator(".papers-read img")).to_have_count(1)
    assert barriers(page) == []
    text = page.input_value("#whole-text")
    assert "Cast on 60 sts" in text
    page.fill("#whole-text", text.replace("60", "62"))
    page.click("#keep-whole")
    expect(page.locator(".sizes")).to_be_visible()
    document = served.document()
    assert "Cast on 62 sts" in (document.text("leaflets/cuff.txt") or "")
    assert document.has("photographs/cuff-page-1.jpg")
    assert outfit.read(document).knittings[-1].leaflet == "leaflets/cuff.txt"


def test_what_is_no_picture_is_said(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    (tmp_path / "list.jpg").write_bytes(b"a shopping list")
    page.goto(served.url("/add"))
    page.set_input_files("#pages-files", tmp_path / "list.jpg")
    page.click("#add-pages-button")
    expect(page.locator(".note")).to_contain_text("list.jpg can't be opened as a picture.")
    assert not served.document().has("photographs/pullover-page-1.jpg")
    assert page.request.get(served.url("/pages/7.jpg")).status == 404


def test_without_the_engine_it_is_said(
    serve: Callable[..., Served], page: Page, monkeypatch: pytest.MonkeyPatch
) -> None:
    served = serve(harbour())
    monkeypatch.setattr(engine, "is_at_hand", lambda: False)
    monkeypatch.setattr("lastlook.scan.is_at_hand", lambda: False)
    page.goto(served.url("/add"))
    expect(page.locator("main")).to_contain_text("the engine for it is not installed")
    page.goto(served.url("/pages"))
    expect(page.locator("main")).to_contain_text("the engine for it is not installed")
