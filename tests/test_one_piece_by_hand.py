"""The cat's bed worked through as a maker would, with a pencil: every number by plain arithmetic, then the package's.

Nothing here calls a formula of the package to get at its own number. What is typed was worked out on paper, to
four places; the rule reads to a sixteenth.
"""

from __future__ import annotations

import math

import pytest

from woodmath.bead import tenon_may_begin
from woodmath.case import Case
from woodmath.case_solids import bottom_solid, foot_tenon_cheeks
from woodmath.parts import parts_of
from woodmath.piece import Piece
from woodmath.rebate import Rebate

BED = Piece.demo("cat-bed")
CASE = Case.of(BED)
MARK = BED.rule.mark
PENCIL = 0.0002
"""Four places on paper, the last of them rounded."""

OUT, HEIGHT = 1.25, 8.0
"""13 above less 10 1/2 below is 2 1/2; each edge goes out by half of that, over a height of 8."""
SLOPE = 8.0971
"""8 times 8 is 64, 1.25 times 1.25 is 1.5625, and 8.0971 times itself is 65.563."""
STEEP = 1.0121
"""The slope over the height: so much longer is a level cut than a square one."""


def test_first_the_end_its_slope_and_its_lean():
    assert abs(SLOPE**2 - 65.5625) < 0.001
    assert CASE.slope_length == pytest.approx(SLOPE, abs=PENCIL)
    # 1.25 over 8 is 0.15625; the table of tangents gives 8 degrees 53 minutes for 0.1563 (from memory).
    assert CASE.splay == pytest.approx(8 + 53 / 60, abs=1 / 60)


def test_the_side_is_ripped_to_the_slope_and_not_to_the_height():
    side = next(part for part in parts_of(BED) if part.name == "side panel")
    assert side.width == pytest.approx(SLOPE, abs=PENCIL)
    assert MARK(side.width) == "8 1/8"
    # 18 between the shoulders, and a tenon of 1 3/16 at both ends.
    assert side.length == pytest.approx(18 + 2 * 1.1875)


def test_all_lines_of_the_post_from_the_shoulder_up():
    lower, upper = CASE.panel
    assert (lower, upper) == pytest.approx((3, 3 + SLOPE), abs=PENCIL)
    assert list(CASE.tenons) == [
        pytest.approx((3.75, 6.25)),
        pytest.approx((7.75, 10.25)),
    ]
    assert CASE.top == pytest.approx(13.0971, abs=PENCIL)
    assert [MARK(line) for line in (lower, *CASE.tenons[0], *CASE.tenons[1], upper, CASE.top)] == [
        "3",
        "3 3/4",
        "6 1/4",
        "7 3/4",
        "10 1/4",
        "11 1/8",
        "13 1/8",
    ]


def test_the_rebate_leaves_the_tongue_and_sets_the_panel_back():
    rebate = Rebate(board=0.875, tongue=0.5, width=0.3125)
    # 7/8 less 1/2 is 3/8; the tongue's outer cheek is 1/2 behind the post's face, so the board is 1/8 behind it.
    assert rebate.depth == pytest.approx(3 / 8)
    assert CASE.end_face == CASE.side_face == pytest.approx(1 / 8)


def test_the_bead_comes_before_the_tongue():
    # 1/4 and 1/16 are 5/16; up the slope that is 1.0121 times as much.
    reach = 0.3125 * STEEP
    assert tenon_may_begin(BED.bead, CASE.splay) == pytest.approx(reach, abs=PENCIL)
    assert CASE.tongues[0][0] == pytest.approx(3 + reach, abs=PENCIL)
    # The groove is longer by the clearance of 1/16.
    assert CASE.grooves[0][0] == pytest.approx(3 + reach - 0.0625, abs=PENCIL)
    # The first tenon begins at 3/4: clear of the bead.
    assert reach < 0.75


def test_the_tenons_meet_on_the_diagonal_and_stop_short_by_the_clearance():
    tenon = CASE.joint.tenon
    # From the inside face 1 3/4 less the other mortise's set-back of 1/2, less 1/16.
    assert tenon.reach == pytest.approx(1.75 - 0.5 - 0.0625)
    assert MARK(tenon.reach) == "1 3/16"
    # The short point is a thickness less, since equal thicknesses make 45 degrees.
    assert min(tenon.outer_cheek, tenon.inner_cheek) == pytest.approx(1.1875 - 0.5)
    assert tenon.bevel == pytest.approx(45)


