"""The end of a board that moves: marched along its rings step by step, and held to what every bench knows of it."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import assume, example, given
from hypothesis import strategies as some

from woodmath.errors import ImpossibleShape
from woodmath.outlines import Point, Points
from woodmath.ring_section import RingSection, heart_for, ring_derivation

DRY = (-0.04, -0.02)
DAMP = (0.04, 0.02)
FAR = 4000.0

SIZES = some.floats(0.5, 12)
GROWTHS = some.floats(-0.3, 0.3)
RINGS = some.floats(0, 90)
PLACES = some.floats(-1, 1)


def section(
    rings: float = 0.0,
    distance: float = 6.0,
    size: tuple[float, float] = (8.0, 1.0),
    growth: tuple[float, float] = DRY,
) -> RingSection:
    return RingSection(*size, heart_for(rings, distance), *growth)


def area(outline: Points) -> float:
    return sum(x * v - u * y for (x, y), (u, v) in itertools.pairwise((*outline, outline[0]))) / 2


def crossings(outline: Points) -> int:
    """Count how often an outline crosses itself."""

    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    edges = list(itertools.pairwise((*outline, outline[0])))
    return sum(
        side(*one, other[0]) * side(*one, other[1]) < -1e-14
        and side(*other, one[0]) * side(*other, one[1]) < -1e-14
        for one, other in itertools.combinations(edges, 2)
    )


def marched(of: RingSection, point: Point, steps: int = 4000) -> Point:
    """Return where a point comes to lie, by walking: up the ray through the middle, then along the point's ring.

    On the ring every step is longer or shorter by the ring's growth, and turns as much as a ring asks whose radius
    has gone by the ray's growth. Nothing is known here of a fan.
    """
    heart_x, heart_y = of.heart
    away = math.atan2(-heart_y, -heart_x)
    radius = math.dist(of.heart, point)
    span = math.remainder(math.atan2(point[1] - heart_y, point[0] - heart_x) - away, 2 * math.pi)
    new_radius = radius * (1 + of.ray_growth)
    step = radius * span / steps * (1 + of.ring_growth)
    ahead = away + math.pi / 2
    x, y = new_radius * math.cos(away), new_radius * math.sin(away)
    for _ in range(steps):
        ahead += step / new_radius / 2
        x, y = x + step * math.cos(ahead), y + step * math.sin(ahead)
        ahead += step / new_radius / 2
    middle = math.hypot(heart_x, heart_y) * (1 + of.ray_growth)
    return (x - middle * math.cos(away), y - middle * math.sin(away))


def test_every_step_follows() -> None:
    assert_every_step_follows(ring_derivation())


@pytest.mark.parametrize(
    ("growth", "distance"),
    [
        (growth, distance)
        for growth in (DRY, DAMP, (-0.1, 0.02), (0.1, 0.1))
        for distance in (0.7, 2, 9)
        # At 0.7 the heart is in it, and round a heart a swelling ring cannot open.
        if (growth, distance) != (DAMP, 0.7)
    ],
)
@pytest.mark.parametrize("rings", [0, 30, 90])
def test_every_corner_comes_to_lie_where_a_walk_along_its_ring_leads(
    growth: tuple[float, float], rings: float, distance: float
) -> None:
    of = section(rings, distance, (3.0, 2.0), growth)
    for point in (*of.corners, (0.3, -0.4), (0.0, 0.0)):
        assert of.moved(point) == pytest.approx(marched(of, point), abs=1e-5)


@given(PLACES, PLACES, SIZES, SIZES, PLACES, PLACES, GROWTHS)
def test_wood_that_grew_alike_in_both_directions_would_only_become_larger(
    heart_x: float, heart_y: float, width: float, thickness: float, x: float, y: float, growth: float
) -> None:
    of = RingSection(width, thickness, (9 * heart_x, 9 * heart_y), growth, growth)
    point = (x * width / 2, y * thickness / 2)
    larger = (point[0] * (1 + growth), point[1] * (1 + growth))
    assert of.moved(point) == pytest.approx(larger, abs=1e-9)
    assert of.cup == pytest.approx(0.0, abs=1e-9)
    assert of.out_of_square == pytest.approx(0.0, abs=1e-6)
    assert of.new_width == pytest.approx(width * (1 + growth))


def test_a_flat_sawn_board_that_dries_goes_hollow_on_the_face_away_from_the_heart_and_swelling_makes_it_round() -> (
    None
):
    # Common knowledge of the trade, as in the Wood Handbook's figure of shapes cut from a log (from memory).
    heart_below, heart_above = section(), replace(section(), heart=(0.0, 6.0))
    assert heart_below.cup > 0 > heart_above.cup
    assert replace(heart_below, ring_growth=0.04, ray_growth=0.02).cup < 0
    # Seen in the points as well: the edges of the upper face stand above its middle, or below it.
    for of, sign in ((heart_below, 1), (section(growth=DAMP), -1)):
        edge, middle = of.moved((4.0, 0.5))[1], of.moved((0.0, 0.5))[1]
        assert math.copysign(1, edge - middle) == sign


@given(
    some.floats(0.5, 3), some.floats(12, 60), some.tuples(some.floats(-0.05, 0.05), some.floats(-0.05, 0.05))
)
def test_a_flat_sawn_board_cups_by_the_square_of_its_width_over_four_times_the_distance_of_its_heart(
    width: float, distance: float, growth: tuple[float, float]
) -> None:
    # Worked out beside the code for a board that is narrow against its distance: a fan's opening, by Taylor.
    assume(abs(growth[0] - growth[1]) > 1e-3)
    of = RingSection(width, 0.1, (0.0, -distance), *growth)
    upper = distance + 0.05
    first_order = (growth[1] - growth[0]) * width**2 / (4 * upper)
    assert of.cup == pytest.approx(first_order, rel=0.15)


@pytest.mark.parametrize("growth", [DRY, DAMP])
def test_on_the_quarter_a_board_stays_flat_and_moves_by_the_lesser_figure(
    growth: tuple[float, float],
) -> None:
    flat, quarter = (section(rings, 6.0, growth=growth) for rings in (0, 90))
    assert abs(quarter.cup) < abs(flat.cup) / 20
    quarter, flat = (section(rings, FAR, growth=growth) for rings in (90, 0))
    assert abs(quarter.cup) < 1e-4 and abs(flat.cup) < 1e-3
    assert quarter.new_width == pytest.approx(8 * (1 + growth[1]), rel=1e-4)
    assert flat.new_width == pytest.approx(8 * (1 + growth[0]), rel=1e-4)


def test_a_square_becomes_a_diamond_most_at_45_degrees_and_not_at_all_flat_or_on_the_quarter() -> None:
    leans = {
        rings: abs(section(rings, FAR, (2.0, 2.0)).out_of_square) for rings in (0, 15, 30, 45, 60, 75, 90)
    }
    assert max(leans, key=leans.__getitem__) == 45
    assert leans[0] < 0.01 and leans[90] < 0.01
    for rings, lean in leans.items():
        # Plane geometry, small strains: two directions that differ by e shear a square by e times the double's sine.
        assert lean == pytest.approx(
            math.degrees(abs(DRY[0] - DRY[1]) * math.sin(math.radians(2 * rings))), abs=0.05
        )
    both = section(45, FAR, (2.0, 2.0))
    across = math.dist(both.moved((0.0, -1.0)), both.moved((0.0, 1.0)))
    assert both.new_width == pytest.approx(across, rel=1e-6)


@given(RINGS, some.floats(0.0, 20.0), SIZES, SIZES, GROWTHS, GROWTHS)
def test_the_area_changes_by_both_growths_and_nothing_else(
    rings: float, distance: float, width: float, thickness: float, ring: float, ray: float
) -> None:
    of = RingSection(width, thickness, heart_for(rings, distance), ring, ray)
    assume(not of.has_heart)
    # With the heart a hair away from the edge, a corner's stretches no longer follow the curve.
    assume(distance > 0.75 * math.hypot(width, thickness))
    assert area(of.outline) == pytest.approx(width * thickness * (1 + ring) * (1 + ray), rel=0.004)


@given(some.floats(0.2, 9), some.floats(0.05, 5.9), GROWTHS, GROWTHS, RINGS)
def test_along_a_ring_wood_gains_the_one_figure_and_along_a_ray_the_other(
    radius: float, span: float, ring: float, ray: float, rings: float
) -> None:
    of = section(rings, 6.0, growth=(ring, ray))
    away = math.atan2(-of.heart[1], -of.heart[0])

    def at(far: float, turn: float) -> Point:
        return (of.heart[0] + far * math.cos(away + turn), of.heart[1] + far * math.sin(away + turn))

    def length(points: list[Point]) -> float:
        return sum(math.dist(*pair) for pair in itertools.pairwise(points))

    along = [at(radius, span * (step / 2000 - 0.5)) for step in range(2001)]
    assert length(list(map(of.moved, along))) == pytest.approx(length(along) * (1 + ring), rel=1e-5)
    outward = [at(radius * step / 10, 0.4 * span) for step in range(11)]
    assert length(list(map(of.moved, outward))) == pytest.approx(radius * (1 + ray), rel=1e-9)


# --- the heart in it ---

INSIDE = [
    (0.0, 0.0),
    (0.0, -0.2),
    (0.2, 0.0),
    (-0.3, 0.0),
    (-0.3, -0.0),
    (0.4, 0.2),
    (-0.4, -0.2),
    heart_for(90, 0.3),
    heart_for(45, 0.25),
    heart_for(35, 0.4),
]
"""Hearts in a section 2 by 1, some with the split through a point of the outline or through a corner."""
ON_THE_EDGE = [(0.0, 0.5), (0.0, -0.5), (1.0, 0.0), (-1.0, 0.0), (1.0, 0.5), (-1.0, -0.5), heart_for(90, 1.0)]


@pytest.mark.parametrize("heart", INSIDE)
def test_with_the_heart_in_it_a_drying_section_is_one_outline_round_a_split(heart: Point) -> None:
    of = RingSection(2.0, 1.0, heart, *DRY)
    assert of.has_heart
    outline = of.outline
    assert crossings(outline) == 0
    assert area(outline) == pytest.approx(2 * (1 + DRY[0]) * (1 + DRY[1]), rel=0.002)
    # It begins at the heart; from there the two sides of the split part by what a whole ring lacks.
    assert outline[0] == pytest.approx(of.moved(heart))
    one, other = outline[1], outline[-1]
    reach = math.dist(one, outline[0])
    assert math.dist(other, outline[0]) == pytest.approx(reach)
    lacks = 2 * math.pi * (1 - (1 + DRY[0]) / (1 + DRY[1]))
    assert math.dist(one, other) == pytest.approx(2 * reach * math.sin(lacks / 2), rel=1e-5)


@pytest.mark.parametrize("heart", INSIDE)
def test_with_the_heart_in_it_a_swelling_section_opens_nowhere_and_does_not_lie_over_itself(
    heart: Point,
) -> None:
    of = RingSection(2.0, 1.0, heart, *DAMP)
    assert crossings(of.outline) == 0
    assert area(of.outline) == pytest.approx(2 * (1 + DAMP[0]) * (1 + DAMP[1]), rel=0.002)


@pytest.mark.parametrize("heart", ON_THE_EDGE)
def test_a_heart_on_the_very_edge_splits_nothing_off(heart: Point) -> None:
    of = RingSection(2.0, 1.0, heart, *DRY)
    assert crossings(of.outline) == 0
    assert area(of.outline) == pytest.approx(2 * (1 + DRY[0]) * (1 + DRY[1]), rel=0.005)


@pytest.mark.parametrize("side", [2.0, 3.0])
@pytest.mark.parametrize("rings", [0, 45, 90])
@pytest.mark.parametrize("growth", [DRY, DAMP])
def test_in_a_section_with_the_heart_no_ring_is_drawn_across_the_split(
    side: float, rings: float, growth: tuple[float, float]
) -> None:
    of = RingSection(side, side, heart_for(rings, 0.25), *growth)
    for radius in (0.2, 0.5, 0.9, 1.1):
        for stretch in of.ring_as_sawn(radius, 40):
            for (one, other), (moved, beside) in zip(
                itertools.pairwise(stretch), itertools.pairwise(map(of.moved, stretch)), strict=True
            ):
                grown = math.dist(moved, beside) / math.dist(one, other)
                # Swelling round a heart takes a mean of both figures, where nothing can open.
                assert grown == pytest.approx(1 + growth[0], abs=0.015)


# --- rings in the section ---


@given(SIZES, SIZES, some.floats(-10, 10), some.floats(-10, 10), some.floats(0.05, 20))
@example(2.0, 1.0, 0.0, 0.0, 0.3)
@example(2.0, 1.0, 0.0, 0.0, 0.5)
@example(2.0, 1.0, -5.0, 0.0, 4.0)
def test_the_stretches_of_a_ring_lie_on_it_and_in_the_wood_and_are_all_of_it(
    width: float, thickness: float, heart_x: float, heart_y: float, radius: float
) -> None:
    of = RingSection(width, thickness, (heart_x, heart_y), *DRY)
    stretches = of.ring_as_sawn(radius, 60)
    for x, y in itertools.chain.from_iterable(stretches):
        assert math.dist((x, y), of.heart) == pytest.approx(radius)
        assert abs(x) <= width / 2 + 1e-8 and abs(y) <= thickness / 2 + 1e-8
    tried = 4000
    turns = (2 * math.pi * (step + 0.5) / tried for step in range(tried))
    within = sum(
        abs(heart_x + radius * math.cos(turn)) < width / 2
        and abs(heart_y + radius * math.sin(turn)) < thickness / 2
        for turn in turns
    )
    spans = sum(
        2 * math.asin(min(1.0, math.dist(one, other) / 2 / radius))
        for stretch in stretches
        for one, other in itertools.pairwise(stretch)
    )
    assert spans / (2 * math.pi) == pytest.approx(within / tried, abs=10 / tried)


@pytest.mark.parametrize(
    ("heart", "radius"), [((0.0, -6.0), 5.4), ((0.0, -6.0), 9.0), ((0.0, 0.0), 4.2), ((50.0, 0.0), 3.0)]
)
def test_a_ring_that_does_not_meet_the_section_has_no_stretch_in_it(heart: Point, radius: float) -> None:
    assert RingSection(8.0, 1.0, heart, *DRY).ring_as_sawn(radius) == ()


def test_a_ring_within_the_section_is_there_once_and_whole() -> None:
    of = RingSection(3.0, 2.0, (0.2, 0.1), *DRY)
    steps = [*itertools.chain.from_iterable(map(itertools.pairwise, of.ring_as_sawn(0.5)))]
    assert sum(math.dist(*pair) for pair in steps) == pytest.approx(math.pi, rel=1e-2)


# --- extremes ---


@given(
    some.floats(1e-3, 1e4),
    some.floats(1e-3, 1e4),
    some.floats(-1e4, 1e4),
    some.floats(-1e4, 1e4),
    some.floats(-0.9, 0.9),
    some.floats(-0.9, 0.9),
    some.floats(1e-3, 1e4),
)
@example(1.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.5)
@example(1.0, 1.0, 0.5, 0.5, -0.9, 0.9, 0.5)
@example(1.0, 1.0, 0.5, 0.0, 0.9, -0.9, 1.0)
def test_no_section_gives_a_number_that_is_none(
    width: float, thickness: float, x: float, y: float, ring: float, ray: float, radius: float
) -> None:
    of = RingSection(width, thickness, (x, y), ring, ray)
    numbers = [of.new_width, of.cup, of.out_of_square]
    numbers += itertools.chain.from_iterable(of.outline)
    numbers += itertools.chain.from_iterable(itertools.chain.from_iterable(of.ring_as_sawn(radius)))
    assert all(map(math.isfinite, numbers))


@pytest.mark.parametrize("size", [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0), (math.nan, 1.0)])
def test_a_section_without_a_size_is_refused_with_what_to_give(size: tuple[float, float]) -> None:
    with pytest.raises(ImpossibleShape, match="Give it a width and a thickness"):
        RingSection(*size, (0.0, -6.0), *DRY)


@given(RINGS, some.floats(0, 100))
def test_the_heart_lies_square_to_its_rings_and_at_its_distance(rings: float, distance: float) -> None:
    x, y = heart_for(rings, distance)
    assert math.hypot(x, y) == pytest.approx(distance)
    # The ring through the middle is square to the way to the heart.
    along = (math.cos(math.radians(rings)), -math.sin(math.radians(rings)))
    assert x * along[0] + y * along[1] == pytest.approx(0.0, abs=1e-9 * (1 + distance))
