"""A timber by its name, and how heavy it is.

A specific gravity compares the oven-dry wood with water; the weight of the moisture in it comes on top.
"""

from __future__ import annotations

import difflib
import functools

import sympy

from woodmath.as_given import quoted
from woodmath.derivation import Derivation, Quantity
from woodmath.errors import UnknownName
from woodmath.operations import Substitute, equation
from woodmath.timber_table import SPECIES, Species

__all__ = ["SPECIES", "USUAL_MOISTURE", "WATER", "Species", "density", "density_derivation", "species"]

WATER = 1000.0
"""Kilograms in a cubic metre of water."""
USUAL_MOISTURE = 12.0
"""Percent: the moisture at which the tables give their values."""


@functools.cache
def density_derivation() -> Derivation:
    """Derive what a cubic metre of wood weighs, with the moisture that is in it.

    Returns
    -------
    Derivation
        Its result gives `density` (kg/m³) from `specific_gravity`, `water` (kg/m³) and `moisture` (percent).

    Source: USDA Wood Handbook, GTR-190, chapter 4 (from memory).

    >>> round(density_derivation().function("density")(specific_gravity=0.5, water=1000.0, moisture=12.0), 6)
    560.0
    """
    density, dry, gravity, water = sympy.symbols("density dry specific_gravity water", positive=True)
    moisture = sympy.Symbol("moisture", nonnegative=True)
    return Derivation.start(
        "What a cubic metre of wood weighs",
        (
            Quantity(density, r"\rho", "mass of a cubic metre of the wood as it is, in kilograms", "number"),
            Quantity(dry, r"\rho_0", "what of it is dry wood, in kilograms", "number"),
            Quantity(gravity, "G", "specific gravity: dry mass against water of the same volume", "number"),
            Quantity(water, r"\rho_w", "mass of a cubic metre of water, in kilograms", "number"),
            Quantity(moisture, "M", "moisture in percent of the dry mass", "number"),
        ),
        equation(density, dry + dry * moisture / 100),
        "the wood weighs what is dry in it and the moisture, and moisture is told in percent of the dry mass",
        subject="density",
        example={density: 560, dry: 500, gravity: sympy.Rational(1, 2), water: 1000, moisture: 12},
    ).then(
        Substitute(dry, gravity * water),
        "the dry mass is the specific gravity times what the same volume of water weighs",
    )


def species(name: str) -> Species:
    """Return the timber of that name.

    Parameters
    ----------
    name : str
        One of `SPECIES`, as its table spells it.

    Returns
    -------
    Species
        With everything that is printed about it.

    Raises
    ------
    UnknownName
        If the course has no such timber; the message lists those it has.

    >>> species("cherry, black").specific_gravity.value
    0.5
    >>> species("cherry")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    woodmath.errors.UnknownName: There is no timber “cherry” in the table. Did you mean cherry, black? ...
    """
    for each in SPECIES:
        if each.name == name:
            return each
    names = tuple(each.name for each in SPECIES)
    near = difflib.get_close_matches(name.lower(), names, n=1, cutoff=0.5)
    hint = f" Did you mean {near[0]}?" if near else ""
    raise UnknownName(
        f"There is no timber {quoted(name)} in the table.{hint} There are: {'; '.join(names)}. "
        "For another, give its density yourself."
    )


def in_a_sentence(name: str) -> str:
    """Return a timber's name as it is said: tables put the kind behind the comma.

    Parameters
    ----------
    name : str
        As tables print it, or as a file gives it.

    Returns
    -------
    str
        With the kind in front.

    >>> in_a_sentence("cherry, black"), in_a_sentence("beech")
    ('black cherry', 'beech')
    """
    return " ".join(reversed(name.split(", ")))


def density(name: str, moisture: float = USUAL_MOISTURE) -> float:
    """What a cubic metre of a timber weighs.

    Parameters
    ----------
    name : str
        One of `SPECIES`.
    moisture : float
        In percent of the dry mass, 0 or more; the specific gravities hold near 12.

    Returns
    -------
    float
        In kilograms per cubic metre.

    Raises
    ------
    UnknownName
        If the course has no such timber.

    Source: `density_derivation`; an average of small clear samples, and a board may differ by a tenth.

    >>> round(density("cherry, black"))
    560
    """
    return density_derivation().function("density")(
        specific_gravity=species(name).specific_gravity.value, water=WATER, moisture=moisture
    )
