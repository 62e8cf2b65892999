"""Take the pictures of the screens that the docs show, with the demo outfit, in a real browser.

`python tools/pictures.py [NAME …]` writes into docs/pictures; without names all are taken anew.
"""

from __future__ import annotations

import io
import shutil
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

import uvicorn
from PIL import Image
from playwright.sync_api import Page, sync_playwright

from lastlook import keep, outfit, web
from lastlook.finding import Edit

PICTURES = Path(__file__).resolve().parent.parent / "docs" / "pictures"
WIDE, COLOURS = 1180, 256
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"]
WRAP = """<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="700mm" viewBox="0 0 900 700">
<path id="Front" d="M 0 20 C 120 0 220 0 300 0 C 330 120 345 240 350 600 L 0 600 Z"/></svg>"""


@dataclass(frozen=True)
class Picture:
    """One screen: where it is, how high its picture is, and what is done before it is taken."""

    path: str
    high: int
    first: Callable[[Page], object] = lambda _: None


def _lay(page: Page) -> None:
    page.click("#search")
    page.wait_for_selector(".cuts", timeout=60_000)


def _take_in(page: Page) -> None:
    file = Path(tempfile.mkdtemp()) / "wrap.svg"
    file.write_text(WRAP, encoding="utf-8")
    page.fill("#pieces-name", "wrap skirt")
    page.set_input_files("#pieces-files", file)
    page.click("#add-pieces-button")
    page.wait_for_selector(".foreign")
    page.locator(".foreign").scroll_into_view_if_needed()
    page.evaluate("window.scrollBy(0, document.querySelector('.foreign').getBoundingClientRect().top - 60)")


TAKEN: Mapping[str, Picture] = {
    "outfit": Picture("", 1560),
    "leaflet": Picture("/leaflet/pullover", 1700),
    "skirt": Picture("/paper/skirt", 1500),
    "table": Picture("/table/skirt", 1250, _lay),
    "needles": Picture("/needles/pullover?piece=Back", 1000),
    "design": Picture("/design?garment=slipover&neck=v&stitches=24&rows=32", 1500),
    "edges": Picture("/add", 900, _take_in),
}


def main(names: list[str]) -> int:
    """Take the pictures; say which."""
    with tempfile.TemporaryDirectory() as place, sync_playwright() as playwright:
        address, stop = _served(Path(place))
        where = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
        browser = playwright.chromium.launch(executable_path=where, args=FLAGS)
        for name in names or list(TAKEN):
            picture = TAKEN[name]
            page = browser.new_page(viewport={"width": WIDE, "height": picture.high})
            page.goto(f"{address}/outfit/1{picture.path}", wait_until="networkidle")
            picture.first(page)
            page.wait_for_timeout(400)
            image = Image.open(io.BytesIO(page.screenshot()))
            image.convert("RGB").quantize(COLOURS, dither=Image.Dither.NONE).save(
                PICTURES / f"{name}.png", optimize=True
            )
            print(f"docs/pictures/{name}.png")
            page.close()
        browser.close()
        stop()
    return 0


def _served(place: Path) -> tuple[str, Callable[[], None]]:
    """Serve the demo outfit from a fresh shelf; return its address, and what ends it."""
    shelf = keep.open_shelf(place / "shelf.sqlite")
    assert isinstance(shelf, keep.Shelf)
    rows = [Edit("knitting.pullover.place.Back", 97), Edit("outfit.units", "inches")]
    shelf.start("choir", None, outfit.change(outfit.demo(), rows), "1951-03-01T10:00:00+00:00")
    room = web.Room(shelf, lambda: "1951-03-02T10:00:00+00:00")
    server = uvicorn.Server(uvicorn.Config(web.make(room), port=0, log_level="warning"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)

    def stop() -> None:
        server.should_exit = True
        thread.join(10)

    return f"http://127.0.0.1:{server.servers[0].sockets[0].getsockname()[1]}", stop


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
