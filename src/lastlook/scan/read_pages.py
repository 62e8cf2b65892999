"""From the pictures of a leaflet's pages to its text: the one way in.

Each page is stood upright and level, its strips of print are found and read, put into reading order, and joined;
then the trade's words repair spaces and signs that look alike, and every doubtful figure is listed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PIL import Image

from lastlook.finding import Certainty, Finding, SourceText, Span, Where
from lastlook.leaflet import repair
from lastlook.scan import doubt, engine
from lastlook.scan.level import levelled
from lastlook.scan.order import in_order
from lastlook.scan.picture import pictures
from lastlook.scan.scanned import Page, Scanned, Sign, Word
from lastlook.scan.words import Seen, words

LEAST_STRIP_CERTAINTY = 0.5
"""A strip read with less certainty is a picture's edge, a fold or a drawing; measured on pages without print."""
SURE_LETTER, LIKELY = 0.9, 0.01
"""A letter read with less certainty may be one of its rivals that is at least so likely, where that makes a word."""
SMALL_PRINT = 14
"""Lines lower than this many picture elements are read with many mistakes."""


def read_pages(images: Sequence[bytes], names: Sequence[str] = ()) -> Scanned:
    """Return the text of pages in the order in which they are given; what can't be read is told as findings.

    `names` are what the pages are called in findings, for instance their files' names.
    """
    if not engine.is_at_hand():
        return Scanned("", findings=(_missing(),))
    told: list[Finding] = []
    pages: list[tuple[Page, list[list[Seen]]]] = []
    for number, data in enumerate(images):
        name = names[number] if number < len(names) else f"Page {number + 1}"
        found = pictures(data, name)
        if isinstance(found, Finding):
            told.append(found)
            continue
        for picture in found:
            page, lines, trouble = _page(picture, name)
            pages.append((page, lines))
            told += trouble
    return _told(_joined(pages), told)


def _missing() -> Finding:
    return Finding(
        "letter-reader-missing",
        Certainty.UNKNOWN,
        f"The letters of a picture can't be read yet; one command brings what is missing: {engine.BRING_IT}",
        "Reading pictures takes an engine of 400 MB, which is not installed unless it is asked for.",
        f"{engine.BRING_IT}",
    )


def _page(picture: Image.Image, name: str) -> tuple[Page, list[list[Seen]], list[Finding]]:
    """Return a page, its lines of words, an empty one for each gap, and what is to be said of it."""
    level = levelled(picture)
    signs = [engine.spelled(level.picture, strip) for strip in level.strips]
    kept = [one for one in level.lying if _is_print(signs[one.which])]
    lines: list[list[Seen]] = []
    for line in in_order(kept):
        if line.after_gap and lines:
            lines.append([])
        lines.append([seen for strip in line.strips for seen in words(signs[strip], level.levelled[strip])])
    trouble = []
    if not kept:
        trouble.append(_without_words(name))
    elif small := _smallness(level.strips, [one.which for one in kept]):
        trouble.append(_small_print(name, small))
    return level.page, lines, trouble


def _is_print(signs: tuple[Sign, ...]) -> bool:
    solid = [sign for sign in signs if sign.text.strip()]
    return (
        any(sign.text.isalnum() for sign in solid)
        and sum(sign.certainty for sign in solid) / len(solid) >= LEAST_STRIP_CERTAINTY
    )


def _smallness(strips: Sequence[engine.Corners], kept: Sequence[int]) -> float | None:
    """Return the usual height of a line where it is too low to be read well."""
    heights = sorted(abs(strips[one][3][1] - strips[one][0][1]) for one in kept)
    usual = heights[len(heights) // 2]
    return usual if usual < SMALL_PRINT else None


def _small_print(name: str, usual: float) -> Finding:
    return Finding(
        "print-small",
        Certainty.DOUBTFUL,
        f"The print on {name} is small in its picture: a line is {usual:.0f} picture elements high.",
        f"Below {SMALL_PRINT} figures are taken for one another.",
        "Go nearer, photograph the page in two halves, or scan at 300 dots to the inch.",
    )


def _without_words(name: str) -> Finding:
    return Finding(
        "picture-without-words",
        Certainty.PROVEN,
        f"No printed words were found on {name}.",
        "Nothing in the picture looks enough like a line of print.",
        "Photograph the page from straight above in even light, so that the print fills the picture.",
    )


def _joined(pages: Sequence[tuple[Page, list[list[Seen]]]]) -> Scanned:
    """Put the words of all pages into one text, and repair it."""
    parts: list[str] = []
    placed: list[Word] = []
    length = 0
    for number, (_, lines) in enumerate(pages):
        for line in lines:
            for seen in line:
                span = Span(length, length + len(seen.text))
                placed.append(Word(seen.text, span, number, seen.box, seen.signs))
                parts.append(seen.text + (" " if seen is not line[-1] else ""))
                length += len(parts[-1])
            parts.append("\n")
            length += 1
    mended = repair("".join(parts), _may_be(placed))
    moved = [replace(one, span=Span(mended.moved(one.span.start), mended.moved(one.span.end))) for one in placed]
    text, repairs = mended.text, mended.in_place()
    doubts = doubt.doubtful(text, moved, repairs)
    return Scanned(text, tuple(page for page, _ in pages), tuple(moved), repairs, doubts)


def _may_be(placed: Sequence[Word]) -> dict[int, str]:
    """Return the other letters that the pictures allow, by offset in the text; figures are left out on both sides."""
    out = {}
    for word in placed:
        for spot, sign in enumerate(word.signs):
            others = "".join(other for other, chance in sign.rivals if chance >= LIKELY and not other.isdigit())
            if others and sign.certainty < SURE_LETTER:
                out[word.span.start + spot] = others
    return out


def _told(scanned: Scanned, told: Sequence[Finding]) -> Scanned:
    """Add what is to be said: of the pictures, of the repairs, of each doubtful figure."""
    source = SourceText(scanned.text)
    out = list(told)
    if scanned.repairs:
        out.append(_repaired(scanned))
    listed = sorted(scanned.doubtful, key=lambda one: one.certainty)[: doubt.MOST_LISTED]
    out += [doubt.said(one, source, scanned.words[one.word].page) for one in sorted(listed, key=lambda one: one.span)]
    return replace(scanned, findings=tuple(out))


def _repaired(scanned: Scanned) -> Finding:
    count = len(scanned.repairs)
    first = scanned.repairs[0]
    shown = ", ".join(f"{one.was} -> {one.now}" for one in scanned.repairs[:6])
    return Finding(
        "words-repaired",
        Certainty.NOTE,
        f"{count} word{'s were' if count > 1 else ' was'} repaired after the picture was read.",
        f"By the trade's own words: {shown}{' and others' if count > 6 else ''}.",
        "Compare each with its picture; what was seen is kept beside what it became.",
        where=Where(span=first.span),
    )
