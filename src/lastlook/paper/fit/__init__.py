"""Will the skirt fit: shares, suppression, hem, opening, sitting, printed sizes."""

from lastlook.paper.fit.elastic import (
    ELASTIC_STRETCH,
    Elastic,
    elastic_cut_mm,
    elastic_findings,
    give_mm,
    needs_no_opening,
)
from lastlook.paper.fit.hem import flare, hem_excess_mm, hem_findings, usual_depth_mm
from lastlook.paper.fit.opening import (
    LEAST_MM,
    Opening,
    Over,
    lap_rule,
    opening_findings,
    opening_note,
    zip_for_mm,
)
from lastlook.paper.fit.printed import HEIGHT_CLASSES_MM, Choice, Printed, PrintedSize, closest, length_prior_mm
from lastlook.paper.fit.seated import LevelFit, ease_needed_mm, fit_of, seated_findings
from lastlook.paper.fit.sharing import fold_depth_mm, in_two_places_mm, per_dart_mm, per_edge_mm, per_half_mm
from lastlook.paper.fit.suppression import at_each_side_edge_mm, foundation_mm, half_block_mm, suppression_mm

__all__ = [
    "ELASTIC_STRETCH",
    "HEIGHT_CLASSES_MM",
    "LEAST_MM",
    "Choice",
    "Elastic",
    "LevelFit",
    "Opening",
    "Over",
    "Printed",
    "PrintedSize",
    "at_each_side_edge_mm",
    "closest",
    "ease_needed_mm",
    "elastic_cut_mm",
    "elastic_findings",
    "fit_of",
    "flare",
    "fold_depth_mm",
    "foundation_mm",
    "give_mm",
    "half_block_mm",
    "hem_excess_mm",
    "hem_findings",
    "in_two_places_mm",
    "lap_rule",
    "length_prior_mm",
    "needs_no_opening",
    "opening_findings",
    "opening_note",
    "per_dart_mm",
    "per_edge_mm",
    "per_half_mm",
    "seated_findings",
    "suppression_mm",
    "usual_depth_mm",
    "zip_for_mm",
]
