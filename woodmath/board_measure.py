"""How much timber a part is: board feet, square metres, cubic metres, kilograms, and what to buy for it.

A board foot is a board one inch thick, one foot wide and one foot long, and a yard counts whatever is thinner
than an inch as an inch. Mass is volume times density; only the volume must be in the metres of the density.
"""

from __future__ import annotations

import functools
import math
from typing import Literal

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.operations import Isolate, Substitute, equation
from woodmath.rule_reading import INCH

Unit = Literal["inch", "millimetre"]

_MILLIMETRES_IN_A_METRE = 1000.0


@functools.cache
def board_feet_derivation() -> Derivation:
    """Derive how many board feet a board holds.

    Returns
    -------
    Derivation
        Its result gives `board_feet` from `thickness`, `width`, `length` and `inch`, an inch in their unit.

    Source: a board foot is 12 by 12 inches and 1 inch thick: Danforth, *An Elementary Outline of Mechanical
    Processes*, section 46 (read in a copy).

    >>> board_feet_derivation().result
    Eq(board_feet, length*thickness*width/(144*inch**3))
    """
    board_feet, one, volume, inch = sympy.symbols("board_feet board_foot volume inch", positive=True)
    thickness, width, length = sympy.symbols("thickness width length", positive=True)
    return (
        Derivation.start(
            "Board feet in a board",
            (
                Quantity(board_feet, "N", "board feet", "number"),
                Quantity(one, "f", "volume of one board foot", "volume"),
                Quantity(volume, "V", "volume of the board", "volume"),
                Quantity(thickness, "t", "thickness of the board"),
                Quantity(width, "w", "width of the board"),
                Quantity(length, "l", "length of the board"),
                Quantity(inch, "i", "an inch, in the unit of the board's sizes"),
            ),
            equation(board_feet * one, volume),
            "so many board feet make up the board's volume",
            subject="board_feet",
            example={
                board_feet: 20,
                one: 144,
                volume: 2880,
                thickness: 3,
                width: 8,
                length: 120,
                inch: 1,
            },
        )
        .then(
            Substitute(one, inch * (12 * inch) ** 2),
            "a board foot is an inch thick, a foot wide and a foot long, and a foot is twelve inches",
        )
        .then(Substitute(volume, thickness * width * length), "a board is as much as its three sizes make")
        .then(Isolate(board_feet), "we want the number of board feet")
    )


@functools.cache
def volume_derivation() -> Derivation:
    """Derive the volume of wood in cubic metres from that in the piece's own unit.

    Returns
    -------
    Derivation
        Its result gives `cubic_metres` from `volume` and `metre`, a metre in the unit whose cube the volume is.

    Source: the volume of a cube.

    >>> volume_derivation().function("cubic_metres")(volume=2e9, metre=1000.0)
    2.0
    """
    cubic_metres, cube, volume, metre = sympy.symbols("cubic_metres cube volume metre", positive=True)
    return (
        Derivation.start(
            "The volume in cubic metres",
            (
                Quantity(cubic_metres, "N", "cubic metres", "number"),
                Quantity(cube, "c", "volume of one cubic metre", "volume"),
                Quantity(volume, "V", "volume of the wood", "volume"),
                Quantity(metre, "m", "a metre, in the unit of the volume"),
            ),
            equation(cubic_metres * cube, volume),
            "so many cubic metres make up the volume",
            subject="cubic_metres",
            example={cubic_metres: 2, cube: 27, volume: 54, metre: 3},
        )
        .then(Substitute(cube, metre**3), "a cubic metre is as long, as wide and as high as a metre")
        .then(Isolate(cubic_metres), "we want the number of cubic metres")
    )


@functools.cache
def board_volume_derivation() -> Derivation:
    """Derive the volume of a board in cubic metres from its three sizes.

    Returns
    -------
    Derivation
        Its result gives `cubic_metres` from `length`, `width`, `thickness` and `metre`, a metre in their unit.

    Source: the volume of a board.

    >>> board_volume_derivation().result
    Eq(cubic_metres, length*thickness*width/metre**3)
    """
    rule = volume_derivation()
    length, width, thickness = sympy.symbols("length width thickness", positive=True)
    cubic_metres, volume, metre = (rule.quantity(name) for name in ("cubic_metres", "volume", "metre"))
    return Derivation.start(
        "A board in cubic metres",
        (
            cubic_metres,
            volume,
            Quantity(length, "l", "length of the board"),
            Quantity(width, "w", "width of the board"),
            Quantity(thickness, "t", "thickness of the board"),
            metre,
        ),
        rule.result,
        "the cubic metres follow from the volume",
        subject="cubic_metres",
        example={
            cubic_metres.symbol: 2,
            volume.symbol: 54,
            length: 9,
            width: 3,
            thickness: 2,
            metre.symbol: 3,
        },
    ).then(
        Substitute(volume.symbol, length * width * thickness), "a board is as much as its three sides make"
    )


