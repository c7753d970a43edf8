"""Rebate, tongue, groove and bead agree with what is published, and with lengths laid end to end."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath import edges
from woodmath.derivation import Derivation
from woodmath.edges import (
    BOTTOMS,
    FACES,
    GOES_HOME,
    INNER_FACE,
    OUTER_FACE,
    TOO_THICK,
    TWO_TAPS,
    Bead,
    Groove,
    Rebate,
    TongueInGroove,
    hollow_shown,
    panel_set_back,
    passes,
    tenon_may_begin,
)
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.rule import Rule

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
SIXTEENTHS, MILLIMETRES = Rule.inches(16), Rule.millimetres(0.5)

lengths = st.floats(0.01, 3000)
parts = st.floats(0.05, 0.95)
leans = st.floats(0, 85)
faces = st.sampled_from(FACES)

# Rafters by run and pitch: the pitch is the rise over the whole span, twice the run. READ: Noyes, Handwork in
# Wood, 1910, ch. IV, the steel square; printed to a twelfth of a foot's inches. The rafter lies across the run as a
# leaning edge lies across a bead. (run in feet, rise over run, rafter in inches)
RAFTERS = (
    (12.0, 1 / 2, 13 * 12 + 5.0),
    (11.0, 2 / 3, 13 * 12 + 2 + 8 / 12),
    (7.0, 5 / 4, 11 * 12 + 2 + 6 / 12),
)


def rafters_missed(along: Callable[[float, float], float]) -> list[float]:
    """Return the runs whose rafter a rule does not give, to half of the twelfth that is printed."""
    return [
        run
        for run, rise, printed in RAFTERS
        if abs(along(12 * run, math.degrees(math.atan(rise))) - printed) > 1 / 24
    ]


def along_the_edge(reach: float, lean: float) -> float:
    return tenon_may_begin(Bead(width=0.8 * reach, quirk=0.2 * reach), lean)


def test_a_leaning_edge_crosses_the_bead_as_a_published_rafter_crosses_its_run() -> None:
    assert rafters_missed(along_the_edge) == []


def test_a_tangent_or_a_sine_in_place_of_the_cosine_misses_every_rafter() -> None:
    assert len(rafters_missed(lambda reach, lean: reach / math.sin(math.radians(lean)))) == len(RAFTERS)
    assert len(rafters_missed(lambda reach, lean: reach * math.cos(math.radians(lean)))) == len(RAFTERS)
    assert len(rafters_missed(lambda reach, lean: reach)) == len(RAFTERS)


def test_a_rebate_of_half_a_three_quarter_board_is_three_eighths_deep() -> None:
    # Common practice: a rebate takes half of a 3/4 board.
    rebate = Rebate(board=3 / 4, tongue=3 / 8, width=3 / 8)
    assert rebate.share == 0.5
    assert rebate.depth == 3 / 8


def test_a_groove_of_a_third_of_the_frame_leaves_a_third_on_either_side() -> None:
    # READ: Noyes, Handwork in Wood, 1910, ch. VII, joint no. 42: the groove ordinarily a third of the frame's
    # thickness, and about as deep as wide. READ: WOOD magazine, mortises and tenons: 1/4 in stock of 3/4.
    groove = Groove(width=1 / 4, depth=1 / 4)
    assert groove.left_beside(post=3 / 4, set_back=1 / 4) == (1 / 4, 1 / 4)
    assert groove.width / (3 / 4) == pytest.approx(1 / 3)


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat-bed", "log-box"])
def test_the_tongues_of_the_demo_pieces_are_as_thick_and_as_long_as_the_books_allow(piece: Piece) -> None:
    # READ: WOOD magazine, mortises and tenons: up to a third of the thicker part. READ: Noyes, no. 42: a groove
    # is about as deep as it is wide; taken as between half and the whole of it.
    tongue, thick = piece.joint.tongue, piece.joint.tenon_thickness
    assert tongue is not None
    assert thick <= piece.post.square / 3
    assert 0.5 <= tongue.groove_depth / thick <= 1.0


def test_a_bead_of_a_quarter_inch_has_an_eighth_for_its_radius() -> None:
    # Common practice: a bead protects an arris by about a quarter of an inch. Its round is a half circle.
    bead = Bead(width=1 / 4, quirk=1 / 16)
    assert (bead.radius, bead.quirk_depth, bead.reach) == (1 / 8, 1 / 8, 5 / 16)


def test_two_taps_take_the_groove_a_quarter_inch_further_in_either_unit() -> None:
    # Common practice, without a source: the data say so themselves.
    assert TWO_TAPS.mark == "common practice"
    assert TWO_TAPS.taps_along(1 / 4, SIXTEENTHS) == 2
    assert TWO_TAPS.taps_along(6.35, MILLIMETRES) == 2
    assert TWO_TAPS.taps_along(8, SIXTEENTHS) == 64
    assert TWO_TAPS.taps_along(8.1, SIXTEENTHS) == 65


def test_the_cats_bed_worked_by_hand() -> None:
    # Board 7/8, tongue 1/2: the rebate takes 3/8. Set-back 1/2 less 3/8: the panel lies 1/8 behind the post.
    rebate = Rebate(board=7 / 8, tongue=1 / 2, width=5 / 16)
    assert (rebate.depth, rebate.stop, rebate.fence, rebate.left) == (3 / 8, 3 / 8, 5 / 16, 1 / 2)
    assert panel_set_back(1 / 2, 7 / 8, 1 / 2, OUTER_FACE) == 1 / 8
    assert panel_set_back(1 / 2, 7 / 8, 1 / 2, INNER_FACE) == 1 / 2
    # Groove 3/8 deep in a post of 1 3/4: 1 3/8 under it, 1/2 outside and 3/4 inside.
    groove = Groove(width=1 / 2, depth=3 / 8)
    assert groove.left_under(1.75) == 1.375
    assert groove.left_beside(1.75, 1 / 2) == (1 / 2, 3 / 4)
    assert groove.router_setting == 3 / 8
    # The edge goes outward 1 1/4 on 8: the slope is the root of 64 + 1.5625, and 5/16 of reach grow with it.
    slope = math.sqrt(8**2 + 1.25**2)
    lean = math.degrees(math.atan2(1.25, 8))
    assert tenon_may_begin(Bead(1 / 4, 1 / 16), lean) == pytest.approx(5 / 16 * slope / 8)


@settings(deadline=None)
@given(lengths, parts, lengths)
def test_rebate_and_tongue_together_are_the_board(board: float, part: float, width: float) -> None:
    rebate = Rebate(board, part * board, width)
    assert rebate.depth + rebate.left == pytest.approx(board)
    assert rebate.share * board == pytest.approx(rebate.depth)


@settings(deadline=None)
@given(lengths, lengths, parts)
def test_the_other_face_moves_the_panel_by_the_depth_of_the_rebate(
    set_back: float, board: float, part: float
) -> None:
    tongue = part * board
    outer, inner = (panel_set_back(set_back, board, tongue, face) for face in (OUTER_FACE, INNER_FACE))
    assert inner - outer == pytest.approx(Rebate(board, tongue, 1.0).depth, abs=1e-9)
    assert inner == set_back


@settings(deadline=None)
@given(lengths, lengths, parts, faces)
def test_the_tongues_outer_cheek_stands_at_the_set_back_whatever_the_face(
    set_back: float, board: float, part: float, face: str
) -> None:
    # Laid end to end from the post's outer face: the panel's face, what is taken off it, the tongue.
    tongue = part * board
    taken = board - tongue if face == OUTER_FACE else 0.0
    assert panel_set_back(set_back, board, tongue, face) + taken == pytest.approx(set_back, abs=1e-9)


def test_a_thick_panel_rebated_from_outside_stands_proud_of_its_post() -> None:
    assert panel_set_back(set_back=0.25, board=1.0, tongue=0.5, rebated_from=OUTER_FACE) == -0.25


@settings(deadline=None)
@given(lengths, parts, parts)
def test_the_groove_and_what_it_leaves_beside_it_are_the_post(post: float, part: float, other: float) -> None:
    set_back = part * post
    width = other * (post - set_back)
    outside, inside = Groove(width, 0.3 * post).left_beside(post, set_back)
    assert outside + width + inside == pytest.approx(post)


@settings(deadline=None)
@given(lengths, st.floats(0.01, 1.5))
def test_the_last_pass_reaches_the_depth_and_the_one_before_does_not(depth: float, share: float) -> None:
    per_pass = share * depth
    count = passes(depth, per_pass)
    assert count * per_pass >= depth * (1 - 1e-8)
    assert (count - 1) * per_pass < depth


def test_three_passes_of_an_eighth_make_three_eighths_and_not_four() -> None:
    assert passes(3 / 8, 1 / 8) == 3
    assert passes(0.3, 0.1) == 3  # 0.3 / 0.1 is a hair under 3 in floats, and 0.7 / 0.1 a hair over 7
    assert passes(0.7, 0.1) == 7
    assert Groove(0.5, 0.4).passes(1 / 8) == 4


def test_a_tongue_longer_than_its_groove_is_deep_holds_the_shoulder_open_by_the_difference() -> None:
    edge = TongueInGroove(tongue_length=1 / 2, groove_depth=3 / 8, tongue_thickness=1 / 2, groove_width=1 / 2)
    assert edge.verdict == BOTTOMS
    assert edge.shoulder_gap == 1 / 8
    assert "stands off by 1/8 in" in edge.told(SIXTEENTHS)
    assert not edge.allows(0)


def test_a_tongue_thicker_than_its_groove_does_not_go_in() -> None:
    edge = TongueInGroove(8, 10, 12.5, 12)
    assert edge.verdict == TOO_THICK
    assert edge.side_play == -0.5
    assert "thicker than its groove by 0.5 mm" in edge.told(MILLIMETRES)


def test_a_tongue_that_just_touches_the_floor_is_told_to_be_given_a_clearance() -> None:
    edge = TongueInGroove(10, 10, 12, 12)
    assert edge.verdict == GOES_HOME
    assert "leave it a clearance" in edge.told(MILLIMETRES)
    assert edge.allows(0) and not edge.allows(0.1)


@settings(deadline=None)
@given(lengths, lengths, parts)
def test_the_clearance_is_the_season_that_a_tongue_allows(
    length: float, clearance: float, share: float
) -> None:
    edge = TongueInGroove(length, length + clearance, 1, 1, end_clearance=clearance)
    assert edge.floor_clearance == pytest.approx(clearance, abs=1e-9)
    for allows in (edge.allows, edge.allows_along):
        assert allows(share * clearance)
        assert not allows(clearance * 1.001 + 1e-6)


@settings(deadline=None)
@given(lengths, lengths, leans)
def test_an_edge_that_leans_either_way_crosses_more_of_the_bead(
    width: float, quirk: float, lean: float
) -> None:
    bead = Bead(width, quirk)
    begins = tenon_may_begin(bead, lean)
    assert begins >= bead.reach * (1 - 1e-12)
    assert tenon_may_begin(bead, -lean) == begins
    # A point so far along the edge lies level with the quirk's far side.
    assert begins * math.cos(math.radians(lean)) == pytest.approx(bead.reach)


@settings(deadline=None)
@given(lengths, lengths, leans, st.floats(0, 2))
def test_a_tenon_that_begins_where_it_may_shows_no_hollow(
    width: float, quirk: float, lean: float, share: float
) -> None:
    bead = Bead(width, quirk)
    begins = tenon_may_begin(bead, lean)
    place = share * begins
    assert place + hollow_shown(bead, place, lean) == pytest.approx(max(place, begins))


def test_a_tenon_laid_out_before_the_bead_was_known_shows_the_quirk() -> None:
    assert hollow_shown(Bead(1 / 4, 1 / 16), place=1 / 4) == 1 / 16
    assert hollow_shown(Bead(1 / 4, 1 / 16), place=3 / 4) == 0


def test_the_bead_of_a_piece_serves_as_well_as_ours() -> None:
    assert CAT_BED.bead is not None
    assert tenon_may_begin(CAT_BED.bead) == 5 / 16


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: Rebate(0.5, 0.5, 0.25), "thinner than the board: choose a thinner tongue"),
        (lambda: Rebate(0.5, 0.75, 0.25), "given: board 0.5, tongue 0.75"),
        (lambda: Rebate(0.5, 0.25, 0), "width is 0, and it must be more than 0"),
        (lambda: Rebate(math.nan, 0.25, 1), "board is nan; give a plain number"),
        (lambda: panel_set_back(1, 2, 1, "face side"), "'face side' is neither. Name one of the two"),
        (lambda: panel_set_back(-1, 2, 1, OUTER_FACE), "set back is -1, and it cannot be less than 0"),
        (lambda: panel_set_back(1, 1, 2, INNER_FACE), "thinner than the board"),
        (lambda: Groove(0, 1), "width is 0"),
        (lambda: Groove(1, -1), "depth is -1"),
        (lambda: Groove(1, 1).passes(0), "per pass is 0"),
        (lambda: Groove(1, 1).left_beside(1.5, 0.5), "runs out through the post's inner face"),
        (lambda: Groove(1, 2).left_under(2), "goes through a post of 2"),
        (lambda: TWO_TAPS.taps_along(0, SIXTEENTHS), "length is 0"),
        (lambda: TongueInGroove(0, 1, 1, 1), "tongue length is 0"),
        (lambda: TongueInGroove(1, 1, 1, 1, -1), "end clearance is -1"),
        (lambda: TongueInGroove(1, 1, 1, 1).allows(-1), "movement is -1"),
        (lambda: Bead(0, 1), "width is 0"),
        (lambda: Bead(1, math.inf), "quirk is inf"),
        (lambda: tenon_may_begin(Bead(1, 1), 90), "leans by less than 90 degrees"),
        (lambda: tenon_may_begin(Bead(1, 1), -120), "leans by less than 90 degrees"),
        (lambda: hollow_shown(Bead(1, 1), -1), "place is -1"),
    ],
)
def test_edges_that_cannot_be_made_are_refused_with_what_to_change(
    make: Callable[[], object], said: str
) -> None:
    with pytest.raises(ImpossibleShape, match=said):
        make()


@pytest.mark.parametrize(
    "derived",
    [
        edges.rebate_derivation,
        edges.share_derivation,
        edges.panel_derivation,
        edges.inner_face_derivation,
        edges.groove_derivation,
        edges.floor_derivation,
        edges.play_derivation,
        edges.taps_derivation,
        edges.reach_derivation,
        edges.radius_derivation,
        edges.aslant_derivation,
        edges.begin_derivation,
    ],
)
def test_every_step_of_the_edges_rules_follows(derived: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derived())
