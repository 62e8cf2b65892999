"""A garment from files alone: drawings of our own as they are, foreign ones as the maker says, the rest guessed.

An outline that lies inside a larger one of the same file, such as a seam line inside its cutting line, is no piece of
its own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePosixPath

from lastlook import paper
from lastlook.finding import Certainty, Finding, Where
from lastlook.geometry import Path, at, crossings
from lastlook.outfit.taken.pieces import FILES, shapes, taken_in
from lastlook.outfit.taken.place import runs_named
from lastlook.outfit.written.document import document
from lastlook.outfit.written.read_taken import LINES, TakenPiece
from lastlook.paper import make
from lastlook.quantity import Units, write_length


@dataclass(frozen=True)
class Told:
    """What is known beside the files."""

    pieces: tuple[TakenPiece, ...] = ()
    measures: Mapping[str, float] | None = None
    easing: paper.Easing = paper.UNKNOWN
    units: Units = Units.CM
    envelope: make.Envelope | None = None


def garment_of(files: Sequence[tuple[str, bytes]], told: Told) -> paper.Drafted:
    """Return the pieces in these files as one garment, with what there is to say of how they were taken."""
    texts = {name: data.decode("utf-8", errors="replace") for name, data in files}
    said = [_found(piece, texts) for piece in told.pieces]
    pieces = [piece for piece in said if piece.file not in texts]
    notes: list[Finding] = []
    for name, text in texts.items():
        mine = [piece for piece in said if piece.file == name]
        pieces += mine or _guessed(name, text, told.units, notes)
    folder = document({name: text.encode("utf-8") for name, text in texts.items()})
    garment = taken_in(folder, tuple(pieces), told.measures or {}, told.easing)
    return with_envelope(replace(garment, findings=(*garment.findings, *notes)), told.envelope)


def with_envelope(garment: paper.Drafted, envelope: make.Envelope | None) -> paper.Drafted:
    """Return the garment with what an old envelope gives away: pieces that are missing, edges that were cut down."""
    if envelope is None:
        return garment
    return replace(garment, findings=(*garment.findings, *make.tissue_findings(garment, envelope)))


def _found(piece: TakenPiece, texts: Mapping[str, str]) -> TakenPiece:
    """Return the piece with its file by the name under which it was given: a bare name is enough."""
    same = [name for name in texts if name == piece.file or PurePosixPath(name).name == PurePosixPath(piece.file).name]
    return replace(piece, file=same[0]) if same else piece


def _guessed(name: str, text: str, units: Units, notes: list[Finding]) -> list[TakenPiece]:
    """Return every piece of a file of which nothing was said; what was guessed of it goes to the notes."""
    ending = name[name.rfind(".") :].lower()
    found = shapes(text, ending) if ending in FILES else paper.Taken()
    notes += found.findings if found.outlines else ()
    if found.pieces or not found.closed:
        return [TakenPiece(name)]
    out = []
    for number, outline in enumerate(found.closed, 1):
        if any(_lies_in(outline.path, larger.path) for larger in found.closed[: number - 1]):
            continue
        known = next((line for line in LINES if line in (outline.layer, outline.name)), None)
        called = outline.name if outline.name not in ("", *LINES) else PurePosixPath(name).stem
        piece = TakenPiece(name, number, called.replace("_", " "), known or LINES[0])
        notes += [] if known == "seam" else [_unasked(piece, known)]
        notes.append(_by_place(piece, outline.path, units))
        out.append(piece)
    return out


def _lies_in(inner: Path, outer: Path) -> bool:
    """Whether an outline begins inside another."""
    x, y = inner.start
    beyond = [spot for spot in crossings(outer, (x, y), (1.0, 0.0)) if at(outer, spot)[0] > x]
    return len(beyond) % 2 == 1


def _by_place(piece: TakenPiece, path: Path, units: Units) -> Finding:
    """Say which edge was taken for which, by its number."""
    runs = [(number, run, name) for number, (run, name) in enumerate(runs_named(path, {}), 1)]
    told = ", ".join(f"{n} {name or 'leg of a dart'} {write_length(run.length_mm(), units)}" for n, run, name in runs)
    words = ",".join(f"{n}:{name}" for n, _, name in runs if name)
    return Finding(
        "edges-guessed",
        Certainty.NOTE,
        f"The edges of {piece.name} were named by their place: {told}.",
        "They are numbered as the outline is walked; which is the fold, and which edge is what, only you can say.",
        f'Say it with --piece "{PurePosixPath(piece.file).name} name={piece.name} edges={words}".',
        where=Where(piece=piece.name),
    )


def _unasked(piece: TakenPiece, line: str | None) -> Finding:
    if line == "cut":
        return Finding(
            "allowance-unasked",
            Certainty.UNKNOWN,
            f"How wide the allowances of {piece.name} are is not known yet; {piece.allowance_mm:.0f} mm came off.",
            "Its outline is the cutting line, and no seam line stands inside it.",
            "Say allowance= of it, and allowances= of single edges.",
            where=Where(piece=piece.name),
        )
    return Finding(
        "allowance-unasked",
        Certainty.UNKNOWN,
        f"Whether the outline of {piece.name} has its allowances on is not known yet; it was taken as the seam line.",
        "Many patterns before 1960 include none, and most since do.",
        "Say line=seam or line=cut of it, and for a cutting line how wide its allowance is.",
        where=Where(piece=piece.name),
    )
