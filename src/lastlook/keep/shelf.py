"""The shelf: outfits with all their revisions, and where each of them stands.

Every change is one transaction: the whole revision is kept and the outfit stands at it, or nothing happened.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from threading import RLock

from lastlook.keep import scraps
from lastlook.keep.revision import Revision
from lastlook.outfit import Document


@dataclass(frozen=True)
class Kept:
    """An outfit on the shelf."""

    id: int
    name: str
    folder: str | None
    """The folder that is kept in step with it, None where it lives on the shelf alone."""


class Stale(Exception):
    """The change was made to a revision at which the outfit no longer stands."""


class Shelf:
    """One open shelf; may be used from several threads."""

    def __init__(self, db: sqlite3.Connection) -> None:
        """Take over an opened database; `open_shelf` makes one."""
        self._db = db
        self._turn = RLock()

    def close(self) -> None:
        """Close the shelf."""
        with self._turn:
            self._db.close()

    def outfits(self) -> list[Kept]:
        """Return the outfits in the order in which they came."""
        with self._turn:
            rows = self._db.execute("SELECT id, name, folder FROM outfit ORDER BY id").fetchall()
        return [Kept(*row) for row in rows]

    def outfit_of(self, folder: str) -> Kept | None:
        """Return the outfit that is kept in step with a folder."""
        return next((kept for kept in self.outfits() if kept.folder == folder), None)

    def start(self, name: str, folder: str | None, holding: Document, when: str) -> Kept:
        """Put a new outfit on the shelf with its first revision."""
        with self._change() as db:
            row = db.execute(
                "INSERT INTO outfit (name, folder, since) VALUES (?, ?, ?) RETURNING id", (name, folder, when)
            ).fetchone()
            self._add(int(row[0]), None, holding, ("Taken in as it was.", when))
        return Kept(int(row[0]), name, folder)

    def keep(self, outfit: int, holding: Document, said: str, when: str, after: int | None = None) -> Revision:
        """Keep a changed document as a new revision.

        `after` is the revision that was changed; where the outfit no longer stands there, `Stale` is raised and
        nothing is kept.
        """
        with self._change():
            stands = self.stands_at(outfit).id
            if after is not None and after != stands:
                raise Stale(f"outfit {outfit} stands at {stands}, not at {after}")
            return self._add(outfit, stands, holding, (said, when))

    def stands_at(self, outfit: int) -> Revision:
        """Return the revision at which an outfit stands."""
        return self._revision(
            "SELECT revision.* FROM stand JOIN revision ON revision.id = stand.revision "
            "WHERE stand.outfit = ? ORDER BY stand.id DESC LIMIT 1",
            outfit,
        )

    def document(self, outfit: int) -> Document:
        """Return the document as it stands."""
        with self._turn:
            return self.document_at(self.stands_at(outfit).id)

    def document_at(self, revision: int) -> Document:
        """Return the document of any revision."""
        with self._turn:
            return scraps.read_document(self._db, revision)

    def history(self, outfit: int) -> list[Revision]:
        """Return the revisions that lead to where the outfit stands, the first one first."""
        sql = """WITH RECURSIVE back AS (
                   SELECT * FROM revision WHERE id = ?
                   UNION ALL SELECT revision.* FROM revision JOIN back ON revision.id = back.parent)
                 SELECT id, outfit, parent, said, kept FROM back ORDER BY id"""
        with self._turn:
            rows = self._db.execute(sql, (self.stands_at(outfit).id,)).fetchall()
        return [_revision_of(row) for row in rows]

    def may_undo(self, outfit: int) -> Revision | None:
        """Return the revision that undo would take back, None at the first one."""
        stands = self.stands_at(outfit)
        return stands if stands.parent is not None else None

    def may_redo(self, outfit: int) -> Revision | None:
        """Return the revision that redo would bring back: the newest that came from where the outfit stands."""
        with self._turn:
            row = self._db.execute(
                "SELECT * FROM revision WHERE outfit = ? AND parent = ? ORDER BY id DESC LIMIT 1",
                (outfit, self.stands_at(outfit).id),
            ).fetchone()
        return _revision_of(row) if row else None

    def undo(self, outfit: int, when: str) -> Revision | None:
        """Move back by one revision; return what was taken back."""
        with self._change():
            undone = self.may_undo(outfit)
            if undone and undone.parent is not None:
                self._stand(outfit, undone.parent, when)
            return undone

    def redo(self, outfit: int, when: str) -> Revision | None:
        """Move forward by one revision; return what was brought back."""
        with self._change():
            redone = self.may_redo(outfit)
            if redone:
                self._stand(outfit, redone.id, when)
            return redone

    def wrote(self, outfit: int) -> int | None:
        """Return the revision that the outfit's folder was last brought up to."""
        with self._turn:
            row = self._db.execute(
                "SELECT revision FROM wrote WHERE outfit = ? ORDER BY id DESC LIMIT 1", (outfit,)
            ).fetchone()
        return int(row[0]) if row else None

    def has_written(self, outfit: int, revision: int) -> None:
        """Note that the outfit's folder now holds that revision."""
        with self._change() as db:
            db.execute("INSERT INTO wrote (outfit, revision) VALUES (?, ?)", (outfit, revision))

    def unsound(self) -> list[str]:
        """Return a sentence for everything that is not as it was kept."""
        with self._turn:
            return scraps.unsound(self._db)

    def _revision(self, sql: str, outfit: int) -> Revision:
        with self._turn:
            row = self._db.execute(sql, (outfit,)).fetchone()
        if row is None:
            raise LookupError(f"no outfit {outfit} on this shelf")
        return _revision_of(row)

    def _add(self, outfit: int, parent: int | None, holding: Document, words: tuple[str, str]) -> Revision:
        said, when = words
        row = self._db.execute(
            "INSERT INTO revision (outfit, parent, said, kept) VALUES (?, ?, ?, ?) RETURNING *",
            (outfit, parent, said, when),
        ).fetchone()
        revision = _revision_of(row)
        scraps.write_document(self._db, revision.id, holding)
        self._stand(outfit, revision.id, when)
        return revision

    def _stand(self, outfit: int, revision: int, when: str) -> None:
        self._db.execute("INSERT INTO stand (outfit, revision, moved) VALUES (?, ?, ?)", (outfit, revision, when))

    @contextmanager
    def _change(self) -> Iterator[sqlite3.Connection]:
        """Hold the turn and one transaction; whatever is raised inside leaves the shelf as it was."""
        with self._turn:
            self._db.execute("BEGIN IMMEDIATE")
            try:
                yield self._db
            except BaseException:
                if self._db.in_transaction:
                    self._db.execute("ROLLBACK")
                raise
            self._db.execute("COMMIT")


def _revision_of(row: tuple[int, int, int | None, str, str]) -> Revision:
    return Revision(row[0], row[2], row[3], row[4])
