"""Setting out four posts in one go: cramped side by side, ends flush, every line squared across from one datum.

The datum is the shoulder at the foot. Every line has a running mark, its distance from the datum along the post;
what lies below the shoulder has one below 0.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.gauge_settings import GaugePin, gauge_settings
from woodmath.hands_of_posts import CornerPost, Face, hands, post_of_hand
from woodmath.setting_out_derivations import (
    drift_derivation,
    groove_derivation,
    pins_derivation,
    running_derivation,
    scatter_derivation,
)
from woodmath.stepping_off import SteppedLine, stepping_off
from woodmath.story_stick import PostLine, RunningMark, StoryStick

__all__ = [
    "CornerPost",
    "Face",
    "GaugePin",
    "PostLine",
    "RunningMark",
    "SteppedLine",
    "StoryStick",
    "Stretch",
    "TongueStops",
    "drift_derivation",
    "gauge_settings",
    "groove_derivation",
    "hands",
    "lines_of_a_post",
    "pins_derivation",
    "post_of_hand",
    "running_derivation",
    "scatter_derivation",
    "stepping_off",
    "stretches_of_a_post",
]

_ROUNDING = 1e-9
"""Lengths this small a part of the post are the computer's rounding, not wood."""


@dataclass(frozen=True)
class TongueStops:
    """Where the tongue of a panel's edge is stopped, and the room that its groove leaves it.

    Parameters
    ----------
    bead_reach : float
        What the bead takes of the edge at either end, along the post, 0 or more; 0 where there is no bead.
    clearance : float
        Room beyond each end of the tongue, 0 or more, in the same unit.

    >>> TongueStops(bead_reach=0.375, clearance=0.0625).bead_reach
    0.375
    """

    bead_reach: float = 0.0
    clearance: float = 0.0


@dataclass(frozen=True)
class Stretch:
    """A part of the post between two lines.

    Parameters
    ----------
    name : str
        What it is, "mortise 1" for the lowest mortise.
    kind : {"foot's tenon", "foot", "panel", "groove", "mortise", "top"}
        What kind of thing it is.
    start, end : float
        Running marks of its two lines, from the datum, along the post.

    >>> round(Stretch("mortise 1", "mortise", 3.75, 6.25).length, 9)
    2.5
    """

    name: str
    kind: str
    start: float
    end: float

    @property
    def length(self) -> float:
        """From its lower line to its upper one."""
        return self.end - self.start


def stretches_of_a_post(
    foot: float,
    slope_length: float,
    top: float,
    tenons: Sequence[tuple[float, float]],
    tongue: TongueStops | None = None,
    length: float | None = None,
) -> tuple[Stretch, ...]:
    """Part a post into its stretches, each with the running marks of its two lines.

    Parameters
    ----------
    foot : float
        Shoulder to the panel's lower edge, along the post, 0 or more, in any length unit.
    slope_length : float
        Lower to upper edge of the panel, along the post and not upright, > 0.
    top : float
        Panel's upper edge to the post's top, 0 or more.
    tenons : sequence of (place, width)
        Each from the panel's lower edge, along the post: 0 or more, and > 0; from the lowest up.
    tongue : TongueStops, optional
        Where the panel has a tongue; without it there is no groove.
    length : float, optional
        Whole length of the post; what is left below the shoulder is the foot's tenon. None: nothing is left.

    Returns
    -------
    tuple of Stretch
        The foot's tenon where there is one, foot, panel, groove where there is one, mortises, top.

    Raises
    ------
    ImpossibleShape
        If a size is not a length, a tenon runs beyond the panel or into the next, or the post is too short.

    Source: `woodmath.setting_out_derivations.running_derivation` and `groove_derivation`.

    >>> [(each.name, each.start, each.end) for each in stretches_of_a_post(3, 8, 2, [(0.75, 2.5)])]
    [('foot', 0.0, 3.0), ('panel', 3.0, 11.0), ('mortise 1', 3.75, 6.25), ('top', 11.0, 13.0)]
    """
    _check(foot, slope_length, top, tenons, tongue)
    running = running_derivation().function("running")
    lower = running(base=0.0, beyond=foot)
    upper = running(base=lower, beyond=slope_length)
    highest = running(base=upper, beyond=top)
    parts = [Stretch("foot", "foot", 0.0, lower), Stretch("panel", "panel", lower, upper)]
    if length is not None:
        lowest = running_derivation().function("base")(running=highest, beyond=length)
        if not math.isfinite(length) or lowest > _ROUNDING * highest:
            raise ImpossibleShape(
                f"The post is {length:g} long, and foot, panel and top together take {highest:g} of it. "
                f"Cut the post to {highest:g} or more, or make the foot or the top shorter."
            )
        if lowest < -_ROUNDING * highest:
            parts.insert(0, Stretch("foot's tenon", "foot's tenon", lowest, 0.0))
    if tongue is not None:
        inset = groove_derivation().function("inset")(
            bead_reach=tongue.bead_reach, clearance=tongue.clearance
        )
        parts.append(
            Stretch("groove", "groove", running(base=lower, beyond=inset), running(base=upper, beyond=-inset))
        )
    for number, (place, width) in enumerate(tenons, start=1):
        start = running(base=lower, beyond=place)
        parts.append(Stretch(f"mortise {number}", "mortise", start, running(base=start, beyond=width)))
    return (*parts, Stretch("top", "top", upper, highest))


