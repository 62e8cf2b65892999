"""Set up and pass everything: format, lint, types, layers and all tests, browser journeys included.

`python3 check.py --accept` rewrites the expected answers in the pages; read that difference like code.
`python3 check.py ARGS...` passes ARGS to the tests, for instance a single file.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from tools import ready

CODE = ["src", "tests", "tools", "benchmarks", "run.py", "check.py"]


def main(words: list[str]) -> int:
    """Run every check in order, the quick ones first; the first that fails ends it."""
    try:
        python = ready.environment("test")
        ready.browser()
    except ready.NotReady as lack:
        print(lack, file=sys.stderr)
        return 2
    if "--accept" in words:
        os.environ["LASTLOOK_ACCEPT"] = "1"
        words = [word for word in words if word != "--accept"]
    code = [place for place in CODE if (ready.ROOT / place).exists()]
    steps = [
        ("format", ["-m", "ruff", "format", "--check", *code]),
        ("lint", ["-m", "ruff", "check", *code]),
        ("types", ["-m", "mypy"]),
        ("layers", ["-c", "from importlinter.cli import lint_imports_command as c; c()"]),
        ("tests", ["-m", "pytest", *words]),
    ]
    for name, command in steps:
        if not _passes(name, [str(python), *command]):
            return 1
    print("Everything passes.")
    return 0


def _passes(name: str, command: list[str]) -> bool:
    start = time.monotonic()
    print(f"== {name}", flush=True)
    done = subprocess.run(command, cwd=ready.ROOT)
    print(f"== {name}: {'passes' if not done.returncode else 'does not pass'}", end=" ")
    print(f"({time.monotonic() - start:.1f} s)", flush=True)
    return not done.returncode


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)
