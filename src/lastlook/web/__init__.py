"""The screens: one file, one template folder, one journey each; they hold no rule and serve this machine alone."""

from lastlook.web.app import make
from lastlook.web.room import Room
from lastlook.web.server import serve

__all__ = ["Room", "make", "serve"]
