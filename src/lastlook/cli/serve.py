"""Serve the screens on this machine, for the outfit in a folder or a zip, or for all that is on the shelf."""

from __future__ import annotations

import argparse
import os
import sys
import webbrowser
from datetime import datetime
from pathlib import Path

from lastlook import keep, web
from lastlook.finding import Finding, say


def add(parser: argparse.ArgumentParser) -> None:
    """Say what may be asked for."""
    parser.add_argument("outfit", nargs="?", type=Path, help="an outfit's folder, which is kept in step, or its zip")
    parser.add_argument("--shelf", type=Path, default=None, help="the file in which every revision is kept")
    parser.add_argument("--port", type=int, default=None, help="the port of the screens; any free one if left out")
    parser.add_argument("--no-browser", action="store_true", help="only print the address")


def run(args: argparse.Namespace) -> int:
    """Open the shelf, take the outfit in, serve until stopped."""
    shelf = keep.open_shelf(args.shelf or usual_shelf())
    if isinstance(shelf, Finding):
        print(say(shelf), file=sys.stderr)
        return 2
    return open_on(shelf, args.outfit, args.port, browser=not args.no_browser)


def open_on(shelf: keep.Shelf, place: Path | None, port: int | None = None, *, browser: bool = True) -> int:
    """Take in the outfit at a place, if one is named, and serve the screens, that outfit first."""
    room = web.Room(shelf, now)
    if place is not None:
        kept = keep.take_in(shelf, place, now())
        if isinstance(kept, Finding):
            print(say(kept), file=sys.stderr)
            return 2
        room.opens_on = kept.id
    return serve(room, port, browser=browser)


def serve(room: web.Room, port: int | None, *, browser: bool) -> int:
    """Serve a room, telling its address, and opening the browser where there is one."""

    def ready(address: str) -> None:
        print(f"The screens are at {address} (Ctrl+C ends them).", flush=True)
        if browser and has_browser():
            webbrowser.open(address)

    try:
        web.serve(room, port, ready)
    except PermissionError as taken:
        print(f"{taken} Name another with --port, or leave it out.", file=sys.stderr)
        return 2
    return 0


def has_browser() -> bool:
    """Whether there is a screen to open a browser on."""
    seen = os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")
    return bool(seen) or sys.platform in ("darwin", "win32")


def usual_shelf() -> Path:
    """Return where the shelf is kept if nobody says otherwise."""
    named = os.environ.get("LASTLOOK_SHELF")
    if named:
        return Path(named)
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local") / "Last Look" / "shelf.sqlite"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Application Support" / "Last Look" / "shelf.sqlite"
    return Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share") / "lastlook" / "shelf.sqlite"


def now() -> str:
    """Return the time as it is kept: to the second, with the zone."""
    return datetime.now().astimezone().isoformat(timespec="seconds")
