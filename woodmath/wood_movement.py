"""How much a board moves across its grain when its moisture changes, by either of the two published figures.

Along the grain wood moves so little that nobody allows for it. Across it a board swells and shrinks in even steps
with its moisture, most along the growth rings, and across them a third to three quarters as much.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.as_given import quoted
from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.operations import Isolate, Substitute, equation
from woodmath.quantities import worded
from woodmath.timber import in_a_sentence
from woodmath.timber import species as species_named
from woodmath.timber_table import Printed

FIBRE_SATURATION = 30.0
"""Percent of moisture above which wood does not swell any more, as the handbook reckons it."""
VALID = (6.0, 14.0)
"""Percent of moisture between which the coefficients hold (USDA Wood Handbook, GTR-190, p. 13-17)."""
CUTS = ("flat", "quarter")
"""How a board was sawn: its rings along the face, or square to it."""

_ANGLES = {"flat": 0.0, "quarter": 90.0}
_WORDS = {
    "change": (r"\Delta D", "change of the width: more than 0 when the board grows", "length", "real"),
    "width": ("D", "width of the board as it lies there, across the grain", "length", "positive"),
    "coefficient": ("C", "change for each percent of moisture, as a part of the width", "number", "positive"),
    "from_moisture": ("M_1", "moisture at first, in percent", "number", "nonnegative"),
    "to_moisture": ("M_2", "moisture afterwards, in percent", "number", "nonnegative"),
    "tangential": ("C_T", "coefficient along the growth rings", "number", "positive"),
    "radial": ("C_R", "coefficient across the growth rings", "number", "positive"),
    "rings": (r"\theta", "angle of the rings to the face, 0 flat, 90 quarter", "degrees", "nonnegative"),
    "along_rings": ("g_T", "what the part of the width along the rings grows", "number", "real"),
    "across_rings": ("g_R", "what the part of the width across the rings grows", "number", "real"),
    "total_shrinkage": (
        "S",
        "shrinkage from green to oven-dry, in percent of the green width",
        "number",
        "positive",
    ),
    "green_width": ("D_0", "width of the board while it was green", "length", "positive"),
}


def _quantities(*names: str) -> tuple[Quantity, ...]:
    return worded(_WORDS, names)


@functools.cache
def movement_derivation() -> Derivation:
    """Derive the change of a board's width from what a coefficient of movement means.

    Returns
    -------
    Derivation
        Its result gives `change` from `width`, `coefficient`, `from_moisture` and `to_moisture` (percent).

    Source: USDA Wood Handbook, GTR-190, equation 13-2 (read).

    >>> movement_derivation().result
    Eq(change, coefficient*width*(-from_moisture + to_moisture))
    """
    quantities = _quantities("change", "width", "coefficient", "from_moisture", "to_moisture")
    change, width, coefficient, first, afterwards = (each.symbol for each in quantities)
    return Derivation.start(
        "What a board moves, by its coefficient",
        quantities,
        equation(coefficient * (afterwards - first), change / width),
        "the coefficient is the part of its width that a board gains with each percent of moisture, and every "
        "percent counts alike",
        subject="change",
        example={
            change: sympy.Rational(78, 625),
            width: 8,
            coefficient: sympy.Rational(26, 10000),
            first: 6,
            afterwards: 12,
        },
    ).then(Isolate(change), "we want the length itself: a part of the width, times the width")


@functools.cache
def angled_derivation() -> Derivation:
    """Derive the coefficient of a board whose rings meet its face at an angle.

    Returns
    -------
    Derivation
        Its result gives `coefficient` from `tangential`, `radial` and `rings` (degrees).

    Source: plane geometry, for movements as small as those of wood.

    >>> round(angled_derivation().function("coefficient")(tangential=0.004, radial=0.002, rings=45), 6)
    0.003
    """
    names = ("coefficient", "tangential", "radial", "rings", "along_rings", "across_rings")
    quantities = _quantities(*names)
    coefficient, tangential, radial, rings, along, across = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "What a board moves whose rings lie aslant",
            quantities,
            equation(coefficient, along * sympy.cos(rings) + across * sympy.sin(rings)),
            "take a board one unit wide. Walk across it in two legs, one along the rings and one square to them; each "
            "leg grows in its own direction, and of that growth only what points across the board makes it wider",
            subject="coefficient",
            example={
                coefficient: sympy.Rational(3, 1000),
                tangential: sympy.Rational(4, 1000),
                radial: sympy.Rational(2, 1000),
                rings: sympy.pi / 4,
                along: sympy.Rational(4, 1000) * sympy.sqrt(2) / 2,
                across: sympy.Rational(2, 1000) * sympy.sqrt(2) / 2,
            },
            keeps={"rings": "rings meet a face at 0 to 90 degrees"},
        )
        .then(
            Substitute(along, tangential * sympy.cos(rings)),
            "the leg along the rings is the cosine of their angle long, and moves by the tangential coefficient",
        )
        .then(
            Substitute(across, radial * sympy.sin(rings)),
            "the leg across the rings is the sine long, and moves by the radial one",
        )
    )


@functools.cache
def shrinkage_derivation() -> Derivation:
    """Derive the change of a board's width from its whole shrinkage between green and oven-dry.

    Returns
    -------
    Derivation
        Its result gives `change` from `width`, `total_shrinkage`, `from_moisture` and `to_moisture` (percent).

    Source: USDA Wood Handbook, GTR-190, equation 13-3 (from memory).

    >>> move = shrinkage_derivation().function("change")
    >>> round(move(width=100, total_shrinkage=7.1, from_moisture=6, to_moisture=12), 3)
    1.506
    """
    names = ("change", "width", "total_shrinkage", "from_moisture", "to_moisture", "green_width")
    quantities = _quantities(*names)
    change, width, shrinkage, first, afterwards, green = (each.symbol for each in quantities)
    saturation = sympy.Integer(int(FIBRE_SATURATION))
    return Derivation.start(
        "What a board moves, by its whole shrinkage",
        quantities,
        equation(change, green * shrinkage / 100 * (afterwards - first) / saturation),
        "from green to oven-dry a board loses S percent of its green width, and it does so in even steps over the "
        "30 percent of moisture below which wood shrinks at all",
        subject="change",
        example={
            change: 3,
            width: 97,
            shrinkage: 10,
            first: 21,
            afterwards: 30,
            green: 100,
        },
    ).then(
        Substitute(green, width / (1 - shrinkage / 100 * (saturation - first) / saturation)),
        "you measure the board as it lies there, and it has shrunk from green to that width already, by the same "
        "even steps. (Multiplied by 3000 over S above and below, this is the handbook's)",
    )


@functools.cache
def coefficient_derivation() -> Derivation:
    """Derive the coefficient of movement from the whole shrinkage: the width is taken at 10 percent of moisture.

    Returns
    -------
    Derivation
        Its result gives `coefficient` from `total_shrinkage` (percent).

    Source: USDA Wood Handbook, GTR-190, footnote of Table 13-5 (from memory).

    >>> round(coefficient_derivation().function("coefficient")(total_shrinkage=7.1), 5)
    0.00248
    """
    rule = shrinkage_derivation()
    names = ("change", "width", "total_shrinkage", "from_moisture", "to_moisture", "coefficient")
    quantities = _quantities(*names)
    change, width, shrinkage, first, afterwards, coefficient = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "The coefficient that goes with a shrinkage",
            quantities,
            rule.result,
            "this is the rule for any two moistures",
            subject="coefficient",
            example={
                change: sympy.Rational(1, 100),
                width: 1,
                shrinkage: 25,
                first: 10,
                afterwards: 11,
                coefficient: sympy.Rational(1, 100),
            },
        )
        .then(Substitute(first, sympy.Integer(10)), "the table takes every width at 10 percent of moisture")
        .then(Substitute(afterwards, sympy.Integer(11)), "and its coefficient is for one percent more")
        .then(
            Substitute(width, sympy.Integer(1)),
            "every board of a timber has the same coefficient, whatever its width: take one that is one unit wide",
        )
        .then(
            Substitute(change, coefficient),
            "what such a board moves for one percent of moisture is the coefficient itself",
        )
    )


def coefficient(species: str, cut: str | float) -> float:
    """Return how much a board of a timber moves for each percent of moisture, as a part of its width.

    Parameters
    ----------
    species : str
        One of `woodmath.timber.SPECIES`.
    cut : "flat", "quarter" or float
        How it was sawn, or the angle of its rings to the face in degrees, 0 (flat) to 90 (quarter).

    Returns
    -------
    float
        For each percent.

    Raises
    ------
    UnknownName
        If the course has no such timber, or its table no coefficient for it.
    ImpossibleShape
        If there is no such cut.

    Source: USDA Wood Handbook, GTR-190, Table 13-5; between flat and quarter, `angled_derivation`.

    >>> coefficient("cherry, black", "flat"), round(coefficient("cherry, black", 45), 5)
    (0.00248, 0.00187)
    """
    rings, timber = ring_angle(cut), species_named(species)
    tangential = _printed(species, timber.tangential_coefficient)
    radial = _printed(species, timber.radial_coefficient)
    return angled_derivation().function("coefficient")(tangential=tangential, radial=radial, rings=rings)


def ring_angle(cut: str | float) -> float:
    """Return the angle of a board's rings to its face.

    Parameters
    ----------
    cut : "flat", "quarter" or float
        How it was sawn, or the angle itself in degrees, 0 to 90.

    Returns
    -------
    float
        In degrees.

    Raises
    ------
    ImpossibleShape
        If there is no such cut.

    >>> ring_angle("quarter"), ring_angle(30)
    (90.0, 30.0)
    """
    angle = _ANGLES.get(cut) if isinstance(cut, str) else cut
    if isinstance(angle, bool) or not isinstance(angle, (int, float)) or not 0 <= angle <= 90:
        raise ImpossibleShape(
            f"A board is not sawn {quoted(cut)}. Say flat, quarter, or the angle of its rings to the face in degrees, "
            "from 0 (flat) to 90 (quarter)."
        )
    return float(angle)


def movement(width: float, species: str, cut: str | float, from_moisture: float, to_moisture: float) -> float:
    """How much wider a board becomes when its moisture changes, by the published coefficient.

    Parameters
    ----------
    width : float
        Across the grain, > 0, in any length unit.
    species : str
        One of `woodmath.timber.SPECIES`.
    cut : "flat", "quarter" or float
        How it was sawn, or the angle of its rings to the face in degrees, 0 (flat) to 90 (quarter).
    from_moisture, to_moisture : float
        In percent of the dry mass, 0 to 30; the coefficients hold from 6 to 14, and `limits_left` tells.

    Returns
    -------
    float
        In the same unit; less than 0 when it shrinks.

    Raises
    ------
    ImpossibleShape
        If there is no such width, cut or moisture.
    UnknownName
        If the timber is unknown, or no coefficient is printed for it.

    Source: USDA Wood Handbook, GTR-190, equation 13-2 (read).

    >>> round(movement(8, "cherry, black", "flat", 6, 12), 3)
    0.119
    """
    for moisture in (from_moisture, to_moisture):
        checked_moisture(moisture)
    return movement_derivation().function("change")(
        width=width,
        coefficient=coefficient(species, cut),
        from_moisture=from_moisture,
        to_moisture=to_moisture,
    )


def shrinkage_movement(
    width: float, total_shrinkage: float, from_moisture: float, to_moisture: float
) -> float:
    """How much wider a board becomes when its moisture changes, by its shrinkage from green to oven-dry.

    Parameters
    ----------
    width : float
        Across the grain at `from_moisture`, > 0, in any length unit.
    total_shrinkage : float
        In percent of the green width, more than 0 and less than 30.
    from_moisture, to_moisture : float
        In percent of the dry mass, 0 to 30.

    Returns
    -------
    float
        In the same unit; less than 0 when it shrinks.

    Raises
    ------
    ImpossibleShape
        If there is no such width, shrinkage or moisture.

    Source: USDA Wood Handbook, GTR-190, equation 13-3 (from memory).

    >>> round(shrinkage_movement(8, 7.1, 6, 12), 3)
    0.12
    """
    for moisture in (from_moisture, to_moisture):
        checked_moisture(moisture)
    _checked_shrinkage(total_shrinkage)
    return shrinkage_derivation().function("change")(
        width=width,
        total_shrinkage=total_shrinkage,
        from_moisture=from_moisture,
        to_moisture=to_moisture,
    )


def coefficient_from_shrinkage(total_shrinkage: float) -> float:
    """Return the coefficient of movement that goes with a shrinkage from green to oven-dry.

    Parameters
    ----------
    total_shrinkage : float
        In percent of the green width, more than 0 and less than 30.

    Returns
    -------
    float
        For each percent of moisture, of the width at 10 percent.

    Raises
    ------
    ImpossibleShape
        If no timber shrinks so.

    Source: `coefficient_derivation`.

    >>> round(coefficient_from_shrinkage(3.7), 5)
    0.00126
    """
    _checked_shrinkage(total_shrinkage)
    return coefficient_derivation().function("coefficient")(total_shrinkage=total_shrinkage)


def limits_left(from_moisture: float, to_moisture: float) -> tuple[str, ...]:
    """Say where the moistures leave the range in which the coefficients hold.

    Parameters
    ----------
    from_moisture, to_moisture : float
        In percent of the dry mass.

    Returns
    -------
    tuple of str
        A sentence, or nothing.

    Source: USDA Wood Handbook, GTR-190, p. 13-17 (read).

    >>> limits_left(8, 12)
    ()
    """
    low, high = VALID
    outside = sorted({each for each in (from_moisture, to_moisture) if not low <= each <= high})
    if not outside:
        return ()
    told = " and ".join(f"{each:.3g}" for each in outside)
    return (
        f"The coefficients hold from {low:g} to {high:g} percent of moisture, and {told} "
        f"{'lies' if len(outside) == 1 else 'lie'} outside: take the figure as a first estimate, or reckon with the "
        "shrinkage from green to oven-dry.",
    )


def checked_moisture(moisture: float) -> float:
    """Return a moisture at which wood moves.

    Parameters
    ----------
    moisture : float
        In percent of the dry mass.

    Returns
    -------
    float
        The same.

    Raises
    ------
    ImpossibleShape
        If it is less than 0 or more than 30.

    >>> checked_moisture(12)
    12
    """
    if not 0 <= moisture <= FIBRE_SATURATION:
        raise ImpossibleShape(
            f"A moisture of {moisture:g} percent moves no board: wood shrinks and swells from 0 to "
            f"{FIBRE_SATURATION:g} percent of its dry mass. Give the moisture in percent, such as 8 for a heated room."
        )
    return moisture


def _checked_shrinkage(total_shrinkage: float) -> None:
    if not 0 < total_shrinkage < FIBRE_SATURATION:
        raise ImpossibleShape(
            f"No timber shrinks {total_shrinkage:g} percent from green to oven-dry. Furniture timbers shrink 2 to 12 "
            "percent: give that figure, in percent and not as a part of 1."
        )


def _printed(name: str, value: Printed | None) -> float:
    if value is None:
        raise UnknownName(
            f"No coefficient of movement for {in_a_sentence(name)} is in our tables, and none is made up. Measure "
            "one of your boards in a damp and in a dry season, give the shrinkage from green to oven-dry that a "
            "table of yours prints, or choose another timber."
        )
    return value.value
