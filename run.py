"""Set up and run the main job on real input: the demo outfit, or whatever follows.

`python3 run.py` shows the demo outfit; `python3 run.py ARGS...` passes ARGS to `lastlook`;
`python3 run.py bench` measures how fast the main job is on this machine.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))

from tools import ready


def main(words: list[str]) -> int:
    """Run the main job, or say in one sentence what is missing."""
    try:
        python = ready.environment("")
    except ready.NotReady as lack:
        print(lack, file=sys.stderr)
        return 2
    if words[:1] == ["bench"]:
        return subprocess.run([str(python), "-m", "benchmarks", *words[1:]], cwd=ready.ROOT).returncode
    return subprocess.run([str(python), "-m", "lastlook", *(words or ["demo"])]).returncode


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)
