"""How fast the main job is: read, judge, print, show and lay, each as the best of a few, beside its mark.

The marks are what was set out to reach; a figure over its mark says so.
"""

from __future__ import annotations

import os
import platform
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path

from lastlook import keep, knit, outfit
from lastlook.cli import told
from lastlook.finding import Edit

ROOT = Path(__file__).resolve().parent.parent


def main(words: list[str]) -> int:
    """Print the table."""
    rows = [
        ("read, work and check a whole leaflet in all its sizes", 0.1, _reading()),
        ("verdict after one change of a measure", 0.1, _verdict()),
        ("all sheets of the demo outfit", 2.0, _sheets()),
        ("first page after the start of the screens", 1.0, _first_page()),
        ("a proven lay of the demo skirt", 5.0, _lay()),
    ]
    print(f"Machine: {_machine()}\n")
    print("| what | seconds | mark | of the mark |\n|---|---|---|---|")
    for what, mark, seconds in rows:
        print(f"| {what} | {seconds:.3f} | {mark:g} | {seconds / mark:.0%} |")
    return 0


def _machine() -> str:
    return f"{os.cpu_count()} cores, {platform.machine()}, Python {platform.python_version()}"


def _best(run: Callable[[], object], times: int = 5) -> float:
    took = []
    for _ in range(times):
        start = time.perf_counter()
        run()
        took.append(time.perf_counter() - start)
    return min(took)


def _reading() -> float:
    """Time the leaflet of ours that adds up in every size and has the most rows to work; say which it is."""
    most, text, name = 0, "", ""
    for path in sorted((ROOT / "examples" / "leaflets").glob("*.txt")):
        words = path.read_text(encoding="utf-8")
        read = knit.read(words)
        rows = sum(len(piece.rows) for size in read.by_size.values() for piece in size.pieces)
        if rows > most and all(size.verdict == "adds up" for size in read.by_size.values()):
            most, text, name = rows, words, path.stem
    took = _best(lambda: knit.read(text))
    print(f"Read: {name}, {most} rows in all its sizes, {took / most * 1e6:.0f} ms per 1,000 rows.\n")
    return took


def _verdict() -> float:
    folder = told.laid(outfit.derive(outfit.read(outfit.demo()))).outfit.document
    bust = iter(f"{34 + step / 8} in" for step in range(1, 20))

    def after_a_change() -> outfit.Verdict:
        changed = outfit.change(folder, [Edit("wearer.measures.bust_girth", next(bust))])
        return outfit.verdict(outfit.derive(outfit.read(changed)))

    return _best(after_a_change)


def _sheets() -> float:
    derived = told.laid(outfit.derive(outfit.read(outfit.demo())))
    judged = outfit.verdict(derived)
    with tempfile.TemporaryDirectory() as place:
        return _best(lambda: told.print_sheets(derived, judged, Path(place)), 3)


def _lay() -> float:
    derived = outfit.derive(outfit.read(outfit.demo()))
    return _best(lambda: told.laid(derived), 3)


def _first_page() -> float:
    with tempfile.TemporaryDirectory() as place:
        keep.write_folder(outfit.demo(), Path(place) / "choir")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        start = time.perf_counter()
        command = [sys.executable, "-m", "lastlook", "serve", str(Path(place) / "choir"), "--port", str(port)]
        server = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        try:
            return _answer(f"http://127.0.0.1:{port}/", start)
        finally:
            server.terminate()
            server.wait()


def _answer(address: str, start: float) -> float:
    while time.perf_counter() - start < 30:
        try:
            with urllib.request.urlopen(address, timeout=10) as page:
                page.read()
            return time.perf_counter() - start
        except OSError:
            time.sleep(0.01)
    return float("inf")
