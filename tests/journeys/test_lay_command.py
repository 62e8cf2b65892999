"""`lastlook lay` from a file to its answer: proven, not found, not readable, drawn, and the same for the same seed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from lastlook import lay
from lastlook.cli.main import main

SQUARE = [[0, 0], [200, 0], [200, 100], [0, 100]]


def _asked(folder: Path, cloth: dict[str, Any], quantity: int = 2) -> Path:
    value = {"cloth": cloth, "pieces": [{"id": "pocket", "outline": SQUARE, "quantity": quantity}]}
    path = folder / "problem.json"
    path.write_text(json.dumps(value), encoding="utf-8")
    return path


def test_what_is_printed_is_proven(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = _asked(tmp_path, {"width_mm": 300, "length_mm": 500})
    drawing = tmp_path / "lay.svg"
    assert main(["lay", str(path), "--json", "--seconds", "5", "--svg", str(drawing)]) == 0
    answer = json.loads(capsys.readouterr().out)
    problem = lay.read_problem(json.loads(path.read_text(encoding="utf-8")))
    assert isinstance(problem, lay.Problem)
    assert answer["fits"] and answer["proven"]
    assert lay.judge(problem, lay.read_placements(answer["placements"]) or ()).proven
    assert drawing.read_text(encoding="utf-8").count('class="piece"') == 2


def test_the_same_seed_and_passes_print_the_same(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = _asked(tmp_path, {"width_mm": 310}, 5)
    out = []
    for _ in range(2):
        assert main(["lay", str(path), "--json", "--seed", "3", "--passes", "40"]) == 0
        out.append({key: value for key, value in json.loads(capsys.readouterr().out).items() if key != "seconds"})
    assert json.dumps(out[0]) == json.dumps(out[1])


def test_what_does_not_fit_says_why_and_what_would(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = _asked(tmp_path, {"width_mm": 150, "length_mm": 390})
    assert main(["lay", str(path), "--json", "--passes", "30"]) == 1
    answer = json.loads(capsys.readouterr().out)
    assert not answer["fits"]
    assert answer["findings"][0]["kind"] in {"lay-not-found", "cloth-short"}
    assert all(choice["proven"] for choice in answer["choices"])
    assert answer["choices"]


def test_what_would_be_accepted_is_tried_and_proven(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = _asked(tmp_path, {"width_mm": 150, "length_mm": 390})
    value = json.loads(path.read_text(encoding="utf-8"))
    value["accept"] = [
        {"say": "Let one go.", "loss": 3, "pieces": {"pocket": {"quantity": 1}}},
        {"shorter": {"pieces": ["pocket"], "at_mm": 150, "most_mm": 50}},
    ]
    path.write_text(json.dumps(value), encoding="utf-8")
    assert main(["lay", str(path), "--json", "--passes", "60"]) == 1
    told = json.loads(capsys.readouterr().out)["choices"]
    assert [one["say"] for one in told][:1] == ["Make pocket 0.6 cm shorter."]
    assert "Let one go." in [one["say"] for one in told]
    assert all(one["proven"] for one in told)


def test_how_much_longer_it_could_be_is_proven(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = _asked(tmp_path, {"width_mm": 150, "length_mm": 430})
    value = json.loads(path.read_text(encoding="utf-8"))
    value["longer"] = {"pieces": ["pocket"], "at_mm": 150, "most_mm": 50}
    path.write_text(json.dumps(value), encoding="utf-8")
    assert main(["lay", str(path), "--json", "--passes", "60"]) == 0
    longer = json.loads(capsys.readouterr().out)["longer"]
    assert longer["proven"] and 10 <= longer["by_mm"] <= 15


@pytest.mark.parametrize(
    "beside",
    [
        {"accept": {}}, {"accept": [1]}, {"accept": [{"say": "x"}]}, {"accept": [{"say": "x", "without": ["hat"]}]},
        {"accept": [{"say": "", "cloth": {}}]}, {"accept": [{"say": "x", "cloth": {"width_mm": -1}}]},
        {"accept": [{"say": "x", "pieces": {"pocket": 3}}]}, {"accept": [{"shorter": {"pieces": ["pocket"]}}]},
        {"longer": 5}, {"longer": {"pieces": ["pocket"], "at_mm": "a", "most_mm": 3}},
        {"accept": [{"say": "x", "loss": float("nan"), "without": ["pocket"]}]},
        {"accept": [{"say": "x", "without": [["pocket"]]}]}, {"accept": [{"say": "x", "without": ["pocket"]}]},
    ],
)  # fmt: skip
def test_odd_wishes_give_one_finding(
    tmp_path: Path, beside: dict[str, Any], capsys: pytest.CaptureFixture[str]
) -> None:
    path = _asked(tmp_path, {"width_mm": 150, "length_mm": 430})
    path.write_text(json.dumps({**json.loads(path.read_text(encoding="utf-8")), **beside}), encoding="utf-8")
    assert main(["lay", str(path)]) == 2
    told = capsys.readouterr()
    assert told.err.startswith("lay-unreadable") and "Traceback" not in told.err


@pytest.mark.parametrize("text", ["", "{", "[]", '{"cloth": {"width_mm": NaN}, "pieces": [1]}', "[" * 50_000, "\x00"])
def test_what_can_not_be_read_gives_one_finding(tmp_path: Path, text: str, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "odd.json"
    path.write_text(text, encoding="utf-8")
    assert main(["lay", str(path)]) == 2
    told = capsys.readouterr()
    assert not told.out
    assert "try" in told.err
    assert "Traceback" not in told.err
