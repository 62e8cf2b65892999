"""What a maker says of a skirt in words: measures, ease and lengths as people write them, read for a draft."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from lastlook.finding import Certainty, Finding, Where
from lastlook.paper.easing import CALLED, UNKNOWN, Easing, easing_of, prior_of
from lastlook.quantity import Origin, Units, Unread, read_length


class Sort(Enum):
    """What a word is followed by."""

    MEASURE = "a length of the body"
    LENGTH = "a length"
    EASE = "a length, less than nothing allowed"
    NUMBER = "a number"
    SHARE = "a percentage"


@dataclass(frozen=True)
class Word:
    """A word that a maker may say, what follows it, and what it is called inside."""

    key: str
    sort: Sort
    say: str


WORDS: Mapping[str, Word] = {
    "waist": Word("waist_girth", Sort.MEASURE, "waist girth"),
    "hip": Word("hip_girth", Sort.MEASURE, "hip girth, at the fullest place"),
    "high-hip": Word("top_hip_girth", Sort.MEASURE, "girth over the hip bones"),
    "hip-depth": Word("waist_to_hip", Sort.MEASURE, "from the waist down the side to the fullest hip"),
    "high-hip-depth": Word("waist_to_top_hip", Sort.MEASURE, "from the waist down to the high hip"),
    "knee-depth": Word("waist_to_knee", Sort.MEASURE, "from the waist down to the knee"),
    "stride": Word("stride_girth", Sort.MEASURE, "girth round both knees in a walking stride"),
    "waist-sitting": Word("waist_girth_sitting", Sort.MEASURE, "waist girth, sitting"),
    "hip-sitting": Word("hip_girth_sitting", Sort.MEASURE, "hip girth, sitting"),
    "length": Word("length_mm", Sort.LENGTH, "finished length from waist to hem"),
    "ease-waist": Word("ease_waist_mm", Sort.EASE, "ease at the waist"),
    "ease-hip": Word("ease_hip_mm", Sort.EASE, "ease at the hip"),
    "hem": Word("hem_mm", Sort.LENGTH, "girth of the finished hem"),
    "band": Word("band_mm", Sort.LENGTH, "length of a band that is there already, without its lap"),
    "band-width": Word("band_width_mm", Sort.LENGTH, "finished width of the band"),
    "lap": Word("lap_mm", Sort.LENGTH, "lap of the band"),
    "dart": Word("dart_mm", Sort.LENGTH, "intake of one dart, both legs together"),
    "seam-allowance": Word("seam_allowance_mm", Sort.LENGTH, "seam allowance"),
    "side-allowance": Word("side_allowance_mm", Sort.LENGTH, "allowance at the side seams"),
    "hem-allowance": Word("hem_allowance_mm", Sort.LENGTH, "hem allowance"),
    "ease-in": Word("ease_in_mm", Sort.LENGTH, "how much longer the skirt top is than the band, to be eased"),
    "pleat-depth": Word("pleat_depth_mm", Sort.LENGTH, "depth of one pleat"),
    "gores": Word("gores", Sort.NUMBER, "number of gores: 4, 6 or 8"),
    "pleats": Word("pleats", Sort.NUMBER, "number of pleats"),
    "fullness": Word("fullness", Sort.NUMBER, "cloth over finished waist in gathers, such as 1.8"),
    "stretch": Word("stretch_share", Sort.SHARE, "how much the cloth stretches across, measured over 10 cm"),
    "eases": Word("eases_share", Sort.SHARE, "how much a test strip of the cloth let itself be eased"),
}


@dataclass(frozen=True)
class Given:
    """Everything that was said, read."""

    measures: Mapping[str, float]
    options: Mapping[str, float]
    easing: Easing = UNKNOWN
    findings: tuple[Finding, ...] = ()


def read_given(said: Mapping[str, str], units: Units | None = None, fibre: str = "") -> Given:
    """Return what was said as mm and numbers; a word that can't be read is a finding, the rest stands."""
    measures: dict[str, float] = {}
    options: dict[str, float] = {}
    findings: list[Finding] = []
    for name, text in said.items():
        word = WORDS.get(name)
        if word is None:
            continue
        value = _read(text, word.sort, units)
        if isinstance(value, Unread):
            findings.append(_unread(name, word, value))
        elif word.sort is Sort.MEASURE:
            measures[word.key] = value
        else:
            options[word.key] = value
    if fibre and prior_of(fibre) is None:
        findings.append(_no_such_fibre(fibre))
    eases = options.get("eases_share")
    easing = easing_of(fibre) if eases is None else Easing(eases, Origin.MEASURED, fibre)
    return Given(measures, options, easing, tuple(findings))


def _read(text: str, sort: Sort, units: Units | None) -> float | Unread:
    if sort is Sort.NUMBER or sort is Sort.SHARE:
        return _number(text, sort)
    sign = -1.0 if sort is Sort.EASE and text.strip().startswith("-") else 1.0
    value = read_length(text.strip().removeprefix("-") if sign < 0 else text, units)
    return value if isinstance(value, Unread) else sign * value


def _number(text: str, sort: Sort) -> float | Unread:
    plain = text.strip().removesuffix("%").strip().replace(",", ".")
    try:
        value = float(plain)
    except ValueError:
        value = -1.0
    if 0 <= value <= 1000:
        return value / 100 if sort is Sort.SHARE else value
    example = "3 %" if sort is Sort.SHARE else "6"
    return Unread(text, f"“{text}” is no number to count with.", f"Write it like {example}.")


def _no_such_fibre(fibre: str) -> Finding:
    known = ", ".join(dict.fromkeys(word for words in CALLED.values() for word in words[:2]))
    return Finding(
        "fibre-unknown",
        Certainty.PROVEN,
        f"No cloth called “{fibre}” is known here.",
        f"What a cloth lets itself be eased goes by its fibre; known are {known}.",
        "Name one of them, or leave it out and say what a test strip eased.",
        where=Where(fact="cloth"),
    )


def _unread(name: str, word: Word, value: Unread) -> Finding:
    return Finding(
        "measure-unread",
        Certainty.PROVEN,
        value.why,
        f"It was given for the {name.replace('-', ' ')}: {word.say}.",
        value.attempt,
        where=Where(fact=word.key),
    )
