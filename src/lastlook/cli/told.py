"""What the commands have in common: an outfit fetched from disk, its lay searched, its verdict in words."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

from lastlook import keep, lay, outfit, sheet
from lastlook.finding import Finding, SourceText, say

MOST_PASSES = 400
"""Passes of the search that a command waits for; a home-sized lay is found in far fewer."""


def folder_at(place: str) -> outfit.Document | None:
    """Return the document at a folder or zip; None, with one clear line on standard error, where there is none."""
    path = Path(place)
    found: outfit.Document | Finding
    if path.is_file():
        found = outfit.unpack(path.read_bytes())
    else:
        found = keep.read_folder(path)
    if isinstance(found, Finding):
        complain(found)
        return None
    return found


def derived_at(place: str) -> outfit.Derived | None:
    """Return what follows from the outfit at a place; None, once it was said why, where it can't be taken."""
    folder = folder_at(place)
    if folder is None:
        return None
    derived = outfit.derive(outfit.read(folder))
    impossible = [finding for one in derived.sewn for finding in one.hopeless if finding.kind == "piece-without-room"]
    for finding in impossible:
        complain(finding)
    return None if is_unreadable(derived.outfit) or impossible else derived


def complain(finding: Finding) -> None:
    """Say on standard error what can't be read."""
    print(f"{finding.say} {finding.why} {finding.attempt or ''}".strip(), file=sys.stderr)


def is_unreadable(one: outfit.Outfit) -> bool:
    """Whether the document can't be taken as an outfit; each reason is said on standard error."""
    reasons = [finding for finding in one.findings if finding.kind in outfit.UNREADABLE]
    for finding in reasons:
        complain(finding)
    return bool(reasons)


def laid(derived: outfit.Derived) -> outfit.Derived:
    """Return the outfit with a lay for every garment whose lay is missing or broken, where one was found."""
    folder = derived.outfit.document
    for one in outfit.needs_laying(derived):
        found = outfit.lay_again(one, MOST_PASSES, _always)
        if found.proven:
            folder = outfit.with_lay(folder, one, found)
    return derived if folder is derived.outfit.document else outfit.derive(outfit.read(folder))


def _always(_: lay.Progress) -> bool:
    return True


def answers(judged: outfit.Verdict, derived: outfit.Derived) -> str:
    """Return the three answers in words, part by part, with their findings."""
    english = sheet.manner_of(derived.outfit)
    lines = [derived.outfit.name, "=" * len(derived.outfit.name)]
    for one in (judged.adds_up, judged.fits, judged.enough):
        chance = f" ({one.chance:.0%} likely)" if one.chance is not None else ""
        lines += ["", f"{one.question} {one.answer.value.upper()}{chance}"]
        lines += [f"  {part.answer.value:<13} {english.say(part.because)}" for part in one.parts]
    said = [finding for one in (judged.adds_up, judged.fits, judged.enough) for finding in one.findings]
    for finding in dict.fromkeys(said):
        lines += ["", say(_in_english(finding, english), source_of(finding, derived))]
    return "\n".join(lines)


def _in_english(finding: Finding, english: sheet.Manner) -> Finding:
    """Return a finding in the maker's own English; what is quoted from a leaflet stays as it is printed."""
    attempt = english.say(finding.attempt) if finding.attempt else finding.attempt
    return replace(finding, say=english.say(finding.say), why=english.say(finding.why), attempt=attempt)


STEPS = {
    outfit.Step.CAST_ON: "cast on the {}",
    outfit.Step.CUT: "cut out the {}",
    outfit.Step.SEW_UP: "sew up the {}",
    outfit.Step.PRESS: "press",
}
MARKS = {"proven": "trouble", "doubtful": "doubtful", "unknown": "not known", "note": "note"}
"""What a finding is in a list that also says what is proven good."""


def look(one: outfit.LastLook, derived: outfit.Derived) -> str:
    """Return one last look in words."""
    head = "Last look before you " + STEPS[one.before].format(one.piece or "")
    lines = [head, "-" * len(head)]
    english = sheet.manner_of(derived.outfit)
    lines += [f"  sure       {english.say(sentence)}" for sentence in one.proven]
    for finding in (_in_english(each, english) for each in one.open):
        lines.append(f"  {MARKS[finding.certainty.value]:<10} {finding.say}")
        if finding.attempt:
            lines.append(f"             {finding.attempt}" + (" (checked)" if finding.checked else ""))
    if not one.open:
        lines.append("  Nothing stands open.")
    lines += [f"  take care  {sentence}" for sentence in one.cautions]
    return "\n".join(lines)


def source_of(finding: Finding, derived: outfit.Derived) -> SourceText | None:
    """Return the leaflet that a finding points into."""
    if finding.where.span is None:
        return None
    return next((one.reading.source for one in derived.knitted if finding in one.findings), None)


def print_sheets(derived: outfit.Derived, judged: outfit.Verdict, place: Path) -> sheet.Printed:
    """Write every sheet of an outfit into a folder, which is made if need be."""
    printed = sheet.sheets_of(derived, judged)
    place.mkdir(parents=True, exist_ok=True)
    for name, data in printed.files:
        (place / name).write_bytes(data)
    return printed


def write_text(place: str, text: str) -> bool:
    """Write a text file; False, with one clear line on standard error, where it can't be."""
    try:
        Path(place).write_text(text, encoding="utf-8")
    except OSError as slip:
        print(f"{place} can't be written: {slip.strerror}. Name another file.", file=sys.stderr)
        return False
    return True


def is_outfit(place: str) -> bool:
    """Whether a place is an outfit's folder or zip, not a leaflet."""
    return Path(place).is_dir() or place.lower().endswith(".zip")


def knitted_at(place: str, garment: str | None) -> tuple[outfit.Outfit, outfit.Knitted] | None:
    """Return an outfit with its knitting of that name, or its first; None, once it was said why it has none."""
    folder = folder_at(place)
    if folder is None:
        return None
    whole = outfit.read(folder)
    if is_unreadable(whole):
        return None
    knitted = outfit.derive(whole).knitted
    found = next((one for one in knitted if garment in (None, one.plan.name)), None)
    if found is None:
        named = ", ".join(one.plan.name for one in knitted)
        lead = f"{place} has no knitting “{garment}”; it has: {named}." if named else f"{place} has no knitting in it."
        print(f"{lead} Name one of its knittings, or a leaflet's file.", file=sys.stderr)
        return None
    return whole, found
