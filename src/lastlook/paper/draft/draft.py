"""Every kind of skirt that can be drafted, by name."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.draft.a_line import a_line
from lastlook.paper.draft.straight import straight
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing
from lastlook.quantity import Origin

KINDS: dict[str, Callable[[Mapping[str, float], Mapping[str, float]], Drafted]] = {
    "straight": straight,
    "a-line": a_line,
}
FIBRE_DOUBT = Origin.PUBLISHED


def draft(kind: str, measures: Mapping[str, float], options: Mapping[str, float], easing: Easing = UNKNOWN) -> Drafted:
    """Return the pieces of one kind of skirt for a body; what can't be drafted is said as a finding."""
    make = KINDS.get(kind)
    if make is None:
        return Drafted(kind, (), measures=measures, options=options, findings=(_unknown(kind),))
    return replace(make(measures, options), easing=easing)


def _unknown(kind: str) -> Finding:
    return Finding(
        "skirt-kind-unknown",
        Certainty.PROVEN,
        f"There is no draft for a skirt called “{kind}”.",
        "The kinds are " + ", ".join(KINDS) + ".",
        "Name one of them.",
        where=Where(fact="kind"),
    )
