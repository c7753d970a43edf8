"""Bodies that every mechanics text rocks come back in the published time, and what holds for all holds for each."""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rocking import GRAVITY, FlatBase, RockingBody

PI = math.pi


def on_its_back(radius: float, height: float, gyration_squared: float, mass: float = 1.0) -> RockingBody:
    """A body whose whole lower half is round: height and gyration for a radius of 1."""
    return RockingBody(
        mass,
        height * radius,
        math.sqrt(gyration_squared) * radius,
        Ellipse(radius, radius),
        2 * radius,
    )


# Height of the centre of gravity over the floor, square of the gyration radius about it: for a radius of 1.
# Half disc 4r/3π below its axis: physicstasks.eu, problem 1755 (READ). Half hoop 2R/π: Turner and Turner, American
# Journal of Physics 78, 905 (2010), as used in a course note (READ). Hemisphere 3r/8: Physics Forums 934439 (READ).
# Shell R/2: from memory. Moments about the axis 1/2, 1, 2/5, 2/3: from memory.
HALF_DISC = (1 - 4 / (3 * PI), 1 / 2 - (4 / (3 * PI)) ** 2)
HALF_HOOP = (1 - 2 / PI, 1 - (2 / PI) ** 2)
HEMISPHERE = (1 - 3 / 8, 2 / 5 - (3 / 8) ** 2)
SHELL = (1 - 1 / 2, 2 / 3 - (1 / 2) ** 2)

radii = some.floats(0.01, 20)


def equivalent_length(body: RockingBody, amplitude: float = 0.0) -> float:
    """How long a pendulum on a thread would be that takes as long for a small swing."""
    return GRAVITY * (body.period(amplitude) / (2 * PI)) ** 2


# The pendulum that keeps time with it, for a radius of 1; MEM/COMP: half disc and hemisphere (the 3/8 below the
# line is READ, Physics Forums 934439), half hoop and hemispherical shell.
LENGTHS = {
    "half disc": (HALF_DISC, 1.5342917, (9 * PI - 16) / 8),
    "half hoop": (HALF_HOOP, 1.1415927, PI - 2),
    "hemisphere": (HEMISPHERE, 1.7333333, 26 / 15),
    "hemispherical shell": (SHELL, 1.3333333, 4 / 3),
}


@pytest.mark.parametrize(("shape", "printed", "closed"), LENGTHS.values(), ids=LENGTHS.keys())
@given(radius=radii)
def test_round_bodies_keep_time_with_the_published_pendulum(
    shape: tuple[float, float], printed: float, closed: float, radius: float
) -> None:
    length = equivalent_length(on_its_back(radius, *shape))
    assert length == pytest.approx(closed * radius, rel=1e-12)
    assert length == pytest.approx(printed * radius, abs=6e-8 * radius)


@pytest.mark.parametrize(
    ("shape", "seconds"),
    # For a radius of 1 m and the standard gravity, MEM/COMP.
    [(HALF_DISC, 2.485270), (HEMISPHERE, 2.641561), (HALF_HOOP, 2.143755)],
    ids=["half disc", "hemisphere", "half hoop"],
)
def test_round_bodies_of_one_metre_take_the_time_worked_out(
    shape: tuple[float, float], seconds: float
) -> None:
    assert on_its_back(1.0, *shape).period() == pytest.approx(seconds, abs=6e-7)


@given(radii, some.floats(0.1, 500))
def test_about_the_floor_round_bodies_turn_as_heavily_as_published(radius: float, mass: float) -> None:
    # Half disc (3/2 - 8/3π) m r², hemisphere 13/20 m r²: MEM/COMP. Half disc leaning by θ (3/2 - (8/3π) cos θ) m r²:
    # COMP, the idea that it depends on the tilt READ in Hu, European Journal of Physics 32, L51 (2011).
    disc, ball = (on_its_back(radius, *shape, mass) for shape in (HALF_DISC, HEMISPHERE))
    whole_turn = math.degrees(1.0)

    def heaviness(body: RockingBody, tilt: float) -> float:
        return 2 * (body.energy(tilt, whole_turn) - body.energy(tilt))

    unit = mass * radius**2
    assert heaviness(ball, 0) == pytest.approx(13 / 20 * unit, rel=1e-9)
    for tilt in (0.0, 20.0, 70.0):
        leaning = (3 / 2 - 8 / (3 * PI) * math.cos(math.radians(tilt))) * unit
        assert heaviness(disc, tilt) == pytest.approx(leaning, rel=1e-9)


