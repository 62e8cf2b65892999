"""The invariants of ARCHITECTURE.md that a machine can hold: sizes, purity, one room per package, no addresses."""

from __future__ import annotations

import ast
import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
SOURCE = ROOT / "src" / "lastlook"
FILES = sorted(SOURCE.rglob("*.py"))
MOST_LINES = 400
MOST_FILES = 12
PURE = (
    "quantity",
    "finding",
    "geometry",
    "piece",
    "wearer",
    "stock",
    "leaflet",
    "paper",
    "knit",
    "lay",
    "outfit",
    "sheet",
)
OUTSIDE_WORLD = {"sqlite3", "socket", "urllib", "http", "random", "time", "subprocess", "starlette", "uvicorn"}
ROOMS = {
    "shapely": ("geometry",),
    "reportlab": ("sheet",),
    "pypdfium2": ("sheet", "scan"),
    "sqlite3": ("keep",),
    "starlette": ("web",),
    "uvicorn": ("web", "cli"),
    "jinja2": ("web",),
    "svgelements": ("geometry", "paper"),
    "defusedxml": ("geometry", "paper"),
    "ezdxf": ("geometry", "paper"),
    "tomlkit": ("outfit",),
    "rapidocr": ("scan",),
    "onnxruntime": ("scan",),
}
BAD_NAMES = {"utils", "helpers", "common", "base", "managers", "services", "handlers", "models", "consts"}


def _imports(file: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {name.name.split(".")[0] for name in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            found.add(node.module.split(".")[0])
    return found


def _folder(file: Path) -> str:
    parts = file.relative_to(SOURCE).parts
    return parts[0] if len(parts) > 1 else ""


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(SOURCE)))
def test_file_is_small_and_has_a_caption(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= MOST_LINES, f"{file.name} is over {MOST_LINES} lines"
    assert ast.get_docstring(ast.parse(text)), f"{file.name} has no caption"
    assert file.stem not in BAD_NAMES


@pytest.mark.parametrize("folder", sorted({file.parent for file in FILES}), ids=lambda folder: folder.name)
def test_folder_is_small(folder: Path) -> None:
    files = [file for file in folder.glob("*.py") if file.name != "__init__.py"]
    roof = 20 if folder.name == "cli" else MOST_FILES
    assert len(files) <= roof, f"{folder.name} holds {len(files)} files"


@pytest.mark.parametrize("file", [f for f in FILES if _folder(f) in PURE], ids=lambda f: str(f.relative_to(SOURCE)))
def test_core_is_pure(file: Path) -> None:
    allowed = {"random"} if _folder(file) == "lay" else set()
    assert not (_imports(file) & (OUTSIDE_WORLD - allowed)), f"{file.name} reaches outside the core"


@pytest.mark.parametrize("package", sorted(ROOMS))
def test_each_outside_package_has_its_room(package: str) -> None:
    guests = {_folder(file) for file in FILES if package in _imports(file)}
    assert guests <= set(ROOMS[package]), f"{package} is used in {guests - set(ROOMS[package])}"


def test_pins_name_no_address() -> None:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    for name in listed.splitlines():
        if re.search(r"constraints|requirements|\.lock$|lock\.(json|toml)$", name):
            assert "://" not in (ROOT / name).read_text(encoding="utf-8"), f"{name} names an address"


def test_nothing_is_skipped_or_left_to_do() -> None:
    marks = re.compile(r"\b(TODO|FIXME|XXX)\b|pytest\.skip|mark\.skip|xfail\(")
    for file in [*FILES, *(ROOT / "tests").rglob("*.py")]:
        if file.name != "test_rules.py":
            assert not marks.search(file.read_text(encoding="utf-8")), f"{file.name} leaves something out"


def test_every_command_has_a_page() -> None:
    from lastlook.cli.main import commands

    missing = [name for name in commands() if not (ROOT / "docs" / "commands" / f"{name}.md").exists()]
    assert not missing, f"no page for {missing}"


def test_every_kind_of_finding_has_a_page() -> None:
    kinds = set()
    for file in FILES:
        kinds |= set(re.findall(r'Finding\(\s*(?:kind=)?"([a-z0-9-]+)"', file.read_text(encoding="utf-8")))
    missing = sorted(kind for kind in kinds if not (SOURCE / "finding" / "kinds" / f"{kind}.md").exists())
    assert not missing, f"no page for {missing}"
