"""Why a string round two pins draws the curve that it does, and where the pins go.

Everything starts from one rule, that the two parts of the string between pencil and pins add up to the same
length all the way round. What follows from it: the curve's height, slope and roundness
(`woodmath.ellipse_curve`), the string's length (`woodmath.ellipse_strings`), the rocker's arc
(`woodmath.ellipse_rocker`).
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import (
    Add,
    Divide,
    Expand,
    Factor,
    Gather,
    Square,
    Substitute,
    TakeRoot,
    equation,
)
from woodmath.quantities import worded

_WORDS = MappingProxyType(
    {
        "across": ("x", "place along the floor, from under the centre", "length", "real"),
        "up": ("y", "place upwards from the centre, below it less than nothing", "length", "real"),
        "half_length": ("a", "half the ellipse's length", "length", "positive"),
        "half_height": ("b", "half its height", "length", "positive"),
        "focus_distance": ("c", "from the centre to one pin", "length", "nonnegative"),
        "height": ("h", "height above the lowest point", "length", "positive"),
        "run": ("r", "a short way further along", "length", "real"),
        "slope": ("m", "rise for each unit of run", "number", "real"),
        "angle": (r"\theta", "slope of the curve, from level", "degrees", "real"),
        "radius": ("R", "radius of the circle that is as round as the curve's bottom", "length", "positive"),
        "string": ("S", "string tied to the two pins, between the knots", "length", "positive"),
        "to_near_pin": ("p", "from the pencil to the nearer pin", "length", "positive"),
        "to_far_pin": ("q", "from the pencil to the other pin", "length", "positive"),
        "loop": (
            "L",
            "endless string round pencil and both pins, all as thin as a line",
            "length",
            "positive",
        ),
        "pin_spacing": ("D", "from one pin to the other", "length", "nonnegative"),
        "thick_loop": (
            "T",
            "endless string round a pencil and pins that are equally thick",
            "length",
            "positive",
        ),
        "pin_diameter": ("d", "thickness of each pin, and of the pencil", "length", "nonnegative"),
        "straight_runs": ("u", "the three straight runs of the string together", "length", "positive"),
        "bends": ("v", "the three bends of the string together", "length", "nonnegative"),
        "half_chord": (
            r"\ell",
            "half the length of the rocker's arc, measured straight",
            "length",
            "positive",
        ),
        "rise": ("s", "how far the arc's ends stand above its lowest point", "length", "positive"),
        "shallowness": (
            "n",
            "how shallow a part of the lower half the arc is: 1 for all of it, near 2 for a little",
            "number",
            "positive",
        ),
    }
)

LOWER_RIGHT = "it is a length, found from a point of the lower half to the right of the centre"


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that the ellipse's derivations speak of, always with the same letter and meaning.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("half_length", "half_height")]
    ['a', 'b']
    """
    return worded(_WORDS, names)


