"""An end that is wider above than below, shoulder to shoulder: its slope, its corners and its widths at any height.

Across the end everything is measured level and upright, along a post everything is measured on the slope; the
two meet only through the splay.
"""

from __future__ import annotations

from dataclasses import dataclass

from woodmath.splay_derivations import (
    grain_derivation,
    lower_corner_derivation,
    outward_derivation,
    over_all_derivation,
    slope_derivation,
    splay_derivation,
    upper_corner_derivation,
    width_derivation,
)

__all__ = [
    "SplayedPanel",
    "WidthsAtHeight",
    "grain_derivation",
    "lower_corner_derivation",
    "outward",
    "outward_derivation",
    "over_all_derivation",
    "slope_derivation",
    "slope_length",
    "splay",
    "splay_derivation",
    "upper_corner_derivation",
    "width_derivation",
]


def outward(top: float, bottom: float) -> float:
    """How far one edge of an end goes outward from the bottom to the top.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.

    Returns
    -------
    float
        In the same unit; 0 for an upright end, less than 0 for one that is narrower above.

    Raises
    ------
    ImpossibleShape
        If a width is not a positive number.

    Source: `outward_derivation`.

    >>> outward(top=13, bottom=10.5)
    1.25
    """
    return outward_derivation().function("outward")(top=top, bottom=bottom)


def slope_length(top: float, bottom: float, height: float) -> float:
    """Length of the sloping edge of an end, and so the finished width of the side board that goes along it.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.
    height : float
        Height of the end, measured upright, > 0, in the same unit.

    Returns
    -------
    float
        Along the slope, in the same unit; the height itself for an upright end.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: `slope_derivation`, Pythagoras.

    >>> slope_length(top=10, bottom=4, height=4)
    5.0
    """
    return slope_derivation().function("slope_length")(outward=outward(top, bottom), height=height)


def splay(top: float, bottom: float, height: float) -> float:
    """How much the sloping edge of an end leans from upright.

    Parameters
    ----------
    top, bottom : float
        Widths of the end at its upper and its lower edge, measured level, > 0, in any length unit.
    height : float
        Height of the end, measured upright, > 0, in the same unit.

    Returns
    -------
    float
        Degrees from upright, between -90 and 90: outward more than 0, inward less.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: `splay_derivation`, plane trigonometry.

    >>> splay(top=300, bottom=300, height=320)
    0.0
    """
    return splay_derivation().function("splay")(outward=outward(top, bottom), height=height)


@dataclass(frozen=True)
class WidthsAtHeight:
    """The chain of widths in one level cut, all measured level.

    Parameters
    ----------
    height : float
        Of the cut above the panel's lower edge; less than 0 below it, at the posts' feet.
    between_shoulders, over_tenon_ends, over_posts : float
        From shoulder to shoulder, from tenon end to tenon end, from outer face to outer face of the posts.

    >>> WidthsAtHeight(0.0, 10.5, 13.0, 14.0).over_posts
    14.0
    """

    height: float
    between_shoulders: float
    over_tenon_ends: float
    over_posts: float


@dataclass(frozen=True)
class SplayedPanel:
    """An end panel between two posts that lean alike, shoulder to shoulder.

    Parameters
    ----------
    top, bottom : float
        Width at the upper and at the lower edge, measured level, > 0, in any length unit.
    height : float
        Measured upright, > 0, in the same unit.

    Raises
    ------
    ImpossibleShape
        If one of the three is not a positive number.

    Source: the derivations of `woodmath.splay_derivations`.

    >>> panel = SplayedPanel(top=14, bottom=11, height=9.5)
    >>> round(panel.splay, 1)
    9.0
    """

    top: float
    bottom: float
    height: float

    def __post_init__(self) -> None:
        slope_length(self.top, self.bottom, self.height)

    @property
    def outward(self) -> float:
        """How far each edge goes outward from bottom to top; less than 0 where the panel is narrower above."""
        return outward(self.top, self.bottom)

    @property
    def splay(self) -> float:
        """Lean of each edge, in degrees from upright; less than 0 where it is inward."""
        return splay(self.top, self.bottom, self.height)

    @property
    def slope_length(self) -> float:
        """Length of each sloping edge: the finished width of the side board, and what the panel takes of a post."""
        return slope_length(self.top, self.bottom, self.height)

    @property
    def corner_angles(self) -> tuple[float, float]:
        """The panel's own corners at its lower and at its upper edge, in degrees."""
        return (
            lower_corner_derivation().function("lower_corner")(splay=self.splay),
            upper_corner_derivation().function("upper_corner")(splay=self.splay),
        )

    @property
    def grain_angle(self) -> float:
        """Angle to level grain of a tenon cut square to the sloping edge, in degrees, 0 or more."""
        return abs(grain_derivation().function("grain_angle")(splay=self.splay))

    def width_at(self, height: float) -> float:
        """Width between the shoulders at a height, measured level.

        Parameters
        ----------
        height : float
            Above the panel's lower edge, in the panel's unit; less than 0 for a place below it.

        Returns
        -------
        float
            In the same unit; what the posts leave between them, also below and above the panel.

        Raises
        ------
        ImpossibleShape
            If the edges would have met before they get there.

        >>> SplayedPanel(top=14, bottom=11, height=9.5).width_at(4.75)
        12.5
        """
        return width_derivation().function("width")(
            bottom=self.bottom, top=self.top, height=self.height, place=height
        )

    def widths_at(self, height: float, post: float, reach: float) -> WidthsAtHeight:
        """Chain of widths in a level cut: between shoulders, over the tenon ends, over the posts.

        Parameters
        ----------
        height : float
            Of the cut above the panel's lower edge, in the panel's unit; less than 0 for a place below it.
        post : float
            The post's square, measured square to its own faces, > 0, in the same unit.
        reach : float
            How far the tenon goes into the post, square to the sloping edge, > 0, in the same unit.

        Returns
        -------
        WidthsAtHeight
            All measured level, so that a rule held level reads them.

        Raises
        ------
        ImpossibleShape
            If a length is not positive, or the edges would have met before they get there.

        >>> SplayedPanel(top=10, bottom=10, height=8).widths_at(2, post=1.75, reach=1.25).over_posts
        13.5
        """
        between = self.width_at(height)
        over_all = over_all_derivation().function("over_all")
        return WidthsAtHeight(
            height,
            between,
            over_all(width=between, across=reach, splay=self.splay),
            over_all(width=between, across=post, splay=self.splay),
        )