# How much longer a wide swing takes than a small one. COMP, by quadrature; the half disc's at 10°, 30°, 60° and
# 90° confirmed by a separate Runge-Kutta.
WIDE = {
    "half disc": (
        HALF_DISC,
        {5: 1.001716, 10: 1.006854, 20: 1.027265, 30: 1.060840, 45: 1.134874, 60: 1.236481, 90: 1.527646},
    ),
    "half hoop": (HALF_HOOP, {10: 1.008547, 30: 1.075200, 60: 1.286375}),
    "hemisphere": (HEMISPHERE, {10: 1.006288, 30: 1.055985, 60: 1.219226}),
}


@pytest.mark.parametrize(("shape", "ratios"), WIDE.values(), ids=WIDE.keys())
@pytest.mark.parametrize("radius", [0.1, 1.0, 3.0])
def test_wide_swings_take_longer_as_worked_out(
    shape: tuple[float, float], ratios: dict[int, float], radius: float
) -> None:
    body = on_its_back(radius, *shape)
    for amplitude, ratio in ratios.items():
        assert body.period(amplitude) / body.period() == pytest.approx(ratio, abs=6e-7)
        assert body.period(-amplitude) == body.period(amplitude)


def half_ellipse(half_width: float, depth: float = 1.0) -> RockingBody:
    """A thin board in the shape of half an ellipse, its flat side up: COMP."""
    height = depth * (1 - 4 / (3 * PI))
    gyration = math.sqrt((half_width**2 + depth**2) / 4 - (4 * depth / (3 * PI)) ** 2)
    return RockingBody(1.0, height, gyration, Ellipse(half_width, depth), 2 * half_width)


@pytest.mark.parametrize(
    ("half_width", "length"),
    # COMP.
    [(1, 1.534292), (1.25, 0.802298), (1.5, 0.575529), (2, 0.409172), (3, 0.314701)],
)
def test_half_ellipses_keep_time_with_the_pendulum_worked_out(half_width: float, length: float) -> None:
    body = half_ellipse(half_width)
    assert body.centre_height == pytest.approx(0.575587, abs=6e-7)
    assert equivalent_length(body) == pytest.approx(length, abs=6e-7)


def test_half_an_ellipse_stands_if_it_is_wide_enough() -> None:
    # a/b > 0.758674: COMP.
    assert half_ellipse(0.758675).is_stable
    assert not half_ellipse(0.758673).is_stable


@pytest.mark.parametrize(("half_length", "length"), [(1.5, 1.45), (2, 0.75)])  # COMP
def test_a_whole_elliptic_board_on_its_flat_keeps_time_with_the_pendulum_worked_out(
    half_length: float, length: float
) -> None:
    gyration = math.sqrt((half_length**2 + 1) / 4)
    body = RockingBody(1.0, 1.0, gyration, Ellipse(half_length, 1.0), 2 * half_length)
    assert equivalent_length(body) == pytest.approx(length, rel=1e-12)


@given(radii, some.floats(0.05, 3))
def test_a_dome_on_a_level_floor_stands_exactly_when_its_weight_is_lower_than_its_radius(
    radius: float, part: float
) -> None:
    # Flat floor: stable when h < ρ; ΔV = φ²/2 · W (ρ - h) (READ: mathematics syllabus notes, "Stability of
    # equilibrium: energy criterion").
    assume(abs(part - 1) > 1e-9)
    body = RockingBody(2.0, part * radius, 0.0, Ellipse(radius, radius), 2 * radius)
    assert body.is_stable == (part < 1)
    assert body.stiffness_margin == pytest.approx(radius * (1 - part), rel=1e-9, abs=1e-15 * radius)
    tilt = 1e-3
    published = tilt**2 / 2 * 2.0 * GRAVITY * radius * (1 - part)
    assert body.energy(math.degrees(tilt)) == pytest.approx(published, rel=1e-6)


# --- What holds for every case -----------------------------------------------------------------------------


