"""What is done on the screens, as against what is shown on them."""

from lastlook.web.act.changes import change, redo, undo
from lastlook.web.act.mailing import mail, receive

__all__ = ["change", "mail", "receive", "redo", "undo"]
