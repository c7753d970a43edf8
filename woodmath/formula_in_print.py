"""How a formula is set: the derivation's letters, sums in the order of reading, numbers put in where they stood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import sympy
from sympy.core.relational import Equality
from sympy.printing.latex import LatexPrinter

from woodmath.quantities import Quantity


@dataclass(frozen=True)
class Formula:
    """A derivation's result solved for one quantity, with what its letters mean; shows itself on a page.

    Parameters
    ----------
    solved : sympy.Eq
        With the quantity alone on its left.
    quantities : tuple of Quantity
        Those whose letters are to be told, in the order of reading; one that does not occur is left out.
    kept : str
        Why one of several answers is kept, without a full stop; "" where there is one.

    >>> thickness = Quantity(sympy.Symbol("thickness", positive=True), "t", "of the board")
    >>> Formula(sympy.Eq(thickness.symbol, 2, evaluate=False), (thickness,))._repr_markdown_().splitlines()[0]
    '$$t = 2$$'
    """

    solved: Equality
    quantities: tuple[Quantity, ...]
    kept: str = ""

    def _repr_markdown_(self) -> str:
        letters = {quantity.symbol: quantity.letter for quantity in self.quantities}
        meanings = "\n".join(
            f"- ${quantity.letter}$: {quantity.meaning}"
            for quantity in self.quantities
            if self.solved.has(quantity.symbol)
        )
        kept = f"\n\nOf several answers this one is kept: {self.kept}." if self.kept else ""
        return f"$${in_print(self.solved, letters)}$$\n\n{meanings}{kept}"


@dataclass(frozen=True)
class Lesson:
    """A derivation with its result in sight and the way there folded away; shows itself on a page.

    Parameters
    ----------
    title : str
        What is derived.
    result : str
        The last equation, in LaTeX.
    steps : str
        The whole derivation, in Markdown.

    >>> Lesson("One is two halves", "a = 2 h", "...")._repr_markdown_().splitlines()[0]
    '**One is two halves**'
    """

    title: str
    result: str
    steps: str

    def _repr_markdown_(self) -> str:
        return (
            f"**{self.title}**\n\n$${self.result}$$\n\n"
            '<details><summary style="cursor: pointer">How it comes about, step by step</summary>\n\n'
            f"{self.steps}\n\n</details>"
        )


def in_print(expression: sympy.Basic, letters: Mapping[sympy.Symbol, str]) -> str:
    """Return an expression in LaTeX, each quantity by its letter.

    Parameters
    ----------
    expression : sympy expression or equation
        What is to be set.
    letters : mapping of sympy.Symbol to str
        The letters, in the order in which the quantities are to be read.

    Returns
    -------
    str
        LaTeX. Factors stand in the order of the alphabet, terms in that of reading, what is added first.

    >>> x, y = sympy.symbols("across up")
    >>> in_print(2 * y - x, {x: "x", y: "y"})
    '2 y - x'
    """
    return _set(expression, letters, letters, None)


def numbers_in_print(
    expression: sympy.Basic, letters: Mapping[sympy.Symbol, str], written: Mapping[sympy.Symbol, str]
) -> str:
    r"""Return an expression in LaTeX with written numbers where the letters of some quantities would stand.

    Parameters
    ----------
    expression, letters
        As for `in_print`.
    written : mapping of sympy.Symbol to str
        The number of each quantity as a maker writes it, such as "1 3/4".

    >>> x = sympy.Symbol("across")
    >>> numbers_in_print(2 * x, {x: "x"}, {x: "1 3/4"})
    '2\\times{1\\tfrac{3}{4}}'
    """
    shown = {**letters, **{symbol: f"{{{_mixed(number)}}}" for symbol, number in written.items()}}
    return _set(expression, letters, shown, r"\times")


def _set(
    expression: sympy.Basic,
    letters: Mapping[sympy.Symbol, str],
    shown: Mapping[sympy.Symbol, str],
    mul_symbol: str | None,
) -> str:
    # sympy orders factors by the symbols' names, so each symbol is printed under its letter's name.
    stand_ins = {symbol: sympy.Symbol(letter, **symbol.assumptions0) for symbol, letter in letters.items()}
    names = {stand_in: shown[symbol] for symbol, stand_in in stand_ins.items()}
    printer = _ReadingOrder(names, mul_symbol)
    if isinstance(expression, Equality):
        sides = (_set(side, letters, shown, mul_symbol) for side in expression.args)
        return " = ".join(sides)
    return str(printer.doprint(expression.xreplace(stand_ins)))


_LAST_IN_ORDER = "\U0010ffff"
"""A name that comes after every letter: a root stands behind the other factors."""


def _mixed(written: str) -> str:
    """Set `1 3/4` as a LaTeX fraction; anything else stays as it is."""
    whole, _, fraction = written.rpartition(" ")
    top, slash, bottom = fraction.partition("/")
    if slash and top.isdigit() and bottom.isdigit():
        return rf"{whole}\tfrac{{{top}}}{{{bottom}}}"
    return written


class _ReadingOrder(LatexPrinter):  # type: ignore[misc]  # sympy carries no types
    """Prints sums in the order in which the derivation introduces its quantities, what is added first."""

    def __init__(self, names: Mapping[sympy.Symbol, str], mul_symbol: str | None) -> None:
        settings: dict[str, object] = {
            "symbol_names": dict(names),
            "mul_symbol": mul_symbol,
            "inv_trig_style": "full",
        }
        super().__init__(settings)
        self._rank = {symbol: place for place, symbol in enumerate(names)}
        self._fractions = {symbol for symbol, name in names.items() if r"\tfrac" in name}

    def _as_ordered_terms(self, expr: sympy.Basic, order: object = None) -> list[sympy.Basic]:
        def key(term: sympy.Basic) -> tuple[bool, int, object]:
            places = [self._rank.get(symbol, 99) for symbol in term.free_symbols]
            return (
                bool(getattr(term, "could_extract_minus_sign", bool)()),
                min(places, default=99),
                sympy.default_sort_key(term),
            )

        return sorted(sympy.Add.make_args(expr), key=key)

    def _print_Mul(self, expr: sympy.Mul) -> str:
        """Set the roots of a product as one root: sympy parts it, and the trade's books do not."""
        roots = [factor for factor in expr.args if factor.is_Pow and abs(factor.exp) == sympy.S.Half]
        if len(roots) < 2:
            return str(super()._print_Mul(expr))
        under = sympy.Mul(*(factor.base ** (2 * factor.exp) for factor in roots))
        root = sympy.Symbol(_LAST_IN_ORDER, positive=True)
        self._settings["symbol_names"][root] = rf"\sqrt{{{self._print(under)}}}"
        rest = sympy.Mul(*(factor for factor in expr.args if factor not in roots))
        return str(self._print(rest * root))

    def _print_Pow(self, expr: sympy.Pow) -> str:
        if expr.base in self._fractions and expr.exp.is_Integer and expr.exp.is_positive:
            return rf"\left({self._print(expr.base)}\right)^{{{expr.exp}}}"
        return str(super()._print_Pow(expr))
