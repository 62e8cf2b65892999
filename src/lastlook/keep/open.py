"""Opening the shelf: the settings that make a kept revision safe, and the steps from one shape to the next.

A step is a numbered SQL file in `steps/`, run in one transaction after a copy of the shelf was laid beside it.
Write-ahead log with `synchronous=FULL`: what was said to be kept is on the disk, also after a power cut.
"""

from __future__ import annotations

import sqlite3
from importlib import resources
from pathlib import Path

from lastlook.finding import Certainty, Finding
from lastlook.keep.shelf import Shelf

BUSY_MS = 5000
"""How long one window waits for another one's write."""


def open_shelf(file: Path) -> Shelf | Finding:
    """Open the shelf in that file, making it if there is none, and bring it to today's shape."""
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        db = sqlite3.connect(file, isolation_level=None, check_same_thread=False)
        _settle(db)
        return _step_up(db, file) or Shelf(db)
    except (sqlite3.DatabaseError, OSError) as trouble:
        return Finding(
            "shelf-closed",
            Certainty.PROVEN,
            f"The shelf {file.name} can't be opened.",
            f"{file}: {trouble}.",
            "Name another file with --shelf, or put the newest copy that lies beside it in its place.",
        )


def _settle(db: sqlite3.Connection) -> None:
    db.execute("PRAGMA journal_mode = WAL")
    db.execute("PRAGMA synchronous = FULL")
    db.execute("PRAGMA foreign_keys = ON")
    db.execute(f"PRAGMA busy_timeout = {BUSY_MS}")


def _step_up(db: sqlite3.Connection, file: Path) -> Finding | None:
    """Run the steps that this shelf has not seen; a shelf from a newer program is left alone."""
    steps = _steps()
    seen = _version(db)
    if seen > len(steps):
        db.close()
        return Finding(
            "shelf-newer",
            Certainty.PROVEN,
            f"The shelf {file.name} was written by a newer Last Look than this one.",
            f"It has taken {seen} steps; this program knows {len(steps)}.",
            "Use the newer program, or name another file with --shelf.",
        )
    if seen and seen < len(steps):
        copy = file.with_name(f"{file.stem}.before-step-{seen + 1}{file.suffix}")
        copy.unlink(missing_ok=True)
        db.execute("VACUUM INTO ?", (str(copy),))
    for number, sql in enumerate(steps[seen:], seen + 1):
        _take(db, number, sql)
    return None


def _take(db: sqlite3.Connection, number: int, sql: str) -> None:
    """Take one step, unless another window took it while this one waited for its turn."""
    db.execute("BEGIN EXCLUSIVE")
    try:
        if _version(db) < number:
            for statement in _statements(sql):
                db.execute(statement)
            db.execute(f"PRAGMA user_version = {number}")
        db.execute("COMMIT")
    except BaseException:
        if db.in_transaction:
            db.execute("ROLLBACK")
        raise


def _version(db: sqlite3.Connection) -> int:
    return int(db.execute("PRAGMA user_version").fetchone()[0])


def _steps() -> list[str]:
    folder = resources.files("lastlook.keep") / "steps"
    names = sorted(entry.name for entry in folder.iterdir() if entry.name.endswith(".sql"))
    return [(folder / name).read_text(encoding="utf-8") for name in names]


def _statements(sql: str) -> list[str]:
    """Part a step into its statements; a trigger, which holds semicolons, stays whole."""
    out, held = [], ""
    for piece in sql.split(";"):
        held += piece + ";"
        if sqlite3.complete_statement(held):
            out.append(held.strip())
            held = ""
    return [one for one in out if one != ";"]
