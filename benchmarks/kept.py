"""Results kept as they come, so that a long benchmark can be stopped and gone on with, and the page they are told on.

Each benchmark has a file of lines beside this one, a result each, under a key that says all that it depends on; what
stands there is not run again. On the page, a table stands between two marks and is written anew after each result.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parent
PAGE = FOLDER / "lay.md"


class Kept:
    """The results of one benchmark."""

    def __init__(self, name: str) -> None:
        self.file = FOLDER / "results" / f"{name}.jsonl"
        self.found: dict[str, Any] = {}
        if self.file.exists():
            for line in self.file.read_text(encoding="utf-8").splitlines():
                key, value = json.loads(line)
                self.found[key] = value

    def forget(self, beginnings: tuple[str, ...]) -> None:
        """Drop the results whose keys begin so, to have them run again."""
        self.found = {key: value for key, value in self.found.items() if not key.startswith(beginnings)}
        lines = [json.dumps(pair) + "\n" for pair in self.found.items()]
        if self.file.exists():
            self.file.write_text("".join(lines), encoding="utf-8")

    def add(self, key: str, value: Any) -> None:
        """Keep a result."""
        self.found[key] = value
        self.file.parent.mkdir(exist_ok=True)
        with self.file.open("a", encoding="utf-8") as out:
            out.write(json.dumps([key, value]) + "\n")


def tell(name: str, lines: list[str], page: Path = PAGE) -> None:
    """Write a table between its two marks on the page."""
    text = page.read_text(encoding="utf-8")
    start, end = f"<!-- {name} -->", f"<!-- end of {name} -->"
    if start not in text or end not in text:
        raise ValueError(f"{page.name} has no marks for {name}")
    head, rest = text.split(start, 1)
    tail = rest.split(end, 1)[1]
    page.write_text("\n".join([head + start, "", *lines, "", end]) + tail, encoding="utf-8")
