"""Four posts set out at once: every line from one datum, the gauge from outside, and what dividers would cost."""

from __future__ import annotations

import itertools
import math
import random

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule
from woodmath.setting_out import (
    PostLine,
    StoryStick,
    TongueStops,
    drift_derivation,
    gauge_settings,
    groove_derivation,
    lines_of_a_post,
    pins_derivation,
    running_derivation,
    scatter_derivation,
    stepping_off,
    stretches_of_a_post,
)

BED, BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
DERIVATIONS = (
    drift_derivation,
    groove_derivation,
    pins_derivation,
    running_derivation,
    scatter_derivation,
)

lengths = st.floats(0.01, 100)
steps = st.integers(1, 60)


@pytest.mark.parametrize("derivation", DERIVATIONS, ids=lambda function: function.__name__)
def test_every_step_of_every_rule_follows(derivation):
    assert_every_step_follows(derivation())


# The lines of the two demo pieces, worked out by hand from the sizes in their files (COMP, arithmetic alone).
# The bed's panel goes outward 1 1/4 on a height of 8: sqrt(64 + 25/16) along the post.
EDGE = math.sqrt(64 + 1.25**2)
BED_LINES = {
    "lower end of the post": 3 + EDGE + 2 - 14,
    "datum": 0.0,
    "panel's lower edge": 3.0,
    "mortise 1 begins": 3.75,
    "mortise 1 ends": 6.25,
    "mortise 2 begins": 7.75,
    "mortise 2 ends": 10.25,
    "panel's upper edge": 3 + EDGE,
    "top of the post": 5 + EDGE,
}


def places_of(piece: Piece) -> list[tuple[float, float]]:
    return [(tenon.place, tenon.width) for tenon in piece.joint.tenons]


def test_the_cats_bed_has_its_lines_where_a_maker_works_them_out_by_hand():
    post, edge = BED.post, BED.end.slope_length
    lines = lines_of_a_post(post.foot, edge, post.top, places_of(BED), length=post.length)
    assert {line.name: line.along for line in lines} == pytest.approx(BED_LINES)
    assert [line.along for line in lines] == sorted(line.along for line in lines)


def test_the_log_box_stands_on_its_posts_and_its_datum_is_the_foot():
    post = BOX.post
    lines = lines_of_a_post(post.foot, BOX.end.slope_length, post.top, places_of(BOX), length=post.length)
    assert (lines[0].name, lines[0].along) == ("datum", 0.0)
    assert (lines[-1].name, lines[-1].along) == ("top of the post", pytest.approx(380))
    # 40 to the panel, 25 and 130 above it, each 60 wide.
    assert [line.along for line in lines if "mortise" in line.name][:4] == pytest.approx([65, 125, 170, 230])


def test_a_groove_ends_one_clearance_beyond_the_tongue_that_the_bead_stops():
    # A bead of 1/4 with a quirk of 1/16 takes 5/16 of the edge; with 1/16 to spare the groove begins at 1/4.
    stops = TongueStops(bead_reach=0.3125, clearance=0.0625)
    (groove,) = (each for each in stretches_of_a_post(3, 8, 2, [], stops) if each.kind == "groove")
    assert (groove.start, groove.end) == pytest.approx((3.25, 10.75))


def test_without_a_tongue_there_is_no_groove_and_without_a_length_no_tenon_below_the_shoulder():
    kinds = {each.kind for each in stretches_of_a_post(3, 8, 2, [(1, 2)])}
    assert kinds == {"foot", "panel", "mortise", "top"}


@given(st.floats(0, 50), lengths, st.floats(0, 50), st.floats(0, 20))
def test_foot_panel_top_and_what_is_below_make_up_the_whole_post(foot, panel, top, below):
    whole = foot + panel + top + below
    stretches = stretches_of_a_post(foot, panel, top, [], length=whole)
    outer = [each for each in stretches if each.kind in ("foot's tenon", "foot", "panel", "top")]
    assert sum(each.length for each in outer) == pytest.approx(whole)
    for lower, upper in itertools.pairwise(outer):
        assert lower.end == upper.start


@given(st.floats(0, 50), lengths, st.floats(0, 50), st.floats(0.02, 0.4), st.floats(0.1, 0.5))
def test_a_line_keeps_its_distance_from_the_panel_wherever_the_foot_puts_it(foot, panel, more, place, width):
    tenons = [(place * panel, width * panel)]
    one, other = (stretches_of_a_post(each, panel, 1.0, tenons) for each in (foot, foot + more))
    for low, high in zip(one[1:], other[1:], strict=True):
        assert high.start - low.start == pytest.approx(more, abs=1e-9)
        assert high.length == pytest.approx(low.length)


