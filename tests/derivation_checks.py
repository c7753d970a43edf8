"""What every derivation has to stand up to: each step follows from the one before, at many random points.

A point is one value for every symbol. It is found by solving numerically, apart from sympy's algebra, so that
a step is not judged by the machinery that carried it out.
"""

from __future__ import annotations

import functools
import math
import random
from collections.abc import Callable, Iterator, Sequence, Set
from dataclasses import dataclass, field

import mpmath
import sympy
from sympy.core.relational import Equality

from woodmath.derivation import Derivation, Step
from woodmath.errors import ImpossibleShape
from woodmath.operations import Isolate, Substitute, TakeLimit, solutions_for

Point = dict[sympy.Symbol, mpmath.mpf]
"""A value for each symbol: to thirty digits, or on the way there a float."""
Formula = Callable[..., mpmath.mpf]

POINTS = 12
ATTEMPTS = 600
DIGITS = 30
TOLERANCE = 1e-9
BRANCH_WORDS = ("stranger", "keep", "kept")


def assert_every_step_follows(derivation: Derivation, not_asked: frozenset[str] = frozenset()) -> None:
    """Fail unless every step of a derivation follows, and everything that has to be said is said.

    Checked are: the words (a reason for each step, a meaning for each symbol, the branch that is kept), the
    example against every equation, each step at random points that satisfy the equation before, the other way
    round as well where the operation does not widen, and the result solved for each of its quantities
    but those that nobody asks it for.
    """
    _assert_everything_is_said(derivation)
    with mpmath.workdps(DIGITS):
        _assert_the_example_is_true(derivation)
        for number in range(1, len(derivation.steps)):
            _assert_step_follows(derivation, number)
    _assert_answers_agree_with_the_example(derivation, not_asked)


def _assert_everything_is_said(derivation: Derivation) -> None:
    named = {quantity.symbol for quantity in derivation.quantities}
    assert all(quantity.meaning and quantity.unit and quantity.letter for quantity in derivation.quantities)
    letters = [quantity.letter for quantity in derivation.quantities]
    assert len(set(letters)) == len(letters), f"one letter stands for two things: {letters}"
    assert derivation.quantity(derivation.subject).symbol in derivation.result.free_symbols
    for number, step in enumerate(derivation.steps):
        told = f"step {number} of '{derivation.title}'"
        assert step.equation.free_symbols <= named, f"{told} speaks of {step.equation.free_symbols - named}"
        assert step.reason.strip(), f"{told} has no reason"
        assert not step.reason.endswith("."), f"{told}: the display adds the full stop"
        if step.operation is not None and step.operation.widens and not isinstance(step.operation, TakeLimit):
            assert any(word in step.reason for word in BRANCH_WORDS), (
                f"{told} may let a stranger in, and does not say which branch is kept: {step.reason}"
            )


def _assert_the_example_is_true(derivation: Derivation) -> None:
    example = {symbol: mpmath.mpf(sympy.N(value, DIGITS)) for symbol, value in derivation.example}
    shrinking = {
        step.operation.symbol: mpmath.mpf(sympy.N(step.operation.value, DIGITS))
        for step in derivation.steps
        if isinstance(step.operation, TakeLimit)
    }
    missing = [quantity.name for quantity in derivation.quantities if quantity.symbol not in example]
    assert not missing, f"the example of '{derivation.title}' has no value for {missing}"
    assert all(_may_be(symbol, value) or symbol in shrinking for symbol, value in example.items()), example
    assert all(_holds(limit.condition, example) for limit in derivation.limits), "the example breaks a limit"
    for number, step in enumerate(derivation.steps):
        told = f"the example of '{derivation.title}' does not satisfy step {number}: {step.equation}"
        nearly = {symbol: value + mpmath.mpf("1e-12") for symbol, value in shrinking.items()}
        assert _is_true(step.equation, example) or _is_true(step.equation, example | nearly), told
        if isinstance(step.operation, Substitute):
            definition = sympy.Eq(step.operation.old, step.operation.new, evaluate=False)
            assert _is_true(definition, example), f"{told} (what is put in is not worth what it replaces)"


def _assert_step_follows(derivation: Derivation, number: int) -> None:
    before, step = derivation.steps[number - 1].equation, derivation.steps[number]
    told = f"step {number} of '{derivation.title}' ({type(step.operation).__name__})"
    assert step.equation != before, f"{told} changes nothing"
    dice = random.Random(f"{derivation.title}, step {number}")
    if isinstance(step.operation, TakeLimit):
        _assert_limit_is_approached(derivation, before, step, dice, told)
        return
    allowed: Sequence[Equality] = [step.equation]
    if isinstance(step.operation, Isolate):
        wanted = step.operation.wanted
        allowed = [sympy.Eq(wanted, answer, evaluate=False) for answer in solutions_for(before, wanted)]
        assert len(allowed) == 1 or step.operation.keep.strip(), f"{told} keeps a branch without a reason"
    for point in _points(derivation, before, step, dice, told):
        assert any(_is_true(equation, point) for equation in allowed), (
            f"{told} does not follow: {before} holds and {step.equation} does not at {_told(point)}"
        )
    if step.operation is not None and not step.operation.widens:
        for point in _points(derivation, step.equation, step, dice, told, before.free_symbols):
            assert _is_true(before, point), (
                f"{told} lets a stranger in: {step.equation} holds and {before} does not at {_told(point)}"
            )


