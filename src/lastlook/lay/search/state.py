"""An arrangement being tried: for each job its variant and its place on the lattice.

*Scanning* a job adds up, for every place it may take, how deep it would overlap the others, each by its weight.
"""

from __future__ import annotations

import random
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from lastlook.lay.clash import Board
from lastlook.lay.clash.board import BLOCKED

Floats = NDArray[np.float64]
Place = tuple[int, int]


@dataclass(frozen=True)
class Best:
    """The cheapest place that a scan found."""

    cost: float
    variant: int
    place: Place


class State:
    """Where every job lies on the board, up to which length, at which phase of the repeat."""

    def __init__(self, board: Board, length_mm: float, chance: random.Random) -> None:
        self.board = board
        self.length_mm = length_mm
        self.chance = chance
        many = len(board.jobs)
        self.variant = [-1] * many
        self.place: list[Place] = [(0, 0)] * many
        self.weights = np.ones((many, many), np.float32)
        self.overlap = np.zeros((many, many), np.float32)
        self.phase: dict[str, Place] = {}
        self.low = np.zeros((many, 2))
        self.high = np.zeros((many, 2))

    def columns(self, number: int) -> int:
        """Return how many columns of a variant's ground lie within the length."""
        ground, variant = self.board.ground(number), self.board.variants[number]
        room = self.length_mm - variant.shape.high[0] - ground.origin[0]
        over = 0.5 if self.board.slack_mm else 1e-9
        wide = int(np.floor(room / self.board.step[0] + over)) + 1
        return max(0, min(int(ground.free.shape[0]), wide))

    def scan(self, job: int, corner: int) -> Best | None:
        """Return the cheapest place for a job among all its variants, ties towards one of eight corners."""
        best: Best | None = None
        for number in self.board.of_job[job]:
            found = self._scan_variant(job, number, corner)
            if found is not None and (best is None or found.cost < best.cost - 1e-6):
                best = found
        return best

    def _scan_variant(self, job: int, number: int, corner: int) -> Best | None:
        wide = self.columns(number)
        ground = self.board.ground(number)
        if not wide or not ground.free.shape[1]:
            return None
        costs = ground.free[:wide].copy()
        high = costs.shape[1]
        weights, places, tables = self.weights[job].tolist(), self.place, self.board.tables_to(number)
        for other, lying in enumerate(self.variant):
            if other == job or lying < 0:
                continue
            table = tables.get(lying) or self.board.table(lying, number)
            x, y = places[other][0] + table.first[0], places[other][1] + table.first[1]
            nx, ny = table.depths.shape
            x0, y0 = (x if x > 0 else 0), (y if y > 0 else 0)
            x1, y1 = (x + nx if x + nx < wide else wide), (y + ny if y + ny < high else high)
            if x0 < x1 and y0 < y1:
                deep, weight = table.depths[x0 - x : x1 - x, y0 - y : y1 - y], weights[other]
                part = costs[x0:x1, y0:y1]
                np.add(part, deep if weight == 1.0 else deep * np.float32(weight), out=part)
        return self._cheapest(job, number, costs, corner)

    def _cheapest(self, job: int, number: int, costs: NDArray[np.float32], corner: int) -> Best | None:
        group = self.board.jobs[job].group
        px, py = self.phase.get(group, (0, 0)) if group else (0, 0)
        mx, my = self.board.phases if group else (1, 1)
        if group:
            shift = self.board.shift(number)
            px, py = (px - shift[0]) % mx, (py - shift[1]) % my
            costs = costs[px::mx, py::my]
        if not costs.size:
            return None
        view = costs[:: -1 if corner & 1 else 1, :: -1 if corner & 2 else 1]
        view = view.T if corner & 4 else view
        flat = int(np.argmin(view))
        spot = list(divmod(flat, view.shape[1]))
        cost = float(view[spot[0], spot[1]])
        if cost >= BLOCKED:
            return None
        if corner & 4:
            spot.reverse()
        x = costs.shape[0] - 1 - spot[0] if corner & 1 else spot[0]
        y = costs.shape[1] - 1 - spot[1] if corner & 2 else spot[1]
        return Best(cost, number, (px + x * mx, py + y * my))

    def put(self, job: int, variant: int, place: Place) -> None:
        """Lay a job there and note whom it overlaps."""
        self.variant[job], self.place[job] = variant, place
        self.note(job)

    def note(self, job: int) -> None:
        """Work out again how deep a job overlaps every other; only those whose boxes meet are looked at."""
        self._locate(job)
        self._note(job)

    def _locate(self, job: int) -> None:
        variant = self.board.variants[self.variant[job]]
        gap = self.board.cloth.gap_mm
        spot = self.board.ground(self.variant[job]).origin + np.array(self.place[job]) * self.board.step
        self.low[job], self.high[job] = spot + variant.shape.low, spot + variant.shape.high + gap

    def _note(self, job: int) -> None:
        lying, (x, y) = self.variant[job], self.place[job]
        self.overlap[job, :] = self.overlap[:, job] = 0.0
        near = np.all((self.low <= self.high[job]) & (self.high >= self.low[job]), 1)
        for other in np.flatnonzero(near).tolist():
            number = self.variant[other]
            if other == job or number < 0:
                continue
            table = self.board.table(number, lying)
            i = x - self.place[other][0] - table.first[0]
            j = y - self.place[other][1] - table.first[1]
            nx, ny = table.depths.shape
            if 0 <= i < nx and 0 <= j < ny:
                self.overlap[job, other] = self.overlap[other, job] = table.depths[i, j]

    def note_all(self) -> None:
        """Work out all overlaps again."""
        laid = [job for job, number in enumerate(self.variant) if number >= 0]
        for job in laid:
            self._locate(job)
        for job in laid:
            self._note(job)

    def spots(self) -> Floats:
        """Return where the origins of all jobs lie, in mm."""
        out = np.zeros((len(self.variant), 2))
        for job, number in enumerate(self.variant):
            out[job] = self.board.ground(number).origin + np.array(self.place[job]) * self.board.step
        return out

    def nearest(self, job: int, number: int, spot: Floats) -> Place | None:
        """Return the free place of a variant that is nearest to a spot in mm, None if it has none."""
        ground, wide = self.board.ground(number), self.columns(number)
        free = ground.free[:wide]
        if not free.size:
            return None
        group = self.board.jobs[job].group
        at = (spot - ground.origin) / self.board.step
        x, y = (int(v) for v in np.clip(np.rint(at), 0, np.array(free.shape) - 1))
        if not group and free[x, y] < BLOCKED:
            return x, y
        good = np.argwhere(free < BLOCKED)
        if group:
            px, py = self.phase.get(group, (0, 0))
            shift = self.board.shift(number)
            mx, my = self.board.phases
            good = good[((good[:, 0] + shift[0]) % mx == px % mx) & ((good[:, 1] + shift[1]) % my == py % my)]
        if not len(good):
            return None
        spot_index = int(np.argmin(np.sum((good - at) ** 2, 1)))
        return int(good[spot_index][0]), int(good[spot_index][1])

    def kept(self) -> tuple[list[int], list[Place]]:
        """Return a copy of where everything lies."""
        return list(self.variant), list(self.place)

    def restore(self, kept: tuple[list[int], list[Place]]) -> None:
        """Lay everything as it was kept."""
        self.variant, self.place = list(kept[0]), list(kept[1])
        self.note_all()
