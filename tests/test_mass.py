"""What a piece weighs, where it balances, how hard it is to turn: against sums over points and known closed forms."""

from __future__ import annotations

import math
import timeit
from dataclasses import replace

import numpy as np
import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as some
from scipy.integrate import quad
from scipy.stats import qmc
from solid_checks import Membership

from woodmath.case import Case
from woodmath.case_solids import ALONG_X, rocker_solid, solids_of
from woodmath.errors import ImpossibleShape
from woodmath.mass import (
    MassOf,
    floor_level,
    heaped,
    loads,
    mass_of_parts,
    rockers,
    whole,
    without_rockers,
)
from woodmath.moment_derivations import board_derivation, gyration_derivation, parallel_line_derivation
from woodmath.outlines import rectangle
from woodmath.piece import Piece
from woodmath.piece_origin import scaled_piece
from woodmath.piece_scaling import mass_of
from woodmath.second_moments import NO_SPREAD, Body, outline_moments, prism_body, solid_body, together
from woodmath.solids import Axes, Prism, Solid, Vector
from woodmath.weights_card import weights_card

CAT_BED, HOUND_BED, LOG_BOX = (Piece.demo(name) for name in ("cat-bed", "hound-bed", "log-box"))
PIECES = {"cat's bed": CAT_BED, "hound's bed": HOUND_BED, "log box": LOG_BOX}
METRES = {"inch": 0.0254, "millimetre": 0.001}


@pytest.mark.parametrize(
    "derivation",
    [parallel_line_derivation(), gyration_derivation(), board_derivation()],
    ids=lambda d: d.title,
)
def test_every_step_follows(derivation) -> None:
    assert_every_step_follows(derivation)


# --- Known closed forms ------------------------------------------------------------------------------------


def half_round(half_length: float, half_height: float, pieces: int) -> tuple[tuple[float, float], ...]:
    turns = np.linspace(0, math.pi, pieces + 1)
    return tuple((half_length * math.cos(turn), half_height * math.sin(turn)) for turn in turns)


def test_a_half_circle_has_the_published_centroid_and_second_moment() -> None:
    # Centroid 4r/3π: Wikipedia, "List of centroids" (read in a copy). Second moment about the centroid
    # (π/8 - 8/9π) r⁴: Wikibooks, "Statics", Geometric Properties of Lines and Areas (read).
    radius = 3.0
    area, (across, up), (_, product, up_up) = outline_moments(half_round(radius, radius, 4000))
    assert area == pytest.approx(math.pi * radius**2 / 2, rel=1e-6)
    assert (across, product) == pytest.approx((0, 0), abs=1e-9)
    assert up == pytest.approx(4 * radius / (3 * math.pi), rel=1e-6)
    assert up_up == pytest.approx((math.pi / 8 - 8 / (9 * math.pi)) * radius**4, rel=1e-5)


def test_half_an_ellipse_has_the_published_centroid() -> None:
    # 4b/3π on πab/2: Wikipedia, "List of centroids" (read in a copy).
    area, (_, up), _ = outline_moments(half_round(5.0, 2.0, 4000))
    assert area == pytest.approx(math.pi * 5 * 2 / 2, rel=1e-6)
    assert up == pytest.approx(4 * 2 / (3 * math.pi), rel=1e-6)


@given(some.floats(0.1, 50), some.floats(0.1, 50))
def test_a_right_triangle_balances_at_a_third_and_has_its_textbook_moments(
    base: float, height: float
) -> None:
    # Centroid at b/3, h/3; b h³/36, h b³/36, product -b² h²/72: statics texts (from memory).
    area, centroid, moments = outline_moments(((0, 0), (base, 0), (0, height)))
    assert area == pytest.approx(base * height / 2)
    assert centroid == pytest.approx((base / 3, height / 3))
    assert moments == pytest.approx(
        (height * base**3 / 36, -(base**2) * height**2 / 72, base * height**3 / 36)
    )


def test_a_box_turns_as_the_textbooks_say() -> None:
    # m (b² + c²) / 12 about the line through the middle: mechanics texts (from memory).
    box = prism_body(Prism(ALONG_X, rectangle(0, 0, 3, 5), 0, 7)).times(2.0)
    mass = 2.0 * 3 * 5 * 7
    assert box.amount == pytest.approx(mass)
    for way, (one, other) in enumerate(((3, 5), (7, 5), (7, 3))):
        assert box.moment(way) == pytest.approx(mass * (one**2 + other**2) / 12)


