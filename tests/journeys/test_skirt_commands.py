"""From measurements to true paper on the command line: draft, true, close, alter, and what can be mistyped."""

from __future__ import annotations

import json
import time
from pathlib import Path

import pytest

from lastlook import keep, outfit
from lastlook.cli.main import main

ASKED = ["draft", "skirt", "--kind", "a-line", "--waist", "71cm", "--hip", '38 1/2"', "--hip-depth", "20cm"]


def answered(words: list[str], capsys: pytest.CaptureFixture[str]) -> tuple[int, dict[str, list[dict[str, object]]]]:
    status = main([*words, "--json"])
    return status, json.loads(capsys.readouterr().out)


def test_a_skirt_that_does_not_meet_its_band_is_closed_and_stays_closed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, drafted = answered([*ASKED, "--length", "24½ in", "--band", "70cm", "--out", str(tmp_path / "a")], capsys)
    assert status == 1
    assert [seam["meets"] for seam in drafted["seams"]] == ["exactly", "no"]
    files = [str(piece["svg"]) for piece in drafted["pieces"]]
    assert all('id="cut"' in Path(file).read_text() and 'id="seam"' in Path(file).read_text() for file in files)
    status, closed = answered(["true", *files, "--close", "--out", str(tmp_path / "b")], capsys)
    assert status == 0
    assert [seam["meets"] for seam in closed["seams"]] == ["exactly", "exactly"]
    again = sorted(str(file) for file in (tmp_path / "b").glob("*.svg"))
    status, walked = answered(["true", *again], capsys)
    assert (status, walked["findings"]) == (0, [])
    status, longer = answered(["alter", *again, "--do", "lengthen piece=all by=2cm"], capsys)
    assert status == 0
    before = {piece["name"]: piece["edges_mm"] for piece in closed["pieces"]}
    after = {piece["name"]: piece["edges_mm"] for piece in longer["pieces"]}
    assert after["Front"]["side"] - before["Front"]["side"] == pytest.approx(20, abs=0.01)  # type: ignore[index]


SQUARE = '<svg xmlns="http://www.w3.org/2000/svg" width="9cm" viewBox="0 0 90 90">'
POINTS = "unit: cm\n0 0\n0 -61\n26 -60\n24 -20\n20 1\n"
OUTLINE = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="30cm" height="70cm" viewBox="0 0 300 700">'
    '<path d="M10 10 L210 0 C 225 60 250 130 250 200 L270 620 L10 620 Z"/></svg>'
)


def test_foreign_paper_is_named_altered_and_stays_what_it_is(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "front.svg").write_text(OUTLINE)
    (tmp_path / "back.txt").write_text(POINTS)
    files = [str(tmp_path / "front.svg"), str(tmp_path / "back.txt")]
    status, guessed = answered(["true", *files], capsys)
    assert status == 1
    assert {"edges-guessed", "allowance-unasked"} <= {str(one["kind"]) for one in guessed["findings"]}
    said = ["--piece", "front.svg name=Front edges=centre,hem,side,waist fold=centre line=seam hip=20cm"]
    said += ["--piece", "back.txt name=Back fold=centre line=seam hip=20cm dart=waist:8cm:1cm:11cm notch=side:20cm"]
    body = ["--measure", "waist=71cm", "--measure", "hip=90cm", "--measure", "hip-depth=20cm"]
    status, named = answered(["true", *files, *said, *body, "--out", str(tmp_path / "a")], capsys)
    assert status == 1 and not [one for one in named["findings"] if one["kind"] == "edges-guessed"]
    assert [piece["on_fold"] for piece in named["pieces"]] == ["centre", "centre"]
    assert all(named["girths_mm"][level] is not None for level in ("waist", "high_hip", "hip", "knee", "hem"))  # type: ignore[call-overload]
    again = [str(piece["svg"]) for piece in named["pieces"]]
    status, walked = answered(["true", *again], capsys)
    assert [piece["edges_mm"] for piece in walked["pieces"]] == [piece["edges_mm"] for piece in named["pieces"]]
    status, longer = answered(["alter", *files, *said, *body, "--do", "lengthen piece=all by=3cm"], capsys)
    before, after = (one["pieces"][0]["edges_mm"]["centre"] for one in (named, longer))  # type: ignore[index]
    assert after - before == pytest.approx(30, abs=0.01)


