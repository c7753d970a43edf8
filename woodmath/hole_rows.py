"""A row of holes along a mortise: how many, where, and in which order.

Holes in a row have one space fewer than there are holes, and the two at the ends touch the ends. A wanted
overlap rounds the number of holes up, a wanted web of wood between them rounds it down.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation

_CLOSE_ENOUGH = 1e-9
_MOST_HOLES = 1000


@functools.cache
def row_derivation() -> Derivation:
    """Derive how many spaces a row of holes has.

    Returns
    -------
    Derivation
        Speaks of `spaces`, `length`, `diameter`, `overlap` (a web is an overlap below 0); its subject is
        `spaces`.

    Source: counting posts and gaps.

    >>> row_derivation().result
    Eq(spaces, (-diameter + length)/(diameter - overlap))
    """
    spaces, length, diameter, spacing = sympy.symbols("spaces length diameter spacing", positive=True)
    overlap = sympy.Symbol("overlap", real=True)
    return (
        Derivation.start(
            "Spaces in a row of holes",
            (
                Quantity(spaces, "n", "spaces from centre to centre, one fewer than the holes", "number"),
                Quantity(length, "L", "length of the row, from end to end"),
                Quantity(diameter, "d", "diameter of the bit"),
                Quantity(spacing, "s", "from one centre to the next"),
                Quantity(
                    overlap, "o", "how far two neighbours cut into each other; below 0, the wood left between"
                ),
            ),
            equation(length, spaces * spacing + diameter),
            "from the first centre to the last there are n spaces; outside them stands half a hole at "
            "either end, one whole diameter together",
            subject="spaces",
            example={
                spaces: 4,
                length: 2,
                diameter: sympy.Rational(1, 2),
                spacing: sympy.Rational(3, 8),
                overlap: sympy.Rational(1, 8),
            },
        )
        .then(
            Substitute(spacing, diameter - overlap),
            "holes that just touch stand one diameter apart; each overlap brings them nearer, each web "
            "further apart",
        )
        .then(Isolate(spaces), "the spaces are wanted; a whole number of them is then chosen, up or down")
    )


def holes_along(
    length: float, diameter: float, *, overlap: float | None = None, web: float | None = None
) -> tuple[float, ...]:
    """Centres of a row of equal holes, equally spaced, the first and the last touching the ends.

    Parameters
    ----------
    length : float
        Length of the row, such as a mortise, at least the diameter, in any length unit.
    diameter : float
        Of the bit, > 0, in the same unit.
    overlap : float, optional
        How far neighbours are to cut into each other at least, from 0 to less than the diameter.
    web : float, optional
        Wood to be left between neighbours at least, 0 or more. Give exactly one of the two.

    Returns
    -------
    tuple of float
        Centres from the end of the row, in the same unit; one centre where a hole just fits.

    Raises
    ------
    ImpossibleShape
        If no row of holes does what is asked; the message says what to change.

    Source: `row_derivation`; holes adjoining along the mortise, Noyes, *Handwork in Wood*, 1910, ch. VII nos.
    31-32.

    >>> holes_along(2, 0.5, overlap=0.125)
    (0.25, 0.625, 1.0, 1.375, 1.75)
    """
    wanted = _checked_overlap(length, diameter, overlap, web)
    rule = row_derivation()
    if math.isclose(length, diameter, rel_tol=_CLOSE_ENOUGH):
        return (length / 2,)
    if length < diameter:
        raise ImpossibleShape(
            f"A hole {diameter:g} across does not fit a length of {length:g}. Take a bit of {length:g} or "
            f"less, or make the row at least {diameter:g} long."
        )
    exact = rule.function("spaces")(length=length, diameter=diameter, overlap=wanted)
    if exact >= _MOST_HOLES:
        raise ImpossibleShape(
            f"That would be {exact:.3g} holes. Ask for a smaller overlap than {wanted:g}, or take a larger "
            f"bit than {diameter:g}."
        )
    spaces = (
        math.ceil(exact * (1 - _CLOSE_ENOUGH)) if web is None else math.floor(exact * (1 + _CLOSE_ENOUGH))
    )
    if spaces == 0:
        raise ImpossibleShape(_too_little_wood(length, diameter, -wanted))
    between = diameter - rule.function("overlap")(length=length, diameter=diameter, spaces=spaces)
    first = diameter / 2
    return (*(first + hole * between for hole in range(spaces)), length - first)


def _checked_overlap(length: float, diameter: float, overlap: float | None, web: float | None) -> float:
    if (overlap is None) == (web is None):
        given = "Neither" if overlap is None else "Both"
        raise ImpossibleShape(
            f"{given} of overlap and web was given. Give one: overlap=... for holes that cut into each "
            "other, or web=... for wood left standing between them."
        )
    if not (math.isfinite(length) and math.isfinite(diameter) and length > 0 and diameter > 0):
        raise ImpossibleShape(
            f"The row is {length:g} long and the bit {diameter:g} across; both must be more than 0."
        )
    if web is not None:
        if not (math.isfinite(web) and web >= 0):
            raise ImpossibleShape(
                f"The web is {web:g}; the wood left between holes is 0 or more. For holes that cut into "
                "each other give overlap=... instead."
            )
        return -web
    if overlap is None or not 0 <= overlap < diameter:
        raise ImpossibleShape(
            f"The overlap is {overlap:g} and the bit {diameter:g} across. Neighbours overlap by 0 or more, "
            f"and by less than {diameter:g}, or the next hole would be no other hole."
        )
    return overlap


def _too_little_wood(length: float, diameter: float, web: float) -> str:
    rule = row_derivation()
    needed = rule.function("length")(spaces=1, diameter=diameter, overlap=-web)
    left = -rule.function("overlap")(length=length, diameter=diameter, spaces=1)
    bit = rule.function("diameter")(spaces=1, length=length, overlap=-web) if web < length else 0.0
    instead = [f"make the row at least {needed:g} long"]
    if bit > 0:
        instead.append(f"take a bit of {bit:g} or less")
    instead.append(f"be content with a web of {left:g}" if left >= 0 else "let them overlap (overlap=...)")
    return (
        f"Two holes {diameter:g} across, one at each end of a row {length:g} long, cannot leave a web of "
        f"{web:g}. Change one thing: {', or '.join(instead)}."
    )


@dataclass(frozen=True)
class BoringOrder:
    """In which order to bore a row of holes, and what to watch for.

    Parameters
    ----------
    order : tuple of float
        The centres, the first to be bored first.
    numbers : tuple of int
        The same holes by their number along the row, from 1.
    remarks : tuple of str
        A sentence for every hole whose lead screw finds no wood; empty where all is well.

    >>> BoringOrder(order=(0.25,), numbers=(1,), remarks=()).numbers
    (1,)
    """

    order: tuple[float, ...]
    numbers: tuple[int, ...]
    remarks: tuple[str, ...]


def boring_order(centres: Sequence[float], diameter: float | None = None) -> BoringOrder:
    """Order in which to bore a row of holes: the ends first, then every second hole, then those between.

    So every screw has wood on both sides for as long as it can be had, and the bit is not pulled towards a
    hole that is there already.

    Parameters
    ----------
    centres : sequence of float
        Centres along the row, from its end, all different, in any length unit.
    diameter : float, optional
        Of the bit, > 0, in the same unit. Where nothing is said the first hole is taken to touch the end of
        the row, as in `holes_along`, so the bit is twice the first centre.

    Returns
    -------
    BoringOrder
        With a remark for each hole whose screw's centre would fall into a hole bored before it.

    Raises
    ------
    ImpossibleShape
        If there are no centres, two are the same, or the diameter cannot be.

    Source: the ends first and then between (common practice).

    >>> boring_order(holes_along(2, 0.5, overlap=0.125)).numbers
    (1, 5, 3, 2, 4)
    """
    along = sorted(centres)
    if not along or not all(map(math.isfinite, along)) or len(set(along)) < len(along):
        raise ImpossibleShape(
            f"{len(along)} centres were given. Give at least one, each a plain number, no two of them the "
            "same."
        )
    across = 2 * along[0] if diameter is None else diameter
    if not (math.isfinite(across) and across > 0):
        raise ImpossibleShape(
            f"The bit would be {across:g} across. Give its diameter, or give the centres from the end of "
            "the row."
        )
    last = len(along) - 1
    holes = list(dict.fromkeys((0, last, *range(2, last, 2), *range(1, last, 2))))
    remarks = tuple(
        remark for place, hole in enumerate(holes) for remark in _no_wood(along, holes[:place], hole, across)
    )
    return BoringOrder(tuple(along[hole] for hole in holes), tuple(hole + 1 for hole in holes), remarks)


def _no_wood(along: Sequence[float], earlier: Sequence[int], hole: int, diameter: float) -> list[str]:
    """Say so where the screw of one hole would start inside the nearest hole that was bored before."""
    nearest = min(earlier, key=lambda other: abs(along[other] - along[hole]), default=None)
    if nearest is None or abs(along[nearest] - along[hole]) > diameter / 2 * (1 + _CLOSE_ENOUGH):
        return []
    return [
        f"The lead screw of hole {hole + 1} finds no wood: its centre lies "
        f"{abs(along[nearest] - along[hole]):.4g} from that of hole {nearest + 1}, which was bored before "
        f"and reaches {diameter / 2:.4g}. Space the holes by more than half the bit (overlap less than "
        f"{diameter / 2:.4g}), or pare this one out with the chisel."
    ]
