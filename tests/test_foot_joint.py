"""The tenon of a leaning post's foot, against the figure drawn out point by point."""

import math

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath import foot_joint

SPLAYS = st.floats(0, 30)
LENGTHS = st.floats(0.2, 3)


@pytest.mark.parametrize(
    "derivation",
    [
        foot_joint.room_derivation,
        foot_joint.post_needed_derivation,
    ],
)
def test_every_step_follows(derivation):
    # The splay comes from the panel; nobody works it out from the foot.
    assert_every_step_follows(derivation(), not_asked=frozenset({"splay"}))


def test_an_upright_post_gives_its_whole_square_and_needs_just_the_tenon():
    assert foot_joint.level_width(1.75, 0) == 1.75
    assert foot_joint.room(1.75, 0, 0.75) == 1.75
    assert foot_joint.post_needed(0.75, 0, 0.25) == 0.75


def test_a_three_four_five_post_can_be_measured_on_squared_paper():
    splay = math.degrees(math.atan2(3, 4))
    assert foot_joint.level_width(8, splay) == pytest.approx(10)
    assert foot_joint.room(8, splay, 4) == pytest.approx(7)
    assert foot_joint.post_needed(10, splay, 5) == pytest.approx(5)


@given(SPLAYS, LENGTHS, st.floats(0, 1))
def test_the_tenon_drawn_in_its_room_lies_in_the_post_and_ends_where_the_post_may_end(splay, length, share):
    square = 1.75
    lean = math.radians(splay)
    wide, room = foot_joint.level_width(square, splay), foot_joint.room(square, splay, length)
    if room <= 0:
        return
    inset = share * room
    # The post between two lines that lean; the tenon's corners are at its shoulder and at its end.
    for down in (0.0, length):
        inner_face, outer_face = -down * math.tan(lean), wide - down * math.tan(lean)
        assert inner_face - 1e-9 <= inset <= outer_face + 1e-9
    needed = foot_joint.post_needed(length, splay, inset)
    for across in (inset, room):
        for down in (0.0, length):
            along = across * math.sin(lean) - down * math.cos(lean)
            assert along >= -needed - 1e-9