def test_an_old_envelope_gives_away_what_was_cut_down(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "back.txt").write_text(POINTS)
    words = ["true", str(tmp_path / "back.txt"), "--piece", "back.txt name=Back fold=centre line=seam"]
    status, found = answered([*words, "--envelope", "pieces=Front,Back length=64cm"], capsys)
    assert status == 1
    assert [one["kind"] for one in found["findings"]] == ["tissue-missing", "tissue-cut-down"]


def test_spare_cloth_becomes_wider_side_allowances(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    keep.write_folder(outfit.demo(), tmp_path / "demo")
    status = main(["alter", str(tmp_path / "demo"), "--reserve", "--json"])
    said = capsys.readouterr()
    wider = json.loads(said.out)["alterations"]
    assert status == 1 and "room for" in said.err
    assert [(one["kind"], one["piece"]) for one in wider] == [("allowance", "Front"), ("allowance", "Back")]
    assert 2 <= wider[0]["by_mm"] <= 25


@pytest.mark.parametrize(
    "drawing",
    [
        '<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/hostname">]><svg><text>&a;</text></svg>',
        SQUARE + '<script>1</script><path d="M0 0 H90 V90 H0 Z"/></svg>',
        SQUARE + '<path onload="x()" d="M0 0 H90 V90 H0 Z"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg">' + "<g>" * 1_000_000 + "</g>" * 1_000_000 + "</svg>",
        '<svg xmlns="http://www.w3.org/2000/svg" width="90cm" viewBox="0 0 900 900"><path d="M0 0 '
        + " ".join(f"L{n % 1000} {n // 1000}" for n in range(1_000_000))
        + ' Z"/></svg>',
        SQUARE + '<path d="M0 0 L90 90 H0 L90 0 Z"/></svg>',
        SQUARE + '<path d="M0 0 L90 0 L90 90"/></svg>',
        SQUARE + '<path d="M0 0 L1e400 0 L9 9 Z"/></svg>',
        "",
    ],
    ids=["entities", "script", "handler", "groups", "points", "crossing", "open", "endless", "empty"],
)
def test_a_hostile_drawing_gives_one_finding_at_once(
    drawing: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "front.svg").write_text(drawing)
    start = time.perf_counter()
    assert main(["true", str(tmp_path / "front.svg"), "--json"]) == 2
    assert time.perf_counter() - start < 5
    said = capsys.readouterr()
    assert len(said.err.splitlines()) == 1
    found = json.loads(said.out)
    assert found["pieces"] == [] and len(found["findings"]) == 1


@pytest.mark.parametrize(
    "words",
    [
        ["draft", "skirt", "--waist", "5'13\"", "--hip", "97cm", "--length", "62cm"],
        ["draft", "skirt", "--waist", "900cm", "--hip", "97cm", "--length", "62cm"],
        ["draft", "skirt", "--waist", "71", "--hip", "97cm", "--length", "62cm"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm"],
        ["draft", "skirt", "--kind", "bell", "--waist", "71cm", "--hip", "97cm", "--length", "62cm"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm", "--length", "62cm", "--ease-hip=-9cm"],
        ["draft", "skirt", "--kind", "gored", "--gores", "5", "--waist", "71cm", "--hip", "97cm", "--length", "62cm"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm", "--length", "62cm", "--band-width", "80cm"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm", "--length", "62cm", "--cloth", "unobtainium"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm", "--length", "62cm", "--with", "nonsense"],
        ["draft", "skirt", "--waist", "71cm", "--hip", "97cm", "--length", "62cm", "--stretch", "900%"],
        ["true", "nowhere.svg"],
        ["true", "nowhere.svg", "--piece", "front.svg name"],
        ["alter", "nowhere", "--do", "widen piece=Front by=1cm"],
    ],
    ids=range(14),
)
def test_what_can_not_be_read_is_said_once_and_nothing_is_written(
    words: list[str], capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(words) == 2
    said = capsys.readouterr()
    assert (said.out + said.err).strip()
    assert "Traceback" not in said.out + said.err and not list(tmp_path.iterdir())
