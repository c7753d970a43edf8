"""Periods and tilts against scipy, which follows the equation of motion written down apart from the course."""

from __future__ import annotations

import itertools
import math
from functools import cache

import numpy as np
import pytest
from rocking_checks import GRAVITY, PlainRocker
from scipy.integrate import quad

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rocking import Motion, RockingBody

# Half height and height of the weight for each unit of half length and of the bottom's radius, gyration radius
# for each unit of half length, part of the ellipse that is rocker, offset for each unit of the margin.
SQUATNESS = (0.15, 0.3, 0.5, 0.8, 1.0, 1.3, 1.9, 2.6)
HEIGHTS = (0.15, 0.4, 0.7, 0.93, 1.1)
GYRATION = (0.15, 0.5, 1.2)
LENGTHS = (0.5, 0.9)
OFFSETS = (0.0, 0.05, -0.03)
AMPLITUDES = (0.02, -0.3, 0.7, -0.95, 0.999)
"""For each unit of the rolling limit, by turns."""
HALF_LENGTH = 0.3
AGREES = 1e-8


def plain(squatness: float, height: float, gyration: float, length: float, offset: float) -> PlainRocker:
    radius = HALF_LENGTH / squatness
    return PlainRocker(
        a=HALF_LENGTH,
        b=HALF_LENGTH * squatness,
        h=height * radius,
        u=offset * (1 - height) * radius,
        k=gyration * HALF_LENGTH,
        half=length * HALF_LENGTH,
    )


def body_of(rocker: PlainRocker, mass: float = 10.0) -> RockingBody:
    oval = Ellipse(rocker.a, rocker.b)
    return RockingBody(mass, rocker.h, rocker.k, oval, 2 * rocker.half, rocker.u)


GRID = [plain(*sizes) for sizes in itertools.product(SQUATNESS, HEIGHTS, GYRATION, LENGTHS, OFFSETS)]
STABLE = [rocker for rocker in GRID if rocker.rest is not None]
UNSTABLE = [rocker for rocker in GRID if rocker.rest is None]


@cache
def compared() -> tuple[tuple[PlainRocker, RockingBody, float, float], ...]:
    """Each body that comes to rest, with an amplitude in degrees and its start in radians."""
    found = []
    for rocker, part in zip(STABLE, itertools.cycle(AMPLITUDES), strict=False):
        body = body_of(rocker)
        amplitude = part * body.rolling_limit
        assert rocker.rest is not None
        found.append((rocker, body, amplitude, rocker.rest + math.radians(amplitude)))
    return tuple(found)


def test_the_grid_is_slim_and_squat_stable_and_unstable_and_of_five_hundred_bodies() -> None:
    assert len(STABLE) >= 500
    assert len(UNSTABLE) >= 100
    assert sum(rocker.u != 0 for rocker in STABLE) >= 300
    assert len({rocker.b for rocker in STABLE}) == len(SQUATNESS)
    # The tallest stand leaning when their weight is a little too high.
    assert {rocker.b for rocker in UNSTABLE} >= {HALF_LENGTH * every for every in SQUATNESS if every <= 1}
    assert sum(rocker.u == 0 and rocker.rest != 0 for rocker in STABLE) >= 10


def test_periods_agree_with_the_integration() -> None:
    apart = [
        abs(body.period(amplitude) / rocker.swing(start) - 1) for rocker, body, amplitude, start in compared()
    ]
    assert len(apart) >= 500
    assert max(apart) <= AGREES


def test_tilts_of_three_seconds_agree_with_the_integration() -> None:
    apart = []
    for rocker, body, amplitude, start in compared():
        motion = body.motion(amplitude, 3.0)
        followed = np.degrees(rocker.tilts(start, motion.times))
        apart.append(float(np.max(np.abs(followed - motion.tilts))) / abs(amplitude))
    assert len(apart) >= 500
    assert max(apart) <= AGREES


def test_a_body_that_comes_to_rest_nowhere_says_so_and_gives_no_number() -> None:
    for rocker in UNSTABLE:
        body = body_of(rocker)
        assert not body.is_stable
        told = (
            r"does not come to rest on its curve: .*("
            r"bring the weight down, or take a flatter rocker|"
            r"Bring the load nearer to the middle, or make the rockers longer)\."
        )
        for asked in (
            lambda body: body.period(),
            lambda body: body.period(5),
            lambda body: body.motion(5, 1.0),
            lambda body: body.friction_needed(5),
            lambda body: body.rest_tilt,
            lambda body: body.rest_tilt_on_slope(1),
        ):
            with pytest.raises(ImpossibleShape, match=told):
                asked(body)
        nothing = (body.rolling_limit, body.tip_angle, body.barrier, body.rolling_barrier, body.push(1.0))
        assert nothing == (0, 0, 0, 0, 0)


def swings(motion: Motion) -> int:
    signs = np.sign(motion.turnings)
    return int(np.count_nonzero(np.diff(signs[signs != 0])))


def test_a_case_that_is_followed_turns_round_twice_in_each_period() -> None:
    for _, body, amplitude, _ in compared()[::25]:
        period = body.period(amplitude)
        assert swings(body.motion(amplitude, 5.25 * period)) == 10


def test_the_weight_goes_along_the_floor_as_far_as_the_rocker_unrolls() -> None:
    # Without slip the touching point has gone as far as the arc is long, and the weight stands the arm beside it.
    for rocker, body, amplitude, _ in compared()[::25]:
        motion = body.motion(amplitude, 1.0, pictures=8)

        def arc(turn: float, rocker: PlainRocker = rocker) -> float:
            return math.hypot(rocker.a * math.cos(turn), rocker.b * math.sin(turn))

        for tilt, position, height in zip(motion.tilts, motion.positions, motion.heights, strict=True):
            across, _ = rocker.touching(math.radians(tilt))
            unrolled = quad(arc, 0, math.asin(across / rocker.a), epsabs=1e-13)[0]
            weight = unrolled - rocker.arm(math.radians(tilt))
            assert position == pytest.approx(weight - rocker.u, abs=1e-8)
            assert height == pytest.approx(rocker.rolled_height(math.radians(tilt)), rel=1e-12)


def test_the_grip_that_a_swing_asks_for_is_that_of_newtons_second_law() -> None:
    for rocker, body, amplitude, start in compared()[::5]:
        times = tuple(np.linspace(0, rocker.swing(start) / 2, 1501))
        needed = 0.0
        for tilt, turning in rocker.states(start, times):
            height, slope, bend = rocker.height(tilt)
            quickening = rocker.quickening(tilt, turning)
            upward = GRAVITY + slope * quickening + bend * turning**2
            assert upward > 0
            needed = max(needed, abs(height * quickening + slope * turning**2) / upward)
        assert body.friction_needed(amplitude) == pytest.approx(needed, rel=1e-4)
