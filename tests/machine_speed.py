"""How slow this machine is just now, beside the one on which the promised times were measured.

A promise of five milliseconds is about a program, not about whoever shares the machine. So a measured time is divided
by how many times as long plain work takes here and now; on a machine as quick as that one, by nothing.
"""

from __future__ import annotations

import math
import statistics
import time

MEASURED_THERE = 1.91e-3
"""Seconds of `_plain_work` where the promises were made: 0.517 of the 3.7 ms that drawing the whole piece took there.

The part was measured with both in turn, three times 300 of each, on the edition that took 3.7 ms.
"""


def slowness() -> float:
    """Return how many times as long plain work takes here and now, 1 or more; the middle of some rounds."""
    rounds = []
    for _ in range(15):
        begun = time.perf_counter()
        _plain_work()
        rounds.append(time.perf_counter() - begun)
    return max(1.0, statistics.median(rounds) / MEASURED_THERE)


def _plain_work() -> str:
    """Do what a redraw does most: sines, roots, and numbers turned into text."""
    total, parts = 0.0, []
    for number in range(1, 4001):
        total += math.sin(number) * math.hypot(number, 2.0)
        parts.append(f"{total:.1f},{number / 3:.1f}")
    return ";".join(parts)