@pytest.mark.parametrize(
    ("sizes", "said"),
    [
        ({"foot": -1.0}, "foot is -1"),
        ({"foot": math.nan}, "foot is nan"),
        ({"top": -0.5}, "top is -0.5"),
        ({"slope_length": 0.0}, "panel takes 0"),
        ({"tenons": [(6.0, 2.5)]}, "would end 8.5 above"),
        ({"tenons": [(0.5, 3.0), (3.0, 2.0)]}, "goes up to 3.5"),
        ({"tenons": [(4.0, 2.0), (1.0, 2.0)]}, "from the lowest up"),
        ({"tenons": [(1.0, 0.0)]}, "0 wide"),
        ({"tenons": [(-1.0, 2.0)]}, "begins at -1"),
        ({"length": 12.0}, "Cut the post to 13 or more"),
        ({"tongue": TongueStops(bead_reach=4.0)}, "leaves no tongue"),
        ({"tongue": TongueStops(clearance=-0.1)}, "clearance is -0.1"),
    ],
)
def test_what_cannot_be_set_out_is_refused_with_what_to_change(sizes, said):
    good = {"foot": 3.0, "slope_length": 8.0, "top": 2.0, "tenons": [(0.75, 2.5)]}
    with pytest.raises(ImpossibleShape, match=said) as refusal:
        lines_of_a_post(**{**good, **sizes})
    assert str(refusal.value).count(". ") >= 1


def test_a_third_of_the_stock_is_gauged_at_one_third_and_two_thirds():
    # A mortise takes a third of equal stock, 1/4 of 3/4: WOOD magazine, "Mortises & tenons" (READ).
    assert [pin.distance for pin in gauge_settings(set_back=0.25, thickness=0.25)] == [0.25, 0.5]


@pytest.mark.parametrize("piece", [BED, BOX], ids=["cat-bed", "log-box"])
def test_the_pins_stand_on_the_cheeks_of_the_tenons_in_the_post_s_section(piece):
    # The section is drawn by the post's joint, which knows no gauge: the first tenon fills y, the other one x.
    joint: PostJoint = piece.post_joint()
    end = gauge_settings(piece.joint.set_back, piece.joint.tenon_thickness)
    side = gauge_settings(piece.joint.side_set_back, piece.joint.side_thickness)
    across_end = [y for _, y in joint.tenon.outline]
    across_side = [x for x, _ in joint.other_tenon.outline]
    assert [pin.distance for pin in end] == pytest.approx([min(across_end), max(across_end)])
    assert [pin.distance for pin in side] == pytest.approx([min(across_side), max(across_side)])
    assert {pin.rule for pin in (*end, *side)} == {pins_derivation().title}


@pytest.mark.parametrize("wrong", [(0.0, 0.5), (0.5, 0.0), (-0.5, 0.5), (math.inf, 0.5)])
def test_a_gauge_cannot_be_set_to_no_length(wrong):
    with pytest.raises(ImpossibleShape, match=r"set back|thickness"):
        gauge_settings(*wrong)


@given(lengths, steps, st.floats(-0.9, 0.9))
@settings(max_examples=60)
def test_every_step_brings_the_error_of_the_dividers_once_more(step, count, share):
    error = share * step
    lines = stepping_off(step, count, error)
    assert len(lines) == count
    walked = 0.0
    for line in lines:
        walked += step + error
        assert line.stepped == pytest.approx(walked)
        assert line.drift == pytest.approx(line.number * error)


@given(steps, st.floats(0.001, 0.5))
def test_steps_set_anew_scatter_less_than_one_setting_drifts_but_more_than_one_error(count, error):
    last = stepping_off(1.0, count, error)[-1]
    assert error * (1 - 1e-9) <= last.scatter <= abs(last.drift) * (1 + 1e-9)


def test_steps_thrown_with_dice_scatter_as_the_square_root_says():
    dice, error, count, throws = random.Random(24), 0.03, 9, 4000
    ends = [sum(dice.gauss(0.0, error) for _ in range(count)) for _ in range(throws)]
    usual = math.sqrt(sum(end**2 for end in ends) / throws)
    # Four thousand throws settle a usual error to about one part in ninety.
    assert stepping_off(2.0, count, error)[-1].scatter == pytest.approx(usual, rel=0.045)


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ((0.0, 4, 0.0), "step is 0"),
        ((2.0, 0, 0.1), "number of steps is 0"),
        ((2.0, 2.5, 0.1), "number of steps is 2.5"),
        ((2.0, 4, 2.0), "less than the step"),
        ((2.0, 4, math.nan), "out by nan"),
    ],
)
def test_dividers_that_cannot_be_are_refused(wrong, said):
    with pytest.raises(ImpossibleShape, match=said):
        stepping_off(*wrong)


@given(st.lists(st.floats(-5, 500), min_size=1, max_size=20))
def test_every_mark_of_the_story_stick_is_within_half_a_mark_of_its_line(places):
    rule = Rule.inches(16)
    stick = StoryStick(tuple(PostLine(f"line {number}", each) for number, each in enumerate(sorted(places))))
    assert stick.length == pytest.approx(max(places) - min(places))
    for mark in stick.readings(rule):
        below = mark.reading.endswith(" below")
        read = rule.read(mark.reading.removesuffix(" below")) * (-1 if below else 1)
        assert abs(read - mark.along) <= rule.one_mark / 2 + 1e-9
        assert below is (mark.along < 0)


@pytest.mark.parametrize("marks", [(), (PostLine("top", 3.0), PostLine("datum", 0.0))])
def test_a_stick_without_marks_or_out_of_order_is_refused(marks):
    with pytest.raises(ImpossibleShape, match=r"at least one line|from the lowest"):
        StoryStick(marks)
