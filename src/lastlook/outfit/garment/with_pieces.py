"""Paper pieces written into the outfit's folder at their true size, as they are now, beside the leaflets."""

from __future__ import annotations

import re

from lastlook import paper
from lastlook.outfit.derive import Derived
from lastlook.outfit.written.document import Document


def with_pieces(derived: Derived) -> Document:
    """Return the document with `pieces/GARMENT-PIECE.svg` for every piece drafted, and none of a piece that went."""
    folder = derived.outfit.document
    for one in derived.sewn:
        start = f"pieces/{_plain(one.plan.name)}-"
        fresh = {f"{start}{_plain(piece.name)}.svg": paper.write_svg(piece) for piece in one.drafted.pieces}
        for name in [name for name, _ in folder.files if name.startswith(start) and name not in fresh]:
            folder = folder.without_file(name)
        for name, text in fresh.items():
            folder = folder.with_file(name, text.encode("utf-8"))
    return folder


def _plain(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
