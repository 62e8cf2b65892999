"""The whole undertaking and its three questions."""

from lastlook.outfit.answer import Answer, Answered, LastLook, Part, Step, Verdict, within
from lastlook.outfit.change import change
from lastlook.outfit.document import MAIN, Document, document, is_safe, pack, unpack

__all__ = [
    "MAIN",
    "Answer",
    "Answered",
    "Document",
    "LastLook",
    "Part",
    "Step",
    "Verdict",
    "change",
    "document",
    "is_safe",
    "pack",
    "unpack",
    "within",
]
