"""How slow this machine is just now, beside the one on which the promised times were measured.

A promise of five milliseconds is one about a program and not about a lodger on the same machine: where plain work takes
twice as long as it did there, twice the time is allowed, and never less than was promised.
"""

from __future__ import annotations

import math
import time

MEASURED_THERE = 1.8e-3
"""Seconds that `_plain_work` took where the promised times were measured."""


def slowness() -> float:
    """Return how many times as long plain work takes here and now, 1 or more; the least of some rounds."""
    rounds = []
    for _ in range(9):
        begun = time.perf_counter()
        _plain_work()
        rounds.append(time.perf_counter() - begun)
    return max(1.0, min(rounds) / MEASURED_THERE)


def _plain_work() -> str:
    """Do what a redraw does most: sines, roots, and numbers turned into text."""
    total, parts = 0.0, []
    for number in range(1, 4001):
        total += math.sin(number) * math.hypot(number, 2.0)
        parts.append(f"{total:.1f},{number / 3:.1f}")
    return ";".join(parts)