def test_the_ends_blank_is_as_long_as_the_upper_tenons_ask_for():
    end = next(part for part in parts_of(BED) if part.name == "end panel")
    # At 7 1/4 of 8.0971 up the slope the half width is 5.25 and 1.25 times 7.25 / 8.0971, 6.3692; a tenon of
    # 1 3/16 square to the slope reaches 1.1875 / 1.0121, 1.1733, farther on the level.
    half = 5.25 + 1.25 * 7.25 / SLOPE + 1.1875 / STEEP
    assert half == pytest.approx(7.5425, abs=PENCIL)
    assert end.length == pytest.approx(2 * half, abs=2 * PENCIL)
    assert MARK(end.length) == "15 1/16"


def test_the_foots_tenon_has_room_and_the_post_is_long_enough():
    level = 1.75 * STEEP
    room = level - 0.75 * 0.15625
    inner, outer = foot_tenon_cheeks(CASE, BED.rocker.tenon)
    assert outer - inner == pytest.approx(1.25)
    shoulder = (room - 1.25) / 2
    assert shoulder == pytest.approx(0.202, abs=0.001)
    assert inner - CASE.half_foot == pytest.approx(shoulder, abs=PENCIL)
    # Down 3/4 at the cosine, 8 / 8.0971, less the inset at the sine, 1.25 / 8.0971.
    needed = 0.75 * HEIGHT / SLOPE - shoulder * OUT / SLOPE
    assert needed == pytest.approx(0.7098, abs=PENCIL)
    assert BED.post.length - CASE.top > needed


def test_the_rockers_ellipse_its_pins_and_its_string():
    # As round below as a circle of 30: a² is 30 b. Through the heels, 9 1/2 out and 2 up: 4 - 4 / b is 90.25 / 30.
    b = 4 / (4 - 90.25 / 30)
    a = math.sqrt(30 * b)
    c = math.sqrt(a * a - b * b)
    ellipse = BED.ellipse()
    assert (a, b, c) == pytest.approx((11.0004, 4.0336, 10.2342), abs=PENCIL)
    assert (ellipse.half_length, ellipse.half_height) == pytest.approx((a, b))
    assert MARK(ellipse.pin_spacing) == MARK(20.4684) == "20 7/16"
    assert MARK(ellipse.loop) == MARK(2 * 11.0004 + 20.4684) == "42 1/2"


def test_the_bottom_lies_between_the_leaning_sides():
    # The side's inner face lies 1 3/4 less 1/8 less 7/8, 3/4, behind the post's inside face; on the level 1.0121
    # times that. The post's inside face itself is 5 1/4 from the middle at the panel's lower edge.
    def half(height: float) -> float:
        return 5.25 + height * 0.15625 + 0.75 * STEEP - 0.125

    outline = bottom_solid(BED, CASE).added[0].outline
    (_, _), (under, _), (over, _), (_, _) = outline
    assert (under, over) == pytest.approx((half(0.75), half(1.25)), abs=PENCIL)
    bottom = next(part for part in parts_of(BED) if part.name == "bottom board")
    assert MARK(bottom.width) == "12 3/16"
    # 21 1/2 over the posts, less twice 1/8, 7/8 and the clearance of 1/8.
    assert bottom.length == pytest.approx(21.5 - 2 * (0.125 + 0.875 + 0.125))


def test_the_brace_is_counted():
    bit = BED.auger_bit()
    depth = CASE.joint.tenon.reach + BED.joint.end_clearance
    assert depth == pytest.approx(1.25)
    # Twelve threads to the inch: 15 turns from the lips' first cut, and 5/16 of screw are 3 3/4 turns before that.
    assert bit.turns(depth, "lips") == pytest.approx(15)
    assert bit.turns(depth, "screw") == pytest.approx(18.75)


def test_a_posts_wood_weighed_on_paper():
    post = next(part for part in parts_of(BED) if part.name == "post")
    # The stick from the shoulder to where the turning begins, 11.8471 long on the inside, less half of what the level
    # foot cuts away; and the turned top, summed stretch by stretch in tests/test_turned_top.py.
    stick = 1.75**2 * (11.8471 - 1.75 * 0.15625 / 2) + 1.8036
    tenon = 0.5 * 1.25 * 0.75
    # Each mortise pair is two of 1/2 by 1 1/4, sharing 1/2 by 1/2, over 2 1/2; the grooves are 1/2 by 3/8, two
    # of them, from 3.2538 to 10.8433 less the two mortises.
    mortises = 2 * 2.5 * (2 * 0.5 * 1.25 - 0.25)
    grooves = 2 * 0.5 * 0.375 * ((3 + SLOPE - 0.3163 + 0.0625) - (3 + 0.3163 - 0.0625) - 5.0)
    assert post.volume == pytest.approx(stick + tenon - mortises - grooves, abs=0.01)
