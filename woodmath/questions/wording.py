"""How the questions write their numbers: sizes as on the rule, and a derivation with those sizes put in."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

import sympy

from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape
from woodmath.fractions_in_print import set_fractions
from woodmath.numbers_as_written import number_shown
from woodmath.questions.notation import length_shown, on_a_mark
from woodmath.rule import Rule

if TYPE_CHECKING:
    from woodmath.piece import Piece

ATable = TypeVar("ATable")


def put_in(derivation: Derivation, name: str, rule: Rule, **values: float) -> str:
    r"""Return Markdown of a derivation's formula for one quantity, and the same with sizes put in.

    Parameters
    ----------
    derivation : Derivation
        Which rule of the trade.
    name : str
        The quantity that is wanted.
    rule : Rule
        Lengths that lie on its marks are written as on it, others in decimals.
    **values : float
        The other quantities, each in its unit.

    >>> from woodmath.bevel import derivation
    >>> print(put_in(derivation(), "offset", Rule.inches(16), angle=45, thickness=0.5))
    $$o = t \tan{\left(\beta \right)} = {\tfrac{1}{2}}\times\tan{\left({45^\circ} \right)} = 0.5$$
    """
    # A mixed number under an exponent reads as if its fraction alone were squared: it is written in decimals.
    squared = {
        str(power.base)
        for power in derivation.solved_for(name).rhs.atoms(sympy.Pow)
        if power.base.is_Symbol and power.exp > 0
    }
    written = {
        given: _written(derivation, given, value, rule)
        for given, value in values.items()
        if given not in squared
    }
    return derivation.worked(name, values, written)


def in_words(text: str) -> str:
    """Return a sentence of a worked solution, its fractions set as fractions.

    >>> in_words("On the rule that is 1 1/4 in.")
    'On the rule that is 1¼ in.'
    """
    return set_fractions(text)


def on_the_rule(value: float, rule: Rule) -> str:
    """Return the closing sentence of a worked length: what it reads on the rule.

    >>> on_the_rule(20.468, Rule.inches(16))
    'On the rule that is 20⁷⁄₁₆ in, and 0.03 over.'
    """
    if on_a_mark(value, rule):
        return in_words(f"On the rule that is {length_shown(value, rule)}.")
    over = value - rule.nearest(value)
    return in_words(
        f"On the rule that is {rule.mark(value, unit=True)}, and {number_shown(abs(over))} "
        f"{'over' if over > 0 else 'under'}."
    )


def needed(table: ATable | None, name: str, piece: Piece) -> ATable:
    """Return a table of the piece that a question is about.

    Raises
    ------
    ImpossibleShape
        If the piece has no such table.

    >>> from woodmath.piece import Piece
    >>> box = Piece.demo("log-box")
    >>> needed(box.rocker, "rocker", box)
    Traceback (most recent call last):
    woodmath.errors.ImpossibleShape: A log box for the stove has no [rocker] in its file, and the question is
    about that.
    """
    if table is None:
        raise ImpossibleShape(f"{piece.name} has no [{name}] in its file, and the question is about that.")
    return table


def _written(derivation: Derivation, name: str, value: float, rule: Rule) -> str:
    unit = derivation.quantity(name).unit
    if unit == "degrees":
        return rf"{number_shown(value)}^\circ"
    if unit.startswith("length") and value >= 0 and on_a_mark(value, rule):
        return rule.mark(value)
    return f"{value:.5g}"
