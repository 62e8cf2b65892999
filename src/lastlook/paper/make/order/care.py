"""What to mind, for hands and cloth, and how seams are finished; common practice, no source, where none is named."""

from __future__ import annotations

from collections.abc import Mapping

PINS = "Count the pins out and in again; sew over none."
BLADE = "Cut on a table, never in the hand; close the blade after each cut, and keep the other hand behind it."
IRON = "Stand the iron on its heel, keep the cord clear, and try a scrap first; unplug it when you leave the room."
NEEDLE = "Keep fingers clear of the needle, and account for every piece of one that breaks."
FLAME = "Loose, brushed or gauzy cotton and rayon catch fire easily: keep full skirts from open flames and heaters."
FLAMMABLE = frozenset({"cotton", "linen", "rayon"})
CHILD_MM = 1760.0
CORDS = (
    "Cords catch, and children were hurt: none at hood or neck up to 7 years or 134 cm, no free ends there up to 14 "
    "years (EN 14682 as explained by Tukes). Local rules may ask for more; follow the stricter."
)
FINISHES: Mapping[str, tuple[str, float]] = {
    "soft wool": ("overcast them, pressed open", 0.0),
    "wool": ("pink or overcast them, pressed open", 0.0),
    "cotton": ("overcast them, pressed open", 0.0),
    "linen": ("bind them, or fell them flat", 3.0),
    "silk crepe": ("overcast them by hand; a French seam shows through crepe", 0.0),
    "rayon": ("overcast them closely, for it frays", 2.0),
    "polyester": ("overcast them", 0.0),
    "silk": ("sew them as French seams", 6.0),
}
"""How seams are finished by cloth, and the allowance in mm that the finish eats."""
LEAST_LEFT_MM = 9.0
"""An allowance narrower than this pulls out of the seam."""
