"""Parts laid end to end, and the marks of a rule: round the running sums, not the parts.

Each part rounded by itself may be half a mark out, and the halves add up. Running sums from one datum, each
rounded once, keep every line within half a mark of where it should be.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Substitute, equation
from woodmath.rule import SAME_LENGTH, Rule


@functools.cache
def drift_derivation() -> Derivation:
    """Derive how far the last of many lines may stand off when each part is rounded by itself.

    Returns
    -------
    Derivation
        Speaks of `drift` and `mark` (lengths) and `count` (a number); its subject is the drift at worst.

    Source: adding up; half a division at most is lost to rounding (arithmetic).

    >>> drift_derivation().result
    Eq(drift, count*mark/2)
    """
    drift, part_error, mark, count = sympy.symbols("drift part_error mark count", positive=True)
    return Derivation.start(
        "The drift of parts rounded one by one",
        (
            Quantity(drift, "D", "how far the last line may be from its true place"),
            Quantity(part_error, "e", "what rounding may add to one part, or take away"),
            Quantity(mark, "g", "from one mark of the rule to the next"),
            Quantity(count, "n", "parts, end to end", "number"),
        ),
        equation(drift, count * part_error),
        "every part pushes all that come after it: where all are rounded the same way, their errors add up",
        subject="drift",
        example={
            drift: sympy.Rational(3, 16),
            part_error: sympy.Rational(1, 32),
            mark: sympy.Rational(1, 16),
            count: 6,
        },
    ).then(
        Substitute(part_error, mark / 2),
        "no length is further than half a division from its nearest mark, and some are as far as that",
    )


@dataclass(frozen=True)
class RunningMarks:
    """Where the lines fall on a rule, from one datum, and what is left between them.

    Parameters
    ----------
    exact : tuple of float
        True places of the lines from the datum, one for each part, in the rule's unit.
    marks : tuple of float
        Where they are marked.

    >>> RunningMarks(exact=(1.04, 2.08), marks=(1.0625, 2.0625)).parts
    (1.0625, 1.0)
    """

    exact: tuple[float, ...]
    marks: tuple[float, ...]

    @property
    def parts(self) -> tuple[float, ...]:
        """The parts as they come out: differences of neighbouring marks."""
        return tuple(after - before for before, after in pairwise((0.0, *self.marks)))

    @property
    def errors(self) -> tuple[float, ...]:
        """How far each line stands past its true place; less than 0 where it stands short of it."""
        return tuple(mark - place for mark, place in zip(self.marks, self.exact, strict=True))

    @property
    def furthest(self) -> float:
        """How far the worst line is from its true place, 0 or more."""
        return max(map(abs, self.errors))


def marks_along(lengths: Sequence[float], rule: Rule) -> RunningMarks:
    """Running marks from one datum of parts laid end to end, each within half a mark of its true place.

    Parameters
    ----------
    lengths : sequence of float
        The parts in their order, at least one, each 0 or more, 100 m together, in the rule's unit.
    rule : Rule
        What they are marked with.

    Returns
    -------
    RunningMarks
        The lines, and the parts as differences of lines.

    Raises
    ------
    ImpossibleShape
        If there are no parts, or one is negative or no number.
    BadLength
        If the whole is longer than a rule may be.

    Source: round once, at the end, from one datum (common practice).

    >>> found = marks_along([1.04, 1.04, 1.04], Rule.inches(16))
    >>> found.marks, found.parts
    ((1.0625, 2.0625, 3.125), (1.0625, 1.0, 1.0625))
    """
    exact = _running(lengths)
    return RunningMarks(exact, tuple(map(rule.nearest, exact)))


def parts_that_sum(lengths: Sequence[float], rule: Rule) -> tuple[float, ...]:
    """Parts rounded to whole marks so that they add up to the rounded whole.

    Every part is rounded down, and the marks that are then missing go to the parts that lost most: each part is
    within one mark of its length, and the sum is right. The lines between them are not: for those take
    `marks_along`.

    Parameters
    ----------
    lengths : sequence of float
        As for `marks_along`.
    rule : Rule
        What they are marked with.

    Returns
    -------
    tuple of float
        In the order of the lengths, in the rule's unit; of parts that lost alike the earlier gets the mark.

    Raises
    ------
    ImpossibleShape
        If there are no parts, or one is negative or no number.
    BadLength
        If the whole is longer than a rule may be.

    Source: the method of the largest remainder, as seats are shared out after a count of votes (from memory).

    >>> parts_that_sum([1.04, 1.04, 1.04], Rule.inches(16))
    (1.0625, 1.0625, 1.0)
    """
    whole = rule.marks(_running(lengths)[-1])
    in_marks = [Fraction(length) / rule.mark_size for length in lengths]
    # A length that lies on a mark but for the noise of binary numbers must not be rounded down past it.
    noise = Fraction(SAME_LENGTH) / rule.mark_size
    down = [math.floor(length + noise) for length in in_marks]
    lost = [round((length - kept) / noise) for length, kept in zip(in_marks, down, strict=True)]
    first = sorted(range(len(down)), key=lambda place: (-lost[place], place))
    raised = set(first[: whole - sum(down)])
    return tuple(rule.length(kept + (place in raised)) for place, kept in enumerate(down))


def rounded_alone(lengths: Sequence[float], rule: Rule) -> RunningMarks:
    """Lines of parts that were each rounded by themselves and laid end to end: what drifts.

    Parameters
    ----------
    lengths : sequence of float
        As for `marks_along`.
    rule : Rule
        What they are marked with.

    Returns
    -------
    RunningMarks
        The last line may be half a mark off for every part (`drift_derivation`).

    Raises
    ------
    ImpossibleShape
        If there are no parts, or one is negative or no number.
    BadLength
        If the whole is longer than a rule may be.

    Source: `drift_derivation`.

    >>> rounded_alone([1.04, 1.04, 1.04], Rule.inches(16)).marks
    (1.0625, 2.125, 3.1875)
    """
    exact = _running(lengths)
    return RunningMarks(exact, tuple(accumulate(map(rule.nearest, lengths))))


def marked_to_sum(lengths: Sequence[float], rule: Rule) -> RunningMarks:
    """Lines of parts that were rounded so as to add up: the last is right, those before it need not be.

    Parameters
    ----------
    lengths : sequence of float
        As for `marks_along`.
    rule : Rule
        What they are marked with.

    Returns
    -------
    RunningMarks
        With the parts of `parts_that_sum`.

    Raises
    ------
    ImpossibleShape
        If there are no parts, or one is negative or no number.
    BadLength
        If the whole is longer than a rule may be.

    Source: as for `parts_that_sum`.

    >>> round(marked_to_sum([1.04, 1.04, 1.04], Rule.inches(16)).errors[1], 3)
    0.045
    """
    return RunningMarks(_running(lengths), tuple(accumulate(parts_that_sum(lengths, rule))))


def _running(lengths: Sequence[float]) -> tuple[float, ...]:
    """Return the sums from the datum, each added up afresh so that no rounding of floats piles up."""
    if not len(lengths) or not all(math.isfinite(length) and length >= 0 for length in lengths):
        raise ImpossibleShape(
            f"{len(lengths)} parts were given ({', '.join(f'{length:g}' for length in lengths[:6])}). Give at "
            "least one, each a plain length of 0 or more, in the order in which they lie."
        )
    exact = list(accumulate(Fraction(length) for length in lengths))
    return tuple(map(float, exact))
