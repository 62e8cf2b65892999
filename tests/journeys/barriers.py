"""What stands in the way of somebody who can't see or point, by axe's rules."""

from __future__ import annotations

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page


def barriers(page: Page) -> list[str]:
    """Return every violation with the element it was found on."""
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {one['help']}: {node['html'][:200]}" for one in found for node in one["nodes"]]
