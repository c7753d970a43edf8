"""Why one radius draws a whole rosette, and the other sums of compass and rule that an ornament asks for.

Everything rests on two figures that compass and rule make by themselves: the triangle with two equal sides, because
a compass keeps its radius, and the right triangle that is its half.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import Isolate, Multiply, Substitute, equation
from woodmath.quantities import worded

_WORDS = MappingProxyType(
    {
        "radius": ("r", "radius to which the compass is set", "length", "positive"),
        "petals": ("n", "how many petals", "number", "positive"),
        "petal": ("p", "length of a petal, from the middle to its tip", "length", "positive"),
        "half_apart": (
            r"\psi",
            "half of what lies between the petal's two compass points, seen from the middle",
            "degrees",
            "positive",
        ),
        "half_tip": (
            r"\tau",
            "half of what the petal's two sides open to, at the middle",
            "degrees",
            "positive",
        ),
        "parts": ("m", "into how many parts the circle is divided", "number", "positive"),
        "chord": (
            "c",
            "from one point of division straight to the next: what the dividers are set to",
            "length",
            "positive",
        ),
        "half_step": (r"\alpha", "half of one part, seen from the middle", "degrees", "positive"),
        "length": (
            "L",
            "length that is to be divided, or filled from end to end",
            "length",
            "positive",
        ),
        "count": ("k", "how many units", "number", "positive"),
        "unit": ("u", "length of one unit", "length", "positive"),
        "step": ("s", "from one circle's centre to the next", "length", "positive"),
        "overlap": (
            "q",
            "which part of its diameter a circle covers of the next one",
            "number",
            "nonnegative",
        ),
        "reach": ("f", "from the fan's foot to the outermost of its scallops", "length", "positive"),
        "rib": ("b", "length of a rib", "length", "positive"),
        "half_bay": (r"\beta", "half of what lies between two ribs", "degrees", "positive"),
        "spread": (r"\omega", "angle over which the whole fan opens", "degrees", "positive"),
        "bays": ("j", "bays between the ribs", "number", "positive"),
        "to_the_chord": ("d", "from the foot to the middle between two ribs' ends", "length", "positive"),
        "scallop": ("e", "radius of a scallop: half from one rib's end to the next", "length", "positive"),
        "half_width": ("w", "half the width under an arc", "length", "positive"),
        "rise": ("h", "rise of an arc over its two ends", "length", "positive"),
        "margin": ("g", "margin, measured square to the edge", "length", "positive"),
        "level": ("v", "the same margin measured level", "length", "positive"),
        "splay": (r"\sigma", "lean of the edge from upright", "degrees", "real"),
        "half_edge": ("z", "half the length of the longer level edge", "length", "positive"),
        "half_corner": (r"\kappa", "half the angle of a corner", "degrees", "positive"),
        "run": ("a", "along the edge, from the corner", "length", "positive"),
        "height": ("H", "from the lower edge to the upper one, upright", "length", "positive"),
    }
)

_THREE = Limit(
    sympy.Symbol("petals", positive=True) >= 3,
    "A rosette of this kind has three petals or more: two would be as wide as they are long. Ask for more petals",
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that the derivations of the ornament speak of, always with the same letter.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("radius", "petals", "petal")]
    ['r', 'n', 'p']
    """
    return worded(_WORDS, names)


@functools.cache
def derivation() -> Derivation:
    """Derive how long the petals of a rosette are that is drawn with one setting of the compass.

    Returns
    -------
    Derivation
        Its result gives `petal` from `radius` and `petals`.

    Source: plane trigonometry; for six petals, *Elements* IV. 15 (the side of the hexagon is the radius).

    >>> round(derivation().function("petal")(radius=4, petals=6), 9)
    4.0
    """
    spoken_of = quantities("petal", "radius", "half_apart", "half_tip", "petals")
    petal, radius, half_apart, half_tip, petals = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "A rosette from one radius",
            spoken_of,
            equation(sympy.cos(half_apart), petal / 2 / radius),
            "the middle, a compass point and the petal's tip make a triangle with two equal sides: from the "
            "middle to the point is r, and from the point to the tip is r, because the compass was not touched. "
            "A line from the compass point square to the petal halves it, and half the petal lies beside the "
            "angle at the middle, in a right triangle whose longest side is r: their ratio is the cosine",
            subject="petal",
            example={petal: 4, radius: 4, half_apart: sympy.pi / 3, half_tip: sympy.pi / 6, petals: 6},
            limits=(_THREE,),
            keeps={
                "petals": "of the two angles that have this sine, a petal is opened by the one under a right angle"
            },
        )
        .then(Multiply(2 * radius), "the petal alone is wanted, and the whole of it")
        .then(Isolate(petal), "written the way a formula is read")
        .then(
            Substitute(half_apart, sympy.pi / 2 - half_tip),
            "an arc leaves the middle square to its own radius. So from the compass point's direction round to "
            "the petal's side is a right angle; the petal's own line lies within it and leaves half of the "
            "petal's opening",
        )
        .then(
            Substitute(half_tip, sympy.pi / petals),
            "n petals side by side, each touching the next and none covering it, share the whole turn of 360 "
            "degrees: each opens to 360 over n, and its half is 180 over n",
        )
    )


