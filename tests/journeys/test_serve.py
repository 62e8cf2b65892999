"""The command that serves: a folder kept in step, undo after a kill, one clear line for what can't be served."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from lastlook import keep, outfit

WAIST = "wearer.measures.waist_girth"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The demo outfit as a folder."""
    place = tmp_path / "harbour-choir"
    keep.write_folder(outfit.demo(), place)
    return place


@contextmanager
def _served(folder: Path, how: signal.Signals = signal.SIGTERM) -> Iterator[str]:
    """Run the command until it tells its address; end it afterwards, gently or not."""
    command = [sys.executable, "-m", "lastlook", "serve", str(folder), "--no-browser", "--port", "0"]
    settings = {**os.environ, "LASTLOOK_SHELF": str(folder.parent / "shelf.sqlite")}
    running = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=settings)
    assert running.stdout
    try:
        line = running.stdout.readline()
        address = re.search(r"http://127\.0\.0\.1:\d+", line)
        assert address, line
        yield address[0]
    finally:
        running.send_signal(how)
        running.wait(20)
        running.stdout.close()


def _send(address: str, path: str, **fields: str) -> None:
    data = urllib.parse.urlencode(fields).encode()
    urllib.request.urlopen(urllib.request.Request(f"{address}{path}", data, {"origin": address})).read()


def _page(address: str, path: str) -> str:
    text: str = urllib.request.urlopen(f"{address}{path}").read().decode()
    return text


def test_a_folder_is_kept_in_step_both_ways(folder: Path) -> None:
    main = folder / "outfit.toml"
    with _served(folder) as address:
        _send(address, "/outfit/1/change", fact=WAIST, value="29 in", said="Wider.")
        assert 'waist_girth = "29 in"' in main.read_text(encoding="utf-8")
        main.write_text(main.read_text(encoding="utf-8").replace('"29 in"', '"30 in"'), encoding="utf-8")
        assert 'value="30 in"' in _page(address, "/outfit/1/wearer")
        assert "Changed by hand in the folder." in _page(address, "/outfit/1/wearer")
        (folder / "sheets").mkdir()
        (folder / "sheets" / "booklet.pdf").write_bytes(b"%PDF-")
        assert "Changed by hand" in _page(address, "/outfit/1")
        _send(address, "/outfit/1/undo")
        assert 'waist_girth = "29 in"' in main.read_text(encoding="utf-8")


def test_undo_works_after_the_program_was_killed(folder: Path) -> None:
    before = keep.read_folder(folder)
    with _served(folder, signal.SIGKILL) as address:
        _send(address, "/outfit/1/change", fact=WAIST, value="29 in", said="Wider.")
    assert keep.read_folder(folder) != before
    with _served(folder) as address:
        assert "Last: Wider." in _page(address, "/outfit/1")
        _send(address, "/outfit/1/undo")
    assert keep.read_folder(folder) == before


def test_what_can_t_be_served_is_said_in_one_line(tmp_path: Path, folder: Path) -> None:
    (tmp_path / "list.zip").write_bytes(b"a shopping list")
    scrambled = tmp_path / "scrambled.sqlite"
    scrambled.write_bytes(b"not a shelf, not at all\n" * 50)
    shelf = str(tmp_path / "shelf.sqlite")
    for words in (
        [str(tmp_path / "nowhere"), "--shelf", shelf],
        [str(tmp_path), "--shelf", shelf],
        [str(tmp_path / "list.zip"), "--shelf", shelf],
        [str(folder), "--shelf", str(scrambled)],
    ):
        command = [sys.executable, "-m", "lastlook", "serve", *words, "--no-browser"]
        done = subprocess.run(command, capture_output=True, text=True, timeout=60)
        assert done.returncode == 2
        assert "Traceback" not in done.stderr
        assert done.stderr.strip()
    assert scrambled.read_bytes().startswith(b"not a shelf")


def test_a_page_that_is_asked_from_elsewhere_is_refused(folder: Path) -> None:
    with _served(folder) as address:
        asked = urllib.request.Request(f"{address}/outfit/1/undo", b"", {"origin": "http://elsewhere.example"})
        with pytest.raises(urllib.error.HTTPError) as refusal:
            urllib.request.urlopen(asked)
        refusal.value.close()
        assert refusal.value.code == 403
