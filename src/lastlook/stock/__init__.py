"""What is at hand: yarn lots, swatches, cloths, notions, each as it was typed and as it can be counted on."""

from lastlook.stock.cloth import Cloth, Flaw, read_cloth
from lastlook.stock.notion import Notion, read_notion
from lastlook.stock.swatch import Swatch, read_gauge, read_swatch
from lastlook.stock.yarn import Yarn, at_regain, metres_used, read_yarn
from lastlook.stock.yarn_count import count_in, tex_from_label, tex_of

__all__ = [
    "Cloth",
    "Flaw",
    "Notion",
    "Swatch",
    "Yarn",
    "at_regain",
    "count_in",
    "metres_used",
    "read_cloth",
    "read_gauge",
    "read_notion",
    "read_swatch",
    "read_yarn",
    "tex_from_label",
    "tex_of",
]
