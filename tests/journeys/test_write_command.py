"""A leaflet written out in one size is a leaflet again, and names its size on every piece."""

from __future__ import annotations

from pathlib import Path

import pytest

from lastlook import knit, outfit
from lastlook.cli.main import main


def test_written_out_and_read_again(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    leaflet = tmp_path / "leaflet.txt"
    text = (outfit.demo().text("leaflets/harbour-lights.txt") or "").replace("inc 6 sts", "inc 8 sts")
    leaflet.write_text(text, encoding="utf-8")
    out = tmp_path / "one-size.txt"
    assert main(["write", str(leaflet), "--size", "36", "--out", str(out)]) == 0
    written = out.read_text(encoding="utf-8")
    before = knit.read(text).by_size["36"]
    for piece in before.pieces:
        if piece.part_of is None and piece.cast_on:
            assert f"{piece.name.upper()}" in written and "(size 36" in written
    again = next(iter(knit.read(written).by_size.values()))
    for name in ("Back", "Sleeve"):
        old, new = before.piece(name), again.piece(name)
        assert old and new
        assert [row.after for row in new.rows] == [row.after for row in old.rows]


def test_british_words_for_a_left_hand(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    leaflet = tmp_path / "leaflet.txt"
    leaflet.write_text(outfit.demo().text("leaflets/harbour-lights.txt") or "", encoding="utf-8")
    words = ["write", str(leaflet), "--size", "36", "--terms", "uk", "--units", "cm", "--hand", "left"]
    assert main(words) == 1, "the slip is still in it"
    told = capsys.readouterr()
    assert "Cast off" in told.out and "bind off" not in told.out.lower() and "TENSION" in told.out
    assert "10 cm" in told.out
    assert "does not add up" in told.err


def test_a_size_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    leaflet = tmp_path / "leaflet.txt"
    leaflet.write_text(outfit.demo().text("leaflets/harbour-lights.txt") or "", encoding="utf-8")
    assert main(["write", str(leaflet), "--size", "44"]) == 2
    assert "32, 34, 36, 38" in capsys.readouterr().err
