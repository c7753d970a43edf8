"""How much of its strength wood keeps when it is loaded at an angle to its grain: Hankinson's rule.

It compares one choice with another. Strengths are averages of small clear samples: no load is ever rated with them.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Divide, Factor, Isolate, Substitute, equation

TENON_EXPONENTS = (1.5, 2.0)
"""Of the rule for bending (USDA Wood Handbook, GTR-190, chapter 5, slope of grain, from memory)."""
TENON_SHARES = (0.04, 0.10)
"""Strength across the grain as a part of that along it, for bending (the same table, from memory)."""


@functools.cache
def hankinson_derivation() -> Derivation:
    """Bring Hankinson's rule from the form in which it is remembered to the one in which it is printed.

    Returns
    -------
    Derivation
        Its result gives `strength` from `parallel`, `perpendicular` (in one unit), `angle` (degrees) and `exponent`.

    Source: Hankinson, US Army Air Service Information Circular 259, 1921, as cited in an encyclopedia (read).

    >>> rule = hankinson_derivation().function("strength")
    >>> round(rule(parallel=1450, perpendicular=235, angle=45, exponent=2), 1)
    404.5
    """
    strength, parallel, perpendicular, angle, exponent = sympy.symbols(
        "strength parallel perpendicular angle exponent", positive=True
    )
    angle = sympy.Symbol("angle", nonnegative=True)
    return Derivation.start(
        "Strength at an angle to the grain",
        (
            Quantity(strength, "N", "strength at the angle", "number"),
            Quantity(parallel, "P", "strength along the grain", "number"),
            Quantity(perpendicular, "Q", "strength across the grain, in the same unit", "number"),
            Quantity(angle, r"\theta", "angle to the grain", "degrees"),
            Quantity(exponent, "n", "2 in compression, 1.5 to 2 in tension and bending", "number"),
        ),
        equation(
            1 / strength,
            sympy.cos(angle) ** exponent / parallel + sympy.sin(angle) ** exponent / perpendicular,
        ),
        "what gives way is shared out: the part of the load that runs along the grain meets the strength P, the part "
        "across it the strength Q, and weaknesses (one over a strength) add up where strengths do not. With n = 2 the "
        "two parts make the whole; that this is how wood behaves was measured",
        subject="strength",
        example={
            strength: sympy.Rational(8, 5),
            parallel: 4,
            perpendicular: 1,
            angle: sympy.pi / 4,
            exponent: 2,
        },
    ).then(Isolate(strength), "we want the strength itself, and turn both sides over")


@functools.cache
def share_derivation() -> Derivation:
    """Derive what part of its strength along the grain wood keeps at an angle.

    Returns
    -------
    Derivation
        Its result gives `kept` from `share` (across over along), `angle` (degrees) and `exponent`.

    Source: `hankinson_derivation`, everything counted in strengths along the grain.

    >>> rule = share_derivation().function("kept")
    >>> round(rule(share=0.07, angle=9, exponent=2), 2)
    0.75
    """
    rule = hankinson_derivation()
    parallel, perpendicular, strength = (
        rule.quantity(name).symbol for name in ("parallel", "perpendicular", "strength")
    )
    kept, share = sympy.symbols("kept share", positive=True)
    return (
        Derivation.start(
            "What part of its strength is kept",
            (
                Quantity(kept, "k", "part of the strength along the grain that is kept", "number"),
                Quantity(share, "q", "strength across the grain as a part of that along it", "number"),
                *rule.quantities,
            ),
            rule.result,
            "this is the rule for any two strengths",
            subject="kept",
            example={
                **dict(rule.example),
                kept: sympy.Rational(2, 5),
                share: sympy.Rational(1, 4),
            },
        )
        .then(Substitute(perpendicular, share * parallel), "tell the strength across as a part of that along")
        .then(Substitute(strength, kept * parallel), "and the strength at the angle too")
        .then(Divide(parallel), "both sides are then so many strengths along the grain")
        .then(Factor(), "which stands above and below and drops out")
    )


def strength_at_angle(parallel: float, perpendicular: float, angle: float, exponent: float = 2.0) -> float:
    """Strength of wood loaded at an angle to its grain.

    Parameters
    ----------
    parallel, perpendicular : float
        Strengths along and across the grain, > 0, in one unit.
    angle : float
        Of the load to the grain, 0 to 90 degrees.
    exponent : float
        2 in compression, 1.5 to 2 in tension and bending; 1 to 3 is taken.

    Returns
    -------
    float
        In the same unit: between the two with exponent 2; with less, a hair below the second near 90 degrees. It
        compares; it rates no load.

    Raises
    ------
    ImpossibleShape
        If a strength is not positive, or there is no such angle or exponent.

    Source: `hankinson_derivation`.

    >>> round(strength_at_angle(1450, 235, 30), 1)
    632.5
    """
    _checked(angle, exponent)
    return hankinson_derivation().function("strength")(
        parallel=parallel, perpendicular=perpendicular, angle=angle, exponent=exponent
    )


def strength_kept(angle: float, share: float, exponent: float = 2.0) -> float:
    """What part of its strength along the grain wood keeps at an angle to it.

    Parameters
    ----------
    angle : float
        Of the load to the grain, 0 to 90 degrees.
    share : float
        Strength across the grain as a part of that along it, > 0.
    exponent : float
        As in `strength_at_angle`.

    Returns
    -------
    float
        1 along the grain, `share` across it.

    Raises
    ------
    ImpossibleShape
        If there is no such share, angle or exponent.

    Source: `share_derivation`.

    >>> strength_kept(angle=0, share=0.07), round(strength_kept(angle=20, share=0.07), 2)
    (1.0, 0.39)
    """
    _checked(angle, exponent)
    return share_derivation().function("kept")(share=share, angle=angle, exponent=exponent)


def tenon_keeps(angle: float) -> tuple[float, float]:
    """What part of its strength a tenon keeps that is bent at an angle to its grain: the least and the most.

    Parameters
    ----------
    angle : float
        Of the tenon to the grain, 0 to 90 degrees.

    Returns
    -------
    tuple of float, float
        With the smallest share and exponent that the handbook gives for bending, and with the greatest.

    Raises
    ------
    ImpossibleShape
        If there is no such angle.

    Source: `strength_kept`, with `TENON_SHARES` and `TENON_EXPONENTS`.

    >>> [round(kept, 2) for kept in tenon_keeps(9)]
    [0.4, 0.82]
    """
    least, most = map(functools.partial(strength_kept, angle), TENON_SHARES, TENON_EXPONENTS)
    return least, most


def _checked(angle: float, exponent: float) -> None:
    if not 0 <= angle <= 90:
        raise ImpossibleShape(
            f"A load meets the grain at 0 to 90 degrees, and {angle:g} is given. Give the smaller of the two angles "
            "that they make."
        )
    if not 1 <= exponent <= 3:
        raise ImpossibleShape(
            f"The rule's exponent is about 2 (1.5 to 2 in tension and bending), and {exponent:g} is given. Give 2 "
            "where you know no better."
        )
