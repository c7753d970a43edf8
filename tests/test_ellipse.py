"""Pins and string draw the ellipse that handbooks describe, and a rocker cut from it is what was asked
for."""

import math
import re
from collections.abc import Callable
from functools import cache

import mpmath
import numpy as np
import pytest
import sympy
from derivation_checks import assert_every_step_follows
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.spatial import ConvexHull

from woodmath import ellipse
from woodmath.derivation import Derivation
from woodmath.ellipse import Ellipse, string_round_discs
from woodmath.errors import ImpossibleShape

halves = st.floats(1 / 64, 2000)
shapes = st.builds(lambda half, shape: Ellipse(half, half * shape), halves, st.floats(0.02, 50))
places = st.floats(-1, 1)
turns = st.floats(0, math.tau)
DERIVATIONS = [getattr(ellipse, name) for name in ellipse.__all__ if name.endswith("derivation")]


def point_of(oval: Ellipse, turn: float) -> tuple[float, float]:
    return oval.half_length * math.cos(turn), oval.half_height * math.sin(turn)


@pytest.mark.parametrize("derive", DERIVATIONS, ids=lambda derive: derive.__name__)
def test_every_step_of_every_derivation_follows(derive: Callable[[], Derivation]) -> None:
    # Nobody asks how long an ellipse is from the slope at a place, and sympy thinks about it for ten seconds.
    slope = derive is ellipse.angle_derivation
    assert_every_step_follows(derive(), not_asked=frozenset({"half_length"} if slope else ()))


def test_the_string_leads_to_the_standard_equation_with_each_squaring_explained() -> None:
    across, up = sympy.symbols("across up", real=True)
    half_length, half_height = sympy.symbols("half_length half_height", positive=True)
    derived = ellipse.derivation()
    # The standard equation of every geometry text (from memory).
    assert derived.result == sympy.Eq(across**2 / half_length**2 + up**2 / half_height**2, 1)
    squarings = [step for step in derived.steps if step.operation is not None and step.operation.widens]
    assert len(squarings) == 2
    assert all("stranger" in step.reason for step in squarings)


# Half-length, half-height, once round. READ: a calculator forum's table, "Perimeter of an Ellipse", in
# nvidia/Nemotron-CC-Math-v1; (10, 5), (5, 3) and (18, 12) are COMP, by the arithmetic-geometric mean.
PERIMETERS = [
    (2, 1, 9.688448220547676, 1e-14),
    (3, 2, 15.8654395893, 1e-11),
    (4, 3, 22.1034921607, 1e-11),
    (5, 4, 28.3616678890, 1e-11),
    (5, 5, 31.4159265359, 1e-11),
    (10, 5, 48.4422411027, 1e-11),
    (5, 3, 25.5269988634, 1e-11),
    (18, 12, 95.1926375357, 1e-11),
]


@pytest.mark.parametrize(("half_length", "half_height", "once_round", "tolerance"), PERIMETERS)
def test_once_round_is_as_published(
    half_length: float, half_height: float, once_round: float, tolerance: float
) -> None:
    assert Ellipse(half_length, half_height).perimeter == pytest.approx(once_round, rel=tolerance)
    assert Ellipse(half_height, half_length).perimeter == pytest.approx(once_round, rel=tolerance)


def ramanujan_one(a: float, b: float) -> float:
    """READ: bambooweb.com, "Circumference"."""
    return math.pi * (3 * (a + b) - math.sqrt((3 * a + b) * (a + 3 * b)))


def ramanujan_two(a: float, b: float) -> float:
    """READ: mathaddict.net, "Ellipse"."""
    h = ((a - b) / (a + b)) ** 2
    return math.pi * (a + b) * (1 + 3 * h / (10 + math.sqrt(4 - 3 * h)))


def test_both_approximations_of_ramanujan_are_the_ones_that_were_published() -> None:
    # COMP, from the two formulas.
    assert ramanujan_one(2, 1) == pytest.approx(9.6884210977, rel=1e-11)
    assert ramanujan_one(3, 2) == pytest.approx(15.8654375756, rel=1e-11)
    assert ramanujan_one(10, 5) == pytest.approx(48.4421054884, rel=1e-11)
    assert ramanujan_two(2, 1) == pytest.approx(9.6884482161, rel=1e-11)
    assert ramanujan_two(10, 5) == pytest.approx(48.4422410807, rel=1e-11)


