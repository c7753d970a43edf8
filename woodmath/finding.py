"""One remark of the master on a piece, and the words and comparisons that all remarks share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from woodmath.rule import SAME_LENGTH, Rule

if TYPE_CHECKING:
    from woodmath.piece import Piece

Severity = Literal["stop", "caution", "note"]
SEVERITIES: tuple[Severity, ...] = ("stop", "caution", "note")


@dataclass(frozen=True)
class Finding:
    """One remark on a piece.

    Parameters
    ----------
    severity : "stop", "caution" or "note"
        Stop: it cannot be made, or it spoils the wood. Caution: it can, with the care that is named. Note:
        worth knowing before you mark.
    place : str
        Where on the piece.
    reason : str
        What is the matter, with its numbers in the piece's rule.
    remedy : str
        What to change or to do.

    >>> print(Finding("caution", "the post joint", "No clearance.", "Leave a little."))
    Caution, the post joint: No clearance. Leave a little.
    """

    severity: Severity
    place: str
    reason: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.severity.capitalize()}, {self.place}: {self.reason} {self.remedy}"


def thicknesses(piece: Piece) -> dict[str, float]:
    """Return how thick the tenons of end and side are, which is also how wide their mortises are.

    >>> from woodmath.piece import Piece
    >>> thicknesses(Piece.demo("log-box"))
    {'end': 12.0, 'side': 15.0}
    """
    end, other = piece.joint.tenon_thickness, piece.joint.other_thickness
    return {"end": end, "side": end if other is None else other}


def size(rule: Rule, length: float) -> str:
    """Return a length as the rule reads it, with what lies off the mark.

    >>> from woodmath.rule import Rule
    >>> size(Rule.millimetres(0.5), 12.2)
    '12 and 0.2 over'
    """
    return rule.mark(length, remainder=True)


def about(rule: Rule, written: str) -> str:
    """Return a length that is written with its unit at the rule's nearest mark, one mark at least.

    >>> from woodmath.rule import Rule
    >>> about(Rule.inches(16), "2 mm")
    '1/16'
    """
    return rule.mark(max(rule.read(written), rule.one_mark))


def mark_at_most(piece: Piece, length: float) -> str:
    """Return the last mark that does not lie beyond a length, or "" where there is none above 0.

    >>> from woodmath.piece import Piece
    >>> mark_at_most(Piece.demo("log-box"), 10.4), mark_at_most(Piece.demo("log-box"), -1)
    ('10', '')
    """
    if length <= 0:
        return ""
    marks = piece.rule.marks(length)
    if more(piece.rule.length(marks), length):
        marks -= 1
    return piece.rule.mark(piece.rule.length(marks)) if marks else ""


def more(one: float, other: float) -> bool:
    """Tell whether one length is more than another by more than the noise of binary numbers.

    >>> more(0.1 + 0.2, 0.3), more(0.31, 0.3)
    (False, True)
    """
    return one > other + float(SAME_LENGTH)
