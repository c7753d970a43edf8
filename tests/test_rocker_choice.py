"""Choosing the rocker: every wish is kept, and one that cannot be is told with what would do instead."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest
from benchmarks.choice_speed import compared
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.piece_file import demo_text
from woodmath.rocker_choice import Wish, choose_rocker, ways_out
from woodmath.rocker_choice_derivations import (
    half_chord_derivation,
    least_heel_angle_derivation,
    shallow_heel_angle_derivation,
)

DEMOS = ("cat-bed", "hound-bed")

wishes = st.builds(
    Wish,
    period=st.floats(0.3, 2.0),
    rolling_limit=st.floats(4, 60),
    rise=st.floats(0.25, 6),
)


def test_every_step_of_the_rockers_length_follows() -> None:
    assert_every_step_follows(half_chord_derivation())
    # Nobody asks back for the curve from the angle at the heel, and sympy thinks about it for seconds.
    assert_every_step_follows(shallow_heel_angle_derivation(), frozenset({"shallowness", "radius"}))
    assert_every_step_follows(least_heel_angle_derivation())


@given(st.floats(0.5, 60), st.floats(0.2, 5), st.floats(0.02, 0.999))
def test_the_length_found_has_the_slope_and_the_rise_that_were_asked_for(
    half_length: float, squatness: float, part: float
) -> None:
    oval = Ellipse(half_length, half_length / squatness)
    half_chord = part * half_length
    rise, tilt = oval.height_at(half_chord), oval.angle_at(half_chord)
    found = half_chord_derivation().function("half_chord")(
        rise=rise, radius=oval.radius_at_bottom, heel_angle=tilt
    )
    assert found == pytest.approx(half_chord, rel=1e-7)
    assert tilt > least_heel_angle_derivation().function("heel_angle")(
        rise=rise, radius=oval.radius_at_bottom
    )


def test_at_the_least_tilt_the_rocker_would_be_a_parabola() -> None:
    # y = x² / 2R rises s where x² = 2Rs, and is 2s/x steep there: any book of conic sections (from memory).
    least = least_heel_angle_derivation().function("heel_angle")(rise=2.0, radius=30.0)
    assert math.tan(math.radians(least)) == pytest.approx(2 * 2.0 / math.sqrt(2 * 30.0 * 2.0), rel=1e-12)


@pytest.mark.parametrize("name", DEMOS)
@settings(max_examples=60, deadline=None)
@given(wish=wishes, load=st.booleans())
def test_a_chosen_rocker_keeps_all_three_wishes_and_a_refused_one_says_what_would_do(
    name: str, wish: Wish, load: bool
) -> None:
    piece = Piece.demo(name)
    try:
        found = choose_rocker(piece, wish, load)
    except ImpossibleShape as refusal:
        assert re.search(r"at most|at least|change two of them", str(refusal))
        for way in ways_out(piece, wish, load):
            assert way.by_how_much > 0
            choose_rocker(piece, replace(wish, **{way.wish: way.nearest}), load)
            still_too_far = way.given + (way.nearest - way.given) * 0.99
            with pytest.raises(ImpossibleShape):
                choose_rocker(piece, replace(wish, **{way.wish: still_too_far}), load)
        return
    assert ways_out(piece, wish, load) == ()
    # It can be drawn on a floor: twenty times its rise is how high the ellipse is from its centre.
    assert found.ellipse.half_height <= 20 * wish.rise * (1 + 1e-9)
    assert found.body.period() == pytest.approx(wish.period, rel=1e-9)
    assert found.body.rolling_limit == pytest.approx(wish.rolling_limit, rel=1e-9)
    assert found.rocker.rise == wish.rise
    assert found.ellipse.height_at(found.rocker.length / 2) == pytest.approx(wish.rise, rel=1e-6)
    assert found.rocker.depth - found.rocker.rise == pytest.approx(piece.rocker.depth - piece.rocker.rise)


@pytest.mark.parametrize("load", [False, True])
@pytest.mark.parametrize("name", DEMOS)
def test_the_piece_made_with_the_chosen_rocker_is_the_body_that_was_promised(name: str, load: bool) -> None:
    piece = Piece.demo(name)
    found = choose_rocker(piece, Wish(period=0.95, rolling_limit=24, rise=2), load)
    made = replace(piece, rocker=found.rocker)
    if load:
        # What lies in it rests as high over the shoulders as before: higher over the floor on deeper rockers.
        lifted = found.rocker.depth - piece.rocker.depth
        made = replace(made, load=tuple(replace(each, height=each.height + lifted) for each in piece.load))
    body = made.rocking_body(load)
    assert body.mass == pytest.approx(found.body.mass, rel=1e-12)
    assert body.centre_height == pytest.approx(found.body.centre_height, rel=1e-12)
    assert body.period() == pytest.approx(0.95, rel=1e-9)
    assert body.rolling_limit == pytest.approx(24, rel=1e-9)


def test_the_choice_does_not_depend_on_the_unit_of_the_rule() -> None:
    bed = Piece.demo("cat-bed")
    text = demo_text("cat-bed")
    found = choose_rocker(bed, Wish(period=0.8, rolling_limit=25, rise=2), load=True)
    # Every length of the file in millimetres: what stands between quotation marks as on an inch rule.
    metric = re.sub(
        r'= "(\d[\d /]*)"', lambda written: f'= "{bed.rule.read(written[1]) * 25.4:.4f}"', text
    ).replace('rule = "1/16 in"', 'rule = "0.5 mm"')
    other = choose_rocker(Piece.from_text(metric), Wish(0.8, 25, 2 * 25.4), load=True)
    assert other.rocker.length == pytest.approx(found.rocker.length * 25.4, rel=1e-5)
    assert other.ellipse.loop == pytest.approx(found.ellipse.loop * 25.4, rel=1e-5)
    assert other.body.barrier == pytest.approx(found.body.barrier, rel=1e-5)


def test_the_search_takes_a_moment_and_agrees_with_a_general_root_finder_over_an_integrated_motion() -> None:
    told = compared()
    assert told.apart < 1e-6
    assert told.ours < told.plain
    assert max(told.ours, told.refused) < 0.2


def test_a_piece_without_rockers_is_told_so() -> None:
    with pytest.raises(ImpossibleShape, match="no rocker"):
        choose_rocker(Piece.demo("log-box"), Wish(period=0.8, rolling_limit=25, rise=50))


@pytest.mark.parametrize(
    "values",
    [
        (0, 25, 2),
        (-1, 25, 2),
        (0.8, 0, 2),
        (0.8, 89, 2),
        (0.8, 25, 0),
        (math.nan, 25, 2),
        (0.8, 25, math.inf),
    ],
)
def test_a_wish_that_is_none_is_refused(values: tuple[float, float, float]) -> None:
    with pytest.raises(ImpossibleShape, match="Wish for more than 0"):
        Wish(*values)


def test_the_empty_bed_and_the_loaded_bed_rock_as_weighed() -> None:
    bed = Piece.demo("cat-bed")
    empty, loaded = bed.rocking_body(), bed.rocking_body(load=True)
    assert loaded.mass == pytest.approx(empty.mass + sum(each.mass for each in bed.load))
    # A cat's weight lies higher than the bed's own, and a higher weight rocks more slowly.
    assert loaded.centre_height > empty.centre_height
    assert loaded.period() > empty.period()


def test_a_cat_on_the_rim_makes_the_bed_lean_to_its_side() -> None:
    bed = Piece.demo("cat-bed")
    cushion, cat = bed.load
    aside = replace(bed, load=(cushion, replace(cat, offset=4.0)))
    assert aside.rocking_body(load=True).rest_tilt > 0
    assert replace(bed, load=(cushion, replace(cat, offset=-4.0))).rocking_body(load=True).rest_tilt < 0
