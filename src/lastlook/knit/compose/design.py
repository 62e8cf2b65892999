"""Design: from a wearer's measures and a garment in words to a proven leaflet."""

from __future__ import annotations

from lastlook import wearer
from lastlook.finding import Certainty, Finding
from lastlook.knit.compose.asked import Asked
from lastlook.knit.compose.bands import bands_for
from lastlook.knit.compose.body import Body
from lastlook.knit.compose.composed import Composed, cant_hold, edging_too_wide, not_composed, off_target, rows_unknown
from lastlook.knit.compose.craft.ladder import RUNG_WORDS, Rung
from lastlook.knit.compose.notes import SEWING, band_notes, ease_note, general_notes, shoulder_notes
from lastlook.knit.compose.raglan import (
    RaglanShape,
    raglan_counts,
    raglan_edges,
    raglan_mates,
    raglan_measures,
    raglan_pieces,
    raglan_shape,
    write_raglan,
)
from lastlook.knit.compose.raglan.whole import hem_up, neck_down, whole_mates, write_whole
from lastlook.knit.compose.shoulder import (
    ShoulderShape,
    shoulder_counts,
    shoulder_edges,
    shoulder_mates,
    shoulder_measures,
    shoulder_pieces,
    shoulder_shape,
    write_shouldered,
)
from lastlook.knit.compose.shoulder.shape import SHOULDER_RISE_MM
from lastlook.quantity import Missing, Units, write_length

HALF_CM_MM = 5.0
"""A girth or length nearer than this is as good as wanted."""
WHOLE = {"neck down": neck_down, "hem up": hem_up}
TITLES = {"in pieces": "", "neck down": ", from the neck down", "hem up": ", from the hem up"}


def design_raglan(who: wearer.Wearer, asked: Asked) -> Composed:
    """Return a raglan for a wearer."""
    title, size = f"Raglan {asked.opening}{TITLES[asked.construction]}", _size(who)
    if isinstance(asked.gauge.rows, Missing):
        return not_composed(title, size, [rows_unknown(asked.gauge.rows)])
    if asked.sleeve == "none":
        return not_composed(title, size, [_needs_sleeves()])
    body = Body(who)
    shape = raglan_shape(body, asked)
    if shape is None:
        return not_composed(title, size, body.all_findings())
    clash = _clash(shape, asked)
    if clash is not None:
        return not_composed(title, size, [clash])
    counts = raglan_counts(shape, asked)
    if counts is None:
        return not_composed(title, size, [_out_of_reach(), *body.all_findings()])
    edges = raglan_edges(counts, asked, _bust(body, asked, shape.side + shape.depth + shape.sleeve_top / 2))
    bands = bands_for(edges, asked)
    if isinstance(bands, Finding):
        return not_composed(title, size, [bands])
    measures = raglan_measures(shape, counts, asked)
    if asked.construction == "in pieces":
        pieces, mates = raglan_pieces(counts, asked), raglan_mates(counts, asked)
        leaflet = write_raglan(title, pieces, bands.parts, asked, size)
    else:
        sections = WHOLE[asked.construction](counts, asked)
        pieces, mates = tuple(one.piece for one in sections), whole_mates(asked)
        leaflet = write_whole(title, sections, bands.parts, asked, size)
    rungs = tuple(rung_words(rung, asked) for rung in counts.rungs)
    findings = (*body.all_findings(), *_rung_notes(counts.rungs, asked), *off_target(measures, HALF_CM_MM))
    notes = (
        *ease_note(asked, measures, body.taken_mm("bust_girth")),
        *band_notes(edges, bands, asked),
        SEWING[asked.construction],
        *general_notes(asked, pieces, counts.rib_rows),
    )
    return Composed(title, size, leaflet, pieces, mates, measures, rungs, findings, notes)


def design_shouldered(who: wearer.Wearer, asked: Asked, construction: str) -> Composed:
    """Return a garment with shoulders for a wearer: `construction` is 'set-in' or 'dropped'."""
    name = "Slipover" if asked.sleeve == "none" else asked.opening
    title = f"{'Set-in' if construction == 'set-in' else 'Dropped-shoulder'} {name.lower()}"
    size = _size(who)
    if isinstance(asked.gauge.rows, Missing):
        return not_composed(title, size, [rows_unknown(asked.gauge.rows)])
    body = Body(who)
    shape = shoulder_shape(body, asked, construction)
    if shape is None:
        return not_composed(title, size, body.all_findings())
    clash = _shouldered_clash(shape, asked)
    if clash is not None:
        return not_composed(title, size, [clash])
    counts = shoulder_counts(shape, asked)
    if counts is None:
        return not_composed(title, size, [_no_cap(), *body.all_findings()])
    edges = shoulder_edges(counts, asked, _bust(body, asked, shape.side + shape.armhole + SHOULDER_RISE_MM))
    bands = bands_for(edges, asked)
    if isinstance(bands, Finding):
        return not_composed(title, size, [bands])
    pieces = shoulder_pieces(counts, asked)
    measures = shoulder_measures(shape, counts, asked)
    leaflet = write_shouldered(title, pieces, bands.parts, asked, size)
    rungs = tuple(RUNG_WORDS[rung] for rung in counts.rungs)
    findings = (*body.all_findings(), *off_target(measures, HALF_CM_MM))
    ease = ease_note(asked, measures, body.taken_mm("bust_girth"))
    notes = (
        *ease,
        *band_notes(edges, bands, asked),
        *shoulder_notes(counts, asked),
        *general_notes(asked, pieces, counts.rib_rows),
    )
    return Composed(title, size, leaflet, pieces, shoulder_mates(asked), measures, rungs, findings, notes)


