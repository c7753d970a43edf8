"""Two tenons in one post: what is published, what is worked by hand, and no wood used twice."""

import dataclasses
import math
from collections.abc import Callable, Iterator
from itertools import pairwise
from random import Random

import pytest
import sympy
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath import post_joint
from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.post_joint import ENDS, PostJoint, usual_thickness

Outline = tuple[tuple[float, float], ...]

POST = 64


@st.composite
def joints(draw: st.DrawFn, kinds: tuple[str, ...] = ENDS, clearance: bool = True) -> PostJoint:
    """Every joint in whole marks with wood left on every side of the mortises."""
    first = draw(st.integers(1, 40))
    other = draw(st.integers(1, 40))
    back = draw(st.integers(1, POST - first - 2))
    other_back = draw(st.integers(1, POST - other - 2))
    kind = draw(st.sampled_from(kinds))
    room = min(POST - back - first, POST - other_back - other)
    reserve = draw(st.integers(1, POST - 2)) if kind == "one_long" else None
    if reserve is not None:
        room = min(room, POST - reserve)
    shorter = draw(st.integers(0, 3)) * min(room, 4) / 16 if clearance else 0
    joint = PostJoint(POST, first, back, other, other_back, kind, reserve, shorter)
    scale = draw(st.sampled_from((1 / 32, 1.0, 0.7)))
    return scaled(joint, scale)


def scaled(joint: PostJoint, scale: float) -> PostJoint:
    return PostJoint(
        post=joint.post * scale,
        tenon_thickness=joint.tenon_thickness * scale,
        set_back=joint.set_back * scale,
        other_thickness=joint.other_tenon.thickness * scale,
        other_set_back=joint.other_tenon.set_back * scale,
        ends=joint.ends,
        reserve=None if joint.reserve is None else joint.reserve * scale,
        end_clearance=joint.end_clearance * scale,
    )


