"""The record: photographs kept and laid over each other, words of her own, all of it in the outfit's folder."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour


def _picture(place: Path, grey: int) -> Path:
    """Write a small PNG of one shade."""
    rows = (b"\0" + bytes([grey]) * 40) * 60

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", 40, 60, 8, 0, 0, 0, 0)
    place.write_bytes(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")
    )
    return place


def test_photographs_are_kept_and_laid_over_each_other(
    serve: Callable[..., Served], page: Page, tmp_path: Path
) -> None:
    served = serve(harbour(Edit("sewing.skirt.toiles.+", (("cloth", "calico"), ("sewn_to", "hem")))))
    page.goto(served.url("/toile/skirt"))
    page.set_input_files("#snap-files", _picture(tmp_path / "front.png", 90))
    page.fill("#snap-note", "from the front")
    page.click("#snap-keep")
    expect(page.locator(".snaps p")).to_have_text("Skirt, number 1: from the front, 1951-03-02")
    page.goto(served.url("/record"))
    page.set_input_files("#snap-files", _picture(tmp_path / "side.png", 200))
    page.select_option("#snap-of", "pullover")
    page.click("#snap-keep")
    expect(page.locator(".snaps li")).to_have_count(2)
    expect(page.locator(".two")).to_have_class("two laid")
    page.locator("#fade").fill("80")
    assert page.locator(".above").evaluate("(one) => one.style.opacity") == "0.8"
    assert page.locator(".snaps img").evaluate_all("(all) => all.every((one) => one.naturalWidth === 40)")
    assert barriers(page) == []
    kept = outfit.read(served.document()).photographs
    assert [(one.file, one.of, one.toile) for one in kept] == [
        ("photographs/001.png", "skirt", 1),
        ("photographs/002.png", "pullover", None),
    ]


def test_what_is_no_photograph_is_refused(serve: Callable[..., Served], page: Page, tmp_path: Path) -> None:
    served = serve(harbour())
    (tmp_path / "run.jpg").write_bytes(b"<html><script>alert(1)</script>")
    page.goto(served.url("/record"))
    page.set_input_files("#snap-files", tmp_path / "run.jpg")
    page.click("#snap-keep")
    expect(page.locator(".refusal")).to_contain_text("No photograph was kept.")
    assert outfit.read(served.document()).photographs == ()
    for name in ("..%2foutfit.toml", "001.png", "%2e%2e/outfit.toml"):
        assert page.request.get(served.url(f"/photographs/{name}")).status == 404


def test_the_maker_s_own_words_stand_in_the_record(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/record"))
    page.fill("#again", "The rib again.\nNot the side zip.")
    page.click("#keep-again")
    expect(page.locator(".latest")).to_contain_text("A note was made in the record.")
    expect(page.locator("#again")).to_have_value("The rib again.\nNot the side zip.")
    assert outfit.read(served.document()).again == "The rib again.\nNot the side zip."
    expect(page.locator("main")).to_contain_text("Let out 9.5 mm on each side edge of Front")
