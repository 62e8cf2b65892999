"""The yarn and the way back, from the command line: the same JSON words as `read`, outfits taken, slips refused."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from lastlook import keep, outfit
from lastlook.cli.main import main

LEAFLET = """SIZE: 34.

GAUGE: 6 sts = 1 inch; 8 rows = 1 inch in stockinette st.

SLEEVE
Cast on 40 sts. Work in stockinette st, inc 1 st each end of next row, then every 4th row 5 times -- 52 sts.
Work even for 20 rows. Bind off.
"""
SAME = {"title", "sizes", "gauge", "read", "by_size", "findings", "measures", "rungs"}


@pytest.fixture
def file(tmp_path: Path) -> str:
    path = tmp_path / "sleeve.txt"
    path.write_text(LEAFLET, encoding="utf-8")
    return str(path)


@pytest.fixture
def place(tmp_path: Path) -> str:
    folder = tmp_path / "choir"
    keep.write_folder(outfit.demo(), folder)
    return str(folder)


BAD = [
    ("yarn", ["--have", "90 g", "--ball", "50 g = 125 m", "--weighed", "Nose=4g"], "Nose"),
    ("yarn", ["--have=-5 g", "--ball", "50 g = 125 m"], "less than nothing"),
    ("yarn", ["--have", "90 g", "--gauge", ""], "gauge"),
    ("yarn", ["--have", "90 g", "--swatch", "0x0=9g"], "swatch"),
    ("rescue", ["--row", "24", "--found", "999999"], "999999"),
    ("rescue", ["--row", "24", "--found", "-5"], "less than nothing"),
    ("rescue", ["--row", "24", "--found", "48", "--minutes", "nan"], "no pace"),
    ("rescue", ["--row", "24", "--found", "48", "--minutes", "-3"], "no pace"),
    ("rescue", ["--row", "240", "--found", "48"], "no row 240"),
    ("rescue", ["--row", "24", "--found", "48", "--gauge", ""], "gauge"),
    ("knit", ["--gauge", ""], "gauge"),
    ("knit", ["--gauge", "0x30"], "0x30"),
    ("knit", ["--longer", "nose=2cm"], "nose"),
    ("knit", ["--build", "sideways"], "sideways"),
]


@pytest.mark.parametrize(("command", "words", "named"), BAD, ids=[" ".join(words) for _, words, _ in BAD])
def test_a_slip_is_said_in_one_line(
    command: str, words: list[str], named: str, file: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([command, file, *words]) == 2
    told = capsys.readouterr()
    assert named in told.err and len(told.err.strip().splitlines()) == 1 and not told.out


def test_every_command_speaks_the_same_json(file: str, place: str, capsys: pytest.CaptureFixture[str]) -> None:
    for words in (
        ["yarn", file, "--have", "90 g", "--ball", "50 g = 125 m"],
        ["yarn", place],
        ["rescue", file, "--row", "14", "--found", "47"],
        ["rescue", file, "--found", "44"],
        ["rescue", place, "--piece", "Back", "--row", "30", "--found", "200"],
        ["knit", file, "--gauge", "20x28"],
    ):
        assert main([*words, "--json"]) in (0, 1)
        told = json.loads(capsys.readouterr().out)
        assert set(told) >= SAME, words


def test_an_outfit_says_what_its_yarn_does(place: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["yarn", place]) in (0, 1)
    told = capsys.readouterr().out
    assert "Chance that" in told and "the freest length last" in told
    assert main(["yarn", place, "--have", "90 g"]) == 2
    assert "--have" in capsys.readouterr().err