@functools.cache
def six_petals() -> Derivation:
    """Derive that a rosette of six has petals as long as the compass is open.

    Returns
    -------
    Derivation
        Takes up the result of `derivation()` with six petals.

    Source: *Elements* IV. 15, the side of the hexagon is the radius.

    >>> six_petals().result
    Eq(petal, radius)
    """
    rule = derivation()
    petals = rule.quantity("petals").symbol
    return Derivation.start(
        "Six petals are as long as the radius",
        tuple(rule.quantity(name) for name in ("petal", "radius", "petals")),
        rule.result,
        "this is the rule for any number of petals",
        subject="petal",
        example={
            rule.quantity(name).symbol: value for name, value in (("petal", 4), ("radius", 4), ("petals", 6))
        },
    ).then(
        Substitute(petals, sympy.Integer(6)),
        "180 degrees over six is 30, and its sine is one half: the tips fall on the first circle itself, where the "
        "next compass point is to be. That is why six needs nothing but the compass",
    )


@functools.cache
def chord_derivation() -> Derivation:
    """Derive what the dividers are set to so that they step round a circle evenly.

    Returns
    -------
    Derivation
        Its result gives `chord` from `radius` and `parts`.

    Source: plane trigonometry, the chord of an arc.

    >>> round(chord_derivation().function("chord")(radius=3, parts=8), 3)
    2.296
    """
    spoken_of = quantities("chord", "radius", "half_step", "parts")
    chord, radius, half_step, parts = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "What the dividers are set to",
            spoken_of,
            equation(sympy.sin(half_step), chord / 2 / radius),
            "two radii and the step between their ends make a triangle with two equal sides; the line from the "
            "middle that halves it makes a right triangle, with half the step opposite half the angle",
            subject="chord",
            example={chord: 4, radius: 4, half_step: sympy.pi / 6, parts: 6},
            limits=(
                Limit(
                    parts >= 2,
                    "One part is the whole circle, and dividers have nowhere to step: ask for two parts or more",
                ),
            ),
            keeps={
                "parts": "of the two angles that have this sine, half a step is the one under a right angle"
            },
        )
        .then(Multiply(2 * radius), "the whole step is wanted, alone")
        .then(Isolate(chord), "written the way a formula is read")
        .then(
            Substitute(half_step, sympy.pi / parts),
            "m equal parts share 360 degrees, so half of one is 180 over m",
        )
    )


@functools.cache
def six_steps() -> Derivation:
    """Derive that the radius itself steps six times round its circle.

    Returns
    -------
    Derivation
        Takes up the result of `chord_derivation()` with six parts.

    Source: *Elements* IV. 15.

    >>> six_steps().result
    Eq(chord, radius)
    """
    rule = chord_derivation()
    parts = rule.quantity("parts").symbol
    return Derivation.start(
        "The radius steps round six times",
        tuple(rule.quantity(name) for name in ("chord", "radius", "parts")),
        rule.result,
        "this is the rule for any number of parts",
        subject="chord",
        example={
            rule.quantity(name).symbol: value for name, value in (("chord", 4), ("radius", 4), ("parts", 6))
        },
    ).then(
        Substitute(parts, sympy.Integer(6)),
        "half a step is then 30 degrees, whose sine is one half: step and radius are equal, the triangle has three "
        "equal sides, and six of its corners fill the turn with nothing left over",
    )
