"""Foreign pieces taken in from a file, as `lastlook true` takes them.

The words after the fence are the file's name, then what is asked: a kind of finding, or `pieces`. Lines that begin
with `piece`, `measure` or `envelope` say what the command's words say; the rest is the file.
"""

from __future__ import annotations

from lastlook import outfit, paper
from lastlook.finding import Finding, say
from lastlook.quantity import Units


def answer(given: str, asked: str) -> str:
    file, what = asked.split(" ")
    words = {"piece": [], "measure": [], "envelope": []}  # type: dict[str, list[str]]
    text = []
    for line in given.splitlines():
        word, _, rest = line.partition(" ")
        words.get(word, text).append(rest if word in words else line)
    pieces = [outfit.read_piece_words(one, Units.CM) for one in words["piece"]]
    envelopes = [outfit.read_envelope_words(one, Units.CM) for one in words["envelope"]]
    unread = [one for one in (*pieces, *envelopes) if isinstance(one, Finding)]
    measures = paper.read_given(dict(one.split("=") for one in words["measure"])).measures
    told = outfit.Told(
        tuple(one for one in pieces if not isinstance(one, Finding)),
        measures,
        envelope=next((one for one in envelopes if not isinstance(one, Finding)), None),
    )
    garment = outfit.garment_of([(file, "\n".join(text).encode())], told)
    if what == "pieces":
        return "\n".join(paper.in_words(garment))
    found = [one for one in (*unread, *garment.findings, *paper.true(garment)) if what in ("findings", one.kind)]
    return "\n\n".join(say(one) for one in found) or "nothing to say"
