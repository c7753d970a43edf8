"""One remark of the master on a piece, and the words and comparisons that all remarks share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from woodmath.errors import BadLength
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

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    dict of str to float
        By "end" and "side", in the piece's unit.

    >>> from woodmath.piece import Piece
    >>> thicknesses(Piece.demo("log-box"))
    {'end': 12.0, 'side': 15.0}
    """
    return {"end": piece.joint.tenon_thickness, "side": piece.joint.side_thickness}


def stops_among(remarks: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return the remarks that stop the work.

    Parameters
    ----------
    remarks : iterable of Finding
        On one piece.

    Returns
    -------
    tuple of Finding
        In their order; none for a piece that can be cut.

    >>> from woodmath.piece import Piece
    >>> stops_among(Piece.demo("cat-bed").findings())
    ()
    """
    return tuple(remark for remark in remarks if remark.severity == "stop")


class Remarks(tuple[Finding, ...]):
    """All remarks on a piece, the gravest first; a tuple that shows itself on a page as a list.

    >>> Remarks()._repr_markdown_()
    'There is nothing to remark.'
    """

    __slots__ = ()

    def _repr_markdown_(self) -> str:
        if not self:
            return "There is nothing to remark."
        return "\n".join(
            f"- **{finding.severity.capitalize()}**, {finding.place}: {finding.reason} {finding.remedy}"
            for finding in self
        )


def size(rule: Rule, length: float) -> str:
    """Return a length as the rule reads it, with what lies off the mark to the quarter of a mark.

    Parameters
    ----------
    rule : Rule
        What it is read on.
    length : float
        In the rule's unit, 0 to 100 m.

    Returns
    -------
    str
        Without the unit.

    Raises
    ------
    BadLength
        If the rule cannot mark it.

    >>> from woodmath.rule import Rule
    >>> size(Rule.millimetres(0.5), 12.2)
    '12 and half a mark over'
    """
    read, off = rule.mark(length), length - rule.nearest(length)
    if not more(abs(off), 0.0):
        return read
    part = ("a hair", "a quarter of a mark", "half a mark")[round(4 * abs(off) / rule.one_mark)]
    return f"{read} and {part} {'over' if off > 0 else 'under'}"


def in_decimals(rule: Rule, length: float) -> str:
    """Return a length that is too small for the rule's marks, as a number with as many decimals as anyone measures.

    Parameters
    ----------
    rule : Rule
        In whose unit it is.
    length : float
        Any; less than 0 with a minus.

    Returns
    -------
    str
        Without the unit: three decimals of an inch, two of a millimetre.

    >>> from woodmath.rule import Rule
    >>> in_decimals(Rule.inches(16), 0.0991), in_decimals(Rule.millimetres(0.5), -0.001)
    ('0.099', '0.00')
    """
    places = 3 if rule.unit == "inch" else 2
    # Rounded first: a minus before nothing says nothing.
    return f"{round(length, places) + 0.0:.{places}f}"


def about(rule: Rule, written: str) -> str:
    """Return a length that is written with its unit at the rule's nearest mark, one mark at least.

    Parameters
    ----------
    rule : Rule
        What it is to be read on.
    written : str
        A length with its unit.

    Returns
    -------
    str
        Without the unit.

    Raises
    ------
    BadLength
        If it cannot be read.

    >>> from woodmath.rule import Rule
    >>> about(Rule.inches(16), "2 mm")
    '1/16'
    """
    return rule.mark(max(rule.read(written), rule.one_mark))


def marks_between(rule: Rule, least: float, most: float) -> tuple[str, str]:
    """Return two limits as the outermost marks that lie within them; as plain numbers where marks lie too far apart.

    Parameters
    ----------
    rule : Rule
        Whose marks they are to be.
    least, most : float
        The limits, 0 or more, in the rule's unit.

    Returns
    -------
    (str, str)
        Without the unit.

    >>> from woodmath.rule import Rule
    >>> marks_between(Rule.inches(16), 22.57, 45.1), marks_between(Rule.inches(16), 0.01, 0.02)
    (('22 5/8', '45 1/16'), ('0.01', '0.02'))
    """
    try:
        first, last = rule.marks(least), rule.marks(most)
        first += more(least, rule.length(first))
        last -= more(rule.length(last), most)
        low, high = rule.length(first), rule.length(last)
        return (rule.mark(low), rule.mark(high)) if low < high else (f"{least:.6g}", f"{most:.6g}")
    except BadLength:
        return f"{least:.6g}", f"{most:.6g}"


def mark_at_most(piece: Piece, length: float) -> str:
    """Return the last mark that does not lie beyond a length, or "" where there is none above 0.

    Parameters
    ----------
    piece : Piece
        Whose rule it is.
    length : float
        In the piece's unit.

    Returns
    -------
    str
        Without the unit.

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

    Parameters
    ----------
    one, other : float
        Lengths in one unit.

    Returns
    -------
    bool
        Whether a knife could mark the difference.

    >>> more(0.1 + 0.2, 0.3), more(0.31, 0.3)
    (False, True)
    """
    return one > other + float(SAME_LENGTH)
