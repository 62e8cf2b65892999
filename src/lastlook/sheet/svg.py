"""Drawings and pages as SVG text, for screens, folders and tests.

User units are millimetres, and the picture asks for its true size. Numbers are written to a hundredth of a
millimetre, so that the same drawing is the same text everywhere.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterable
from xml.sax.saxutils import escape, quoteattr

from lastlook.geometry import Cubic, Path
from lastlook.sheet.layout.page import Page
from lastlook.sheet.mark import STILL, Align, Drawing, Face, Group, Ink, Item, Stroke, Words
from lastlook.sheet.type import MM_PER_PT

FAMILY = {
    Face.TEXT: "'Last Look text', 'Noto Sans', sans-serif",
    Face.HEAD: "'Last Look head', 'Old Standard TT', serif",
}
WEIGHT = {Face.BOLD: ' font-weight="bold"', Face.HEAD: ' font-weight="bold"'}
_NO_PLACE = re.compile(r"[^\t\n\r\x20-\uD7FF\uE000-\uFFFD\U00010000-\U0010FFFF]")
"""What is no character of XML (W3C, XML 1.0, 2.2)."""
SLANT = {Face.ITALIC, Face.HEAD_ITALIC}


def svg(drawing: Drawing) -> str:
    """Return a drawing as SVG text with its title and description."""
    return _whole(drawing.width_mm, drawing.height_mm, drawing.title, drawing.description, drawing.items)


def page_svg(page: Page) -> str:
    """Return one page as SVG text."""
    return _whole(page.width_mm, page.height_mm, page.label or "Page", "", page.items)


def _whole(width: float, height: float, title: str, description: str, items: Iterable[Item]) -> str:
    mark = f"{zlib.crc32(title.encode(errors='replace')):08x}-"
    said = f"<desc>{_plain(description)}</desc>\n" if description else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(width)}mm" height="{_n(height)}mm" '
        f'viewBox="0 0 {_n(width)} {_n(height)}" role="img">\n<title>{_plain(title)}</title>\n{said}'
        + "".join(_item(item, spot, mark) for spot, item in enumerate(items))
        + "</svg>\n"
    )


def _item(item: Item, spot: int, deep: str) -> str:
    if isinstance(item, Stroke):
        return f'<path d="{" ".join(path_data(path) for path in item.paths)}"{_ink(item.ink)}/>\n'
    if isinstance(item, Words):
        return _words(item)
    return _group(item, f"{deep}{spot}-")


def _group(group: Group, deep: str) -> str:
    inside = "".join(_item(item, spot, deep) for spot, item in enumerate(group.items))
    name = f" data-name={quoteattr(_NO_PLACE.sub('', group.name))}" if group.name else ""
    moved = (
        f' transform="matrix({" ".join(f"{value:.6g}" for value in group.matrix)})"' if group.matrix != STILL else ""
    )
    if not group.clip:
        return f"<g{name}{moved}>\n{inside}</g>\n"
    x, y, width, height = map(_n, group.clip)
    frame = f'<clipPath id="clip-{deep}"><rect x="{x}" y="{y}" width="{width}" height="{height}"/></clipPath>'
    return f'<g{name}{moved}>{frame}<g clip-path="url(#clip-{deep})">\n{inside}</g></g>\n'


def _words(words: Words) -> str:
    x, y = words.at
    style = words.style
    place = f' x="{_n(x)}" y="{_n(y)}"'
    if words.turn_deg:
        place += f' transform="rotate({_n(words.turn_deg)} {_n(x)} {_n(y)})"'
    family = FAMILY[Face.HEAD if style.face.value.startswith("head") else Face.TEXT]
    slant = ' font-style="italic"' if style.face in SLANT else ""
    anchor = "" if words.align is Align.START else f' text-anchor="{words.align.value}"'
    return (
        f'<text{place} font-family="{family}" font-size="{_n(style.size_pt * MM_PER_PT)}"'
        f'{WEIGHT.get(style.face, "")}{slant}{anchor} fill="{style.colour}">{_plain(words.text)}</text>\n'
    )


def _ink(ink: Ink) -> str:
    fill = f' fill="{ink.fill or "none"}"' + (' fill-rule="evenodd"' if ink.fill else "")
    if not ink.line:
        return fill
    dash = f' stroke-dasharray="{" ".join(map(_n, ink.dash))}"' if ink.dash else ""
    return f'{fill} stroke="{ink.line}" stroke-width="{_n(ink.width_mm)}"{dash} stroke-linejoin="round"'


def path_data(path: Path) -> str:
    """Return a path in SVG's own notation."""
    out = [f"M{_xy(path.start)}"]
    for segment in path.segments:
        if isinstance(segment, Cubic):
            out.append(f"C{_xy(segment.out)} {_xy(segment.into)} {_xy(segment.end)}")
        else:
            out.append(f"L{_xy(segment.end)}")
    if path.is_closed():
        out.append("Z")
    return "".join(out)


def _plain(text: str) -> str:
    """Return a text as XML can carry it: without the signs that XML 1.0 has no place for."""
    return escape(_NO_PLACE.sub("", text))


def _xy(point: tuple[float, float]) -> str:
    return f"{_n(point[0])} {_n(point[1])}"


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