def case_of(
    squatness: float, height: float, gyration: float, length: float, offset: float, mass: float
) -> RockingBody:
    """Half a metre to each side; the height as a part of the bottom's radius, the offset of what is left."""
    oval = Ellipse(0.5, 0.5 * squatness)
    radius = oval.radius_at_bottom
    return RockingBody(mass, height * radius, gyration, oval, length, offset * (1 - height) * radius)


def cases(offsets: some.SearchStrategy[float]) -> some.SearchStrategy[RockingBody]:
    return some.builds(
        case_of,
        some.floats(0.15, 2.0),
        some.floats(0.15, 0.9),
        some.floats(0.05, 0.6),
        some.floats(0.4, 0.95),
        offsets,
        some.floats(0.5, 80),
    ).filter(lambda body: body.balance.rest is not None and body.rolling_limit > 0.5)


even_cases = cases(some.just(0.0))
any_cases = cases(some.one_of(some.just(0.0), some.floats(0.01, 0.1), some.floats(-0.1, -0.01)))
parts = some.floats(0.05, 0.97)


@settings(max_examples=40)
@given(any_cases, parts)
def test_without_drag_the_energy_stays_to_a_billionth(body: RockingBody, part: float) -> None:
    motion = body.motion(part * body.rolling_limit, 4.0)
    lowest = body.energy(body.rest_tilt)
    put_in = body.energy(motion.tilts[0]) - lowest
    for tilt, turning in zip(motion.tilts, motion.turnings, strict=True):
        assert body.energy(tilt, turning) - lowest == pytest.approx(put_in, rel=1e-9)


@given(radii, some.floats(0.1, 0.9), some.floats(0.1, 50), some.floats(-60, 60))
def test_a_mass_in_the_middle_of_a_round_rocker_leaves_the_restoring_moment_at_every_tilt(
    radius: float, part: float, mass: float, tilt: float
) -> None:
    body = RockingBody(10.0, part * radius, 0.1, Ellipse(radius, radius), 1.9 * radius)
    loaded = body.with_body(mass, radius)
    assert loaded.mass * loaded.lever_arm_at(tilt) == pytest.approx(
        body.mass * body.lever_arm_at(tilt), rel=1e-8, abs=1e-9 * radius
    )


@given(even_cases, some.floats(0.1, 50))
def test_a_mass_in_the_middle_of_the_bottoms_circle_leaves_the_stiffness_near_upright(
    body: RockingBody, mass: float
) -> None:
    loaded = body.with_body(mass, body.ellipse.radius_at_bottom)
    assert loaded.mass * loaded.stiffness_margin == pytest.approx(body.mass * body.stiffness_margin, rel=1e-9)
    assert loaded.period() > body.period()


@given(even_cases, some.floats(0.1, 50), some.floats(0.1, 0.9), some.floats(0.0, 0.5))
def test_an_occupant_moves_the_square_of_the_period_towards_its_own(
    body: RockingBody, mass: float, part: float, gyration: float
) -> None:
    radius = body.ellipse.radius_at_bottom
    alone = RockingBody(mass, part * radius, gyration, body.ellipse, body.rocker_length)
    together = body.with_body(mass, part * radius, gyration)
    bounds = sorted((body.period(), alone.period()))
    assert bounds[0] * (1 - 1e-9) <= together.period() <= bounds[1] * (1 + 1e-9)


def grown(body: RockingBody, times: float) -> RockingBody:
    oval = Ellipse(body.ellipse.half_length * times, body.ellipse.half_height * times)
    return RockingBody(
        body.mass,
        body.centre_height * times,
        body.gyration_radius * times,
        oval,
        body.rocker_length * times,
        body.centre_offset * times,
    )