def _assert_limit_is_approached(
    derivation: Derivation, before: Equality, step: Step, dice: random.Random, told: str
) -> None:
    operation = step.operation
    assert isinstance(operation, TakeLimit)
    start = _Start(derivation, sorted(before.free_symbols | step.equation.free_symbols, key=str))
    for _ in range(POINTS):
        point = start.throw(dice)
        goal = mpmath.mpf(sympy.N(operation.value, DIGITS))
        for side_before, side_after in zip(before.args, step.equation.args, strict=True):
            left = _worth(side_after, point)
            gaps = [
                abs(_worth(side_before, point | {operation.symbol: goal + near}) - left)
                for near in (mpmath.mpf("1e-6"), mpmath.mpf("1e-9"))
            ]
            size = 1 + abs(left)
            assert gaps[1] <= 1e-5 * size and gaps[1] <= gaps[0] + 1e-12 * size, (
                f"{told}: {side_before} does not shrink to {side_after} at {_told(point)}"
            )


def _assert_answers_agree_with_the_example(derivation: Derivation, not_asked: frozenset[str]) -> None:
    """Whatever the result can be solved for comes out as the example says, and a choice is explained."""
    example = {symbol.name: float(sympy.N(value)) for symbol, value in derivation.example}
    measured = {
        quantity.name: example[quantity.name] * (180 / math.pi if quantity.unit == "degrees" else 1.0)
        for quantity in derivation.quantities
    }
    for quantity in derivation.quantities:
        if quantity.symbol not in derivation.result.free_symbols or quantity.name in not_asked:
            continue
        try:
            needed = derivation.solved_for(quantity.name).rhs.free_symbols
        except ImpossibleShape as refusal:
            assert "cannot be solved" in str(refusal), f"'{derivation.title}': {refusal}"
            continue
        answer = derivation.function(quantity.name)(
            **{str(symbol): measured[str(symbol)] for symbol in needed}
        )
        assert math.isclose(answer, measured[quantity.name], rel_tol=TOLERANCE, abs_tol=TOLERANCE)


@dataclass
class _Start:
    """Throws a value for every symbol: near the example, or far and wide."""

    derivation: Derivation
    symbols: list[sympy.Symbol]
    example: dict[sympy.Symbol, float] = field(init=False)

    def __post_init__(self) -> None:
        self.example = {symbol: float(sympy.N(value)) for symbol, value in self.derivation.example}

    def throw(self, dice: random.Random) -> Point:
        wide = dice.random() < 0.5
        return {symbol: mpmath.mpf(self._value(symbol, dice, wide)) for symbol in self.symbols}

    def _value(self, symbol: sympy.Symbol, dice: random.Random, wide: bool) -> float:
        middle = self.example.get(symbol, 1.0) or dice.uniform(0.1, 1.0)
        if self.derivation.quantity(symbol).unit == "degrees":
            size = dice.uniform(0.05, 1.5) if wide else abs(middle) * dice.uniform(0.7, 1.3)
        else:
            size = abs(middle) * math.exp(dice.uniform(-2, 2) if wide else dice.uniform(-0.3, 0.3))
        if symbol.is_nonnegative or not wide:
            return math.copysign(size, middle)
        return size * dice.choice((-1, 1))


def _points(
    derivation: Derivation,
    given: Equality,
    step: Step,
    dice: random.Random,
    told: str,
    also: Set[sympy.Symbol] = frozenset(),
) -> Iterator[Point]:
    """Find points where an equation holds, and what a substitution says as well; `also` have a value too."""
    operation = step.operation
    put_in = operation if isinstance(operation, Substitute) else None
    speaks_of = set(given.free_symbols) | set(step.equation.free_symbols) | also
    if put_in is not None:
        speaks_of |= set(put_in.old.free_symbols) | set(put_in.new.free_symbols)
    start = _Start(derivation, sorted(speaks_of, key=str))
    found = 0
    for _ in range(ATTEMPTS):
        point = _moved_on(start.throw(dice), given, put_in, dice)
        if point is not None and _can_be(derivation, point):
            found += 1
            yield point
            if found == POINTS:
                return
    raise AssertionError(f"{told}: only {found} points were found where {given} holds")


