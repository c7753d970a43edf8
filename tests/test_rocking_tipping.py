"""Heel, hill, push and slope against plain geometry: the lowest point of an outline, the highest of a weight."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some
from rocking_checks import GRAVITY, PlainRocker

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.rocking import FlatBase, RockingBody

MASS = 12.5


def rocker_of(
    half_length: float, squatness: float, height: float, offset: float, length: float
) -> PlainRocker:
    """Sizes in metres, but the height as a part of the bottom's radius and the offset as one of what is left."""
    radius = half_length / squatness
    return PlainRocker(
        a=half_length,
        b=half_length * squatness,
        h=height * radius,
        u=offset * (1 - height) * radius,
        k=half_length / 2,
        half=length * half_length,
    )


rockers = some.builds(
    rocker_of,
    some.floats(0.1, 2.0),
    some.floats(0.15, 2.5),
    some.floats(0.1, 1.2),
    some.one_of(some.just(0.0), some.floats(0.01, 0.2), some.floats(-0.2, -0.01)),
    some.floats(0.3, 0.98),
).filter(lambda rocker: abs(rocker.h / (rocker.a**2 / rocker.b) - 1) > 0.02)


def body_of(rocker: PlainRocker) -> RockingBody:
    oval = Ellipse(rocker.a, rocker.b)
    return RockingBody(MASS, rocker.h, rocker.k, oval, 2 * rocker.half, rocker.u)


@given(rockers, some.floats(-0.999, 0.999))
def test_the_floor_touches_the_lowest_point_of_the_outline(rocker: PlainRocker, part: float) -> None:
    tilt = part * rocker.heel
    outline = rocker.outline()
    lowered = outline[:, 1] * math.cos(tilt) - outline[:, 0] * math.sin(tilt)
    weight = (rocker.h - rocker.b) * math.cos(tilt) - rocker.u * math.sin(tilt)
    lowest = int(np.argmin(lowered))
    body = body_of(rocker)
    assert body.height_at(math.degrees(tilt)) == pytest.approx(weight - lowered[lowest], rel=1e-7)
    beside = outline[:, 0] * math.cos(tilt) + outline[:, 1] * math.sin(tilt)
    aside = rocker.u * math.cos(tilt) + (rocker.h - rocker.b) * math.sin(tilt)
    assert body.lever_arm_at(math.degrees(tilt)) == pytest.approx(
        beside[lowest] - aside, abs=2e-3 * max(rocker.a, rocker.b)
    )
    assert body.lever_arm_at(math.degrees(tilt)) == pytest.approx(
        rocker.arm(tilt), abs=1e-12 * (rocker.a + rocker.b)
    )


@given(rockers)
def test_the_rolling_ends_where_the_lowest_point_is_the_heel(rocker: PlainRocker) -> None:
    body = body_of(rocker)
    heel = math.radians(body.heel_angle)
    assert rocker.touching(heel + 1e-6)[0] == rocker.half
    assert rocker.touching(heel - 1e-6)[0] < rocker.half
    assert body.rise == pytest.approx(rocker.b + rocker.outline()[0, 1], rel=1e-9)


@given(rockers)
def test_it_lies_where_the_weight_is_lowest_and_goes_over_where_it_is_highest(rocker: PlainRocker) -> None:
    body = body_of(rocker)
    assume(rocker.rest is not None and body.balance.rest is not None)
    assert rocker.rest is not None
    assert math.radians(body.rest_tilt) == pytest.approx(rocker.rest, abs=1e-8)
    tops = {side: rocker.rolled_height(rocker.top(side)) for side in (1, -1)}
    lift = min(tops.values()) - rocker.rolled_height(rocker.rest)
    assert body.barrier == pytest.approx(MASS * GRAVITY * lift, rel=1e-6, abs=1e-9)
    if abs(tops[1] - tops[-1]) > 1e-9 or rocker.u == 0:
        easier = min(tops, key=tops.__getitem__)
        assert math.radians(body.tip_angle) == pytest.approx(abs(rocker.top(easier)), abs=1e-5)


@given(rockers)
def test_it_is_stable_exactly_where_it_comes_to_rest(rocker: PlainRocker) -> None:
    # A tall rocker with its weight a little too high does not stand upright, and lies leaning: not stable.
    leans = rocker.u == 0 and rocker.rest is not None and abs(rocker.rest) > 1e-9
    assert body_of(rocker).is_stable == (rocker.rest is not None and not leans)


