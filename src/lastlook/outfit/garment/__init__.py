"""One garment of the outfit, derived: knitted from a leaflet, or drafted and laid."""
