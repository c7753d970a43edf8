"""The whole marks of a rule beside a length: the last one below it and the first one above it."""

from __future__ import annotations

from woodmath.rule import SAME_LENGTH, Rule


def mark_at_least(rule: Rule, length: float) -> float:
    """Return the first mark of a rule that is no less than a length.

    Parameters
    ----------
    rule : Rule
        Whose marks.
    length : float
        0 or more, in the rule's unit.

    Returns
    -------
    float
        On a mark, in the rule's unit.

    Raises
    ------
    BadLength
        If the length is negative, or longer than a rule may be.

    >>> mark_at_least(Rule.inches(16), 1.01)
    1.0625
    """
    marks = rule.marks(length)
    return rule.length(marks + (rule.length(marks) < length - float(SAME_LENGTH)))


def mark_at_most(rule: Rule, length: float) -> float:
    """Return the last mark of a rule that is no more than a length.

    Parameters
    ----------
    rule : Rule
        Whose marks.
    length : float
        0 or more, in the rule's unit.

    Returns
    -------
    float
        On a mark, in the rule's unit.

    Raises
    ------
    BadLength
        If the length is negative, or longer than a rule may be.

    >>> mark_at_most(Rule.inches(16), 1.04)
    1.0
    """
    marks = rule.marks(length)
    return rule.length(marks - (rule.length(marks) > length + float(SAME_LENGTH)))