@given(halves, st.floats(0.5, 2))
def test_once_round_agrees_with_both_approximations_of_ramanujan(half: float, shape: float) -> None:
    oval = Ellipse(half, half * shape)
    assert oval.perimeter == pytest.approx(ramanujan_one(half, half * shape), rel=3e-6)
    assert oval.perimeter == pytest.approx(ramanujan_two(half, half * shape), rel=5e-10)


# Half-length, half-height; pin from the centre, loop, radius at the bottom, radius at the end. COMP.
WHOLE_NUMBERS = [
    (5, 4, 3, 16, 6.25, 3.2),
    (5, 3, 4, 18, 25 / 3, 1.8),
    (13, 5, 12, 50, 33.8, 25 / 13),
]


@pytest.mark.parametrize(("a", "b", "pin", "loop", "at_bottom", "at_end"), WHOLE_NUMBERS)
def test_whole_numbers_come_out_whole(
    a: float, b: float, pin: float, loop: float, at_bottom: float, at_end: float
) -> None:
    oval = Ellipse(a, b)
    assert (oval.focus_distance, oval.loop) == pytest.approx((pin, loop), rel=1e-14)
    assert (oval.radius_at_bottom, oval.radius_at_end) == pytest.approx((at_bottom, at_end), rel=1e-14)
    on_its_end = Ellipse(b, a)
    assert (on_its_end.focus_distance, on_its_end.loop) == pytest.approx((pin, loop), rel=1e-14)
    assert (on_its_end.radius_at_bottom, on_its_end.radius_at_end) == pytest.approx(
        (at_end, at_bottom), rel=1e-14
    )


@given(halves, st.floats(0.01, 0.99))
def test_pins_and_loop_are_those_of_the_workshop_tip(half_length: float, shape: float) -> None:
    # READ: *Fine Woodworking* tip, "A precise method for drawing an ellipse": pins D apart, D the root of
    # L² − H², and a full loop of L + D, with L and H the whole length and height.
    length, height = 2 * half_length, 2 * half_length * shape
    apart = math.sqrt(length**2 - height**2)
    oval = Ellipse(length / 2, height / 2)
    assert oval.pin_spacing == pytest.approx(apart, rel=1e-12)
    assert oval.loop == pytest.approx(length + apart, rel=1e-12)


@given(shapes)
def test_the_loop_is_the_triangle_from_pin_to_pin_to_the_middle_of_the_side(oval: Ellipse) -> None:
    # READ: an old plate of the string construction, etc.usf.edu/clipart, "ellipse with string": the endless
    # string is the outline of the triangle through both pins and the end of the shorter axis.
    (x1, y1), (x2, y2) = oval.pins
    end = (0.0, oval.half_height) if oval.half_length >= oval.half_height else (oval.half_length, 0.0)
    outline = (
        math.hypot(x2 - x1, y2 - y1)
        + math.hypot(end[0] - x1, end[1] - y1)
        + math.hypot(end[0] - x2, end[1] - y2)
    )
    assert oval.loop == pytest.approx(outline, rel=1e-12)


@given(halves, st.floats(0.01, 1))
def test_pins_and_roundness_are_those_of_the_geometry_text(half_length: float, shape: float) -> None:
    # READ: mathaddict.net, "Ellipse": the pins are 2ae apart, b = a times the root of 1 − e², and the width through a
    # pin is 2b²/a, which is twice the radius at the end.
    oval = Ellipse(half_length, half_length * shape)
    eccentricity = oval.pin_spacing / (2 * half_length)
    assert math.sqrt((1 - eccentricity) * (1 + eccentricity)) == pytest.approx(shape, rel=1e-9)
    through_a_pin = 2 * (oval.half_height - oval.height_at(oval.focus_distance))
    assert through_a_pin == pytest.approx(2 * oval.radius_at_end, rel=1e-6)


def test_mixing_up_loop_and_tied_string_is_an_error_of_the_pins_distance() -> None:
    # Tied, the string is as long as the ellipse; the loop goes back between the pins as well.
    oval = Ellipse(13, 5)
    assert oval.tied_string == 26
    assert oval.loop - oval.tied_string == oval.pin_spacing == 24


@given(shapes, turns)
def test_the_two_distances_add_up_to_the_string_all_the_way_round(oval: Ellipse, turn: float) -> None:
    pencil = point_of(oval, turn)
    together = sum(math.dist(pencil, pin) for pin in oval.pins)
    assert together == pytest.approx(oval.tied_string, rel=1e-9)


