"""What the reader has to say, in a teacher's words."""

from lastlook.knit.tell.attempt import Attempt
from lastlook.knit.tell.curls import of_curls
from lastlook.knit.tell.once import once
from lastlook.knit.tell.readings import Tape, of_choices
from lastlook.knit.tell.seams import of_seams
from lastlook.knit.tell.steps import of_steps
from lastlook.knit.tell.troubles import of_troubles
from lastlook.knit.tell.whole import of_whole
from lastlook.knit.tell.wording import units_of

__all__ = [
    "Attempt",
    "Tape",
    "of_choices",
    "of_curls",
    "of_seams",
    "of_steps",
    "of_troubles",
    "of_whole",
    "once",
    "units_of",
]
