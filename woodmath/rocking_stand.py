"""Where a case is at any tilt: rolled along on its curve, or turned on its heel beyond it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from woodmath.rocking import (
    GRAVITY,
    RockingBody,
    energy_derivation,
    lever_over_heel_derivation,
    over_heel_derivation,
)
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
    energy : float
        Over that of the case upright, in joules.
    rolls : bool
        Whether it touches with its curve; otherwise it turns on its heel.

    >>> Stand(0.0, 0.25, 0.0, 0.0, True).lever_arm
    0.0
    """

    across: float
    height: float
    touch: float
    energy: float
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
    heel = body.heel_angle
    held = max(-heel, min(heel, tilt))
    across = body.centre_offset + along_the_floor(body.sizes, 0.0, math.radians(held))
    touch = across + body.lever_arm_at(held)
    height = body.height_at(held)
    if held != tilt:
        side = 1.0 if tilt > 0 else -1.0
        place = {
            "out": min(body.rocker_length / 2, body.ellipse.half_length) - side * body.centre_offset,
            "above": body.centre_height - body.rise,
            "tilt": abs(tilt),
        }
        across = touch - side * lever_over_heel_derivation().function("lever_arm")(**place)
        height = over_heel_derivation().function("over_heel")(**place)
    energy = energy_derivation().function("energy")(
        mass=body.mass, gravity=GRAVITY, lift=height - body.height_at(0.0)
    )
    return Stand(across, height, touch, energy, held == tilt)
