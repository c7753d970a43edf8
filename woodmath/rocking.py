"""Will it rock? How a case on elliptical rockers comes back, how fast, how far, and what tips it over.

What counts is how round the rocker is where it touches, less how high the weight lies: R less h. All the
rolling is without slip on a hard level floor. A carpet lets the touching point sink and spread: it slows the
case and makes it come to rest sooner, and what it does to the numbers here nobody can tell beforehand. A
slope is reckoned with.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from functools import cached_property

from woodmath.ellipse import Ellipse
from woodmath.errors import ImpossibleShape
from woodmath.moment_derivations import gyration_derivation
from woodmath.rocking_balance import (
    Balance,
    balance_of,
    is_upright_at_rest,
    margin_at,
    other_side,
    place_between,
)
from woodmath.rocking_balance import radius_at as radius_where_it_touches
from woodmath.rocking_curves import fall_curve, height_curve, lever_curve, push_curve
from woodmath.rocking_derivations import (
    GRAVITY,
    contact_derivation,
    derivation,
    lever_arm_derivation,
    middle_height_derivation,
)
from woodmath.rocking_flat import (
    FlatBase,
    OnTheHeel,
    check_more_than_nothing,
    check_push_height,
    greatest,
    over_the_heel,
)
from woodmath.rocking_heel import (
    balance_derivation,
    lever_over_heel_derivation,
    over_heel_derivation,
    push_derivation,
    slope_derivation,
    tip_derivation,
    top_derivation,
)
from woodmath.rocking_motion import Motion, Swinging, follow
from woodmath.rocking_motion_curves import (
    acceleration_curve,
    heaviness_curve,
    moving_energy_curve,
    pushes_of_the_floor_curve,
    turning_curve,
)
from woodmath.rocking_swing import Sizes, swing_time
from woodmath.rocking_swing_derivations import (
    damping_derivation,
    energy_derivation,
    period_derivation,
    speed_derivation,
    stiffness_derivation,
)
from woodmath.second_moments import Body, together

__all__ = [
    "GRAVITY",
    "FlatBase",
    "Motion",
    "RockingBody",
    "balance_derivation",
    "contact_derivation",
    "damping_derivation",
    "derivation",
    "energy_derivation",
    "lever_arm_derivation",
    "lever_over_heel_derivation",
    "middle_height_derivation",
    "over_heel_derivation",
    "period_derivation",
    "push_derivation",
    "slope_derivation",
    "speed_derivation",
    "stiffness_derivation",
    "tip_derivation",
    "top_derivation",
]

_ALIKE = 1e-9
"""As a part of the height: lengths that differ by less are alike."""
_LEVEL = 1e-9
"""Degrees: a floor that slopes less is level."""
_NEVER = "It does not come to rest on its curve"
_NEXT_TO_NOTHING = 1e-5
"""Degrees: a swing as small as this takes the time of a smaller one to the twelfth figure."""


@dataclass(frozen=True)
class RockingBody:
    """A case on its rockers, with all that lies in it, as one stiff body.

    Parameters
    ----------
    mass : float
        In kilograms, > 0.
    centre_height : float
        Height of the centre of gravity over the floor while the case stands upright, > 0, in metres.
    gyration_radius : float
        About the level line across the rockers through the centre of gravity, 0 or more, in metres.
    ellipse : Ellipse
        Of which the rocker's lower edge is an arc, in metres; a circle where its two halves are alike.
    rocker_length : float
        From heel to heel, > 0 and no longer than the ellipse, in metres.
    centre_offset : float
        How far the centre of gravity lies to the right of the rockers' middle, in metres; less than 0 to the
        left.

    Raises
    ------
    ImpossibleShape
        If one of them cannot be.

    Source: the derivations of this module; each number follows from them.

    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> body.is_stable, body.stiffness_margin
    (True, 0.75)
    """

    mass: float
    centre_height: float
    gyration_radius: float
    ellipse: Ellipse
    rocker_length: float
    centre_offset: float = 0.0

    def __post_init__(self) -> None:
        check_more_than_nothing(self, "mass", "centre_height", "rocker_length")
        if not (math.isfinite(self.gyration_radius) and self.gyration_radius >= 0):
            raise ImpossibleShape(
                f"The gyration radius is {self.gyration_radius:g}, and it cannot be less than 0."
            )
        if not math.isfinite(self.centre_offset):
            raise ImpossibleShape(f"The centre offset is {self.centre_offset}; give a plain number.")
        if self.rocker_length > 2 * self.ellipse.half_length * (1 + 1e-12):
            raise ImpossibleShape(
                f"A rocker {self.rocker_length:g} long is longer than its ellipse, which is "
                f"{2 * self.ellipse.half_length:g}. Shorten the rocker or lengthen the ellipse."
            )

    @property
    def sizes(self) -> Sizes:
        """Half length, half height, centre height and offset, in metres: what its curves depend on."""
        return self.ellipse.half_length, self.ellipse.half_height, self.centre_height, self.centre_offset

    @property
    def rise(self) -> float:
        """How far the heels stand over the floor while the case stands upright, in metres."""
        return self.ellipse.height_at(self.half_rocker)

    @property
    def half_rocker(self) -> float:
        """Half the rocker's length, in metres; never a rounding error longer than its ellipse allows."""
        return min(self.rocker_length / 2, self.ellipse.half_length)

    @property
    def is_indifferent(self) -> bool:
        """Whether it stays wherever it is left: on a circle, with its weight in the circle's centre."""
        a, b, height, offset = self.sizes
        return max(abs(a - b), abs(b - height), abs(offset)) < _ALIKE * height

    @cached_property
    def balance(self) -> Balance:
        """Where it lies, and where on its curve it would stand balanced, in radians."""
        heel = math.radians(self.heel_angle)
        return Balance(heel, None, 0.0, 0.0) if self.is_indifferent else balance_of(self.sizes, heel)

    @property
    def is_stable(self) -> bool:
        """Whether it stays upright, or near it with the weight off the middle, and comes back."""
        if self.centre_offset == 0 and not self.is_indifferent:
            return is_upright_at_rest(self.sizes)
        return self.balance.rest is not None

    @property
    def stiffness_margin(self) -> float:
        """R less h where it stands, in metres: how much the lever arm grows for each unit of tilt."""
        rest = self.balance.rest if self.centre_offset else None
        return margin_at(self.sizes, rest or 0.0)

    @property
    def rest_tilt(self) -> float:
        """Where it lies when nobody holds it, in degrees from upright, more than 0 to the right.

        Raises
        ------
        ImpossibleShape
            If it lies nowhere on its curve and goes over.
        """
        return math.degrees(self._rest())

    def _rest(self) -> float:
        if self.balance.rest is None:
            raise ImpossibleShape(f"{_NEVER}: {self._why_not()}")
        return self.balance.rest

    def _why_not(self) -> str:
        """Say why it does not stay on its curve, and what to change."""
        if self.centre_offset and margin_at((*self.sizes[:3], 0.0), 0.0) > 0:
            return (
                f"its weight lies {abs(self.centre_offset):.3g} m beside the middle, and it rolls past the "
                "heel and over. Bring the load nearer to the middle, or make the rockers longer."
            )
        if self.is_indifferent:
            return (
                "it stays wherever you leave it, because its weight lies in the centre of its circle. Bring the "
                "weight down a little."
            )
        radius = self.ellipse.radius_at_bottom
        return (
            f"the centre of gravity is {self.centre_height:.3g} m over the floor, and the bottom is as "
            f"round as a circle of {radius:.3g} m. The height must be less than the radius: bring the "
            "weight down, or take a flatter rocker."
        )

    @cached_property
    def heel_angle(self) -> float:
        """Tilt at which the touching point has come to the heel and the rolling ends, in degrees."""
        return self.ellipse.angle_at(self.half_rocker)

    @property
    def rolling_limit(self) -> float:
        """How far from its rest it may be let go, to either side, and rolls back: in degrees; 0 where it does not.

        The smaller of what the heels allow and what the hill of heights allows; with the weight off the
        middle, of both sides.
        """
        balance = self.balance
        if balance.rest is None:
            return 0.0
        reach = []
        for bound in (balance.low, balance.high):
            other = other_side(self.sizes, balance, bound)
            if other is not None:
                reach += [abs(bound - balance.rest), abs(other - balance.rest)]
        return math.degrees(min(reach))

    @property
    def tip_angle(self) -> float:
        """Tilt from upright at which it really goes over, on its easier side, in degrees; 0 where it never stands.

        Past its curve it goes on turning on the heel, and mostly comes back from further than it rolls.
        """
        return math.degrees(min(self._tips(), key=lambda found: found[1])[0])

    @property
    def tip_angles(self) -> tuple[float, float]:
        """Tilts from upright at which it goes over to the left (less than 0) and to the right, in degrees.

        Both are 0 where it never stands.
        """
        right, left = self._tips()
        return -math.degrees(left[0]), math.degrees(right[0])

    @property
    def barrier(self) -> float:
        """Energy to bring it from its rest to where it goes over, in joules; 0 where it never stands."""
        if self.balance.rest is None:
            return 0.0
        top = min(height for _, height in self._tips())
        return self._energy(top - self._height(self.balance.rest))

    @property
    def rolling_barrier(self) -> float:
        """Energy to bring it from its rest to the end of its rolling, in joules; 0 where it never stands."""
        balance = self.balance
        if balance.rest is None:
            return 0.0
        return min(self._energy_between(balance.rest, bound) for bound in (balance.low, balance.high))

    def _tips(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """Return the tilt at which it goes over and how high its weight is then, to the right and to the left."""
        balance = self.balance
        if balance.rest is None:
            upright = (0.0, self._height(0.0))
            return upright, upright
        return self._tip_to(1, balance.high), self._tip_to(-1, balance.low)

    def _tip_to(self, side: int, bound: float) -> tuple[float, float]:
        tops = [over_the_heel(*self.to_the_heel(side))] if self._is_held_at_the_heel(side) else []
        if abs(bound) < self.balance.heel:
            tops.append((abs(bound), self._height(bound)))
        return max(tops, key=lambda found: found[1])

    def _is_held_at_the_heel(self, side: int) -> bool:
        """Whether its weight still turns it back where it comes to its heel, or to another rest before that.

        A tall rocker may carry it over a hill only to let it lie on the other side.
        """
        return side * lever_curve()(side * self.balance.heel, *self.sizes) >= 0

    def to_the_heel(self, side: int) -> tuple[float, float]:
        """How far out a heel is from the centre of gravity, along the rocker, and how far below it.

        Parameters
        ----------
        side : 1 or -1
            The right-hand heel or the left-hand one.

        Returns
        -------
        (float, float)
            In metres.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.6, 0.05).to_the_heel(1)
        (0.25, 0.2)
        """
        return self.half_rocker - side * self.centre_offset, self.centre_height - self.rise

    def height_at(self, tilt: float) -> float:
        """Height of the centre of gravity over the floor at a tilt on the curve.

        Parameters
        ----------
        tilt : float
            In degrees from upright, no further than the heel.

        Returns
        -------
        float
            In metres.

        Raises
        ------
        ImpossibleShape
            If the tilt is beyond the heel.

        Source: `derivation`.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).height_at(0)
        0.25
        """
        return self._height(self._on_the_curve(tilt))

    def lever_arm_at(self, tilt: float) -> float:
        """How far the touching point lies to the right of the centre of gravity, level, at a tilt on the curve.

        Parameters
        ----------
        tilt : float
            In degrees from upright, no further than the heel.

        Returns
        -------
        float
            In metres.

        Raises
        ------
        ImpossibleShape
            If the tilt is beyond the heel.

        Source: `lever_arm_derivation`.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).lever_arm_at(10) > 0
        True
        """
        return lever_curve()(self._on_the_curve(tilt), *self.sizes)

    def radius_at(self, tilt: float) -> float:
        """How round the rocker is where it touches, at a tilt on the curve.

        Parameters
        ----------
        tilt : float
            In degrees from upright, no further than the heel.

        Returns
        -------
        float
            In metres.

        Raises
        ------
        ImpossibleShape
            If the tilt is beyond the heel.

        Source: `woodmath.rocking_curves.radius_curve`.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).radius_at(0)
        1.0
        """
        return radius_where_it_touches(*self.sizes[:2], self._on_the_curve(tilt))

    def _on_the_curve(self, tilt: float) -> float:
        if not abs(tilt) <= self.heel_angle * (1 + 1e-12):
            raise ImpossibleShape(
                f"A tilt of {tilt:g} degrees is beyond the heel, which is reached at {self.heel_angle:.4g}. "
                "Ask for a smaller tilt, or make the rockers longer."
            )
        return math.radians(tilt)

    def period(self, amplitude: float = 0.0) -> float:
        """Time of one swing, there and back.

        Parameters
        ----------
        amplitude : float
            How far from its rest it is let go, in degrees, more than 0 to the right; 0 for a swing so small
            that a smaller one takes no other time.

        Returns
        -------
        float
            In seconds.

        Raises
        ------
        ImpossibleShape
            If it does not swing, or is let go past its rolling limit.

        Source: `period_derivation` for a small swing, `speed_derivation` added up for any other.

        >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
        >>> body.period() < body.period(amplitude=15)
        True
        """
        if abs(amplitude) < _NEXT_TO_NOTHING:
            rest = self._rest()
            if not margin_at(self.sizes, rest) > 0:
                raise ImpossibleShape(
                    "A swing so small takes without end: the bottom is just as round as the weight is "
                    "high. Let it go from further, or bring the weight down a little."
                )
            return period_derivation().function("period")(
                gyration_radius=self.gyration_radius,
                centre_height=self._height(rest),
                radius=radius_where_it_touches(*self.sizes[:2], rest),
                gravity=GRAVITY,
            )
        low, high = self._turning_points(amplitude)
        return swing_time(self.sizes, self.gyration_radius, low, high, GRAVITY)

    def _turning_points(self, amplitude: float) -> tuple[float, float]:
        """Return both ends of a swing, in radians, or refuse an amplitude from which it does not come back."""
        rest, limit = self._rest(), self.rolling_limit
        balance = self.balance
        ends_at_the_heel = min(abs(balance.low), abs(balance.high)) >= balance.heel
        within = abs(amplitude) <= limit if ends_at_the_heel else abs(amplitude) < limit
        if not within:
            raise ImpossibleShape(
                f"Let go {abs(amplitude):.4g} degrees from where it lies it does not roll back: its rolling "
                f"limit is {limit:.4g} degrees. Choose less than that, or make the rockers longer or the "
                "weight lower."
            )
        start = rest + math.radians(amplitude)
        other = other_side(self.sizes, balance, start)
        if other is None:
            # On the limit itself the other side is the bound, which rounding may have put a hair beyond.
            other = balance.low if amplitude > 0 else balance.high
        return min(start, other), max(start, other)

    def friction_needed(self, amplitude: float) -> float:
        """Grip that a swing asks of the floor: the greatest level push over the upward one.

        `period` and `motion` take it that the floor holds it, and that it never leaves the floor.

        Parameters
        ----------
        amplitude : float
            How far from its rest it is let go, in degrees.

        Returns
        -------
        float
            A plain number, to be compared with what the floor gives; without end where the floor would have
            to pull.

        Raises
        ------
        ImpossibleShape
            If it does not swing, or is let go past its rolling limit.

        Source: Newton's second law (`woodmath.rocking_motion_curves.pushes_of_the_floor_curve`).

        >>> 0 < RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).friction_needed(10) < 1
        True
        """
        if amplitude == 0:
            return 0.0
        low, high = self._turning_points(amplitude)
        quickening, turning, fall = acceleration_curve(), turning_curve(), fall_curve()
        pushes = pushes_of_the_floor_curve()

        def pushes_at(tilt: float) -> tuple[float, float]:
            end = high if tilt > (low + high) / 2 else low
            apart = (end - tilt) / 2
            fallen = max(0.0, fall(tilt + apart, apart, *self.sizes))
            speed = turning(tilt, fallen, *self.sizes, self.gyration_radius, GRAVITY)
            quick = quickening(tilt, speed, *self.sizes, self.gyration_radius, GRAVITY, 0.0)
            return pushes(tilt, speed, quick, *self.sizes, GRAVITY)

        if greatest(lambda tilt: -pushes_at(tilt)[1], low, high) >= 0:
            return math.inf

        def needed(tilt: float) -> float:
            along, upward = pushes_at(tilt)
            return abs(along) / upward

        return greatest(needed, low, high)

    def push(self, at_height: float) -> float:
        """Greatest level push that is needed to bring it over slowly, on its easier side.

        Parameters
        ----------
        at_height : float
            How high over the floor it is pushed, on the middle line of the case while it stands upright, > 0,
            in metres; the place moves with the case.

        Returns
        -------
        float
            In newtons; 0 where it never stands. Without slip: the floor must hold as much.

        Raises
        ------
        ImpossibleShape
            If it is not pushed above the floor.

        Source: `push_derivation`, on the curve and then on the heel.

        >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
        >>> body.push(0.2) > body.push(0.5)
        True
        """
        check_push_height(at_height)
        balance = self.balance
        if balance.rest is None:
            return 0.0
        # A case that is the same on both sides is pushed over as easily to the one as to the other.
        even = self.centre_offset == 0 and balance.rest == 0
        sides = ((1, balance.high), (-1, balance.low))[: 1 if even else 2]
        return min(self._push_to(side, bound, at_height) for side, bound in sides)

    def _push_to(self, side: int, bound: float, at_height: float) -> float:
        height, lever = height_curve(), lever_curve()
        push = push_curve()
        place = (*self.sizes[:2], at_height, 0.0)

        def rolling(tilt: float) -> float:
            above = height(tilt, *place)
            return push(above, self.mass, GRAVITY, side * lever(tilt, *self.sizes)) if above > 0 else 0.0

        rest, held = self._rest(), self._is_held_at_the_heel(side)
        end = side * self.balance.heel if held else bound
        found = greatest(rolling, min(rest, end), max(rest, end))
        if not held:
            return found
        heel = OnTheHeel(self.mass, *self.to_the_heel(side), self.half_rocker, at_height - self.rise)
        return max(found, heel.greatest_push(self.balance.heel))

    def motion(
        self, amplitude: float, duration: float, damping_ratio: float = 0.0, pictures: int = 0
    ) -> Motion:
        """How it rocks when it is let go.

        Parameters
        ----------
        amplitude : float
            How far from its rest it is let go, in degrees, more than 0 to the right.
        duration : float
            How long it is watched, in seconds, > 0 and at most ten minutes.
        damping_ratio : float
            What is rubbed away: as a part of what would just stop a small swing from swinging, 0 or more.
        pictures : int
            Into how many steps the time is divided; 0 for sixty a second.

        Returns
        -------
        Motion
            Tilt, place and height, moment by moment.

        Raises
        ------
        ImpossibleShape
            If it does not swing, is let go past its rolling limit, or a number cannot be.

        Source: `speed_derivation`, differentiated by the time; see `woodmath.rocking_motion`.

        >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
        >>> body.motion(10, 1.0).tilts[0]
        10.0
        """
        if not (math.isfinite(damping_ratio) and damping_ratio >= 0):
            raise ImpossibleShape(f"The damping ratio is {damping_ratio:g}, and it cannot be less than 0.")
        if pictures < 0:
            raise ImpossibleShape(f"The number of pictures is {pictures}, and it cannot be less than 0.")
        rest = self._rest()
        margin = margin_at(self.sizes, rest)
        ends = self._turning_points(amplitude)
        small = self.period() if margin > 0 else self.period(amplitude)
        drag = 0.0
        if damping_ratio:
            drag = damping_derivation().function("drag")(
                damping_ratio=damping_ratio,
                heaviness=heaviness_curve()(rest, *self.sizes, self.gyration_radius),
                gravity=GRAVITY,
                stiffness_margin=margin,
            )
        case = Swinging(self.sizes, self.gyration_radius, rest, drag, GRAVITY, small)
        start, other = ends if amplitude < 0 else reversed(ends)
        return follow(case, start, duration, pictures, other)

    def energy(self, tilt: float, turning: float = 0.0) -> float:
        """Energy at a tilt over that of the case upright and still.

        Parameters
        ----------
        tilt : float
            In degrees from upright, no further than the heel.
        turning : float
            In degrees a second.

        Returns
        -------
        float
            In joules.

        Raises
        ------
        ImpossibleShape
            If the tilt is beyond the heel.

        Source: `energy_derivation`, and what is in motion by `speed_derivation`.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).energy(0)
        0.0
        """
        there = self._on_the_curve(tilt)
        moving = moving_energy_curve()(
            there, math.radians(turning), *self.sizes, self.gyration_radius, self.mass
        )
        return self._energy_between(0.0, there) + moving

    def with_body(
        self, mass: float, height: float, gyration_radius: float = 0.0, offset: float = 0.0
    ) -> RockingBody:
        """Return the case with an occupant or a cushion in it that moves with it.

        Parameters
        ----------
        mass : float
            In kilograms, > 0.
        height : float
            Of its centre over the floor while the case stands upright, > 0, in metres.
        gyration_radius : float
            Of its own, 0 or more, in metres.
        offset : float
            How far it lies to the right of the middle, in metres; less than 0 to the left.

        Returns
        -------
        RockingBody
            On the same rockers.

        Raises
        ------
        ImpossibleShape
            If such a body cannot be.

        Source: the parallel-axis rule (`woodmath.moment_derivations`).

        >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
        >>> body.with_body(mass=10.0, height=0.35, offset=0.1).centre_offset
        0.05
        """
        other = RockingBody(mass, height, gyration_radius, self.ellipse, self.rocker_length, offset)
        both = together((self._as_body(), other._as_body()))
        _, aside, above = both.centre
        return RockingBody(
            both.amount, above, both.gyration_radius(0), self.ellipse, self.rocker_length, aside
        )

    def _as_body(self) -> Body:
        spread = 0.0
        if self.gyration_radius:
            moment = gyration_derivation().function("moment")
            spread = moment(gyration_radius=self.gyration_radius, mass=self.mass)
        return Body(
            self.mass,
            (0.0, self.centre_offset, self.centre_height),
            ((0.0, 0.0, 0.0), (0.0, spread, 0.0), (0.0, 0.0, 0.0)),
        )

    def rest_tilt_on_slope(self, degrees: float) -> float:
        """Where it lies on a floor that slopes along the rockers, if the floor holds it from sliding.

        Parameters
        ----------
        degrees : float
            Slope of the floor, more than 0 falling to the right.

        Returns
        -------
        float
            In degrees from upright, as a spirit level in the case shows it.

        Raises
        ------
        ImpossibleShape
            If it lies nowhere on such a floor: it rolls on to its heel and over.

        Source: `slope_derivation`.

        >>> round(RockingBody(10.0, 0.5, 0.15, Ellipse(1.0, 1.0), 2.0).rest_tilt_on_slope(1), 3)
        2.0
        """
        rest = self._rest()
        if abs(degrees) < _LEVEL:
            return math.degrees(rest)
        slope = slope_derivation().function("slope")
        height, lever = height_curve(), lever_curve()

        def too_flat(tilt: float) -> float:
            return slope(lever_arm=lever(tilt, *self.sizes), height=height(tilt, *self.sizes)) - degrees

        far = self.balance.high if degrees > 0 else self.balance.low
        places = [rest + (far - rest) * place / 64 for place in range(65)]
        for before, after in itertools.pairwise(places):
            if (too_flat(before) < 0) != (too_flat(after) < 0):
                return math.degrees(place_between(too_flat, before, after)) + degrees
        raise ImpossibleShape(
            f"On a floor that slopes {abs(degrees):g} degrees it rolls down to its heel and lies nowhere on "
            "its curve. Level the floor, or turn the case across the slope."
        )

    def on_flat_base(self, half_width: float) -> FlatBase:
        """Return the same case without its rockers, on a flat base: for comparison.

        Parameters
        ----------
        half_width : float
            From its middle to the edge over which it would tip, > 0, in metres.

        Returns
        -------
        FlatBase
            With its weight as high over the floor as here.

        Raises
        ------
        ImpossibleShape
            If the half width is not more than 0.

        Source: `woodmath.rocking_heel`, for a heel with no curve before it.

        >>> RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5).on_flat_base(0.25).tip_angle
        45.0
        """
        return FlatBase(self.mass, self.centre_height, half_width)

    def _height(self, tilt: float) -> float:
        return height_curve()(tilt, *self.sizes)

    def _energy(self, lift: float) -> float:
        return energy_derivation().function("energy")(mass=self.mass, gravity=GRAVITY, lift=lift)

    def _energy_between(self, rest: float, tilt: float) -> float:
        apart = (tilt - rest) / 2
        return self._energy(fall_curve()(rest + apart, apart, *self.sizes))
