"""Taking what is offered makes a skirt fit: cures are followed until nothing of the skirt is too tight or too wide."""

from __future__ import annotations

from hypothesis import Phase, given, settings
from hypothesis import strategies as some

from lastlook import outfit
from lastlook.finding import Edit
from lastlook.outfit import Answer
from lastlook.outfit.garment.skirt import looser, sewn_levels
from lastlook.piece import Meets

KINDS = ("straight", "a-line", "gored", "gathered", "box-pleated")
MOST_STEPS = 8


def folder_of(kind: str, sitting_mm: float, step_mm: float, hip_mm: float) -> outfit.Document:
    facts = {
        "sewing.skirt.kind": kind,
        "sewing.skirt.alterations": "",
        "sewing.skirt.options.band": "",
        "wearer.measures.waist_girth_sitting": f"{685.8 + sitting_mm:.0f} mm",
        "wearer.measures.hip_girth_sitting": f"{939.8 + hip_mm:.0f} mm",
        "wearer.measures.stride_girth": f"{step_mm:.0f} mm",
        "wearer.measures.top_hip_girth": "880 mm",
    }
    return outfit.change(outfit.demo(), [Edit(fact, value) for fact, value in facts.items()])


@given(some.sampled_from(KINDS), some.integers(5, 45), some.integers(900, 1300), some.integers(10, 60))
@settings(max_examples=12, deadline=None, phases=(Phase.generate,))
def test_following_the_offers_makes_a_skirt_fit(kind: str, sitting: int, step: int, hip: int) -> None:
    folder = folder_of(kind, sitting, step, hip)
    for _ in range(MOST_STEPS):
        whole = outfit.read(folder)
        (one,) = outfit.derive(whole).sewn
        wrong = [level for level in sewn_levels(whole, one) if level.answer[0] in (Answer.NO, Answer.TIGHT)]
        if not wrong:
            break
        cures = [cure for level in wrong if (cure := looser(whole, one, level))]
        assert cures, f"nothing is offered for {[level.name for level in wrong]}"
        folder = outfit.change(folder, cures[0].edits)
    assert not wrong
    assert all(seam.meets is not Meets.NO for seam in one.drafted.seams)
