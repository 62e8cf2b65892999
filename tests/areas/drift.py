"""A piece's name, the gauge planned and the gauge counted now; what there is to say."""

from __future__ import annotations

from lastlook.finding import say
from lastlook.knit.compose import alter
from lastlook.quantity import Gauge
from lastlook.stock import read_gauge


def answer(given: str, asked: str) -> str:
    lines = given.splitlines()
    planned, now = (read_gauge(line.split()[-1]) for line in lines[1:3])
    assert isinstance(planned, Gauge) and isinstance(now, Gauge)
    found = alter.gauge_drift(planned, now, lines[0])
    return say(found) if found else "The gauge is as planned."
