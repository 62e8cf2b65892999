"""From the camera to the text: two photographed pages of an invented leaflet, tilted, in columns, badly lit."""

from __future__ import annotations

import importlib.util
import json
import re
from pathlib import Path

import pytest

from lastlook import scan
from lastlook.cli.main import main
from tests.photograph import Camera, Print, set_pages, taken

LEAFLET = Path(__file__).resolve().parent.parent.parent / "examples" / "leaflets" / "campus-raglan-1955.txt"
NUMBER = re.compile(r"[\d½¼¾]+")


@pytest.fixture(scope="module")
def photographs(tmp_path_factory: pytest.TempPathFactory) -> tuple[list[str], str]:
    """Two pages in two columns as files, and the words that are on them."""
    folder = tmp_path_factory.mktemp("photographs")
    how = Print(columns=2, measure=560, longest=330)
    camera = Camera(tilt=3, perspective=0.02, blur=1.0, noise=8, shade=0.4, scale=0.8)
    text = LEAFLET.read_text(encoding="utf-8")
    names, truth = [], []
    for number, (page, words) in enumerate(set_pages(text[text.index("SLEEVES: Slip") :], how)[:2]):
        file = folder / f"page-{number + 1}.jpg"
        file.write_bytes(taken(page, camera))
        names.append(str(file))
        truth.append(words)
    return names, "\n".join(truth)


def test_photographs_become_text(
    photographs: tuple[list[str], str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    names, truth = photographs
    out, check = tmp_path / "leaflet.txt", tmp_path / "check.html"
    status = main(["scan", *names, "--out", str(out), "--check", str(check), "--json"])
    answer = json.loads(capsys.readouterr().out)
    text = out.read_text(encoding="utf-8")
    assert status == (1 if answer["doubtful"] else 0)
    assert answer["text"] == text
    assert _solid(text) == _solid(truth)
    assert NUMBER.findall(text) == NUMBER.findall(truth)
    assert [round(page["tilt"]) for page in answer["pages"]] == [-3, -3]
    assert {word["page"] for word in answer["words"]} == {1, 2}
    for word in answer["words"]:
        left, top, right, bottom = word["box"]
        page = answer["pages"][word["page"] - 1]
        assert 0 <= left < right <= page["width"] + 40 and 0 <= top < bottom <= page["height"] + 40
    html = check.read_text(encoding="utf-8")
    assert html.count("<image ") == 2 and "http" not in html.replace("http-equiv", "")


def test_no_picture_is_one_line(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "page.jpg"
    file.write_bytes(b"not a picture at all")
    for name, said in ((str(file), "can't be opened as a picture"), (str(tmp_path / "none.jpg"), "no such file")):
        assert _status(["scan", name]) == 2
        told = capsys.readouterr()
        assert said in told.err and told.err.count("\n") == 1 and not told.out


def test_without_the_engine_one_command_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "page.jpg"
    file.write_bytes(b"any")
    found = importlib.util.find_spec
    monkeypatch.setattr(importlib.util, "find_spec", lambda name: None if name == "rapidocr" else found(name))
    assert not scan.is_at_hand()
    assert _status(["scan", str(file)]) == 2
    assert "pip install 'lastlook[photo]'" in capsys.readouterr().err


def _status(words: list[str]) -> int:
    try:
        return main(words)
    except SystemExit as end:
        return int(end.code or 0)


def _solid(text: str) -> str:
    """The text without spaces, with its dashes alike."""
    return re.sub(r"[-—–]+", "-", re.sub(r"\s+", "", text)).replace("’", "'")
