"""Draw an ellipse with two pins and a string, and cut from it a rocker as long, high and round as you choose.

The pencil's distances to the two pins add up to the same length all the way round, so half the length, half
the height and a pin's distance from the centre close a right triangle. Round both pins and the pencil goes a
loop of 2a + 2c, and the bottom is as round as a circle of radius a²/b: not a, not b.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

from mpmath import libmp

from woodmath.derivation import spoken
from woodmath.ellipse_curve import (
    angle_derivation,
    bottom_radius_derivation,
    height_derivation,
    width_derivation,
)
from woodmath.ellipse_derivations import derivation, focus_derivation
from woodmath.ellipse_rocker import (
    NO_ELLIPSE_LEFT,
    WHOLE_LOWER_HALF,
    no_such_rocker,
    rocker_derivation,
    shallowness_derivation,
)
from woodmath.ellipse_strings import (
    pins_derivation,
    string_derivation,
    thick_loop_derivation,
    tied_string_derivation,
)
from woodmath.errors import ImpossibleShape
from woodmath.taut_string import string_round_discs

_BITS = 73
"""Of the sum for the perimeter: a float's 53, and some for what is lost on the way."""

__all__ = [
    "Ellipse",
    "angle_derivation",
    "bottom_radius_derivation",
    "derivation",
    "focus_derivation",
    "height_derivation",
    "pins_derivation",
    "rocker_derivation",
    "shallowness_derivation",
    "string_derivation",
    "string_round_discs",
    "thick_loop_derivation",
    "tied_string_derivation",
    "width_derivation",
]


