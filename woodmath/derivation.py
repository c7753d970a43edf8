"""A rule of the trade derived once: read step by step, solved for any quantity, compiled and used.

A derivation is a start and a chain of steps; each step is a reason in plain words and an operation that sympy
carries out on the equation before. Nothing that follows from the start is ever typed in.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

import sympy
from sympy.core.relational import Equality

from woodmath.compiled_rule import CompiledRule
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.formula_in_print import Formula, Lesson, in_print, numbers_in_print
from woodmath.operations import Operation, kept_answer, solutions_for
from woodmath.quantities import Limit, Quantity, spoken
from woodmath.sensitivity import Contribution, Sensitivity

__all__ = ["CompiledRule", "Derivation", "Formula", "Limit", "Quantity", "Sensitivity", "Step", "spoken"]


@dataclass(frozen=True)
class Step:
    """One line of a derivation: why, what was done (nothing for the start), and the equation it left.

    >>> Step("what we know", None, sympy.Eq(sympy.Symbol("a"), 1)).equation
    Eq(a, 1)
    """

    reason: str
    operation: Operation | None
    equation: Equality


@dataclass(frozen=True, eq=False)
class Derivation:
    """A start, and steps that sympy carried out on it.

    Parameters
    ----------
    title : str
        What is derived, as a sentence.
    quantities : tuple of Quantity
        Every symbol with meaning and unit, in the order in which they are to be read.
    steps : tuple of Step
        The start first.
    subject : str
        The quantity that the derivation is about.
    example : tuple of (symbol, value)
        One set of true values, whole numbers or fractions where it can be: it decides between branches.
    limits : tuple of Limit
        What must hold for the formula to mean anything.
    keeps : tuple of (name, reason)
        Why one of several answers is kept, where `solved_for` meets several.

    >>> a, b = sympy.symbols("a b", positive=True)
    >>> from woodmath.operations import Isolate, equation
    >>> twice = Derivation.start(
    ...     "One is twice the other",
    ...     (Quantity(a, "a", "the first"), Quantity(b, "b", "the second")),
    ...     equation(b, 2 * a), "it is given", subject="a", example={a: 1, b: 2},
    ... ).then(Isolate(a), "it is wanted")
    >>> twice.result
    Eq(a, b/2)
    >>> twice.function("b")(a=3.0)
    6.0
    """

    title: str
    quantities: tuple[Quantity, ...]
    steps: tuple[Step, ...]
    subject: str
    example: tuple[tuple[sympy.Symbol, sympy.Expr], ...]
    limits: tuple[Limit, ...] = ()
    keeps: tuple[tuple[str, str], ...] = ()

    @classmethod
    def start(
        cls,
        title: str,
        quantities: tuple[Quantity, ...],
        given: Equality,
        reason: str,
        *,
        subject: str,
        example: Mapping[sympy.Symbol, sympy.Expr | int],
        limits: tuple[Limit, ...] = (),
        keeps: Mapping[str, str] | None = None,
    ) -> Derivation:
        """Begin a derivation with what is given.

        Parameters
        ----------
        title : str
            What is derived, as a sentence.
        quantities : tuple of Quantity
            Every symbol that any step speaks of, in the order in which they are to be read.
        given : sympy.Eq
            The equation that everything follows from.
        reason : str
            Why it holds, without a full stop.
        subject : str
            Name of the quantity that the derivation is about.
        example : mapping of sympy.Symbol to number
            One set of true values, one for each quantity; angles in radians.
        limits : tuple of Limit
            What must hold for the formula to mean anything.
        keeps : mapping of str to str
            Why one of several answers is kept, by the quantity's name.

        Returns
        -------
        Derivation
            With one step, the start.

        >>> side, area = sympy.symbols("side area", positive=True)
        >>> Derivation.start(
        ...     "A square board", (Quantity(side, "s", "its side"), Quantity(area, "A", "its face", "area")),
        ...     sympy.Eq(area, side**2), "it is as wide as it is long", subject="area", example={side: 3, area: 9},
        ... ).result
        Eq(area, side**2)
        """
        return cls(
            title=title,
            quantities=quantities,
            steps=(Step(reason, None, given),),
            subject=subject,
            example=tuple((symbol, sympy.sympify(value)) for symbol, value in example.items()),
            limits=limits,
            keeps=tuple((keeps or {}).items()),
        )

    def then(self, operation: Operation, reason: str) -> Derivation:
        """Return the derivation with one step more: the operation carried out, and why.

        Parameters
        ----------
        operation : Operation
            What is done to the equation before.
        reason : str
            Why, without a full stop.

        Returns
        -------
        Derivation
            A new one; this one stays as it is.

        Raises
        ------
        ImpossibleShape
            If the operation cannot be carried out, or leaves a choice that nobody explains.

        >>> from woodmath.bevel import derivation
        >>> from woodmath.operations import Multiply
        >>> thickness = derivation().quantity("thickness").symbol
        >>> steps = derivation().steps
        >>> len(derivation().then(Multiply(thickness), "the thickness comes to the other side").steps) - len(steps)
        1
        """
        after = operation.carry_out(self.result, dict(self.example))
        return replace(self, steps=(*self.steps, Step(reason, operation, after)))

    @property
    def result(self) -> Equality:
        """The last equation."""
        return self.steps[-1].equation

    def quantity(self, name: str | sympy.Symbol) -> Quantity:
        """Return the quantity of that name.

        Parameters
        ----------
        name : str or sympy.Symbol
            As in `quantities`.

        Returns
        -------
        Quantity
            With its symbol, letter, meaning and unit.

        Raises
        ------
        UnknownName
            If the derivation has no such quantity; the message lists those it has.

        >>> from woodmath.bevel import derivation
        >>> derivation().quantity("angle").unit
        'degrees'
        """
        wanted = str(name)
        for candidate in self.quantities:
            if candidate.name == wanted:
                return candidate
        known = ", ".join(candidate.name for candidate in self.quantities)
        raise UnknownName(f"There is no {wanted!r} in '{self.title}'. It speaks of: {known}.")

    def solved_for(self, name: str | sympy.Symbol) -> Equality:
        """Return the result solved for one of its quantities (cached).

        Parameters
        ----------
        name : str or sympy.Symbol
            The quantity that is wanted.

        Returns
        -------
        sympy.Eq
            With the quantity's symbol alone on the left; angles in radians.

        Raises
        ------
        UnknownName
            If the result does not contain that quantity.
        ImpossibleShape
            If several answers are left and the derivation does not say which one is true of wood.

        >>> from woodmath.bevel import derivation
        >>> derivation().solved_for("offset")
        Eq(offset, thickness*tan(angle))
        """
        return _solved(self, self.quantity(name).name)

    def why_kept(self, name: str | sympy.Symbol) -> str:
        """Return the reason why one of several answers is kept for a quantity.

        Parameters
        ----------
        name : str or sympy.Symbol
            The quantity.

        Returns
        -------
        str
            The reason, without a full stop; "" where there is one answer.

        Raises
        ------
        UnknownName
            If the derivation has no such quantity.

        >>> from woodmath.bevel import derivation
        >>> derivation().why_kept("offset")
        ''
        """
        return dict(self.keeps).get(self.quantity(name).name, "")

    def function(self, name: str | sympy.Symbol) -> CompiledRule:
        """Return the compiled function that gives one quantity from the others (cached).

        Parameters
        ----------
        name : str or sympy.Symbol
            The quantity that is wanted.

        Returns
        -------
        CompiledRule
            To be called with the other quantities by name, each in its unit.

        Raises
        ------
        UnknownName
            If the result does not contain that quantity.
        ImpossibleShape
            If several answers are left and the derivation does not say which one is true of wood.

        >>> from woodmath.bevel import derivation
        >>> derivation().function("angle")(offset=1, thickness=1)
        45.0
        """
        return _compiled(self, self.quantity(name).name)

    def sensitivity(
        self, values: Mapping[str, float], errors: Mapping[str, float], of: str = ""
    ) -> Sensitivity:
        """Differentiate the result and say what each measuring error does to it.

        Parameters
        ----------
        values : mapping of str to float
            The measurements, each in its unit (degrees for angles).
        errors : mapping of str to float
            How far each may be out either way, finite and >= 0, in the same unit.
        of : str
            The quantity asked about; the derivation's subject where nothing is said.

        Returns
        -------
        Sensitivity
            With one contribution for each error, in the order in which the errors were given.

        Raises
        ------
        UnknownName
            If an error is given for something that is not among the values, or none is given.
        ImpossibleShape
            If the values cannot stand together, or an error is no number or less than 0.

        >>> from woodmath.bevel import derivation
        >>> told = derivation().sensitivity({"offset": 0.25, "thickness": 0.5}, {"offset": 0.01, "thickness": 0.01})
        >>> told.matters_most
        'offset'
        """
        wanted = self.quantity(of or self.subject)
        value = self.function(wanted.name)(**values)
        strangers = sorted(set(errors) - set(values))
        if strangers:
            raise UnknownName(
                f"An error is given for {', '.join(strangers)}, which is not among the values "
                f"({', '.join(sorted(values))}). Give errors for these only."
            )
        if not errors:
            raise UnknownName(
                f"No error is given. Give one for at least one of {', '.join(sorted(values))}, such as half "
                "a mark of the rule."
            )
        formula = self.solved_for(wanted.name).rhs
        inside = {self.quantity(name).symbol: self.quantity(name).taken_in(at) for name, at in values.items()}
        parts = []
        for name, error in errors.items():
            if not (math.isfinite(error) and error >= 0):
                raise ImpossibleShape(
                    f"The error of {spoken(name)} is {error:g}. Say how far it may be out either way: a plain "
                    "number, 0 or more, such as half a mark of the rule."
                )
            measured = self.quantity(name)
            slope = complex(sympy.N(sympy.diff(formula, measured.symbol).subs(inside))).real
            if not math.isfinite(slope):
                raise ImpossibleShape(
                    f"At these values the least error of {spoken(name)} moves {spoken(wanted.name)} without "
                    f"measure. Move {spoken(name)} a little away from {values[name]:g} and ask again."
                )
            rate = slope * measured.turned / wanted.turned
            parts.append(Contribution(name, rate, error, measured.unit))
        return Sensitivity(wanted.name, value, tuple(parts), wanted.unit)

    def letters(self) -> dict[sympy.Symbol, str]:
        """Return what each symbol is written with.

        Returns
        -------
        dict of sympy.Symbol to str
            In the order in which the quantities are to be read.

        >>> from woodmath.bevel import derivation
        >>> [*derivation().letters().values()][1:]
        ['o', 't']
        """
        return {quantity.symbol: quantity.letter for quantity in self.quantities}

    def show(self, expression: sympy.Basic) -> str:
        """Return an expression in LaTeX, with the derivation's letters and its order of reading.

        Parameters
        ----------
        expression : sympy expression or equation
            In the derivation's symbols.

        Returns
        -------
        str
            LaTeX, without dollar signs.

        >>> from woodmath.bevel import derivation
        >>> derivation().show(derivation().quantity("offset").symbol)
        'o'
        """
        return in_print(expression, self.letters())

    def _shown(self, reached: Equality) -> str:
        """Return an equation in LaTeX; an angle that has become a plain number is told in degrees too."""
        shown = self.show(reached)
        angles = {quantity.symbol for quantity in self.quantities if quantity.unit == "degrees"}
        if reached.lhs in angles and reached.rhs.is_number:
            return rf"{shown} = {float(sympy.deg(reached.rhs)):.6g}^\circ"
        return shown

    def in_short(self) -> Lesson:
        """Return the derivation to be shown with its result first, and the steps folded below it.

        Returns
        -------
        Lesson
            Which shows itself as the last line of a cell.

        >>> from woodmath.bevel import derivation
        >>> "<details>" in derivation().in_short()._repr_markdown_()
        True
        """
        return Lesson(self.title, self._shown(self.result), self._repr_markdown_())

    def formula_for(self, name: str | sympy.Symbol) -> Formula:
        """Return the result solved for one of its quantities, to be shown with what its letters mean.

        Parameters
        ----------
        name : str or sympy.Symbol
            The quantity that is wanted.

        Returns
        -------
        Formula
            Which shows itself as the last line of a cell.

        Raises
        ------
        UnknownName
            If the result does not contain that quantity.
        ImpossibleShape
            If several answers are left and the derivation does not say which one is true of wood.

        >>> from woodmath.bevel import derivation
        >>> derivation().formula_for("offset").solved
        Eq(offset, thickness*tan(angle))
        """
        return Formula(self.solved_for(name), self.quantities, self.why_kept(name))

    def worked(self, name: str, values: Mapping[str, float], written: Mapping[str, str]) -> str:
        r"""Return Markdown that shows a quantity's formula and the same with numbers put in.

        Parameters
        ----------
        name : str
            The quantity wanted.
        values : mapping of str to float
            The numbers of the others, each in its unit.
        written : mapping of str to str
            How each number is to be written; what is not named is written to five figures.

        Returns
        -------
        str
            One formula, and the reason where one of several answers is kept.

        Raises
        ------
        UnknownName
            If the result does not contain that quantity, or the values are not those of the others.
        ImpossibleShape
            If the values cannot stand together.

        >>> from woodmath.bevel import derivation
        >>> print(derivation().worked("offset", {"angle": 45, "thickness": 0.5}, {"thickness": "1/2"}))
        $$o = t \tan{\left(\beta \right)} = {\tfrac{1}{2}}\times\tan{\left({45^\circ} \right)} = 0.5$$
        """
        solved = self.solved_for(name)
        numbers = {
            self.quantity(given).symbol: written.get(given, self._figures(given, value))
            for given, value in values.items()
        }
        put_in = numbers_in_print(solved.rhs, self.letters(), numbers)
        result = self._figures(name, self.function(name)(**values))
        kept = (
            f"\n\nOf several answers this one is kept: {self.why_kept(name)}." if self.why_kept(name) else ""
        )
        return f"$${self.show(solved)} = {put_in} = {result}$${kept}"

    def _figures(self, name: str, value: float) -> str:
        return f"{value:.5g}" + (r"^\circ" if self.quantity(name).unit == "degrees" else "")

    def _repr_markdown_(self) -> str:
        rows = "\n".join(
            f"| ${quantity.letter}$ | {quantity.meaning} | {quantity.unit} |" for quantity in self.quantities
        )
        lines = [f"**{self.title}**", f"| letter | meaning | unit |\n|---|---|---|\n{rows}"]
        for number, step in enumerate(self.steps):
            done = "Start" if step.operation is None else f"{number}. {step.operation.words(self.show)}"
            lines.append(f"**{done}** — {step.reason}.\n\n$${self._shown(step.equation)}$$")
        return "\n\n".join(lines)


@functools.cache
def _solved(derivation: Derivation, name: str) -> Equality:
    wanted = derivation.quantity(name).symbol
    if derivation.result.lhs == wanted and not derivation.result.rhs.has(wanted):
        return derivation.result
    if not derivation.result.has(wanted):
        left = ", ".join(q.name for q in derivation.quantities if derivation.result.has(q.symbol))
        raise UnknownName(
            f"{name} has dropped out on the way; the result of '{derivation.title}' speaks of {left}. "
            "Solve for one of these."
        )
    found = solutions_for(derivation.result, wanted)
    if len(found) > 1 and not derivation.why_kept(name):
        raise ImpossibleShape(
            f"{name} has {len(found)} answers here ({', '.join(map(str, found))}). "
            "Say in the derivation's keeps which one is true of wood, and why."
        )
    return sympy.Eq(wanted, kept_answer(wanted, found, dict(derivation.example)), evaluate=False)


@functools.cache
def _compiled(derivation: Derivation, name: str) -> CompiledRule:
    wanted = derivation.quantity(name)
    return CompiledRule(derivation.solved_for(name), wanted, derivation.quantities, derivation.limits)
