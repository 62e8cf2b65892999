"""Show the last look before a step that can't be taken back: what is proven, doubtful and unknown."""

from __future__ import annotations

import argparse

from lastlook import outfit
from lastlook.cli import told


def add(parser: argparse.ArgumentParser) -> None:
    """Name what the command takes."""
    parser.add_argument("outfit", metavar="OUTFIT", help="the outfit's folder, or a zip of it")
    steps = [step.value.replace(" ", "-") for step in outfit.Step]
    parser.add_argument("--before", choices=steps, help="only before this step")


def run(args: argparse.Namespace) -> int:
    """Show the looks; 0 where nothing stands open, 1 otherwise, 2 where the outfit can't be read."""
    derived = told.derived_at(args.outfit)
    if derived is None:
        return 2
    derived = told.laid(derived)
    wanted = [
        look
        for look in outfit.verdict(derived).last_looks
        if args.before in (None, look.before.value.replace(" ", "-"))
    ]
    print("\n\n".join(told.look(one, derived) for one in wanted))
    return 1 if any(one.open for one in wanted) else 0