def test_a_thin_rod_about_its_end_has_a_third_of_m_l_squared() -> None:
    # m l² / 12 about the middle, m l² / 3 about the end: mechanics texts (from memory).
    rod = prism_body(Prism(ALONG_X, rectangle(-1e-5, -1e-5, 2e-5, 2e-5), 0, 4))
    assert rod.moment(1) == pytest.approx(rod.amount * 4**2 / 12)
    assert rod.moment_about(1, (0.0, 0.0, 0.0)) == pytest.approx(rod.amount * 4**2 / 3)


# --- Independent integration -------------------------------------------------------------------------------


def summed(solid: Solid, power: int) -> tuple[float, np.ndarray, np.ndarray]:
    """Return volume, first and second moments about the origin, summed over evenly strewn points."""
    corners = np.array([corner for each in solid.added for corner in each.corners])
    low, high = corners.min(0), corners.max(0)
    points = low + (high - low) * qmc.Sobol(3, seed=1).random_base2(power)
    share = np.prod(high - low) / len(points)
    wood = points[Membership(solid)(points)]
    return len(wood) * share, wood.sum(0) * share, wood.T @ wood * share


@pytest.mark.parametrize("piece", PIECES.values(), ids=PIECES.keys())
def test_a_whole_piece_agrees_with_a_sum_over_points(piece: Piece) -> None:
    volume, first, second = 0.0, np.zeros(3), np.zeros((3, 3))
    for part in solids_of(piece):
        its_volume, its_first, its_second = summed(part.solid, 16)
        volume, first, second = volume + its_volume, first + its_first, second + its_second
    middle = first / volume
    second -= volume * np.outer(middle, middle)
    density = piece.timber.kilograms_per_cubic_metre * METRES[piece.rule.unit] ** 3
    found = whole(piece)
    assert found.kilograms == pytest.approx(density * volume, rel=0.005)
    scale = piece.end.height
    assert found.centre == pytest.approx(tuple(middle), abs=0.005 * scale)
    for line, turning in zip("xyz", (second[1, 1] + second[2, 2], second[0, 0] + second[2, 2],
                                     second[0, 0] + second[1, 1]), strict=True):  # fmt: skip
        assert found.gyration_radius(line) == pytest.approx(math.sqrt(turning / volume), rel=0.005)
        assert found.moment(line) == pytest.approx(density * turning, rel=0.01)


@pytest.mark.parametrize("number", range(13))
def test_each_part_agrees_with_a_sum_over_points(number: int) -> None:
    part = solids_of(LOG_BOX)[number]
    volume, first, second = summed(part.solid, 15)
    body = solid_body(part.solid)
    middle = first / volume
    about = second - volume * np.outer(middle, middle)
    assert body.amount == pytest.approx(volume, rel=0.01)
    assert body.centre == pytest.approx(tuple(middle), abs=1.5)
    assert np.array(body.spread) == pytest.approx(about, rel=0.02, abs=0.01 * np.trace(about))


@pytest.mark.parametrize("piece", [CAT_BED, HOUND_BED], ids=["cat", "hound"])
def test_a_rocker_agrees_with_the_integral_under_the_true_ellipse(piece: Piece) -> None:
    plain = replace(piece, rocker=replace(piece.rocker, tenon=None))
    rocker, ellipse = plain.rocker, plain.ellipse()
    a, b = ellipse.half_length, ellipse.half_height

    def under(y: float) -> float:
        return b - b * math.sqrt(1 - (y / a) ** 2) - rocker.depth

    def integral(of) -> float:
        return rocker.thickness * quad(of, -rocker.length / 2, rocker.length / 2, epsabs=0, epsrel=1e-11)[0]

    volume = integral(lambda y: -under(y))
    height = integral(lambda y: -(under(y) ** 2) / 2) / volume
    yy = integral(lambda y: -under(y) * y * y)
    zz = integral(lambda y: -(under(y) ** 3) / 3) - volume * height**2
    solid = rocker_solid(plain, Case.of(plain))

    def agrees(body: Body, within: float) -> None:
        assert body.amount == pytest.approx(volume, rel=within)
        assert body.centre[1:] == pytest.approx((0, height), abs=within * rocker.depth)
        assert (body.spread[1][1], body.spread[2][2]) == pytest.approx((yy, zz), rel=3 * within)
        assert body.spread[0][0] == pytest.approx(volume * rocker.thickness**2 / 12, rel=within)

    # The curve is forty-eight short straight pieces, and under each a little wood is missing; with a thousand
    # pieces it is gone.
    agrees(solid_body(solid), 4e-4)
    half = rocker.length / 2
    finer = tuple((y, z - rocker.depth) for y, z in ellipse.lower_arc(rocker.length, pieces=1000))
    agrees(prism_body(replace(solid.added[0], outline=((half, 0.0), (-half, 0.0), *finer))), 1e-6)