@given(shapes, places)
def test_height_is_the_same_on_both_sides_and_belongs_to_the_curve(oval: Ellipse, place: float) -> None:
    x = place * oval.half_length
    height = oval.height_at(x)
    assert height == oval.height_at(-x)
    assert 0 <= height <= oval.half_height * (1 + 1e-12)
    from_centre = height - oval.half_height
    assert (x / oval.half_length) ** 2 + (from_centre / oval.half_height) ** 2 == pytest.approx(1, rel=1e-12)


@given(shapes, st.floats(0, 1), st.floats(0, 1))
def test_further_out_is_never_lower_or_flatter(oval: Ellipse, one: float, other: float) -> None:
    nearer, further = sorted((one * oval.half_length, other * oval.half_length))
    assert oval.height_at(nearer) <= oval.height_at(further) * (1 + 1e-14)
    assert oval.angle_at(nearer) <= oval.angle_at(further) * (1 + 1e-14)


@given(shapes)
def test_the_curve_is_level_at_the_bottom_and_plumb_at_its_ends(oval: Ellipse) -> None:
    assert (oval.height_at(0), oval.angle_at(0)) == (0, 0)
    for side in (-1, 1):
        assert oval.height_at(side * oval.half_length) == pytest.approx(oval.half_height, rel=1e-15)
        assert oval.angle_at(side * oval.half_length) == 90 * side


@given(shapes, st.floats(-12, -0.001))
def test_height_keeps_its_figures_close_to_the_bottom(oval: Ellipse, power: float) -> None:
    x = 10**power * oval.half_length
    with mpmath.workdps(60):
        share = mpmath.mpf(x) / mpmath.mpf(oval.half_length)
        exact = mpmath.mpf(oval.half_height) * (1 - mpmath.sqrt(1 - share**2))
    assert oval.height_at(x) == pytest.approx(float(exact), rel=1e-12)


@given(shapes, st.floats(-0.999, 0.999))
def test_the_curve_leans_as_equal_angles_to_both_pins_say(oval: Ellipse, place: float) -> None:
    # The tangent makes equal angles with the lines to both pins (the "whispering gallery" of every geometry text;
    # from memory): nothing of it enters the derivation.
    x = place * oval.half_length
    pencil = (x, oval.height_at(x) - oval.half_height)
    slope = math.radians(oval.angle_at(x))
    along = (math.cos(slope), math.sin(slope))
    pulls = []
    for pin in oval.pins:
        away = math.dist(pin, pencil)
        pulls.append(((pin[0] - pencil[0]) * along[0] + (pin[1] - pencil[1]) * along[1]) / away)
    assert sum(pulls) == pytest.approx(0, abs=1e-5)


@given(shapes, st.floats(-0.99, 0.99))
def test_the_slope_is_the_rise_of_a_short_run(oval: Ellipse, place: float) -> None:
    x, run = place * oval.half_length, 1e-6 * oval.half_length
    rise = oval.height_at(x + run) - oval.height_at(x - run)
    tallness = oval.half_height / oval.half_length
    assert math.tan(math.radians(oval.angle_at(x))) == pytest.approx(
        rise / (2 * run), rel=1e-4, abs=1e-6 * tallness
    )


def circle_through(one: tuple[float, float], two: tuple[float, float], three: tuple[float, float]) -> float:
    a, b, c = math.dist(one, two), math.dist(two, three), math.dist(three, one)
    area = abs((two[0] - one[0]) * (three[1] - one[1]) - (three[0] - one[0]) * (two[1] - one[1])) / 2
    return a * b * c / (4 * area)


@given(shapes)
def test_the_bottom_is_as_round_as_the_circle_through_three_close_points(oval: Ellipse) -> None:
    x = 1e-4 * oval.half_length
    fitted = circle_through((-x, oval.height_at(-x)), (0, 0), (x, oval.height_at(x)))
    assert oval.radius_at_bottom == pytest.approx(fitted, rel=1e-4)
    on_its_end = Ellipse(oval.half_height, oval.half_length)
    assert oval.radius_at_end == on_its_end.radius_at_bottom


@given(shapes)
def test_the_roundness_is_that_of_the_handbooks(oval: Ellipse) -> None:
    # Radius of curvature a²/b at the ends of one axis, b²/a at the ends of the other (handbooks; from memory).
    a, b = oval.half_length, oval.half_height
    assert oval.radius_at_bottom == pytest.approx(a**2 / b, rel=1e-14)
    assert oval.radius_at_end == pytest.approx(b**2 / a, rel=1e-14)


