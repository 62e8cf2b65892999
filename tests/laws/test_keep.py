"""What is true of the shelf whatever is done to it."""

from __future__ import annotations

import sqlite3
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lastlook import keep
from lastlook.keep import open as opening
from lastlook.outfit import Document, document, pack, unpack

NAMES = st.sampled_from(["outfit.toml", "leaflets/a.txt", "leaflets/b.txt", "pieces/front.svg", "photographs/1.jpg"])
DOCUMENTS = st.dictionaries(NAMES, st.binary(max_size=60)).map(lambda files: document({"outfit.toml": b"", **files}))
ACTS = st.lists(st.one_of(st.just("undo"), st.just("redo"), DOCUMENTS), max_size=12)


def _shelf(room: str) -> keep.Shelf:
    shelf = keep.open_shelf(Path(room) / "shelf.sqlite")
    assert isinstance(shelf, keep.Shelf)
    return shelf


@given(acts=ACTS)
@settings(max_examples=40, deadline=None)
def test_undo_and_redo_walk_a_line_of_documents(acts: list[Document | str]) -> None:
    """The shelf does what a list with a finger on it does, whether or not it is closed in between."""
    with tempfile.TemporaryDirectory() as room:
        shelf = _shelf(room)
        line, finger = [document({"outfit.toml": b"first"})], 0
        outfit = shelf.start("choir", None, line[0], "now").id
        for act in acts:
            if act == "undo":
                shelf.undo(outfit, "now")
                finger = max(0, finger - 1)
            elif act == "redo":
                shelf.redo(outfit, "now")
                finger = min(len(line) - 1, finger + 1)
            else:
                assert isinstance(act, Document)
                shelf.keep(outfit, act, "changed", "now")
                line, finger = [*line[: finger + 1], act], finger + 1
            assert shelf.document(outfit) == line[finger]
        shelf.close()
        again = _shelf(room)
        assert again.document(outfit) == line[finger]
        assert again.unsound() == []
        again.close()


@given(before=DOCUMENTS, after=DOCUMENTS)
@settings(max_examples=40, deadline=None)
def test_a_folder_and_a_zip_give_back_the_same_bytes(before: Document, after: Document) -> None:
    with tempfile.TemporaryDirectory() as room:
        folder = Path(room) / "choir"
        keep.write_folder(before, folder)
        keep.write_folder(after, folder, before)
        assert keep.read_folder(folder) == after
        assert unpack(pack(after)) == after


def test_a_step_is_taken_after_a_copy_was_laid_beside_the_shelf(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = _shelf(str(tmp_path))
    outfit = shelf.start("choir", None, document({"outfit.toml": b"first"}), "now").id
    shelf.close()
    steps = [*opening._steps(), "CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT;"]
    monkeypatch.setattr(opening, "_steps", lambda: steps)
    newer = _shelf(str(tmp_path))
    assert newer.document(outfit).text("outfit.toml") == "first"
    newer.close()
    with sqlite3.connect(tmp_path / f"shelf.before-step-{len(steps)}.sqlite") as copy:
        assert copy.execute("SELECT count(*) FROM revision").fetchone() == (1,)
        assert copy.execute("PRAGMA user_version").fetchone() == (len(steps) - 1,)
    copy.close()