def test_the_mass_is_that_of_the_cut_list() -> None:
    for piece in PIECES.values():
        assert whole(piece).kilograms == pytest.approx(mass_of(piece), rel=1e-12)


# --- What holds everywhere ---------------------------------------------------------------------------------

lengths = some.floats(0.1, 20)
places = some.floats(-30, 30)


@some.composite
def prisms(draw) -> Prism:
    lean, turn = draw(some.floats(-1.5, 1.5)), draw(some.floats(-3, 3))
    across = np.array((math.cos(turn), math.sin(turn), 0.0))
    up = np.array((-math.sin(turn) * math.sin(lean), math.cos(turn) * math.sin(lean), math.cos(lean)))
    origin, along = np.array([draw(places) for _ in range(3)]), np.cross(across, up)
    axes = Axes(*(tuple(map(float, vector)) for vector in (origin, across, up, along)))
    wide, high = draw(lengths), draw(lengths)
    outline = (
        (0.0, 0.0),
        (wide, 0.0),
        (wide * draw(some.floats(0.2, 1)), high),
        (0.0, high * draw(lengths) / 20),
    )
    start = draw(places)
    return Prism(axes, outline, start, start + draw(lengths))


def same(one: Body, other: Body) -> None:
    """Fail unless two bodies are the same for their balance and their turning."""
    size = max(1.0, *(abs(value) for row in one.spread for value in row))
    assert one.amount == pytest.approx(other.amount, rel=1e-9)
    assert one.centre == pytest.approx(other.centre, abs=1e-7)
    assert np.array(one.spread) == pytest.approx(np.array(other.spread), abs=1e-7 * size)


@given(prisms(), places, places, places)
def test_moving_everything_moves_the_centre_and_nothing_else(prism: Prism, x, y, z) -> None:
    before = prism_body(prism)
    origin = tuple(a + b for a, b in zip(prism.axes.origin, (x, y, z), strict=True))
    after = prism_body(replace(prism, axes=replace(prism.axes, origin=origin)))
    centre: Vector = (before.centre[0] + x, before.centre[1] + y, before.centre[2] + z)
    same(after, Body(before.amount, centre, before.spread))


@given(prisms(), some.sampled_from((0, 1)))
def test_a_mirrored_part_is_the_mirrored_body(prism: Prism, axis: int) -> None:
    same(prism_body(prism.mirrored(axis)), prism_body(prism).mirrored(axis))


@given(prisms(), some.floats(0.1, 0.9))
def test_two_halves_make_a_whole(prism: Prism, share: float) -> None:
    cut = prism.start + share * (prism.end - prism.start)
    same(
        together((prism_body(replace(prism, end=cut)), prism_body(replace(prism, start=cut)))),
        prism_body(prism),
    )


@given(prisms(), some.floats(0.1, 0.9))
def test_what_is_cut_away_and_put_back_changes_nothing(prism: Prism, share: float) -> None:
    piece = replace(prism, end=prism.start + share * (prism.end - prism.start))
    same(together((solid_body(Solid((prism,), (piece,))), prism_body(piece))), prism_body(prism))


@given(prisms())
def test_it_does_not_matter_which_way_round_an_outline_goes(prism: Prism) -> None:
    same(prism_body(replace(prism, outline=prism.outline[::-1])), prism_body(prism))


