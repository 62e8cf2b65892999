"""The demo shows a no with its cure, a not known yet with the way to settle it, and a yes that is proven.

Following what it offers, and nothing else, turns all three answers to yes.
"""

from __future__ import annotations

from lastlook import outfit, paper
from lastlook.cli import told
from lastlook.finding import Edit, Finding
from lastlook.outfit import Answer

SWATCH = {
    "stitches": 50,
    "rows": 64,
    "width": "8 in",
    "height": "8 in",
    "grams": "17.8 g",
    "scale": "0.1 g",
    "washed": "yes",
}
"""What the tape and the scale say once the swatch that is asked for has been knitted."""
MOST_STEPS = 12


def judge(folder: outfit.Document) -> tuple[outfit.Derived, outfit.Verdict]:
    derived = told.laid(outfit.derive(outfit.read(folder)))
    return derived, outfit.verdict(derived)


def test_the_demo_shows_one_of_each() -> None:
    _, judged = judge(outfit.demo())
    assert judged.adds_up.answer is Answer.NO
    assert any(finding.cures for finding in judged.adds_up.findings)
    assert judged.fits.answer is Answer.NOT_KNOWN_YET
    unknown = next(one for one in judged.fits.findings if one.kind == "gauge-missing")
    assert unknown.attempt and "swatch" in unknown.attempt.lower()
    assert judged.enough.answer is Answer.YES


def test_following_the_offers_turns_all_three_to_yes() -> None:
    folder = outfit.demo()
    taken: list[str] = []
    for _ in range(MOST_STEPS):
        derived, judged = judge(folder)
        folder = derived.outfit.document
        if judged.is_yes():
            break
        edits = _next(judged, taken)
        assert edits, f"nothing more is offered after {taken}: {judged}"
        folder = outfit.change(folder, edits)
    assert judged.is_yes(), taken
    assert not [one for look in judged.last_looks for one in look.open], "a last look still has something open"
    assert len(taken) >= 4, "the slip, the waist seam, the swatch and the size were all to be put right"


def _next(judged: outfit.Verdict, taken: list[str]) -> tuple[Edit, ...]:
    """Return the first remedy that is offered, or the facts that are asked for."""
    findings: list[Finding] = [*judged.adds_up.findings, *judged.fits.findings, *judged.enough.findings]
    for finding in findings:
        if finding.cures:
            taken.append(finding.cures[0].say)
            return finding.cures[0].edits
        if finding.kind == "gauge-missing" and "swatch" not in taken:
            taken.append("swatch")
            return tuple(Edit(f"stock.swatch.washed-square.{key}", value) for key, value in SWATCH.items())
    return ()


def test_the_folder_holds_its_paper_pieces_at_true_size() -> None:
    derived, _ = judge(outfit.demo())
    folder = outfit.with_pieces(derived)
    for piece in derived.sewn[0].drafted.pieces:
        taken = paper.read_svg(folder.text(f"pieces/skirt-{piece.name.lower()}.svg") or "")
        (again,) = taken.pieces
        assert abs(again.cut_line.length_mm() - piece.cut_line.length_mm()) < 0.01
    assert outfit.with_pieces(outfit.derive(outfit.read(folder))) == folder