@given(rockers)
def test_the_rolling_limit_is_the_furthest_from_which_it_still_rolls_back(rocker: PlainRocker) -> None:
    body = body_of(rocker)
    assume(rocker.rest is not None and body.balance.rest is not None)
    assert rocker.rest is not None

    def comes_back(amplitude: float) -> bool:
        """Downhill to its rest, and beyond it a hill that is high enough before the first top or the heel."""
        start = rocker.rest + amplitude
        if abs(start) > rocker.heel:
            return False
        height = rocker.height(start)[0]
        far = -math.copysign(rocker.heel, amplitude)
        ahead = [rocker.height(tilt)[0] for tilt in np.linspace(start, rocker.rest, 60)[1:]]
        beyond = np.array([rocker.height(tilt)[0] for tilt in np.linspace(rocker.rest, far, 2000)])
        falls = np.flatnonzero(np.diff(beyond) < 0)
        top = beyond[falls[falls > 0][0]] if np.any(falls > 0) else beyond[-1]
        return max(ahead) < height <= top

    limit = math.radians(body.rolling_limit)
    assert all(comes_back(side * limit * 0.99) for side in (1, -1))
    assert not all(comes_back(side * limit * 1.01) for side in (1, -1))


@given(rockers, some.floats(0.5, 2.0))
def test_the_push_is_the_greatest_that_is_needed_on_the_way_over(rocker: PlainRocker, part: float) -> None:
    body = body_of(rocker)
    assume(rocker.rest is not None and body.balance.rest is not None and body.tip_angle < 80)
    at_height = part * max(rocker.h, rocker.b)
    hardest = min(rocker.hardest_push(side, at_height) for side in (1, -1))
    assert body.push(at_height) == pytest.approx(MASS * GRAVITY * hardest, rel=1e-6)


@given(rockers, some.one_of(some.floats(-6, -1e-6), some.floats(1e-6, 6)))
def test_on_a_slope_it_lies_plumb_over_its_touching_point(rocker: PlainRocker, slope: float) -> None:
    body = body_of(rocker)
    assume(rocker.rest is not None and body.balance.rest is not None)
    try:
        tilt = body.rest_tilt_on_slope(slope)
    except ImpossibleShape as refusal:
        assert "Level the floor" in str(refusal)
        # The weight never comes plumb over the touching point between its rest and where it goes over downhill.
        downhill = math.copysign(1, slope)
        edge = body.balance.high if downhill > 0 else body.balance.low
        for relative in np.linspace(rocker.rest, edge, 200):
            gap = downhill * plumb_gap(rocker, relative, math.radians(slope))
            assert gap < 1e-9
        return
    relative = math.radians(tilt - slope)
    assert abs(relative) <= rocker.heel + 1e-12
    assert plumb_gap(rocker, relative, math.radians(slope)) == pytest.approx(0, abs=1e-9 * rocker.a)


def plumb_gap(rocker: PlainRocker, relative: float, slope: float) -> float:
    """How far the touching point lies to the right of the weight, level, when the floor falls to the right."""
    across, down = rocker.touching(relative)
    turned = relative + slope
    return (across - rocker.u) * math.cos(turned) + (down - rocker.h + rocker.b) * math.sin(turned)


# --- A circle, in closed form ------------------------------------------------------------------------------


@given(some.floats(0.1, 3), some.floats(0.05, 0.95), some.floats(0.2, 0.98))
def test_a_circle_tips_as_elementary_geometry_says(radius: float, part: float, length: float) -> None:
    # The weight hangs (R - h) below a centre that stays R over the floor; past the heel the heel is the pivot.
    height, half = part * radius, length * radius
    body = RockingBody(MASS, height, 0.1, Ellipse(radius, radius), 2 * half)
    below = radius - height
    heel = math.asin(length)
    assert body.heel_angle == pytest.approx(math.degrees(heel), rel=1e-12)
    assert body.rolling_limit == pytest.approx(math.degrees(heel), rel=1e-12)
    assert body.rolling_barrier == pytest.approx(MASS * GRAVITY * below * (1 - math.cos(heel)), rel=1e-9)
    from_heel = math.hypot(half, radius * math.cos(heel) - below)
    assert body.barrier == pytest.approx(MASS * GRAVITY * (from_heel - height), rel=1e-9)
    plumb = math.atan2(half, radius * math.cos(heel) - below)
    assert body.tip_angle == pytest.approx(math.degrees(plumb), abs=1e-6)
    assert body.tip_angle > body.heel_angle


@given(some.floats(0.1, 3), some.floats(0.05, 0.9), some.floats(0.1, 3))
def test_a_circle_on_a_slope_lies_where_the_sines_say(radius: float, part: float, slope: float) -> None:
    # (R - h) sin θ = R sin σ: a loaded cylinder on a slope, in every statics text (from memory).
    body = RockingBody(MASS, part * radius, 0.1, Ellipse(radius, radius), 2 * radius)
    sine = radius * math.sin(math.radians(slope)) / (radius * (1 - part))
    assume(sine < 0.95)
    lies = math.degrees(math.asin(sine))
    assert body.rest_tilt_on_slope(slope) == pytest.approx(lies, rel=1e-9)
    assert body.rest_tilt_on_slope(-slope) == pytest.approx(-lies, rel=1e-9)


