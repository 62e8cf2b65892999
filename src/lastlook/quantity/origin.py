"""Where a figure came from; a weaker origin never passes for a stronger one."""

from enum import Enum


class Origin(Enum):
    """How a figure was obtained, the surest first."""

    MEASURED = "measured"
    PRINTED = "printed"
    DERIVED = "worked out"
    PUBLISHED = "from a published table"
    ESTIMATED = "estimated from others"
    ASSUMED = "assumed"
