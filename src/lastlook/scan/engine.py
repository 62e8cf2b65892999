"""The one door to the engine that knows letters: where the strips of print lie, and what stands on each.

A *strip* is a stretch of one printed line, as four corners. The engine's models come inside its package; nothing is
fetched. Its own decoder keeps one answer for each sign; ours keeps the rivals too, since a figure must never be
taken for granted.
"""

from __future__ import annotations

import importlib
import importlib.util
import logging
import math
import os
import unicodedata
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from lastlook.scan.scanned import Sign

Corners = tuple[tuple[float, float], ...]
BRING_IT = "pip install 'lastlook[photo]'"
HIGH = 48
"""The height in picture elements at which the engine's model reads a strip."""
LONGEST_STRIP = 3200
FINDING_SIDE = 2200
"""Strips are looked for in a picture no longer than this; they are read from the whole one."""
LEAST_RIVAL = 0.002
BLANK = 0
PRINTED = frozenset({*map(chr, range(32, 127)), *map(chr, range(0xA1, 0x180)), *"½¼¾⅓⅔⅛⅜⅝⅞—–−’‘“”„•†‡′″…×"})
"""The signs that leaflets in Latin letters are printed with; the engine knows many thousands more."""


def is_at_hand() -> bool:
    """Whether the engine is installed, with all that it needs to start."""
    for name in ("rapidocr", "onnxruntime"):
        if importlib.util.find_spec(name) is None:
            return False
        try:
            importlib.import_module(name)
        except (ImportError, OSError):
            # Its own parts may lack a library of the system.
            return False
    return True


def strips(page: Image.Image) -> list[Corners]:
    """Return where print lies on a page: four corners each, from the top left, clockwise."""
    small = page.copy()
    small.thumbnail((FINDING_SIDE, FINDING_SIDE), Image.Resampling.LANCZOS)
    scale = page.width / small.width
    found = _finder()(np.ascontiguousarray(np.asarray(small)[:, :, ::-1]), use_det=True, use_cls=False, use_rec=False)
    boxes = [] if found.boxes is None else found.boxes
    return [tuple((float(x) * scale, float(y) * scale) for x, y in box) for box in boxes]


def spelled(page: Image.Image, corners: Corners) -> tuple[Sign, ...]:
    """Return the signs on one strip, from left to right."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = corners
    wide = max(math.dist((x0, y0), (x1, y1)), math.dist((x3, y3), (x2, y2)))
    tall = max(math.dist((x0, y0), (x3, y3)), math.dist((x1, y1), (x2, y2)), 1.0)
    width = int(min(LONGEST_STRIP, max(HIGH // 2, round(HIGH * wide / tall))))
    quad = (x0, y0, x3, y3, x2, y2, x1, y1)
    whole = (max(width, round(wide)), max(HIGH, round(tall)))
    strip = page.transform(whole, Image.Transform.QUAD, quad, Image.Resampling.BICUBIC)
    strip = strip.resize((width, HIGH), Image.Resampling.BILINEAR)
    light = np.asarray(strip, dtype=np.float32)[:, :, ::-1].transpose(2, 0, 1)[None] / 127.5 - 1.0
    reader, signs = _reader()
    chances = reader.run(None, {reader.get_inputs()[0].name: np.ascontiguousarray(light)})[0][0]
    return tuple(_decoded(_latin(chances, signs), signs))


def _latin(chances: NDArray[np.float32], signs: list[str]) -> NDArray[np.float32]:
    """Keep the chances of signs that leaflets are printed with; a wide sign counts for its narrow one."""
    keep, narrow = _alphabet(tuple(signs))
    out = np.where(keep, chances, 0.0)
    for wide, to in narrow:
        out[:, to] = np.maximum(out[:, to], chances[:, wide])
    return out.astype(np.float32)


@cache
def _alphabet(signs: tuple[str, ...]) -> tuple[NDArray[np.bool_], list[tuple[int, int]]]:
    keep = np.array([spot == BLANK or sign in PRINTED for spot, sign in enumerate(signs)])
    place = {sign: spot for spot, sign in enumerate(signs) if keep[spot]}
    told = ((spot, unicodedata.normalize("NFKC", sign)) for spot, sign in enumerate(signs) if not keep[spot])
    return keep, [(spot, place[sign]) for spot, sign in told if sign in place]


def _decoded(chances: NDArray[np.float32], signs: list[str]) -> Iterable[Sign]:
    """Take the likeliest sign of every column, runs of one sign as one, and keep its rivals."""
    best = chances.argmax(axis=1)
    columns = len(best)
    spot = 0
    while spot < columns:
        stop = spot
        while stop < columns and best[stop] == best[spot]:
            stop += 1
        if best[spot] != BLANK:
            peak = spot + int(chances[spot:stop, best[spot]].argmax())
            here = chances[spot:stop].max(axis=0)
            order = [int(one) for one in np.argsort(-here)[:8] if one not in (BLANK, best[spot])]
            rivals = tuple((signs[one], float(here[one])) for one in order if here[one] >= LEAST_RIVAL)
            yield Sign(signs[best[spot]], float(chances[peak, best[spot]]), rivals, (peak + 0.5) / columns)
        spot = stop


@cache
def _finder() -> Any:
    from rapidocr import RapidOCR

    logging.getLogger("RapidOCR").setLevel(logging.ERROR)
    return RapidOCR(
        params={
            "Global.log_level": "error",
            "Global.use_cls": False,
            "Global.use_rec": False,
            "Global.max_side_len": FINDING_SIDE + 100,
            "Det.model_path": str(_model("det")),
        }
    )


@cache
def _reader() -> tuple[Any, list[str]]:
    import onnxruntime

    manner = onnxruntime.SessionOptions()
    manner.log_severity_level = 4
    # Strips differ in width: an arena would keep room for the widest of each sort.
    manner.enable_cpu_mem_arena = False
    manner.intra_op_num_threads = min(4, os.cpu_count() or 1)
    session = onnxruntime.InferenceSession(str(_model("rec")), manner, providers=["CPUExecutionProvider"])
    told = session.get_modelmeta().custom_metadata_map["character"].splitlines()
    return session, ["", *told, " "]


def _model(part: str) -> Path:
    """Return the model that the engine's package carries for finding ('det') or reading ('rec')."""
    spec = importlib.util.find_spec("rapidocr")
    assert spec is not None and spec.origin is not None
    return next((Path(spec.origin).parent / "models").glob(f"*_{part}_*.onnx"))