@settings(max_examples=50)
@given(any_cases, parts, some.floats(0.1, 10))
def test_grown_in_all_lengths_a_case_keeps_its_angles_and_takes_the_root_of_it_longer(
    body: RockingBody, part: float, times: float
) -> None:
    large, amplitude = grown(body, times), part * body.rolling_limit
    for angle in ("rest_tilt", "heel_angle", "rolling_limit", "tip_angle"):
        assert getattr(large, angle) == pytest.approx(getattr(body, angle), rel=1e-6, abs=1e-9), angle
    for energy in ("barrier", "rolling_barrier"):
        assert getattr(large, energy) == pytest.approx(times * getattr(body, energy), rel=1e-9), energy
    assert large.stiffness_margin == pytest.approx(times * body.stiffness_margin, rel=1e-9)
    for asked in (0.0, amplitude):
        assert large.period(asked) == pytest.approx(math.sqrt(times) * body.period(asked), rel=1e-9)
    assert large.friction_needed(amplitude) == pytest.approx(body.friction_needed(amplitude), rel=1e-6)
    assert large.push(times * 0.5) == pytest.approx(body.push(0.5), rel=1e-6)


@settings(max_examples=50)
@given(any_cases, parts, some.floats(0.1, 10))
def test_a_heavier_case_swings_alike_and_is_harder_to_bring_over(
    body: RockingBody, part: float, times: float
) -> None:
    heavy, amplitude = replace(body, mass=times * body.mass), part * body.rolling_limit
    assert heavy.period(amplitude) == body.period(amplitude)
    assert heavy.rest_tilt == body.rest_tilt
    assert heavy.tip_angle == body.tip_angle
    assert heavy.friction_needed(amplitude) == body.friction_needed(amplitude)
    assert heavy.motion(amplitude, 0.5).tilts == body.motion(amplitude, 0.5).tilts
    assert heavy.barrier == pytest.approx(times * body.barrier, rel=1e-12)
    assert heavy.rolling_barrier == pytest.approx(times * body.rolling_barrier, rel=1e-12)
    assert heavy.push(0.5) == pytest.approx(times * body.push(0.5), rel=1e-12)


@settings(max_examples=50)
@given(any_cases, parts)
def test_a_case_and_its_image_in_a_mirror_do_the_same_to_the_other_side(
    body: RockingBody, part: float
) -> None:
    image, amplitude = replace(body, centre_offset=-body.centre_offset), part * body.rolling_limit
    assert image.rest_tilt == pytest.approx(-body.rest_tilt, abs=1e-9)
    assert image.rolling_limit == pytest.approx(body.rolling_limit, rel=1e-9)
    assert image.tip_angle == pytest.approx(body.tip_angle, rel=1e-6)
    assert image.barrier == pytest.approx(body.barrier, rel=1e-9)
    assert image.push(0.5) == pytest.approx(body.push(0.5), rel=1e-6)
    assert image.period(-amplitude) == pytest.approx(body.period(amplitude), rel=1e-9)
    there, here = image.motion(-amplitude, 0.5), body.motion(amplitude, 0.5)
    assert there.tilts == pytest.approx([-tilt for tilt in here.tilts], abs=1e-7)
    assert there.positions == pytest.approx([-place for place in here.positions], abs=1e-8)
    assert there.heights == pytest.approx(here.heights, rel=1e-9)


@settings(max_examples=50)
@given(any_cases, parts)
def test_let_go_from_either_end_a_swing_takes_the_same_time(body: RockingBody, part: float) -> None:
    amplitude = part * body.rolling_limit
    motion = body.motion(amplitude, body.period(amplitude) / 2, pictures=20)
    assert motion.turnings[-1] == pytest.approx(0, abs=1e-5 * max(map(abs, motion.turnings)))
    other = motion.tilts[-1] - body.rest_tilt
    assume(abs(other) < body.rolling_limit)
    assert body.period(other) == pytest.approx(body.period(amplitude), rel=1e-6)


# --- Near rest ---------------------------------------------------------------------------------------------


def growth_near_rest(body: RockingBody) -> float:
    """By how much the period grows, as a part of itself, for each square of a small amplitude in radians.

    COMP. Up to the fourth power H = h + c θ²/2 + d θ⁴, with c = R - h and, from the expansion of
    p = √(a² sin² + b² cos²), d = (h - b)/24 - q/6 - q²/8b with q = (a² - b²)/b; the square of the gyration radius
    about the touching point is J + R c θ² with J = k² + h². A stretched angle takes the second into the first and
    leaves V = g c (x² + e x⁴)/2 with e = 2d/c - R c/3J; an oscillator with such a term keeps a period that is
    1 - 3 e A²/4 of that of a small swing (Landau and Lifshitz, Mechanics, section 28; from memory).
    """
    b, h = body.ellipse.half_height, body.centre_height
    radius = body.ellipse.half_length**2 / b
    c, q = radius - h, radius - b
    d = (h - b) / 24 - q / 6 - q**2 / (8 * b)
    heaviness = body.gyration_radius**2 + h**2
    return -3 / 4 * (2 * d / c - radius * c / (3 * heaviness))