def test_the_bottom_is_not_as_round_as_the_circle_through_chord_and_rise() -> None:
    oval = Ellipse(20, 8)
    rise = oval.height_at(15)
    through_chord_and_rise = circle_through((-15, rise), (0, 0), (15, rise))
    assert oval.radius_at_bottom == 50
    # COMP, from Heron's circle through three points.
    assert through_chord_and_rise == pytest.approx(42.89, abs=0.005)


@given(shapes)
def test_pins_stand_on_the_longer_axis_equally_far_from_the_centre(oval: Ellipse) -> None:
    first, second = oval.pins
    assert first == (-second[0], -second[1])
    assert math.dist(first, second) == oval.pin_spacing
    assert first[0] == 0 if oval.half_height > oval.half_length else first[1] == 0


def test_a_circle_has_both_pins_in_one_hole() -> None:
    circle = Ellipse(7.5, 7.5)
    assert circle.focus_distance == circle.pin_spacing == 0
    assert circle.pins[0] == circle.pins[1]
    assert circle.loop == circle.tied_string == 15
    assert circle.radius_at_bottom == circle.radius_at_end == 7.5


@given(shapes, st.booleans())
def test_the_pins_and_loop_of_an_ellipse_draw_it_again(oval: Ellipse, thick: bool) -> None:
    long, short = max(oval.half_length, oval.half_height), min(oval.half_length, oval.half_height)
    pin_diameter = 0.1 * short if thick else 0.0
    drawn = Ellipse.from_pins(
        oval.pin_spacing,
        oval.loop_round(pin_diameter),
        pin_diameter=pin_diameter,
        upright=oval.half_height > oval.half_length,
    )
    # A flat ellipse's height hangs on the small difference between string and pins.
    tolerance = 1e-13 * (long / short) ** 2 + 1e-12
    assert drawn.half_length == pytest.approx(oval.half_length, rel=tolerance)
    assert drawn.half_height == pytest.approx(oval.half_height, rel=tolerance)


@pytest.mark.parametrize(("pin_spacing", "loop"), [(10, 20), (10, 19), (10, 20 - 1e-9), (3, 0.1)])
def test_pins_too_far_apart_for_the_string_are_refused_in_the_trades_words(
    pin_spacing: float, loop: float
) -> None:
    with pytest.raises(ImpossibleShape, match="cannot be further apart than the string allows") as refused:
        Ellipse.from_pins(pin_spacing, loop)
    assert f"pin spacing {pin_spacing:.6g}" in str(refused.value)


@pytest.mark.parametrize(
    ("pin_spacing", "loop", "pin_diameter"),
    [(-1, 10, 0), (1, -10, 0), (1, math.nan, 0), (1, 10, -0.1), (1, 10, 4)],
)
def test_pins_and_strings_that_cannot_be_are_refused(
    pin_spacing: float, loop: float, pin_diameter: float
) -> None:
    with pytest.raises(ImpossibleShape):
        Ellipse.from_pins(pin_spacing, loop, pin_diameter=pin_diameter)


@given(shapes, st.floats(0.05, 0.99))
def test_a_rocker_gets_the_length_rise_and_roundness_that_were_asked_for(oval: Ellipse, place: float) -> None:
    length, radius = 2 * place * oval.half_length, oval.radius_at_bottom
    rise = oval.height_at(length / 2)
    found = Ellipse.from_rocker(length, rise, radius)
    # The flatter the arc, the less its three sizes tell about the whole ellipse: they tell about the arc.
    assert found.height_at(length / 2) == pytest.approx(rise, rel=1e-9)
    assert found.radius_at_bottom == pytest.approx(radius, rel=1e-12)
    assert found.half_height == pytest.approx(oval.half_height, rel=1e-14 / place**4 + 1e-12)


@given(halves, st.floats(0.02, 50))
def test_a_rocker_may_be_the_whole_lower_half(half_length: float, shape: float) -> None:
    oval = Ellipse(half_length, half_length * shape)
    found = Ellipse.from_rocker(2 * half_length, oval.half_height, oval.radius_at_bottom)
    assert found == oval
    assert found.height_at(half_length) == pytest.approx(oval.half_height, rel=1e-15)


