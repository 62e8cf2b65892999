"""Every kind of skirt that can be drafted, by name, with the smaller pieces that are wanted with it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.draft.a_line import a_line
from lastlook.paper.draft.ask import DEFAULTS
from lastlook.paper.draft.circle import FRACTIONS, circle
from lastlook.paper.draft.gathered import gathered
from lastlook.paper.draft.gored import gored
from lastlook.paper.draft.parts import PARTS, with_parts
from lastlook.paper.draft.pleated import LAYERS, pleated
from lastlook.paper.draft.ranges import RANGES
from lastlook.paper.draft.straight import straight
from lastlook.paper.drafted import Drafted
from lastlook.paper.easing import UNKNOWN, Easing
from lastlook.quantity import Origin

KINDS: dict[str, Callable[[Mapping[str, float], Mapping[str, float]], Drafted]] = {
    "straight": straight,
    "a-line": a_line,
    "gored": gored,
    **{kind: circle(kind) for kind in FRACTIONS},
    "gathered": gathered,
    **{kind: pleated(kind) for kind in LAYERS},
}
HIP_SPARE_MM = 0.5


def draft(kind: str, measures: Mapping[str, float], options: Mapping[str, float], easing: Easing = UNKNOWN) -> Drafted:
    """Return the pieces of one kind of skirt for a body; what can't be drafted is said as a finding.

    The option `eases_share` is what a test strip of the cloth showed, and outranks `easing`.
    """
    make = KINDS.get(kind)
    if make is None:
        return Drafted(kind, (), measures=measures, options=options, findings=(_unknown(kind),))
    drafted = make(measures, options)
    if not drafted.pieces:
        return drafted
    strip = options.get("eases_share")
    if strip is not None:
        easing = Easing(strip, Origin.MEASURED, easing.of)
    drafted = replace(with_parts(drafted), easing=easing)
    return replace(drafted, findings=(*drafted.findings, *_hip(drafted), *_strangers(options)))


OPTIONS = frozenset((*DEFAULTS, *RANGES, *PARTS, "length_mm", "centre_back_seam"))
"""Everything that a draft can be told."""


def _strangers(options: Mapping[str, float]) -> list[Finding]:
    return [unknown_word(name) for name in options if name not in OPTIONS]


def unknown_word(name: str) -> Finding:
    """Return that a draft knows no part and no option of that name."""
    near = [one.removesuffix("_mm") for one in sorted(OPTIONS) if set(one.split("_")) & set(name.split("_"))]
    return Finding(
        "draft-word-unknown",
        Certainty.PROVEN,
        f"No draft knows “{name.removesuffix('_mm')}”.",
        "Misspelt, it would change nothing and be missed.",
        f"Parts that can be wanted are {', '.join(PARTS)}" + (f"; near are {', '.join(near)}." if near else "."),
        where=Where(fact=name),
    )


def _hip(drafted: Drafted) -> tuple[Finding, ...]:
    """Say where a skirt that hangs from the waist does not go round the hip."""
    ease, stretch = drafted.ease_mm.get("hip"), drafted.options.get("stretch_share", 0.0)
    if ease is None or ease >= -HIP_SPARE_MM or stretch:
        return ()
    girth = drafted.girths_mm.get("hip") or 0.0
    return (
        Finding(
            "hip-too-small",
            Certainty.PROVEN,
            f"The skirt does not go round the hip: it is {-ease / 10:.1f} cm too small there.",
            f"At the depth of the hip it measures {girth / 10:.1f} cm.",
            "Take a larger part of the circle, more fullness, or more ease.",
            where=Where(edge="hip"),
        ),
    )


def _unknown(kind: str) -> Finding:
    return Finding(
        "skirt-kind-unknown",
        Certainty.PROVEN,
        f"There is no draft for a skirt called “{kind}”.",
        "The kinds are " + ", ".join(KINDS) + ".",
        "Name one of them.",
        where=Where(fact="kind"),
    )
