"""How well photographed pages are read: invented leaflets printed here in several founts, then badly photographed.

`python -m benchmarks scan [FOLDER...]` prints the table of `scan.md`; folders may hold further founts (.ttf, .otf).
Spaces and line ends count as one space, long dashes as two hyphens; a *number* is a run of figures with its fraction.
"""

from __future__ import annotations

import re
import time
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from pathlib import Path

import numpy as np

from lastlook import scan
from tests.photograph import OWN_FOUNT, Camera, Print, run_together, set_pages, taken

LEAFLETS = Path(__file__).resolve().parent.parent / "examples" / "leaflets"
TEXTS = ("campus-raglan-1955", "cadets-pullover-1948", "seaside-jumper-1926", "canteen-cardigan-1943")
FOUNTS = ("LiberationSerif-Regular", "GFSDidot", "OldStandard-Regular")
HOMES = ("/usr/share/fonts", "/usr/local/share/fonts", "/Library/Fonts", "C:/Windows/Fonts")
NUMBER = re.compile(r"[\d½¼¾⅓⅔⅛⅜⅝⅞]+")


@dataclass(frozen=True)
class Condition:
    """A way of printing and taking that is measured on its own."""

    name: str
    camera: Camera
    size: int = 34
    stops_run_together: float = 0.0


CONDITIONS = (
    Condition("flat scan", Camera()),
    Condition("tilted by 5 degrees", Camera(tilt=5)),
    Condition("tilted by -3, uneven light", Camera(tilt=-3, shade=0.5)),
    Condition("held aslant (perspective)", Camera(perspective=0.06, tilt=1)),
    Condition("blurred", Camera(blur=2.0)),
    Condition("noisy, strongly compressed", Camera(noise=25, quality=35)),
    Condition("half the size", Camera(scale=0.5)),
    Condition("small print, photographed", Camera(scale=0.8, blur=0.8, noise=8), size=24),
    Condition("full stops run together", Camera(tilt=1, blur=0.8), stops_run_together=0.3),
    Condition("all of it", Camera(tilt=4, perspective=0.04, blur=1.2, noise=14, shade=0.5, scale=0.7, quality=70)),
)


@dataclass(frozen=True)
class Sample:
    """A picture with the words that are on it."""

    condition: Condition
    picture: bytes
    truth: str


@dataclass
class Tally:
    """What is counted under one condition."""

    pages: int = 0
    signs: int = 0
    seen_wrong: int = 0
    wrong: int = 0
    numbers: int = 0
    misread: int = 0
    lost: int = 0
    listed: int = 0
    alarms: int = 0
    seconds: float = 0.0


def main(words: list[str]) -> int:
    """Print the table."""
    heads = ("page (how many)", "signs wrong as seen", "after repair", "numbers misread + lost", "misread ones listed")
    print(f"| {' | '.join(heads)} | listed in vain, a page | s a page |\n|---|---|---|---|---|---|---|")
    total = Tally()
    for condition in CONDITIONS:
        tally = Tally()
        for sample in samples(condition, words):
            start = time.perf_counter()
            read = scan.read_pages([sample.picture])
            tally.seconds += time.perf_counter() - start
            _count(tally, read, sample.truth)
        print(_row(condition.name, tally), flush=True)
        for field in vars(total):
            setattr(total, field, getattr(total, field) + getattr(tally, field))
    print(_row("all", total))
    return 0


def samples(condition: Condition, folders: list[str]) -> Iterator[Sample]:
    """Yield pages under one condition, each in another fount, with one and two columns by turns."""
    for turn, fount in enumerate([OWN_FOUNT, *founts(folders)]):
        text = (LEAFLETS / f"{TEXTS[turn % len(TEXTS)]}.txt").read_text(encoding="utf-8")
        printed = run_together(text, condition.stops_run_together, turn + 1)
        wide = 1500 if turn % 2 == 0 else 880
        how = Print(str(fount), condition.size, columns=1 + turn % 2, measure=wide, longest=1300)
        page, set_as = set_pages(printed, how)[0]
        if condition.stops_run_together:
            set_as = _with_its_spaces(set_as, text)
        yield Sample(condition, taken(page, condition.camera), set_as)


def _with_its_spaces(printed: str, text: str) -> str:
    """Return the part of the text that was printed, with the spaces that the print lost."""
    solid = len(re.sub(r"\s", "", printed))
    for spot, sign in enumerate(text):
        solid -= not sign.isspace()
        if not solid:
            return text[: spot + 1]
    return text


def founts(folders: list[str]) -> list[Path]:
    """Return the founts of old print that this machine has."""
    homes = [Path(home) for home in (*folders, *HOMES) if Path(home).exists()]
    found = {file.stem: file for home in homes for file in sorted(home.rglob("*.[to]tf"))}
    return [found[name] for name in FOUNTS if name in found]


def _count(tally: Tally, read: scan.Scanned, truth: str) -> None:
    tally.pages += 1
    tally.signs += len(_plain(truth))
    tally.seen_wrong += distance(_plain(" ".join(word.seen for word in read.words)), _plain(truth))
    tally.wrong += distance(_plain(read.text), _plain(truth))
    printed, got = NUMBER.findall(truth), list(NUMBER.finditer(read.text))
    tally.numbers += len(printed)
    wrong = set(range(len(got)))
    for tag, a, b, c, d in SequenceMatcher(None, printed, [one.group() for one in got], autojunk=False).get_opcodes():
        if tag == "equal":
            wrong -= set(range(c, d))
        else:
            tally.misread += min(b - a, d - c)
            tally.lost += max(0, (b - a) - (d - c))
    for which, one in enumerate(got):
        listed = any(doubt.span.start < one.end() and one.start() < doubt.span.end for doubt in read.doubtful)
        tally.listed += listed and which in wrong
        tally.alarms += listed and which not in wrong


def _row(name: str, tally: Tally) -> str:
    shares = f"{tally.seen_wrong / tally.signs:.2%} | {tally.wrong / tally.signs:.2%}"
    numbers = f"{tally.misread} + {tally.lost} of {tally.numbers}"
    listed = f"{tally.listed}" if tally.misread else "-"
    return (
        f"| {name} ({tally.pages}) | {shares} | {numbers} | {listed} | {tally.alarms / tally.pages:.1f} "
        f"| {tally.seconds / tally.pages:.1f} |"
    )


def _plain(text: str) -> str:
    return re.sub(r"\s+", " ", text.replace("—", "--").replace("–", "-").replace("’", "'")).strip()


def distance(a: str, b: str) -> int:
    """Return how many signs must be put in, taken out or changed to make one text the other."""
    goal = np.frombuffer(b.encode("utf-32-le"), np.uint32)
    steps = np.arange(len(b) + 1)
    row = steps.copy()
    for number, sign in enumerate(a, 1):
        here = np.minimum(row[:-1] + (goal != ord(sign)), row[1:] + 1)
        row = np.minimum.accumulate(np.concatenate([[number], here]) - steps) + steps
    return int(row[-1])
