"""Board feet, square metres and kilograms, against printed reckonings; panels glued up of several boards."""

from __future__ import annotations

import itertools
import math

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath import board_measure, glue_up
from woodmath.errors import ImpossibleShape, UnknownName

# Pieces, thickness and width in inches, length in feet, board feet. Each READ in a copy of its source.
RECKONED = (
    # Danforth, An Elementary Outline of Mechanical Processes, section 46, items 2 and 3 of the bill of lumber.
    (12, 0.5, 8, 12, 96.0),
    (80, 1.5, 6, 16, 960.0),
    # Noyes, Handwork in Wood, 1910, ch. IV, Essex board measure: 12 feet 10 twelfths, and 8 feet.
    (1, 1, 11, 14, 12 + 10 / 12),
    (1, 1, 12, 8, 8.0),
    # A sawmill's page on board feet: 3 by 8 inches, 10 feet.
    (1, 3, 8, 10, 20.0),
)


@pytest.mark.parametrize(("pieces", "thickness", "width", "feet", "printed"), RECKONED)
def test_a_yard_reckons_board_feet_as_printed(pieces, thickness, width, feet, printed):
    each = board_measure.board_feet(12 * feet, width, thickness, as_sold=True)
    assert pieces * each == pytest.approx(printed, rel=1e-12)


def test_a_board_thinner_than_an_inch_is_sold_as_an_inch_and_a_thicker_one_as_what_it_is():
    # Danforth, section 46 (READ).
    assert board_measure.board_feet(12, 12, 0.5, as_sold=True) == pytest.approx(1)
    assert board_measure.board_feet(12, 12, 0.5) == pytest.approx(0.5)
    assert board_measure.board_feet(12, 12, 1.25, as_sold=True) == pytest.approx(1.25)


def test_a_board_foot_is_about_2360_cubic_centimetres():
    # 2.359737 cubic decimetres, as conversion tables print it (from memory).
    millimetres = 12 * 25.4
    assert board_measure.board_feet(millimetres, millimetres, 25.4, unit="millimetre") == pytest.approx(1)
    assert board_measure.cubic_metres(144, unit="inch") == pytest.approx(2.359737e-3, rel=1e-6)


@pytest.mark.parametrize(
    "rule",
    (
        board_measure.board_feet_derivation,
        board_measure.volume_derivation,
        board_measure.board_volume_derivation,
        board_measure.area_derivation,
        board_measure.mass_derivation,
        board_measure.waste_derivation,
        glue_up.derivation,
    ),
)
def test_every_step_follows(rule):
    assert_every_step_follows(rule())


def test_a_cubic_metre_of_cherry_weighs_what_its_density_says_in_either_unit():
    inches = 1000 / 25.4
    assert board_measure.mass(1000.0**3, 560) == pytest.approx(560)
    assert board_measure.mass(inches**3, 560, unit="inch") == pytest.approx(560)


def test_fifteen_in_the_hundred_is_a_start():
    # WOOD magazine, "How much wood would I need for waste?": add 15 percent to the bill of materials (READ).
    assert board_measure.with_waste(100, 15) == pytest.approx(115)
    assert board_measure.with_waste(100, 0) == pytest.approx(100)


def test_what_is_no_size_is_refused():
    with pytest.raises(ImpossibleShape, match="more than 0"):
        board_measure.board_feet(12, 0, 1)
    with pytest.raises(ImpossibleShape):
        board_measure.board_feet(12, 12, -1, as_sold=True)
    with pytest.raises(UnknownName, match="'inch' or 'millimetre'"):
        board_measure.square_metres(12, 12, unit="cubit")
    with pytest.raises(ImpossibleShape):
        board_measure.with_waste(10, -1)


widths = st.floats(0.5, 2000, allow_nan=False)


@given(panel=widths, board=widths, share=st.floats(0, 0.3))
def test_the_strips_of_a_glued_panel_fit_the_boards_and_make_the_panel(panel, board, share):
    jointing = share * board
    if panel > 50 * (board - jointing):
        return
    made = glue_up.glue_up(panel, board, jointing)
    assert made.strip_width <= board * (1 + 1e-9)
    edges = (0.0, *made.joint_lines, panel)
    between = [after - before for before, after in itertools.pairwise(edges)]
    assert len(between) == made.strips
    assert all(math.isclose(each, between[0], rel_tol=1e-6) for each in between)
    if made.strips > 1:
        assert math.isclose(made.strip_width - jointing, between[0], rel_tol=1e-6)
        # One board fewer would not do.
        assert (made.strips - 1) * (board - jointing) < panel * (1 + 1e-9)


@given(panel=widths, board=widths, low=st.floats(0, 1), high=st.floats(0, 1), share=st.floats(0, 0.3))
def test_boards_of_unequal_widths_keep_their_joints_out_of_a_stretch_and_are_no_fewer(
    panel, board, low, high, share
):
    jointing = share * board
    if panel > 50 * (board - jointing):
        return
    one = board - jointing
    stretch = (min(low, high) * panel, max(low, high) * panel)
    joints = glue_up.joints_clear_of([stretch], panel, board, jointing)
    equal = glue_up.glue_up(panel, board, jointing)
    if joints is None:
        # No board reaches across the stretch.
        assert stretch[1] - stretch[0] > one * (1 - 1e-6)
        return
    assert not any(stretch[0] < joint < stretch[1] for joint in joints)
    edges = (0.0, *joints, panel)
    reach = one if joints else board
    assert all(after - before <= reach * (1 + 1e-6) for before, after in itertools.pairwise(edges))
    assert equal.strips <= len(joints) + 1 <= 2 * equal.strips + 2
    if stretch[0] == stretch[1]:
        assert len(joints) + 1 == equal.strips


def test_the_hounds_end_of_two_boards_has_its_joint_in_a_tenon_and_of_three_has_not():
    # By hand: boards of 8 in bring 7 3/4, so the one joint of 14 1/4 in lies from 6 1/2 to 7 3/4 from an edge, and the
    # middle tenon stands from 5 3/4 to 8 1/2; thirds of the width miss all three tenons.
    assert glue_up.joints_clear_of([(0.5, 4.0), (5.75, 8.5), (10.0, 13.5)], 14.25, 8, 0.25) == (4.75, 9.5)
    assert glue_up.joints_clear_of([(0.5, 4.0), (5.75, 6.5), (8.0, 13.5)], 14.25, 8, 0.25) == (7.125,)
    assert glue_up.joints_clear_of([(3.0, 12.0)], 14.25, 8, 0.25) is None


def test_a_panel_no_wider_than_the_board_has_no_joint():
    assert glue_up.glue_up(9.5, 9.5, 0.125) == glue_up.GlueUp(1, 9.5, ())


def test_a_panel_of_hundreds_of_boards_and_a_board_planed_away_are_refused():
    with pytest.raises(ImpossibleShape, match="boards"):
        glue_up.glue_up(500, 1, 0.1)
    with pytest.raises(ImpossibleShape, match="Planing"):
        glue_up.glue_up(5, 1, 1)
