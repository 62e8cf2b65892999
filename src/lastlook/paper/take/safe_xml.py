"""XML read without trusting it: no document type, no entities, no depth or size beyond what a drawing has.

Nothing is fetched, and what brings a script with it is refused.
"""

from __future__ import annotations

from typing import Any
from xml.etree.ElementTree import Element, ParseError, TreeBuilder

from defusedxml.common import DefusedXmlException
from defusedxml.ElementTree import DefusedXMLParser

from lastlook.finding import Finding
from lastlook.paper.take.outline import unread

DEEPEST = 64
MOST_ELEMENTS = 50_000
MOST_CHARACTERS = 20_000_000


class _TooMuch(Exception):
    """The drawing is deeper or larger than any pattern."""


class _Runs(Exception):
    """The drawing brings something with it that a browser would run."""


class _Counted(TreeBuilder):
    """A tree builder that stops when the tree becomes too deep or too large."""

    def __init__(self) -> None:
        super().__init__()
        self.depth = self.count = 0

    def start(self, tag: Any, attrs: Any, /) -> Element:
        """Begin an element, if there may be one more and it is none that runs."""
        if str(tag).rsplit("}", 1)[-1].lower() == "script" or any(str(key).lower().startswith("on") for key in attrs):
            raise _Runs
        self.depth += 1
        self.count += 1
        if self.depth > DEEPEST or self.count > MOST_ELEMENTS:
            raise _TooMuch
        return super().start(tag, attrs)

    def end(self, tag: str, /) -> Element:
        """End an element."""
        self.depth -= 1
        return super().end(tag)


def tree(text: str) -> Element | Finding:
    """Return the root of an XML text, or why it was not read."""
    if len(text) > MOST_CHARACTERS:
        return _too_much()
    parser = DefusedXMLParser(target=_Counted(), forbid_dtd=True)
    try:
        parser.feed(text)
        root = parser.close()
    except _TooMuch:
        return _too_much()
    except _Runs:
        return unread(
            "The drawing was not taken in: it brings a script with it.",
            "A pattern runs nothing; what does may do anything to whoever opens it.",
            "Save it again as plain SVG, without scripts.",
        )
    except DefusedXmlException:
        return unread(
            "The drawing was not taken in: it brings a document type or entities with it.",
            "Those can make a program read other files or fill its memory; a pattern needs neither.",
            "Save it again as plain SVG.",
        )
    except (ParseError, ValueError, RecursionError) as wrong:
        line = getattr(wrong, "position", (1, 0))[0]
        return unread("The drawing can't be read as SVG.", f"It stops making sense in line {line}.", "Save it anew.")
    return root if isinstance(root, Element) else unread("The file is empty.", "Nothing is in it.", "Save it again.")


def _too_much() -> Finding:
    return unread(
        "The drawing was not taken in: it holds more than a pattern does.",
        f"At most {DEEPEST} groups lie inside each other and {MOST_ELEMENTS} shapes in a file.",
        "Ungroup it, or save only the layer with the pieces.",
    )
