"""How long the string is, tied or endless, round pins that are thin or thick, and what it draws.

Tied to the pins it is 2a; endless, it is longer by the way between the pins, 2a + 2c; and pins and a pencil
that are equally thick add once round one of them.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit
from woodmath.ellipse_derivations import focus_derivation, quantities
from woodmath.operations import Expand, Isolate, Substitute, TakeRoot, equation


@functools.cache
def tied_string_derivation() -> Derivation:
    """Derive the length of a string tied to the two pins.

    Returns
    -------
    Derivation
        Speaks of `string` (between the knots) and `half_length`; its subject is `string`.

    Source: the pencil at the end of the long axis.

    >>> tied_string_derivation().result
    Eq(string, 2*half_length)
    """
    spoken_of = quantities("string", "to_near_pin", "to_far_pin", "half_length", "focus_distance")
    string, to_near_pin, to_far_pin, half_length, focus_distance = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The string tied to the pins",
            spoken_of,
            equation(string, to_near_pin + to_far_pin),
            "the pencil draws the string tight in two straight parts, one to each pin",
            subject="string",
            example={string: 10, to_near_pin: 2, to_far_pin: 8, half_length: 5, focus_distance: 3},
        )
        .then(
            Substitute(to_near_pin, half_length - focus_distance),
            "the string keeps its length, so any place of the pencil tells it; at the end of the ellipse "
            "the nearer pin is the half length less its own distance from the centre away",
        )
        .then(
            Substitute(to_far_pin, half_length + focus_distance),
            "and the other pin stands as far on the other side: its distance drops out",
        )
    )


@functools.cache
def string_derivation() -> Derivation:
    """Derive the length of the endless string, with pins and pencil no thicker than a line.

    Returns
    -------
    Derivation
        Speaks of `loop`, `half_length`, `focus_distance`; its subject is `loop`.

    Source: full loop L + D, *Fine Woodworking*, "A precise method for drawing an ellipse".

    >>> string_derivation().result
    Eq(loop, 2*focus_distance + 2*half_length)
    """
    spoken_of = quantities("loop", "string", "pin_spacing", "half_length", "focus_distance")
    loop, string, pin_spacing, half_length, focus_distance = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The endless string round pins and pencil",
            spoken_of,
            equation(loop, string + pin_spacing),
            "the loop runs from one pin to the pencil, on to the other pin, and back between the pins: it "
            "is longer than a tied string by the way between the pins, which is always the same",
            subject="loop",
            example={loop: 16, string: 10, pin_spacing: 6, half_length: 5, focus_distance: 3},
        )
        .then(
            Substitute(string, tied_string_derivation().result.rhs),
            "the two parts at the pencil are what a tied string would be",
        )
        .then(
            Substitute(pin_spacing, 2 * focus_distance),
            "the pins stand equally far from the centre, one on either side",
        )
    )


@functools.cache
def thick_loop_derivation() -> Derivation:
    """Derive what thick pins add to the loop, with a pencil (or a sleeve on it) as thick as they are.

    Returns
    -------
    Derivation
        Speaks of `thick_loop`, `loop`, `pin_diameter`; its subject is `thick_loop`.

    Source: the length of a belt round equal pulleys: the straight runs, and once round one pulley.

    >>> thick_loop_derivation().result
    Eq(thick_loop, loop + pi*pin_diameter)
    """
    spoken_of = quantities("thick_loop", "straight_runs", "bends", "loop", "pin_diameter")
    thick_loop, straight_runs, bends, loop, pin_diameter = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "Pins thicker than nothing",
            spoken_of,
            equation(thick_loop, straight_runs + bends),
            "pulled tight round three equal rounds, the string is straight between them and bent where it "
            "lies on them",
            subject="thick_loop",
            example={
                thick_loop: 16 + sympy.pi / 8,
                straight_runs: 16,
                bends: sympy.pi / 8,
                loop: 16,
                pin_diameter: sympy.Rational(1, 8),
            },
        )
        .then(
            Substitute(straight_runs, loop),
            "each straight run is a side of the triangle through the three middles, only moved out by half "
            "a pin: it is as long as that side, and together they are the loop of a string round lines",
        )
        .then(
            Substitute(bends, sympy.pi * pin_diameter),
            "going once round the triangle the string turns once full round, a part of it at each corner "
            "and always at the same radius: the three bends together go once round one pin, wherever the "
            "pencil stands",
        )
    )


@functools.cache
def pins_derivation() -> Derivation:
    """Derive the half height that a loop draws round two given pins.

    Returns
    -------
    Derivation
        Speaks of `half_height`, `loop`, `pin_spacing`; its subject is `half_height`.

    Source: the rules of pins and loop, as derived.

    >>> pins_derivation().function("half_height")(loop=16, pin_spacing=6)
    4.0
    """
    spoken_of = quantities("half_height", "loop", "pin_spacing", "half_length", "focus_distance")
    half_height, loop, pin_spacing, half_length, focus_distance = (quantity.symbol for quantity in spoken_of)
    squares = next(step for step in focus_derivation().steps if step.equation.lhs == focus_distance**2)
    return (
        Derivation.start(
            "What a loop draws round two pins",
            spoken_of,
            squares.equation,
            "the right triangle of half height, pin and string, with the pencil over the middle",
            subject="half_height",
            example={half_height: 4, loop: 16, pin_spacing: 6, half_length: 5, focus_distance: 3},
            limits=(
                Limit(
                    2 * pin_spacing < loop,
                    "The pins cannot be further apart than the string allows, and a loop that only just "
                    "goes round them draws a line: set them closer than half the loop, or make the loop "
                    "longer than twice their distance",
                ),
            ),
            keeps={"loop": "the loop is longer than the way between the pins, there and back"},
        )
        .then(
            Substitute(half_length, string_derivation().solved_for("half_length").rhs),
            "what the loop has left over the way between the pins is twice the half length",
        )
        .then(Substitute(focus_distance, pin_spacing / 2), "the centre is half way between the pins")
        .then(Expand(), "the square of the pins' distance then stands on both sides")
        .then(Isolate(half_height**2), "the half height is wanted")
        .then(
            TakeRoot("the half height is a length, and the loop is longer than twice the pins' distance"),
            "the half height is wanted, not its square; nothing is left of it when the loop only just goes "
            "round",
        )
    )
