"""A bevel struck from two distances agrees with what is published, and with plain geometry."""

import math
from collections.abc import Callable

import pytest
import sympy
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath.bevel import angle_error, bevel_angle, derivation, equal_distances, offset_for
from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, equation

lengths = st.floats(1 / 64, 3000)
angles = st.floats(0.1, 89.5)
shares = st.floats(0, 0.9)
either_way = st.floats(-1, 1)

# Mitre gauge settings for n equal sides, each side leaning at a pitch from flat; the makers state them to the
# closest 0.005 degrees. READ: power-saw operator's manuals 315.21212, p. 24, and 315.212050, p. 29 (pitch 0
# to 50); TSS121, p. 32 (pitch 55 to 85).
MITRES: dict[int, dict[int, float]] = {
    4: {
        0: 45.00,
        5: 44.89,
        10: 44.56,
        15: 44.01,
        20: 43.22,
        25: 42.19,
        30: 40.89,
        35: 39.32,
        40: 37.45,
        45: 35.26,
        50: 32.73,
        55: 29.84,
        60: 26.57,
        65: 22.91,
        70: 18.88,
        75: 14.51,
    },
    5: {
        0: 36.00,
        5: 35.90,
        10: 35.58,
        15: 35.06,
        20: 34.32,
        25: 33.36,
        30: 32.18,
        35: 30.76,
        40: 29.10,
        45: 27.19,
        50: 25.03,
        55: 22.62,
        60: 19.96,
        65: 17.07,
        70: 13.95,
        75: 10.65,
        80: 7.19,
        85: 3.62,
    },
    6: {
        0: 30.00,
        5: 29.91,
        10: 29.62,
        15: 29.15,
        20: 28.48,
        25: 27.62,
        30: 26.57,
        35: 25.31,
        40: 23.86,
        45: 22.21,
        50: 20.36,
        55: 18.32,
        60: 16.10,
        65: 13.71,
        70: 11.17,
    },
    8: {
        0: 22.50,
        5: 22.42,
        10: 22.19,
        15: 21.81,
        20: 21.27,
        25: 20.58,
        30: 19.73,
        35: 18.74,
        40: 17.60,
        45: 16.32,
        50: 14.91,
    },
}


def mitres_missed(angle_of: Callable[[float, float], float]) -> list[tuple[int, int]]:
    """Which published mitres a rule does not give, for a board one unit wide.

    Seen from above, a leaning board one unit wide reaches cos(pitch) units in towards the middle, and the
    mitre of a frame of n sides moves along by tan(180 / n) for each of them: that is the offset.
    """
    return [
        (sides, pitch)
        for sides, settings in MITRES.items()
        for pitch, printed in settings.items()
        if abs(angle_of(math.cos(math.radians(pitch)) * math.tan(math.pi / sides), 1.0) - printed) > 0.011
    ]


def test_every_mitre_of_the_saw_manuals_is_struck_by_offset_and_thickness() -> None:
    assert mitres_missed(bevel_angle) == []


def test_a_formula_altered_on_purpose_misses_the_published_mitres() -> None:
    def upside_down(offset: float, thickness: float) -> float:
        return altered.function("angle")(offset=offset, thickness=thickness)

    def a_sine(offset: float, thickness: float) -> float:
        return math.degrees(math.asin(min(1.0, offset / thickness)))

    angle, offset, thickness = (quantity.symbol for quantity in derivation().quantities)
    altered = Derivation.start(
        "Altered",
        derivation().quantities,
        equation(sympy.tan(angle), thickness / offset),
        "the ratio is upside down",
        subject="angle",
        example=dict(derivation().example),
    ).then(Isolate(angle), "we want the angle")
    assert len(mitres_missed(upside_down)) > 50
    assert len(mitres_missed(a_sine)) > 50


@settings(deadline=None)
@given(lengths)
def test_equal_distances_strike_45_degrees_whatever_their_size(distance: float) -> None:
    # Common practice.
    assert bevel_angle(offset=distance, thickness=distance) == 45.0


def test_five_eighths_in_three_is_the_dovetail_slope_of_about_80_degrees() -> None:
    # READ: Noyes, Handwork in Wood, 1910, joint no. 48: a triangle of 3 by 5/8 inch, "about 80°".
    assert 90 - bevel_angle(offset=5 / 8, thickness=3) == pytest.approx(80, abs=2)


def test_the_triangle_of_3_4_5_has_its_known_angles() -> None:
    # From memory: the angles of the 3-4-5 triangle, 36.87 and 53.13 degrees.
    assert bevel_angle(offset=3, thickness=4) == pytest.approx(36.87, abs=0.005)
    assert bevel_angle(offset=4, thickness=3) == pytest.approx(53.13, abs=0.005)


