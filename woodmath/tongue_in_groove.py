"""A tongue in its groove: whether it goes in, whether its shoulder closes, and what it leaves free for the season.

A tongue that is longer than its groove is deep touches the floor first and holds the shoulder open. One that is
thicker than its groove does not go in at all.
"""

from __future__ import annotations

from dataclasses import dataclass

import sympy

from woodmath.derivation import Quantity
from woodmath.edge_derivations import floor_derivation, play_derivation
from woodmath.rule import Rule

GOES_HOME, BOTTOMS, TOO_THICK = "goes home", "bottoms first", "too thick"
VERDICTS = (GOES_HOME, BOTTOMS, TOO_THICK)
"""What a try of tongue and groove can come to."""

_NEARLY = 1e-9


@dataclass(frozen=True)
class TongueInGroove:
    """A tongue and the groove that it is to stand in.

    Parameters
    ----------
    tongue_length, groove_depth : float
        From the shoulder to the tongue's end, and from the post's face to the floor, > 0, in any length unit.
    tongue_thickness, groove_width : float
        Across both, > 0, in the same unit.
    end_clearance : float
        How much longer the groove runs than the tongue, at each stopped end, 0 or more.

    Raises
    ------
    ImpossibleShape
        If a length is not a positive number, or the clearance at the ends is less than 0.

    Source: `floor_derivation` and `play_derivation`.

    >>> edge = TongueInGroove(tongue_length=8, groove_depth=10, tongue_thickness=12, groove_width=12)
    >>> edge.floor_clearance, edge.side_play, edge.verdict
    (2.0, 0.0, 'goes home')
    """

    tongue_length: float
    groove_depth: float
    tongue_thickness: float
    groove_width: float
    end_clearance: float = 0.0

    def __post_init__(self) -> None:
        """Refuse sizes that cannot be."""
        _ = self.floor_clearance, self.side_play
        _not_less_than_nothing("end_clearance", self.end_clearance)

    @property
    def floor_clearance(self) -> float:
        """What is free between the tongue's end and the groove's floor; less than 0 where the tongue bottoms."""
        return floor_derivation().function("floor_clearance")(
            groove_depth=self.groove_depth, tongue_length=self.tongue_length
        )

    @property
    def side_play(self) -> float:
        """What is free beside the tongue, both cheeks together; less than 0 where it is too thick."""
        return play_derivation().function("side_play")(
            groove_width=self.groove_width, tongue_thickness=self.tongue_thickness
        )

    @property
    def shoulder_gap(self) -> float:
        """How far the shoulder stands off the post when the tongue touches the floor; 0 where it closes."""
        return max(0.0, -self.floor_clearance)

    @property
    def verdict(self) -> str:
        """One of `VERDICTS`."""
        nothing = _NEARLY * max(self.tongue_length, self.tongue_thickness)
        if self.side_play < -nothing:
            return TOO_THICK
        return BOTTOMS if self.floor_clearance < -nothing else GOES_HOME

    def allows(self, movement: float) -> bool:
        """Whether the tongue can grow toward the floor by so much and its shoulder still closes.

        Parameters
        ----------
        movement : float
            Of the season, toward the groove's floor, 0 or more, in the same unit. A panel moves that way where its
            grain runs along the post.

        Raises
        ------
        ImpossibleShape
            If the movement is less than 0 or no number.

        >>> edge = TongueInGroove(8, 10, 12, 12)
        >>> edge.allows(2), edge.allows(2.5)
        (True, False)
        """
        return self._fits(movement, self.floor_clearance)

    def allows_along(self, movement: float) -> bool:
        """Whether the tongue can grow along its groove by so much before it meets a stopped end.

        Parameters
        ----------
        movement : float
            Of the season, along the groove, at one end, 0 or more, in the same unit. A panel moves that way where
            its grain runs into the post, as in a case with level boards.

        Raises
        ------
        ImpossibleShape
            If the movement is less than 0 or no number.

        >>> TongueInGroove(8, 10, 12, 12, end_clearance=1.5).allows_along(2)
        False
        """
        return self._fits(movement, self.end_clearance)

    def _fits(self, movement: float, clearance: float) -> bool:
        _not_less_than_nothing("movement", movement)
        return movement <= clearance + _NEARLY * max(1.0, abs(clearance))

    def told(self, rule: Rule) -> str:
        """Say in the trade's words what a try of the two comes to, and what to do.

        Parameters
        ----------
        rule : Rule
            By which the lengths are told.

        >>> TongueInGroove(0.5, 0.375, 0.5, 0.5).told(Rule.inches(16))
        'The tongue bottoms, and the shoulder stands off by 1/8 in: deepen the groove or shorten the tongue.'
        """
        if self.verdict == TOO_THICK:
            return (
                f"The tongue is thicker than its groove by {_written(-self.side_play, rule)}: it will not go in. Pare "
                "the tongue, not the groove."
            )
        if self.verdict == BOTTOMS:
            return (
                f"The tongue bottoms, and the shoulder stands off by {_written(self.shoulder_gap, rule)}: deepen the "
                "groove or shorten the tongue."
            )
        if self.floor_clearance <= _NEARLY * self.tongue_length:
            return "The tongue touches the floor just as the shoulder closes: leave it a clearance."
        return f"The shoulder closes, and {_written(self.floor_clearance, rule)} stays free at the floor."


def _written(length: float, rule: Rule) -> str:
    return rule.mark(length, unit=True)


def _not_less_than_nothing(name: str, value: float) -> None:
    Quantity(sympy.Symbol(name, nonnegative=True), name[0], name).taken_in(value)