@given(some.lists(prisms(), min_size=1, max_size=4))
def test_no_line_takes_more_than_the_other_two_and_none_takes_nothing(several) -> None:
    body = together(map(prism_body, several))
    moments = [body.moment(way) for way in range(3)]
    assert min(moments) > 0
    assert max(moments) <= sum(moments) - max(moments) + 1e-9 * max(moments)
    assert min(np.linalg.eigvalsh(np.array(body.spread))) >= -1e-9 * max(moments)


@given(prisms(), some.floats(0.2, 5))
def test_a_true_model_weighs_as_the_cube_and_turns_as_the_fifth_power(prism: Prism, scale: float) -> None:
    origin = tuple(scale * value for value in prism.axes.origin)
    outline = tuple((scale * p, scale * q) for p, q in prism.outline)
    model = prism_body(
        Prism(replace(prism.axes, origin=origin), outline, scale * prism.start, scale * prism.end)
    )
    body = prism_body(prism)
    assert model.amount == pytest.approx(scale**3 * body.amount, rel=1e-9)
    for way in range(3):
        assert model.moment(way) == pytest.approx(scale**5 * body.moment(way), rel=1e-7)
        assert model.gyration_radius(way) == pytest.approx(scale * body.gyration_radius(way), rel=1e-7)


def test_an_outline_on_one_line_and_an_empty_heap_are_refused_in_words() -> None:
    with pytest.raises(ImpossibleShape, match="Give it a length and a width"):
        outline_moments(((0, 0), (1, 1), (2, 2)))
    with pytest.raises(ImpossibleShape, match="at least one body"):
        heaped("nothing", ())


# --- Where bench reasoning goes wrong ------------------------------------------------------------------------


def test_a_leaning_board_turns_by_its_slope_length_and_not_by_its_height() -> None:
    joint = replace(CAT_BED.joint, tenons=(), tongue=None)
    piece = replace(CAT_BED, joint=joint, bead=None, bottom=None)
    side = next(part for part in mass_of_parts(piece) if part.name == "side panel")
    thickness, slope = piece.side.thickness, piece.end.slope_length
    assert side.moment("x") == pytest.approx(side.kilograms * (slope**2 + thickness**2) / 12)
    by_its_height = side.kilograms * (piece.end.height**2 + thickness**2) / 12
    assert side.moment("x") > 1.02 * by_its_height


def test_with_kept_stock_the_mass_is_not_the_cube_nor_the_radius_the_scale() -> None:
    large = scaled_piece(CAT_BED, "2", "A bed for two cats")
    small, twice = whole(CAT_BED), whole(large)
    # Panels and bottom grow in two directions of three, posts in one: between four and two times as heavy.
    assert 2 < twice.kilograms / small.kilograms < 4.5
    assert twice.gyration_radius("x") / small.gyration_radius("x") == pytest.approx(2, rel=0.05)
    assert twice.gyration_radius("x") / small.gyration_radius("x") != pytest.approx(2, rel=1e-4)


def test_the_parallel_line_serves_for_the_case_about_the_floor() -> None:
    bed = whole(CAT_BED)
    about_the_floor = bed.body.moment_about(0, (0.0, 0.0, bed.floor))
    part_by_part = math.fsum(
        part.body.moment_about(0, (0.0, 0.0, bed.floor)) for part in mass_of_parts(CAT_BED)
    )
    assert about_the_floor == pytest.approx(part_by_part, rel=1e-12)


# --- The piece, its rockers and its load ----------------------------------------------------------------------


@pytest.mark.parametrize("piece", PIECES.values(), ids=PIECES.keys())
def test_a_piece_balances_in_its_middle_and_inside_its_height(piece: Piece) -> None:
    found = whole(piece)
    assert found.centre[:2] == pytest.approx((0, 0), abs=1e-9)
    assert 0 < found.centre_height < Case.of(piece).at(Case.of(piece).top)[1] - floor_level(piece)


def test_parts_stand_where_they_are_called_after() -> None:
    back_right = mass_of_parts(CAT_BED)[0]
    assert back_right.where == "back right"
    assert back_right.centre[0] > 0 and back_right.centre[1] > 0


