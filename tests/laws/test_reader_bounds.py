"""Whatever a text holds, reading it ends soon and in little memory: texts that no printer set, longer than any."""

from __future__ import annotations

import random
import re
import resource
import subprocess
import sys
import time
from pathlib import Path

import pytest

from lastlook import leaflet
from tests import corpus

LENGTH = 60_000
SECONDS = 4.0
"""Of a processor, for a third of the longest text that is taken; a quarter of this is the rule."""
LONGEST = 200_000
MEGABYTES = 500

_TEXT = " ".join(one.text for one in corpus.leaflets())
_WORDS = re.findall(r"[A-Za-z]+|\d+|[.,;:()*\-\[\]]", _TEXT)


def _random_words() -> str:
    chance = random.Random(7)
    return " ".join(chance.choice(_WORDS) for _ in range(LENGTH // 4))


def _without_stops() -> str:
    chance = random.Random(11)
    return " ".join(word for word in (chance.choice(_WORDS) for _ in range(LENGTH // 3)) if word.isalnum())


HOSTILE = {
    "all our leaflets in one": _TEXT,
    "random trade words": _random_words(),
    "no full stop": _without_stops(),
    "brackets": "BACK: Cast on 90 sts.\n" + "(" * (LENGTH // 2) + "k 1" + ")" * (LENGTH // 2),
    "rows without end": "BACK: Cast on 90 sts.\n" + "\n".join(f"Row {number}: K." for number in range(1, 5001)),
    "stars without end": "BACK: Cast on 90 sts.\n" + "* k 1, " * (LENGTH // 7),
    "dashes for sizes": "Sizes 2, 4, 6\nBACK: Cast on 90 sts. " + "— ( — - " * (LENGTH // 8),
    "lengths without end": "BACK: Cast on 90 sts. "
    + "until the work from the lower edge of the side " * (LENGTH // 47),
    "holders without end": "BACK: Cast on 90 sts. "
    + "return to the rem sts left on holder at neck edge for the " * (LENGTH // 58),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_reading_ends_soon(name: str) -> None:
    text = HOSTILE[name][:LENGTH]
    begun = time.process_time()
    read = leaflet.read(text)
    took = time.process_time() - begun
    assert took < SECONDS, f"{took:.1f} s for {len(text)} characters"
    assert all(step.span.end <= len(text) for part in read.parts for step in part.steps)


def test_the_longest_text_ends_within_the_bounds(tmp_path: Path) -> None:
    """Reading, working and proving 200 kB takes no more than 10 s of a processor and 500 MB."""
    page = tmp_path / "long.txt"
    page.write_text((_TEXT * 4)[:LONGEST], encoding="utf-8")

    def bounded() -> None:
        resource.setrlimit(resource.RLIMIT_CPU, (10, 10))
        resource.setrlimit(resource.RLIMIT_DATA, (MEGABYTES * 1_000_000, MEGABYTES * 1_000_000))

    done = subprocess.run(
        [sys.executable, "-m", "lastlook", "read", str(page), "--json"],
        capture_output=True, text=True, preexec_fn=bounded, check=False,
    )  # fmt: skip
    assert done.returncode in (0, 1), done.stderr[-300:]
    assert "Traceback" not in done.stderr
