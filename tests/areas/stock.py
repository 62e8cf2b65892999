"""One entry of the stock as a TOML table; the fence says what it is: yarn, swatch, cloth, notion, gauge, count."""

from __future__ import annotations

import tomllib

from lastlook import stock
from lastlook.finding import Finding, say
from lastlook.quantity import Gauge, Missing, Spread, Unread


def answer(given: str, asked: str) -> str:
    if asked in ("gauge", "count"):
        return "\n".join(_line(text, asked) for text in given.splitlines())
    table = tomllib.loads(given)
    name = str(table.pop("name", "it"))
    lines: list[str]
    findings: tuple[Finding, ...]
    if asked == "yarn":
        yarn, findings = stock.read_yarn(name, table)
        lines = [f"grams: {_told(yarn.grams, 'g')}", f"metres: {_told(yarn.metres, 'm')}"]
    elif asked == "swatch":
        swatch, findings = stock.read_swatch(name, table)
        lines = _swatch(swatch)
    elif asked == "cloth":
        cloth, findings = stock.read_cloth(name, table)
        lines = _cloth(cloth)
    else:
        notion, findings = stock.read_notion(name, table)
        lines = [f"{notion.kind}: hole {notion.buttonhole_mm} mm, overlap {notion.least_overlap_mm} mm"]
    return "\n\n".join(["\n".join(lines), *(say(one) for one in findings)])


def _line(text: str, asked: str) -> str:
    if asked == "count":
        tex = stock.tex_of(text)
        return f"{tex.why} {tex.attempt}" if isinstance(tex, Unread) else f"{tex:.2f} tex"
    gauge = stock.read_gauge(text)
    if isinstance(gauge, Unread):
        return f"{gauge.why} {gauge.attempt}"
    return f"{_told(gauge.stitches, 'stitches')}; {_told(gauge.rows, 'rows')}"


def _swatch(swatch: stock.Swatch | Missing) -> list[str]:
    if isinstance(swatch, Missing):
        return [f"{swatch.what}: not known. {swatch.find_out}"]
    gauge: Gauge = swatch.gauge
    weight = swatch.grams_per_stitch
    per = weight * 1000 if isinstance(weight, Spread) else weight
    return [
        f"stitches in 10 cm: {_told(gauge.stitches, '')}",
        f"rows in 10 cm: {_told(gauge.rows, '')}",
        f"1000 stitches: {_told(per, 'g')}",
    ]


def _cloth(cloth: stock.Cloth | Missing) -> list[str]:
    if isinstance(cloth, Missing):
        return [f"{cloth.what}: not known. {cloth.find_out}"]
    size = f"{cloth.width_mm:.0f} by {cloth.length_mm:.0f} mm, {cloth.usable_width_mm:.0f} mm between selvedges"
    share = cloth.shrinkage * 100 if isinstance(cloth.shrinkage, Spread) else cloth.shrinkage
    return [size, f"nap: {cloth.nap}", f"shrinkage: {_told(share, '%')}", *(str(flaw.what) for flaw in cloth.flaws)]


def _told(one: Spread | Missing, unit: str) -> str:
    if isinstance(one, Missing):
        return f"not known. {one.find_out}"
    return f"{one.best:.1f} ({one.low:.1f} to {one.high:.1f}) {unit}".strip()