@pytest.mark.parametrize("short_of_it", [2.0026017794928177e-09, 5.832497894708107e-09, 1e-8, 1e-7])
@given(st.floats(1, 100), st.floats(0.5, 50))
def test_a_rocker_may_be_almost_the_whole_lower_half(
    short_of_it: float, half_chord: float, rise: float
) -> None:
    radius = half_chord**2 / rise / (1 + short_of_it)
    found = Ellipse.from_rocker(2 * half_chord, rise, radius)
    # So near its end the curve is all but plumb, and a rounding error of the length is a mark of the height.
    assert found.height_at(half_chord) == pytest.approx(rise, rel=1e-6)
    assert found.radius_at_bottom == pytest.approx(radius, rel=1e-9)


@given(halves, st.floats(0.01, 0.99))
def test_a_rocker_on_a_circle_is_found_from_chord_and_rise(radius: float, share: float) -> None:
    # The circle through chord and rise: R = (l² + s²) / 2s (the sagitta rule of every pocketbook; from memory).
    half_chord = share * radius
    rise = radius - math.sqrt(radius**2 - half_chord**2)
    assume(rise > 1e-6 * radius)
    through = (half_chord**2 + rise**2) / (2 * rise)
    found = Ellipse.from_rocker(2 * half_chord, rise, through)
    assert (found.half_length, found.half_height) == pytest.approx((through, through), rel=1e-6)


LENGTHS = r"a length from (\S+) to less than (\S+), or a rise of more than (\S+) and up to (\S+), or a radius at the "
LENGTHS += r"bottom of more than (\S+) and up to (\S+)\.$"


@pytest.mark.parametrize(
    ("length", "rise", "radius", "fault"),
    [
        (30, 2, 120, "too flat"),
        (30, 2, 56.25, "too round"),
        (30, 2, 20, "too round"),
        (12, 4, 9.001, "too flat"),
    ],
)
def test_a_rocker_that_cannot_be_is_refused_with_what_would_do(
    length: float, rise: float, radius: float, fault: str
) -> None:
    with pytest.raises(ImpossibleShape, match=fault) as refused:
        Ellipse.from_rocker(length, rise, radius)
    told = re.search(LENGTHS, str(refused.value))
    assert told is not None
    shortest, longest, lowest, highest, roundest, flattest = map(float, told.groups())
    inside, outside = 1 + 1e-5, 1 - 1e-5
    for changed in (
        (shortest * inside, rise, radius),
        (longest * outside, rise, radius),
        (length, lowest * inside, radius),
        (length, highest * outside, radius),
        (length, rise, roundest * inside),
        (length, rise, flattest * outside),
    ):
        found = Ellipse.from_rocker(*changed)
        assert found.height_at(changed[0] / 2) == pytest.approx(changed[1], rel=1e-3)
    for changed in (
        (shortest * outside, rise, radius),
        (longest * inside, rise, radius),
        (length, lowest * outside, radius),
        (length, highest * inside, radius),
        (length, rise, roundest * outside),
        (length, rise, flattest * inside),
    ):
        with pytest.raises(ImpossibleShape):
            Ellipse.from_rocker(*changed)


@given(st.floats(1, 500), st.floats(0.1, 500), st.floats(0.1, 5000))
def test_there_is_a_rocker_exactly_when_the_rule_says_so(length: float, rise: float, radius: float) -> None:
    squared = (length / 2) ** 2
    assume(all(abs(squared / (rise * radius) - bound) > 1e-6 for bound in (1, 2)))
    try:
        Ellipse.from_rocker(length, rise, radius)
        found = True
    except ImpossibleShape:
        found = False
    assert found == (rise * radius <= squared < 2 * rise * radius)


@pytest.mark.parametrize(("length", "rise", "radius"), [(0, 1, 1), (1, -1, 1), (1, 1, 0), (math.inf, 1, 1)])
def test_a_rocker_without_a_size_is_refused(length: float, rise: float, radius: float) -> None:
    with pytest.raises(ImpossibleShape):
        Ellipse.from_rocker(length, rise, radius)