@given(even_cases)
def test_near_rest_the_period_grows_or_falls_with_the_swing_as_theory_says(body: RockingBody) -> None:
    growth = growth_near_rest(body)
    amplitude = 0.02 * min(1.0, math.sqrt(body.stiffness_margin), body.rolling_limit / 2)
    narrow, wide = (
        (body.period(math.degrees(part * amplitude)) / body.period() - 1) / (part * amplitude) ** 2
        for part in (0.5, 1.0)
    )
    # What is left goes with the square of the amplitude: two amplitudes tell it, and it is taken away.
    assert (4 * narrow - wide) / 3 == pytest.approx(growth, rel=1e-2, abs=1e-2)
    if abs(growth) > 0.1:
        assert math.copysign(1, wide) == math.copysign(1, growth)


@given(some.floats(0.15, 1.0), some.floats(0.05, 0.95), some.floats(0.01, 1))
def test_on_a_circle_or_a_flat_ellipse_the_period_grows_when_the_weight_is_no_higher_than_the_centre(
    squatness: float, part: float, gyration: float
) -> None:
    body = RockingBody(1.0, part * 0.5 * squatness, gyration, Ellipse(0.5, 0.5 * squatness), 0.9)
    assert growth_near_rest(body) > 0
    amplitude = 0.2 * body.rolling_limit
    assert body.period() < body.period(amplitude)


def test_on_a_tall_ellipse_the_period_can_fall_with_the_swing() -> None:
    body = RockingBody(1.0, 0.24, 0.5, Ellipse(0.5, 1.0), 0.6)
    assert growth_near_rest(body) < 0
    swings = [body.period(amplitude) for amplitude in (0, 2, 4, 8)]
    assert all(longer > shorter for longer, shorter in itertools.pairwise(swings))


# --- Drag --------------------------------------------------------------------------------------------------


@settings(max_examples=50)
@given(any_cases, some.floats(0.005, 0.4))
def test_with_drag_a_small_swing_dies_away_as_every_text_says(body: RockingBody, ratio: float) -> None:
    # Logarithmic decrement 2πζ/√(1 - ζ²), damped period T/√(1 - ζ²): any text on vibrations (from memory).
    amplitude = 1e-3 * min(body.rolling_limit, 10)
    slower = math.sqrt(1 - ratio**2)
    motion = body.motion(amplitude, body.period() / slower, damping_ratio=ratio, pictures=40)
    left = motion.tilts[-1] - body.rest_tilt
    assert math.log(amplitude / left) == pytest.approx(2 * PI * ratio / slower, rel=2e-3, abs=2e-3)
    assert motion.turnings[-1] == pytest.approx(0, abs=2e-3 * max(map(abs, motion.turnings)))


@settings(max_examples=30)
@given(any_cases, some.floats(1.0, 2.5))
def test_with_all_the_drag_or_more_it_creeps_back_and_does_not_swing(body: RockingBody, ratio: float) -> None:
    amplitude = 1e-3 * min(body.rolling_limit, 10)
    motion = body.motion(amplitude, 3 * body.period(), damping_ratio=ratio, pictures=120)
    away = [tilt - body.rest_tilt for tilt in motion.tilts]
    assert all(there > -1e-6 * amplitude for there in away)
    assert all(later <= before + 1e-9 * amplitude for before, later in itertools.pairwise(away))
    assert away[-1] < 0.2 * amplitude


@settings(max_examples=30)
@given(any_cases, parts, some.floats(0.001, 1.5))
def test_with_drag_the_energy_never_grows(body: RockingBody, part: float, ratio: float) -> None:
    motion = body.motion(part * body.rolling_limit, 3.0, damping_ratio=ratio)
    energies = [
        body.energy(tilt, turning) for tilt, turning in zip(motion.tilts, motion.turnings, strict=True)
    ]
    put_in = energies[0] - body.energy(body.rest_tilt)
    assert all(later <= before + 2e-9 * put_in for before, later in itertools.pairwise(energies))
    assert energies[-1] < energies[0]


