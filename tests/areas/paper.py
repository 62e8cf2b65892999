"""A skirt drafted, altered and trued, a step a line.

`draft a-line waist=71cm hip=97cm length=62cm` drafts; `alter widen piece=Front by=1cm at=waist` adds an alteration,
as the outfit's document writes it. Asked for `pieces`, what comes out is what the command says of them; asked for
`findings`, all that there is to say; asked for a kind of finding, that one; asked for `cured`, the seams after the
first cure.
"""

from __future__ import annotations

import shlex
from typing import Any

from lastlook import finding, paper
from lastlook.finding import Finding
from lastlook.paper import fit, make, take, toile


def answer(given: str, asked: str) -> str:
    if given.lstrip().startswith("<"):
        return _taken(given, asked)
    if given.lstrip().startswith("toile"):
        return _toile(given, asked)
    plain, alterations, said = _read(given)
    drafted = paper.alter(plain, alterations)
    found = [*said, *drafted.findings, *paper.true(drafted), *_more(drafted, asked, given)]
    if asked == "pieces":
        return "\n".join(paper.in_words(drafted))
    if asked == "alterations":
        return "\n".join(alteration.say() for alteration in alterations)
    if asked == "cured":
        return _cured(drafted, found)
    chosen = [one for one in found if asked in ("findings", one.kind)]
    return "\n\n".join(finding.say(one) for one in chosen) or "nothing to say"


def made(given: str) -> tuple[paper.Drafted, paper.Drafted]:
    """Return what was drafted, and the same altered."""
    plain, alterations, _ = _read(given)
    return plain, paper.alter(plain, alterations)


def _read(given: str) -> tuple[paper.Drafted, list[paper.Alteration], list[Finding]]:
    drafted = paper.Drafted("none", ())
    alterations: list[paper.Alteration] = []
    said: list[Finding] = []
    for line in given.splitlines():
        verb, *words = shlex.split(line, comments=True) or [""]
        if verb == "draft":
            drafted, more = _draft(words)
            said += more
        elif verb == "alter":
            read = paper.read_words(line.removeprefix("alter "))
            (said if isinstance(read, Finding) else alterations).append(read)  # type: ignore[arg-type]
    return drafted, alterations, said


def _more(drafted: paper.Drafted, asked: str, given: str) -> list[Finding]:
    """Ask what truing does not: the hem, sitting down, the opening, an old tissue."""
    if not drafted.pieces or asked == "findings":
        return []
    waist, hip = drafted.measures.get("waist_girth", 0.0), drafted.measures.get("hip_girth", 0.0)
    zip_mm = next((float(line.split()[1]) for line in given.splitlines() if line.startswith("zip ")), 178.0)
    opening = fit.Opening("lapped", zip_mm)
    envelope = make.Envelope(("Front", "Back", "Pocket"), 620.0)
    return [
        *[one for one in paper.trued(drafted).findings if one.kind == "opening-wanted"],
        *fit.hem_findings(drafted, drafted.easing),
        *fit.seated_findings(fit.fit_of(drafted, drafted.measures, {})),
        *fit.opening_findings(opening, fit.Over(waist, hip, 200.0), drafted.options.get("side_allowance_mm", 15.0)),
        *(make.tissue_findings(drafted, envelope) if asked.startswith("tissue") else ()),
    ]


def _taken(text: str, asked: str) -> str:
    """Say what a drawing gave: its findings, or its outlines, or the piece it is."""
    taken = paper.read_svg(text)
    out = [finding.say(one) for one in taken.findings if asked in ("outlines", one.kind)]
    for piece in taken.pieces:
        drafted = paper.Drafted("taken in", (piece,))
        out += [finding.say(one) for one in paper.true(drafted) if asked in ("outlines", one.kind)]
        out += paper.in_words(drafted)[:1] if asked == "outlines" else []
    if asked.startswith("outline-"):
        shapes = [take.piece_of(one, take.Naming(one.name or "The piece")) for one in taken.outlines]
        out += [finding.say(one) for one in shapes if isinstance(one, Finding) and one.kind == asked]
    if asked == "outlines":
        out += [f"{one.layer or 'no layer'}: {one.path.area_mm2() / 100:.1f} cm2" for one in taken.closed]
    return "\n".join(out) or "nothing to say"


def _toile(given: str, asked: str) -> str:
    """Say what a toile asks for: `toile sewn_to=hip`, then `seen what=puckers at=hip part=back amount=1cm` a line."""
    table: dict[str, Any] = {"seen": []}
    for line in given.splitlines():
        verb, *words = shlex.split(line) or [""]
        pairs = {
            key: value == "yes" if value in ("yes", "no") else value for key, value in (w.split("=", 1) for w in words)
        }
        if verb == "seen":
            table["seen"].append(pairs)
        else:
            table |= pairs
    one, findings = toile.read_toile(table, 1)
    said = [*findings, *toile.contradictions(one)]
    if asked != "proposals":
        return "\n\n".join(finding.say(each) for each in said if each.kind == asked) or "nothing to say"
    out = []
    for proposal in toile.propose(one):
        sure = "sure" if proposal.sure else "doubtful"
        out.append(f"{proposal.observation.seen.value} at {proposal.observation.at} ({sure}): {proposal.because}")
        out += [f"  {step.say()}" for step in proposal.alterations]
    return "\n".join(out)


def _draft(words: list[str]) -> tuple[paper.Drafted, list[Finding]]:
    said = dict(word.split("=", 1) for word in words[1:])
    fibre = said.pop("cloth", "")
    parts = dict.fromkeys(filter(None, said.pop("with", "").split(",")), 1.0)
    given = paper.read_given(said, fibre=fibre)
    return paper.draft(words[0], given.measures, given.options | parts, given.easing), list(given.findings)


def _cured(drafted: paper.Drafted, found: list[Finding]) -> str:
    cures = [cure for one in found for cure in one.cures][:1]
    made = [
        paper.read_alteration(dict(edit.value))
        for cure in cures
        for edit in cure.edits
        if isinstance(edit.value, tuple)
    ]
    after = paper.alter(drafted, [one for one in made if not isinstance(one, Finding)])
    lines = [cure.say for cure in cures]
    for seam in after.seams:
        lines.append(f"{seam.mate.a} and {seam.mate.b}: {seam.meets.value}, {abs(seam.difference):.1f} mm apart")
    return "\n".join(lines)
