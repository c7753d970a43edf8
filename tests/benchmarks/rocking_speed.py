"""How long the exact period and ten seconds of rocking take, beside an ODE solver that is as exact.

`python tests/benchmarks/rocking_speed.py` times both ways on the cat's bed with its cat in it, by turns, and
prints the best of several. The obvious way is scipy's DOP853 on the equation of motion written down plainly; how
exact each way is is measured against the same solver at its finest. With `--assert` a missed promise is an error.
"""

from __future__ import annotations

import argparse
import math
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from rocking_checks import PlainRocker

from woodmath.ellipse import Ellipse
from woodmath.rocking import RockingBody

BED = RockingBody(12.448, 0.25665, 0.14560, Ellipse(11.000 * 0.0254, 4.0336 * 0.0254), 19 * 0.0254)
"""The loaded cat's bed, in metres and kilograms."""
PLAIN = PlainRocker(
    BED.ellipse.half_length,
    BED.ellipse.half_height,
    BED.centre_height,
    0.0,
    BED.gyration_radius,
    9.5 * 0.0254,
)
AMPLITUDE, SECONDS = 10.0, 10.0
START = math.radians(AMPLITUDE)
COARSEST, FINEST = 1e-11, 1e-13
"""Of the solver: with which it comes nearly as close as ours, and with which it judges both."""
PERIOD_IN_MILLISECONDS, MOTION_IN_MILLISECONDS = 1.0, 10.0


@dataclass(frozen=True)
class Timed:
    """One job done both ways: the best times in milliseconds, and how far each is from the finest answer."""

    job: str
    limit: float
    ours: float
    solver: float
    ours_off: float
    solver_off: float

    @property
    def ratio(self) -> float:
        """How many times as long the solver takes."""
        return self.solver / self.ours


def best_of(ways: tuple[Callable[[], object], ...], tries: int) -> list[float]:
    """Return the best time of each way in milliseconds, tried by turns after one that does not count."""
    taken: list[list[float]] = [[] for _ in ways]
    for _ in range(tries + 1):
        for way, times in zip(ways, taken, strict=True):
            begun = time.perf_counter()
            way()
            times.append((time.perf_counter() - begun) * 1e3)
    return [min(times[1:]) for times in taken]


@cache
def moments() -> tuple[float, ...]:
    """Return the moments at which ours gives a picture."""
    return BED.motion(AMPLITUDE, SECONDS).times


def period(tries: int) -> Timed:
    """Time the exact period."""
    ours, solver = best_of((lambda: BED.period(AMPLITUDE), lambda: PLAIN.swing(START, COARSEST)), tries)
    finest = PLAIN.swing(START, FINEST)
    return Timed(
        "period, let go at 10 degrees",
        PERIOD_IN_MILLISECONDS,
        ours,
        solver,
        abs(BED.period(AMPLITUDE) / finest - 1),
        abs(PLAIN.swing(START, COARSEST) / finest - 1),
    )


def motion(tries: int) -> Timed:
    """Time ten seconds of rocking, sixty pictures a second."""
    ours, solver = best_of(
        (lambda: BED.motion(AMPLITUDE, SECONDS), lambda: PLAIN.tilts(START, moments(), COARSEST)), tries
    )
    finest = PLAIN.tilts(START, moments(), FINEST)

    def off(tilts: np.ndarray) -> float:
        return float(np.max(np.abs(tilts - finest))) / START

    return Timed(
        "10 seconds of motion, 601 pictures",
        MOTION_IN_MILLISECONDS,
        ours,
        solver,
        off(np.radians(BED.motion(AMPLITUDE, SECONDS).tilts)),
        off(PLAIN.tilts(START, moments(), COARSEST)),
    )


def report(found: list[Timed]) -> str:
    """Return the table."""
    head = ("", "ours", "solver", "ratio", "ours off", "solver off", "limit")
    rows = [
        (
            each.job,
            f"{each.ours:.3f}",
            f"{each.solver:.3f}",
            f"{each.ratio:.1f}",
            f"{each.ours_off:.0e}",
            f"{each.solver_off:.0e}",
            f"{each.limit:g}",
        )
        for each in found
    ]
    return "\n".join(
        f"{told:36}" + "".join(f"{value:>12}" for value in values) for told, *values in (head, *rows)
    )


def missed(found: list[Timed], slowness: float = 1.0) -> list[str]:
    """Return what is promised and was not found, on a machine so many times as slow as that of the promise."""
    promises = [
        promise
        for each in found
        for promise in (
            (f"{each.job}: under {each.limit:g} ms", each.ours / slowness < each.limit),
            (f"{each.job}: quicker than the solver", each.ratio > 1),
            (f"{each.job}: exact to 1e-8", each.ours_off <= 1e-8 and each.solver_off <= 1e-8),
        )
    ]
    return [promise for promise, kept in promises if not kept]


def main() -> int:
    """Measure, print, and with `--assert` judge."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--tries", type=int, default=25, help="of each way; the best counts")
    parser.add_argument("--assert", action="store_true", dest="judge", help="fail when a promise is missed")
    given = parser.parse_args()
    found = [period(given.tries), motion(given.tries)]
    print("milliseconds, the best of each; off: furthest from the finest answer, as a part of it")
    print(report(found))
    broken = missed(found) if given.judge else []
    for promise in broken:
        print(f"missed: {promise}")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
