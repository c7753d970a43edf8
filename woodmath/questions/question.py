"""A question of a page as data: what is asked, what is given, what is true, and the slips that makers make.

A question types no formula: its truth, its slips and its worked solution come from the topics, for the piece
at hand.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.errors import WoodmathError
from woodmath.questions.kinds import AnswerKind, Value

if TYPE_CHECKING:
    from woodmath.piece import Piece


@dataclass(frozen=True)
class Slip:
    """A way to go wrong: what was probably done, and the number that it leads to.

    Parameters
    ----------
    hint : str
        One or two sentences: what was done, and what to look at instead; never the answer.
    value : callable
        From a piece to the wrong answer, worked out by the topics from the wrong size; None where a piece
        does not allow the slip.

    >>> Slip("That is the whole post.", lambda piece: 1.75).hint
    'That is the whole post.'
    """

    hint: str
    value: Callable[[Piece], Value | None]

    def leads_to(self, piece: Piece) -> Value | None:
        """Return the wrong answer for a piece, or None where its sizes do not let anyone slip this way."""
        try:
            return self.value(piece)
        except WoodmathError:
            return None


@dataclass(frozen=True)
class Question:
    """One question: the texts that ask it at length stand on the page, the rest is here.

    Parameters
    ----------
    key : str
        As a page writes it, "post-1".
    ask : str
        The question in one sentence, without its numbers.
    kind : AnswerKind
        What is accepted, and within what tolerance.
    given : callable
        From a piece to the sizes that the answer follows from: what each is called, and how it is written.
    truth : callable
        From a piece to the right answer.
    slips : tuple of Slip
        The likelier first.
    hints : tuple of str
        Two or three, each telling more than the one before, none of them the answer.
    worked : callable
        From a piece to the solution in Markdown, with the piece's numbers.

    >>> from woodmath.questions import bevel
    >>> bevel.QUESTIONS[0].key
    'bevel-1'
    """

    key: str
    ask: str
    kind: AnswerKind
    given: Callable[[Piece], Mapping[str, str]]
    truth: Callable[[Piece], Value]
    slips: tuple[Slip, ...]
    hints: tuple[str, ...]
    worked: Callable[[Piece], str]
