"""When the case really goes over: past its curve it turns on the heel, and what a push must do for that.

Where the touching point reaches the heel the case only stops rolling. From there on the heel is the pivot,
and the case goes over when its centre of gravity has come plumb above it. A flat foot is a heel from the
start.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import (
    Divide,
    Expand,
    Factor,
    Gather,
    Isolate,
    Multiply,
    Square,
    Substitute,
    TakeRoot,
    equation,
)
from woodmath.quantities import worded
from woodmath.rocking_derivations import lever_arm_derivation, middle_height_derivation
from woodmath.rocking_derivations import quantities as rocking_quantities

_WORDS = MappingProxyType(
    {
        "out": ("v", "from the centre of gravity out to the heel, along the rocker", "metres", "real"),
        "above": ("w", "from the heel up to the centre of gravity, along the middle line", "metres", "real"),
        "from_level": (
            r"\varphi",
            "how steeply the line from heel to centre of gravity stands",
            "degrees",
            "real",
        ),
        "tip_angle": (r"\theta_{tip}", "the tilt at which it goes over", "degrees", "real"),
        "over_heel": ("H_v", "height of the centre of gravity over the heel", "metres", "real"),
        "top": ("D", "height of the centre of gravity plumb over the heel", "metres", "positive"),
        "push": ("F", "level push that just holds the case at its tilt", "newtons", "real"),
        "push_height": ("y", "height over the floor of the place that is pushed", "metres", "positive"),
        "slope": (r"\sigma", "slope of the floor, falling to the right", "degrees", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that tipping speaks of; those of rocking keep their letters.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("out", "above", "mass")]
    ['v', 'w', 'm']
    """
    return worded(_WORDS, names, rocking_quantities)


@functools.cache
def tip_derivation() -> Derivation:
    """Derive the tilt at which a case that turns on its heel goes over.

    Returns
    -------
    Derivation
        Speaks of `tip_angle` and `from_level` (degrees), `out`, `above`; its subject is `tip_angle`.

    Source: a weight plumb over its pivot turns it neither way.

    >>> round(tip_derivation().function("tip_angle")(out=0.5, above=0.5), 9)
    45.0
    """
    spoken_of = quantities("tip_angle", "from_level", "out", "above")
    tip_angle, from_level, out, above = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "When it goes over",
        spoken_of,
        equation(tip_angle, sympy.pi / 2 - from_level),
        "upright, the line from the heel to the centre of gravity stands φ from level; the case goes over "
        "when it has turned far enough for that line to stand plumb",
        subject="tip_angle",
        example={tip_angle: sympy.pi / 4, from_level: sympy.pi / 4, out: 3, above: 3},
    ).then(
        Substitute(from_level, sympy.atan(above / out)),
        "how steep the line is: so far up for so far out. The higher the weight, the steeper; the longer "
        "the rocker, the flatter",
    )


@functools.cache
def top_derivation() -> Derivation:
    """Derive how high the centre of gravity stands when it is plumb over the heel.

    Returns
    -------
    Derivation
        Speaks of `top`, `out`, `above`; its subject is `top`.

    Source: Pythagoras.

    >>> top_derivation().function("top")(out=0.3, above=0.4)
    0.5
    """
    spoken_of = quantities("top", "out", "above")
    top, out, above = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "How high the weight is lifted before it goes over",
        spoken_of,
        equation(top**2, out**2 + above**2),
        "the line from the heel to the centre of gravity keeps its length while it turns, and stands plumb "
        "at the top",
        subject="top",
        example={top: 5, out: 3, above: 4},
        keeps={"out": "the heel lies to the right of the weight", "above": "the weight lies above the heel"},
    ).then(TakeRoot("a height is more than nothing"), "so high is the hill's top")


