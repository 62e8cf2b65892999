"""Numbers as print gives them: in words, as slips of the pen, with halves and quarters behind."""

from __future__ import annotations

from dataclasses import replace

from lastlook.leaflet.trade.lexeme import Lexeme
from lastlook.leaflet.trade.sizelist import write_values
from lastlook.leaflet.trade.vocabulary import Vocabulary

COUNTED = frozenset({"k", "p", "sl", "rib", "make", "m", "inc", "dec", "bo", "co", "work"})


def ells(stream: list[Lexeme]) -> list[Lexeme]:
    """Read the letter l as 1 where only a number can stand: 'k.l, p.l', 'dec. l st.'."""
    out: list[Lexeme] = []
    for spot, one in enumerate(stream):
        if one.canon in ("l", "i"):
            before = [past.canon for past in out[-2:] if past.canon != "."][-1:]
            after = [next_one.canon for next_one in stream[spot + 1 : spot + 2]]
            if (before and before[0] in COUNTED) or (one.canon == "l" and after and after[0] in ("st", "row", "inch")):
                one = replace(one, canon=write_values((1.0,)), figures=(1.0,))
        out.append(one)
    return out


def ordinal_slips(stream: list[Lexeme]) -> list[Lexeme]:
    """Read '1st' as 1 stitch after a verb that wants one: 'dec 1st each side', 'bind off 5th at beg'."""
    out: list[Lexeme] = []
    for spot, one in enumerate(stream):
        after = stream[spot + 1].canon if spot + 1 < len(stream) else ""
        stopped = bool(out) and out[-1].canon == "." and out[-1].tight
        before = out[-2].canon if stopped and len(out) > 1 else out[-1].canon if out else ""
        wants = ("inc", "dec") if stopped else ("inc", "dec", "k", "p", "sl", "off")
        stitch = before in wants and after not in _ORDERED and not after.endswith(">th")
        if one.canon.endswith(">th") and stitch and one.end - one.start < 5:
            figures = (float(one.canon[1:-3]),)
            out.append(replace(one, canon=write_values(figures), figures=figures))
            one = Lexeme("st", one.end, one.end)
        out.append(one)
    return out


_ORDERED = frozenset(
    {"row", "rnd", "needle", "st", "and", ",", "to", "x", "patt", "inch", "-", "--", "ridge", "(", "rib"}
)


def numbers_in_words(stream: list[Lexeme], words: Vocabulary) -> list[Lexeme]:
    """Turn 'a hundred and twenty-four' into one number, 'an inch and a half' into 1½."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        one = stream[spot]
        if one.canon not in words.numbers:
            out.append(one)
            spot += 1
            continue
        total, last, stop, ordered = 0, 0, spot, False
        while stop < len(stream):
            word = stream[stop].canon
            value = words.numbers.get(word)
            unit = word[1:-3] if word.endswith(">th") else ""
            if unit.isdigit() and int(unit) < 10 and last >= 20:
                total, ordered, stop = total + int(unit), True, stop + 1
                break
            if value is None:
                joins = word == "and" and total >= 100 and stop + 1 < len(stream)
                if joins and stream[stop + 1].canon in words.numbers:
                    stop += 1
                    continue
                break
            if value == 100 and total:
                total, last = total * 100, 100
            elif total == 0 or (last >= 20 and value < last):
                total, last = total + value, value
            else:
                break
            stop += 1
        if ordered:
            out.append(Lexeme(f"<{total}>th", one.start, stream[stop - 1].end, one.capital, one.tight))
            spot = stop
            continue
        figures = (float(total),)
        out.append(Lexeme(write_values(figures), one.start, stream[stop - 1].end, one.capital, one.tight, figures))
        spot = stop
    return out


PARTS = {"half": 0.5, "quarter": 0.25, "quarters": 0.25, "halves": 0.5}


def halves(stream: list[Lexeme]) -> list[Lexeme]:
    """Read 'two and a half inches', 'half an inch', 'an inch and a half', 'three quarters of an inch', 'for an inch'."""
    out: list[Lexeme] = []
    spot = 0
    while spot < len(stream):
        one, names = stream[spot], [after.canon for after in stream[spot : spot + 5]]
        found: tuple[float, int] | None = None
        if one.figures and len(one.figures) == 1:
            if names[1:2] == ["and"] and names[2:3] and names[2] in PARTS:
                found = (one.figures[0] + PARTS[names[2]], 3)
            elif names[1:3] == ["inch", "and"] and names[3:4] and names[3] in PARTS:
                found = (one.figures[0] + PARTS[names[3]], 4)
            elif names[1:2] in (["quarter"], ["quarters"]):
                found = (one.figures[0] * 0.25, 2)
            elif names[1:3] == ["and", "<3>"] and names[3:4] in (["quarter"], ["quarters"]):
                found = (one.figures[0] + 0.75, 4)
        elif one.canon in ("half", "quarter") and (names[1:2] == ["inch"] or names[1:3] == ["of", "inch"]):
            found = (PARTS[one.canon], 1)
        elif one.canon == "inch" and names[1:2] == ["and"] and names[2:3] and names[2] in PARTS:
            found = (1 + PARTS[names[2]], 3)
        elif (
            one.canon == "inch"
            and out
            and out[-1].canon in ("for", "meas", "about", "approx", "until")
            and not any(after.figures for after in stream[spot + 1 : spot + 3])
        ):
            found = (1.0, 1)
        if found is None:
            out.append(one)
            spot += 1
            continue
        value, length = found
        last = stream[spot + length - 1]
        had_unit = "inch" in names[:length]
        out.append(Lexeme(write_values((value,)), one.start, last.end, one.capital, one.tight, (value,)))
        spot += length
        if had_unit:
            out.append(Lexeme("inch", last.end, last.end))
        elif (
            stream[spot : spot + 1]
            and stream[spot].canon == "of"
            and stream[spot + 1 : spot + 2]
            and stream[spot + 1].canon == "inch"
        ):
            spot += 1
    return out