@functools.cache
def area_derivation() -> Derivation:
    """Derive the area of a board's face in square metres.

    Returns
    -------
    Derivation
        Its result gives `square_metres` from `length`, `width` and `metre`, a metre in their unit.

    Source: the area of a rectangle.

    >>> area_derivation().function("square_metres")(length=2000.0, width=300.0, metre=1000.0)
    0.6
    """
    square_metres, square, length, width, metre = sympy.symbols(
        "square_metres square length width metre", positive=True
    )
    return (
        Derivation.start(
            "The face of a board in square metres",
            (
                Quantity(square_metres, "N", "square metres", "number"),
                Quantity(square, "q", "area of one square metre", "area"),
                Quantity(length, "l", "length of the board"),
                Quantity(width, "w", "width of the board"),
                Quantity(metre, "m", "a metre, in the unit of the board's sizes"),
            ),
            equation(square_metres * square, length * width),
            "so many square metres make up the board's face, which is as much as its length and width make",
            subject="square_metres",
            example={square_metres: 6, square: 4, length: 6, width: 4, metre: 2},
        )
        .then(Substitute(square, metre**2), "a square metre is a metre long and a metre wide")
        .then(Isolate(square_metres), "we want the number of square metres")
    )


@functools.cache
def mass_derivation() -> Derivation:
    """Derive the mass of wood from its volume in the piece's own unit and its density.

    Returns
    -------
    Derivation
        Its result gives `mass` (kg) from `volume`, `metre` and `density` (kg/m³).

    Source: the meaning of density.

    >>> mass_derivation().function("mass")(volume=1e6, metre=1000.0, density=560.0)
    0.56
    """
    rule = volume_derivation()
    cubic_metres, cube, volume, metre = (
        rule.quantity(name) for name in ("cubic_metres", "cube", "volume", "metre")
    )
    mass, density = sympy.symbols("mass density", positive=True)
    return Derivation.start(
        "The mass of the wood",
        (
            Quantity(mass, "M", "mass of the wood, in kilograms", "number"),
            Quantity(density, r"\rho", "mass of a cubic metre of it, in kilograms", "number"),
            cubic_metres,
            volume,
            metre,
        ),
        equation(mass, density * cubic_metres.symbol),
        "each cubic metre weighs what the density says",
        subject="mass",
        example={
            mass: 1000,
            density: 500,
            **{symbol: value for symbol, value in rule.example if symbol != cube.symbol},
        },
    ).then(Substitute(cubic_metres.symbol, rule.result.rhs), "the cubic metres follow from the volume")


@functools.cache
def waste_derivation() -> Derivation:
    """Derive how much to buy for a stated waste allowance.

    Returns
    -------
    Derivation
        Its result gives `to_buy` from `needed`, in the same measure, and `waste` (percent of what is needed).

    Source: the allowance is told in percent of the bill of materials (WOOD magazine, "How much wood would I
    need for waste?", read).

    >>> round(waste_derivation().function("to_buy")(needed=20.0, waste=15.0), 9)
    23.0
    """
    needed, extra, to_buy = sympy.symbols("needed extra to_buy", positive=True)
    waste = sympy.Symbol("waste", nonnegative=True)
    return Derivation.start(
        "What to buy, waste allowed for",
        (
            Quantity(needed, "n", "what the parts take in the rough", "number"),
            Quantity(extra, "e", "what is bought beyond it", "number"),
            Quantity(waste, "p", "allowance for waste, in percent of what the parts take", "number"),
            Quantity(to_buy, "B", "what to buy", "number"),
        ),
        equation(to_buy, needed + extra),
        "what falls away beside the parts is bought with them",
        subject="to_buy",
        example={needed: 20, extra: 3, waste: 15, to_buy: 23},
    ).then(Substitute(extra, needed * waste / 100), "the allowance is told in percent of what the parts take")


def board_feet(
    length: float, width: float, thickness: float, *, as_sold: bool = False, unit: Unit = "inch"
) -> float:
    """Board feet in a board.

    Parameters
    ----------
    length, width, thickness : float
        Each > 0, all in `unit`.
    as_sold : bool
        Whether to count as a yard does: a board thinner than an inch as an inch thick.
    unit : "inch" or "millimetre"
        Of the three sizes.

    Returns
    -------
    float
        A number of board feet.

    Raises
    ------
    ImpossibleShape
        If a size is not a positive number.
    UnknownName
        If the unit is neither of the two.

    Source: `board_feet_derivation`; thinner than an inch counts as an inch: Danforth, *An Elementary Outline of
    Mechanical Processes*, section 46 (read in a copy).

    >>> board_feet(length=120, width=8, thickness=3)
    20.0
    >>> board_feet(length=144, width=8, thickness=0.5), board_feet(144, 8, 0.5, as_sold=True)
    (4.0, 8.0)
    """
    inch = inch_in(unit)
    counted = max(thickness, inch) if as_sold and 0 < thickness < inch else thickness
    return board_feet_derivation().function("board_feet")(
        length=length, width=width, thickness=counted, inch=inch
    )


