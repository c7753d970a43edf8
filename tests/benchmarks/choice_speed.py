"""Choosing a rocker, beside the plain way: a general root finder, with every period from an integrated motion."""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass, replace

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import root

from woodmath import mass
from woodmath.ellipse import Ellipse
from woodmath.piece import Piece
from woodmath.piece_rocking import body_in_metres
from woodmath.rocker_choice import Wish, choose_rocker, ways_out
from woodmath.rocking import GRAVITY, RockingBody

WISH = Wish(period=0.8, rolling_limit=25, rise=2)
SMALL = 1e-4
"""Radians: a swing that the plain way takes for a small one."""


@dataclass(frozen=True)
class Compared:
    """Seconds of both ways, and the greatest difference between the rockers that they find, as a part of it."""

    ours: float
    refused: float
    """A wish that cannot be, with all that would do instead."""
    plain: float
    apart: float

    @property
    def ratio(self) -> float:
        """How many times as long the plain way takes."""
        return self.plain / self.ours


def integrated_period(body: RockingBody) -> float:
    """Return the period of a small swing by integrating the motion to its turning point."""
    a, b = body.ellipse.half_length, body.ellipse.half_height
    above, k = body.centre_height - b, body.gyration_radius

    def slopes(_: float, state: np.ndarray) -> list[float]:
        tilt, turning = state
        sine, cosine = np.sin(tilt), np.cos(tilt)
        p = np.sqrt((a * sine) ** 2 + (b * cosine) ** 2)
        first = (a * a - b * b) * sine * cosine / p
        second = (a * a - b * b) * (cosine**2 - sine**2) / p - first**2 / p
        height, arm, bend = p + above * cosine, first - above * sine, second - above * cosine
        heavy = k * k + height**2 + arm**2
        return [turning, -(GRAVITY * arm + arm * (height + bend) * turning**2) / heavy]

    def turned(_: float, state: np.ndarray) -> float:
        return float(state[1])

    turned.direction = 1.0
    turned.terminal = True
    found = solve_ivp(
        slopes, (0.0, 20.0), [SMALL, 0.0], method="DOP853", rtol=1e-11, atol=1e-14, events=turned
    )
    return 2 * float(found.t_events[0][0])


def plain_way(piece: Piece, wish: Wish) -> tuple[float, float]:
    """Return the length and the roundness that a general root finder comes to, in the piece's unit."""
    own = piece.rocker
    assert own is not None

    def missed(sizes: np.ndarray) -> list[float]:
        length, radius = map(float, sizes)
        rocker = replace(
            own,
            length=length,
            bottom_radius=radius,
            rise=wish.rise,
            depth=own.depth - own.rise + wish.rise,
        )
        ellipse = Ellipse.from_rocker(length, wish.rise, radius)
        body = body_in_metres(mass.whole(piece, False, rocker), ellipse, length, piece.rule.unit)
        return [integrated_period(body) - wish.period, body.heel_angle - wish.rolling_limit]

    found = root(missed, [own.length, own.bottom_radius], tol=1e-10)
    return float(found.x[0]), float(found.x[1])


def compared(rounds: int = 3) -> Compared:
    """Choose the same rocker both ways, turn by turn, and keep the quickest of each."""
    piece = Piece.demo("cat-bed")
    choose_rocker(piece, WISH)
    ours, plain = [], []
    for _ in range(rounds):
        begun = time.perf_counter()
        chosen = choose_rocker(piece, WISH)
        ours.append(time.perf_counter() - begun)
        begun = time.perf_counter()
        length, radius = plain_way(piece, WISH)
        plain.append(time.perf_counter() - begun)
    rocker = chosen.rocker
    apart = max(abs(length / rocker.length - 1), abs(radius / rocker.bottom_radius - 1))
    begun = time.perf_counter()
    ways_out(piece, replace(WISH, period=3.0))
    refused = time.perf_counter() - begun
    return Compared(min(ours), refused, min(plain), apart)


if __name__ == "__main__":
    argparse.ArgumentParser(description=__doc__).parse_args()
    told = compared()
    print(
        f"ours {told.ours * 1000:.2f} ms (a refusal {told.refused * 1000:.1f}), the plain way "
        f"{told.plain * 1000:.0f} ms: {told.ratio:.0f} times as long; the rockers are {told.apart:.1e} apart"
    )
