"""Only pages of our own change anything, and no page asks the outside for anything."""

from __future__ import annotations

from pathlib import Path

import pytest
from starlette.testclient import TestClient

from lastlook import keep, outfit, web

OWN = {"origin": "http://127.0.0.1"}
FACT = {"fact": "wearer.measures.waist_girth", "value": "30 in"}


@pytest.fixture
def room(tmp_path: Path) -> web.Room:
    shelf = keep.open_shelf(tmp_path / "shelf.sqlite")
    assert isinstance(shelf, keep.Shelf)
    shelf.start("choir", None, outfit.demo(), "1951-03-01T10:00:00+00:00")
    return web.Room(shelf, lambda: "1951-03-02T10:00:00+00:00")


@pytest.fixture
def client(room: web.Room) -> TestClient:
    return TestClient(web.make(room), base_url="http://127.0.0.1", follow_redirects=False)


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"origin": "http://elsewhere.example"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9999"},
        {"origin": "http://127.0.0.1", "sec-fetch-site": "cross-site"},
        {"origin": "http://elsewhere.example", "host": "elsewhere.example"},
    ],
    ids=str,
)
def test_a_change_from_elsewhere_is_refused(room: web.Room, client: TestClient, headers: dict[str, str]) -> None:
    before = room.shelf.document(1)
    assert client.post("/outfit/1/change", data=FACT, headers=headers).status_code == 403
    assert room.shelf.document(1) == before


def test_a_change_from_our_own_page_is_kept(room: web.Room, client: TestClient) -> None:
    answer = client.post("/outfit/1/change", data=FACT, headers=OWN)
    assert answer.status_code == 303
    assert 'waist_girth = "30 in"' in (room.shelf.document(1).text("outfit.toml") or "")


def test_a_foreign_name_for_this_machine_gets_nothing(client: TestClient) -> None:
    assert client.get("/outfit/1", headers={"host": "elsewhere.example"}).status_code == 403


@pytest.mark.parametrize("path", ["/outfit/1", "/outfit/1/leaflet/pullover", "/shelf", "/look/ground.css", "/nowhere"])
def test_every_answer_says_what_may_be_loaded(client: TestClient, path: str) -> None:
    policy = client.get(path).headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert "http" not in policy


def test_the_way_back_leads_nowhere_else(client: TestClient) -> None:
    for back in ("//elsewhere.example", "http://elsewhere.example", "/outfit/12/wearer", "/outfit/1\\@elsewhere"):
        answer = client.post("/outfit/1/undo", data={"back": back}, headers=OWN)
        assert answer.headers["location"] == "/outfit/1"


def test_what_is_typed_is_shown_as_words(client: TestClient) -> None:
    client.post("/outfit/1/change", data={**FACT, "value": "<script>alert(1)</script>"}, headers=OWN)
    assert "<script>alert" not in client.get("/outfit/1/wearer").text


def test_a_mailed_outfit_comes_back_the_same(room: web.Room, client: TestClient) -> None:
    mailed = client.get("/outfit/1/mail").content
    answer = client.post("/shelf", files={"mailed": ("choir.zip", mailed)}, headers=OWN)
    assert answer.headers["location"] == "/outfit/2"
    assert room.shelf.document(2) == room.shelf.document(1)


def test_a_mailed_file_that_is_no_outfit_is_refused_in_one_sentence(client: TestClient) -> None:
    answer = client.post("/shelf", files={"mailed": ("choir.zip", b"not a zip")}, headers=OWN)
    assert answer.status_code == 422
    assert "not a zip of an outfit folder" in answer.text


def test_an_outfit_whose_file_can_t_be_read_is_not_written_to(room: web.Room, client: TestClient) -> None:
    broken = room.shelf.document(1).with_file("outfit.toml", b"[wearer\nname = ")
    room.shelf.keep(1, broken, "Broken by hand.", "now")
    for path in ("", "/wearer", "/cupboard", "/last-look", "/sheets"):
        assert client.get(f"/outfit/1{path}").status_code == 200
    client.post("/outfit/1/change", data=FACT, headers=OWN)
    assert room.shelf.document(1) == broken
