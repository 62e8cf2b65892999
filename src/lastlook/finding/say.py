"""Findings in words: the same sentence on the terminal, the screen and the sheet, and as JSON."""

from __future__ import annotations

from typing import Any

from lastlook.finding.finding import Finding
from lastlook.finding.text import SourceText, Span

LONGEST_SNIPPET = 110
"""Characters of a source line that are shown; a longer one is cut round the span."""


def say(finding: Finding, source: SourceText | None = None) -> str:
    """Return a finding as a terminal shows it: kind, sentence, the words marked, why, what to try."""
    size = f", size {finding.size}" if finding.size else ""
    parts = [f"{finding.kind} ({finding.certainty.value}{size})", finding.say]
    if source and finding.where.span:
        parts += ["", *_snippet(source, finding.where.span)]
    parts += ["", f"  why  {finding.why}"]
    parts += [f"       - {reading}" for reading in finding.readings or ()]
    if finding.attempt:
        parts.append(f"  try  {finding.attempt}" + (" (checked)" if finding.checked else ""))
    return "\n".join(parts)


def as_json(finding: Finding, source: SourceText | None = None) -> dict[str, Any]:
    """Return a finding as the JSON that every command answers with."""
    line = column = 0
    if source and finding.where.span:
        line, column = source.line_and_column(finding.where.span.start)
    return {
        "kind": finding.kind,
        "certainty": finding.certainty.value,
        "asks": finding.asks,
        "line": line,
        "column": column,
        "piece": finding.where.piece,
        "row": finding.where.row,
        "edge": finding.where.edge,
        "fact": finding.where.fact,
        "size": finding.size,
        "say": finding.say,
        "why": finding.why,
        "try": finding.attempt,
        "checked": finding.checked,
        "readings": list(finding.readings) if finding.readings else None,
        "cures": [
            {"say": cure.say, "edits": [{"fact": edit.fact, "value": _plain(edit.value)} for edit in cure.edits]}
            for cure in finding.cures
        ],
    }


def _plain(value: Any) -> Any:
    """Return an edit's value as JSON: a new entry of a list as an object."""
    return dict(value) if isinstance(value, tuple) else value


def _snippet(source: SourceText, span: Span) -> list[str]:
    """Show the first line of the span with its words underlined."""
    number, column = source.line_and_column(span.start)
    text = source.line(number)
    width = max(1, min(span.end - span.start, len(text) - column + 1))
    cut = max(0, column - 1 - LONGEST_SNIPPET // 2) if len(text) > LONGEST_SNIPPET else 0
    shown = text[cut : cut + LONGEST_SNIPPET].expandtabs(1)
    margin = f"{number:>4}"
    return [f"{margin} | {shown}", f"{' ' * len(margin)} | {' ' * (column - 1 - cut)}{'^' * width}"]