@given(some.floats(0.1, 3), some.floats(0.2, 0.9), some.floats(-0.5, 0.5))
def test_a_circle_with_its_weight_aside_lies_where_the_tangent_says(
    radius: float, part: float, aside: float
) -> None:
    # The weight hangs plumb below the circle's centre.
    below = radius * (1 - part)
    body = RockingBody(MASS, part * radius, 0.1, Ellipse(radius, radius), 2 * radius, aside * below)
    assert body.rest_tilt == pytest.approx(math.degrees(math.atan(aside)), rel=1e-9, abs=1e-9)


def test_where_it_lies_on_level_ground_it_lies_on_a_slope_of_nothing() -> None:
    body = RockingBody(MASS, 0.3, 0.1, Ellipse(0.5, 0.3), 0.8, 0.05)
    assert body.rest_tilt_on_slope(0) == body.rest_tilt
    with pytest.raises(
        ImpossibleShape, match=r"On a floor that slopes 40 degrees .* Level the floor, or turn"
    ):
        body.rest_tilt_on_slope(40)


def test_a_tall_rocker_that_leans_goes_over_only_past_its_heel() -> None:
    # With its weight a little over R it lies leaning; the upright stand between is no going over.
    leaning = RockingBody(MASS, 0.25, 0.1, Ellipse(0.3, 0.39), 0.5)
    assert not leaning.is_stable
    assert abs(leaning.rest_tilt) > 1
    assert leaning.tip_angle > leaning.heel_angle
    assert leaning.barrier > leaning.rolling_barrier > 0


# --- At R = h ----------------------------------------------------------------------------------------------


def test_where_the_bottom_is_as_round_as_the_weight_is_high_a_tall_one_stands_and_a_flat_one_does_not() -> (
    None
):
    # R = h = 1/2, 2 and 1.
    tall = RockingBody(MASS, 0.5, 0.1, Ellipse(1.0, 2.0), 1.0)
    flat = RockingBody(MASS, 2.0, 0.1, Ellipse(1.0, 0.5), 1.0)
    circle = RockingBody(MASS, 1.0, 0.1, Ellipse(1.0, 1.0), 1.0)
    assert (tall.stiffness_margin, flat.stiffness_margin, circle.stiffness_margin) == (0, 0, 0)
    assert (tall.is_stable, flat.is_stable, circle.is_stable) == (True, False, False)
    assert tall.height_at(5) > 0.5
    assert flat.height_at(5) < 2.0
    assert circle.height_at(5) == pytest.approx(1.0, rel=1e-15)
    assert tall.rest_tilt == 0
    assert tall.period(4) == pytest.approx(2 * tall.period(8), rel=0.02)
    with pytest.raises(ImpossibleShape, match=r"without end.*bring the weight down"):
        tall.period()


# --- A flat base -------------------------------------------------------------------------------------------

sizes = some.floats(0.05, 3)


@given(sizes, sizes, sizes)
def test_a_flat_base_tips_in_closed_form(height: float, half_width: float, at_height: float) -> None:
    # atan(w/h); mg(√(w² + h²) - h); the push is hardest at the very beginning, mg w/y: any statics text (memory).
    base = FlatBase(MASS, height, half_width)
    assert base.is_stable
    assert base.tip_angle == pytest.approx(math.degrees(math.atan2(half_width, height)), rel=1e-9)
    lift = half_width**2 / (math.hypot(half_width, height) + height)
    assert base.barrier == pytest.approx(MASS * GRAVITY * lift, rel=1e-9)
    assert base.push(at_height) == pytest.approx(MASS * GRAVITY * half_width / at_height, rel=1e-9)


def test_a_flat_base_has_no_period_and_says_why() -> None:
    body = RockingBody(MASS, 0.25, 0.1, Ellipse(0.5, 0.25), 0.5)
    base = body.on_flat_base(0.2)
    assert (base.mass, base.centre_height) == (body.mass, body.centre_height)
    for amplitude in (0, 10):
        with pytest.raises(ImpossibleShape, match=r"does not rock: .* Ask a case on rockers for its period"):
            base.period(amplitude)


@settings(max_examples=30)
@given(some.floats(0.1, 1), some.floats(0.1, 0.9))
def test_a_very_flat_rocker_is_nearly_a_flat_base(half_length: float, height: float) -> None:
    flat = FlatBase(MASS, height, half_length)
    rocker = RockingBody(MASS, height, 0.1, Ellipse(half_length, half_length * 1e-6), 2 * half_length)
    assert rocker.tip_angle == pytest.approx(flat.tip_angle, rel=1e-4)
    assert rocker.barrier == pytest.approx(flat.barrier, rel=1e-3)
