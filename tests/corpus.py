"""Our own leaflets, each with what a careful reader finds in it, and the judge of a reading against that.

A *truth* is `examples/leaflets/NAME.truth.toml`. Places in it are quotations (`at`), found in the leaflet with
line breaks closed up. A *trouble* is a word for its kind and a sentence: 'count: line 14, 34: 86 was expected …'.
"""

from __future__ import annotations

import importlib
import re
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from lastlook import knit

ROOT = Path(__file__).resolve().parent.parent
FOLDER = ROOT / "examples" / "leaflets"
OPEN = Path(__file__).resolve().parent / "corpus_open.toml"
GOOD = "adds up"
BAD = "does not add up"
MET = {"exactly", "by easing", "on purpose"}

Json = dict[str, Any]


@dataclass(frozen=True)
class Leaflet:
    """One leaflet with its truth."""

    name: str
    text: str
    truth: Json


def leaflets(folder: Path = FOLDER) -> list[Leaflet]:
    """Return every leaflet that has a truth, by name."""
    out = []
    for path in sorted(folder.glob("*.truth.toml")):
        name = path.name.removesuffix(".truth.toml")
        text = (folder / f"{name}.txt").read_text(encoding="utf-8")
        out.append(Leaflet(name, text, tomllib.loads(path.read_text(encoding="utf-8"))))
    return out


def place(text: str, quote: str) -> tuple[int, int]:
    """Return where a quotation starts and ends; it must be there exactly once."""
    found = list(re.finditer(r"\s+".join(re.escape(word) for word in quote.split()), text))
    assert len(found) == 1, f"{quote!r} stands {len(found)} times in the leaflet"
    return found[0].span()


def lines(text: str, quote: str) -> set[int]:
    """Return the lines that a quotation covers, wherever it stands."""
    found = re.finditer(r"\s+".join(re.escape(word) for word in quote.split()), text)
    return {line for one in found for line in range(_line(text, one.start()), _line(text, one.end()) + 1)}


def _line(text: str, spot: int) -> int:
    return text.count("\n", 0, spot) + 1


def read(text: str) -> Json:
    """Return a reading as its JSON."""
    return knit.as_json(knit.read(text))


@contextmanager
def without_remedies() -> Iterator[None]:
    """Leave out the search for remedies, which takes far longer than the proof and changes nothing in it."""
    searching = importlib.import_module("lastlook.knit.mend.mended")
    kept = searching.mend
    searching.mend = lambda *_: None  # type: ignore[attr-defined]
    try:
        yield
    finally:
        searching.mend = kept  # type: ignore[attr-defined]


def kinds(troubles: list[str]) -> set[str]:
    """Return the kinds of a list of troubles."""
    return {trouble.split(":")[0] for trouble in troubles}


def judge(leaflet: Leaflet) -> list[str]:
    """Return what a reading of the leaflet has wrong; nothing where it is right."""
    try:
        got = read(leaflet.text)
    except Exception as broken:
        return [f"raises: {type(broken).__name__}: {broken}"]
    sized = _sizes(leaflet.truth["sizes"], got)
    if sized is None:
        return [*_words(leaflet, got), f"sizes: {leaflet.truth['sizes']} was expected, {got['sizes']} came"]
    asked = [_words, _gauge, _findings]
    out = [trouble for ask in asked for trouble in ask(leaflet, got)]
    for number, label in enumerate(sized):
        one = got["by_size"][label]
        checks = (_verdict, _pieces, _mates, _slip)
        out += [f"{trouble}" for check in checks for trouble in check(leaflet, got, one, number, label)]
    return out


def _sizes(expected: list[str], got: Json) -> list[str] | None:
    """Return the reading's labels in the order of the truth's, None where they don't answer each other."""
    labels = list(got["by_size"])
    if not expected:
        return []
    if len(expected) == 1 and len(labels) == 1:
        return labels
    plain = {_plain(label): label for label in labels}
    if len(labels) == len(expected) and set(plain) == {_plain(label) for label in expected}:
        return [plain[_plain(label)] for label in expected]
    return None


def _plain(words: str) -> str:
    return re.sub(r"[^a-z0-9½¼¾]+", " ", words.lower().replace("'", "").replace("’", "")).strip()


def _words(leaflet: Leaflet, got: Json) -> Iterator[str]:
    phrases, understood = got["read"]["phrases"], got["read"]["understood"]
    if phrases == 0 and leaflet.truth["sizes"]:
        yield "words: nothing was read"
    elif phrases and understood / phrases < leaflet.truth["understood"]:
        first = [spot["text"][:50] for spot in got["read"]["not_understood"][:3]]
        yield f"words: {understood} of {phrases} phrases understood; not {first}"


def _gauge(leaflet: Leaflet, got: Json) -> Iterator[str]:
    for key, value in leaflet.truth.get("gauge", {}).items():
        came = got["gauge"][key]
        if came is None or abs(came - value) > value * 0.02:
            yield f"gauge: {key} {value} was expected, {came} came"


def _findings(leaflet: Leaflet, got: Json) -> Iterator[str]:
    for unclear in leaflet.truth.get("ambiguities", []):
        spot = lines(leaflet.text, unclear["at"])
        asks = any(one["asks"] and one["line"] in spot for one in got["findings"])
        if asks != unclear["asks"]:
            yield f"asks: {unclear['at']!r}: {'no question' if unclear['asks'] else 'a question'} came"
    if not leaflet.truth["sizes"] and any(one["certainty"] == "proven" for one in got["findings"]):
        yield "alarm: something is proven of a text with nothing to work in it"


