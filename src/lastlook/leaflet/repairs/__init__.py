"""What the trade's own words can put right in a text that came from a picture."""

from lastlook.leaflet.repairs.repair import Repair, Repaired, repair

__all__ = ["Repair", "Repaired", "repair"]
