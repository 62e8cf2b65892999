"""A skirt judged on its wearer: every level standing and sitting, how she gets into it, which printed size is hers."""

from lastlook.outfit.garment.skirt.getting_in import getting_in
from lastlook.outfit.garment.skirt.levels import sewn_levels
from lastlook.outfit.garment.skirt.looser import looser
from lastlook.outfit.garment.skirt.reserve import kept, wider_sides
from lastlook.outfit.garment.skirt.sizes import carried_over, printed_size

__all__ = ["carried_over", "getting_in", "kept", "looser", "printed_size", "sewn_levels", "wider_sides"]