def _verdict(leaflet: Leaflet, got: Json, one: Json, number: int, label: str) -> Iterator[str]:
    expected = leaflet.truth["verdict"][number]
    if one["verdict"] != expected:
        yield f"verdict: {label}: {expected!r} was expected, {one['verdict']!r} came"
    if expected != BAD:
        for finding in got["findings"]:
            if finding["certainty"] == "proven" and finding["size"] in (None, label):
                yield f"alarm: {label}: line {finding['line']}: {finding['kind']}: {finding['say']}"


def _pieces(leaflet: Leaflet, got: Json, one: Json, number: int, label: str) -> Iterator[str]:
    good = leaflet.truth["verdict"][number] == GOOD
    for piece in leaflet.truth.get("pieces", []):
        mine = _named(one["pieces"], piece["name"])
        where = f"{label}: {piece['name']}"
        if "cast_on" in piece:
            expected = piece["cast_on"][number]
            if not any(entry["cast_on"] == expected for entry in mine):
                yield f"cast-on: {where}: {expected} was expected, {[entry['cast_on'] for entry in mine]} came"
        final = piece.get("final")
        if final and good and not any(_ends(entry, final, number) for entry in mine):
            ends = [(entry["end"]["stitches"], entry["end"]["how"]) for entry in mine]
            yield f"final: {where}: {final['stitches'][number]} {final['how']} was expected, {ends} came"
        for check in piece.get("checkpoints", []):
            if good or not check.get("loose"):
                yield from _count(leaflet, check, one["pieces"], mine, number, where)
        if "row_counts" in piece and not any(_runs(entry, piece["row_counts"]) for entry in mine):
            yield f"count: {where}: the rows {piece['row_counts']} were not found"


def _named(pieces: list[Json], name: str) -> list[Json]:
    """Return the pieces that answer to a name, all where none does."""
    options = name.lower().split("|")

    def answers(entry: Json) -> bool:
        called = f"{entry['name']} {entry['part_of'] or ''}".lower()
        return any(option in called for option in options)

    return [entry for entry in pieces if answers(entry)] or pieces


def _ends(entry: Json, final: Json, number: int) -> bool:
    expected = final["stitches"][number]
    if expected is None:
        return True
    return entry["end"]["stitches"] == expected and entry["end"]["how"] in final["how"].split("|")


def _runs(entry: Json, expected: list[int]) -> bool:
    rows = entry["stitches_after_row"]
    return any(rows[at : at + len(expected)] == expected for at in range(len(rows)))


def _count(
    leaflet: Leaflet, check: Json, pieces: list[Json], mine: list[Json], number: int, where: str
) -> Iterator[str]:
    if check["kind"] == "sum":
        return
    spot, worked = lines(leaflet.text, check["at"]), check["worked"][number]
    spot |= {min(spot) - 1}  # the sentence that states a count may begin on the line before
    if worked is None:
        return
    stated = check["stated"][number] if "stated" in check else None
    entries = [entry for piece in pieces for entry in piece["stated"] if entry["line"] in spot]
    if stated is not None and any(one["stated"] == stated and one["worked"] == worked for one in entries):
        return
    if check["kind"] != "stated" and any(worked in piece["stitches_after_row"] for piece in mine):
        return
    came = [(one["stated"], one["worked"]) for one in entries]
    yield f"count: line {min(spot) + 1}: {where}: {check['at']!r} is {worked}; {came} came"


def _mates(leaflet: Leaflet, got: Json, one: Json, number: int, label: str) -> Iterator[str]:
    for mate in leaflet.truth.get("mates", []):
        about = f"{label}: {mate['a']} and {mate['b']}, {mate['about']}"
        seams = [seam for seam in one["mates"] if _joins(seam, mate)]
        meets = mate["meets"][number] if isinstance(mate["meets"], list) else mate["meets"]
        if not seams:
            yield f"mate: {about}: no such seam came"
        elif any((seam["meets"] in MET) != meets for seam in seams):
            yield f"mate: {about}: {[seam['meets'] for seam in seams]} came"
        elif "a_length" in mate and not any(_long(seam, mate, number) for seam in seams):
            came = [(seam["a_length"], seam["b_length"]) for seam in seams]
            yield f"mate: {about}: {mate['a_length'][number]}, {mate['b_length'][number]} was expected, {came} came"


def _joins(seam: Json, mate: Json) -> bool:
    if mate["about"] not in f"{seam['a']} {seam['b']}".lower() or seam["unit"] != mate["unit"]:
        return False
    ends = [seam["a"].lower().split(":")[0], seam["b"].lower().split(":")[0]]
    return any(mate["a"] in ends[at] and mate["b"] in ends[1 - at] for at in (0, 1))


def _long(seam: Json, mate: Json, number: int) -> bool:
    expected = sorted([mate["a_length"][number], mate["b_length"][number]])
    came = sorted([seam["a_length"], seam["b_length"]])
    return all(abs(x - y) <= mate.get("within", 0) for x, y in zip(expected, came, strict=True))


def _slip(leaflet: Leaflet, got: Json, one: Json, number: int, label: str) -> Iterator[str]:
    slip = leaflet.truth.get("slip")
    if not slip or leaflet.truth["sizes"][number] not in slip["sizes"]:
        return
    spots = {line for quote in slip["at"] for line in lines(leaflet.text, quote)}
    proven = [one for one in got["findings"] if one["certainty"] == "proven" and one["size"] in (None, label)]
    there = [one for one in proven if one["line"] in spots]
    if not there:
        yield f"slip: {label}: nothing is proven on lines {sorted(spots)}"
    elif not any(slip["right"] in f"{one['try']}" for one in there):
        yield f"mend: {label}: no remedy names {slip['right']!r}"
