"""What goes on behind the screens while they answer: searches for lays, photographs read."""

from lastlook.web.behind.laying import Laying
from lastlook.web.behind.scanning import Job, Scanning

__all__ = ["Job", "Laying", "Scanning"]
