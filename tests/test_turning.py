"""From square to round: the lines agree with what is published, with plain geometry, and with other ways to work."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from itertools import pairwise

import pytest
import sympy
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.largest_round import best_round, largest_round
from woodmath.solids import area
from woodmath.turned_profile import RUNS, Station, TurnedProfile
from woodmath.turned_volumes import stretch_volume, volume_formula
from woodmath.turning import (
    compass_derivation,
    corner_beyond_round,
    corner_derivation,
    doubling_derivation,
    doubling_setting,
    flat_derivation,
    flat_of,
    octagon_derivation,
    octagon_setting,
    off_centre_derivation,
    polygon,
    sixteen_derivation,
    sixteen_setting,
)

lengths = st.floats(1 / 4, 300)
diameters = st.floats(0.05, 10)
runs = st.sampled_from(RUNS)


@pytest.mark.parametrize(
    ("derived", "not_asked"),
    [
        (doubling_derivation, {"sides"}),
        (octagon_derivation, set()),
        (compass_derivation, set()),
        (flat_derivation, {"sides"}),
        (sixteen_derivation, set()),
        (corner_derivation, {"sides"}),
        (off_centre_derivation, set()),
    ],
)
def test_every_step_of_turning_follows(derived: Callable[[], Derivation], not_asked: set[str]) -> None:
    assert_every_step_follows(derived(), frozenset(not_asked))


# Regular sections about a round of diameter 1: the flat, and the corner's distance from the middle. From memory: the
# tables of regular polygons in handbooks, sides of the circumscribed polygon 1 (square), 0.57735 (hexagon), 0.41421
# (octagon), 0.32492 (ten), 0.26795 (twelve), 0.19891 (sixteen), for an inscribed circle of diameter 1.
FLATS = {4: 1.0, 6: 0.57735, 8: 0.41421, 10: 0.32492, 12: 0.26795, 16: 0.19891}


@pytest.mark.parametrize(("sides", "flat"), FLATS.items())
def test_the_flats_are_those_of_the_tables(sides: int, flat: float) -> None:
    assert flat_of(sides, 1.0) == pytest.approx(flat, abs=6e-6)


@settings(deadline=None)
@given(lengths)
def test_an_octagons_sides_are_equal(square: float) -> None:
    setting = octagon_setting(square)
    half = square / 2
    # The eight points that the gauge marks on the square, joined round.
    points = [
        (half - setting, -half), (half, setting - half), (half, half - setting), (half - setting, half),
        (setting - half, half), (-half, half - setting), (-half, setting - half), (setting - half, -half),
    ]  # fmt: skip
    sides = [math.dist(one, other) for one, other in zip(points, (*points[1:], points[0]), strict=True)]
    assert sides == pytest.approx([sides[0]] * 8)
    assert sides[0] == pytest.approx(flat_of(8, square))
    # And so are its angles: each corner turns the way by 45 degrees (plane geometry).
    assert [math.dist(point, (0, 0)) for point in points] == pytest.approx([math.dist(points[0], (0, 0))] * 8)


@settings(deadline=None)
@given(lengths)
def test_sixteen_sides_are_equal_too(square: float) -> None:
    octagon, setting = polygon(8, square), sixteen_setting(square)
    points: list[tuple[float, float]] = []
    for (x, y), (s, t) in zip(octagon, (*octagon[1:], octagon[0]), strict=True):
        share = setting / math.dist((x, y), (s, t))
        points += [(x + part * (s - x), y + part * (t - y)) for part in (share, 1 - share)]
    sides = [math.dist(one, other) for one, other in zip(points, (*points[1:], points[0]), strict=True)]
    assert sides == pytest.approx([sides[0]] * 16)
    assert sides[0] == pytest.approx(flat_of(16, square))


def test_the_octagon_of_a_square_is_as_a_geometry_text_has_it() -> None:
    # From memory, plane geometry: in a square of side s the octagon's side is s (√2 − 1), and its area 2 (√2 − 1) s².
    assert sympy.simplify(
        octagon_derivation().result.rhs / octagon_derivation().quantity("square").symbol
    ) == (1 - sympy.sqrt(2) / 2)
    assert flat_of(8, 3.0) == pytest.approx(3 * (math.sqrt(2) - 1))
    assert area(polygon(8, 3.0)) == pytest.approx(2 * (math.sqrt(2) - 1) * 9)
    # Eight flats and eight triangles make up the square: s² less four corners of y²/2 each.
    assert area(polygon(8, 3.0)) == pytest.approx(9 - 2 * octagon_setting(3.0) ** 2)


def test_the_old_rule_of_seven_ten_seven_is_out_by_less_than_half_a_hundredth() -> None:
    # Common practice: 24 parts across the face, lines at 7 and at 17.
    setting = octagon_setting(24.0)
    assert setting == pytest.approx(7.029437, abs=1e-6)
    assert abs(7 / setting - 1) < 0.005


@settings(deadline=None)
@given(lengths)
def test_a_compass_from_the_far_corner_to_the_middle_finds_the_same_line(square: float) -> None:
    assert square - octagon_setting(square) == pytest.approx(math.dist((0, 0), (square / 2, square / 2)))


@settings(deadline=None)
@given(lengths, st.sampled_from((4, 8, 16, 32)))
def test_a_doubled_section_about_the_same_round_leaves_a_fifth_or_less_at_its_corners(
    diameter: float, sides: int
) -> None:
    before, after = (corner_beyond_round(count, diameter) for count in (sides, 2 * sides))
    # From the square a fifth, and a quarter in the end: 1/cos x − 1 goes by x² (calculus).
    assert 0.19 < after / before < 0.25
    assert polygon(sides, diameter)[0][0] ** 2 + polygon(sides, diameter)[0][1] ** 2 == pytest.approx(
        (diameter / 2 + before) ** 2
    )


@settings(deadline=None)
@given(st.integers(3, 40), lengths)
def test_what_is_left_of_the_flat_is_as_wide_as_the_new_one(sides: int, flat: float) -> None:
    setting = doubling_setting(sides, flat)
    # The new flat by the law of cosines, in the triangle that falls away.
    corner = math.pi - 2 * math.pi / sides
    new = math.sqrt(2 * setting**2 - 2 * setting**2 * math.cos(corner))
    assert flat - 2 * setting == pytest.approx(new)


def test_a_formula_altered_on_purpose_makes_no_octagon() -> None:
    thirds = [3.0 - 2 * 1.0, 1.0 * math.sqrt(2)]
    assert abs(thirds[0] - thirds[1]) > 0.4


@settings(deadline=None)
@given(st.lists(st.tuples(st.floats(0, 3), diameters, runs), min_size=2, max_size=9))
def test_the_volume_is_what_an_integrator_finds(drawn: list[tuple[float, float, str]]) -> None:
    places = sorted(place for place, _, _ in drawn)
    if places[-1] - places[0] < 1e-3:
        return
    profile = TurnedProfile(
        tuple(Station(place, thick, run) for place, (_, thick, run) in zip(places, drawn, strict=True))
    )
    summed = 0.0
    for one, other in pairwise(profile.stations):
        if other.place - one.place > 1e-9:
            one_stretch = TurnedProfile((one, other))

            def disc(x: float, stretch: TurnedProfile = one_stretch) -> float:
                return math.pi * stretch.diameter_at(min(max(x, stretch.start), stretch.end)) ** 2 / 4

            summed += quad(disc, one.place, other.place, limit=200)[0]
    assert profile.volume == pytest.approx(summed, rel=1e-5, abs=1e-9)
    slices = profile.slices(6)
    assert math.fsum(math.pi * r * r * (high - low) for low, high, r in slices) == pytest.approx(
        profile.volume, rel=1e-9
    )


def test_solids_of_revolution_hold_what_the_texts_say() -> None:
    # Archimedes: a ball holds two thirds of the cylinder about it. A cone holds a third (Euclid XII. 10).
    assert 2 * stretch_volume("round", 2.0, 0.0, 1.0) == pytest.approx(4 / 3 * math.pi)
    assert stretch_volume("straight", 2.0, 0.0, 3.0) == pytest.approx(math.pi)
    # Pappus: a quarter of a disc of radius 1 has its centre 4/(3π) from its straight sides; turned about an axis 1
    # away from one of them it sweeps the inner half of a ring (from memory).
    swept = 2 * math.pi * (2 - 4 / (3 * math.pi)) * math.pi / 4
    assert stretch_volume("hollow", 4.0, 2.0, 1.0) == pytest.approx(math.pi * 4 - swept)


@settings(deadline=None)
@given(diameters, diameters, runs, st.floats(0.01, 5))
def test_a_stretch_lies_between_its_two_diameters(one: float, other: float, run: str, length: float) -> None:
    profile = TurnedProfile((Station(0, one, run), Station(length, other)))
    for share in (0.0, 0.1, 0.5, 0.9, 1.0):
        assert min(one, other) - 1e-9 <= profile.diameter_at(share * length) <= max(one, other) + 1e-9
    assert profile.diameter_at(0) == pytest.approx(one) and profile.diameter_at(length) == pytest.approx(
        other
    )
    # A bead is fuller than the taper, a cove leaner, whichever way it runs.
    middle = profile.diameter_at(length / 2)
    fuller = {"round": 1, "hollow": -1, "straight": 0}[run]
    assert fuller * (middle - (one + other) / 2) >= -1e-9
    back = TurnedProfile((Station(0, other, run), Station(length, one)))
    assert back.volume == pytest.approx(profile.volume)


def test_half_a_bead_is_level_at_its_crest_and_half_a_cove_at_its_bottom() -> None:
    bead = TurnedProfile((Station(0, 1, "round"), Station(1, 2)))
    cove = TurnedProfile((Station(0, 2, "hollow"), Station(1, 1)))
    assert (
        bead.diameter_at(1) - bead.diameter_at(0.999) < 1e-5 < bead.diameter_at(0.001) - bead.diameter_at(0)
    )
    assert (
        cove.diameter_at(0.999) - cove.diameter_at(1) < 1e-5 < cove.diameter_at(0) - cove.diameter_at(0.001)
    )


def test_the_outline_goes_through_every_station_and_never_back() -> None:
    profile = TurnedProfile(
        (Station(0, 2), Station(1, 2), Station(1, 1, "hollow"), Station(2, 3, "round"), Station(4, 1))
    )
    outline = profile.outline()
    assert all(one[0] <= other[0] for one, other in pairwise(outline))
    for station in profile.stations:
        assert (station.place, station.diameter / 2) in outline
    for place, radius in outline:
        if place not in (0, 1, 2, 4):
            assert 2 * radius == pytest.approx(profile.diameter_at(place))
    assert [station.place for station in profile.necks] == [1]
    assert volume_formula("straight").free_symbols == volume_formula("round").free_symbols


def test_calipers_leave_what_the_finishing_cut_takes_and_go_from_the_square_up() -> None:
    profile = TurnedProfile((Station(0, 1.25), Station(0.5, 2, "round"), Station(1, 0.5)))
    found = profile.caliper_settings(1 / 32)
    assert [each.setting for each in found] == [1.28125, 2.03125, 0.53125]
    assert [each.number for each in found] == [1, 2, 3]


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: octagon_setting(0), "square is 0, and it must be more than 0"),
        (lambda: polygon(2, 1.0), "whole number of flats, 3 or more"),
        (lambda: doubling_setting(3.5, 1.0), "A section of 3.5 flats"),
        (lambda: flat_of(5, 1.0), "even number"),
        (lambda: corner_beyond_round(8, -1.0), "diameter is -1"),
        (lambda: off_centre_derivation().function("diameter")(square=2.0, off=1.0), "outside the wood"),
        (lambda: TurnedProfile((Station(0, 1),)), "at least 2"),
        (lambda: TurnedProfile((Station(0, 1), Station(0, 2))), "has no length"),
        (lambda: TurnedProfile((Station(1, 1), Station(0, 2))), "before station 1 at 1"),
        (lambda: TurnedProfile((Station(0, 0), Station(1, 2))), "more than 0"),
        (lambda: TurnedProfile((Station(0, 1, "ogee"), Station(1, 2))), "straight, round, hollow"),
        (lambda: TurnedProfile((Station(math.nan, 1), Station(1, 2))), "no plain number"),
        (lambda: TurnedProfile((Station(0, 1), Station(1, 2))).diameter_at(1.1), "lies beyond it"),
        (lambda: TurnedProfile((Station(0, 1), Station(1, 2))).caliper_settings(-1), "0 or more"),
        (lambda: largest_round(((0, 0), (1, 0), (1, 1), (0, 1)), (2, 0.5)), "within the section"),
        (lambda: best_round(((0, 0), (1, 1), (2, 2))), "encloses nothing"),
        (lambda: best_round(((0, 0), (2, 0), (0.5, 0.5), (0, 2))), "hollow"),
    ],
)
def test_what_cannot_be_turned_is_refused_with_what_to_change(make: Callable[[], object], said: str) -> None:
    with pytest.raises(ImpossibleShape, match=said):
        make()


def quadrilaterals() -> st.SearchStrategy[tuple[tuple[float, float], ...]]:
    """Return squares with every corner moved by less than a quarter of the side: always convex."""
    moves = st.tuples(*[st.floats(-0.2, 0.2)] * 8)
    corners = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
    return moves.map(lambda by: tuple((x + by[2 * n], y + by[2 * n + 1]) for n, (x, y) in enumerate(corners)))


@settings(deadline=None, max_examples=60)
@given(quadrilaterals())
def test_no_centre_on_a_fine_net_holds_a_larger_round(outline: tuple[tuple[float, float], ...]) -> None:
    try:
        best = best_round(outline)
    except ImpossibleShape:
        return
    assert largest_round(outline, best.centre) == pytest.approx(best.diameter)
    tried = []
    for i, j in itertools.product(range(31), repeat=2):
        try:
            tried.append(largest_round(outline, (-0.2 + 1.4 * i / 30, -0.2 + 1.4 * j / 30)))
        except ImpossibleShape:
            continue
    # Between the points of the net the round can be larger by no more than twice the way to the nearest.
    assert max(tried) <= best.diameter + 1e-9
    assert max(tried) >= best.diameter - 2 * 1.4 / 30 * math.sqrt(0.5) - 1e-9


def test_the_round_of_a_triangle_is_the_incircle_of_euclid() -> None:
    # Euclid, Elements IV. 4; the 3-4-5 triangle's incircle has radius 1 (from memory: area over half the perimeter).
    found = best_round(((0, 0), (4, 0), (0, 3)))
    assert found.diameter == pytest.approx(2) and found.centre == pytest.approx((1, 1))


def test_in_a_board_the_round_has_room_and_its_middle_is_taken() -> None:
    found = best_round(((0, 0), (5, 0), (5, 2), (0, 2)))
    assert found.diameter == pytest.approx(2) and found.centre == pytest.approx((2.5, 1))
    # Planed to one thickness both ways but off square, a rhombus holds the same round as the square did.
    lean = math.radians(80)
    side = 1 / math.sin(lean)
    rhombus = ((0, 0), (side, 0), (side + side * math.cos(lean), 1.0), (side * math.cos(lean), 1.0))
    assert best_round(rhombus).diameter == pytest.approx(1)


@settings(deadline=None)
@given(lengths, st.floats(0, 0.45), st.floats(-1, 1))
def test_a_centre_off_the_middle_loses_twice_what_it_is_off(square: float, off: float, aside: float) -> None:
    corners = ((0.0, 0.0), (square, 0.0), (square, square), (0.0, square))
    centre = (square * (0.5 + off), square * (0.5 + off * aside))
    told = off_centre_derivation().function("diameter")(square=square, off=off * square)
    assert largest_round(corners, centre) == pytest.approx(told)
