"""What the seasons do to joinery: every step, and each rule against points that are stretched and measured."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as some

from woodmath.derivation import Derivation
from woodmath.season_derivations import (
    edge_derivation,
    groove_derivation,
    mitre_derivation,
    mitre_gap_derivation,
    splay_change_derivation,
)

HAIR = 1e-6
Place = tuple[float, float]

WIDTHS = some.floats(1, 40)
COEFFICIENTS = some.floats(0.0005, 0.005)
MOISTURES = some.floats(4, 24)
SHRINKAGES = some.floats(-0.2, 0.2)


@pytest.mark.parametrize(
    "derivation",
    [edge_derivation, groove_derivation, splay_change_derivation, mitre_derivation, mitre_gap_derivation],
)
def test_every_step_follows(derivation: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derivation())


# --- the edge of a board ---


def edges_of(width: float, held: float, part: float) -> Place:
    """Return how far each edge goes from the held place when every point of the board is stretched about it.

    The board is two thousand strips, glued where it is held; each strip becomes wider by the same part.
    """
    strips = 2000
    strip = width / strips * (1 + part)
    below = round(held / width * strips)
    return below * strip - held, (strips - below) * strip - (width - held)


@given(width=WIDTHS, at=some.integers(0, 2000), part=some.floats(-0.1, 0.1))
def test_an_edge_moves_as_the_strips_between_it_and_the_held_place_add_up(
    width: float, at: int, part: float
) -> None:
    held = width * at / 2000
    lower, upper = edges_of(width, held, part)
    moves = edge_derivation().function("edge_moves")
    change = width * part
    if held:
        assert moves(change=change, width=width, held=held) == pytest.approx(lower, abs=1e-9)
    if held < width:
        assert moves(change=change, width=width, held=width - held) == pytest.approx(upper, abs=1e-9)
    assert lower + upper == pytest.approx(change, abs=1e-9)


# --- the groove ---


def through_a_year(
    width: float, held: float, coefficient: float, made: float, driest: float, dampest: float
) -> np.ndarray:
    """Return how far the edge stands outside its place on the day of making, day by day, from one point of the board.

    The edge is a point so far from the place that is held, and its distance is stretched.
    """
    days = np.arange(366)
    moisture = (driest + dampest) / 2 - (dampest - driest) / 2 * np.cos(2 * np.pi * days / 365)
    moisture[0], moisture[-1] = driest, driest
    moisture = np.append(moisture, dampest)
    return held * (1 + coefficient * (moisture - made)) - held


@given(
    width=WIDTHS,
    share=some.floats(0.1, 1.0),
    coefficient=COEFFICIENTS,
    ends=some.tuples(MOISTURES, MOISTURES).map(sorted).filter(lambda ends: ends[1] - ends[0] > 0.5),
    when=some.floats(0, 1),
    hold=some.floats(0.1, 1.0),
)
def test_in_its_groove_a_tongue_never_strikes_and_never_comes_out_and_a_hair_less_is_too_little(
    width: float, share: float, coefficient: float, ends: list[float], when: float, hold: float
) -> None:
    driest, dampest = ends
    made = driest + when * (dampest - driest)
    held = share * width
    stands = through_a_year(width, held, coefficient, made, driest, dampest)
    moves = edge_derivation().function("edge_moves")
    grows = moves(change=width * coefficient * (dampest - made), width=width, held=held)
    shrinks = moves(change=width * coefficient * (made - driest), width=width, held=held)
    depth = groove_derivation().function("groove_depth")(hold=hold, shrinks=shrinks, grows=grows)

    def gets_through(groove: float, tongue: float) -> bool:
        """Whether the tongue, whose end stands so far in on the day of making, gets through every day."""
        inside = tongue + stands
        return bool(inside.max() <= groove + 1e-9 and inside.min() >= hold - 1e-9)

    assert gets_through(depth, hold + shrinks)
    # With a hair less depth no length of the tongue does.
    tried = hold + shrinks + np.linspace(-3 * HAIR, 3 * HAIR, 61)
    assert not any(gets_through(depth - HAIR, tongue) for tongue in tried)
    assert not any(gets_through(depth - HAIR, tongue) for tongue in np.linspace(0.0, depth, 50))


def test_a_panel_that_does_not_move_wants_a_groove_as_deep_as_its_hold() -> None:
    assert groove_derivation().function("groove_depth")(hold=0.25, shrinks=0, grows=0) == 0.25


# --- the splay ---


def leans(panel: list[Place]) -> float:
    """Return how far the right-hand edge of a panel leans outward from upright, measured between its corners."""
    (low_x, low_y), (high_x, high_y) = panel[1], panel[2]
    return math.degrees(math.atan2(high_x - low_x, high_y - low_y))


@given(
    bottom=some.floats(4, 30),
    outward=some.floats(-8, 8),
    height=some.floats(3, 24),
    part=some.floats(-0.15, 0.15),
)
def test_the_splay_changes_as_a_trapezium_whose_height_is_stretched(
    bottom: float, outward: float, height: float, part: float
) -> None:
    # Surprise of the trade: the widths lie along the grain and stay, so only the height of the points is stretched.
    half, top = bottom / 2, bottom / 2 + outward
    made = [(-half, 0.0), (half, 0.0), (top, height), (-top, height)]
    moved = [(x, y * (1 + part)) for x, y in made]
    turned = splay_change_derivation().function("new_splay")
    assert turned(splay=leans(made), height=height, new_height=height * (1 + part)) == pytest.approx(
        leans(moved), abs=1e-9
    )


def test_a_panel_that_dries_leans_more_and_one_that_swells_less_and_an_upright_one_stays() -> None:
    turned = splay_change_derivation().function("new_splay")
    assert turned(splay=9, height=8, new_height=7.9) > 9 > turned(splay=9, height=8, new_height=8.1)
    assert turned(splay=-9, height=8, new_height=7.9) < -9
    assert turned(splay=0, height=8, new_height=7.9) == 0
    # Worked by hand, plane trigonometry: tan 45° = 1, so the new tangent is 4/3.
    assert turned(splay=45, height=4, new_height=3) == pytest.approx(53.13010235415598)


# --- the mitre ---


def shrunk(board: list[Place], along: Place, lost: float) -> list[Place]:
    """Return a board that has lost a part of what lies square to its grain, by its outer edge through (0, 0)."""
    (u, v), moved = along, []
    for x, y in board:
        run, off = x * u + y * v, -x * v + y * u
        off *= 1 - lost
        moved.append((run * u - off * v, run * v + off * u))
    return moved


def corner(width: float, lost: float) -> tuple[list[Place], list[Place]]:
    """Return two mitred boards at a right angle that touch at the outer corner: outer corner first, inner next.

    One lies along x, the other along y; both outer edges pass through (0, 0), the frame's inside lies up and right.
    """
    level = [(0.0, 0.0), (width, width), (5 * width, width), (5 * width, 0.0)]
    upright = [(0.0, 0.0), (width, width), (width, 5 * width), (0.0, 5 * width)]
    return shrunk(level, (1.0, 0.0), lost), shrunk(upright, (0.0, 1.0), lost)


def opened(one: list[Place], other: list[Place]) -> float:
    """Return the angle from one board's mitre to the other's, in degrees: more than 0 where there is air between."""
    (x, y), (u, v) = one[1], other[1]
    return math.degrees(math.atan2(x * v - y * u, x * u + y * v))


def apart_outside(one: list[Place], other: list[Place]) -> float:
    """Return how far the outer corners are apart once the boards are slid out until they touch inside only.

    Each slides along its own length, as the frame's outer edges stay in line.
    """
    (x, y), (u, v) = one[1], other[1]
    level, upright = u - x, y - v
    slid_one = [(a + level, b) for a, b in one]
    slid_other = [(a, b + upright) for a, b in other]
    assert slid_one[1] == pytest.approx(slid_other[1])
    assert level >= 0 and upright >= 0
    return math.dist(slid_one[0], slid_other[0])


@given(width=some.floats(0.5, 20), lost=SHRINKAGES)
def test_a_mitre_opens_by_the_angle_and_the_distance_that_two_shrunk_boards_show(
    width: float, lost: float
) -> None:
    one, other = corner(width, lost)
    assert mitre_derivation().function("opening")(shrinkage=lost) == pytest.approx(
        opened(one, other), abs=1e-9
    )
    gap = mitre_gap_derivation().function("gap")(width=width, shrinkage=lost)
    assert abs(gap) == pytest.approx(math.dist(one[1], other[1]), abs=1e-9)
    if lost < -1e-6:
        assert gap < 0 and abs(gap) == pytest.approx(apart_outside(one, other), abs=1e-9)


def test_a_mitre_that_dried_is_open_inside_and_one_that_swelled_outside_and_else_it_is_closed() -> None:
    opening = mitre_derivation().function("opening")
    gap = mitre_gap_derivation().function("gap")
    for shrinkage, sign in ((0.02, 1), (-0.02, -1), (0.0, 0)):
        assert np.sign(opening(shrinkage=shrinkage)) == sign
        assert np.sign(gap(width=3, shrinkage=shrinkage)) == sign


@given(lost=some.floats(0.001, 0.05), width=some.floats(0.5, 20))
def test_the_gap_at_the_end_is_what_the_angle_spans_at_the_mitres_length(lost: float, width: float) -> None:
    # Plane geometry: the two mitres are equal legs, and the gap is the base between them.
    one, _ = corner(width, lost)
    leg = math.hypot(*one[1])
    opening = math.radians(mitre_derivation().function("opening")(shrinkage=lost))
    gap = mitre_gap_derivation().function("gap")(width=width, shrinkage=lost)
    assert gap == pytest.approx(2 * leg * math.sin(opening / 2))
