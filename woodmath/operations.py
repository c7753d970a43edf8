"""What may be done to an equation: each operation is carried out by sympy, never typed in.

An operation that can let strangers in (squaring does: it cannot tell 3 from -3) says so in `widens`,
and the derivation then has to say which branch it keeps.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

import sympy
from sympy.core.relational import Equality

from woodmath.errors import ImpossibleShape

Example = Mapping[sympy.Symbol, sympy.Expr]
Print = Callable[[sympy.Basic], str]


def equation(left: sympy.Expr, right: sympy.Expr) -> Equality:
    """Build an equation that stays written as it is, even when both sides are plainly equal.

    Parameters
    ----------
    left, right : sympy.Expr
        The two sides.

    Returns
    -------
    sympy.Eq
        The equation, unevaluated.

    >>> length = sympy.Symbol("length", positive=True)
    >>> equation(length, length)
    Eq(length, length)
    """
    return sympy.Eq(sympy.sympify(left), sympy.sympify(right), evaluate=False)


class Operation:
    """One thing done to the equation before; a subclass says what, and sympy does it.

    >>> Square().carry_out(equation(sympy.Symbol("a"), sympy.Integer(3)), {})
    Eq(a**2, 9)
    """

    widens = False

    def carry_out(self, before: Equality, example: Example) -> Equality:
        """Return the equation after the operation (`example` holds one true set of values)."""
        raise NotImplementedError

    def words(self, show: Print) -> str:
        """Say in plain words what is done; `show` sets an expression in LaTeX."""
        raise NotImplementedError


@dataclass(frozen=True)
class Substitute(Operation):
    """Put `new` wherever `old` stands.

    >>> a, b = sympy.symbols("a b")
    >>> Substitute(a, b + 1).carry_out(equation(2 * a, b), {})
    Eq(2*b + 2, b)
    """

    old: sympy.Expr
    new: sympy.Expr

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(before.lhs.subs(self.old, self.new), before.rhs.subs(self.old, self.new))

    def words(self, show: Print) -> str:
        return f"Write ${show(self.new)}$ for ${show(self.old)}$"


@dataclass(frozen=True)
class Add(Operation):
    """Add the same term to both sides (a negative term takes it away).

    >>> a, b = sympy.symbols("a b")
    >>> Add(-b).carry_out(equation(a + b, sympy.Integer(3)), {})
    Eq(a, 3 - b)
    """

    term: sympy.Expr

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(before.lhs + self.term, before.rhs + self.term)

    def words(self, show: Print) -> str:
        if self.term.could_extract_minus_sign():
            return f"Take ${show(-self.term)}$ from both sides"
        return f"Add ${show(self.term)}$ to both sides"


@dataclass(frozen=True)
class Divide(Operation):
    """Divide both sides by something that is not zero, term by term.

    >>> a, b = sympy.symbols("a b")
    >>> Divide(sympy.Integer(2)).carry_out(equation(2 * a + 4, b), {})
    Eq(a + 2, b/2)
    """

    divisor: sympy.Expr

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(sympy.expand(before.lhs / self.divisor), sympy.expand(before.rhs / self.divisor))

    def words(self, show: Print) -> str:
        return f"Divide both sides by ${show(self.divisor)}$"


@dataclass(frozen=True)
class Multiply(Operation):
    """Multiply both sides by something that is not zero, term by term.

    >>> a, b = sympy.symbols("a b")
    >>> Multiply(b).carry_out(equation(a / b, sympy.Integer(2)), {})
    Eq(a, 2*b)
    """

    factor: sympy.Expr

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(sympy.expand(before.lhs * self.factor), sympy.expand(before.rhs * self.factor))

    def words(self, show: Print) -> str:
        return f"Multiply both sides by ${show(self.factor)}$"


@dataclass(frozen=True)
class Square(Operation):
    """Square both sides. It widens: an equation with one side's sign changed squares to the same.

    >>> a = sympy.Symbol("a")
    >>> Square().carry_out(equation(sympy.sqrt(a), sympy.Integer(3)), {})
    Eq(a, 9)
    """

    widens = True

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(before.lhs**2, before.rhs**2)

    def words(self, show: Print) -> str:
        return "Square both sides"


@dataclass(frozen=True)
class Expand(Operation):
    """Multiply out every bracket and gather like terms, on both sides.

    >>> a, b = sympy.symbols("a b")
    >>> Expand().carry_out(equation((a + b) ** 2, a**2), {})
    Eq(a**2 + 2*a*b + b**2, a**2)
    """

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(sympy.expand(before.lhs), sympy.expand(before.rhs))

    def words(self, show: Print) -> str:
        return "Multiply out the brackets"


@dataclass(frozen=True)
class Gather(Operation):
    """Bring every term to the left, or those with the named symbols only, and cancel what cancels.

    >>> a, b = sympy.symbols("a b")
    >>> Gather((a,)).carry_out(equation(a + b, 2 * b - a), {})
    Eq(2*a, b)
    """

    symbols: tuple[sympy.Symbol, ...] = ()

    def carry_out(self, before: Equality, example: Example) -> Equality:
        difference = sympy.expand(before.lhs - before.rhs)
        if not self.symbols:
            return equation(difference, sympy.Integer(0))
        left = sympy.Add(*(term for term in sympy.Add.make_args(difference) if term.has(*self.symbols)))
        return equation(left, left - difference)

    def words(self, show: Print) -> str:
        if not self.symbols:
            return "Bring everything to one side"
        named = " and ".join(f"${show(symbol)}$" for symbol in self.symbols)
        return f"Gather what has {named} on the left, the rest on the right"


@dataclass(frozen=True)
class Factor(Operation):
    """Write each side as a product, as far as it goes.

    >>> a, b = sympy.symbols("a b")
    >>> Factor().carry_out(equation(a**2 - a * b, sympy.Integer(0)), {})
    Eq(a*(a - b), 0)
    """

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(*(_sign_taken_in(sympy.factor(side)) for side in (before.lhs, before.rhs)))

    def words(self, show: Print) -> str:
        return "Take out the common factors"


@dataclass(frozen=True)
class MultiplyAboveAndBelow(Operation):
    """Multiply the right side above and below by the same, which is not zero: its value stays.

    >>> a, b = sympy.symbols("a b", positive=True)
    >>> MultiplyAboveAndBelow(a + b).carry_out(equation(sympy.Symbol("c"), a - b), {})
    Eq(c, (a**2 - b**2)/(a + b))
    """

    factor: sympy.Expr

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(before.lhs, sympy.expand(before.rhs * self.factor) / self.factor)

    def words(self, show: Print) -> str:
        return f"Multiply the right side above and below by ${show(self.factor)}$"


@dataclass(frozen=True)
class TakeRoot(Operation):
    """Take the square root of both sides; `keep` says why neither side can be less than nothing.

    >>> a, b = sympy.symbols("a b", positive=True)
    >>> TakeRoot("both are lengths").carry_out(equation(a**2, b), {})
    Eq(a, sqrt(b))
    """

    keep: str

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(sympy.sqrt(before.lhs), sympy.sqrt(before.rhs))

    def words(self, show: Print) -> str:
        return f"Take the square root of both sides: {self.keep}"


@dataclass(frozen=True)
class TakeLimit(Operation):
    """Let a quantity shrink until it is as near to a value as you like, on both sides.

    >>> h = sympy.Symbol("h")
    >>> TakeLimit(h, sympy.Integer(0)).carry_out(equation((h**2 + 2 * h) / h, sympy.Symbol("k")), {})
    Eq(2, k)
    """

    symbol: sympy.Symbol
    value: sympy.Expr
    widens = True

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return equation(
            sympy.limit(before.lhs, self.symbol, self.value), sympy.limit(before.rhs, self.symbol, self.value)
        )

    def words(self, show: Print) -> str:
        return f"Let ${show(self.symbol)}$ shrink to ${show(self.value)}$"


@dataclass(frozen=True)
class Isolate(Operation):
    """Solve for one expression; where sympy finds several answers, keep the one that is true of wood.

    `keep` is the reason for the kept branch and must be given when there is a choice; which answer it is
    follows from the derivation's own example. A root is taken like any other answer.

    >>> a, b = sympy.symbols("a b", positive=True)
    >>> Isolate(a).carry_out(equation(a * b, sympy.Integer(6)), {a: 2, b: 3})
    Eq(a, 6/b)
    """

    wanted: sympy.Expr
    keep: str = ""

    def carry_out(self, before: Equality, example: Example) -> Equality:
        found = solutions_for(before, self.wanted)
        if len(found) > 1 and not self.keep:
            raise ImpossibleShape(
                f"{self.wanted} has {len(found)} answers ({', '.join(map(str, found))}). "
                "Say which one is kept and why: Isolate(..., keep='the reason')."
            )
        return equation(self.wanted, kept_answer(self.wanted, found, example))

    def words(self, show: Print) -> str:
        told = f"Solve for ${show(self.wanted)}$"
        return f"{told}, keeping one answer of several: {self.keep}" if self.keep else told


def _sign_taken_in(product: sympy.Expr) -> sympy.Expr:
    """Write -(b - a) c as (a - b) c, and -c / (b - a) as c / (a - b): a minus in front is easily overlooked."""
    sign, rest = product.as_coeff_Mul()
    differences = [
        factor
        for factor in sympy.Mul.make_args(rest)
        if _written_once(factor).is_Add
        and any(term.could_extract_minus_sign() for term in _written_once(factor).args)
    ]
    if sign >= 0 or not differences:
        return product
    turned = _written_once(differences[0])
    other_way = -turned if differences[0].is_Add else 1 / -turned
    return -sign * sympy.Mul(*(other_way if f is differences[0] else f for f in sympy.Mul.make_args(rest)))


def _written_once(factor: sympy.Expr) -> sympy.Expr:
    """Return a factor as it stands above the line, or what it is one over."""
    return 1 / factor if factor.is_Pow and factor.exp == -1 else factor


def solutions_for(given: Equality, wanted: sympy.Expr) -> tuple[sympy.Expr, ...]:
    """Return every answer that an equation has for an expression in it, always in the same order.

    Parameters
    ----------
    given : sympy.Eq
        The equation.
    wanted : sympy.Expr
        The symbol (or expression, such as a square) to solve for.

    Returns
    -------
    tuple of sympy.Expr
        At least one answer, sorted by sympy's own order.

    Raises
    ------
    ImpossibleShape
        If the equation has no answer for it.

    >>> a = sympy.Symbol("a", real=True)
    >>> solutions_for(equation(a**2, sympy.Integer(9)), a)
    (-3, 3)
    """
    stand_in = sympy.Dummy("wanted", **wanted.assumptions0) if not wanted.is_Symbol else wanted
    shown = given if wanted.is_Symbol else given.subs(wanted, stand_in)
    try:
        found = sympy.solve(shown.lhs - shown.rhs, stand_in)
    except NotImplementedError:
        found = []
    if not found:
        raise ImpossibleShape(
            f"{given} cannot be solved for {wanted}. Solve it for one of its own quantities: "
            f"{', '.join(sorted(map(str, given.free_symbols)))}."
        )
    return tuple(sorted(map(sympy.sympify, found), key=sympy.default_sort_key))


def kept_answer(wanted: sympy.Expr, found: tuple[sympy.Expr, ...], example: Example) -> sympy.Expr:
    """Return the one answer that agrees with a set of values known to be true.

    Parameters
    ----------
    wanted : sympy.Expr
        What was solved for.
    found : tuple of sympy.Expr
        The answers.
    example : mapping of sympy.Symbol to number
        One set of values that satisfies the equation, the wanted one among them.

    Returns
    -------
    sympy.Expr
        The answer that gives the example's own value.

    Raises
    ------
    ImpossibleShape
        If none agrees, or two do.

    >>> a = sympy.Symbol("a", real=True)
    >>> kept_answer(a, (sympy.Integer(-3), sympy.Integer(3)), {a: sympy.Integer(3)})
    3
    """
    if len(found) == 1:
        return found[0]
    value = wanted.subs(example)
    agreeing = [answer for answer in found if abs(complex(sympy.N(answer.subs(example) - value))) < 1e-9]
    if len(agreeing) != 1:
        raise ImpossibleShape(
            f"{len(agreeing)} of the answers for {wanted} agree with the example {dict(example)}. "
            "Choose an example that only one branch satisfies."
        )
    return agreeing[0]