def inside(outline: Outline, x: float, y: float, margin: float = 0.0) -> bool:
    """Whether a point lies within a convex outline drawn against the clock, by more than a margin."""
    for (x0, y0), (x1, y1) in zip(outline, (*outline[1:], outline[0]), strict=True):
        side = math.hypot(x1 - x0, y1 - y0)
        if side > 0 and ((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / side <= margin:
            return False
    return True


def area(outline: Outline) -> float:
    return (
        math.fsum(
            x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(outline, (*outline[1:], outline[0]), strict=True)
        )
        / 2
    )


def sampled(joint: PostJoint, count: int = 400) -> Iterator[tuple[float, float]]:
    """Points all over the post, and closer together where the two mortises cross."""
    dice = Random(f"{joint}")
    low_x, high_x = joint.other_tenon.set_back, joint.other_tenon.set_back + joint.other_tenon.thickness
    low_y, high_y = joint.tenon.set_back, joint.tenon.set_back + joint.tenon.thickness
    for _ in range(count // 2):
        yield dice.uniform(0, joint.post), dice.uniform(0, joint.post)
        yield dice.uniform(low_x, high_x), dice.uniform(low_y, high_y)


# --- what is published, and what everybody does ---


def test_two_equal_members_meet_at_the_standard_mitre() -> None:
    # READ: power-saw operator's manuals 315.21212, p. 24, and 315.212050, p. 29: four sides, pitch 0, mitre
    # 45.00, bevel 0.00; stated to the closest 0.005 degrees.
    joint = PostJoint(post=1.5, tenon_thickness=0.375, set_back=0.5)
    assert joint.tenon.bevel == pytest.approx(45.00, abs=0.005)
    assert joint.other_tenon.bevel == pytest.approx(45.00, abs=0.005)


def test_equal_offsets_strike_the_end_at_45_degrees() -> None:
    # Common practice: long point less short point, set out as long as the tenon is thick.
    tenon = PostJoint(post=1.75, tenon_thickness=0.3125, set_back=0.5).tenon
    assert tenon.outer_cheek - tenon.inner_cheek == tenon.thickness
    assert tenon.bevel == 45.0


def test_a_three_eighths_mortise_in_a_post_of_one_and_a_half_takes_a_quarter_of_it() -> None:
    # Common practice.
    walls = PostJoint(post=1.5, tenon_thickness=0.375, set_back=0.375).walls
    assert walls.outside_tenon + walls.inside_tenon == 0.75 * 1.5
    assert usual_thickness(1.5)[0] == 0.375


@pytest.mark.parametrize(
    ("stock", "printed"),
    [
        # READ: WOOD magazine, "Mortises and tenons": a third of equal stock, 3/4 gives 1/4.
        (0.75, (0.25,)),
        # READ: the same: a 3/4 apron in a 1 1/2 leg, 3/8 to 1/2.
        (1.5, (0.375, 0.5)),
    ],
)
def test_printed_tenons_are_a_quarter_to_a_third_of_the_stock(
    stock: float, printed: tuple[float, ...]
) -> None:
    least, greatest = usual_thickness(stock)
    assert all(least <= thickness <= greatest for thickness in printed)
    assert greatest == max(printed)


def test_a_wall_of_an_eighth_leaves_the_usual_depth_of_a_blind_mortise() -> None:
    # READ: woodworkings.ca, "Removing and haunching": a blind mortise about 7/8 of the stile in cabinet work.
    joint = PostJoint(post=1.5, tenon_thickness=0.5, set_back=1.5 / 8)
    assert joint.tenon.reach / joint.post == pytest.approx(7 / 8)


# --- where plain bench reasoning goes wrong ---


def test_it_is_equal_thicknesses_and_not_equal_set_backs_that_give_45_degrees() -> None:
    set_back_differs = PostJoint(1.75, 0.375, 0.375, other_set_back=0.75)
    thickness_differs = PostJoint(1.75, 0.375, 0.375, other_thickness=0.5)
    assert set_back_differs.tenon.bevel == set_back_differs.other_tenon.bevel == 45.0
    assert thickness_differs.tenon.bevel != 45.0
    assert thickness_differs.tenon.outer_cheek == thickness_differs.other_tenon.outer_cheek


@settings(deadline=None)
@given(joints(kinds=("mitred",)))
def test_the_two_bevels_of_a_mitred_pair_make_a_right_angle(joint: PostJoint) -> None:
    assert joint.tenon.bevel + joint.other_tenon.bevel == pytest.approx(90)


@settings(deadline=None)
@given(joints(clearance=False), st.integers(0, 4))
def test_mitred_tenons_hold_more_glue_than_square_ones_that_keep_to_the_other_outer_cheek(
    joint: PostJoint, quarters_of_clearance: int
) -> None:
    first, other = joint.tenon, joint.other_tenon
    room = min(joint.walls.inside_tenon, joint.walls.inside_other)
    clearance = quarters_of_clearance * min(first.thickness, other.thickness, room) / 17
    mitred = dataclasses.replace(joint, ends="mitred", end_clearance=clearance)
    ends = [dataclasses.replace(mitred, ends="square"), dataclasses.replace(mitred, ends="halved")]
    for share in (0.0, 0.25, 0.5, 1.0):
        reserve = other.set_back + share * other.thickness
        ends.append(dataclasses.replace(mitred, ends="one_long", reserve=reserve))
    for square in ends:
        assert mitred.glue_area(1) > square.glue_area(1)


def test_a_long_tenon_that_runs_on_to_the_far_face_can_hold_more_at_the_price_of_the_wall() -> None:
    mitred = PostJoint(post=4, tenon_thickness=1, set_back=1)
    long = PostJoint(post=4, tenon_thickness=1, set_back=1, ends="one_long", reserve=0.25)
    assert long.glue_area(1) > mitred.glue_area(1)
    assert long.walls.behind_tenon < mitred.walls.behind_tenon


def test_tenons_that_meet_cut_the_inside_corner_block_free() -> None:
    for ends in ("mitred", "square", "halved"):
        joint = PostJoint(4, 1, 0.5, 0.75, 1, ends=ends)
        assert joint.corner_block == ((1.75, 1.5), (4, 1.5), (4, 4), (1.75, 4))


def test_a_tenon_that_stops_before_the_other_mortise_leaves_the_corner_block_standing() -> None:
    assert PostJoint(4, 1, 1, ends="one_long", reserve=2.5).corner_block == ()
    assert PostJoint(4, 1, 1, ends="one_long", reserve=2).corner_block != ()


def test_with_no_wall_inside_there_is_no_corner_block() -> None:
    assert PostJoint(4, 1, 3).corner_block == ()


def test_clearance_shortens_both_tenons_and_leaves_the_mortises() -> None:
    for ends in ENDS:
        tight = PostJoint(4, 1, 1, 0.5, 0.75, ends=ends, reserve=0.5)
        eased = dataclasses.replace(tight, end_clearance=0.0625)
        assert (eased.mortise, eased.other_mortise) == (tight.mortise, tight.other_mortise)
        assert eased.walls == tight.walls
        for short, long in ((eased.tenon, tight.tenon), (eased.other_tenon, tight.other_tenon)):
            assert long.outer_cheek - short.outer_cheek == 0.0625
            assert long.inner_cheek - short.inner_cheek == 0.0625
            assert short.bevel == long.bevel
        assert eased.meeting_face == 0


# --- the four kinds of ends, by hand ---

# By hand, for a post of 8 with a first tenon 2 thick set back 1 (across: 1 to 3) and another 1 thick set back
# 2 (across: 2 to 3): cheeks outer and inner of the first, of the other, walls behind the two, glued cheek.
BY_HAND: dict[str, tuple[tuple[float, float], tuple[float, float], tuple[float, float], float]] = {
    "mitred": ((6, 5), (7, 5), (2, 1), 6 + 5 + 7 + 5),
    "square": ((5, 5), (5, 5), (3, 3), 5 + 5 + 5 + 5),
    "one_long": ((7.5, 7.5), (5, 5), (0.5, 1), 7.5 + (7.5 - 1) + 5 + 5),
    "halved": ((6, 6), (7, 7), (2, 1), (6 + (6 - 1) + 5 + 5) / 2 + (5 + 5 + 7 + (7 - 2)) / 2),
}


@pytest.mark.parametrize("ends", ENDS)
def test_lengths_walls_and_glue_are_those_worked_by_hand(ends: str) -> None:
    first, other, behind, glued = BY_HAND[ends]
    joint = PostJoint(8, 2, 1, 1, 2, ends=ends, reserve=0.5)
    assert (joint.tenon.outer_cheek, joint.tenon.inner_cheek) == first
    assert (joint.other_tenon.outer_cheek, joint.other_tenon.inner_cheek) == other
    assert (joint.tenon.reach, joint.other_tenon.reach) == (max(first), max(other))
    assert (joint.walls.behind_tenon, joint.walls.behind_other) == behind
    assert (joint.walls.outside_tenon, joint.walls.outside_other) == (1, 2)
    assert (joint.walls.inside_tenon, joint.walls.inside_other) == (5, 5)
    assert joint.glue_area(tenon_width=3) == 3 * glued


def test_mitred_ends_lie_on_the_diagonal_of_the_crossing() -> None:
    joint = PostJoint(8, 2, 1, 1, 2)
    assert list(joint.tenon.outline) == [(8, 1), (8, 3), (3, 3), (2, 1)]
    assert list(joint.other_tenon.outline) == [(2, 1), (3, 3), (3, 8), (2, 8)]
    assert joint.meeting_face == pytest.approx(math.dist((2, 1), (3, 3)))
    assert joint.tenon.bevel == pytest.approx(math.degrees(math.atan2(1, 2)))


@pytest.mark.parametrize("ends", ["square", "one_long", "halved"])
def test_other_ends_are_square_and_do_not_lie_on_one_another(ends: str) -> None:
    joint = PostJoint(8, 2, 1, 1, 2, ends=ends, reserve=0.5)
    assert joint.meeting_face == 0
    assert joint.tenon.bevel == joint.other_tenon.bevel == 0


def test_a_halved_tenon_shows_its_long_and_its_short_half() -> None:
    joint = PostJoint(8, 2, 1, 1, 2, ends="halved")
    assert list(joint.tenon.outline) == [(8, 1), (8, 3), (2, 3), (2, 1)]
    assert list(joint.tenon.short_outline) == [(8, 1), (8, 3), (3, 3), (3, 1)]
    assert list(joint.other_tenon.outline) == [(2, 1), (3, 1), (3, 8), (2, 8)]
    assert list(joint.other_tenon.short_outline) == [(2, 3), (3, 3), (3, 8), (2, 8)]
    upper, lower = joint.sections
    assert (upper.tenon, upper.other_tenon) == (joint.tenon.outline, joint.other_tenon.short_outline)
    assert (lower.tenon, lower.other_tenon) == (joint.tenon.short_outline, joint.other_tenon.outline)


@pytest.mark.parametrize("ends", ["mitred", "square", "one_long"])
def test_all_other_ends_are_the_same_over_their_whole_width(ends: str) -> None:
    joint = PostJoint(8, 2, 1, 1, 2, ends=ends, reserve=0.5)
    assert [section.share for section in joint.sections] == [1]
    assert joint.tenon.short_outline == joint.tenon.outline


def test_the_other_tenon_is_like_the_first_where_nothing_is_said() -> None:
    joint = PostJoint(post=4, tenon_thickness=1, set_back=0.75)
    assert (joint.other_tenon.thickness, joint.other_tenon.set_back) == (1, 0.75)


def test_a_cheek_flush_with_a_face_of_the_post_has_no_wood_behind_it() -> None:
    assert PostJoint(4, 1, 0, 1, 1).glue_area(1) == 2 + 4 + 3
    assert PostJoint(4, 1, 3, 1, 1).glue_area(1) == 3 + 1


def test_a_long_tenon_may_go_right_through() -> None:
    joint = PostJoint(4, 1, 1, ends="one_long", reserve=0)
    assert joint.tenon.reach == 4
    assert joint.walls.behind_tenon == 0


# --- the wood itself, by sampling ---


@settings(deadline=None)
@given(joints())
def test_no_wood_belongs_to_both_tenons_and_each_lies_in_its_mortise(joint: PostJoint) -> None:
    slack = 1e-9 * joint.post
    for section in joint.sections:
        for x, y in sampled(joint):
            first, other = inside(section.tenon, x, y, slack), inside(section.other_tenon, x, y, slack)
            assert not (first and other)
            assert not first or inside(section.mortise, x, y)
            assert not other or inside(section.other_mortise, x, y)


@settings(deadline=None)
@given(joints())
def test_outlines_run_against_the_clock_within_the_post(joint: PostJoint) -> None:
    slack = 1e-9 * joint.post
    for section in joint.sections:
        for outline in (section.tenon, section.other_tenon, section.mortise, section.other_mortise):
            assert area(outline) > 0
            assert all(-slack <= place <= joint.post + slack for point in outline for place in point)


@settings(deadline=None)
@given(joints(kinds=("mitred",), clearance=False))
def test_mitred_tenons_fill_their_mortises_and_share_the_crossing(joint: PostJoint) -> None:
    crossing = joint.tenon.thickness * joint.other_tenon.thickness
    tenons = area(joint.tenon.outline) + area(joint.other_tenon.outline)
    assert tenons == pytest.approx(area(joint.mortise) + area(joint.other_mortise) - crossing)


@settings(deadline=None)
@given(joints())
def test_walls_and_mortises_make_up_the_post(joint: PostJoint) -> None:
    walls = joint.walls
    assert walls.outside_tenon + joint.tenon.thickness + walls.inside_tenon == pytest.approx(joint.post)
    assert walls.outside_other + joint.other_tenon.thickness + walls.inside_other == pytest.approx(joint.post)
    assert walls.behind_tenon == pytest.approx(wood_behind(joint, swapped=False))
    assert walls.behind_other == pytest.approx(wood_behind(joint, swapped=True))


def wood_behind(joint: PostJoint, swapped: bool) -> float:
    """Least wood on any line from the far outer face to the mortise's floor, seen patch by patch."""
    least = joint.post
    for section in joint.sections:
        holes = [section.mortise, section.other_mortise]
        if swapped:
            holes = [tuple((y, x) for x, y in reversed(hole)) for hole in reversed(holes)]
        own = holes[0]
        floor, low, high = min(x for x, _ in own), min(y for _, y in own), max(y for _, y in own)
        for across, _ in patches(low, high, [y for hole in holes for _, y in hole]):
            wood = [
                length
                for along, length in patches(0, floor, [x for hole in holes for x, _ in hole])
                if not any(inside(hole, along, across) for hole in holes)
            ]
            least = min(least, math.fsum(wood))
    return least


def patches(low: float, high: float, corners: list[float]) -> list[tuple[float, float]]:
    """Middle and length of each stretch between two bounds in which no corner lies, slivers left out."""
    edges = sorted({low, high, *(corner for corner in corners if low < corner < high)})
    return [((start + end) / 2, end - start) for start, end in pairwise(edges) if end - start > 1e-9]


@settings(deadline=None)
@given(joints())
def test_glue_counts_just_the_cheeks_that_touch_wood_of_the_post(joint: PostJoint) -> None:
    assert joint.glue_area(tenon_width=2) == pytest.approx(2 * cheeks_on_wood(joint))


def cheeks_on_wood(joint: PostJoint) -> float:
    """Step along every cheek, mark by mark, and look just outside it for wood."""
    mark = joint.post / (POST * 16)
    beside = mark * 1e-3
    total = 0.0
    for section in joint.sections:
        for outline, swapped in ((section.tenon, False), (section.other_tenon, True)):
            turned = tuple((y, x) for x, y in outline) if swapped else outline
            for side, outwards in ((min, -beside), (max, beside)):
                across = side(y for _, y in turned)
                ends = [x for x, y in turned if abs(y - across) < beside]
                steps = round((max(ends) - min(ends)) / mark)
                for step in range(steps):
                    along = min(ends) + mark * (step + 0.5)
                    x, y = (across + outwards, along) if swapped else (along, across + outwards)
                    open_there = any(inside(hole, x, y) for hole in (section.mortise, section.other_mortise))
                    if 0 < x < joint.post and 0 < y < joint.post and not open_there:
                        total += section.share * mark
    return total


@settings(deadline=None)
@given(joints(), st.floats(0.01, 100))
def test_another_scale_changes_every_length_alike_and_no_angle(joint: PostJoint, scale: float) -> None:
    larger = scaled(joint, scale)
    assert larger.tenon.reach == pytest.approx(scale * joint.tenon.reach)
    assert larger.other_tenon.inner_cheek == pytest.approx(scale * joint.other_tenon.inner_cheek)
    assert larger.meeting_face == pytest.approx(scale * joint.meeting_face)
    assert larger.glue_area(scale) == pytest.approx(scale**2 * joint.glue_area(1))
    assert larger.tenon.bevel == pytest.approx(joint.tenon.bevel)
    assert dataclasses.astuple(larger.walls) == pytest.approx(
        tuple(scale * wall for wall in dataclasses.astuple(joint.walls))
    )


@settings(deadline=None)
@given(joints(kinds=("mitred", "square", "halved")))
def test_naming_the_tenons_the_other_way_round_mirrors_the_joint(joint: PostJoint) -> None:
    first, other = joint.tenon, joint.other_tenon
    mirror = dataclasses.replace(
        joint,
        tenon_thickness=other.thickness,
        set_back=other.set_back,
        other_thickness=first.thickness,
        other_set_back=first.set_back,
    )
    assert mirror.tenon.reach == other.reach
    assert mirror.other_tenon.bevel == first.bevel
    assert set(mirror.tenon.outline) == {(y, x) for x, y in other.outline}
    assert mirror.glue_area(1) == pytest.approx(joint.glue_area(1))


# --- what cannot be ---


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: PostJoint(0, 1, 1), "post is 0. Give a length of more than 0"),
        (lambda: PostJoint(math.nan, 1, 1), "post is nan"),
        (lambda: PostJoint(4, 0, 1), "first tenon is 0 thick.*here 1 to 1.33333"),
        (lambda: PostJoint(4, 1, 1, other_thickness=-1), "other tenon is -1 thick"),
        (lambda: PostJoint(4, 1, -1), "first tenon's set-back is -1. Give 0 or more"),
        (
            lambda: PostJoint(4, 1, 3.5),
            "make 4.5, and the post is 4. Set it back 3 or less, or make .* 0.5 thick",
        ),
        (lambda: PostJoint(4, 1, 1, other_set_back=5), "other mortise does not fit .* bigger post"),
        (lambda: PostJoint(4, 1, 1, end_clearance=-0.1), "end clearance is -0.1. Give 0 or more"),
        (
            lambda: PostJoint(4, 1, 1, end_clearance=2.5),
            "Nothing is left of the first tenon: it would go 2 into",
        ),
        (lambda: PostJoint(4, 1, 3, 1, 1, ends="square"), "Nothing is left of the other tenon"),
        (lambda: PostJoint(4, 1, 1, ends="one_long"), "needs a reserve.*less than 4, such as reserve=1"),
        (lambda: PostJoint(4, 1, 1, ends="one_long", reserve=4), "reserve is 4 in a post of 4"),
        (lambda: PostJoint(4, 1, 1, ends="one_long", reserve=-1), "Give 0 or more, and less than the post"),
        (lambda: PostJoint(4, 1, 1).glue_area(0), "tenons' width is 0"),
        (lambda: usual_thickness(-1), "stock's thickness is -1"),
    ],
)
def test_sizes_that_cannot_stand_in_one_post_are_refused_with_what_to_change(
    make: Callable[[], object], said: str
) -> None:
    with pytest.raises(ImpossibleShape, match=said):
        make()