def _bust(body: Body, asked: Asked, hem_to_neck_mm: float) -> float | None:
    """Return where a cardigan's fullest bust lies above its hem; a pullover has no buttons to place."""
    return body.bust_above_mm(hem_to_neck_mm) if asked.opening == "cardigan" else None


def _needs_sleeves() -> Finding:
    return cant_hold(
        "A raglan has no shoulder without its sleeves.",
        "Its sleeves reach to the neck and carry the fronts.",
        "Ask for short sleeves, or for a slipover.",
    )


def _no_cap() -> Finding:
    return cant_hold(
        "No sleeve cap of this width goes into the armhole.",
        "Its edge has to be as long as the armhole's, and its stitches have to be taken off in its rows.",
        "Ask for a deeper armhole, or a narrower sleeve.",
    )


def _clash(shape: RaglanShape, asked: Asked) -> Finding | None:
    """Return what can't be at all, before a stitch is counted."""
    length = shape.sleeve_seam + shape.depth
    if asked.sleeve == "long" and shape.upper_sleeve > length:
        return _sleeve_wider_than_long(shape.upper_sleeve, length)
    return _too_wide(shape.cuff * asked.stitches_per_mm, asked)


def _shouldered_clash(shape: ShoulderShape, asked: Asked) -> Finding | None:
    """Return what can't be at all; a dropped shoulder's sleeve is wide, and is measured as it lies."""
    length = shape.sleeve_seam + (0.0 if shape.dropped else shape.armhole)
    width = shape.upper_sleeve / 2 if shape.dropped else shape.upper_sleeve
    if asked.sleeve == "long" and width > length:
        return _sleeve_wider_than_long(shape.upper_sleeve, length)
    return None if asked.sleeve == "none" else _too_wide(shape.cuff * asked.stitches_per_mm, asked)


def _too_wide(cuff: float, asked: Asked) -> Finding | None:
    """Return that a repeat is wider than the narrowest piece, the cuff."""
    need = asked.edging.repeat + asked.edging.extra
    if need > cuff:
        return edging_too_wide(need, "the cuff", cuff)
    least = asked.texture.multiple + asked.texture.extra + 2 if asked.texture else 0
    if least > cuff:
        return cant_hold(
            f"One repeat of the texture is {least} stitches with its edges, and the cuff has only {cuff:.0f}.",
            "A texture has to go at least once across the narrowest piece.",
            "Choose a texture with a smaller repeat, or shorter sleeves.",
        )
    return None


def _size(who: wearer.Wearer) -> str:
    bust = who.taken("bust_girth")
    return f"{write_length(bust.mm.best, Units.CM)} bust" if bust else "hers"


def rung_words(rung: Rung, asked: Asked) -> str:
    """Return how hard the shaping has to work: from the neck down it increases, and in rounds no side is wrong."""
    words = RUNG_WORDS[rung]
    if asked.construction != "in pieces" and asked.opening == "pullover" and rung is Rung.BOTH_SIDES:
        words = "decreases in some rounds one after the other"
    return words.replace("decreases", "increases") if asked.construction == "neck down" else words


def _rung_notes(rungs: tuple[Rung, ...], asked: Asked) -> tuple[Finding, ...]:
    return tuple(
        Finding(
            "shaping-steep",
            Certainty.NOTE,
            f"The raglan line needs {rung_words(rung, asked)}.",
            "There are more stitches to shape than right-side rows in the armhole.",
            "A deeper armhole or less ease makes the line gentler.",
        )
        for rung in rungs
        if rung is not Rung.RIGHT_SIDE
    )


def _out_of_reach() -> Finding:
    return cant_hold(
        "No raglan line takes off the stitches between underarm and neck in the rows of the armhole.",
        "Even with double decreases on every right-side row, a wider underarm and a deeper armhole, some are left.",
        "Ask for a deeper armhole, less ease, or another construction.",
    )


def _sleeve_wider_than_long(width_mm: float, length_mm: float) -> Finding:
    width, length = write_length(width_mm, Units.CM), write_length(length_mm, Units.CM)
    return cant_hold(
        f"The sleeve would be {width} round and {length} long.",
        "A long sleeve is longer than it is wide; one of the two measures is probably another one.",
        "Measure the upper arm and the inside of the arm again.",
    )
