"""A shelf and a folder driven by words, one act a line; the clock is a counter, so the pages stay the same.

`write NAME text` changes a file on the screens, `hand NAME text` in the folder, where `lose NAME` takes it away;
`close` shuts the shelf and opens it again; `receive NAME...` is a mailed zip with files of those names.
"""

from __future__ import annotations

import io
import sqlite3
import tempfile
import zipfile
from collections.abc import Callable
from pathlib import Path

from lastlook import keep
from lastlook.finding import Finding, say
from lastlook.outfit import Document, pack


class _Bench:
    def __init__(self, room: Path) -> None:
        self.room, self.clock, self.folder = room, 0, room / "choir"
        self.folder.mkdir()
        (self.folder / "outfit.toml").write_bytes(b"title = 'Choir'\n")
        self.shelf = _open(room / "shelf.sqlite")
        kept = keep.take_in(self.shelf, self.folder, self.now())
        assert not isinstance(kept, Finding)
        self.kept = kept

    def now(self) -> str:
        self.clock += 1
        return f"1951-03-{self.clock:02}T10:00"

    def write(self, words: str) -> str:
        name, text = words.split(" ", 1)
        fresh = self.shelf.document(self.kept.id).with_file(name, text.encode())
        self.shelf.keep(self.kept.id, fresh, f"{name} says {text}.", self.now())
        return self.follow("")

    def hand(self, words: str) -> str:
        name, text = words.split(" ", 1)
        (self.folder / name).parent.mkdir(exist_ok=True)
        (self.folder / name).write_bytes(text.encode())
        return ""

    def lose(self, name: str) -> str:
        (self.folder / name).unlink()
        return ""

    def follow(self, _: str) -> str:
        trouble = keep.follow(self.shelf, self.kept, self.now())
        return say(trouble) if trouble else ""

    def undo(self, _: str) -> str:
        undone = self.shelf.undo(self.kept.id, self.now())
        self.follow("")
        return f"taken back: {undone.said}" if undone else "nothing to take back"

    def redo(self, _: str) -> str:
        redone = self.shelf.redo(self.kept.id, self.now())
        self.follow("")
        return f"brought back: {redone.said}" if redone else "nothing to bring back"

    def close(self, _: str) -> str:
        self.shelf.close()
        self.shelf = _open(self.room / "shelf.sqlite")
        return ""

    def history(self, _: str) -> str:
        return "\n".join(f"{one.id} after {one.parent}: {one.said}" for one in self.shelf.history(self.kept.id))

    def show(self, _: str) -> str:
        return _listed(self.shelf.document(self.kept.id))

    def folder_(self, _: str) -> str:
        found = keep.read_folder(self.folder)
        return say(found) if isinstance(found, Finding) else _listed(found)

    def mail(self, _: str) -> str:
        data = pack(self.shelf.document(self.kept.id))
        kept = keep.receive(self.shelf, "mailed", data, self.now())
        assert not isinstance(kept, Finding)
        same = self.shelf.document(kept.id) == self.shelf.document(self.kept.id)
        return f"the mailed outfit is {'the same' if same else 'another'}"

    def receive(self, words: str) -> str:
        out = io.BytesIO()
        with zipfile.ZipFile(out, "w") as archive:
            for name in words.split():
                archive.writestr(name, b"climbs")
        kept = keep.receive(self.shelf, "mailed", out.getvalue(), self.now())
        return say(kept) if isinstance(kept, Finding) else f"taken in as {kept.name}"

    def alter(self, _: str) -> str:
        with sqlite3.connect(self.room / "shelf.sqlite") as db:
            try:
                db.execute("UPDATE revision SET said = 'something else'")
            except sqlite3.IntegrityError as refusal:
                return f"refused: {refusal}"
        return "altered"

    def newer(self, _: str) -> str:
        with sqlite3.connect(self.room / "shelf.sqlite") as db:
            db.execute("PRAGMA user_version = 99")
        found = keep.open_shelf(self.room / "shelf.sqlite")
        return say(found) if isinstance(found, Finding) else "opened"

    def scrambled(self, _: str) -> str:
        (self.room / "scrambled.sqlite").write_bytes(b"a shopping list, not a shelf\n" * 40)
        found = keep.open_shelf(self.room / "scrambled.sqlite")
        return say(found).replace(str(self.room), "SHELVES") if isinstance(found, Finding) else "opened"


def answer(given: str, asked: str) -> str:
    with tempfile.TemporaryDirectory() as room:
        bench = _Bench(Path(room))
        out = []
        for line in given.splitlines():
            word, _, rest = line.partition(" ")
            act: Callable[[str], str] = getattr(bench, "folder_" if word == "folder" else word)
            out.append(act(rest).replace(room, "SHELVES"))
        unsound = bench.shelf.unsound()
        bench.shelf.close()
        return "\n".join([one for one in out if one] + unsound)


def _listed(holding: Document) -> str:
    return "\n".join(f"{name}: {data.decode().strip()}" for name, data in holding.files)


def _open(file: Path) -> keep.Shelf:
    shelf = keep.open_shelf(file)
    assert isinstance(shelf, keep.Shelf)
    return shelf
