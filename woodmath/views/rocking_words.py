"""What the live rocker says: whether a case comes back, in what time, from how far, and what takes it over."""

from __future__ import annotations

from dataclasses import replace

from woodmath import board_measure
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.rocking import RockingBody
from woodmath.rocking_stand import stand_at
from woodmath.rule import Rule

UPRIGHT = 0.05
"""Degrees: what leans less is called upright, and what is tilted less is not let go."""
_LONGEST = 20.0
"""Seconds: a swing that takes longer is as good as balanced, and its time is not told."""


def swing_of(body: RockingBody, amplitude: float = 0.0) -> float | None:
    """Return the time of a swing; None where it does not swing, or hangs balanced longer than one would watch.

    Parameters
    ----------
    body : RockingBody
        The case.
    amplitude : float
        How far from its rest it is let go, in degrees; 0 for a small swing.

    Returns
    -------
    float or None
        In seconds.

    >>> from woodmath.ellipse import Ellipse
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> swing_of(body, 10.0) == body.period(10.0), swing_of(body, 80.0)
    (True, None)
    """
    try:
        period = body.period(amplitude)
    except ImpossibleShape:
        return None
    return period if period < _LONGEST else None


def what_it_does(body: RockingBody, tilt: float) -> str:
    """Return what a case does when it is let go, in a few words.

    Parameters
    ----------
    body : RockingBody
        The case.
    tilt : float
        At which it is let go, in degrees from upright.

    Returns
    -------
    str
        To stand below its picture.

    >>> from woodmath.ellipse import Ellipse
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> what_it_does(body, 10.0)
    '0.73 s, over at 49.1°'
    """
    if body.is_indifferent:
        return "stays where you leave it"
    if not body.is_stable:
        return "goes over by itself"
    swing = swing_of(body, tilt - body.rest_tilt)
    return f"{f'{swing:.2f} s, ' if swing else ''}over at {body.tip_angle:.1f}°"


def why_it_goes_over(rule: Rule, body: RockingBody) -> str:
    """Return why a case does not stay on its curve, and what to change.

    Parameters
    ----------
    rule : Rule
        On which lengths are marked.
    body : RockingBody
        The case.

    Returns
    -------
    str
        A sentence.

    >>> from woodmath.ellipse import Ellipse
    >>> why_it_goes_over(Rule.millimetres(1), RockingBody(10.0, 0.5, 0.15, Ellipse(0.4, 0.4), 0.5))[:70]
    'The weight lies 500 over the floor, and the bottom is as round as 400 '
    """
    metre = board_measure.metre_in(rule.unit)
    margin = replace(body, centre_offset=0.0)
    if margin.is_stable:
        return "With the load so far aside it rolls past its heel. Bring it nearer to the middle, or make it lighter."
    return (
        f"The weight lies {rule.mark(body.centre_height * metre)} over the floor, and the bottom is as round as "
        f"{rule.mark(body.ellipse.radius_at_bottom * metre, unit=True)}: lower the weight, or take a flatter rocker."
    )


def headline(rule: Rule, body: RockingBody) -> str:
    """Return whether a case comes back, and the time of its small swing.

    Parameters
    ----------
    rule : Rule
        On which lengths are marked.
    body : RockingBody
        The case.

    Returns
    -------
    str
        One or two short sentences.

    >>> from woodmath.ellipse import Ellipse
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> headline(Rule.millimetres(1), body)
    'It stands: R less h is 750 mm. A small swing takes 0.68 s.'
    """
    if body.is_indifferent:
        return "It stays wherever you leave it: the weight lies in the centre of the circle."
    if not body.is_stable:
        return "It goes over by itself."
    metre = board_measure.metre_in(rule.unit)
    stands = (
        f"It stands: R less h is {rule.mark(body.stiffness_margin * metre, unit=True)}"
        if abs(body.rest_tilt) < UPRIGHT
        else f"It stands, and rests {abs(body.rest_tilt):.1f}° askew"
    )
    small = swing_of(body)
    return f"{stands}. A small swing takes {small:.2f} s." if small else f"{stands}."


def told(rule: Rule, body: RockingBody, tilt: float) -> str:
    """Return what there is to say about a case at a tilt: how it stands, in what time it swings, what takes it over.

    Parameters
    ----------
    rule : Rule
        On which lengths are marked.
    body : RockingBody
        The case.
    tilt : float
        In degrees from upright.

    Returns
    -------
    str
        A few sentences.

    >>> from woodmath.ellipse import Ellipse
    >>> body = RockingBody(10.0, 0.25, 0.15, Ellipse(0.5, 0.25), 0.5)
    >>> told(Rule.millimetres(1), body, 10.0)[:69]
    'R is 1000 and h 250 mm. Tilted 10° to the right it touches with its c'
    """
    metre = board_measure.metre_in(rule.unit)
    radius, height = body.ellipse.radius_at_bottom * metre, body.centre_height * metre
    stand = stand_at(body, tilt)
    arm = rule.mark(abs(stand.lever_arm) * metre, unit=True)
    now = (
        f"R is {rule.mark(radius)} and h {rule.mark(height, unit=True)}. {_at(tilt)} "
        f"{'it touches with its curve' if stand.rolls else 'it stands on its heel'}"
    )
    brings = 0.0 if body.is_indifferent else stand.lever_arm * tilt
    way = "in balance" if not brings else "which brings it back" if brings > 0 else "which takes it over"
    now = f"{now}, with a lever arm of {arm}, {way}." if brings else f"{now}."
    if not body.is_stable or body.is_indifferent:
        return now
    swing = swing_of(body, tilt - body.rest_tilt) if abs(tilt - body.rest_tilt) > UPRIGHT else None
    great = f" Let go here it takes {swing:.2f} s." if swing else ""
    return (
        f"{now}{great} It rolls back from {body.rolling_limit:.1f}°, and goes over at {body.tip_angle:.1f}°, "
        f"which takes {body.barrier:.1f} J: a level push of {body.push(body.centre_height):.0f} N as high as the "
        "weight."
    )


def _at(tilt: float) -> str:
    """Return a tilt in words, as a sentence begins."""
    if not tilt:
        return "Upright"
    return f"Tilted {number_shown(abs(tilt), 1)}° to the {'right' if tilt > 0 else 'left'}"
