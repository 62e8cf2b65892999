"""The command that reads a leaflet: its JSON has the shape that is promised, its statuses say what they promise."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from lastlook.cli.main import main
from tests import corpus, shared_truth

TEXTS = {one.name: one.text for one in [*corpus.leaflets(), *shared_truth.leaflets()]}
WAYS = {"bound off", "fastened off", "drawn up", "on holder", "joined", "open"}
VERDICTS = {"adds up", "does not add up", "needs an answer", "not known yet"}
GOOD = (
    "GAUGE: 6 sts = 1 inch; 8 rows = 1 inch.\n\n"
    "BACK\nCast on 40 sts. Work in garter st for 10 rows -- 40 sts. Bind off.\n"
)


def _read(file: Path, capsys: pytest.CaptureFixture[str], *more: str) -> tuple[int, Any]:
    status = main(["read", str(file), "--json", *more])
    return status, json.loads(capsys.readouterr().out)


def _ints(*values: Any) -> bool:
    return all(type(value) is int for value in values)


def _number(value: Any) -> bool:
    return type(value) in (int, float)


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_the_json_has_the_promised_shape(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "leaflet.txt"
    file.write_text(TEXTS[name], encoding="utf-8")
    with corpus.without_remedies():
        status, got = _read(file, capsys)
    lines = TEXTS[name].splitlines()
    assert got["title"] is None or isinstance(got["title"], str)
    assert list(got["by_size"]) == got["sizes"] and all(isinstance(size, str) for size in got["sizes"])
    assert set(got["gauge"]) == {"stitches_per_10cm", "rows_per_10cm"}
    assert all(value is None or _number(value) for value in got["gauge"].values())
    read = got["read"]
    assert _ints(read["phrases"], read["understood"]) and 0 <= read["understood"] <= read["phrases"]
    for spot in read["not_understood"]:
        assert _spotted(spot, lines) and isinstance(spot["text"], str)
    for one in got["by_size"].values():
        _size(one, len(lines))
    for finding in got["findings"]:
        assert _spotted(finding, lines)
        _finding(finding, got["sizes"])
    verdicts = {one["verdict"] for one in got["by_size"].values()}
    assert status == (0 if verdicts == {"adds up"} else 1)


def _spotted(spot: dict[str, Any], lines: list[str]) -> bool:
    return _ints(spot["line"], spot["column"]) and 1 <= spot["line"] <= len(lines) + 1 and spot["column"] >= 1


def _size(one: dict[str, Any], lines: int) -> None:
    assert one["verdict"] in VERDICTS
    names = {piece["name"] for piece in one["pieces"]}
    for piece in one["pieces"]:
        assert isinstance(piece["name"], str)
        assert piece["part_of"] is None or piece["part_of"] in names
        assert piece["cast_on"] is None or _ints(piece["cast_on"])
        assert piece["rows"] is None or _ints(piece["rows"])
        after, used = piece["stitches_after_row"], piece["stitches_used_in_row"]
        assert _ints(*after, *used) and len(after) == len(used) == piece["rows"]
        assert _ints(piece["end"]["stitches"]) and piece["end"]["how"] in WAYS
        for stated in piece["stated"]:
            assert _ints(stated["line"], stated["stated"], stated["worked"]) and 1 <= stated["line"] <= lines
    for mate in one["mates"]:
        assert isinstance(mate["a"], str) and isinstance(mate["b"], str)
        assert mate["unit"] in ("rows", "stitches", "mm")
        assert mate["meets"] in ("exactly", "by easing", "on purpose", "no")
        assert all(_number(mate[key]) for key in ("a_length", "b_length", "difference", "allowed"))


def _finding(one: dict[str, Any], sizes: list[str]) -> None:
    assert one["certainty"] in ("proven", "doubtful", "unknown", "note")
    assert type(one["asks"]) is bool and type(one["checked"]) is bool
    assert one["size"] is None or one["size"] in sizes
    assert all(isinstance(one[key], str) and one[key] for key in ("kind", "say", "why"))
    assert one["try"] is None or isinstance(one["try"], str)
    assert one["readings"] is None or all(isinstance(way, str) for way in one["readings"])


@pytest.mark.parametrize(
    ("written", "way"),
    [("utf-8", ""), ("utf-8-sig", ""), ("utf-16", ""), ("utf-16-le", ""), ("utf-16-be", ""), ("cp1252", "½ ¾ – “k 2”"),
     ("latin-1", "½"), ("utf-32", "")],
)  # fmt: skip
def test_however_the_text_was_saved(written: str, way: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "leaflet.txt"
    file.write_bytes(f"A vest {way}\n\n{GOOD}".replace("\n", "\r\n").encode(written))
    status, got = _read(file, capsys)
    assert status == 0 and got["by_size"]["one size"]["pieces"][0]["end"] == {"stitches": 40, "how": "bound off"}


@pytest.mark.parametrize(
    "raw",
    [b"", b" \n\t\n", b"\xef\xbb\xbf", b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 8, bytes(range(1, 32)) * 40,
     b"Cast on 40 sts.\0 Knit.", b"k 2, p 2 " * 230_000, b"%PDF-1.4\n" + bytes(range(128, 256)) * 20 + b"\0"],
    ids=["empty", "blank", "mark alone", "picture", "controls", "empty byte", "over 2 MB", "pdf"],
)  # fmt: skip
def test_what_is_no_leaflet_is_said_in_one_line(raw: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "leaflet.txt"
    file.write_bytes(raw)
    _refused(str(file), capsys)


def test_a_folder_or_nothing_at_all(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _refused(str(tmp_path), capsys)
    _refused(str(tmp_path / "nothing.txt"), capsys)
    _refused("/dev/zero", capsys)
    _refused("no\0name", capsys)


def _refused(place: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["read", place, "--json"]) == 2
    told = capsys.readouterr()
    assert told.out == "" and len(told.err.splitlines()) == 1 and told.err.strip()


def test_one_size_alone_and_a_size_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "leaflet.txt"
    file.write_text("SIZES: 32 (34)\n" + GOOD.replace("40 sts.", "40 (44) sts.").replace("40 sts.", "40 (44) sts."))
    status, got = _read(file, capsys, "--size", "34")
    assert list(got["by_size"]) == ["34"] and got["sizes"] == ["32", "34"]
    status, got = _read(file, capsys, "--size", "50")
    assert status == 1 and got["by_size"] == {} and got["findings"][0]["kind"] == "size-not-there"