@given(shapes, turns, st.floats(0, 1))
def test_pins_and_pencil_equally_thick_draw_the_same_ellipse_with_one_loop(
    oval: Ellipse, turn: float, thickness: float
) -> None:
    thick = thickness * min(oval.half_length, oval.half_height)
    needed = oval.string_round(*point_of(oval, turn), pin_diameter=thick, pencil_diameter=thick)
    assert needed == pytest.approx(oval.loop_round(thick), rel=1e-9)
    # The belt round equal pulleys: its straight runs, and once round one of them (from memory).
    assert oval.loop_round(thick) == pytest.approx(
        2 * max(oval.half_length, oval.half_height) + oval.pin_spacing + math.pi * thick
    )


def test_a_thin_pencil_with_thick_pins_asks_for_more_string_over_the_middle_than_at_the_ends() -> None:
    oval = Ellipse(13, 5)
    over_the_middle = oval.string_round(0, 5, pin_diameter=0.125, pencil_diameter=0)
    at_the_end = oval.string_round(13, 0, pin_diameter=0.125, pencil_diameter=0)
    assert over_the_middle > at_the_end + 0.1


@cache
def rim() -> np.ndarray:
    angles = np.linspace(0, math.tau, 4000, endpoint=False)
    return np.column_stack((np.cos(angles), np.sin(angles)))


disc_places = st.tuples(st.floats(-10, 10), st.floats(-10, 10), st.floats(0.01, 8))


@settings(max_examples=60)
@given(st.lists(disc_places, min_size=1, max_size=4))
def test_a_taut_string_is_the_outline_of_the_discs_together(discs: list[tuple[float, float, float]]) -> None:
    rims = np.vstack([np.array((x, y)) + diameter / 2 * rim() for x, y, diameter in discs])
    # In the plane scipy calls the outline's length "area".
    assert string_round_discs(*discs) == pytest.approx(ConvexHull(rims).area, rel=1e-5)


@given(st.floats(1, 8), st.floats(0.05, 1), st.floats(1.05, 20))
def test_a_taut_string_round_two_discs_is_the_open_belt_of_the_handbooks(
    large: float, share: float, apart: float
) -> None:
    small, centres = large * share, large * apart
    # Open belt round two pulleys, exact: 2C cos p + pi (D + d) / 2 + (D − d) p, sin p = (D − d) / 2C (from memory).
    lean = math.asin((large - small) / (2 * centres))
    belt = 2 * centres * math.cos(lean) + math.pi * (large + small) / 2 + (large - small) * lean
    assert string_round_discs((0, 0, large), (centres, 0, small)) == pytest.approx(belt, rel=1e-12)


@pytest.mark.parametrize("disc", [(0, 0, -1), (math.nan, 0, 1), (0, math.inf, 1)])
def test_a_disc_that_cannot_lie_on_the_board_is_refused(disc: tuple[float, float, float]) -> None:
    with pytest.raises(ImpossibleShape, match="cannot lie on the board"):
        string_round_discs((0, 0, 1), disc)


@pytest.mark.parametrize(
    ("half_length", "half_height"), [(0, 1), (1, 0), (-2, 1), (1, math.nan), (math.inf, 1)]
)
def test_an_ellipse_without_length_or_height_is_refused(half_length: float, half_height: float) -> None:
    with pytest.raises(ImpossibleShape, match="must be more than 0"):
        Ellipse(half_length, half_height)


@given(shapes, st.floats(1.0000001, 100))
def test_beyond_its_ends_the_ellipse_has_neither_height_nor_slope(oval: Ellipse, out: float) -> None:
    for ask in (oval.height_at, oval.angle_at):
        with pytest.raises(ImpossibleShape, match="reaches half its length"):
            ask(-out * oval.half_length)


@given(shapes, st.floats(-720, 720))
def test_every_point_keeps_the_length_of_the_string(ellipse: Ellipse, turn: float) -> None:
    kept = sum(math.dist(ellipse.point(turn), pin) for pin in ellipse.pins)
    assert kept == pytest.approx(ellipse.tied_string, rel=1e-9)


@given(shapes, st.floats(0.01, 1.0))
def test_the_lower_arc_goes_from_heel_to_heel_through_the_lowest_point(
    ellipse: Ellipse, share: float
) -> None:
    half_chord = ellipse.half_length * share
    arc = ellipse.lower_arc(2 * half_chord, pieces=20)
    assert arc[10] == (0.0, 0.0)
    assert (arc[0][0], arc[-1][0]) == pytest.approx((-half_chord, half_chord))
    for x, height in arc:
        seen = (x / ellipse.half_length) ** 2 + (height / ellipse.half_height - 1) ** 2
        assert seen == pytest.approx(1, abs=1e-9)
