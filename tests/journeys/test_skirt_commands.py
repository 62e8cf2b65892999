"""From measurements to true paper on the command line: draft, true, close, alter, and what can be mistyped."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

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
        ["true", "nowhere.svg"],
        ["alter", "nowhere", "--do", "widen piece=Front by=1cm"],
    ],
    ids=range(9),
)
def test_what_can_not_be_read_is_said_once_and_nothing_is_written(
    words: list[str], capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(words) == 2
    said = capsys.readouterr()
    assert (said.out + said.err).strip()
    assert "Traceback" not in said.out + said.err and not list(tmp_path.iterdir())