@given(any_cases)
def test_let_go_where_it_lies_it_stays_there(body: RockingBody) -> None:
    motion = body.motion(0, 1.0)
    assert motion.tilts == pytest.approx([body.rest_tilt] * 61, abs=1e-9)
    assert body.friction_needed(0) == 0


@given(any_cases, some.floats(1e-12, 1e-3))
def test_the_smallest_swings_take_the_time_of_a_small_swing(body: RockingBody, amplitude: float) -> None:
    assert body.period(amplitude) == pytest.approx(body.period(), rel=1e-6)
    assert len(body.motion(amplitude, 0.2).tilts) == 13


# --- Loads -------------------------------------------------------------------------------------------------


@given(even_cases, some.floats(0.1, 30), some.floats(0.05, 1.5), some.floats(-0.4, 0.4))
def test_a_load_shifts_the_weight_as_a_lever_says(
    body: RockingBody, mass: float, height: float, offset: float
) -> None:
    loaded = body.with_body(mass, height, 0.1, offset)
    assert loaded.mass == pytest.approx(body.mass + mass, rel=1e-12)
    assert loaded.centre_offset == pytest.approx(mass * offset / loaded.mass, rel=1e-9, abs=1e-12)
    high = (body.mass * body.centre_height + mass * height) / loaded.mass
    assert loaded.centre_height == pytest.approx(high, rel=1e-9)
    # The parallel-axis rule for two bodies: k² = Σ m (k² + d²) / Σ m (from memory).
    spread = sum(
        amount * (gyration**2 + (up - high) ** 2 + (aside - loaded.centre_offset) ** 2)
        for amount, gyration, up, aside in (
            (body.mass, body.gyration_radius, body.centre_height, 0.0),
            (mass, 0.1, height, offset),
        )
    )
    assert loaded.gyration_radius == pytest.approx(math.sqrt(spread / loaded.mass), rel=1e-9)
    assert (loaded.ellipse, loaded.rocker_length) == (body.ellipse, body.rocker_length)


@given(even_cases, some.floats(0.05, 0.4))
def test_a_load_to_the_right_leans_the_case_to_the_right_and_makes_it_easier_to_bring_over(
    body: RockingBody, offset: float
) -> None:
    loaded = body.with_body(0.1 * body.mass, body.centre_height, offset=offset)
    if loaded.balance.rest is None:
        assert loaded.barrier == 0
    else:
        assert loaded.rest_tilt > 0
        assert loaded.barrier / loaded.mass < body.barrier / body.mass


# --- Refusals ----------------------------------------------------------------------------------------------

BED = RockingBody(12.448, 0.25665, 0.14560, Ellipse(11.0 * 0.0254, 4.0336 * 0.0254), 19 * 0.0254)

WHAT_TO_DO = re.compile(
    r"(must be more than 0|cannot be less than 0|give a plain number|Shorten|Choose|Ask|Push|Level the floor|"
    r"[Bb]ring|make the rockers|take a flatter)"
)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (lambda: replace(BED, mass=0.0), "mass is 0"),
        (lambda: replace(BED, centre_height=-0.1), "centre height is -0.1"),
        (lambda: replace(BED, rocker_length=math.nan), "rocker length is nan"),
        (lambda: replace(BED, gyration_radius=-1.0), "gyration radius is -1"),
        (lambda: replace(BED, centre_offset=math.inf), "centre offset is inf"),
        (lambda: replace(BED, rocker_length=0.6), "0.6 long is longer than its ellipse, which is 0.5588"),
        (lambda: BED.with_body(-1.0, 0.3), "mass is -1"),
        (lambda: BED.height_at(40), "40 degrees is beyond the heel, which is reached at 32.1"),
        (lambda: BED.lever_arm_at(-40), "-40 degrees is beyond the heel"),
        (lambda: BED.radius_at(40), "40 degrees is beyond the heel"),
        (lambda: BED.energy(40), "40 degrees is beyond the heel"),
        (lambda: BED.push(0), "height of 0 m"),
        (lambda: BED.push(math.nan), "height of nan m"),
        (lambda: BED.motion(10, 0), "0 seconds"),
        (lambda: BED.motion(10, 601), "601 seconds was asked for. Ask for more than 0 and at most 600"),
        (lambda: BED.motion(10, 1, damping_ratio=-0.1), "damping ratio is -0.1"),
        (lambda: BED.rest_tilt_on_slope(60), "slopes 60 degrees"),
        (lambda: replace(BED, centre_height=1.0).period(), "1 m over the floor, .* circle of 0.762 m"),
        (
            lambda: BED.with_body(50, 0.3, offset=0.5).rest_tilt,
            "beside the middle, and it rolls past the heel",
        ),
        (lambda: FlatBase(0.0, 1.0, 1.0), "mass is 0"),
        (lambda: FlatBase(1.0, 1.0, 1.0).push(-1), "height of -1 m"),
    ],
)
def test_a_refusal_says_what_was_given_and_what_to_do(asked: Callable[[], object], told: str) -> None:
    with pytest.raises(ImpossibleShape, match=told) as refusal:
        asked()
    assert WHAT_TO_DO.search(str(refusal.value))


