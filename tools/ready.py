"""Make a working place for the two commands: an environment, the pinned packages, a browser.

Only the standard library is used, because this runs before anything is installed.
A *stamp* is the digest of what was asked for; while it is unchanged nothing is installed again.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PLACE = ROOT / ".venv"
PINS = ROOT / "constraints.txt"
LOWEST = (3, 11)


class NotReady(Exception):
    """Something is missing that only the person at the keyboard can put right."""


def environment(extra: str) -> Path:
    """Return the interpreter of an environment that holds the package and what `extra` names."""
    _refuse_old_python()
    python = PLACE / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    stamp = PLACE / f"ready-{extra or 'run'}"
    if not stamp.exists() or stamp.read_text() != _digest() or not python.exists():
        _make(python)
        _install(python, extra)
        stamp.write_text(_digest())
    return python


def browser() -> None:
    """See that a Chromium is at hand for the browser journeys; on Debian as root, install it."""
    missing = [] if _chromium() else ["chromium"]
    if missing:
        _debian("chromium", "libatomic1")
    if not _chromium():
        raise NotReady(
            "No Chromium was found. Install Chromium or Google Chrome, "
            "or on Debian run: apt-get install chromium libatomic1"
        )


def _chromium() -> str | None:
    names = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
    places = (
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        r"C:\Program Files\Google\Chrome\Application\chrome.exe",
        r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
    )
    found = next((hit for hit in map(shutil.which, names) if hit), None)
    return found or next((place for place in places if Path(place).exists()), None)


def _refuse_old_python() -> None:
    if sys.version_info < LOWEST:
        have = ".".join(map(str, sys.version_info[:2]))
        raise NotReady(f"Python {have} is too old: Last Look wants 3.11 or newer.")


def _digest() -> str:
    parts = [PINS.read_bytes(), (ROOT / "pyproject.toml").read_bytes(), sys.version.encode()]
    return hashlib.sha256(b"\0".join(parts)).hexdigest()


def _make(python: Path) -> None:
    if python.exists():
        return
    print("Making a place for Last Look in .venv (once) ...", flush=True)
    try:
        import ensurepip  # noqa: F401
    except ModuleNotFoundError:
        _debian("python3-venv")
    shutil.rmtree(PLACE, ignore_errors=True)
    # A child makes it, so that a Python package installed a moment ago is seen.
    made = subprocess.run([sys.executable, "-m", "venv", str(PLACE)], check=False)
    if made.returncode:
        raise NotReady("Python could not make a virtual environment. On Debian run: apt-get install python3-venv")


def _install(python: Path, extra: str) -> None:
    print("Installing the pinned packages (once) ...", flush=True)
    wanted = f"{ROOT}[{extra}]" if extra else str(ROOT)
    command = [str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    done = subprocess.run([*command, "--constraint", str(PINS), "--editable", wanted], check=False)
    if done.returncode:
        raise NotReady(
            "The packages could not be installed. Look at the lines above; "
            "with the network back, the same command goes on where it stopped."
        )


def _debian(*packages: str) -> None:
    """On Debian as root, install packages; elsewhere say which one command does."""
    line = "apt-get install " + " ".join(packages)
    if not shutil.which("apt-get"):
        return
    if not hasattr(os, "geteuid") or os.geteuid() != 0:
        raise NotReady(f"This machine lacks {packages[0]}. One command brings it: sudo {line}")
    print(f"Installing {', '.join(packages)} ...", flush=True)
    quiet = {"stdout": subprocess.DEVNULL, "env": {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}}
    subprocess.run(["apt-get", "update"], check=False, **quiet)  # type: ignore[call-overload]
    subprocess.run(  # type: ignore[call-overload]
        ["apt-get", "install", "--yes", "--no-install-recommends", *packages], check=False, **quiet
    )


__all__ = ["ROOT", "NotReady", "browser", "environment"]
