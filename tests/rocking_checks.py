"""A case on elliptical rockers, written down once more from plain geometry and followed by scipy.

Nothing here comes from woodmath. The rocker is the arc of an ellipse; the floor touches its lowest point, at a
heel if there is none lower; the equation of motion is Lagrange's, for that one angle.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar

GRAVITY = 9.80665


@dataclass(frozen=True)
class PlainRocker:
    """Half length, half height, height and offset of the weight, gyration radius, half the rocker; metres."""

    a: float
    b: float
    h: float
    u: float
    k: float
    half: float

    def height(self, tilt: float) -> tuple[float, float, float]:
        """How high the weight stands on the curve, and the first and second slope of that."""
        sine, cosine = math.sin(tilt), math.cos(tilt)
        flat, up = self.a**2 - self.b**2, self.h - self.b
        p = math.sqrt((self.a * sine) ** 2 + (self.b * cosine) ** 2)
        p_1 = flat * sine * cosine / p
        p_2 = (flat * (cosine**2 - sine**2) - p_1**2) / p
        return (
            p + up * cosine - self.u * sine,
            p_1 - up * sine - self.u * cosine,
            p_2 - up * cosine + self.u * sine,
        )

    def quickening(self, tilt: float, turning: float) -> float:
        """d/dt ∂T/∂ω = ∂T/∂θ - ∂V/∂θ with T = (k² + H² + H′²) ω²/2 and V = g H, for each kilogram."""
        height, slope, bend = self.height(tilt)
        heaviness = self.k**2 + height**2 + slope**2
        return -slope * (GRAVITY + (height + bend) * turning**2) / heaviness

    def swing(self, start: float, accuracy: float = 1e-12) -> float:
        """The time there and back, for a start at a tilt in radians: twice that to the other turning point."""
        rest = self.rest
        assert rest is not None

        def stopped(_: float, state: np.ndarray) -> float:
            return state[1]

        stopped.terminal = True  # type: ignore[attr-defined]
        stopped.direction = math.copysign(1, start - rest)  # type: ignore[attr-defined]
        found = self._followed(start, 100.0, events=stopped, accuracy=accuracy)
        ((tilt, turning),) = found.y_events[0]
        # Where the solver's own interpolation says it stopped it nearly did: the rest of the way in a straight line.
        return 2 * (found.t_events[0][0] - turning / self.quickening(tilt, 0.0))

    def tilts(self, start: float, times: tuple[float, ...], accuracy: float = 1e-12) -> np.ndarray:
        """The tilts in radians at some times after it was let go."""
        return self.states(start, times, accuracy)[:, 0]

    def states(self, start: float, times: tuple[float, ...], accuracy: float = 1e-12) -> np.ndarray:
        """Tilt and turning, in radians and radians a second, at some times after it was let go."""
        return self._followed(start, times[-1], t_eval=times, accuracy=accuracy).y.T

    def _followed(self, start: float, seconds: float, accuracy: float = 1e-12, **more: object):
        return solve_ivp(
            lambda _, state: (state[1], self.quickening(*state)),
            (0.0, seconds),
            (start, 0.0),
            method="DOP853",
            rtol=accuracy,
            atol=1e-15,
            **more,
        )

    @cached_property
    def rest(self) -> float | None:
        """Where it lies: the first place downhill from upright where the weight is lowest, short of the heels."""
        downhill = math.copysign(1.0, self.u) if self.u else 1.0
        if self.u == 0 and self.rolled_height(1e-3) > self.rolled_height(0):
            return 0.0
        tilts = np.linspace(0, downhill * self.heel, 4001)
        slopes = [self.height(tilt)[1] * downhill for tilt in tilts]
        for before, after, slope in zip(tilts, tilts[1:], slopes[1:], strict=False):
            if slope >= 0:
                return brentq(lambda tilt: self.height(tilt)[1], before, after, xtol=1e-15)
        return None

    @property
    def heel(self) -> float:
        """The tilt at which the heel touches: the slope of the curve there, in radians."""
        return math.atan2(self.b * self.half, self.a * math.sqrt(self.a**2 - self.half**2))

    def touching(self, tilt: float) -> tuple[float, float]:
        """The lowest point of the rocker, from its ellipse's centre, along rocker and middle line."""
        root = math.hypot(self.a * math.sin(tilt), self.b * math.cos(tilt))
        lowest = self.a**2 * math.sin(tilt) / root if math.cos(tilt) > 0 else math.copysign(self.half, tilt)
        across = min(max(lowest, -self.half), self.half)
        return across, -self.b * math.sqrt(1 - (across / self.a) ** 2)

    def outline(self, points: int = 20001) -> np.ndarray:
        """Points of the rocker's lower edge from heel to heel."""
        turn = math.asin(self.half / self.a)
        turns = np.linspace(-turn, turn, points)
        return np.column_stack((self.a * np.sin(turns), -self.b * np.cos(turns)))

    def rolled_height(self, tilt: float, at: tuple[float, float] | None = None) -> float:
        """How high a point of the case stands over the floor: the weight, or one along and up from the bottom."""
        along, up = at or (self.u, self.h)
        across, down = self.touching(tilt)
        return (up - self.b - down) * math.cos(tilt) - (along - across) * math.sin(tilt)

    def arm(self, tilt: float) -> float:
        """How far the touching point lies to the right of the weight, level, rolling or on the heel."""
        across, down = self.touching(tilt)
        return (across - self.u) * math.cos(tilt) + (down - self.h + self.b) * math.sin(tilt)

    def top(self, side: int) -> float:
        """The tilt on one side of its rest at which the weight stands highest: past that it goes over."""
        rest = self.rest
        assert rest is not None
        tilts = np.linspace(rest, side * math.pi, 4001)
        highest = int(np.argmax([self.rolled_height(tilt) for tilt in tilts]))
        found = minimize_scalar(
            lambda tilt: -self.rolled_height(tilt),
            bounds=sorted((tilts[highest - 1], tilts[highest + 1])),
            method="bounded",
            options={"xatol": 1e-9},
        )
        return float(found.x)

    def hardest_push(self, side: int, at_height: float) -> float:
        """The greatest level push to one side until it goes over, for each newton of weight.

        Slowly pushed it must be held through every rest on the way: the last hill counts as well.
        """
        rest = self.rest
        assert rest is not None

        def push(tilt: float) -> float:
            return side * self.arm(tilt) / self.rolled_height(tilt, (0.0, at_height))

        tilts = np.linspace(rest, side * math.pi, 6001)
        heights = np.array([self.rolled_height(tilt) for tilt in tilts])
        tilts = tilts[: np.flatnonzero(np.diff(heights) > 0)[-1] + 2]
        # The curve has a corner where the rolling ends, and may have its greatest there.
        tilts = np.sort(np.append(tilts, side * self.heel))
        best = int(np.argmax([push(tilt) for tilt in tilts]))
        around = tilts[max(0, best - 1)], tilts[min(len(tilts) - 1, best + 1)]
        refined = minimize_scalar(
            lambda tilt: -push(tilt), bounds=around, method="bounded", options={"xatol": 1e-9}
        )
        return max(push(tilts[best]), -float(refined.fun))
