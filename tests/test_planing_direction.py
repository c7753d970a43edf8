"""Which way to plane a sloping edge, and what becomes of the fibres in a tenon: against vectors, lines and a saw."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath import planing_direction, tenon_fibres
from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.facing import CHOICES
from woodmath.planing_direction import fibre_angle, runs_with_the_grain
from woodmath.ring_section import RingSection, heart_for
from woodmath.splay import SplayedPanel
from woodmath.tenon_fibres import TenonFibres

LEANS = st.floats(-40, 40)
SPLAYS = st.floats(0.1, 60)
SIZES = st.floats(0.1, 200)


@pytest.mark.parametrize(
    "derived",
    [
        planing_direction.fibre_angle_derivation,
        tenon_fibres.cut_through_derivation,
        tenon_fibres.whole_derivation,
        tenon_fibres.crossing_derivation,
        tenon_fibres.through_derivation,
    ],
)
def test_every_step_follows(derived: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derived())


def along_the_edge(splay: float, run_out: float) -> float:
    """How far a fibre that comes out of the right-hand edge goes up along it: plane vectors, by hand."""
    edge = (math.sin(math.radians(splay)), math.cos(math.radians(splay)))
    fibre = (math.cos(math.radians(run_out)), math.sin(math.radians(run_out)))
    return edge[0] * fibre[0] + edge[1] * fibre[1]


@given(LEANS, LEANS)
def test_the_fibres_angle_is_that_between_two_vectors(splay: float, run_out: float) -> None:
    cosine = along_the_edge(splay, run_out)
    assert math.cos(math.radians(fibre_angle(splay, run_out))) == pytest.approx(cosine, abs=1e-12)


@given(LEANS, LEANS)
def test_a_plane_goes_with_the_grain_when_the_fibres_point_its_way(splay: float, run_out: float) -> None:
    component = along_the_edge(splay, run_out)
    if abs(component) > 1e-6:
        assert runs_with_the_grain(splay, run_out, upward=True) is (component > 0)
        assert runs_with_the_grain(splay, run_out, upward=False) is (component < 0)


def test_level_grain_and_an_edge_that_leans_outward_are_planed_upward() -> None:
    # Common practice: toward the corner that is sharp.
    assert runs_with_the_grain(9.0, 0.0, upward=True)
    assert not runs_with_the_grain(9.0, 0.0, upward=False)
    assert runs_with_the_grain(-9.0, 0.0, upward=False)


def test_plain_end_grain_has_no_way_with_it() -> None:
    assert fibre_angle(0.0) == 90.0
    assert not runs_with_the_grain(0.0, 0.0, upward=True)
    assert not runs_with_the_grain(0.0, 0.0, upward=False)
    assert not runs_with_the_grain(8.0, -8.0, upward=True)


def test_level_fibres_meet_the_edge_at_the_panels_upper_corner() -> None:
    panel = SplayedPanel(13, 10.5, 8)
    # By hand: the corner's tangent is the height over what the edge goes outward.
    assert fibre_angle(panel.splay) == pytest.approx(math.degrees(math.atan2(8, 1.25)))


def test_grain_laid_along_the_edge_is_refused() -> None:
    with pytest.raises(ImpossibleShape, match="less than 90° together"):
        fibre_angle(60.0, 30.0)


@given(SIZES, SIZES, SPLAYS)
def test_what_is_cut_through_and_what_is_whole_make_the_width(
    width: float, reach: float, splay: float
) -> None:
    tenon = TenonFibres(width, reach, splay)
    assert tenon.cut_through + tenon.whole == pytest.approx(width)


@given(SIZES, SIZES, SPLAYS, st.floats(0, 1))
def test_a_fibre_that_is_followed_ends_where_it_is_said_to(
    width: float, reach: float, splay: float, part: float
) -> None:
    # By hand: a level line from the shoulder, taken out to the tip.
    tenon, start = TenonFibres(width, reach, splay), part * width
    arrives = start + reach * math.tan(math.radians(splay))
    if abs(arrives - width) > 1e-6 * width:
        assert (arrives < width) is (start < tenon.whole)


def area(outline: tuple[tuple[float, float], ...]) -> float:
    following = (*outline[1:], *outline[:1])
    return abs(sum(x * v - u * y for (x, y), (u, v) in zip(outline, following, strict=True))) / 2


@given(SIZES, SIZES, st.floats(0.5, 60))
def test_the_two_short_parts_are_as_large_as_the_strips_they_are_made_of(
    width: float, reach: float, splay: float
) -> None:
    # The rows of fibres that begin at the lower side: counted at the tip of a thousand thin slices.
    tenon = TenonFibres(width, reach, splay)
    slope = math.tan(math.radians(splay))
    slices = sum(min(width, (each + 0.5) / 1000 * reach * slope) for each in range(1000)) * reach / 1000
    assert area(tenon.without_root) == pytest.approx(slices, rel=2e-3)
    assert area(tenon.short_of_the_tip) == pytest.approx(area(tenon.without_root))


def test_lengths_of_fibres_in_the_half_square_and_half_triangle() -> None:
    # Plane trigonometry by hand: 45 degrees in a square, 30 degrees in half an equilateral triangle.
    assert TenonFibres(3, 2, 45).cut_through == pytest.approx(2)
    assert TenonFibres(2, 10, 30).crossing == pytest.approx(4)
    assert TenonFibres(2, 10, 30).longest == pytest.approx(4)
    assert TenonFibres(20, 3, 30).longest == pytest.approx(2 * math.sqrt(3))
    assert TenonFibres(2, 10, 30).whole == 0


def test_an_upright_edge_leaves_every_fibre_whole() -> None:
    tenon = TenonFibres(2.5, 1.25, 0)
    assert (tenon.cut_through, tenon.whole, tenon.crossing, tenon.longest) == (0, 2.5, None, 1.25)
    assert tenon.without_root == tenon.short_of_the_tip == ()


@pytest.mark.parametrize(("width", "reach", "splay"), [(0, 1, 9), (1, -1, 9), (1, 1, -1), (1, 1, 90)])
def test_a_tenon_that_cannot_be_cut_is_refused(width: float, reach: float, splay: float) -> None:
    with pytest.raises(ImpossibleShape, match="cannot be cut"):
        TenonFibres(width, reach, splay)


def test_every_choice_says_what_why_and_on_what_it_rests() -> None:
    assert len({choice.part for choice in CHOICES}) == len(CHOICES)
    for choice in CHOICES:
        assert choice.choose.endswith(".") and choice.reason.endswith(".")
        assert choice.source
    assert {"posts", "panels, from the quarter", "panels, flat-sawn", "the poorer faces", "tenons"} <= {
        choice.part for choice in CHOICES
    }


def test_what_is_said_of_posts_is_what_the_rings_do() -> None:
    def post(rings: float) -> RingSection:
        return RingSection(1.75, 1.75, heart_for(rings, 4.0), ring_growth=-0.04, ray_growth=-0.02)

    assert abs(post(45).out_of_square) > 1.0
    assert abs(post(0).out_of_square) < 0.05
    assert abs(post(0).new_width - post(90).new_width) > 0.03


def test_what_is_said_of_panels_is_what_the_rings_do() -> None:
    # The heart lies below, so the upper face is that of the bark; common practice calls it the side that goes hollow.
    drying = RingSection(8.0, 0.875, heart_for(0.0, 5.0), ring_growth=-0.04, ray_growth=-0.02)
    assert drying.cup > 0
