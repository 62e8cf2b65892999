"""Every page under `tests/cases`, `docs` and the kinds of finding runs, and answers what it says."""

from __future__ import annotations

import importlib
import os
from pathlib import Path

import pytest

from tests import pages

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = ("tests/cases", "docs", "src/lastlook/finding/kinds")
PAGES = sorted(page for folder in FOLDERS for page in (ROOT / folder).rglob("*.md"))
SECTIONS = [section for page in PAGES for section in pages.sections(page)]


@pytest.mark.parametrize("section", SECTIONS, ids=lambda one: f"{one.page.stem}: {one.title}")
def test_page_answers_what_it_says(section: pages.Section) -> None:
    area = importlib.import_module(f"tests.areas.{section.area}")
    answer = area.answer(section.given, section.asked).rstrip("\n") + "\n"
    if os.environ.get("LASTLOOK_ACCEPT") and answer != section.answer:
        pages.accept(section, answer)
        return
    assert answer == section.answer


def test_there_are_pages() -> None:
    assert SECTIONS, "no page with a test in it was found"
