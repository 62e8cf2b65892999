"""Made leaflets with figures of every sort, and an oracle that says by arithmetic which changes contradict them.

Each leaflet is a page with named places; a *figure* fills one place in one size. What must hold between the figures
of a page is written down here as sums (a count is the cast-on and what was increased; rows that shape fit into their
length; edges that are sewn together are as long): no row is worked, and nothing of the reader is used. A change is
*provable* where a sum no longer holds, *harmless* where all hold, and left out where a sum holds only by easing.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

ROWS_PER_INCH = 8
EASED_ROWS = 2
"""Seams of knitted pieces may differ by so many rows (common practice, no source)."""
FRACTIONS = {0.0: "", 0.5: "½"}
Figures = dict[str, list[float]]


@dataclass(frozen=True)
class Sum:
    """One thing that must hold; `between` where it holds between two pieces."""

    holds: Callable[[dict[str, float]], bool | None]
    """None where it holds only nearly: by easing, or within the rounding of a length to rows."""
    between: bool = False


@dataclass(frozen=True)
class Made:
    """A page, its figures by size, and the sums between them."""

    name: str
    page: str
    figures: Figures
    sorts: dict[str, str]
    """What sort each figure is of."""
    sums: tuple[Sum, ...]

    def text(self, figures: Figures) -> str:
        """Return the page with its figures."""
        return self.page.format(**{name: _listed(values) for name, values in figures.items()})

    def judge(self, figures: Figures) -> tuple[bool | None, bool]:
        """Say whether the figures agree in every size, None where it can't be told, and whether pieces alone differ."""
        worst: list[tuple[bool | None, bool]] = []
        for size in range(max(len(values) for values in figures.values())):
            one = {name: values[size if len(values) > 1 else 0] for name, values in figures.items()}
            worst += [(each.holds(one), each.between) for each in self.sums]
        broken = [between for holds, between in worst if holds is False]
        if broken:
            return False, all(broken)
        return (None if any(holds is None for holds, _ in worst) else True), False


def _listed(values: list[float]) -> str:
    told = [f"{int(value)}{FRACTIONS[value % 1]}" for value in values]
    return told[0] if len(told) == 1 else f"{told[0]} ({'-'.join(told[1:])})"


def _fits(needs: float, inches: float) -> bool | None:
    """Whether rows fit into a length: within two rows, or the fiftieth part, it can't be told."""
    room = inches * ROWS_PER_INCH
    slack = max(2.0, 0.02 * room) + 1
    return True if needs <= room - 2 else False if needs > room + slack else None


def _as_many(a: float, b: float, eased: float = 0.0) -> bool | None:
    return True if a == b else None if abs(a - b) <= eased else False


RAGLAN = """RAGLAN PULLOVER
SIZES: 32 (34-36)
GAUGE: 6 sts = 1 inch; 8 rows = 1 inch in stockinette st.

BACK
Cast on {co_b} sts. Work in k 1, p 1 ribbing for {rib} inches, inc {inc} sts evenly spaced across last row --
{n_b} sts. Work in stockinette st until piece measures {len_b} inches from beginning, ending with a p row.
SHAPE RAGLAN: Bind off {u_b} sts at beg of next 2 rows -- {on_b} sts.
Row 1: K 2, sl 1, k 1, psso, k to last 4 sts, k 2 tog, k 2.
Row 2: Purl.
Repeat last 2 rows {t_b} times more -- {r_b} sts. Bind off.

SLEEVES (make 2)
Cast on {co_s} sts. Work in k 1, p 1 ribbing for 2 inches. Change to stockinette st and inc 1 st each end
every {e}th row {t} times -- {n_s} sts. Work even until piece measures {len_s} inches from beginning, ending
with a p row.
SHAPE RAGLAN: Bind off {u_s} sts at beg of next 2 rows.
Row 1: K 2, sl 1, k 1, psso, k to last 4 sts, k 2 tog, k 2.
Row 2: Purl.
Repeat last 2 rows until {r_s} sts remain. Bind off.
"""


