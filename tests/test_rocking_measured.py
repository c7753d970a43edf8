"""A filmed case: its period from the pictures, its centre of gravity from the period."""

from __future__ import annotations

import math

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.rocking import RockingBody
from woodmath.rocking_measured import filmed_period, filmed_period_derivation, measured_centre_height


def test_every_step_from_film_to_period_follows() -> None:
    assert_every_step_follows(filmed_period_derivation())


def test_the_more_swings_are_counted_the_surer_is_the_period() -> None:
    few, many = filmed_period(5, 0, 125), filmed_period(50, 0, 1250)
    assert few.value == pytest.approx(many.value)
    assert few.at_worst == pytest.approx(10 * many.at_worst)


@given(st.floats(0.05, 1.5), st.floats(0.0, 0.8), st.floats(1.05, 20.0))
def test_the_height_comes_back_from_the_period_that_it_makes(
    centre_height: float, gyration_radius: float, roundness: float
) -> None:
    radius = roundness * centre_height
    body = RockingBody(10.0, centre_height, gyration_radius, Ellipse(2 * radius, 4 * radius), 0.1)
    told = measured_centre_height(
        body.period(), radius, gyration_radius, period_error=0.0, radius_error=0.0, gyration_error=0.0
    )
    assert told.value == pytest.approx(centre_height, rel=1e-9)


def test_a_pendulum_bob_on_a_round_bottom_measures_as_the_textbook_has_it() -> None:
    # k = 0: T = 2π h / √(g (R − h)), Routh and Lamb (from memory).
    height, radius = 0.3, 0.9
    period = 2 * math.pi * height / math.sqrt(9.80665 * (radius - height))
    told = measured_centre_height(
        period, radius, 0.0, period_error=0.01, radius_error=0.0, gyration_error=0.0
    )
    assert told.value == pytest.approx(height, rel=1e-12)


def test_a_filmed_bed_finds_the_weight_that_was_reckoned_within_its_own_uncertainty() -> None:
    bed = Piece.demo("cat-bed").rocking_body(load=True)
    # A film of twenty swings from 2 degrees, thirty pictures a second, each end read to a whole picture.
    pictures = round(20 * bed.period(2) * 30)
    film = filmed_period(20, 0, pictures)
    longer = bed.period(2) - bed.period()
    told = measured_centre_height(
        film.value,
        bed.ellipse.radius_at_bottom,
        bed.gyration_radius,
        period_error=film.at_worst + longer,
        radius_error=0.005,
        gyration_error=0.1 * bed.gyration_radius,
    )
    assert abs(told.value - bed.centre_height) < told.at_worst < 0.015


@pytest.mark.parametrize(
    ("swings", "first_picture", "last_picture", "pictures"),
    [(0, 0, 10, 30), (3, 20, 20, 30), (3, 0, 90, 0), (3, -1, 90, 30)],
)
def test_a_film_on_which_nothing_was_counted_is_refused(
    swings: int, first_picture: float, last_picture: float, pictures: float
) -> None:
    with pytest.raises(ImpossibleShape, match="Count at least one swing"):
        filmed_period(swings, first_picture, last_picture, pictures)


def test_a_period_that_no_case_has_is_refused_in_words() -> None:
    with pytest.raises(ImpossibleShape, match="centre"):
        measured_centre_height(0.2, 0.5, 2.0, period_error=0.0, radius_error=0.0, gyration_error=0.0)