@given(any_cases, some.floats(1.0001, 3), some.sampled_from((1, -1)))
def test_past_the_rolling_limit_there_is_no_period_and_the_limit_is_told(
    body: RockingBody, part: float, side: int
) -> None:
    limit = body.rolling_limit
    for asked in (body.period, body.friction_needed, lambda amplitude: body.motion(amplitude, 1.0)):
        with pytest.raises(ImpossibleShape, match="does not roll back") as refusal:
            asked(side * part * limit)
        assert f"rolling limit is {limit:.4g} degrees. Choose less" in str(refusal.value)


@given(any_cases)
def test_a_swing_that_is_wider_has_a_higher_hill_and_the_limits_come_in_their_order(
    body: RockingBody,
) -> None:
    assert body.rolling_limit > 0
    # Of two heights that are nearly alike only so much is left.
    rounding = 1e-14 * body.mass * GRAVITY * body.centre_height
    assert body.rolling_barrier <= body.barrier + rounding
    assert abs(body.rest_tilt) < body.tip_angle + 1e-9
    amplitudes = np.linspace(0.1, 0.9, 5) * body.rolling_limit
    lifts = [body.energy(body.rest_tilt + amplitude) for amplitude in amplitudes]
    assert all(higher > lower for lower, higher in itertools.pairwise(lifts))


def test_as_round_as_high_a_tall_rocker_swings_without_drag_and_is_told_why_not_with_it() -> None:
    tall = RockingBody(1.0, 0.125, 0.1, Ellipse(0.25, 0.5), 0.4)
    period = tall.period(8)
    played = tall.motion(8, period, pictures=200)
    assert played.tilts[100] == pytest.approx(-8, abs=1e-6)
    assert played.tilts[-1] == pytest.approx(8, abs=1e-6)
    with pytest.raises(ImpossibleShape, match="nothing to damp"):
        tall.motion(8, 1.0, damping_ratio=0.1)


def test_a_swing_so_quick_that_the_floor_would_have_to_pull_asks_for_grip_without_end() -> None:
    # A heavy bottom let go from far over: Newton wants it to leave the floor on its way down.
    weighted = RockingBody(1.0, 0.05, 0.05, Ellipse(1.0, 1.0), 2.0)
    assert math.isfinite(weighted.friction_needed(10))
    assert weighted.friction_needed(85) == math.inf


def test_a_circle_with_its_weight_in_its_centre_stays_wherever_it_is_left() -> None:
    wheel = RockingBody(1.0, 0.4, 0.1, Ellipse(0.4, 0.4), 0.5)
    assert wheel.is_indifferent and not wheel.is_stable
    with pytest.raises(ImpossibleShape, match="stays wherever you leave it"):
        wheel.period()
    assert not replace(wheel, centre_height=0.39).is_indifferent
    assert not replace(wheel, centre_offset=0.01).is_indifferent


def test_a_number_of_pictures_that_cannot_be_is_refused() -> None:
    with pytest.raises(ImpossibleShape, match="pictures"):
        RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).motion(5, 1.0, pictures=-5)
