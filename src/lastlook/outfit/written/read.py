"""From the outfit's document to its values: `outfit.toml`, key by key, nothing passed over.

What can't be taken becomes a finding with the path of the fact; the rest is read all the same.
"""

from __future__ import annotations

import tomllib
from typing import Any

from lastlook import stock
from lastlook.finding import Certainty, Finding, Where
from lastlook.outfit.outfit import Manner, Outfit
from lastlook.outfit.written.document import MAIN, Document
from lastlook.outfit.written.read_garments import read_knittings, read_made, read_sewings
from lastlook.outfit.written.read_photographs import read_photographs
from lastlook.outfit.written.table import Table, one_of, strangers, table, unread
from lastlook.quantity import Missing, Units
from lastlook.wearer import Wearer, read_measures

SECTIONS = ("outfit", "wearer", "stock", "knitting", "sewing", "made", "photographs", "record")
UNREADABLE = frozenset(
    {
        *("outfit-unread", "fact-unknown", "fact-unread", "stock-unread", "stock-key-unknown", "alteration-unread"),
        *("measure-unread", "measure-unlikely", "measure-unknown", "measure-twice"),
    }
)
"""Kinds of finding that say: the document can't be taken as it stands, and nothing is worked out from it."""
STOCK = ("yarn", "swatch", "cloth", "notion")


def read(folder: Document) -> Outfit:
    """Return the outfit that a document describes, with what in it could not be taken as findings."""
    text = folder.text(MAIN)
    if text is None:
        return _nothing(folder, f"There is no {MAIN} in the folder, or it is not text.")
    try:
        main = tomllib.loads(text)
    except tomllib.TOMLDecodeError as slip:
        return _nothing(folder, f"{MAIN} can't be read: {slip}.")
    findings: list[Finding] = [*strangers(main, SECTIONS, "")]
    manner, name = _manner(table(main, "outfit", findings), findings)
    body, said = _wearer(table(main, "wearer", findings), manner)
    findings += said
    knittings = read_knittings(table(main, "knitting", findings), manner, folder, findings)
    sewings = read_sewings(table(main, "sewing", findings), manner, findings)
    made = read_made(main.get("made", []), manner, findings)
    photographs = read_photographs(main.get("photographs", []), folder, findings)
    record = table(main, "record", findings)
    findings += strangers(record, ("again",), "record.")
    kept = _stock(table(main, "stock", findings), findings)
    return Outfit(
        document=folder,
        name=name,
        manner=manner,
        wearer=body,
        knittings=knittings,
        sewings=sewings,
        made=made,
        photographs=photographs,
        again=str(record.get("again", "")),
        yarns=tuple(one for one in kept if isinstance(one, stock.Yarn)),
        swatches=tuple(one for one in kept if isinstance(one, stock.Swatch)),
        cloths=tuple(one for one in kept if isinstance(one, stock.Cloth)),
        notions=tuple(one for one in kept if isinstance(one, stock.Notion)),
        findings=tuple(findings),
    )


def _nothing(folder: Document, why: str) -> Outfit:
    finding = Finding(
        "outfit-unread",
        Certainty.PROVEN,
        why,
        f"{MAIN} holds all that is not a leaflet or a drawing.",
        f"Put {MAIN} right, or start from `lastlook demo FOLDER`.",
        where=Where(fact=MAIN),
    )
    return Outfit(folder, "", Manner(), Wearer("", ()), findings=(finding,))


def _manner(facts: Table, findings: list[Finding]) -> tuple[Manner, str]:
    findings += strangers(facts, ("name", "units", "english", "hand"), "outfit.")
    units = one_of(facts, "units", ("cm", "inches"), "outfit.", findings)
    english = one_of(facts, "english", ("US", "UK"), "outfit.", findings)
    hand = one_of(facts, "hand", ("right", "left"), "outfit.", findings)
    return Manner(Units(units), english, hand), str(facts.get("name", "An outfit"))


def _wearer(facts: Table, manner: Manner) -> tuple[Wearer, tuple[Finding, ...]]:
    mistyped: list[Finding] = []
    measures = {str(key): str(value) for key, value in table(facts, "measures", mistyped, "wearer.").items()}
    body, findings = read_measures(measures, manner.units)
    named = Wearer(str(facts.get("name", "the wearer")), body.measures)
    return named, (*strangers(facts, ("name", "measures"), "wearer."), *mistyped, *findings)


def _stock(facts: Table, findings: list[Finding]) -> list[object]:
    findings += strangers(facts, STOCK, "stock.")
    readers: dict[str, Any] = {
        "yarn": stock.read_yarn,
        "swatch": stock.read_swatch,
        "cloth": stock.read_cloth,
        "notion": stock.read_notion,
    }
    kept: list[object] = []
    for kind in STOCK:
        for name, entry in table(facts, kind, findings, "stock.").items():
            if not isinstance(entry, dict):
                told = f"Begin it with [stock.{kind}.{name}]."
                findings.append(unread(f"stock.{kind}.{name}", f"“{name}” is not a table of facts.", told))
                continue
            value, said = readers[kind](name, entry)
            findings += said
            kept += [] if isinstance(value, Missing) else [value]
    return kept