def _moved_on(point: Point, given: Equality, put_in: Substitute | None, dice: random.Random) -> Point | None:
    """Move as few values as needed until every equation holds; None where that does not come off."""
    equations = [given]
    named = put_in is not None and put_in.old.is_Symbol and not put_in.new.has(put_in.old)
    fixed = {put_in.old} if put_in is not None and named else set()
    if put_in is not None and not named:
        equations.append(sympy.Eq(put_in.old, put_in.new, evaluate=False))
    moved: list[sympy.Symbol] = []
    for equation in equations:
        free = sorted(equation.free_symbols - fixed - set(moved), key=str)
        if not free:
            return None
        moved.append(dice.choice(free))

    def follows(values: Point) -> Point:
        return values | {name: _worth(put_in.new, values) for name in fixed if put_in is not None}

    def gaps(values: Point) -> list[mpmath.mpf]:
        tried = follows(values)
        return [_worth(equation.lhs, tried) - _worth(equation.rhs, tried) for equation in equations]

    try:
        # Plain numbers lead most of the way in a fifth of the time.
        nearly = _by_newton(
            gaps, {symbol: float(value) for symbol, value in point.items()}, moved, 1e-7, 1e-9
        )
        exact = {symbol: mpmath.mpf(value) for symbol, value in nearly.items()}
        ended = follows(_by_newton(gaps, exact, moved, 1e-13, 1e-25))
    except (_Wandered, ArithmeticError, ValueError, TypeError):
        return None
    return ended if all(_is_true(equation, ended) for equation in equations) else None


class _Wandered(Exception):
    """Newton's method does not come to an end."""


def _by_newton(
    gaps: Callable[[Point], list[mpmath.mpf]],
    point: Point,
    moved: list[sympy.Symbol],
    nudge: float,
    near: float,
) -> Point:
    """Newton's method for one symbol or two, with slopes by small differences, as far as `near`."""
    for _ in range(40):
        here = gaps(point)
        slopes = []
        for symbol in moved:
            step = (1 + abs(point[symbol])) * nudge
            beside = gaps(point | {symbol: point[symbol] + step})
            slopes.append([(other - gap) / step for gap, other in zip(here, beside, strict=True)])
        strides = _solved(slopes, here)
        if not all(mpmath.isfinite(stride) and mpmath.im(stride) == 0 for stride in strides):
            break
        point = point | {
            symbol: point[symbol] - stride for symbol, stride in zip(moved, strides, strict=True)
        }
        if all(
            abs(stride) <= near * (1 + abs(point[symbol]))
            for symbol, stride in zip(moved, strides, strict=True)
        ):
            return point
    raise _Wandered


def _solved(slopes: list[list[mpmath.mpf]], gaps: list[mpmath.mpf]) -> list[mpmath.mpf]:
    """Solve one linear equation or two by Cramer's rule; a list of slopes belongs to each unknown."""
    if len(gaps) == 1:
        return [gaps[0] / slopes[0][0]]
    (one, other), (first, second) = slopes, gaps
    whole = one[0] * other[1] - other[0] * one[1]
    return [(first * other[1] - other[0] * second) / whole, (one[0] * second - first * one[1]) / whole]


def _can_be(derivation: Derivation, point: Point) -> bool:
    """Whether a point keeps to what the symbols stand for and to the derivation's limits."""
    return all(
        _may_be(symbol, value)
        and (value == 0 or 1e-5 < abs(value) < 1e5)
        and (derivation.quantity(symbol).unit != "degrees" or abs(value) < mpmath.pi / 2)
        for symbol, value in point.items()
    ) and all(
        _holds(limit.condition, point)
        for limit in derivation.limits
        if limit.condition.free_symbols <= point.keys()
    )


def _may_be(symbol: sympy.Symbol, value: mpmath.mpf) -> bool:
    if symbol.is_positive:
        return bool(value > 0)
    return not symbol.is_nonnegative or bool(value >= 0)


def _holds(condition: sympy.Basic, point: Point) -> bool:
    return bool(_worth(condition, point))


def _is_true(equation: Equality, point: Point) -> bool:
    try:
        left, right = _worth(equation.lhs, point), _worth(equation.rhs, point)
    except (ZeroDivisionError, ValueError):
        return False
    if mpmath.im(left) != 0 or mpmath.im(right) != 0:
        return False
    return bool(abs(left - right) <= TOLERANCE * (abs(left) + abs(right)) + mpmath.mpf("1e-18"))


def _worth(expression: sympy.Basic, point: Point) -> mpmath.mpf:
    symbols, in_digits, in_floats = _compiled(expression)
    values = [point[symbol] for symbol in symbols]
    return (in_floats if values and isinstance(values[0], float) else in_digits)(*values)


@functools.cache
def _compiled(expression: sympy.Basic) -> tuple[list[sympy.Symbol], Formula, Formula]:
    symbols = sorted(expression.free_symbols, key=str)
    in_digits, in_floats = (sympy.lambdify(symbols, expression, modules=kind) for kind in ("mpmath", "math"))
    return symbols, in_digits, in_floats


def _told(point: Point) -> str:
    return ", ".join(f"{symbol} = {mpmath.nstr(value, 6)}" for symbol, value in point.items())
