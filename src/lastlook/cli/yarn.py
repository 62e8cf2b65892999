"""Forecast what a leaflet takes of a yarn, how sure that is, and what gives back how much if it is short.

Without a weighed swatch the forecast comes from gauge and yarn count; every piece that is weighed makes it surer.
"""

from __future__ import annotations

import argparse
import json
import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from lastlook import finding, knit, stock
from lastlook.cli import told
from lastlook.cli.design import refuse
from lastlook.cli.leaflets import ask, chosen_size, leaflet_at, reading_json, size_wanted
from lastlook.finding import Certainty, Finding
from lastlook.knit import LeafletReading, SizeReading, compose
from lastlook.knit import yarn as yarns
from lastlook.knit.compose import alter
from lastlook.quantity import Gauge, Missing, Unread, read_weight, write_weight

SURE = 0.975
"""The upper end of a 95 % range."""


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="LEAFLET|OUTFIT", help="a text file, or an outfit's folder or zip")
    parser.add_argument("--garment", help="which of an outfit's knittings, if not the first")
    parser.add_argument("--size", help="the size to be knitted")
    parser.add_argument("--gauge", help="your own, stitches x rows in 10 cm, like 22x30")
    parser.add_argument("--have", help="grams on the scale, all balls together, like '412 g'")
    parser.add_argument("--balls", help="how many balls, where they were not weighed")
    parser.add_argument("--ball", help="what the label says, like '50 g = 125 m'")
    parser.add_argument("--fibre", default="", help="wool, cotton, …")
    parser.add_argument("--swatch", metavar="STSxROWS=GRAMS", help="a swatch's counts and weight, like 33x45=9.2g")
    parser.add_argument("--weighed", action="append", default=[], metavar="PIECE=GRAMS", help="what a piece took")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def run(args: argparse.Namespace) -> int:
    """Forecast; 0 where the yarn is sure to suffice, 1 where not, 2 where something can't be read."""
    if told.is_outfit(args.leaflet):
        return _of_outfit(args)
    lot, slips = _lot(args)
    swatch, weighed, gauge = _swatch(args.swatch), _weighed(args.weighed), _gauge(args.gauge)
    for one in (swatch, weighed, gauge):
        if isinstance(one, Unread):
            slips = (*slips, compose.unread(one))
    if slips or isinstance(swatch, Unread) or isinstance(weighed, Unread) or isinstance(gauge, Unread):
        return refuse(list(slips)[:1], args.json)
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text, size=args.size, gauge=gauge)
    question = size_wanted(reading, args.size)
    if question is not None:
        return ask(question, args.json)
    size = chosen_size(reading, args.size)
    working = gauge or reading.gauge
    if size is None:
        return 2
    if working is None:
        return _no_gauge()
    pieces = yarns.stitches_of_all(size.pieces)
    unknown = next((one for one in weighed if not yarns.is_named(one.name, pieces)), None)
    if unknown is not None:
        return refuse([_no_piece(unknown.name, pieces)], args.json)
    forecast = yarns.forecast(pieces, working, lot, swatch, weighed)
    if isinstance(forecast, Missing):
        return ask(_not_known(forecast), args.json)
    made = [one.name for one in weighed]
    return _show(Asked(reading, size, working, lot, made), forecast, args.json)


@dataclass(frozen=True)
class Asked:
    """What is forecast, from what lot, with what is made."""

    reading: LeafletReading
    size: SizeReading
    gauge: Gauge
    lot: stock.Yarn
    made: Sequence[str]


def _of_outfit(args: argparse.Namespace) -> int:
    """Forecast a knitting of an outfit, from what stands in its document."""
    given = [name for name in ("size", "gauge", "have", "balls", "ball", "swatch") if getattr(args, name) is not None]
    if given or args.weighed or args.fibre:
        name = (given or ["weighed"])[0]
        why = f"--{name} is not taken beside an outfit, whose document says it."
        return refuse([compose.unread(Unread(name, why, "Write it there, or name the leaflet's file."))], args.json)
    found = told.knitted_at(args.leaflet, args.garment)
    if found is None:
        return 2
    _, one = found
    if isinstance(one.forecast, Missing):
        return ask(_not_known(one.forecast), args.json)
    assert one.size is not None and one.working_gauge is not None and one.yarn is not None
    made = [piece.piece for piece in one.made]
    return _show(Asked(one.reading, one.size, one.working_gauge, one.yarn, made), one.forecast, args.json)


def _show(asked: Asked, forecast: yarns.Forecast, as_json: bool) -> int:
    gives: tuple[yarns.Concession, ...] = ()
    lot, order = asked.lot, yarns.order_of_work(yarns.stitches_of_all(asked.size.pieces))
    if not isinstance(lot.grams, Missing) and forecast.chance_enough(lot.grams) < SURE:
        gives = yarns.concessions(asked.size.pieces, asked.gauge, forecast, lot.grams, asked.made)
    if as_json:
        measures = alter.measures_of(asked.size, asked.reading.gauge or asked.gauge, asked.gauge)
        base = reading_json(asked.reading, asked.size, measures, [one.say for one in gives])
        own = _as_json(forecast, lot, gives)
        found = own.pop("findings") + base.pop("findings")
        print(json.dumps(base | own | {"order": order, "findings": found}, ensure_ascii=False, indent=1))
    else:
        print(_in_words(forecast, lot, gives, order))
    return 1 if forecast.findings else 0


