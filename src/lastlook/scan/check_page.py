"""The side-by-side check as one HTML file: the paper on the left, the text on the right, doubts beside their cut-outs.

The page carries its pictures inside itself, so that it can be mailed and looked at without the program.
"""

from __future__ import annotations

import base64
from collections.abc import Sequence
from html import escape
from importlib import resources

from lastlook.finding import Finding, Span
from lastlook.scan.cut_out import cut_out
from lastlook.scan.scanned import Scanned

SHAKY = 0.8
"""A word with a sign less certain than this is underlined, figures or not."""


def check_page(scanned: Scanned, title: str, proofs: Sequence[Finding] = ()) -> str:
    """Return the check of a scanned leaflet; `proofs` are findings of the proof, shown beside their pictures."""
    style = resources.files("lastlook.scan").joinpath("check_page.css").read_text(encoding="utf-8")
    pages = "".join(_page(scanned, number) for number in range(len(scanned.pages)))
    return (
        "<!doctype html>\n<html lang='en'><head><meta charset='utf-8'>"
        "<meta name='viewport' content='width=device-width, initial-scale=1'>"
        f"<title>{escape(title)}: paper beside text</title><style>{style}</style></head><body>"
        f"<header><h1>{escape(title)}</h1><p>{escape(_summary(scanned))}</p></header>"
        f"{_proofs(scanned, proofs)}{_doubts(scanned)}{_repairs(scanned)}{pages}</body></html>\n"
    )


def _summary(scanned: Scanned) -> str:
    doubts, repairs = len(scanned.doubtful), len(scanned.repairs)
    return (
        f"{len(scanned.words)} words on {_many(len(scanned.pages), 'page')}; "
        f"{_many(doubts, 'doubtful figure')}, {_many(repairs, 'repaired word')}. "
        "No figure was changed: what the paper says is for you to see."
    )


def _many(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _proofs(scanned: Scanned, proofs: Sequence[Finding]) -> str:
    rows = "".join(
        f"<li class='proof'>{_picture(scanned, _words_at(scanned, one.where.span))}<p><b>{escape(one.say)}</b> "
        f"{escape(one.why)}{' ' + escape(one.attempt) if one.attempt else ''}</p></li>"
        for one in proofs
    )
    return f"<section><h2>What the counts say</h2><ul class='slips'>{rows}</ul></section>" if rows else ""


def _doubts(scanned: Scanned) -> str:
    rows = "".join(
        f"<li id='doubt-{number}'>{_picture(scanned, [one.word])}<p>read as <b>{escape(one.read)}</b>"
        f"{', or ' + escape(' or '.join(one.rivals[:3])) if one.rivals else ''} "
        f"<small>{one.certainty:.0%} sure, page {scanned.words[one.word].page + 1}</small></p></li>"
        for number, one in enumerate(scanned.doubtful)
    )
    return f"<section><h2>Doubtful figures</h2><ul class='slips'>{rows}</ul></section>" if rows else ""


def _repairs(scanned: Scanned) -> str:
    rows = "".join(
        f"<li>{_picture(scanned, _words_at(scanned, one.span))}<p><s>{escape(one.was)}</s> "
        f"<b>{escape(one.now)}</b> <small>{escape(one.why)}</small></p></li>"
        for one in scanned.repairs
    )
    return f"<section><h2>Repaired words</h2><ul class='slips'>{rows}</ul></section>" if rows else ""


def _words_at(scanned: Scanned, span: Span | None) -> list[int]:
    if span is None:
        return []
    found = (n for n, word in enumerate(scanned.words) if word.span.start < span.end and span.start < word.span.end)
    return [number for _, number in zip(range(1), found, strict=False)]


def _picture(scanned: Scanned, words: list[int]) -> str:
    return "".join(
        f"<img alt='{escape(scanned.words[word].seen, quote=True)} on the paper' "
        f"src='data:image/png;base64,{base64.b64encode(cut_out(scanned, word)).decode()}'>"
        for word in words
    )


def _page(scanned: Scanned, number: int) -> str:
    page = scanned.pages[number]
    here = [which for which, word in enumerate(scanned.words) if word.page == number]
    doubts = {one.word for one in scanned.doubtful}
    marks = "".join(
        _mark(scanned, which, which in doubts) for which in here if which in doubts or _is_shaky(scanned, which)
    )
    picture = base64.b64encode(page.picture).decode()
    tilt = f", stood level by {abs(page.tilt_degrees):.1f}°" if abs(page.tilt_degrees) >= 0.5 else ""
    return (
        f"<section class='page'><h2>Page {number + 1}{tilt}</h2><div class='beside'>"
        f"<figure><svg viewBox='0 0 {page.width} {page.height}' role='img' aria-label='The paper of page {number + 1}'>"
        f"<image width='{page.width}' height='{page.height}' href='data:image/jpeg;base64,{picture}'/>{marks}</svg>"
        f"</figure><pre>{_text(scanned, here, doubts)}</pre></div></section>"
    )


def _is_shaky(scanned: Scanned, which: int) -> bool:
    return scanned.words[which].certainty < SHAKY


def _mark(scanned: Scanned, which: int, doubtful: object) -> str:
    box = scanned.words[which].box
    kind = "doubt" if doubtful else "shaky"
    return (
        f"<path class='{kind}' d='M{box.left} {box.bottom}H{box.right}'>"
        f"<title>{escape(scanned.words[which].seen)}</title></path>"
    )


def _text(scanned: Scanned, here: list[int], doubts: set[int]) -> str:
    """Return the page's text with its doubtful, shaky and repaired words marked."""
    if not here:
        return ""
    out: list[str] = []
    spot = scanned.words[here[0]].span.start
    for which in here:
        word = scanned.words[which]
        whole = scanned.text[word.span.start : word.span.end]
        kind = (
            "doubt"
            if which in doubts
            else "mended"
            if whole != word.seen
            else "shaky"
            if _is_shaky(scanned, which)
            else ""
        )
        shown = f"<mark class='{kind}' title='seen: {escape(word.seen, quote=True)}'>{escape(whole)}</mark>"
        out += [escape(scanned.text[spot : word.span.start]), shown if kind else escape(whole)]
        spot = word.span.end
    return "".join(out)
