"""Lay paper pieces on a cloth, prove the lay, and say what is left over.

PROBLEM.json holds the cloth and the pieces; docs/lay.md says how. Exit status 0: everything fits and is proven,
1: it does not fit in the time given, 2: the problem can't be read.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from lastlook import cores, finding, lay

LARGEST_BYTES = 20_000_000
SEARCHED, SHARED = 0.9, 0.7
"""The share of the time that goes into the search; the rest is for what would make it fit, more where it was asked."""
PASSES = 500
Choices = tuple[lay.Choice, ...]
Longer = lay.Fitted | None


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
    value = _value(args.problem)
    problem = (value,) if isinstance(value, finding.Finding) else lay.read_problem(value)
    if not isinstance(problem, lay.Problem):
        return _unread(problem, args)
    accepted = lay.read_accepted(value, problem)
    if not isinstance(accepted, lay.Accepted):
        return _unread(accepted, args)
    start = time.monotonic()
    until = start + max(args.seconds, 0.0)
    more = accepted.concessions or accepted.shorter or accepted.longer
    found = _search(problem, args, SHARED if more else SEARCHED)
    offered = () if found.fits else _choices(problem, accepted, args, until)
    longer = _longer(problem, accepted, args, until) if found.fits else None
    seconds = round(time.monotonic() - start, 3)
    if args.svg:
        try:
            args.svg.write_text(lay.as_svg(problem, found.placements), encoding="utf-8")
        except OSError as trouble:
            print(f"The drawing can't be written to {args.svg}: {trouble.strerror}.", file=sys.stderr)
            return 2
    if args.json:
        print(json.dumps(lay.as_json(found, seconds=seconds, choices=offered, longer=longer), ensure_ascii=False))
    else:
        told = [lay.in_words(problem, found), *lay.choices_in_words(offered), *lay.longer_in_words(longer)]
        print("\n".join(told))
    return 0 if found.fits else 1


def _value(name: str) -> Any:
    """Return what the file holds, or the finding that says why that can't be told."""
    try:
        text = sys.stdin.read(LARGEST_BYTES + 1) if name == "-" else _read(Path(name))
        if len(text) > LARGEST_BYTES:
            return _cannot(f"{name} is longer than {LARGEST_BYTES // 1_000_000} MB.")
        return json.loads(text)
    except OSError as trouble:
        return _cannot(f"{name} can't be opened: {trouble.strerror}.")
    except UnicodeDecodeError:
        return _cannot(f"{name} is no text.")
    except RecursionError:
        return _cannot(f"{name} nests brackets too deep.")
    except ValueError as trouble:
        return _cannot(f"{name} is no JSON: {trouble}.")


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


def _search(problem: lay.Problem, args: argparse.Namespace, share: float) -> lay.Lay:
    """Search on every core for a share of the time; with --passes the answer is the same each time."""
    if args.passes is not None:
        return lay.search(problem, seed=args.seed, passes=max(args.passes, 1))
    return cores.search(cores.Asked(problem, args.seconds * share, args.seed))


def _choices(problem: lay.Problem, accepted: lay.Accepted, args: argparse.Namespace, until: float) -> Choices:
    """Return what would make it fit, in what is left of the time; with --passes, in so many passes each."""
    passes, go = (PASSES, _clock(until)) if args.passes is None else (max(args.passes, 1), None)
    return lay.would_fit(problem, accepted, seed=args.seed, passes=passes, may_go_on=go)


def _longer(problem: lay.Problem, accepted: lay.Accepted, args: argparse.Namespace, until: float) -> Longer:
    """Return by how much the pieces could be longer, where that was asked."""
    if accepted.longer is None:
        return None
    passes, go = (PASSES, _clock(until)) if args.passes is None else (max(args.passes, 1), None)
    return lay.could_be_longer(problem, accepted.longer, seed=args.seed, passes=passes, may_go_on=go)


def _clock(until: float) -> Callable[[lay.Progress], bool]:
    return lambda progress: time.monotonic() < until
