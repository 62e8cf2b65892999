"""A wearer's measures as typed, `name = length` a line; a line `? name` asks what is known of a measure."""

from __future__ import annotations

from lastlook import wearer
from lastlook.finding import say
from lastlook.quantity import Missing, Units


def answer(given: str, asked: str) -> str:
    table, questions = {}, []
    for line in given.splitlines():
        if line.startswith("?"):
            questions.append(line.removeprefix("?").strip())
        elif "=" in line:
            name, _, value = line.partition("=")
            table[name.strip()] = value.strip()
    bare = Units.CM if "cm" in asked else Units.INCHES if "inches" in asked else None
    body, findings = wearer.read_measures(table, bare)
    out = [_told(one) for one in body.measures] if not questions else []
    out += [_told(wearer.measure(body, name)) for name in questions]
    return "\n\n".join(["\n".join(out), *(say(one) for one in findings)] if out else [say(one) for one in findings])


def _told(one: wearer.Measure | Missing) -> str:
    if isinstance(one, Missing):
        return f"{one.what}: not known. {one.find_out}"
    doubt = one.mm.plus_minus
    return f"{one.name}: {one.mm.best:.0f} mm, give or take {doubt:.0f} ({one.origin.value}; {one.how})"
