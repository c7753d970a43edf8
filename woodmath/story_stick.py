"""The story stick: a lath with every line of the post on it, marked once and laid against all four."""

from __future__ import annotations

from dataclasses import dataclass

from woodmath.errors import ImpossibleShape
from woodmath.rule import Rule


@dataclass(frozen=True)
class PostLine:
    """A line that is squared across a post.

    Parameters
    ----------
    name : str
        What begins or ends there.
    along : float
        Its distance from the datum, along the post; below 0 it lies below the shoulder.

    >>> PostLine("panel's lower edge", 3.0).along
    3.0
    """

    name: str
    along: float


@dataclass(frozen=True)
class RunningMark:
    """A line as it is read on the rule, laid once with its end at the datum.

    Parameters
    ----------
    name : str
        What begins or ends there.
    along : float
        Its exact distance from the datum.
    reading : str
        The nearest mark of the rule; "7/8 below" for a line below the datum.

    >>> RunningMark("panel's upper edge", 11.097, "11 1/8").reading
    '11 1/8'
    """

    name: str
    along: float
    reading: str


@dataclass(frozen=True)
class StoryStick:
    """A stick with its marks, from the lowest to the highest.

    Parameters
    ----------
    marks : tuple of PostLine
        At least one, in rising order.

    Raises
    ------
    ImpossibleShape
        If there is no mark, or they are not in order.

    >>> StoryStick((PostLine("datum", 0.0), PostLine("top", 13.0))).length
    13.0
    """

    marks: tuple[PostLine, ...]

    def __post_init__(self) -> None:
        if not self.marks:
            raise ImpossibleShape("A story stick without a mark tells nothing. Give it at least one line.")
        places = [mark.along for mark in self.marks]
        if places != sorted(places):
            raise ImpossibleShape(
                f"The marks of the story stick are at {', '.join(f'{place:g}' for place in places)}. "
                "Give them from the lowest to the highest."
            )

    @property
    def lowest(self) -> float:
        """The lowest mark, from the datum."""
        return self.marks[0].along

    @property
    def highest(self) -> float:
        """The highest mark, from the datum."""
        return self.marks[-1].along

    @property
    def length(self) -> float:
        """From the lowest mark to the highest."""
        return self.highest - self.lowest

    def readings(self, rule: Rule) -> tuple[RunningMark, ...]:
        """Return every mark as it is read on a rule with its end at the datum.

        Each is rounded by itself, so none is out by more than half a mark of the rule.

        Parameters
        ----------
        rule : Rule
            Of the unit that the marks are in.

        >>> stick = StoryStick((PostLine("datum", 0.0), PostLine("panel's upper edge", 11.097)))
        >>> [mark.reading for mark in stick.readings(Rule.inches(16))]
        ['0', '11 1/8']
        """
        return tuple(RunningMark(mark.name, mark.along, _reading(mark.along, rule)) for mark in self.marks)


def _reading(along: float, rule: Rule) -> str:
    """Return a running mark as it is read; a rule has no marks below 0, so it is laid the other way there."""
    return rule.mark(along) if along >= 0 else f"{rule.mark(-along)} below"
