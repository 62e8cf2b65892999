"""A text as it was given, and places in it.

A *span* is a half-open range of character offsets. Lines and columns count from 1.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from functools import cached_property


@dataclass(frozen=True, order=True)
class Span:
    """The characters from `start` up to, not including, `end`."""

    start: int
    end: int


@dataclass(frozen=True)
class SourceText:
    """A text, never altered, that knows its lines."""

    text: str
    name: str = ""

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(spot + 1 for spot, sign in enumerate(self.text) if sign == "\n")]

    def line_and_column(self, offset: int) -> tuple[int, int]:
        """Return the line and column, from 1, of a character offset."""
        line = bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1

    def line(self, number: int) -> str:
        """Return the line of that number, from 1, without its end."""
        start = self._starts[number - 1]
        end = self._starts[number] - 1 if number < len(self._starts) else len(self.text)
        return self.text[start:end]

    def words(self, span: Span) -> str:
        """Return the words of a span as they were typed."""
        return self.text[span.start : span.end]
