"""Our own leaflets are read as a careful reader reads them; what isn't read rightly yet is named in one list."""

from __future__ import annotations

import tomllib

import pytest

from tests import corpus

LEAFLETS = corpus.leaflets()
LISTED = tomllib.loads(corpus.OPEN.read_text(encoding="utf-8"))


@pytest.mark.parametrize("leaflet", LEAFLETS, ids=lambda one: one.name)
def test_leaflet_is_read_as_its_truth_says(leaflet: corpus.Leaflet) -> None:
    troubles = corpus.judge(leaflet)
    listed = set(LISTED.get(leaflet.name, {}).get("lacks", []))
    fresh = [trouble for trouble in troubles if trouble.split(":")[0] not in listed]
    assert not fresh, "\n".join(fresh)
    if listed:
        assert troubles, f"{leaflet.name} is read rightly now: take it off {corpus.OPEN.name}"


def test_the_list_names_only_leaflets_there_are() -> None:
    assert set(LISTED) - {"shared"} <= {leaflet.name for leaflet in LEAFLETS}


def test_every_quotation_stands_in_its_leaflet() -> None:
    for leaflet in LEAFLETS:
        truth = leaflet.truth
        quotes = [one["at"] for one in (*truth.get("ambiguities", []), *truth.get("bound", []), *truth.get("free", []))]
        quotes += [check["at"] for piece in truth.get("pieces", []) for check in piece.get("checkpoints", [])]
        quotes += truth.get("slip", {}).get("at", [])
        for quote in quotes:
            corpus.place(leaflet.text, quote)


def test_every_truth_is_complete() -> None:
    for leaflet in LEAFLETS:
        truth, many = leaflet.truth, len(leaflet.truth["sizes"])
        lists = [truth["verdict"]]
        for piece in truth.get("pieces", []):
            lists += [piece[key] for key in ("cast_on",) if key in piece]
            lists += [piece["final"]["stitches"]] if "final" in piece else []
            for check in piece.get("checkpoints", []):
                lists += [check[key] for key in ("stated", "worked") if key in check]
        assert all(len(one) == many for one in lists), leaflet.name
