"""The smallest correction that makes it add up, tried before it is offered."""

from lastlook.knit.mend.change import Change
from lastlook.knit.mend.mended import Mended, mends

__all__ = ["Change", "Mended", "mends"]
