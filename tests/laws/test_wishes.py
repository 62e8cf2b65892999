"""Whatever is wished of a draft, it is drafted or it is said why not; nothing else happens."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as some

from lastlook import paper
from lastlook.paper.draft.ranges import RANGES

MEASURES = {
    "waist_girth": (400, 1600),
    "hip_girth": (400, 1900),
    "waist_to_hip": (60, 400),
    "waist_to_knee": (150, 900),
}
LINES = (
    "lengthen piece=all by={}mm",
    "widen piece=all by={}mm at=waist",
    "widen piece=Front by={}mm at=hip",
    "flare piece=all by={}mm",
    "raise-waist piece=all by={}mm",
    "full-seat by={}mm",
    "sway-back by={}mm",
    "band-length piece=Waistband by={}mm",
    "dart-width piece=Back by={}mm",
    "allowance piece=all by={}mm edge=side",
    "dart-remove piece=Front into=side",
    "unfold piece=Front",
)


@some.composite
def wishes(draw: some.DrawFn) -> dict[str, float]:
    names = draw(some.lists(some.sampled_from(sorted(RANGES)), max_size=4, unique=True))
    options = {name: draw(some.one_of(some.sampled_from(RANGES[name]), some.floats(*RANGES[name]))) for name in names}
    options |= dict.fromkeys(draw(some.lists(some.sampled_from(sorted(paper.PARTS)), max_size=3)), 1.0)
    return options | {"length_mm": draw(some.floats(100, 1500))}


@given(some.data())
@settings(max_examples=60, deadline=None)
def test_any_wish_is_drafted_or_it_is_said_why_not(data: some.DataObject) -> None:
    body = {name: data.draw(some.floats(*ends)) for name, ends in MEASURES.items()}
    drafted = paper.draft(data.draw(some.sampled_from(sorted(paper.KINDS))), body, data.draw(wishes()))
    if not drafted.pieces:
        assert drafted.findings
        return
    by = data.draw(some.sampled_from([-50, -5, 5, 50]))
    steps = [paper.read_words(line.format(by)) for line in data.draw(some.lists(some.sampled_from(LINES), max_size=3))]
    after = paper.trued(paper.alter(drafted, [step for step in steps if not hasattr(step, "certainty")]))  # type: ignore[misc]
    assert paper.as_json(after)["pieces"]
    for piece in after.pieces:
        taken = paper.read_svg(paper.write_svg(piece))
        assert not taken.findings and taken.pieces[0].name == piece.name