def test_an_unknown_kind_of_end_is_answered_with_the_four_there_are() -> None:
    with pytest.raises(UnknownName, match=r"'dovetailed'.*mitred, square, one_long, halved"):
        PostJoint(4, 1, 1, ends="dovetailed")


def test_a_mortise_may_reach_the_inside_face_to_a_hair() -> None:
    joint = PostJoint(post=38.1, tenon_thickness=12.7, set_back=25.4)
    assert joint.walls.inside_tenon == 0
    assert joint.other_tenon.inner_cheek == 0
    assert len(joint.other_tenon.outline) == 3


# --- the rules behind it ---


@pytest.mark.parametrize(
    "derived",
    [
        post_joint.derivation,
        post_joint.equal_thicknesses,
        post_joint.outer_cheek_derivation,
        post_joint.inner_cheek_derivation,
        post_joint.meeting_face_derivation,
    ],
)
def test_every_step_of_the_post_joint_follows(derived: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derived())


def test_the_post_and_the_set_back_drop_out_of_the_bevel() -> None:
    left = {symbol.name for symbol in post_joint.derivation().result.free_symbols}
    assert left == {"angle", "tenon_thickness", "other_thickness"}
    assert post_joint.equal_thicknesses().result.rhs == sympy.pi / 4


@settings(deadline=None)
@given(joints(kinds=("mitred",)))
def test_the_bevel_turns_a_square_end_by_its_offset(joint: PostJoint) -> None:
    for tenon in (joint.tenon, joint.other_tenon):
        offset = tenon.outer_cheek - tenon.inner_cheek
        assert tenon.bevel == pytest.approx(math.degrees(math.atan2(offset, tenon.thickness)))
