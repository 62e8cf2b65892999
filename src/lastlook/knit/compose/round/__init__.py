"""Small things in the round: hats, and mittens."""

from lastlook.knit.compose.round.hat import design_hat
from lastlook.knit.compose.round.mitten import design_mittens

__all__ = ["design_hat", "design_mittens"]
