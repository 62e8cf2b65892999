"""Paper pieces from elsewhere on the screen: taken in, their edges named by pressing them, their marks said, sewn."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from lastlook import outfit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

DRAWING = """<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="700mm" viewBox="0 0 900 700">
<path id="Front" d="M 0 0 L 300 0 L 350 600 L 0 600 Z"/>
<path id="Back" d="M 500 0 L 800 0 L 850 600 L 500 600 Z"/></svg>"""
HOSTILE = '<!DOCTYPE s [<!ENTITY a SYSTEM "file:///etc/hosts">]><svg xmlns="http://www.w3.org/2000/svg">&a;</svg>'


def _take_in(page: Page, served: Served, file: Path) -> None:
    page.goto(served.url("/add"))
    page.fill("#pieces-name", "Wrap skirt")
    page.set_input_files("#pieces-files", file)
    page.click("#add-pieces-button")


def test_edges_are_named_by_pressing_them(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    (tmp_path / "Wrap (old).svg").write_text(DRAWING, encoding="utf-8")
    _take_in(page, served, tmp_path / "Wrap (old).svg")
    expect(page.locator("h1")).to_have_text("The wrap skirt, on paper")
    front = page.locator(".foreign", has_text="Front: its edges and marks")
    assert barriers(page) == []
    front.get_by_role("radio", name="centre").check()
    centre = front.locator("select[data-run]").evaluate_all(
        "(all) => all.find((one) => one.options[0].textContent.includes('centre')).dataset.run"
    )
    front.locator(f'g[data-name="run {centre}"]').press("Enter")
    expect(front.locator(f'select[data-run="{centre}"]')).to_have_value("centre")
    front.locator("select[name='fold']").select_option("centre")
    front.locator("input[name='allowances:hem']").fill("2 in")
    front.locator("input[name='darts-from']").fill("4 in")
    front.locator("input[name='darts-wide']").fill("3/4 in")
    front.locator("input[name='darts-deep']").fill("3 1/2 in")
    front.locator("input[name='notches-at']").fill("8 in")
    front.get_by_role("button", name="Keep what I said of Front").click()
    expect(page.locator(".paper", has_text="Front")).to_contain_text("on the fold")
    one = served.room.desk(served.number).sewn("wrap-skirt")
    piece = one.drafted.piece("Front")
    assert piece is not None
    assert piece.fold_edge == "centre"
    assert [dart.intake_mm for dart in piece.darts] == [pytest.approx(19.05, abs=0.05)]
    assert [notch.edge for notch in piece.notches] == ["side"]
    hem = piece.side("hem")
    assert hem is not None
    assert round(hem.allowance_mm, 1) == 50.8
    front.get_by_role("button", name="darts of Front").click()
    expect(front).not_to_contain_text("dart marked")


def test_a_strip_lies_on_a_foreign_piece(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    (tmp_path / "two.svg").write_text(DRAWING, encoding="utf-8")
    _take_in(page, served, tmp_path / "two.svg")
    page.select_option("#strip-way", "longer")
    page.fill("#strip-by", "1 in")
    page.get_by_role("button", name="Lay it on").click()
    expect(page.locator(".taped")).to_have_count(1)
    side = served.room.desk(served.number).sewn("wrap-skirt").drafted.pieces[0].side("side")
    assert side is not None
    assert round(side.sewn_mm - 602.1) == 25


def test_what_can_t_be_taken_in_is_said(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    for name, data in (("hostile.svg", HOSTILE.encode()), ("picture.svg", b"\x89PNG\xff"), ("../../up.exe", b"up")):
        file = tmp_path / name.rsplit("/", 1)[-1]
        file.write_bytes(data)
        _take_in(page, served, file)
        expect(page.locator(".refusal")).to_be_visible()
    assert [one.name for one in outfit.read(served.document()).sewings] == ["skirt"]
    assert not any(name.startswith("taken/") for name, _ in served.document().files)
