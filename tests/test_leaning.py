"""A leaning end: half the difference outward, the edge by Pythagoras, the lean by its tangent."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as some

from woodmath import leaning
from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece

widths = some.floats(1, 1000)


@pytest.mark.parametrize(
    "derived", [leaning.outward_derivation, leaning.slope_derivation, leaning.lean_derivation]
)
def test_every_step_of_the_leaning_end_follows(derived: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derived())


@pytest.mark.parametrize(
    ("top", "bottom", "height", "slope"),
    # Triangles of whole numbers, 3 4 5 and three more, as every list of them has (from memory).
    [(10, 4, 4, 5), (11, 1, 12, 13), (1, 17, 15, 17), (50, 10, 21, 29)],
)
def test_the_edge_of_an_end_is_the_long_side_of_a_right_triangle(
    top: float, bottom: float, height: float, slope: float
) -> None:
    assert leaning.slope_length(top, bottom, height) == pytest.approx(slope)


@pytest.mark.parametrize(
    ("outward", "degrees"),
    # Tangents of 5, 10, 15 and 45 degrees to four places, as any table of tangents has them (from memory).
    [(0.0875, 5), (0.1763, 10), (0.2679, 15), (1.0, 45)],
)
def test_the_lean_has_the_outward_over_the_height_for_its_tangent(outward: float, degrees: float) -> None:
    assert leaning.lean(4 + 2 * outward, 4, 1) == pytest.approx(degrees, abs=0.005)
    assert leaning.lean(4, 4 + 2 * outward, 1) == pytest.approx(-degrees, abs=0.005)


def test_an_upright_end_has_no_lean_and_its_edge_is_its_height() -> None:
    end = Piece.demo("log-box").end
    assert end is not None
    assert (end.outward, end.slope_length, end.lean) == (0, 320, 0)


def test_the_cats_end_leans_out_by_half_of_what_it_is_wider_above() -> None:
    end = Piece.demo("cat-bed").end
    assert end is not None
    assert end.outward == 1.25
    assert end.slope_length**2 == pytest.approx(1.25**2 + 8**2)
    assert math.tan(math.radians(end.lean)) == pytest.approx(1.25 / 8)


@given(top=widths, bottom=widths, height=widths)
def test_an_edge_is_never_shorter_than_the_end_is_high_and_turning_the_end_over_only_turns_the_lean(
    top: float, bottom: float, height: float
) -> None:
    slope = leaning.slope_length(top, bottom, height)
    assert slope >= height * (1 - 1e-12)
    assert slope == pytest.approx(leaning.slope_length(bottom, top, height))
    assert leaning.lean(top, bottom, height) == pytest.approx(-leaning.lean(bottom, top, height))
    assert slope * math.cos(math.radians(leaning.lean(top, bottom, height))) == pytest.approx(height)


@pytest.mark.parametrize(("top", "bottom", "height"), [(0, 4, 4), (4, -1, 4), (4, 4, 0), (math.nan, 4, 4)])
def test_an_end_without_width_or_height_is_refused(top: float, bottom: float, height: float) -> None:
    with pytest.raises(ImpossibleShape, match=r"is .*more than 0|plain number"):
        leaning.slope_length(top, bottom, height)
