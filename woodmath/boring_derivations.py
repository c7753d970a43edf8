"""Why turns of the brace tell the depth, and why threads per inch tell the lead.

The screw cuts its own thread, so each turn takes the bit in by one lead; what the screw's point is ahead of
the lips makes no hole at full width.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def tip_derivation() -> Derivation:
    """Derive how deep the tip of the screw is from how deep the hole is at its full width.

    Returns
    -------
    Derivation
        Speaks of `tip_depth`, `depth`, `point_length`; its subject is `tip_depth`.

    Source: the screw and the lips are one piece of steel.

    >>> tip_derivation().result
    Eq(tip_depth, depth + point_length)
    """
    depth = sympy.Symbol("depth", real=True)
    tip_depth, point_length = sympy.symbols("tip_depth point_length", nonnegative=True)
    return Derivation.start(
        "How deep the tip of the screw is",
        (
            Quantity(tip_depth, "T", "depth of the screw's tip below the face"),
            Quantity(
                depth, "D", "depth of the hole at its full width; below 0 while the lips are still to come"
            ),
            Quantity(point_length, "p", "how far the screw's point is ahead of the lips"),
        ),
        equation(tip_depth, depth + point_length),
        "screw and lips are one piece of steel: at every turn the tip is ahead of the lips by the length of "
        "the point",
        subject="tip_depth",
        example={tip_depth: sympy.Rational(9, 4), depth: 2, point_length: sympy.Rational(1, 4)},
    )


@functools.cache
def derivation() -> Derivation:
    """Derive how many turns bring the bit to depth.

    Returns
    -------
    Derivation
        Speaks of `turns`, `depth`, `lead`, `point_length`; its subject is `turns`.

    Source: the screw pulls itself in by its lead at every turn; depth by counting turns is found in Noyes,
    *Handwork in Wood*, 1910, ch. IV.

    >>> derivation().result
    Eq(turns, (depth + point_length)/lead)
    """
    lead = sympy.Symbol("lead", positive=True)
    depth = sympy.Symbol("depth", real=True)
    turns, travel, point_length = sympy.symbols("turns travel point_length", nonnegative=True)
    return (
        Derivation.start(
            "Turns of the brace for a depth",
            (
                Quantity(turns, "N", "turns of the brace, counted", "number"),
                Quantity(lead, "l", "lead of the screw: advance at each turn", "length a turn"),
                Quantity(travel, "t", "how far the bit has gone in since counting began"),
                Quantity(
                    depth,
                    "D",
                    "depth of the hole at its full width; below 0 while the lips are still to come",
                ),
                Quantity(
                    point_length,
                    "p",
                    "how far the screw's point is ahead of the lips; 0 if counted from the lips",
                ),
            ),
            equation(travel, turns * lead),
            "the screw cuts its own thread in the wood, and every turn pulls the bit in by one lead",
            subject="turns",
            example={
                turns: 18,
                lead: sympy.Rational(1, 8),
                travel: sympy.Rational(9, 4),
                depth: 2,
                point_length: sympy.Rational(1, 4),
            },
        )
        .then(
            Substitute(travel, tip_derivation().result.rhs),
            "counted from the screw's first bite, the first turns only bring the lips to the face: of the "
            "whole way the point's length makes no hole. Counted from the moment the lips touch, nothing "
            "is lost, and p is 0",
        )
        .then(Isolate(turns), "the turns are wanted")
    )


@functools.cache
def lead_derivation() -> Derivation:
    """Derive a screw's lead from its threads per inch and its starts.

    Returns
    -------
    Derivation
        Speaks of `lead`, `starts`, `inch` (an inch in the piece's unit), `threads_per_inch`; its subject is
        `lead`.

    Source: lead = pitch times starts, as for every screw (from memory).

    >>> lead_derivation().result
    Eq(lead, inch*starts/threads_per_inch)
    """
    lead, starts, pitch, inch, threads_per_inch = sympy.symbols(
        "lead starts pitch inch threads_per_inch", positive=True
    )
    return Derivation.start(
        "The lead of a screw",
        (
            Quantity(lead, "l", "advance at each turn", "length a turn"),
            Quantity(
                starts, "k", "threads that wind side by side, beginning together at the point", "number"
            ),
            Quantity(pitch, "P", "from one ridge of the screw to the next"),
            Quantity(inch, "i", "an inch, in the unit of the piece: 1, or 25.4 mm"),
            Quantity(threads_per_inch, "n", "ridges to an inch, counted along the screw", "number"),
        ),
        equation(lead, starts * pitch),
        "following one thread once round, you come out as many ridges further on as there are threads side "
        "by side",
        subject="lead",
        example={
            lead: sympy.Rational(1, 8),
            starts: 2,
            pitch: sympy.Rational(1, 16),
            inch: 1,
            threads_per_inch: 16,
        },
    ).then(Substitute(pitch, inch / threads_per_inch), "the ridges share an inch equally")
