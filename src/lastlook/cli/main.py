"""The command `lastlook`: finds the commands beside it and hands over.

A *command* is a module of this folder with a docstring, `add(parser)` and `run(args) -> int`. The exit
status is 0 for a good answer, 1 where something stands open, 2 where the input can't be read at all.
"""

from __future__ import annotations

import argparse
import importlib
import os
import pkgutil
import re
import sys
from collections.abc import Sequence
from types import ModuleType
from typing import NoReturn

import lastlook
from lastlook import cli

NOT_COMMANDS = frozenset({"leaflets", "main", "told"})
OUR_MISTAKE = (
    "Something in Last Look itself went wrong here; it is our mistake, not yours, and the outfit is as it was. "
    "Setting LASTLOOK_DEBUG=1 shows where."
)


def commands() -> dict[str, str]:
    """Return the name of every command with the module that holds it."""
    found = (module.name for module in pkgutil.iter_modules(cli.__path__))
    return {name.replace("_", "-"): f"lastlook.cli.{name}" for name in sorted(found) if name not in NOT_COMMANDS}


def main(words: Sequence[str] | None = None) -> int:
    """Run one command and return its exit status."""
    words = list(sys.argv[1:] if words is None else words)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    try:
        args = _parser(words).parse_args(words)
        status: int = args.run(args)
        sys.stdout.flush()
        return status
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return 130
    except Exception:
        if os.environ.get("LASTLOOK_DEBUG"):
            raise
        print(OUR_MISTAKE, file=sys.stderr)
        return 2


class _Words(argparse.ArgumentParser):
    """Says in one line what it can't take, without the whole usage before it."""

    def error(self, message: str) -> NoReturn:
        """Say it, name the help, and end with 2."""
        said = re.sub(r"invalid \w+ value:", "this is no number:", message.replace("invalid choice:", "there is no"))
        print(f"{self.prog}: {said}. `{self.prog} --help` shows what it takes.", file=sys.stderr)
        sys.exit(2)


def _parser(words: Sequence[str]) -> argparse.ArgumentParser:
    """Build the parser; only the command that is asked for is imported, unless help is wanted for all."""
    parser = _Words(prog="lastlook", description=(lastlook.__doc__ or "").splitlines()[0])
    parser.add_argument("--version", action="version", version=f"lastlook {lastlook.__version__}")
    places = parser.add_subparsers(metavar="COMMAND", required=True)
    table = commands()
    wanted = [word for word in words if not word.startswith("-")][:1]
    for name in wanted if wanted and wanted[0] in table else table:
        module = importlib.import_module(table[name])
        _add(places, name, module)
    return parser


def _add(places: argparse._SubParsersAction[_Words], name: str, module: ModuleType) -> None:
    caption = (module.__doc__ or "").strip()
    command = places.add_parser(name, help=caption.splitlines()[0], description=caption)
    module.add(command)
    command.set_defaults(run=module.run)