@functools.cache
def derivation() -> Derivation:
    """Derive the ellipse's equation from the string that draws it.

    Returns
    -------
    Derivation
        Speaks of `across`, `up`, `half_length`, `half_height`, `focus_distance`; its subject is `up`.

    Source: the gardener's construction of an ellipse, two pins and a string; school algebra.

    >>> derivation().result
    Eq(across**2/half_length**2 + up**2/half_height**2, 1)
    """
    spoken_of = quantities("across", "up", "half_length", "half_height", "focus_distance")
    across, up, half_length, half_height, focus_distance = (quantity.symbol for quantity in spoken_of)
    to_left_pin = sympy.sqrt((across + focus_distance) ** 2 + up**2)
    to_right_pin = sympy.sqrt((across - focus_distance) ** 2 + up**2)
    return (
        Derivation.start(
            "From pins and string to the ellipse's equation",
            spoken_of,
            equation(to_left_pin + to_right_pin, 2 * half_length),
            "each root is the distance from the pencil to one pin, by Pythagoras; the two add up to the "
            "string, and the string keeps its length. How long it is can be read where the pencil stands "
            "at the end of the ellipse: one part is a + c, the other a − c, together 2a",
            subject="up",
            example={
                across: 3,
                up: sympy.Rational(-16, 5),
                half_length: 5,
                half_height: 4,
                focus_distance: 3,
            },
            limits=(
                Limit(
                    sympy.Abs(across) <= half_length,
                    "The ellipse reaches half its length to either side of the centre and no further: "
                    "ask for a place nearer to the centre, or make the ellipse longer",
                ),
            ),
            keeps={
                "up": "the rocker is the lower half of the ellipse, where y is less than nothing",
                "across": "the curve is the same on both sides; we take the right-hand one",
                "half_length": LOWER_RIGHT,
                "half_height": LOWER_RIGHT,
            },
        )
        .then(
            Add(-to_right_pin),
            "two roots on one side would leave a root behind when squared; with one on each side, one goes",
        )
        .then(
            Square(),
            "a root is undone by squaring. Squaring could let a stranger in, because it cannot tell a "
            "number from its opposite; none comes in here, for both sides are lengths: what is left of the "
            "string, 2a less one part, is the other part, and never less than nothing",
        )
        .then(Expand(), "what stands on both sides can only be struck out once it stands alone")
        .then(
            Gather((half_length,)),
            "x², c² and y² stand on both sides and go; what has a in it, the root too, is kept on one side",
        )
        .then(Divide(sympy.Integer(4)), "every term has a four")
        .then(Add(half_length**2), "now the root stands alone, and can be squared away as the first was")
        .then(
            Square(),
            "the second root goes as the first did. Again no stranger: the left side is a times a length, "
            "and the right side, a² − cx, stays above nothing because the pins stand inside the ellipse (c "
            "is less than a) and the pencil never gets further out than a",
        )
        .then(Expand(), "again, to see what stands on both sides")
        .then(
            Gather((across, up)),
            "the term 2a²cx cancels; the pencil's place comes to the left, the sizes to the right",
        )
        .then(
            Substitute(focus_distance**2, half_length**2 - half_height**2),
            "with the pencil over the middle, its string to either pin is half of 2a; half-height, pin and "
            "string close a right triangle with a as its longest side, so b² + c² = a²",
        )
        .then(Expand(), "a²x² and the square of a² cancel")
        .then(
            Divide(half_length**2 * half_height**2),
            "then each place is measured by its own half, and no pin is left in the equation: the curve is "
            "known by its length and height alone, whichever of them is the longer",
        )
    )


@functools.cache
def focus_derivation() -> Derivation:
    """Derive how far from the centre the pins stand.

    Returns
    -------
    Derivation
        Speaks of `focus_distance`, `half_length`, `half_height`, where half_length is the longer half.

    Source: Pythagoras; D = sqrt(L² − H²), *Fine Woodworking*, "A precise method for drawing an ellipse".

    >>> derivation_of_c = focus_derivation()
    >>> derivation_of_c.function("focus_distance")(half_length=5, half_height=4)
    3.0
    """
    spoken_of = quantities("across", "up", "half_length", "half_height", "focus_distance")
    across, up, half_length, half_height, focus_distance = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Where the pins go",
            spoken_of,
            derivation().steps[0].equation,
            "the rule of the string, for every place of the pencil",
            subject="focus_distance",
            example={across: 0, up: 4, half_length: 5, half_height: 4, focus_distance: 3},
            limits=(
                Limit(
                    half_height <= half_length,
                    "The pins stand on the longer axis: give the longer half as the half length",
                ),
                Limit(
                    focus_distance < half_length,
                    "The pins stand inside the ellipse: bring them nearer to the centre, or lengthen the "
                    "string",
                ),
            ),
            keeps={"half_height": "it is a length", "half_length": "it is a length"},
        )
        .then(
            Substitute(across, sympy.Integer(0)),
            "bring the pencil over the middle: both parts are equally long",
        )
        .then(Substitute(up, half_height), "there it stands half the height above the centre")
        .then(
            Divide(sympy.Integer(2)),
            "each part is half the string: set the compasses to a, and strike from there",
        )
        .then(Square(), "both sides are lengths, so squaring lets no stranger in")
        .then(Add(-(half_height**2)), "the pin's distance is wanted alone")
        .then(
            Factor(),
            "a difference of two squares is sum times difference: quicker in the head, and truer on a "
            "calculator when the ellipse is nearly a circle",
        )
        .then(TakeRoot("a distance is never less than nothing"), "the distance is wanted, not its square")
    )
