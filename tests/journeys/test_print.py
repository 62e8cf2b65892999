"""Printing an outfit from the command line: everything lands in one folder, and bad places are told plainly."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest

from lastlook import keep, outfit
from lastlook.cli.main import main


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    keep.write_folder(outfit.demo(), tmp_path / "outfit")
    return tmp_path / "outfit"


def test_the_sheets_of_the_demo_are_printed(demo: Path, tmp_path: Path) -> None:
    assert main(["print", str(demo), "--into", str(tmp_path / "out"), "--paper", "a4"]) in (0, 1)
    names = {file.name for file in (tmp_path / "out").iterdir()}
    assert {"skirt-cutting.pdf", "skirt-paper-a4.pdf", "skirt-paper-letter.pdf", "last-look.pdf", "record.pdf"} <= names
    for file in (tmp_path / "out").glob("*.pdf"):
        assert len(pypdfium2.PdfDocument(file.read_bytes())) >= 1
    for file in (tmp_path / "out").glob("*.svg"):
        assert "<title>" in file.read_text(encoding="utf-8")


def test_one_piece_alone_is_printed_again(demo: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert main(["print", str(demo), "--into", str(out), "--only", "paper-a4", "--piece", "waistband"]) == 0
    assert [file.name for file in out.iterdir()] == ["skirt-paper-a4.pdf"]
    labels = pypdfium2.PdfDocument(out / "skirt-paper-a4.pdf").get_toc()
    assert not any("Front" in label.get_title() for label in labels)


@pytest.mark.parametrize("words", [["--piece", "cape"], ["--only", "hat"]], ids=["piece", "file"])
def test_what_there_is_none_of_is_told(
    words: list[str], demo: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["print", str(demo), "--into", str(tmp_path / "out"), *words]) == 2
    assert words[1] in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_file_in_the_way_is_told(demo: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "taken").write_text("mine")
    assert main(["print", str(demo), "--into", str(tmp_path / "taken")]) == 2
    assert "can't be written" in capsys.readouterr().err
    assert (tmp_path / "taken").read_text() == "mine"


def test_no_outfit_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["print", str(tmp_path / "nowhere"), "--into", str(tmp_path / "out")]) == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert not (tmp_path / "out").exists()
