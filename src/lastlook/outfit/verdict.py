"""The verdict: the three questions asked of an outfit, and the last looks that follow."""

from __future__ import annotations

from typing import Any

from lastlook.finding import SourceText, as_json
from lastlook.outfit.adds_up import adds_up
from lastlook.outfit.answer import Answered, LastLook, Verdict
from lastlook.outfit.derive import Derived
from lastlook.outfit.enough import enough
from lastlook.outfit.fits import fits
from lastlook.outfit.last_look import last_looks


def verdict(derived: Derived) -> Verdict:
    """Return the three answers and the last looks of an outfit."""
    answers = (adds_up(derived), fits(derived), enough(derived))
    return Verdict(*answers, last_looks(derived, *answers))


def verdict_json(judged: Verdict, derived: Derived) -> dict[str, Any]:
    """Return the verdict as every command answers it."""
    source = derived.knitted[0].reading.source if derived.knitted else None
    return {
        "adds_up": _answered(judged.adds_up, source),
        "fits": _answered(judged.fits, source),
        "enough": _answered(judged.enough, source),
        "last_looks": [_look(look, source) for look in judged.last_looks],
    }


def _answered(one: Answered, source: SourceText | None) -> dict[str, Any]:
    return {
        "answer": one.answer.value,
        "chance": one.chance,
        "because": one.because,
        "parts": [
            {"subject": part.subject, "answer": part.answer.value, "chance": part.chance, "because": part.because}
            for part in one.parts
        ],
        "findings": [as_json(finding, source) for finding in one.findings],
    }


def _look(look: LastLook, source: SourceText | None) -> dict[str, Any]:
    return {
        "before": look.before.value,
        "piece": look.piece,
        "open": [as_json(finding, source) for finding in look.open],
        "proven": list(look.proven),
        "cautions": list(look.cautions),
    }
