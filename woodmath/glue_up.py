"""A panel wider than any board: how many boards go edge to edge, how wide to rip each, where the joints lie.

Each board loses a little of its width when its two edges are planed straight for the joint, and only what is
left counts for the panel.
"""

from __future__ import annotations

import functools
import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

import sympy

from woodmath.board_measure import check_positive
from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation

_CLOSE_ENOUGH = 1e-9
_MOST_STRIPS = 100


@functools.cache
def derivation() -> Derivation:
    """Derive how many boards of a width make a panel, their edges planed for the joints.

    Returns
    -------
    Derivation
        Its result gives `strips` from `panel_width`, `board_width` and `jointing`; so does it each of the others.

    Source: widths set end to end.

    >>> derivation().result
    Eq(strips, panel_width/(board_width - jointing))
    """
    panel_width, board_width, strips, jointed = sympy.symbols(
        "panel_width board_width strips jointed_width", positive=True
    )
    jointing = sympy.Symbol("jointing", nonnegative=True)
    return (
        Derivation.start(
            "Boards glued edge to edge",
            (
                Quantity(panel_width, "W", "width of the panel in the rough"),
                Quantity(board_width, "w", "width of one board, or of the strip ripped from it"),
                Quantity(strips, "n", "boards side by side", "number"),
                Quantity(jointed, "j", "what each brings to the panel"),
                Quantity(jointing, "p", "what planing both edges straight takes off each"),
            ),
            equation(panel_width, strips * jointed),
            "the boards lie side by side, and each brings the same to the panel",
            subject="strips",
            example={
                panel_width: 15,
                board_width: 6,
                strips: sympy.Rational(5, 2),
                jointed: 6,
                jointing: 0,
            },
        )
        .then(
            Substitute(jointed, board_width - jointing),
            "each edge is planed straight before it is glued, and the shavings bring nothing",
        )
        .then(Isolate(strips), "the boards are wanted; a part of a board is a board, so the number goes up")
    )


@dataclass(frozen=True)
class GlueUp:
    """A panel made of boards side by side, all ripped to one width.

    Parameters
    ----------
    strips : int
        How many, 1 or more; with 1 there is no joint.
    strip_width : float
        To rip each to, its edges not yet planed, in the unit of the panel.
    joint_lines : tuple of float
        Where the joints lie in the panel, from one of its edges.

    >>> GlueUp(strips=2, strip_width=6.25, joint_lines=(6.0,)).strips
    2
    """

    strips: int
    strip_width: float
    joint_lines: tuple[float, ...]


def glue_up(panel_width: float, board_width: float, jointing: float) -> GlueUp:
    """Part a panel into as few equal boards as do it.

    Parameters
    ----------
    panel_width : float
        In the rough, > 0, in any length unit.
    board_width : float
        Of the widest board there is, more than `jointing`.
    jointing : float
        What planing both edges straight takes off one board, 0 or more.

    Returns
    -------
    GlueUp
        One strip, as wide as the panel, where a board is wide enough.

    Raises
    ------
    ImpossibleShape
        If a width cannot be, or nothing is left of a board once its edges are planed.

    Source: `derivation`; equal boards, so that the joints lie evenly (common practice).

    >>> glue_up(panel_width=12, board_width=9, jointing=0.25)
    GlueUp(strips=2, strip_width=6.25, joint_lines=(6.0,))
    >>> glue_up(panel_width=8, board_width=9, jointing=0.25).strips
    1
    """
    check_positive("The width of the panel", panel_width)
    check_positive("The width of the board", board_width)
    if panel_width <= board_width * (1 + _CLOSE_ENOUGH):
        return GlueUp(1, panel_width, ())
    if not 0 <= jointing < board_width:
        raise ImpossibleShape(
            f"Planing the edges takes {jointing:g} off a board {board_width:g} wide. Give an allowance of 0 or "
            "more that leaves some of the board."
        )
    rule = derivation()
    exact = rule.function("strips")(panel_width=panel_width, board_width=board_width, jointing=jointing)
    if exact > _MOST_STRIPS:
        raise ImpossibleShape(
            f"A panel {panel_width:g} wide would take {exact:.0f} boards {board_width:g} wide. Find wider "
            "boards, or make the panel narrower."
        )
    strips = math.ceil(exact * (1 - _CLOSE_ENOUGH))
    width = rule.function("board_width")(panel_width=panel_width, strips=strips, jointing=jointing)
    lines = tuple(
        rule.function("panel_width")(strips=joint, board_width=width, jointing=jointing)
        for joint in range(1, strips)
    )
    return GlueUp(strips, width, lines)


def joints_clear_of(
    stretches: Sequence[tuple[float, float]], panel_width: float, board_width: float, jointing: float
) -> tuple[float, ...] | None:
    """Lay the joints of a panel so that none lies in a stretch, with as few boards as do it and as even ones.

    Parameters
    ----------
    stretches : sequence of (float, float)
        Where no joint may lie, from one edge of the panel; they do not overlap.
    panel_width, board_width, jointing : float
        As for `glue_up`.

    Returns
    -------
    tuple of float or None
        Where the joints lie, from that edge; nowhere where one board does, and None where no boards of that width keep
        clear of the stretches.

    Raises
    ------
    ImpossibleShape
        As `glue_up`.

    Source: equal boards, and each joint that would lie in a stretch set to one end of it.

    >>> joints_clear_of([(5, 7)], panel_width=12, board_width=8, jointing=0), joints_clear_of([(1, 10)], 12, 8, 0)
    ((5,), None)
    """
    fewest = glue_up(panel_width, board_width, jointing).strips
    if fewest == 1:
        return ()
    one = derivation().function("panel_width")(strips=1, board_width=board_width, jointing=jointing)
    for strips in range(fewest, 2 * fewest + 3):
        even = [panel_width * joint / strips for joint in range(1, strips)]
        if any(sum(low < joint < high for joint in even) > 2 for low, high in stretches):
            # Of three joints in a stretch two would come to lie on one another.
            continue
        beside = (_clear_of(joint, stretches) for joint in even)
        widest = {joints: _widest_strip((0.0, *joints, panel_width)) for joints in itertools.product(*beside)}
        joints = min(widest, key=widest.__getitem__)
        if widest[joints] <= one * (1 + _CLOSE_ENOUGH):
            return joints
    return None


def _clear_of(joint: float, stretches: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """Return where a joint may lie instead: at either end of the stretch that it is in, or where it is."""
    return next(((low, high) for low, high in stretches if low < joint < high), (joint,))


def _widest_strip(edges: Sequence[float]) -> float:
    """Return the widest strip between joints; boundless where one would have no width at all."""
    strips = [after - before for before, after in itertools.pairwise(edges)]
    return max(strips) if min(strips) > 0 else math.inf
