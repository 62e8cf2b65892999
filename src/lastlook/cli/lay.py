"""Lay paper pieces on a cloth, prove the lay, and say what is left over.

PROBLEM.json holds the cloth and the pieces; docs/lay.md says how. Exit status 0: everything fits and is proven,
1: it does not fit in the time given, 2: the problem can't be read.
"""

from __future__ import annotations

import argparse
import json
import multiprocessing
import os
import sys
import time
from collections.abc import Callable
from multiprocessing.pool import AsyncResult
from pathlib import Path
from typing import Any

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # each core has a search of its own; set before numpy starts

from lastlook import finding, lay

LARGEST_BYTES = 20_000_000
CORES = 2
SEARCHED = 0.9
"""The share of the time that goes into the search; the rest is for what would make it fit."""
SEEDS_APART = 1000
"""The second core searches with this much added to the seed."""
_ended: Any = None


def add(parser: argparse.ArgumentParser) -> None:
    """Add the command's words."""
    parser.add_argument("problem", metavar="PROBLEM.json", help="the cloth and the pieces; - reads them from input")
    parser.add_argument("--seconds", type=float, default=30.0, help="how long to search at most (30)")
    parser.add_argument("--seed", type=int, default=1, help="where chance begins (1)")
    parser.add_argument("--passes", type=int, help="search so many passes instead, the same each time")
    parser.add_argument("--json", action="store_true", help="answer as JSON")
    parser.add_argument("--svg", metavar="OUT.svg", type=Path, help="draw the lay into this file")


def run(args: argparse.Namespace) -> int:
    """Search, print, and return 0 for a proven lay, 1 for none, 2 for a problem that can't be read."""
    problem = _problem(args.problem)
    if not isinstance(problem, lay.Problem):
        return _unread(problem, args)
    start = time.monotonic()
    found = _search(problem, args, start)
    offered = () if found.fits else _choices(problem, args, start)
    seconds = round(time.monotonic() - start, 3)
    if args.svg:
        try:
            args.svg.write_text(lay.as_svg(problem, found.placements), encoding="utf-8")
        except OSError as trouble:
            print(f"The drawing can't be written to {args.svg}: {trouble.strerror}.", file=sys.stderr)
            return 2
    if args.json:
        print(json.dumps(lay.as_json(found, seconds=seconds, choices=offered), ensure_ascii=False))
    else:
        print("\n".join([lay.in_words(problem, found), *lay.choices_in_words(offered)]))
    return 0 if found.fits else 1


def _problem(name: str) -> lay.Problem | tuple[finding.Finding, ...]:
    try:
        text = sys.stdin.read(LARGEST_BYTES + 1) if name == "-" else _read(Path(name))
        if len(text) > LARGEST_BYTES:
            return (_cannot(f"{name} is longer than {LARGEST_BYTES // 1_000_000} MB."),)
        value = json.loads(text)
    except OSError as trouble:
        return (_cannot(f"{name} can't be opened: {trouble.strerror}."),)
    except UnicodeDecodeError:
        return (_cannot(f"{name} is no text."),)
    except RecursionError:
        return (_cannot(f"{name} nests brackets too deep."),)
    except ValueError as trouble:
        return (_cannot(f"{name} is no JSON: {trouble}."),)
    return lay.read_problem(value)


def _read(path: Path) -> str:
    if path.stat().st_size > LARGEST_BYTES:
        return " " * (LARGEST_BYTES + 1)
    return path.read_text(encoding="utf-8")


def _cannot(say: str) -> finding.Finding:
    why = "The problem is a JSON file with a cloth and its pieces."
    return finding.Finding(
        "lay-unreadable", finding.Certainty.PROVEN, say, why, "See docs/lay.md for how it is written."
    )


def _unread(found: tuple[finding.Finding, ...], args: argparse.Namespace) -> int:
    if args.json:
        empty = lay.as_json(lay.Lay(False, False, findings=found, seed=args.seed), seconds=0.0)
        print(json.dumps(empty, ensure_ascii=False))
    else:
        print("\n\n".join(finding.say(one) for one in found), file=sys.stderr)
    return 2


def _search(problem: lay.Problem, args: argparse.Namespace, start: float) -> lay.Lay:
    """Search on as many cores as there are, at most two; with --passes the answer is the same each time."""
    seeds = [args.seed + spot * SEEDS_APART for spot in range(min(CORES, os.cpu_count() or 1))]
    until = start + max(args.seconds, 0.0) * SEARCHED
    if args.passes is not None:
        return lay.search(problem, seed=args.seed, passes=max(args.passes, 1))
    if len(seeds) == 1:
        return lay.search(problem, seed=args.seed, may_go_on=_clock(until))
    context = multiprocessing.get_context()
    ended = context.Event()
    with context.Pool(len(seeds), _share, (ended,)) as pool:
        pending = [pool.apply_async(_one, (problem, seed, until)) for seed in seeds]
        return lay.best_of(_gather(pending, ended))


def _choices(problem: lay.Problem, args: argparse.Namespace, start: float) -> tuple[lay.Choice, ...]:
    """Return what would make it fit, in what is left of the time; with --passes, in so many passes each."""
    if args.passes is not None:
        return lay.choices(lay.usual(problem), seed=args.seed, passes=args.passes)
    until = start + max(args.seconds, 0.0)
    return lay.choices(lay.usual(problem), seed=args.seed, may_go_on=_clock(until))


def _gather(pending: list[AsyncResult[lay.Lay]], ended: Any) -> list[lay.Lay]:
    """Return all answers; once one search ends with a lay, the others are asked to end too."""
    while not all(one.ready() for one in pending):
        if any(one.ready() and one.get().fits for one in pending):
            ended.set()
        time.sleep(0.005)
    return [one.get() for one in pending]


def _share(ended: Any) -> None:
    global _ended
    _ended = ended


def _one(problem: lay.Problem, seed: int, until: float) -> lay.Lay:
    return lay.search(problem, seed=seed, may_go_on=_clock(until))


def _clock(until: float) -> Callable[[lay.Progress], bool]:
    def may_go_on(progress: lay.Progress) -> bool:
        return time.monotonic() < until and not (_ended is not None and _ended.is_set())

    return may_go_on
