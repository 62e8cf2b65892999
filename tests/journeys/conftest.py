"""A served outfit and a real browser, for every journey."""

from __future__ import annotations

import shutil
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import Browser, Page, sync_playwright

from lastlook import keep, outfit, web

FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
"""What Chromium wants where it runs as root and may not look around."""
PATIENCE_MS = 15_000


@dataclass
class Served:
    """An outfit behind a real server."""

    room: web.Room
    number: int
    address: str

    def url(self, path: str = "") -> str:
        """Return the address of one of its screens."""
        return f"{self.address}/outfit/{self.number}{path}"

    def document(self) -> outfit.Document:
        """Return the outfit as it stands on the shelf."""
        return self.room.shelf.document(self.number)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Start Chromium once."""
    where = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    with sync_playwright() as playwright:
        one = playwright.chromium.launch(executable_path=where, args=FLAGS)
        yield one
        one.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """Open a fresh window; whatever a page complains of on its console fails the journey."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(PATIENCE_MS)
    one = context.new_page()
    complaints: list[str] = []
    one.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    one.on("pageerror", lambda trouble: complaints.append(str(trouble)))
    one.on("request", lambda asked: complaints.append(asked.url) if "127.0.0.1" not in asked.url else None)
    yield one
    context.close()
    assert complaints == []


@pytest.fixture
def serve(tmp_path: Path) -> Iterator[object]:
    """Serve a document from a fresh shelf; everything is put away afterwards."""
    running: list[tuple[uvicorn.Server, threading.Thread]] = []

    def start(document: outfit.Document) -> Served:
        shelf = keep.open_shelf(tmp_path / "shelf.sqlite")
        assert isinstance(shelf, keep.Shelf)
        kept = shelf.start("choir", None, document, "1951-03-01T10:00:00+00:00")
        room = web.Room(shelf, lambda: "1951-03-02T10:00:00+00:00")
        server = uvicorn.Server(uvicorn.Config(web.make(room), port=0, log_level="warning"))
        thread = threading.Thread(target=server.run, daemon=True)
        thread.start()
        running.append((server, thread))
        while not server.started:
            time.sleep(0.01)
        port = server.servers[0].sockets[0].getsockname()[1]
        return Served(room, kept.id, f"http://127.0.0.1:{port}")

    yield start
    for server, thread in running:
        server.should_exit = True
        thread.join(10)
