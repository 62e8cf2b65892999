"""Photographed pages read into text on a thread of their own, one leaflet at a time for each outfit.

Nothing of it is kept until the maker has looked at it; a server that is stopped in between has read for nothing.
"""

from __future__ import annotations

import threading
from collections.abc import Sequence
from dataclasses import dataclass, field

from lastlook import scan
from lastlook.finding import Finding


@dataclass
class Job:
    """Pages that are being read, or have been."""

    name: str
    """What the leaflet is of."""
    titles: tuple[str, ...]
    scanned: scan.Scanned | None = None
    proofs: tuple[Finding, ...] = ()
    """What the counts say of the doubtful figures."""
    broke: bool = False
    """Whether it ended without an answer, which is a mistake of ours."""
    thread: threading.Thread | None = field(default=None, repr=False)

    @property
    def is_going(self) -> bool:
        """Whether the pages are still being read."""
        return self.scanned is None and not self.broke


class Scanning:
    """The leaflets that are being read, one an outfit; the newest takes the place of the one before."""

    def __init__(self) -> None:
        """Begin with nothing to read."""
        self._jobs: dict[int, Job] = {}

    def of(self, number: int) -> Job | None:
        """Return what is being read for an outfit, or was read last."""
        return self._jobs.get(number)

    def start(self, number: int, name: str, pages: Sequence[tuple[str, bytes]]) -> Job:
        """Start to read pages, each with what it is called."""
        job = Job(name, tuple(title for title, _ in pages))
        self._jobs[number] = job
        job.thread = threading.Thread(target=_read, args=(job, [data for _, data in pages]), daemon=True)
        job.thread.start()
        return job

    def put_away(self, number: int) -> None:
        """Forget what was read for an outfit."""
        self._jobs.pop(number, None)


def _read(job: Job, images: Sequence[bytes]) -> None:
    scanned = None
    try:
        scanned = scan.read_pages(images, job.titles)
        job.proofs = scan.settle(scanned)
    finally:
        job.broke = scanned is None
        job.scanned = scanned
