"""The mock-ups of a garment: what was seen on the body, what it asks for, and whether it lies on the paper already."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from lastlook import outfit, paper
from lastlook.finding import Edit, Finding
from lastlook.paper.toile import Proposal, Seen, Toile, contradictions, propose
from lastlook.web.page import framed, number_of, room_of

PLACES = ("waist", "high hip", "hip", "side seam", "hem")
PARTS = ("all round", "front", "back", "left side", "right side")


@dataclass(frozen=True)
class Answer:
    """What was seen, and what it asks for."""

    seen: str
    proposal: Proposal
    says: tuple[str, ...]
    """The alterations in words."""
    edits: tuple[Edit, ...]
    is_done: bool
    """Whether these alterations lie on the paper."""


@dataclass(frozen=True)
class Worn:
    """One toile with everything that was seen on it."""

    toile: Toile
    answers: tuple[Answer, ...]
    silent: int
    """How many observations say nothing, since the toile is not sewn so far."""
    findings: tuple[Finding, ...]


def show(request: Request) -> Response:
    """Show the toiles, the newest first."""
    desk = room_of(request).desk(number_of(request))
    one = desk.sewn(request.path_params["garment"])
    return framed(
        request,
        "toile/page.html",
        desk,
        one=one,
        worn=list(reversed(_worn(one))),
        whats=[seen.value for seen in Seen],
        spots=PLACES,
        parts=PARTS,
        seams=one.drafted.seams,
    )


def _worn(one: outfit.Sewn) -> list[Worn]:
    left = list(one.plan.alterations)
    out = []
    for toile in one.plan.toiles:
        proposals = propose(toile)
        answers = tuple(_answer(one, proposal, left) for proposal in proposals)
        out.append(Worn(toile, answers, len(toile.observations) - len(proposals), contradictions(toile)))
    return out


def _answer(one: outfit.Sewn, proposal: Proposal, left: list[paper.Alteration]) -> Answer:
    """Return an answer; alterations that lie on the paper are taken out of `left`, each for one answer."""
    done = bool(proposal.alterations) and all(change in left for change in proposal.alterations)
    for change in proposal.alterations if done else ():
        left.remove(change)
    seen = proposal.observation
    fact = f"sewing.{one.plan.name}.alterations.+"
    edits = tuple(Edit(fact, tuple(paper.write_alteration(change).items())) for change in proposal.alterations)
    amount = f", {seen.amount_mm:.0f} mm in all" if seen.amount_mm else ""
    part = "" if seen.part == "all round" else f" of the {seen.part}"
    words = f"At the {seen.at}{part}: {seen.seen.value}{amount}."
    return Answer(words, proposal, tuple(change.say() for change in proposal.alterations), edits, done)
