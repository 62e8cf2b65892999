"""Scraps: the bytes of files, each kept once under the hash of what is in it."""

from __future__ import annotations

import hashlib
import sqlite3

from lastlook.outfit import Document, document


def write_document(db: sqlite3.Connection, revision: int, folder: Document) -> None:
    """Keep every file of a document for a revision; what is there already is not written again."""
    for name, data in folder.files:
        digest = hashlib.sha256(data).hexdigest()
        db.execute("INSERT INTO scrap (hash, data) VALUES (?, ?) ON CONFLICT DO NOTHING", (digest, data))
        db.execute("INSERT INTO holds (revision, name, scrap) VALUES (?, ?, ?)", (revision, name, digest))


def read_document(db: sqlite3.Connection, revision: int) -> Document:
    """Return the document of a revision, byte for byte as it was kept."""
    rows = db.execute(
        "SELECT holds.name, scrap.data FROM holds JOIN scrap ON scrap.hash = holds.scrap WHERE holds.revision = ?",
        (revision,),
    )
    return document({str(name): bytes(data) for name, data in rows})


def unsound(db: sqlite3.Connection) -> list[str]:
    """Return a sentence for everything that is not as it was kept; an empty list where all is sound."""
    found = [str(row[0]) for row in db.execute("PRAGMA integrity_check") if row[0] != "ok"]
    found += [f"Table {row[0]} points to a row that is not there." for row in db.execute("PRAGMA foreign_key_check")]
    for digest, data in db.execute("SELECT hash, data FROM scrap"):
        if hashlib.sha256(data).hexdigest() != digest:
            found.append(f"Scrap {digest[:12]} does not hold what was put in it.")
    astray = """SELECT outfit.id FROM outfit LEFT JOIN stand ON stand.outfit = outfit.id
                WHERE stand.id IS NULL"""
    found += [f"Outfit {row[0]} stands nowhere." for row in db.execute(astray)]
    return found
