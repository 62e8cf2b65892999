"""The leaflets of a folder `../shared`, where it is there, are read as their truths say."""

from __future__ import annotations

import tomllib

import pytest

from tests import corpus, shared_truth

LEAFLETS = shared_truth.leaflets()
LISTED = tomllib.loads(corpus.OPEN.read_text(encoding="utf-8")).get("shared", {})


if LEAFLETS:

    @pytest.mark.parametrize("leaflet", LEAFLETS, ids=lambda one: one.name)
    def test_shared_leaflet_is_read_as_its_truth_says(leaflet: corpus.Leaflet) -> None:
        listed = set(LISTED.get(leaflet.name.split("-")[0], {}).get("lacks", []))
        fresh = [trouble for trouble in corpus.judge(leaflet) if trouble.split(":")[0] not in listed]
        assert not fresh, "\n".join(fresh)