def test_rockers_and_the_rest_make_the_whole() -> None:
    rest, both = without_rockers(CAT_BED), rockers(CAT_BED)
    same(heaped("both", (rest, both)).body, whole(CAT_BED).body)
    upright = replace(CAT_BED, rocker=None)
    assert whole(upright).kilograms < rest.kilograms  # the feet's tenons go with the rockers
    with pytest.raises(ImpossibleShape, match="has no rockers"):
        rockers(upright)


def test_other_rockers_under_the_same_posts_are_those_of_another_piece() -> None:
    other = replace(CAT_BED.rocker, length=18.0, rise=1.5, bottom_radius=40.0, thickness=1.25, depth=5.0)
    changed = replace(CAT_BED, rocker=other)
    same(rockers(CAT_BED, other).body, rockers(changed).body)
    tried, made = whole(CAT_BED, rocker=other), whole(changed)
    same(tried.body, made.body)
    assert tried.centre_height == pytest.approx(made.centre_height, rel=1e-12)
    # An inch deeper lifts the cushion and the cat by an inch.
    lifted = whole(CAT_BED, load=True, rocker=other)
    by_hand = heaped("by hand", (made, *loads(CAT_BED)))
    assert lifted.centre_height == pytest.approx(by_hand.centre_height, rel=1e-12)


def test_other_rockers_are_weighed_in_less_than_a_thousandth_of_a_second() -> None:
    without_rockers(CAT_BED), rockers(CAT_BED)
    tried = iter(replace(CAT_BED.rocker, thickness=1 + step / 100) for step in range(1000))
    assert min(timeit.repeat(lambda: rockers(CAT_BED, next(tried)), number=20, repeat=10)) / 20 < 0.001


def test_what_lies_in_it_is_counted() -> None:
    empty, full = whole(CAT_BED), whole(CAT_BED, load=True)
    cushion, cat = CAT_BED.load
    assert full.kilograms == pytest.approx(empty.kilograms + cushion.mass + cat.mass)
    balance = (
        empty.kilograms * empty.centre_height + cushion.mass * cushion.height + cat.mass * cat.height
    ) / full.kilograms
    assert full.centre_height == pytest.approx(balance)
    turning = empty.kilograms * (
        empty.gyration_radius("x") ** 2 + (empty.centre_height - balance) ** 2
    ) + math.fsum(
        load.mass * (load.gyration_radius**2 + (load.height - balance) ** 2) for load in CAT_BED.load
    )
    assert full.moment("x") == pytest.approx(turning)


def test_a_cat_on_the_rim_takes_the_centre_to_her_side() -> None:
    cat = replace(CAT_BED.load[1], offset=7.0, height=17.0)
    piece = replace(CAT_BED, load=(cat,))
    aside = whole(piece, load=True)
    assert aside.centre[1] == pytest.approx(7.0 * cat.mass / aside.kilograms)
    assert aside.centre[0] == pytest.approx(0, abs=1e-12)


def test_a_load_spreads_alike_about_every_line_and_a_point_does_not() -> None:
    (cushion, cat) = loads(CAT_BED)
    assert [cat.gyration_radius(line) for line in "xyz"] == pytest.approx([2.5] * 3)
    assert MassOf("a point", Body(3.0, (0.0, 0.0, 0.0), NO_SPREAD), 0.0).gyration_radius() == 0.0
    assert cushion.centre_height == CAT_BED.load[0].height


def test_a_piece_of_no_timber_is_refused_in_words() -> None:
    with pytest.raises(ImpossibleShape, match=r"Add \[timber\] with its species"):
        whole(replace(CAT_BED, timber=None))


def test_the_card_adds_up_and_reads_the_heights_on_the_rule() -> None:
    for piece in PIECES.values():
        card = weights_card(piece)
        at = next(place for place, row in enumerate(card.rows) if row[0] == "the whole piece, empty")
        unit = "lb" if piece.rule.unit == "inch" else "kg"
        masses = [float(row[2].removesuffix(f" {unit}")) for row in card.rows]
        assert sum(masses[:at]) == pytest.approx(masses[at], abs=0.05 * (at + 1) + 0.05)
        assert sum(masses[at : at + 1 + len(piece.load)]) == pytest.approx(masses[-1], abs=0.2)
        for _, _, _, height in card.rows:
            assert piece.rule.read(height) > 0
        assert sum(int(row[1]) for row in card.rows[:at]) == len(solids_of(piece))