@functools.cache
def over_heel_derivation() -> Derivation:
    """Derive how high a point of the case stands over the floor when it has turned on the heel.

    Returns
    -------
    Derivation
        Speaks of `over_heel`, `out`, `above`, `tilt` (degrees); its subject is `over_heel`.

    Source: plane trigonometry.

    >>> round(over_heel_derivation().function("over_heel")(out=0.3, above=0.4, tilt=0), 9)
    0.4
    """
    spoken_of = quantities("over_heel", "top", "from_level", "out", "above", "tilt")
    over_heel, top, from_level, out, above, tilt = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How high a point stands when the case turns on its heel",
            spoken_of,
            equation(over_heel, top * sympy.sin(from_level + tilt)),
            "its distance from the heel stays, and the line to it has turned by the tilt",
            subject="over_heel",
            example={
                over_heel: 7 / sympy.sqrt(2),
                top: 5,
                from_level: sympy.atan(sympy.Rational(4, 3)),
                out: 3,
                above: 4,
                tilt: sympy.pi / 4,
            },
        )
        .then(
            Substitute(
                sympy.sin(from_level + tilt),
                sympy.sin(from_level) * sympy.cos(tilt) + sympy.cos(from_level) * sympy.sin(tilt),
            ),
            "the sine of two angles together",
        )
        .then(Expand(), "each part by itself")
        .then(Substitute(top * sympy.sin(from_level), above), "upright the line goes up so far")
        .then(Substitute(top * sympy.cos(from_level), out), "and so far out")
    )


@functools.cache
def lever_over_heel_derivation() -> Derivation:
    """Derive the lever arm of the weight about the heel.

    Returns
    -------
    Derivation
        Speaks of `lever_arm`, `out`, `above`, `tilt` (degrees); its subject is `lever_arm`.

    Source: plane trigonometry; it is how fast the height over the heel grows with the tilt, which is tested.

    >>> round(lever_over_heel_derivation().function("lever_arm")(out=0.3, above=0.4, tilt=0), 9)
    0.3
    """
    spoken_of = quantities("lever_arm", "top", "from_level", "out", "above", "tilt")
    lever_arm, top, from_level, out, above, tilt = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "How far the heel lies beside the weight",
            spoken_of,
            equation(lever_arm, top * sympy.cos(from_level + tilt)),
            "the line from the heel to the centre of gravity keeps its length, and has turned by the tilt",
            subject="lever_arm",
            example={
                lever_arm: -1 / sympy.sqrt(2),
                top: 5,
                from_level: sympy.atan(sympy.Rational(4, 3)),
                out: 3,
                above: 4,
                tilt: sympy.pi / 4,
            },
        )
        .then(
            Substitute(
                sympy.cos(from_level + tilt),
                sympy.cos(from_level) * sympy.cos(tilt) - sympy.sin(from_level) * sympy.sin(tilt),
            ),
            "the cosine of two angles together",
        )
        .then(Expand(), "each part by itself")
        .then(Substitute(top * sympy.sin(from_level), above), "upright the line goes up so far")
        .then(Substitute(top * sympy.cos(from_level), out), "and so far out")
    )


@functools.cache
def push_derivation() -> Derivation:
    """Derive the level push that just holds a case at its tilt.

    Returns
    -------
    Derivation
        Speaks of `push` (newtons), `push_height`, `mass`, `gravity`, `lever_arm`; its subject is `push`.

    Source: the law of the lever, about the touching point.

    >>> push_derivation().function("push")(push_height=0.5, mass=10, gravity=10, lever_arm=0.1)
    20.0
    """
    spoken_of = quantities("push", "push_height", "mass", "gravity", "lever_arm")
    push, push_height, mass, gravity, lever_arm = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "How hard a push holds it there",
        spoken_of,
        equation(push * push_height, mass * gravity * lever_arm),
        "about the touching point the push turns the case one way by its height over the floor, and the "
        "weight turns it back by its lever arm; slowly pushed, the two are equal",
        subject="push",
        example={push: 20, push_height: 1, mass: 10, gravity: 10, lever_arm: sympy.Rational(1, 5)},
    ).then(Isolate(push), "the push is wanted: the higher you push, the less it takes")


