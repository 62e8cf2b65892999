"""From the file of a foreign pattern to the pieces of a garment, as the maker names them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import lru_cache

from lastlook import paper
from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.written.document import Document
from lastlook.outfit.written.read_taken import TakenPiece
from lastlook.paper import take

FILES: Mapping[str, Callable[[str], paper.Taken]] = {
    ".svg": take.read_svg,
    ".dxf": take.read_dxf,
    ".csv": take.read_table,
    ".txt": take.read_table,
}
"""What is read, by the ending of the file's name."""
SMALL_PARTS = ("facing", "pocket", "belt", "lining", "loop")


@lru_cache(maxsize=32)
def shapes(text: str, ending: str) -> paper.Taken:
    """Return what a file of pieces holds."""
    return FILES[ending](text)


def outline_of(folder: Document, piece: TakenPiece) -> paper.Outline | paper.PaperPiece | Finding:
    """Return the outline that a piece was taken from; a file of our own gives the whole piece."""
    ending = piece.file[piece.file.rfind(".") :].lower()
    text = folder.text(piece.file)
    if text is None or ending not in FILES:
        return _unread(piece, f"{piece.file or 'Its file'} is not in the outfit's folder, or is not text.")
    found = shapes(text, ending)
    held = found.pieces or found.closed or found.outlines
    if not 1 <= piece.outline <= len(held):
        stopped = next((one for one in found.findings if one.kind == "pieces-unread"), None)
        return stopped or _unread(piece, f"{piece.file} has no outline {piece.outline}.")
    return held[piece.outline - 1]


def taken_in(
    folder: Document, pieces: tuple[TakenPiece, ...], measures: Mapping[str, float], easing: paper.Easing
) -> paper.Drafted:
    """Return the pieces as one garment, with what there is to say of them."""
    found: list[paper.PaperPiece] = []
    said: list[Finding] = []
    for piece in pieces:
        shape = _piece(folder, piece, measures, said)
        found += [shape] if shape else []
    return replace(paper.set_of(found, measures, easing), findings=tuple(said))


def _piece(
    folder: Document, said: TakenPiece, measures: Mapping[str, float], findings: list[Finding]
) -> paper.PaperPiece | None:
    outline = outline_of(folder, said)
    if isinstance(outline, Finding):
        findings.append(outline)
        return None
    if isinstance(outline, paper.PaperPiece):
        return outline
    role = _role(said.name)
    hip = said.hip_mm if said.hip_mm is not None else measures.get("waist_to_hip") if role == "skirt" else None
    naming = paper.Naming(
        said.name or outline.name or "Piece",
        paper.Drawn(said.line),
        {number - 1: name for number, name in said.edges},
        said.fold,
        said.allowance_mm,
        dict(said.allowances),
        said.quantity,
        said.pair,
        depths_mm=_depths(hip, measures),
    )
    made = paper.piece_of(outline, naming)
    if isinstance(made, Finding):
        findings.append(made)
        return None
    return _marked(replace(made, role=role), said, findings)


def _depths(hip_mm: float | None, measures: Mapping[str, float]) -> dict[str, float]:
    """Return where the levels of the body lie on a piece of the skirt; none where the hip's depth is not known."""
    if hip_mm is None:
        return {}
    high = measures.get("waist_to_top_hip", hip_mm / 2)
    return {"high hip": high, "hip": hip_mm, "knee": paper.knee_depth_mm(measures)}


def _role(name: str) -> str:
    plain = name.lower()
    return "band" if "band" in plain else "part" if any(word in plain for word in SMALL_PARTS) else "skirt"


def _marked(piece: paper.PaperPiece, said: TakenPiece, findings: list[Finding]) -> paper.PaperPiece:
    """Return the piece with its grain, darts and notches; what finds no room is said."""
    piece = take.with_grain(piece, said.grain)
    if said.lengthen_mm is not None:
        top = max(spot[1] for side in piece.sides for spot in (side.start, side.end))
        piece = replace(piece, levels=(*piece.levels, paper.Level("lengthen", top - said.lengthen_mm)))
    for dart in said.darts:
        cut = take.with_dart(piece, dart.edge, (dart.from_mm, dart.wide_mm, dart.deep_mm))
        if cut is None:
            findings.append(_no_room(said.name, "dart", dart.edge, dart.from_mm))
        piece = cut or piece
    for number, notch in enumerate(said.notches, 1):
        marked = take.with_notch(piece, f"{notch.edge} {number}", notch.edge, notch.at_mm)
        if marked is None:
            findings.append(_no_room(said.name, "notch", notch.edge, notch.at_mm))
        piece = marked or piece
    return piece


def _no_room(name: str, what: str, edge: str, at_mm: float) -> Finding:
    return Finding(
        "edge-without-room",
        Certainty.PROVEN,
        f"{name} has no {edge} edge with room for a {what} at {at_mm:.0f} mm.",
        "The edge is shorter, or no edge has that name.",
        "Name the edge first, and measure from its left or upper end.",
        where=Where(piece=name, edge=edge),
    )


def _unread(piece: TakenPiece, say: str) -> Finding:
    return Finding(
        "pieces-unread",
        Certainty.PROVEN,
        say,
        f"{piece.name or 'A piece'} was to be taken from it.",
        f"Take the file in again; {', '.join(FILES)} are read.",
        where=Where(piece=piece.name),
    )
