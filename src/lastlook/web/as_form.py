"""Edits of an outfit's document, carried by a form there and back."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Callable, Iterable
from typing import Any

from starlette.datastructures import FormData

from lastlook.finding import Edit
from lastlook.outfit import MAIN, Document, path_of

LONGEST_FACT = 4000
"""Characters of a path or of what was typed; more is no fact."""


def edits_of(form: FormData) -> list[Edit]:
    """Return the edits that a form asks for; whatever is not one is passed over.

    A form carries either `edits` as JSON, or pairs of `fact` and what was typed as `value`, with more edits in
    `with`. A single fact left blank is taken away; among several, those left blank are passed over, unless the form
    shows them `whole`, with what stands there now.
    """
    typed = [str(value).replace("\r\n", "\n").strip()[:LONGEST_FACT] for value in form.getlist("value")]
    facts = [str(fact)[:LONGEST_FACT] for fact in form.getlist("fact")]
    if not facts:
        return _listed(form.get("edits"))
    edits = [Edit(fact, value) for fact, value in zip(facts, typed, strict=False) if fact]
    if len(edits) > 1 and not form.get("whole"):
        edits = [edit for edit in edits if edit.value]
    return edits + _listed(form.get("with")) if edits else []


def typed_in(document: Document) -> Callable[[str], str]:
    """Return what tells how a fact stands in the outfit's document, letter by letter; nothing where it does not."""
    try:
        main: Any = tomllib.loads(document.text(MAIN) or "")
    except tomllib.TOMLDecodeError:
        main = {}

    def typed(fact: str) -> str:
        spot = main
        for key in path_of(fact):
            spot = spot.get(key) if isinstance(spot, dict) else None
        return "" if spot is None or isinstance(spot, (dict, list)) else str(spot)

    return typed


def as_form(edits: Iterable[Edit]) -> str:
    """Return edits as a form carries them."""
    return json.dumps([[edit.fact, edit.value] for edit in edits])


def _listed(text: object) -> list[Edit]:
    try:
        asked = json.loads(str(text or "[]"))
    except ValueError:
        return []
    return [edit for edit in map(_edit, asked if isinstance(asked, list) else []) if edit]


def _edit(asked: Any) -> Edit | None:
    if not (isinstance(asked, list) and len(asked) == 2 and isinstance(asked[0], str) and asked[0]):
        return None
    fact, value = asked
    if isinstance(value, list):
        rows = [row for row in value if isinstance(row, list) and len(row) == 2 and _is_plain(row[1])]
        return Edit(fact, tuple((str(key), one) for key, one in rows)) if len(rows) == len(value) else None
    return Edit(fact, value) if _is_plain(value) else None


def _is_plain(value: Any) -> bool:
    return isinstance(value, (str, int, float, bool))
