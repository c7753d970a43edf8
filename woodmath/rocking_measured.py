"""A real case on its rockers, filmed with a telephone: from its period to the height of its centre of gravity.

A film is a clock with a hand for every picture. Counted over many swings, an error of one picture at each end is
shared among all of them; and what the period then says about the height is turned round from the rule of the small
swing, with what every measuring error does to it.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, equation
from woodmath.quantities import worded
from woodmath.rocking_derivations import GRAVITY
from woodmath.rocking_derivations import quantities as rocking_quantities
from woodmath.rocking_swing_derivations import period_derivation
from woodmath.sensitivity import Sensitivity

GRAVITY_DIFFERS = 0.03
"""In m/s²: from the equator to the poles it differs from the standard value by no more than this (from memory)."""

_WORDS = MappingProxyType(
    {
        "swings": ("n", "whole swings that were counted, there and back", "number", "positive"),
        "first_picture": ("t_1", "picture at which the counting began", "number", "nonnegative"),
        "last_picture": ("t_2", "picture at which it last_picture", "number", "positive"),
        "pictures_a_second": ("f", "pictures that the film takes in a second", "number", "positive"),
        "filmed": ("t", "time that was filmed", "seconds", "positive"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that a film speaks of; those of rocking keep their letters.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("period", "swings")]
    ['T', 'n']
    """
    return worded(_WORDS, names, rocking_quantities)


@functools.cache
def filmed_period_derivation() -> Derivation:
    """Derive the period from the pictures of a film.

    Returns
    -------
    Derivation
        Speaks of `period`, `swings`, `first_picture`, `last_picture`, `pictures_a_second`; its subject is
        `period`.

    Source: counting; agrees with how a watch is used on a pendulum in any school laboratory (common practice).

    >>> film = {"first_picture": 15, "last_picture": 315, "pictures_a_second": 30}
    >>> filmed_period_derivation().function("period")(swings=10, **film)
    1.0
    """
    spoken_of = quantities("period", "swings", "filmed", "first_picture", "last_picture", "pictures_a_second")
    period, swings, filmed, first_picture, last_picture, pictures = (
        quantity.symbol for quantity in spoken_of
    )
    return (
        Derivation.start(
            "The period from a film",
            spoken_of,
            equation(swings * period, filmed),
            "each swing takes as long as the next, and so many of them take the time that was filmed",
            subject="period",
            example={period: 1, swings: 10, filmed: 10, first_picture: 15, last_picture: 315, pictures: 30},
        )
        .then(
            Substitute(filmed, (last_picture - first_picture) / pictures),
            "the film is the clock: the pictures between the two, so many a second",
        )
        .then(
            Isolate(period),
            "the number of swings stands below the line: an error of a picture at either end counts the less the "
            "more swings you count",
        )
    )


def filmed_period(
    swings: int,
    first_picture: float,
    last_picture: float,
    pictures_a_second: float = 30.0,
    error: float = 1.0,
) -> Sensitivity:
    """Return the period of a filmed case, with what the film leaves in doubt.

    Parameters
    ----------
    swings : int
        Whole swings counted, there and back, 1 or more.
    first_picture, last_picture : float
        Numbers of the pictures in which it passes upright the same way: the first and the last that is counted.
    pictures_a_second : float
        Pictures a second, > 0: the telephone says how many.
    error : float
        By how many pictures each of the two may be out, 0 or more.

    Returns
    -------
    Sensitivity
        Of the period, in seconds; shows itself on a page.

    Raises
    ------
    ImpossibleShape
        If nothing was counted.

    Source: `filmed_period_derivation`.

    >>> told = filmed_period(swings=10, first_picture=15, last_picture=315)
    >>> told.value, round(told.at_worst, 6)
    (1.0, 0.006667)
    """
    if not (swings >= 1 and last_picture > first_picture >= 0 and pictures_a_second > 0 and error >= 0):
        raise ImpossibleShape(
            f"{swings} swings from picture {first_picture:g} to picture {last_picture:g} of "
            f"{pictures_a_second:g} a second were given. Count "
            "at least one swing, and end at a later picture than you begin."
        )
    return filmed_period_derivation().sensitivity(
        {
            "swings": swings,
            "first_picture": first_picture,
            "last_picture": last_picture,
            "pictures_a_second": pictures_a_second,
        },
        {"swings": 0.0, "first_picture": error, "last_picture": error, "pictures_a_second": 0.0},
    )


def measured_centre_height(
    period: float,
    radius: float,
    gyration_radius: float,
    *,
    period_error: float,
    radius_error: float,
    gyration_error: float,
) -> Sensitivity:
    """Return the height of the centre of gravity that a measured period tells of, and how sure that is.

    Parameters
    ----------
    period : float
        Of a small swing, there and back, in seconds, > 0.
    radius : float
        How round the rocker is at its lowest point, in metres, > 0.
    gyration_radius : float
        As worked out for the piece, in metres, 0 or more.
    period_error, radius_error, gyration_error : float
        How far each may be out either way, 0 or more, in its unit.

    Returns
    -------
    Sensitivity
        Of the centre height, in metres; shows itself on a page.

    Raises
    ------
    ImpossibleShape
        If no height goes with such a period.

    Source: `woodmath.rocking_swing_derivations.period_derivation`, solved for the height.

    >>> told = measured_centre_height(
    ...     0.8329, 0.762, 0.1456, period_error=0.005, radius_error=0.01, gyration_error=0.01)
    >>> round(told.value, 3), round(told.at_worst, 3), told.matters_most
    (0.257, 0.009, 'gyration_radius')
    """
    values = {"period": period, "radius": radius, "gyration_radius": gyration_radius, "gravity": GRAVITY}
    errors = {
        "period": period_error,
        "radius": radius_error,
        "gyration_radius": gyration_error,
        "gravity": GRAVITY_DIFFERS,
    }
    return period_derivation().sensitivity(values, errors, of="centre_height")
