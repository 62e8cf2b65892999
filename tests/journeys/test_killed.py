"""A program killed in the middle of its writes: what it said was kept is there, and the shelf is sound."""

from __future__ import annotations

import signal
import subprocess
import sys
from pathlib import Path

import pytest

from lastlook import keep
from lastlook.outfit import document

WRITER = """
import sys
from pathlib import Path
from lastlook import keep
from lastlook.outfit import document

shelf = keep.open_shelf(Path(sys.argv[1]))
outfit = shelf.outfits()[0].id
number = 0
while True:
    number += 1
    holding = document({"outfit.toml": b"row %d" % number, "photograph.jpg": bytes([number % 256]) * 200_000})
    revision = shelf.keep(outfit, holding, f"Row {number}.", "now")
    print(revision.id, number, flush=True)
    if number % 3 == 0:
        shelf.undo(outfit, "now")
        shelf.redo(outfit, "now")
"""


@pytest.mark.parametrize("acknowledged", [1, 4, 9, 17])
def test_nothing_that_was_kept_is_lost(tmp_path: Path, acknowledged: int) -> None:
    file = tmp_path / "shelf.sqlite"
    shelf = keep.open_shelf(file)
    assert isinstance(shelf, keep.Shelf)
    outfit = shelf.start("choir", None, document({"outfit.toml": b"row 0"}), "now").id
    shelf.close()
    writer = subprocess.Popen([sys.executable, "-c", WRITER, str(file)], stdout=subprocess.PIPE, text=True)
    assert writer.stdout
    told = [writer.stdout.readline().split() for _ in range(acknowledged)]
    writer.send_signal(signal.SIGKILL)
    told += [line.split() for line in writer.stdout.read().splitlines() if len(line.split()) == 2]
    writer.stdout.close()
    writer.wait()
    again = keep.open_shelf(file)
    assert isinstance(again, keep.Shelf)
    assert again.unsound() == []
    for revision, number in told:
        assert again.document_at(int(revision)).text("outfit.toml") == f"row {number}"
    stands = again.document(outfit).text("outfit.toml")
    assert stands is not None
    last = int(told[-1][1])
    assert stands in {f"row {last - 1}", f"row {last}", f"row {last + 1}"}
    again.close()