def raglan(dice: random.Random) -> Made:
    """Back and sleeves of a raglan pullover in three sizes."""
    under, times = dice.choice([3, 4, 5]), dice.randint(18, 24)
    f: Figures = {"rib": [dice.choice([2.0, 2.5, 3.0])], "inc": [dice.choice([6, 8, 10])], "e": [dice.choice([6, 8])]}
    steps = [0, 1, 2]
    f["t_b"] = [times + one for one in steps]
    f["r_b"] = [26 + 2 * one for one in steps]
    f["u_b"] = f["u_s"] = [under] * 3
    f["on_b"] = [r + 2 * (t + 1) for r, t in zip(f["r_b"], f["t_b"], strict=True)]
    f["n_b"] = [on + 2 * under for on in f["on_b"]]
    f["co_b"] = [n - f["inc"][0] for n in f["n_b"]]
    f["len_b"] = [dice.choice([12.0, 12.5, 13.0])] * 3
    f["r_s"] = [8.0] * 3
    f["n_s"] = [8 + 2 * (t + 1) + 2 * under for t in f["t_b"]]
    often = dice.randint(8, 11)
    f["t"] = [often + one for one in steps]
    f["co_s"] = [n - 2 * t for n, t in zip(f["n_s"], f["t"], strict=True)]
    f["len_s"] = [float(2 + round(f["e"][0] * t / 8) + 1.5) for t in f["t"]]
    for name in ("u_b", "u_s", "len_b", "r_s"):
        f[name] = f[name][:1]
    sorts = dict.fromkeys(f, "counts") | {"t_b": "repeats", "t": "repeats", "e": "cadences", "rib": "lengths",
                                          "len_b": "lengths", "len_s": "lengths"}  # fmt: skip
    sums = (
        Sum(lambda v: v["n_b"] == v["co_b"] + v["inc"]),
        Sum(lambda v: v["on_b"] == v["n_b"] - 2 * v["u_b"]),
        Sum(lambda v: v["r_b"] == v["on_b"] - 2 * (v["t_b"] + 1)),
        Sum(lambda v: _fits(v["rib"] * ROWS_PER_INCH, v["len_b"])),
        Sum(lambda v: v["n_s"] == v["co_s"] + 2 * v["t"]),
        Sum(lambda v: (v["n_s"] - 2 * v["u_s"] - v["r_s"]) % 2 == 0 and v["n_s"] - 2 * v["u_s"] - v["r_s"] >= 2),
        Sum(lambda v: _fits(2 * ROWS_PER_INCH + v["e"] * (v["t"] - 1) + 1, v["len_s"])
            if _fits(2 * ROWS_PER_INCH + v["e"] * v["t"], v["len_s"]) is not True else True),
        Sum(lambda v: v["u_b"] == v["u_s"], between=True),
        Sum(lambda v: _as_many(v["on_b"] - v["r_b"], v["n_s"] - 2 * v["u_s"] - v["r_s"], EASED_ROWS), between=True),
    )  # fmt: skip
    return Made("raglan", RAGLAN, f, sorts, sums)


CAP = """CAP
GAUGE: 6 sts = 1 inch; 8 rnds = 1 inch in stockinette st.

CAP
Cast on {co} sts. Join in a round. Work in k 2, p 2 ribbing for {rib} inches. Work in stockinette st for
{deep} inches.
Rnd 1: * K {k1}, k 2 tog; repeat from * to end of rnd -- {n1} sts.
Rnd 2: Knit.
Rnd 3: * K {k2}, k 2 tog; repeat from * to end of rnd -- {n2} sts.
Rnd 4: Knit.
Rnd 5: * K {k3}, k 2 tog; repeat from * to end of rnd -- {n3} sts.
Next rnd: * K 2 tog; repeat from * to end of rnd -- {n4} sts. Break yarn, draw through remaining {n4b} sts and
fasten off.
"""


