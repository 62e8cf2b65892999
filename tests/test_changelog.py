"""The changelog is made of the small files of `changes/`, the newest version first."""

from __future__ import annotations

from pathlib import Path

from tools.changelog import changelog


def test_small_files_become_one_changelog(tmp_path: Path) -> None:
    (tmp_path / "b.md").write_text("Second\nthing.\n", encoding="utf-8")
    (tmp_path / "a.md").write_text("First thing.\n", encoding="utf-8")
    for version in ("0.9.0", "0.10.0"):
        (tmp_path / version).mkdir()
        (tmp_path / version / "x.md").write_text(f"In {version}.\n", encoding="utf-8")
    assert changelog(tmp_path).splitlines() == [
        *("# Changes", "", "## Not released yet", "", "- First thing.", "- Second thing.", ""),
        *("## 0.10.0", "", "- In 0.10.0.", "", "## 0.9.0", "", "- In 0.9.0."),
    ]
