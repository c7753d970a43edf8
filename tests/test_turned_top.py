"""The turned tops of a piece: read from its file, weighed, drawn, printed, remarked on, in their place in the work."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from scipy.integrate import quad

from woodmath.case import Case
from woodmath.case_solids import post_solid, turned_slices
from woodmath.errors import BadPiece, ImpossibleShape
from woodmath.findings_turned import turned_findings
from woodmath.order_of_work import steps_of
from woodmath.packet import contents_of
from woodmath.parts import parts_of
from woodmath.pattern_turned import turned_pattern
from woodmath.patterns import patterns_of
from woodmath.piece import Piece
from woodmath.piece_file import demo_text
from woodmath.piece_origin import scaled_piece
from woodmath.piece_turned import TurnedStation, TurnedTop
from woodmath.piece_writing import piece_text
from woodmath.second_moments import solid_body
from woodmath.solids import Solid
from woodmath.turned_profile import TurnedProfile
from woodmath.turning_card import LATHE_CAUTIONS, turning_card, turning_cards
from woodmath.views.turned_seen import turned_from_the_end
from woodmath.views.turned_top import turned_top

CAT_BED, HOUND_BED, LOG_BOX = (Piece.demo(name) for name in ("cat-bed", "hound-bed", "log-box"))


def square_to_its_end(piece: Piece) -> Piece:
    return replace(piece, post=replace(piece.post, turned=None))


def turned(piece: Piece, *stations: tuple[float, float, str]) -> Piece:
    top = TurnedTop(tuple(TurnedStation(*station) for station in stations))
    return replace(piece, post=replace(piece.post, turned=top))


def profile_of(piece: Piece) -> TurnedProfile:
    assert piece.post.turned is not None
    return piece.post.turned.profile()


@pytest.mark.parametrize("piece", [CAT_BED, HOUND_BED], ids=["cat", "hound"])
def test_the_solid_holds_what_an_integrator_finds_and_lies_where_it_does(piece: Piece) -> None:
    case, profile = Case.of(piece), profile_of(piece)
    body = solid_body(Solid(turned_slices(piece, case)))
    amount = moment = 0.0
    for one, other in pairwise(profile.stations):
        stretch = TurnedProfile((one, other))
        for power, add in ((0, "amount"), (1, "moment")):
            found = quad(
                lambda x, s=stretch, p=power: (
                    x**p * math.pi * s.diameter_at(min(max(x, s.start), s.end)) ** 2 / 4
                ),
                one.place,
                other.place,
            )[0]
            amount, moment = (amount + found, moment) if add == "amount" else (amount, moment + found)
    assert body.amount == pytest.approx(amount, rel=1e-6)
    y, z = case.at(case.panel[1] + moment / amount, case.square / 2)
    assert body.centre[1:] == pytest.approx((y, z), rel=1e-3)
    assert body.centre[0] == pytest.approx(case.half_length + case.square / 2)


def test_a_turned_post_loses_the_square_and_gains_the_turning() -> None:
    plain, case = square_to_its_end(CAT_BED), Case.of(CAT_BED)
    before, after = (post_solid(piece, Case.of(piece)).volume for piece in (plain, CAT_BED))
    # By hand: 1 1/4 of square, 1 3/4 by 1 3/4, is 3.828; the turning is integrated above.
    assert before - after == pytest.approx(1.25 * 1.75**2 - profile_of(CAT_BED).volume)
    assert case.square_top == pytest.approx(Case.of(plain).top - 1.25)
    assert parts_of(CAT_BED)[0].length == parts_of(plain)[0].length == 14


def test_the_turning_of_the_cats_bed_on_paper() -> None:
    # Cylinders: two of 1/16 by 1 5/16. The bead: two halves of 1/8, from 0.65625 to 0.8125 in radius; half a cove of
    # 1/8, from 0.65625 down to 0.5; the ball 3/8 and 3/8, from 0.5 and from 0.125 to 0.75. A half bead holds
    # πl (r² + πrh/2 + 2h²/3), half a cove πl (R² - πRh/2 + 2h²/3), h being how much the radius grows.
    def bead(length: float, r: float, h: float) -> float:
        return math.pi * length * (r * r + math.pi * r * h / 2 + 2 * h * h / 3)

    cylinders = 2 * math.pi / 16 * 0.65625**2
    cove = math.pi / 8 * (0.65625**2 - math.pi * 0.65625 * 0.15625 / 2 + 2 * 0.15625**2 / 3)
    by_hand = (
        cylinders
        + 2 * bead(0.125, 0.65625, 0.15625)
        + cove
        + bead(0.375, 0.5, 0.25)
        + bead(0.375, 0.125, 0.625)
    )
    assert profile_of(CAT_BED).volume == pytest.approx(by_hand)
    assert by_hand == pytest.approx(1.8036, abs=0.0001)


def test_a_file_is_read_and_written_with_its_stations() -> None:
    assert Piece.from_text(piece_text(CAT_BED)).post == CAT_BED.post
    assert CAT_BED.post.turned is not None and len(CAT_BED.post.turned.stations) == 8
    wrong = demo_text("cat-bed").replace('to_next = "hollow"', 'to_next = "hollowed"')
    with pytest.raises(BadPiece, match=r"post.turned.stations, number 5, to_next.*did you mean .hollow"):
        Piece.from_text(wrong)


def test_a_scaled_piece_keeps_the_thicknesses_and_still_ends_at_the_posts_top() -> None:
    large = scaled_piece(CAT_BED, "7/4", "Larger")
    for one, other in zip(profile_of(CAT_BED).stations, profile_of(large).stations, strict=True):
        assert other.diameter == one.diameter and other.place == pytest.approx(one.place * 1.75)
    assert profile_of(large).end == pytest.approx(large.post.top)
    assert list(turned_findings(large)) == []


@pytest.mark.parametrize("piece", [CAT_BED, HOUND_BED, LOG_BOX], ids=["cat", "hound", "log"])
def test_the_demo_pieces_can_be_turned(piece: Piece) -> None:
    assert list(turned_findings(piece)) == []


ROUND_END = (2.0, 1.0, "straight")


@pytest.mark.parametrize(
    ("stations", "severity", "said"),
    [
        (((0.75, 1.875, "straight"), ROUND_END), "stop", "largest round in a square of 1 3/4"),
        (((0.75, 1.0, "straight"), (2.25, 1.0, "straight")), "stop", "lies 2 1/4 above the panels"),
        (((0.75, 1.0, "straight"), (1.75, 1.0, "straight")), "caution", "the rest is not drawn"),
        (((-0.25, 1.0, "straight"), ROUND_END), "stop", "below the panels' upper edge"),
        (
            ((0.75, 1.0, "hollow"), (1.0, 0.5, "hollow"), (1.5, 1.5, "straight"), ROUND_END),
            "caution",
            "less than a third of the square",
        ),
        (((0.75, 1.0, "straight"), (0.5, 1.0, "straight")), "stop", "before station 1"),
        (((0.75, 1.0, "straight"),), "stop", "at least 2"),
    ],
)
def test_what_the_master_says_of_a_turned_top(
    stations: tuple[tuple[float, float, str], ...], severity: str, said: str
) -> None:
    found = [*turned_findings(turned(CAT_BED, *stations))]
    assert any(each.severity == severity and said in str(each) for each in found), found


def test_a_mortise_close_under_the_turning_is_remarked_on() -> None:
    low_top = turned(CAT_BED, (0.0, 1.0, "straight"), ROUND_END)
    # Up to the panels' edge at 8.097 the tenon leaves 8.097 - 7.25 = 0.847, less than an inch.
    assert any("square wood" in str(each) for each in turned_findings(low_top))
    tenons = (replace(CAT_BED.joint.tenons[1], place=6.0),)
    through = replace(low_top, joint=replace(CAT_BED.joint, tenons=tenons))
    assert any("into the turning" in str(each) for each in turned_findings(through))


def test_the_turning_card_reads_what_the_file_says_and_leaves_a_thirty_second() -> None:
    card = turning_card(CAT_BED)
    assert [row[1] for row in card.rows] == ["0", "1/16", "3/16", "5/16", "3/8", "1/2", "7/8", "1 1/4"]
    assert [row[2] for row in card.rows][:3] == ["1 5/16", "1 5/16", "1 5/8"]
    assert [row[3] for row in card.rows][:3] == ["1 11/32", "1 11/32", "1 21/32"]
    assert set(LATHE_CAUTIONS) <= set(card.notes)
    told = " ".join(card.notes).lower()
    for word in ("face shield", "no gloves", "hair", "by hand", "rest", "plug", "mask", "stopped work"):
        assert word in told
    assert turning_cards(LOG_BOX) == ()
    with pytest.raises(ImpossibleShape, match=r"Add \[post.turned\]"):
        turning_card(LOG_BOX)


def test_the_order_of_work_turns_after_every_mortise_and_before_any_glue() -> None:
    told = [step.what for step in steps_of(CAT_BED)]

    def place(words: str) -> int:
        return next(number for number, step in enumerate(told) if words in step)

    assert (
        place("Bore the end's mortises")
        < place("Saw the tenons out of")
        < place("turn them by the turning card")
    )
    assert place("middle of both ends") < place("turn them by") < place("the tenons on the posts' feet")
    assert place("turn them by") < place("together dry") < place("Pare the nibs")
    assert not any("shape them last" in step for step in told)
    (turning,) = (step for step in steps_of(CAT_BED) if "turning card" in step.what)
    assert "no face to gauge from" in turning.what.replace("\n", " ") and "gloves" in turning.caution
    assert any("shape them last" in step.what for step in steps_of(LOG_BOX))


def test_the_packet_has_the_card_and_the_pattern_and_that_of_a_square_post_has_neither() -> None:
    contents = contents_of(CAT_BED)
    assert "Turning card" in [card.title for card in contents.before_patterns]
    assert "Turned top, profile and template" in [pattern.name for pattern in contents.patterns]
    plain = contents_of(LOG_BOX)
    assert "Turning card" not in [card.title for card in plain.before_patterns]
    assert not any("Turned" in pattern.name for pattern in patterns_of(LOG_BOX))


@pytest.mark.parametrize("piece", [CAT_BED, HOUND_BED], ids=["cat", "hound"])
def test_the_pattern_measures_what_the_card_says(piece: Piece) -> None:
    pattern, profile = turned_pattern(piece, Case.of(piece)), profile_of(piece)
    known = {each.name: each.length for each in pattern.known_lengths}
    left_on = 1 / 32
    for number, station in enumerate(profile.stations, 1):
        assert known[f"calipers at station {number}"] == pytest.approx(station.diameter + left_on)
        if number > 1:
            assert known[f"from the square to station {number}"] == pytest.approx(
                station.place - profile.start
            )
    assert known["the square"] == piece.post.square


def test_the_end_shows_the_top_on_the_posts_own_axis() -> None:
    case = Case.of(CAT_BED)
    points = [point for shape in turned_from_the_end(CAT_BED, case) for point in shape.points]
    # The highest point lies over the axis at the post's top: half the nib aside, and at its height.
    x, y = case.at(case.top, case.square / 2)
    assert any(math.dist(point, (x, y)) <= 0.125 + 1e-9 for point in points)
    assert max(height for _, height in points) <= y + 0.75


def test_the_sliders_begin_with_the_pieces_own_top() -> None:
    for piece in (CAT_BED, HOUND_BED):
        drawing = turned_top.drawing(piece)
        assert drawing.faults == ()
        settings = turned_top.settings(piece)
        assert settings["begins"] == profile_of(piece).start and settings["top"] == profile_of(piece).end
    assert turned_top.drawing(LOG_BOX).faults == ()
    assert "too little" in turned_top.drawing(CAT_BED, begins=2.0).faults[0]
    assert "largest round" in " ".join(turned_top.drawing(CAT_BED, bead=2.0).faults)