def cap(dice: random.Random) -> Made:
    """A cap in rounds, one size."""
    wedges, first = dice.choice([8, 10, 12]), dice.choice([6, 8, 10])
    counts = [wedges * (first + 2 - one) for one in range(4)]
    f: Figures = {"co": [counts[0]], "rib": [2.0], "deep": [4.5], "k1": [first], "k2": [first - 1], "k3": [first - 2],
                  "n1": [counts[1]], "n2": [counts[2]], "n3": [counts[3]], "n4": [counts[3] / 2],
                  "n4b": [counts[3] / 2]}  # fmt: skip
    if counts[3] % 2 or counts[0] % 4:
        return cap(dice)
    sorts = dict.fromkeys(f, "counts") | {"rib": "lengths", "deep": "lengths"}
    sorts |= {"k1": "repeats", "k2": "repeats", "k3": "repeats"}

    def wedge(before: str, knit: str, after: str) -> Sum:
        return Sum(lambda v: v[before] % (v[knit] + 2) == 0 and v[after] == v[before] // (v[knit] + 2) * (v[knit] + 1))

    sums = (wedge("co", "k1", "n1"), wedge("n1", "k2", "n2"), wedge("n2", "k3", "n3"),
            Sum(lambda v: v["n4"] * 2 == v["n3"]), Sum(lambda v: v["n4b"] == v["n4"]))  # fmt: skip
    return Made("cap", CAP, f, sorts, sums)


SCARF = """LACE SCARF
GAUGE: 6 sts = 1 inch; 8 rows = 1 inch.

SCARF
Cast on {co} sts. Knit 4 rows.
Row 1: K {a}, * yo, k 1, sl 1, k 2 tog, psso, k 1, yo, k 1; repeat from * to last {c} sts, k {d}.
Row 2: Purl.
Row 3: K {b}, * k 1, yo, sl 1, k 2 tog, psso, yo, k 2; repeat from * to last {g} sts, k {h}.
Row 4: Purl.
Repeat rows 1 to 4 {t} times more. Knit 4 rows. Bind off {off} sts.
"""


def scarf(dice: random.Random) -> Made:
    """A scarf in lace, one size."""
    edge, many = dice.choice([2, 3, 4]), dice.randint(6, 11)
    total = 6 * many + 2 * edge
    f: Figures = {"co": [total], "a": [edge], "c": [edge], "d": [edge], "b": [edge], "g": [edge], "h": [edge],
                  "t": [dice.randint(40, 60)], "off": [total]}  # fmt: skip
    sorts = dict.fromkeys(f, "counts") | {"t": "repeats", "c": "repeats", "g": "repeats"}
    sums = (
        Sum(lambda v: v["c"] == v["d"] and (v["co"] - v["a"] - v["c"]) % 6 == 0),
        Sum(lambda v: v["g"] == v["h"] and (v["co"] - v["b"] - v["g"]) % 6 == 0),
        Sum(lambda v: v["off"] == v["co"]),
    )
    return Made("scarf", SCARF, f, sorts, sums)


VEST = """KNITTED VEST
SIZES: 34 (36-38)
GAUGE: 6 sts = 1 inch; 8 rows = 1 inch in stockinette st.

BACK
Cast on {n} sts. Work in k 1, p 1 ribbing for 3 inches. Work in stockinette st until piece measures {len}
inches from beginning, ending with a p row.
SHAPE ARMHOLES: Bind off {u} sts at beg of next 2 rows. Dec 1 st each end every k row {d} times -- {m} sts.
Work even until armhole measures {ah} inches, ending with a p row.
SHAPE SHOULDERS: Bind off {s} sts at beg of next {w} rows -- {neck} sts. Bind off.

FRONT
Cast on {n_f} sts. Work in k 1, p 1 ribbing for 3 inches. Work in stockinette st until piece measures {len_f}
inches from beginning, ending with a p row.
SHAPE ARMHOLES: Bind off {u_f} sts at beg of next 2 rows. Dec 1 st each end every k row {d_f} times -- {m_f}
sts. Work even until armhole measures {ah_f} inches, ending with a p row.
SHAPE NECK: Next row: K {a} sts, join a second ball of yarn and bind off center {b} sts, k to end of row.
Working on both sides at once, dec 1 st at each neck edge every {e}th row {dn} times -- {sh} sts on each side.
Work even until armhole measures same as back, ending with a p row.
SHAPE SHOULDERS: At each arm edge bind off {s_f} sts {w_f} times.
"""


def vest(dice: random.Random) -> Made:
    """Back and front of a vest in three sizes."""
    steps = [0, 1, 2]
    under, d, s, dn, e = dice.choice([5, 6]), dice.randint(5, 8), dice.choice([5, 6, 7]), dice.randint(3, 5), 4
    f: Figures = {"s": [s + one for one in steps], "w": [6], "neck": [30 + 2 * one for one in steps]}
    f["m"] = [neck + 6 * each for neck, each in zip(f["neck"], f["s"], strict=True)]
    f |= {"u": [under], "d": [d], "n": [m + 2 * under + 2 * d for m in f["m"]]}
    f |= {"len": [13.0], "ah": [7.5], "n_f": f["n"], "len_f": [13.0], "u_f": [under], "d_f": [d], "m_f": f["m"]}
    f |= {"ah_f": [5.0], "e": [e], "dn": [dn], "sh": [3 * each for each in f["s"]], "s_f": f["s"], "w_f": [3]}
    f["a"] = [each + dn for each in f["sh"]]
    f["b"] = [m - 2 * a for m, a in zip(f["m"], f["a"], strict=True)]
    sorts = dict.fromkeys(f, "counts") | {"w": "repeats", "w_f": "repeats", "d": "repeats", "d_f": "repeats",
             "dn": "repeats", "e": "cadences", "len": "lengths", "len_f": "lengths", "ah": "lengths",
             "ah_f": "lengths"}  # fmt: skip
    sums = (
        Sum(lambda v: v["m"] == v["n"] - 2 * v["u"] - 2 * v["d"]),
        Sum(lambda v: v["neck"] == v["m"] - v["s"] * v["w"]),
        Sum(lambda v: v["m_f"] == v["n_f"] - 2 * v["u_f"] - 2 * v["d_f"]),
        Sum(lambda v: v["m_f"] == 2 * v["a"] + v["b"]),
        Sum(lambda v: v["sh"] == v["a"] - v["dn"]),
        Sum(lambda v: v["sh"] == v["s_f"] * v["w_f"]),
        Sum(lambda v: _fits(3 * ROWS_PER_INCH, v["len"])),
        Sum(lambda v: _fits(2 + 2 * v["d"], v["ah"])),
        Sum(lambda v: _fits(2 + 2 * v["d_f"], v["ah_f"])),
        Sum(lambda v: _fits(v["e"] * (v["dn"] - 1) + 1, v["ah"] - v["ah_f"])
            if _fits(v["e"] * v["dn"], v["ah"] - v["ah_f"]) is not True else True),
        Sum(lambda v: v["s"] * v["w"] == 2 * v["s_f"] * v["w_f"], between=True),
        Sum(lambda v: _as_many(v["len"] * ROWS_PER_INCH, v["len_f"] * ROWS_PER_INCH, 3), between=True),
    )  # fmt: skip
    return Made("vest", VEST, f, sorts, sums)


@dataclass(frozen=True)
class Changed:
    """A made leaflet with one figure changed."""

    leaflet: str
    sort: str
    bound: bool
    what: str
    text: str


def leaflets(seeds: int = 4, more: int = 0) -> list[Made]:
    """Return the made leaflets; the same ones every time. Of `more` only cadences and lengths are changed."""
    makers = (raglan, cap, scarf, vest)
    out = [make(random.Random(seed)) for seed in range(seeds) for make in makers]
    for seed in range(seeds, seeds + more):
        for make in (raglan, vest):
            one = make(random.Random(seed))
            few = {name: sort for name, sort in one.sorts.items() if sort in ("cadences", "lengths")}
            out.append(replace(one, sorts=few))
    return out


def changes(made: list[Made]) -> Iterator[Changed]:
    """Yield every change that the oracle can judge."""
    for number, one in enumerate(made):
        for name, values in one.figures.items():
            if name not in one.sorts:
                continue
            for size, value in enumerate(values):
                for new in _others(value, one.sorts[name]):
                    fresh = one.figures | {name: [new if n == size else each for n, each in enumerate(values)]}
                    agrees, between = one.judge(fresh)
                    if agrees is None:
                        continue
                    several = len(values) > 1 and one.sorts[name] == "counts"
                    sort = "neighbours" if between else "sizes" if several else one.sorts[name]
                    what = f"{name}, size {size + 1}: {value:g} -> {new:g}"
                    yield Changed(f"{one.name} {number}", sort, not agrees, what, one.text(fresh))


def _others(value: float, sort: str) -> list[float]:
    """Return the values that a slip of print leaves: near ones, two digits exchanged; halves and wholes of a length."""
    if sort == "lengths":
        return [new for new in (value - 2, value - 1, value - 0.5, value + 0.5, value + 1, value + 2) if new > 0]
    if sort == "cadences":
        return [new for new in (value - 4, value - 2, value + 2, value + 4) if new > 1]
    turned = float(str(int(value))[::-1]) if 10 <= value <= 99 else value
    return sorted({new for new in (value - 1, value + 1, value + 2, turned) if new > 0 and new != value})