def lines_of_a_post(
    foot: float,
    slope_length: float,
    top: float,
    tenons: Sequence[tuple[float, float]],
    tongue: TongueStops | None = None,
    length: float | None = None,
) -> tuple[PostLine, ...]:
    """Line up every line that is squared across the posts, each with its distance from the datum.

    Parameters
    ----------
    foot, slope_length, top, tenons, tongue, length
        As for `stretches_of_a_post`.

    Returns
    -------
    tuple of PostLine
        From the lowest to the highest; the datum is at 0.

    Raises
    ------
    ImpossibleShape
        As for `stretches_of_a_post`.

    Source: `woodmath.setting_out_derivations.running_derivation`.

    >>> [line.along for line in lines_of_a_post(3, 8, 2, [(0.75, 2.5), (4.75, 2.5)])]
    [0.0, 3.0, 3.75, 6.25, 7.75, 10.25, 11.0, 13.0]
    """
    lines: list[PostLine] = []
    for stretch in stretches_of_a_post(foot, slope_length, top, tenons, tongue, length):
        match stretch.kind:
            case "foot's tenon":
                lines.append(PostLine("lower end of the post", stretch.start))
            case "foot":
                lines.append(PostLine("datum", stretch.start))
            case "panel":
                lines.append(PostLine("panel's lower edge", stretch.start))
                lines.append(PostLine("panel's upper edge", stretch.end))
            case "top":
                lines.append(PostLine("top of the post", stretch.end))
            case _:
                lines.append(PostLine(f"{stretch.name} begins", stretch.start))
                lines.append(PostLine(f"{stretch.name} ends", stretch.end))
    return tuple(sorted(lines, key=lambda line: line.along))


def _check(
    foot: float,
    slope_length: float,
    top: float,
    tenons: Sequence[tuple[float, float]],
    tongue: TongueStops | None,
) -> None:
    stops = tongue or TongueStops()
    for name, value in (
        ("foot", foot),
        ("top", top),
        ("bead's reach", stops.bead_reach),
        ("clearance", stops.clearance),
    ):
        if not (math.isfinite(value) and value >= 0):
            raise ImpossibleShape(f"The {name} is {value:g}. Give a length of 0 or more, along the post.")
    if not (math.isfinite(slope_length) and slope_length > 0):
        raise ImpossibleShape(
            f"The panel takes {slope_length:g} of the post. Give the length of its edge, more than 0, along "
            "the slope."
        )
    if tongue is not None and 2 * stops.bead_reach >= slope_length:
        raise ImpossibleShape(
            f"A bead that takes {stops.bead_reach:g} at either end leaves no tongue on an edge "
            f"{slope_length:g} long. Make the bead narrower, or the panel higher."
        )
    free = 0.0
    for number, (place, width) in enumerate(tenons, start=1):
        if not (math.isfinite(place) and math.isfinite(width) and place >= 0 and width > 0):
            raise ImpossibleShape(
                f"Tenon {number} begins at {place:g} and is {width:g} wide. Give a place of 0 or more from the "
                "panel's lower edge, and a width of more than 0."
            )
        if place < free - _ROUNDING * slope_length:
            raise ImpossibleShape(
                f"Tenon {number} begins at {place:g}, and the one below it goes up to {free:g}. Leave wood "
                "between them, and list them from the lowest up."
            )
        free = place + width
        if free > slope_length * (1 + _ROUNDING):
            raise ImpossibleShape(
                f"Tenon {number} would end {free:g} above the panel's lower edge, and the edge is "
                f"{slope_length:g} long. Move it down, or make it narrower."
            )