def _not_known(lack: Missing) -> Finding:
    return Finding(
        "yarn-unknown",
        Certainty.UNKNOWN,
        f"How much yarn it takes is not known yet: {lack.what} is not known.",
        "A forecast needs it.",
        lack.find_out,
    )


def _no_piece(name: str, pieces: Sequence[yarns.PieceStitches]) -> Finding:
    known = ", ".join(piece.name for piece in pieces)
    slip = Unread(name, f"The leaflet has no piece “{name}” that could be weighed.", f"Its pieces are: {known}.")
    return compose.unread(slip)


def _no_gauge() -> int:
    print("How much yarn it takes is not known yet: the leaflet names no gauge. Give yours with --gauge.")
    return 1


def _lot(args: argparse.Namespace) -> tuple[stock.Yarn, tuple[Finding, ...]]:
    table = {"grams": args.have, "balls": args.balls, "ball": args.ball, "fibre": args.fibre or None}
    return stock.read_yarn("this yarn", {key: value for key, value in table.items() if value is not None})


def _gauge(text: str | None) -> Gauge | Unread | None:
    return None if text is None else stock.read_gauge(text)


def _swatch(text: str | None) -> stock.Swatch | Unread | None:
    if text is None:
        return None
    match = re.fullmatch(r"\s*(\d+)\s*x\s*(\d+)\s*=\s*(.+)", text)
    grams = read_weight(match.group(3)) if match else None
    if match is None or not isinstance(grams, float) or not 0 < grams < 500 or "0" in (match[1], match[2]):
        return Unread(text, f"“{text}” is no weighed swatch.", "Write stitches x rows = grams, like 33x45=9.2g.")
    table = {"stitches": match[1], "rows": match[2], "width": "1 m", "height": "1 m", "grams": f"{grams} g"}
    swatch, _ = stock.read_swatch("of this yarn", {**table, "scale": "0.1 g", "washed": "yes"})
    return swatch if isinstance(swatch, stock.Swatch) else None


def _weighed(texts: list[str]) -> list[yarns.Weighed] | Unread:
    out = []
    for text in texts:
        name, _, weight = text.rpartition("=")
        grams = read_weight(weight)
        if not name or isinstance(grams, Unread) or grams <= 0:
            return Unread(text, f"“{text}” is no weighed piece.", "Write piece = grams, like Back=120g.")
        out.append(yarns.Weighed(name.strip(), grams))
    return out


def _in_words(
    forecast: yarns.Forecast, lot: stock.Yarn, gives: tuple[yarns.Concession, ...], order: Sequence[str]
) -> str:
    low, high = forecast.range_90
    lines = [f"By {forecast.from_what}:", ""]
    for name, grams in forecast.per_piece:
        doubt = "weighed" if name in forecast.made else f"± {write_weight(grams.plus_minus)}"
        lines.append(f"{name:<20} {write_weight(grams.best):>7} {doubt}")
    lines.append(f"{'in all':<20} {write_weight(forecast.total_g.best):>7} nine times in ten {low:.0f} to {high:.0f} g")
    if not isinstance(forecast.metres, Missing):
        lines.append(f"{'':<20} {forecast.metres.best:>5.0f} m")
    if not isinstance(lot.grams, Missing):
        lines += ["", f"Chance that {write_weight(lot.grams.best)} suffice: {forecast.chance_enough(lot.grams):.0%}"]
    lines += ["", "Stop and think again if, before a piece, the scale shows less than:"]
    lines += [f"  {name:<18} {write_weight(grams)}" for name, grams in forecast.stop_lines()]
    lines += ["", f"Order of work, the freest length last: {', '.join(order)}."] if len(order) > 1 else []
    lines += [f"\n{finding.say(one)}" for one in forecast.findings]
    if gives:
        lines += ["", "What gives back how much, the least loss first:"]
        lines += [f"  {one.say:<30} {write_weight(one.gives_g):>6}  then {one.chance:.0%}" for one in gives]
    return "\n".join(lines)


def _as_json(forecast: yarns.Forecast, lot: stock.Yarn, gives: tuple[yarns.Concession, ...]) -> dict[str, Any]:
    low, high = forecast.range_90
    have = None if isinstance(lot.grams, Missing) else lot.grams
    return {
        "total_g": round(forecast.total_g.best, 1),
        "range_90_g": [round(low, 1), round(high, 1)],
        "metres": None if isinstance(forecast.metres, Missing) else round(forecast.metres.best),
        "per_piece": [
            {"name": name, "grams": round(one.best, 1), "plus_minus_g": round(one.plus_minus, 1),
             "weighed": name in forecast.made}
            for name, one in forecast.per_piece
        ],
        "have_g": None if have is None else round(have.best, 1),
        "chance_enough": None if have is None else round(forecast.chance_enough(have), 3),
        "left_g": None if have is None else round(have.best - forecast.total_g.best, 1),
        "stop_lines": [{"before": name, "grams": round(grams, 1)} for name, grams in forecast.stop_lines()],
        "gives_back": [
            {"say": one.say, "grams": round(one.gives_g, 1), "chance": round(one.chance, 3)} for one in gives
        ],
        "findings": [finding.as_json(one) for one in forecast.findings],
    }  # fmt: skip
