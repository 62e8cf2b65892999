"""Run a benchmark: `python -m benchmarks NAME WORDS…`; without a name, the quick table.

Each benchmark is a module of this folder with `main(words) -> int`; those without one are parts of others.
"""

from __future__ import annotations

import importlib
import pkgutil
import sys

import benchmarks

QUICK = "quick"


def names() -> list[str]:
    """Return the modules of this folder, by file; which of them are benchmarks is seen when one is asked for."""
    return sorted(one.name for one in pkgutil.iter_modules(benchmarks.__path__) if not one.name.startswith("_"))


def main(words: list[str]) -> int:
    """Run the benchmark that the first word names and return its exit status."""
    name, rest = (words[0], words[1:]) if words else (QUICK, [])
    name = name.replace("-", "_")
    if name not in names():
        print(f"There is no benchmark “{name}”; there are: {', '.join(names())}.", file=sys.stderr)
        return 2
    module = importlib.import_module(f"benchmarks.{name}")
    if not hasattr(module, "main"):
        print(f"“{name}” is a part of other benchmarks and does nothing by itself.", file=sys.stderr)
        return 2
    status: int = module.main(rest)
    return status


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
