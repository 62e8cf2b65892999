"""Forecast what a leaflet takes of a yarn, how sure that is, and what gives back how much if it is short.

Without a weighed swatch the forecast comes from gauge and yarn count; every piece that is weighed makes it surer.
"""

from __future__ import annotations

import argparse
import json
import re
from typing import Any

from lastlook import finding, knit, stock
from lastlook.cli import told
from lastlook.cli.leaflets import chosen_size, leaflet_at
from lastlook.finding import Finding
from lastlook.knit import compose
from lastlook.knit import yarn as yarns
from lastlook.quantity import Gauge, Missing, Unread, read_weight, write_weight


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("leaflet", metavar="LEAFLET", help="the leaflet as a text file")
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
    lot, slips = _lot(args)
    swatch, weighed, gauge = _swatch(args.swatch), _weighed(args.weighed), _gauge(args.gauge)
    for one in (swatch, weighed, gauge):
        if isinstance(one, Unread):
            slips = (*slips, compose.unread(one))
    if slips or isinstance(swatch, Unread) or isinstance(weighed, Unread) or isinstance(gauge, Unread):
        for slip in slips:
            told.complain(slip)
        return 2
    text = leaflet_at(args.leaflet)
    if text is None:
        return 2
    reading = knit.read(text, size=args.size, gauge=gauge)
    size = chosen_size(reading, args.size)
    working = gauge or reading.gauge
    if size is None or working is None:
        return 2 if size is None else _no_gauge()
    pieces = [yarns.stitches_of(piece) for piece in size.pieces if piece.rows]
    forecast = yarns.forecast(pieces, working, lot, swatch, weighed)
    if isinstance(forecast, Missing):
        print(f"The {forecast.what} is not known yet. {forecast.find_out}")
        return 1
    gives: tuple[yarns.Concession, ...] = ()
    if isinstance(lot.grams, Missing) or forecast.chance_enough(lot.grams) >= 0.975:
        pass
    else:
        gives = yarns.concessions(size.pieces, working, forecast, lot.grams, (one.name for one in weighed))
    print(json.dumps(_as_json(forecast, lot, gives), indent=1) if args.json else _in_words(forecast, lot, gives))
    return 1 if forecast.findings else 0


def _no_gauge() -> int:
    print("How much yarn it takes is not known yet: the leaflet names no gauge. Give yours with --gauge.")
    return 1


def _lot(args: argparse.Namespace) -> tuple[stock.Yarn, tuple[Finding, ...]]:
    table = {"grams": args.have, "balls": args.balls, "ball": args.ball, "fibre": args.fibre}
    return stock.read_yarn("this yarn", {key: value for key, value in table.items() if value})


def _gauge(text: str | None) -> Gauge | Unread | None:
    return stock.read_gauge(text) if text else None


def _swatch(text: str | None) -> stock.Swatch | Unread | None:
    if not text:
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


def _in_words(forecast: yarns.Forecast, lot: stock.Yarn, gives: tuple[yarns.Concession, ...]) -> str:
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
