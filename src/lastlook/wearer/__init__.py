"""A body, by measurements: taken, read as typed, or estimated with its doubt."""

from lastlook.wearer.measure import NAMES, Measure, MeasureName, by_tape, full_name
from lastlook.wearer.read import read_measures
from lastlook.wearer.wearer import Wearer, measure

__all__ = ["NAMES", "Measure", "MeasureName", "Wearer", "by_tape", "full_name", "measure", "read_measures"]
