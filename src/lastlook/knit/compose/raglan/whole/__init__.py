"""The raglan in one piece, without a seam: from the neck down or from the hem up."""

from lastlook.knit.compose.raglan.whole.down import neck_down
from lastlook.knit.compose.raglan.whole.knitting import whole_mates
from lastlook.knit.compose.raglan.whole.page import write_whole
from lastlook.knit.compose.raglan.whole.up import hem_up

__all__ = ["hem_up", "neck_down", "whole_mates", "write_whole"]
