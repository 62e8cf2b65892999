"""Single instructions, each met in the middle of a piece: every word is understood, and the count comes out."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from tests import corpus

FOLDER = Path(__file__).resolve().parent / "phrases"
OPEN = FOLDER / "open.toml"
GAUGE = "GAUGE: 6 sts = 1 inch; 8 rows = 1 inch\n\n"
FLAT = GAUGE + "BACK: Cast on 96 sts. Work in stockinette st for 6 inches, ending with a P row.\n"
ROUND = GAUGE + "BODY: Cast on 96 sts. Join. Work in rounds of stockinette st (K every rnd) for 6 inches.\n"
SET_IN = {"flat": FLAT, "round": ROUND, "silent": FLAT}
PHRASES = [
    (path.stem, *(part.strip() for part in line.partition("=>")[::2]))
    for path in sorted(FOLDER.glob("*.txt"))
    for line in path.read_text(encoding="utf-8").splitlines()
    if line and not line.startswith("#")
]
LISTED = set(tomllib.loads(OPEN.read_text(encoding="utf-8"))["phrases"])


def troubles(sort: str, phrase: str, expected: str) -> list[str]:
    """Return what the reading of a phrase in its place has wrong."""
    if sort == "sizes":
        return _sizes(phrase, [part.strip() for part in expected.split("|")])
    before = SET_IN[sort]
    got = corpus.read(before + phrase + "\n")
    at = before.count("\n") + 1
    out = [f"not understood: {one['text']}" for one in got["read"]["not_understood"] if one["line"] == at]
    pieces = [piece for one in got["by_size"].values() for piece in one["pieces"] if piece["cast_on"] == 96]
    counts = {piece["stitches_after_row"][-1] if piece["stitches_after_row"] else 96 for piece in pieces}
    ends = counts | {piece["end"]["stitches"] for piece in pieces}
    if expected and int(expected) not in ends:
        out.append(f"{expected} was expected, {sorted(ends)} came")
    out += [f"proven: {one['say']}" for one in got["findings"] if one["certainty"] == "proven"]
    return out


def _sizes(phrase: str, expected: list[str]) -> list[str]:
    came = list(corpus.read(phrase + "\n\nBACK: Cast on 96 sts. K 6 rows. Bind off.\n")["by_size"])
    plain = [label.lower().replace("’", "'").strip() for label in came]
    if plain == expected or (expected == ["*"] and len(came) == 1):
        return []
    return [f"sizes {expected} were expected, {came} came"]


@pytest.mark.parametrize(("sort", "phrase", "expected"), PHRASES, ids=[phrase[:60] for _, phrase, _ in PHRASES])
def test_phrase_is_understood(sort: str, phrase: str, expected: str) -> None:
    found = troubles(sort, phrase, expected)
    if phrase in LISTED:
        assert found, f"{phrase!r} is understood now: take it off {OPEN.name}"
    else:
        assert not found, "; ".join(found)


def test_the_list_names_only_phrases_there_are() -> None:
    assert {phrase for _, phrase, _ in PHRASES} >= LISTED