def square_metres(length: float, width: float, *, unit: Unit = "millimetre") -> float:
    """Area of a board's face, in square metres.

    Parameters
    ----------
    length, width : float
        Each > 0, in `unit`.
    unit : "inch" or "millimetre"
        Of the two sizes.

    Returns
    -------
    float
        In square metres.

    Raises
    ------
    ImpossibleShape
        If a size is not a positive number.
    UnknownName
        If the unit is neither of the two.

    Source: `area_derivation`.

    >>> square_metres(2500, 200)
    0.5
    """
    return area_derivation().function("square_metres")(length=length, width=width, metre=metre_in(unit))


def cubic_metres(volume: float, *, unit: Unit = "millimetre") -> float:
    """Volume of wood, in cubic metres.

    Parameters
    ----------
    volume : float
        > 0, in the cube of `unit`.
    unit : "inch" or "millimetre"
        The unit of length.

    Returns
    -------
    float
        In cubic metres.

    Raises
    ------
    ImpossibleShape
        If the volume is not a positive number.
    UnknownName
        If the unit is neither of the two.

    Source: `volume_derivation`.

    >>> cubic_metres(2e9)
    2.0
    """
    return volume_derivation().function("cubic_metres")(volume=volume, metre=metre_in(unit))


def board_cubic_metres(length: float, width: float, thickness: float, *, unit: Unit = "millimetre") -> float:
    """Volume of a board, in cubic metres.

    Parameters
    ----------
    length, width, thickness : float
        Each > 0, in `unit`.
    unit : "inch" or "millimetre"
        Of the three sizes.

    Returns
    -------
    float
        In cubic metres.

    Raises
    ------
    ImpossibleShape
        If a size is not a positive number.
    UnknownName
        If the unit is neither of the two.

    Source: `board_volume_derivation`.

    >>> board_cubic_metres(2500, 200, 20)
    0.01
    """
    return board_volume_derivation().function("cubic_metres")(
        length=length, width=width, thickness=thickness, metre=metre_in(unit)
    )


def mass(volume: float, density: float, *, unit: Unit = "millimetre") -> float:
    """Mass of wood, in kilograms.

    Parameters
    ----------
    volume : float
        > 0, in the cube of `unit`.
    density : float
        Kilograms in a cubic metre, > 0.
    unit : "inch" or "millimetre"
        The unit of length of the volume.

    Returns
    -------
    float
        In kilograms.

    Raises
    ------
    ImpossibleShape
        If one of the two is not a positive number.
    UnknownName
        If the unit is neither of the two.

    Source: `mass_derivation`.

    >>> round(mass(12 * 12 * 1, density=560, unit="inch"), 2)
    1.32
    """
    return mass_derivation().function("mass")(volume=volume, density=density, metre=metre_in(unit))


def with_waste(needed: float, waste: float) -> float:
    """What to buy where so much of it is expected to fall away.

    Parameters
    ----------
    needed : float
        What the parts take, > 0, in any measure of timber.
    waste : float
        In percent of `needed`, 0 or more.

    Returns
    -------
    float
        In the measure of `needed`.

    Raises
    ------
    ImpossibleShape
        If what is needed is not more than 0, or the waste is less than 0.

    Source: `waste_derivation`.

    >>> round(with_waste(20, waste=15), 9)
    23.0
    """
    return waste_derivation().function("to_buy")(needed=needed, waste=waste)


def inch_in(unit: str) -> float:
    """Return an inch in a unit of length.

    Parameters
    ----------
    unit : "inch" or "millimetre"
        The unit.

    Returns
    -------
    float
        In that unit.

    Raises
    ------
    UnknownName
        If the unit is neither of the two.

    Source: 1 in = 25.4 mm exactly (1959; from memory).

    >>> inch_in("millimetre")
    25.4
    """
    if unit == "inch":
        return 1.0
    if unit == "millimetre":
        return float(INCH)
    raise UnknownName(
        f"The unit is {unit!r}; a piece is measured in 'inch' or 'millimetre'. Name one of them."
    )


def metre_in(unit: str) -> float:
    """Return a metre in a unit of length.

    Parameters
    ----------
    unit : "inch" or "millimetre"
        The unit.

    Returns
    -------
    float
        In that unit.

    Raises
    ------
    UnknownName
        If the unit is neither of the two.

    Source: 1 in = 25.4 mm exactly (1959; from memory).

    >>> metre_in("millimetre"), round(metre_in("inch"), 4)
    (1000.0, 39.3701)
    """
    return _MILLIMETRES_IN_A_METRE * inch_in(unit) / float(INCH)


def check_positive(name: str, value: float) -> None:
    """Raise unless a size is a plain number of more than 0.

    Parameters
    ----------
    name : str
        What it is called, to begin a sentence with.
    value : float
        In any length unit.

    Raises
    ------
    ImpossibleShape
        If it is none.

    >>> check_positive("The width of the board", 8)
    """
    if not (math.isfinite(value) and value > 0):
        raise ImpossibleShape(
            f"{name} is {value:g}, and it must be more than 0. Measure it and give that length."
        )
