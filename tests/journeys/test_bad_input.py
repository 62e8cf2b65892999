"""What can't be taken is said in one clear sentence, with status 2; nothing is lost or written elsewhere."""

from __future__ import annotations

import zipfile
from pathlib import Path

import pytest

from lastlook import keep, outfit
from lastlook.cli.main import main


@pytest.fixture
def place(tmp_path: Path) -> Path:
    folder = tmp_path / "choir"
    keep.write_folder(outfit.demo(), folder)
    return folder


def said(words: list[str], capsys: pytest.CaptureFixture[str]) -> str:
    """Run a command that must end with 2, and return what it said on standard error."""
    assert main(words) == 2
    told = capsys.readouterr().err.strip()
    assert told and "Traceback" not in told
    return told


def rewrite(place: Path, old: str, new: str) -> None:
    file = place / outfit.MAIN
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


FACTS = [
    ('stature = "5\'5\\""', 'stature = "5\'13\\""', "5'13"),
    ('waist_girth = "27 in"', 'waist_girth = "-27 in"', "less than nothing"),
    ('waist_girth = "27 in"', 'waist_girth = "900 cm"', "900 cm"),
    ('waist_girth = "27 in"', 'waste_girth = "27 in"', "waste_girth"),
    ('hand = "right"', 'hnad = "right"', "hnad"),
    ("balls = 7", 'grams = "-5 g"', "less than nothing"),
    ('width = "54 in"', 'width = "six"', "six"),
    ("[outfit]", "[outfit", "outfit.toml"),
]


@pytest.mark.parametrize(("old", "new", "named"), FACTS, ids=[new for _, new, _ in FACTS])
def test_a_fact_that_cant_be_taken(
    place: Path, old: str, new: str, named: str, capsys: pytest.CaptureFixture[str]
) -> None:
    rewrite(place, old, new)
    before = (place / outfit.MAIN).read_bytes()
    assert named in said(["verdict", str(place)], capsys)
    assert (place / outfit.MAIN).read_bytes() == before


def test_gauge_zero(place: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with (place / outfit.MAIN).open("a", encoding="utf-8") as file:
        file.write('\n[stock.swatch.washed-square]\nstitches = 0\nwidth = "8 in"\n')
    assert "stitches" in said(["verdict", str(place)], capsys)


def test_cloth_narrower_than_a_piece(place: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rewrite(place, 'width = "54 in"', 'width = "15 in"')
    assert "wide" in said(["verdict", str(place)], capsys)


@pytest.mark.parametrize("data", [b"", b"\x00\x01\xff\xfe binary"], ids=["empty", "binary"])
def test_leaflet_that_is_no_text(tmp_path: Path, data: bytes, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "leaflet.txt"
    file.write_bytes(data)
    assert "leaflet.txt" in said(["read", str(file)], capsys)


def test_no_such_outfit(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    said(["verdict", str(tmp_path / "nowhere")], capsys)


def test_zip_that_climbs_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bad = tmp_path / "mailed.zip"
    with zipfile.ZipFile(bad, "w") as archive:
        archive.writestr("outfit.toml", "[outfit]\n")
        archive.writestr("../climbed.txt", "out")
    assert "climbed" in said(["verdict", str(bad)], capsys)
    assert not (tmp_path.parent / "climbed.txt").exists()
    assert sorted(path.name for path in tmp_path.iterdir()) == ["mailed.zip"]


def test_svg_with_an_external_entity(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    secret = tmp_path / "secret.txt"
    secret.write_text("not for you", encoding="utf-8")
    piece = tmp_path / "piece.svg"
    piece.write_text(
        f'<!DOCTYPE svg [<!ENTITY leak SYSTEM "{secret.as_uri()}">]>'
        '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm"><text>&leak;</text></svg>',
        encoding="utf-8",
    )
    told = said(["true", str(piece)], capsys)
    assert "not for you" not in told
