"""How moist wood becomes that lies in the air of a room long enough: the equilibrium moisture, and its seasons.

The equation is the handbook's fit to measurements. Wood follows the air slowly: a thick or a varnished board
swings less than the equation says, and later.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

import sympy

from woodmath.as_given import quoted
from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.operations import Substitute, equation
from woodmath.quantities import worded

COLDEST, WARMEST = -2.0, 100.0
"""Degrees Celsius between which the equation is used here."""
USUAL_CELSIUS = 20.0
CHECKED_TO = 38.0
"""Degrees Celsius at which the table ends against which the equation was checked."""

_STEPS = 60
_WORDS = {
    "moisture": ("M", "moisture of the wood at last, in percent of its dry mass", "number", "positive"),
    "humidity": ("h", "relative humidity of the air, 0 to 1", "number", "nonnegative"),
    "celsius": ("T", "temperature in degrees Celsius", "number", "real"),
    "fahrenheit": ("T", "temperature in degrees Fahrenheit", "number", "real"),
    "weight": ("W", "dry wood that goes with one share of water, a measured figure", "number", "positive"),
    "loose": ("K", "how readily loosely held water is taken up, a measured figure", "number", "positive"),
    "first_hold": (
        "K_1",
        "how firmly the first share of water is held, a measured figure",
        "number",
        "positive",
    ),
    "second_hold": ("K_2", "how firmly the second share is held, a measured figure", "number", "positive"),
}
_SHARES = ("weight", "loose", "first_hold", "second_hold")


def _quantities(*names: str) -> tuple[Quantity, ...]:
    return worded(_WORDS, names)


def _fitted(temperature: str, fits: tuple[tuple[str, str, str], ...], at: str) -> Derivation:
    """Put the four measured figures, each a parabola over the temperature, into the equation of two hydrates."""
    quantities = _quantities("moisture", "humidity", temperature, *_SHARES)
    moisture, humidity, warmth, *shares = (each.symbol for each in quantities)
    weight, loose, first, second = shares
    held = first * loose * humidity
    both = first * second * loose**2 * humidity**2
    parabolas = {
        share: sympy.Rational(level) + sympy.Rational(slope) * warmth + sympy.Rational(bend) * warmth**2
        for share, (level, slope, bend) in zip(shares, fits, strict=True)
    }
    standing = {warmth: sympy.Rational(at), humidity: sympy.Rational(1, 2)}
    example = {**standing, **{share: fit.subs(standing) for share, fit in parabolas.items()}}
    given = equation(
        moisture,
        1800 / weight * (loose * humidity / (1 - loose * humidity) + (held + 2 * both) / (1 + held + both)),
    )
    told = Derivation.start(
        f"How moist wood becomes in the air of a room (degrees {temperature.capitalize()})",
        quantities,
        given,
        "wood takes up water in two ways: loosely, like any sponge, the more the nearer the air is to dripping; and in "
        "two firm shares that are full quite early. The form is reasoned, the four figures in it are measured",
        subject="moisture",
        example={**example, moisture: given.rhs.subs(example)},
    )
    reasons = (
        "the first figure follows from the temperature by a parabola that was fitted to measurements",
        "so does the second",
        "and the third",
        "and the fourth: what is left speaks of the air alone",
    )
    for (share, fit), reason in zip(parabolas.items(), reasons, strict=True):
        told = told.then(Substitute(share, fit), reason)
    return told


@functools.cache
def moisture_derivation() -> Derivation:
    """Put together the equation of the equilibrium moisture, for degrees Celsius.

    Returns
    -------
    Derivation
        Its result gives `moisture` (percent) from `celsius` and `humidity` (0 to 1).

    Source: USDA Wood Handbook, GTR-190, chapter 4, in the form of Hailwood and Horrobin (read in a library that
    cites Simpson, FPL-RN-0268).

    >>> round(moisture_derivation().function("moisture")(celsius=20, humidity=0.5), 2)
    9.27
    """
    fits = (
        ("349", "1.29", "0.0135"),
        ("0.805", "0.000736", "-0.00000273"),
        ("6.27", "-0.00938", "-0.000303"),
        ("1.91", "0.0407", "-0.000293"),
    )
    return _fitted("celsius", fits, "20")


@functools.cache
def fahrenheit_derivation() -> Derivation:
    """Put together the equation of the equilibrium moisture, for degrees Fahrenheit.

    Returns
    -------
    Derivation
        Its result gives `moisture` (percent) from `fahrenheit` and `humidity` (0 to 1).

    Source: Simpson, FPL-RN-0268, and the older Wood Handbook (read in a weather station's code).

    >>> round(fahrenheit_derivation().function("moisture")(fahrenheit=68, humidity=0.5), 1)
    9.3
    """
    fits = (
        ("330", "0.452", "0.00415"),
        ("0.791", "0.000463", "-0.000000844"),
        ("6.34", "0.000775", "-0.0000935"),
        ("1.09", "0.0284", "-0.0000904"),
    )
    return _fitted("fahrenheit", fits, "70")


def equilibrium_moisture(celsius: float, humidity: float) -> float:
    """How moist wood becomes that lies in such air long enough.

    Parameters
    ----------
    celsius : float
        Temperature of the air in degrees Celsius, -2 to 100; the table that we checked goes to 38.
    humidity : float
        Relative humidity of the air, 0 to 1.

    Returns
    -------
    float
        Moisture in percent of the dry mass.

    Raises
    ------
    ImpossibleShape
        If there is no such air.

    Source: `moisture_derivation`.

    >>> round(equilibrium_moisture(celsius=21, humidity=0.3), 1)
    6.2
    """
    _checked_air(celsius, humidity)
    return moisture_derivation().function("moisture")(celsius=celsius, humidity=humidity)


def equilibrium_moisture_fahrenheit(fahrenheit: float, humidity: float) -> float:
    """How moist wood becomes that lies in such air long enough, by a thermometer in degrees Fahrenheit.

    Parameters
    ----------
    fahrenheit : float
        Temperature of the air in degrees Fahrenheit, 29 to 212; the table that we checked goes to 100.
    humidity : float
        Relative humidity of the air, 0 to 1.

    Returns
    -------
    float
        Moisture in percent of the dry mass.

    Raises
    ------
    ImpossibleShape
        If there is no such air.

    Source: `fahrenheit_derivation`.

    >>> round(equilibrium_moisture_fahrenheit(fahrenheit=70, humidity=0.3), 1)
    6.2
    """
    _checked_air(in_celsius(fahrenheit), humidity)
    return fahrenheit_derivation().function("moisture")(fahrenheit=fahrenheit, humidity=humidity)


def in_celsius(fahrenheit: float) -> float:
    """Return a temperature in degrees Celsius.

    Parameters
    ----------
    fahrenheit : float
        In degrees Fahrenheit.

    Returns
    -------
    float
        In degrees Celsius.

    Source: the definition of the two scales: water freezes at 32, and 9 degrees are 5.

    >>> in_celsius(68)
    20.0
    """
    return (fahrenheit - 32) * 5 / 9


def air_limits_left(celsius: float) -> tuple[str, ...]:
    """Say where the air leaves what the equation was checked for.

    Parameters
    ----------
    celsius : float
        Temperature of the air in degrees Celsius.

    Returns
    -------
    tuple of str
        A sentence, or nothing.

    Source: USDA Wood Handbook, GTR-190, Table 4-2 (from memory), as far as it was compared: 30 to 100 °F.

    >>> air_limits_left(20.0)
    ()
    """
    if celsius <= CHECKED_TO:
        return ()
    return (
        f"The table that the equation was checked against ends at {CHECKED_TO:g} °C, and {celsius:g} lies above: "
        "take the figure as a first estimate.",
    )


def humidity_for(celsius: float, moisture: float) -> float:
    """In what air wood keeps a moisture.

    Parameters
    ----------
    celsius : float
        Temperature of the air in degrees Celsius, -2 to 100.
    moisture : float
        In percent of the dry mass, 0 or more, and no more than the dampest air gives.

    Returns
    -------
    float
        Relative humidity, 0 to 1.

    Raises
    ------
    ImpossibleShape
        If no air of that temperature makes wood so moist.

    Source: `moisture_derivation`, which only rises with the humidity, halved in until the place is found.

    >>> round(humidity_for(celsius=20, moisture=9.27), 2)
    0.5
    """
    most = equilibrium_moisture(celsius, 1.0)
    if not 0 <= moisture <= most:
        raise ImpossibleShape(
            f"Air of {celsius:g} °C makes wood 0 to {most:.1f} percent moist, and {moisture:g} is asked for. Give a "
            "moisture in percent within that range, such as 8."
        )
    low, high = 0.0, 1.0
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if equilibrium_moisture(celsius, middle) < moisture:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _checked_air(celsius: float, humidity: float) -> None:
    if not COLDEST <= celsius <= WARMEST:
        raise ImpossibleShape(
            f"Air of {celsius:g} °C lies outside the equation, which is used here from {COLDEST:g} to {WARMEST:g} °C. "
            "Give the temperature of a room, such as 20."
        )
    if not 0 <= humidity <= 1:
        raise ImpossibleShape(
            f"A relative humidity of {humidity:g} cannot be: it goes from 0 to 1. Write 0.5 for 50 percent."
        )


@dataclass(frozen=True)
class Air:
    """The air of a room.

    Parameters
    ----------
    celsius : float
        Temperature in degrees Celsius, -2 to 100.
    humidity : float
        Relative humidity, 0 to 1.

    Raises
    ------
    ImpossibleShape
        If there is no such air.

    >>> round(Air(celsius=20, humidity=0.65).moisture, 1)
    12.0
    """

    celsius: float
    humidity: float

    def __post_init__(self) -> None:
        _checked_air(self.celsius, self.humidity)

    @property
    def moisture(self) -> float:
        """How moist wood becomes in it, in percent."""
        return equilibrium_moisture(self.celsius, self.humidity)


@dataclass(frozen=True)
class Season:
    """The driest and the dampest air of a year in one place.

    Parameters
    ----------
    name : str
        Of the place.
    dry, damp : Air
        At the two ends of the year.
    source : str
        Where the two are from; "" where you gave them yourself.

    >>> season("heated house").moistures
    (6.2, 10.9)
    """

    name: str
    dry: Air
    damp: Air
    source: str = ""

    @property
    def moistures(self) -> tuple[float, float]:
        """The least and the greatest moisture of wood in it, in percent, to a tenth."""
        return (round(self.dry.moisture, 1), round(self.damp.moisture, 1))

    def moisture(self, part: float) -> float:
        """Return the moisture at a part of the year, as an even swing from dry to damp and back.

        Parameters
        ----------
        part : float
            Of the year, 0 at its driest, 0.5 at its dampest.

        Returns
        -------
        float
            In percent; a thin bare board comes near it, a thick one swings less.
        """
        low, high = self.moistures
        return (low + high) / 2 - (high - low) / 2 * math.cos(2 * math.pi * part)


PLACES = (
    Season("heated house", Air(21.0, 0.30), Air(23.0, 0.60), "common practice"),
    Season("stove-heated house", Air(18.0, 0.40), Air(22.0, 0.68), "common practice"),
    Season("unheated shop", Air(20.0, 0.58), Air(4.0, 0.84), "common practice"),
    Season("house by the sea", Air(20.0, 0.55), Air(22.0, 0.78), "common practice"),
    Season("desert house", Air(24.0, 0.20), Air(26.0, 0.42), "common practice"),
)
"""Places with the two ends of their year, as a wood-worker's hygrometer finds them (common practice: hang your own)."""


def season(place: str | tuple[float, float], celsius: float = USUAL_CELSIUS) -> Season:
    """Return the two ends of the year in a place, or between two humidities.

    Parameters
    ----------
    place : str or (float, float)
        One of `PLACES`, or the relative humidity at its driest and at its dampest, each 0 to 1.
    celsius : float
        Temperature that goes with two humidities, in degrees Celsius, -2 to 100.

    Returns
    -------
    Season
        With the moistures of wood at its two ends.

    Raises
    ------
    UnknownName
        If there is no such place; the message lists those there are.
    ImpossibleShape
        If there is no such air.

    Source: beside `PLACES`; moistures by `moisture_derivation`.

    >>> season((0.3, 0.65)).moistures
    (6.2, 12.0)
    """
    if not isinstance(place, str):
        if len(place) != 2:
            raise ImpossibleShape(
                f"A year has two ends, and {len(place)} humidities are given. Give the least and the greatest, such as "
                "(0.35, 0.65)."
            )
        dry, damp = sorted(place)
        return Season("your own", Air(celsius, dry), Air(celsius, damp))
    for each in PLACES:
        if each.name == place:
            return each
    raise UnknownName(
        f"There is no place {quoted(place)} here. There are: {', '.join(each.name for each in PLACES)}. For another "
        "give the least and the greatest relative humidity, such as (0.35, 0.65)."
    )
