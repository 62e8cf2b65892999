"""Small things in the round: hats, mittens, socks."""

from lastlook.knit.compose.round.hat import design_hat
from lastlook.knit.compose.round.mitten import design_mittens
from lastlook.knit.compose.round.sock import design_socks

__all__ = ["design_hat", "design_mittens", "design_socks"]