@functools.cache
def slope_derivation() -> Derivation:
    """Derive what must hold where a case lies still on a floor that slopes.

    Returns
    -------
    Derivation
        Speaks of `slope` (degrees), `lever_arm`, `height`, both measured from the floor; its subject is
        `slope`.

    Source: a weight plumb over its pivot turns it neither way.

    >>> round(slope_derivation().function("slope")(lever_arm=0.1, height=0.1), 9)
    45.0
    """
    spoken_of = quantities("slope", "lever_arm", "height")
    slope, lever_arm, height = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Where it lies on a floor that slopes",
            spoken_of,
            equation(lever_arm * sympy.cos(slope), height * sympy.sin(slope)),
            "measured square to the floor the weight stands H high, and along the floor the touching point "
            "lies ℓ downhill of it. Tilt the picture by the slope: plumb above its point the weight is "
            "where the two level parts are equal",
            subject="slope",
            example={slope: sympy.pi / 4, lever_arm: 3, height: 3},
        )
        .then(Divide(height * sympy.cos(slope)), "arm over height")
        .then(
            Substitute(sympy.sin(slope), sympy.tan(slope) * sympy.cos(slope)),
            "a sine over a cosine is a tangent",
        )
        .then(Isolate(slope), "the slope on which it would lie so")
    )


@functools.cache
def balance_derivation() -> Derivation:
    """Derive the tilt at which a case that leans on its curve stands balanced, where its hill turns.

    Returns
    -------
    Derivation
        Speaks of `tilt` (degrees), `half_length`, `half_height`, `centre_height`; its subject is `tilt`.

    Source: `woodmath.rocking_derivations.lever_arm_derivation`, where it is nothing.

    >>> round(balance_derivation().function("tilt")(half_length=0.5, half_height=0.25, centre_height=0.5), 4)
    54.7356
    """
    spoken_of = rocking_quantities(
        "tilt", "lever_arm", "half_length", "half_height", "middle_height", "centre_height", "centre_offset"
    )
    tilt, lever_arm, a, b, middle, centre_height, offset = (quantity.symbol for quantity in spoken_of)
    arm = lever_arm_derivation().result.rhs.subs(offset, 0)
    tangent = sympy.Rational(1, 2)
    cosine = 1 / sympy.sqrt(1 + tangent**2)
    return (
        Derivation.start(
            "Where a leaning case stands balanced",
            spoken_of,
            equation(lever_arm, arm),
            "the lever arm, as derived, for a weight on the middle line",
            subject="tilt",
            example={
                tilt: sympy.atan(tangent),
                lever_arm: 0,
                a: 10,
                b: 5,
                middle: sympy.sqrt(50) * cosine,
                centre_height: 5 + 75 / sympy.sqrt(50),
                offset: 0,
            },
            keeps={
                "tilt": "the case leans to the right; to the left it is the same",
                "half_length": "it is a length",
                "half_height": "it is a length",
                "centre_height": "the weight lies above the ellipse's centre",
            },
        )
        .then(
            Substitute(lever_arm, sympy.Integer(0)),
            "balanced it turns neither way: the weight stands plumb over the touching point",
        )
        .then(
            Divide(sympy.sin(tilt)),
            "upright it is balanced anyway; another place has a tilt that is not nothing",
        )
        .then(Gather((middle,)), "what has the height p in it to the left")
        .then(Multiply(middle), "p above the line")
        .then(
            Factor(),
            "a difference of squares on the one side, the height over the ellipse's centre on the other",
        )
        .then(
            Substitute(middle, middle_height_derivation().result.rhs), "the height p is known from the tilt"
        )
        .then(
            Square(),
            "the root goes. A stranger may come in, in which the two sides have opposite signs: the answer "
            "is kept only where the weight is high over the centre of a flat ellipse, or low in a tall one",
        )
        .then(
            Substitute(sympy.sin(tilt), sympy.tan(tilt) * sympy.cos(tilt)),
            "a sine is a tangent times a cosine",
        )
        .then(Divide(sympy.cos(tilt) ** 2), "the square of the cosine stands in every term")
        .then(Isolate(tilt, keep="the case leans to the right"), "the tilt is wanted")
    )
