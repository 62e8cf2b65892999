"""A zip that holds the files named, taken in as an outfit."""

from __future__ import annotations

import io
import zipfile

from lastlook import outfit
from lastlook.finding import Finding, say


def answer(given: str, asked: str) -> str:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        for name in given.split():
            archive.writestr(name, "")
    found = outfit.unpack(out.getvalue())
    return say(found) if isinstance(found, Finding) else "\n".join(name for name, _ in found.files)