@settings(deadline=None)
@given(lengths, lengths)
def test_the_two_sharp_corners_of_the_triangle_make_a_right_angle(offset: float, thickness: float) -> None:
    assert bevel_angle(offset, thickness) + bevel_angle(thickness, offset) == pytest.approx(90)


@settings(deadline=None)
@given(lengths, lengths, st.floats(0.01, 100))
def test_another_scale_strikes_the_same_bevel(offset: float, thickness: float, scale: float) -> None:
    assert bevel_angle(offset * scale, thickness * scale) == pytest.approx(bevel_angle(offset, thickness))


@settings(deadline=None)
@given(angles, lengths)
def test_the_offset_for_a_bevel_strikes_that_bevel(angle: float, thickness: float) -> None:
    assert bevel_angle(offset_for(angle, thickness), thickness) == pytest.approx(angle)


@settings(deadline=None)
@given(lengths, lengths, shares, shares, either_way, either_way)
def test_no_error_within_its_bounds_turns_the_bevel_further_than_angle_error_says(
    offset: float, thickness: float, along: float, across: float, far_along: float, far_across: float
) -> None:
    meant = bevel_angle(offset, thickness)
    struck = bevel_angle(offset * (1 + along * far_along), thickness * (1 + across * far_across))
    worst = angle_error(offset, thickness, along * offset, across * thickness)
    assert abs(struck - meant) <= worst + 1e-9


@settings(deadline=None)
@given(lengths, lengths, shares, shares)
def test_the_worst_error_is_one_that_can_happen(
    offset: float, thickness: float, along: float, across: float
) -> None:
    worst = angle_error(offset, thickness, along * offset, across * thickness)
    corners = [
        math.degrees(math.atan2(offset * (1 + i * along), thickness * (1 + j * across)))
        - math.degrees(math.atan2(offset, thickness))
        for i in (-1, 1)
        for j in (-1, 1)
    ]
    assert worst == pytest.approx(max(map(abs, corners)), abs=1e-9)


def test_a_thirty_second_too_short_on_five_eighths_is_out_by_the_angle_worked_by_hand() -> None:
    # By hand: 19/32 over 20/32 falls short of 45 degrees by the angle whose tangent is
    # (1 - 19/20) / (1 + 19/20) = 1/39.
    assert angle_error(5 / 8, 5 / 8, offset_error=1 / 32) == pytest.approx(math.degrees(math.atan2(1, 39)))


def test_distances_without_error_strike_the_bevel_meant() -> None:
    assert angle_error(0.7, 0.6) == 0


@settings(deadline=None)
@given(st.floats(0.2, 5), st.floats(0.2, 5))
def test_for_small_errors_the_exact_answer_is_what_the_derivative_says(
    offset: float, thickness: float
) -> None:
    small = 1e-5
    told = derivation().sensitivity(
        {"offset": offset, "thickness": thickness}, {"offset": small, "thickness": small}
    )
    assert angle_error(offset, thickness, small, small) == pytest.approx(told.at_worst, rel=1e-3)


def test_for_large_errors_the_derivative_is_not_enough() -> None:
    told = derivation().sensitivity({"offset": 1, "thickness": 1}, {"offset": 0.5})
    assert angle_error(1, 1, offset_error=0.5) == pytest.approx(45 - math.degrees(math.atan2(1, 2)))
    assert angle_error(1, 1, offset_error=0.5) > 1.25 * told.at_worst


@pytest.mark.parametrize(
    ("strike", "said"),
    [
        (lambda: bevel_angle(0, 0.5), "offset is 0, and it must be more than 0"),
        (lambda: bevel_angle(0.5, -1), "thickness is -1, and it must be more than 0"),
        (lambda: bevel_angle(math.nan, 1), "offset is nan; give a plain number"),
        (lambda: bevel_angle(1, math.inf), "thickness is inf; give a plain number"),
        (lambda: offset_for(90, 1), "ask for less than 90 degrees .given: angle 90, thickness 1."),
        (lambda: offset_for(135, 1), "never comes out of it"),
        (lambda: offset_for(0, 1), "angle is 0, and it must be more than 0"),
        (lambda: angle_error(1, 1, offset_error=1), "offset is 1 and its error 1. An error is 0 or more"),
        (lambda: angle_error(1, 2, thickness_error=-0.1), "thickness is 2 and its error -0.1"),
        (lambda: angle_error(1, 2, thickness_error=math.nan), "give how far your marking may be out"),
    ],
)
def test_distances_that_strike_no_bevel_are_refused_with_what_to_change(
    strike: Callable[[], float], said: str
) -> None:
    with pytest.raises(ImpossibleShape, match=said):
        strike()


@pytest.mark.parametrize("derived", [derivation, equal_distances])
def test_every_step_of_the_bevel_follows(derived: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derived())


def test_no_length_is_left_in_the_rule_for_equal_distances() -> None:
    assert equal_distances().result.rhs == sympy.pi / 4
