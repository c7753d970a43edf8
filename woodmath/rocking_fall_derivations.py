"""How far the weight comes down between two tilts, in a form that keeps its figures where they are close together."""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Divide, Expand, Factor, Substitute, equation
from woodmath.quantities import worded
from woodmath.rocking_derivations import derivation, middle_height_derivation
from woodmath.rocking_derivations import quantities as rocking_quantities

_WORDS = MappingProxyType(
    {
        "let_go": (r"\theta_0", "the tilt at which it was let go", "degrees", "real"),
        "half_way": ("m", "half way between the two tilts", "degrees", "real"),
        "half_apart": ("n", "half of what lies between the two tilts", "degrees", "real"),
        "middle_let_go": (
            "p_0",
            "height of the ellipse's centre at the tilt at which it was let go",
            "metres",
            "positive",
        ),
        "sinking": ("q", "how far the ellipse's centre has sunk since", "metres", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    r"""Return the quantities that the fall speaks of; those of rocking keep their letters.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("let_go", "tilt")]
    ['\\theta_0', '\\theta']
    """
    return worded(_WORDS, names, rocking_quantities)


@functools.cache
def fall_derivation() -> Derivation:
    """Derive how far the centre of gravity comes down between two tilts, in a form that keeps its figures.

    Returns
    -------
    Derivation
        Speaks of `fall`, `half_way`, `half_apart` (degrees), `half_length`, `half_height`, `middle_let_go`,
        `middle_height`, `centre_height`, `centre_offset`; its subject is `fall`.

    Source: `woodmath.rocking_derivations.derivation`, at both tilts.

    >>> fall_derivation().function("fall")(half_way=10, half_apart=0, half_length=0.5, half_height=0.4,
    ...     middle_let_go=0.4, middle_height=0.4, centre_height=0.3, centre_offset=0)
    0.0
    """
    spoken_of = quantities(
        "fall",
        "let_go",
        "tilt",
        "half_way",
        "half_apart",
        "half_length",
        "half_height",
        "middle_let_go",
        "middle_height",
        "sinking",
        "centre_height",
        "centre_offset",
    )
    fall, let_go, tilt, way, apart, a, b, middle_let_go, middle, sinking, centre_height, offset = (
        quantity.symbol for quantity in spoken_of
    )
    sine, cosine = sympy.sin, sympy.cos

    def at(angle: sympy.Symbol, middle_height: sympy.Symbol) -> sympy.Expr:
        return derivation().result.rhs.subs(
            {middle_height_derivation().result.rhs: middle_height, tilt: angle}, simultaneous=True
        )

    steep = sympy.atan(sympy.Rational(3, 8))
    return (
        Derivation.start(
            "How far the weight comes down",
            spoken_of,
            equation(fall, at(let_go, middle_let_go) - at(tilt, middle)),
            "the height at the tilt at which it was let go, less the height where it is now",
            subject="fall",
            example={
                fall: 39 / sympy.sqrt(73) - 4,
                let_go: steep,
                tilt: 0,
                way: steep / 2,
                apart: steep / 2,
                a: 10,
                b: 5,
                middle_let_go: 50 / sympy.sqrt(73),
                middle: 5,
                sinking: 50 / sympy.sqrt(73) - 5,
                centre_height: 4,
                offset: 1,
            },
        )
        .then(
            Substitute(middle_let_go, middle + sinking),
            "two nearly equal heights are taken from one another, and a calculator loses their figures: "
            "name the difference",
        )
        .then(Expand(), "the height that both have in common cancels")
        .then(
            Substitute(sinking, _sinking().result.rhs),
            "sum times difference is the difference of the squares, and the squares have no roots",
        )
        .then(
            Substitute(let_go, way + apart), "the one tilt is the middle of the two and half their distance"
        )
        .then(Substitute(tilt, way - apart), "the other is the middle less half their distance")
        .then(
            Substitute(sine(way + apart), sine(way) * cosine(apart) + cosine(way) * sine(apart)),
            "the sine of two angles together",
        )
        .then(
            Substitute(sine(apart - way), sine(apart) * cosine(way) - cosine(apart) * sine(way)),
            "and of one less the other",
        )
        .then(
            Substitute(cosine(way + apart), cosine(way) * cosine(apart) - sine(way) * sine(apart)),
            "the cosine of two angles together",
        )
        .then(
            Substitute(cosine(way - apart), cosine(way) * cosine(apart) + sine(way) * sine(apart)),
            "and of one less the other",
        )
        .then(Expand(), "what the two tilts have in common cancels")
        .then(
            Factor(),
            "what is left is a product: when the tilts are alike it is nothing, exactly, and near that no "
            "figure is lost",
        )
    )


@functools.cache
def _sinking() -> Derivation:
    """Derive how far the ellipse's centre sinks between two tilts, without taking one root from another."""
    spoken_of = quantities(
        "sinking", "middle_let_go", "middle_height", "let_go", "tilt", "half_length", "half_height"
    )
    sinking, middle_let_go, middle, let_go, tilt, a, b = (quantity.symbol for quantity in spoken_of)
    square = middle_height_derivation().result.rhs ** 2
    return (
        Derivation.start(
            "How far the ellipse's centre sinks",
            spoken_of,
            equation(sinking * (middle_let_go + middle), square.subs(tilt, let_go) - square),
            "sum times difference is the difference of the squares, and the squares of the two heights "
            "have no roots",
            subject="sinking",
            example={
                sinking: 50 / sympy.sqrt(73) - 5,
                middle_let_go: 50 / sympy.sqrt(73),
                middle: 5,
                let_go: sympy.atan(sympy.Rational(3, 8)),
                tilt: 0,
                a: 10,
                b: 5,
            },
        )
        .then(Substitute(sympy.cos(let_go) ** 2, 1 - sympy.sin(let_go) ** 2), "Pythagoras")
        .then(Substitute(sympy.cos(tilt) ** 2, 1 - sympy.sin(tilt) ** 2), "and again")
        .then(Expand(), "b² cancels")
        .then(Factor(), "a square less a square is sum times difference")
        .then(Divide(middle_let_go + middle), "the difference alone")
        .then(Factor(), "over the sum of the two heights")
    )