@dataclass(frozen=True)
class Ellipse:
    """An ellipse that stands on the floor, known by half its length and half its height.

    Parameters
    ----------
    half_length : float
        From the centre to an end, level, > 0, in any length unit.
    half_height : float
        From the centre to the lowest point, > 0, in the same unit. It may be more than the half length: the
        ellipse then stands taller than it is long, and the pins one above the other.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: the gardener's construction of an ellipse; each number follows from a derivation of this module.

    >>> oval = Ellipse(half_length=5, half_height=4)
    >>> oval.focus_distance, oval.loop, oval.radius_at_bottom
    (3.0, 16.0, 6.25)
    """

    half_length: float
    half_height: float

    def __post_init__(self) -> None:
        for name in ("half_length", "half_height"):
            half = getattr(self, name)
            if not (math.isfinite(half) and half > 0):
                raise ImpossibleShape(
                    f"The {spoken(name)} of the ellipse is {half:g}, and it must be more than 0. "
                    "Measure from the centre outwards and give that length."
                )

    @classmethod
    def from_pins(
        cls, pin_spacing: float, loop: float, *, pin_diameter: float = 0.0, upright: bool = False
    ) -> Ellipse:
        """Ellipse that an endless string draws round two pins.

        Parameters
        ----------
        pin_spacing : float
            From the middle of one pin to the middle of the other, 0 or more, in any length unit.
        loop : float
            Length once round the string, more than twice the pin spacing, in the same unit.
        pin_diameter : float
            Thickness of the pins, and of a pencil as thick as they are; 0 where it need not be counted.
        upright : bool
            Whether the pins stand one above the other.

        Returns
        -------
        Ellipse
            In the unit of the pins and the loop.

        Raises
        ------
        ImpossibleShape
            If the loop is too short for pins so far apart.

        Source: `pins_derivation`, `string_derivation`, `thick_loop_derivation`.

        >>> Ellipse.from_pins(pin_spacing=6, loop=16)
        Ellipse(half_length=5.0, half_height=4.0)
        >>> Ellipse.from_pins(pin_spacing=6, loop=16, upright=True)
        Ellipse(half_length=4.0, half_height=5.0)
        """
        thin = thick_loop_derivation().function("loop")(thick_loop=loop, pin_diameter=pin_diameter)
        short = pins_derivation().function("half_height")(loop=thin, pin_spacing=pin_spacing)
        long = string_derivation().function("half_length")(loop=thin, focus_distance=pin_spacing / 2)
        return cls(short, long) if upright else cls(long, short)

    @classmethod
    def from_rocker(cls, length: float, rise: float, bottom_radius: float) -> Ellipse:
        """Ellipse of which a rocker is the lowest part, symmetrical about its middle.

        Parameters
        ----------
        length : float
            Length of the arc measured straight, from heel to heel, > 0, in any length unit.
        rise : float
            Height of the heels above the lowest point, > 0, in the same unit.
        bottom_radius : float
            Radius of the circle that is as round as the bottom, in the same unit. With l half the length,
            rise times radius must be no more than l² and more than half of it.

        Returns
        -------
        Ellipse
            In the same unit.

        Raises
        ------
        ImpossibleShape
            If no ellipse has such an arc; the message says which of the three to change, and to what.

        Source: `rocker_derivation`, `shallowness_derivation`.

        >>> rocker = Ellipse.from_rocker(length=6, rise=0.8, bottom_radius=6.25)
        >>> round(rocker.half_length, 9), round(rocker.half_height, 9)
        (5.0, 4.0)
        """
        half_chord = length / 2
        shallowness = shallowness_derivation().function("shallowness")(
            half_chord=half_chord, rise=rise, radius=bottom_radius
        )
        if math.isclose(shallowness, WHOLE_LOWER_HALF, rel_tol=1e-9):
            return cls(half_chord, rise)
        if not WHOLE_LOWER_HALF < shallowness < NO_ELLIPSE_LEFT:
            raise ImpossibleShape(no_such_rocker(length, rise, bottom_radius))
        half_height = rocker_derivation().function("half_height")(
            half_chord=half_chord, rise=rise, radius=bottom_radius
        )
        half_length = bottom_radius_derivation().function("half_length")(
            radius=bottom_radius, half_height=half_height
        )
        # An arc that is almost the whole lower half may come out a rounding error longer than its ellipse.
        return cls(max(half_length, half_chord), half_height)

    @property
    def focus_distance(self) -> float:
        """Distance from the centre to one pin; 0 for a circle."""
        long, short = self._long_and_short
        return focus_derivation().function("focus_distance")(half_length=long, half_height=short)

    @property
    def pin_spacing(self) -> float:
        """Distance from one pin to the other."""
        return 2 * self.focus_distance

    @property
    def pins(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """Places of the two pins from the centre, across and up: side by side, or one above the other."""
        away = self.focus_distance
        if self.half_height > self.half_length:
            return (0.0, -away), (0.0, away)
        return (-away, 0.0), (away, 0.0)

    @property
    def loop(self) -> float:
        """Length of the endless string round pencil and both pins, all as thin as a line: 2a + 2c."""
        return string_derivation().function("loop")(
            half_length=max(self._long_and_short), focus_distance=self.focus_distance
        )

    @property
    def tied_string(self) -> float:
        """Length of a string tied to the two pins, from knot to knot: 2a."""
        return tied_string_derivation().function("string")(half_length=max(self._long_and_short))

    @property
    def radius_at_bottom(self) -> float:
        """Radius of the circle that is as round as the lowest point: a²/b."""
        return bottom_radius_derivation().function("radius")(
            half_length=self.half_length, half_height=self.half_height
        )

    @property
    def radius_at_end(self) -> float:
        """Radius of the circle that is as round as either end: the bottom's, with the ellipse on its end."""
        return bottom_radius_derivation().function("radius")(
            half_length=self.half_height, half_height=self.half_length
        )

    @property
    def perimeter(self) -> float:
        """Length once round the curve; no finite formula gives it, so it is summed to the last figure."""
        long = max(self._long_and_short)
        # Without mpmath's context, whose precision all threads of a kernel share.
        quarter: float = libmp.to_float(
            libmp.mpf_ellipe(libmp.from_float((self.focus_distance / long) ** 2), _BITS)
        )
        return 4 * long * quarter

    def height_at(self, x: float) -> float:
        """Height of the lower half above its lowest point.

        Parameters
        ----------
        x : float
            Place along the floor from under the centre, from -half_length to half_length.

        Returns
        -------
        float
            From 0 to half_height, in the ellipse's unit; near the bottom no figures are lost.

        Raises
        ------
        ImpossibleShape
            If the ellipse does not reach so far.

        Source: `height_derivation`.

        >>> Ellipse(half_length=5, half_height=4).height_at(3)
        0.8
        """
        return height_derivation().function("height")(
            across=x, half_length=self.half_length, half_height=self.half_height
        )

    def point(self, turn: float) -> tuple[float, float]:
        """Point of the ellipse, seen from its centre, for a turn of the circle that it was squeezed from.

        Parameters
        ----------
        turn : float
            In degrees, counter-clockwise from the right-hand end; any number.

        Returns
        -------
        tuple of float
            How far right of the centre and how far above it, in the ellipse's unit.

        Source: an ellipse is a circle squeezed in one direction; that such points keep the string's length is tested.

        >>> [round(place, 12) for place in Ellipse(half_length=5, half_height=4).point(90)]
        [0.0, 4.0]
        """
        angle = math.radians(turn)
        return self.half_length * math.cos(angle), self.half_height * math.sin(angle)

    def lower_arc(self, length: float, pieces: int = 48) -> tuple[tuple[float, float], ...]:
        """Points of the lowest part, from heel to heel, closer together towards the heels.

        Parameters
        ----------
        length : float
            From heel to heel in a straight line, > 0 and at most twice the half-length.
        pieces : int
            How many short lines make up the arc, >= 2.

        Returns
        -------
        tuple of (float, float)
            How far right of the lowest point and how far above it, in the ellipse's unit.

        Raises
        ------
        ImpossibleShape
            If the ellipse is not so long.

        Source: `height_at`.

        >>> Ellipse(half_length=5, half_height=4).lower_arc(6, pieces=2)
        ((-3.0, 0.8), (0.0, 0.0), (3.0, 0.8))
        """
        return _lower_arc(self, length, pieces)

    def angle_at(self, x: float) -> float:
        """Slope of the lower half, in degrees from level.

        Parameters
        ----------
        x : float
            Place along the floor from under the centre, from -half_length to half_length.

        Returns
        -------
        float
            0 at the bottom, less than 0 to the left, more to the right; -90 and 90 at the two ends.

        Raises
        ------
        ImpossibleShape
            If the ellipse does not reach so far.

        Source: `angle_derivation`.

        >>> round(Ellipse(half_length=5, half_height=5).angle_at(3), 4)
        36.8699
        """
        if abs(x) == self.half_length:
            # The curve is plumb there: it rises without any run, and the slope's fraction has no value.
            return math.copysign(90.0, x)
        return angle_derivation().function("angle")(
            across=x, half_length=self.half_length, half_height=self.half_height
        )

    def loop_round(self, pin_diameter: float) -> float:
        """Endless string to tie when the pins, and the pencil or a sleeve on it, are equally thick.

        Parameters
        ----------
        pin_diameter : float
            Thickness of each pin and of the pencil, 0 or more, in the ellipse's unit.

        Returns
        -------
        float
            Length once round the string, measured along its middle; the ellipse drawn is exact.

        Raises
        ------
        ImpossibleShape
            If the thickness is less than 0.

        Source: `thick_loop_derivation`.

        >>> round(Ellipse(half_length=5, half_height=4).loop_round(pin_diameter=1 / 8), 4)
        16.3927
        """
        return thick_loop_derivation().function("thick_loop")(loop=self.loop, pin_diameter=pin_diameter)

    def string_round(self, x: float, y: float, pin_diameter: float, pencil_diameter: float) -> float:
        """Length of the string pulled tight round both pins and a pencil that may be thicker or thinner.

        It changes from place to place on the curve unless pencil and pins are equally thick: by so much the
        string would have to stretch for the pencil to follow the ellipse.

        Parameters
        ----------
        x, y : float
            Place of the pencil's middle from the centre of the ellipse, across and up, in its unit.
        pin_diameter, pencil_diameter : float
            Thickness of each pin and of the pencil, 0 or more, in the same unit.

        Returns
        -------
        float
            Length once round, in the same unit.

        Raises
        ------
        ImpossibleShape
            If a thickness is less than 0 or a number is not finite.

        Source: `string_round_discs`.

        >>> round(Ellipse(5, 4).string_round(5, 0, pin_diameter=0, pencil_diameter=0), 9)
        16.0
        """
        first, second = self.pins
        return string_round_discs((*first, pin_diameter), (*second, pin_diameter), (x, y, pencil_diameter))

    @property
    def _long_and_short(self) -> tuple[float, float]:
        return max(self.half_length, self.half_height), min(self.half_length, self.half_height)


# A slider that moves something else asks for the same rocker at every step.
@functools.lru_cache(maxsize=8)
def _lower_arc(ellipse: Ellipse, length: float, pieces: int) -> tuple[tuple[float, float], ...]:
    half = length / 2
    places = [half * math.sin(math.pi * (step / pieces - 0.5)) for step in range(pieces + 1)]
    return tuple((x, ellipse.height_at(x)) for x in places)
