"""What goes round the edges of a garment: knitted bands, crocheted borders, their buttonholes, what backs them."""

from lastlook.knit.compose.bands.backing import backing_notes
from lastlook.knit.compose.bands.bands import Bands, bands_for
from lastlook.knit.compose.bands.edges import BandEdges, PickUp, along, pick_up_notes

__all__ = ["BandEdges", "Bands", "PickUp", "along", "backing_notes", "bands_for", "pick_up_notes"]
