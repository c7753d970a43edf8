"""Where a case is at any tilt: rolled along on its curve, or turned on its heel beyond it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.rocking import GRAVITY, RockingBody
from woodmath.rocking_curves import energy_curve, lever_over_heel_curve, over_heel_curve
from woodmath.rocking_motion import along_the_floor


@dataclass(frozen=True)
class Stand:
    """A case at a tilt.

    Parameters
    ----------
    across, height : float
        Of the centre of gravity: from where the middle of the rocker touched upright, and over the floor, in metres.
    touch : float
        Where it touches the floor, from the same place, in metres.
    rolls : bool
        Whether it touches with its curve; otherwise it turns on its heel.

    >>> Stand(0.0, 0.25, 0.0, True).lever_arm
    0.0
    """

    across: float
    height: float
    touch: float
    rolls: bool

    @property
    def lever_arm(self) -> float:
        """How far the touching point lies to the right of the centre of gravity, level, in metres."""
        return self.touch - self.across


def stand_at(body: RockingBody, tilt: float) -> Stand:
    """Return where a case is at a tilt, without slip.

    Parameters
    ----------
    body : RockingBody
        The case.
    tilt : float
        In degrees from upright, more than 0 to the right; at most a right angle.

    Returns
    -------
    Stand
        On its curve as far as it goes, beyond that on its heel.

    Source: `woodmath.rocking_derivations`, `woodmath.rocking_heel`.

    >>> from woodmath.ellipse import Ellipse
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> stand_at(body, 5).lever_arm > 0, stand_at(body, 30).rolls
    (True, False)
    """
    held = _on_its_curve(body, tilt)
    across = body.centre_offset + along_the_floor(body.sizes, 0.0, math.radians(held))
    touch = across + body.lever_arm_at(held)
    if held != tilt:
        across = touch - math.copysign(1.0, tilt) * lever_over_heel_curve()(*_past_the_heel(body, tilt))
    return Stand(across, height_at(body, tilt), touch, held == tilt)


def height_at(body: RockingBody, tilt: float) -> float:
    """Return how high the centre of gravity is at a tilt, on the curve or on the heel.

    Parameters
    ----------
    body : RockingBody
        The case.
    tilt : float
        In degrees from upright; at most a right angle.

    Returns
    -------
    float
        Over the floor, in metres.

    Source: `woodmath.rocking_derivations.derivation`, `woodmath.rocking_heel.over_heel_derivation`.

    >>> from woodmath.ellipse import Ellipse
    >>> height_at(RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5), 0)
    0.25
    """
    if _on_its_curve(body, tilt) == tilt:
        return body.height_at(tilt)
    return over_heel_curve()(*_past_the_heel(body, tilt))


def energy_at(body: RockingBody, tilt: float) -> float:
    """Return the energy of a case held at a tilt, on the curve or on the heel, over that of it upright.

    Parameters
    ----------
    body : RockingBody
        The case.
    tilt : float
        In degrees from upright; at most a right angle.

    Returns
    -------
    float
        In joules.

    Source: `woodmath.rocking_swing_derivations.energy_derivation`.

    >>> from woodmath.ellipse import Ellipse
    >>> energy_at(RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5), 0)
    0.0
    """
    return energy_curve()(body.mass, GRAVITY, height_at(body, tilt) - body.height_at(0.0))


def _on_its_curve(body: RockingBody, tilt: float) -> float:
    return max(-body.heel_angle, min(body.heel_angle, tilt))


def _past_the_heel(body: RockingBody, tilt: float) -> tuple[float, float, float]:
    """Return a tilt in radians, to whichever side, and where the centre of gravity is from the heel there."""
    return math.radians(abs(tilt)), *body.to_the_heel(1 if tilt > 0 else -1)
