"""A derivation is carried out, told, solved, compiled and checked; nothing that follows is typed in."""

import math
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass, replace

import pytest
import sympy
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st
from sympy.core.relational import Equality

from woodmath.derivation import Derivation, Limit, Quantity, Step
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.operations import (
    Add,
    Divide,
    Example,
    Expand,
    Factor,
    Gather,
    Isolate,
    Multiply,
    MultiplyAboveAndBelow,
    Operation,
    Print,
    Square,
    Substitute,
    TakeLimit,
    TakeRoot,
    equation,
    kept_answer,
    solutions_for,
)
from woodmath.sensitivity import Contribution, Sensitivity

a, b, c = sympy.symbols("a b c", positive=True)
x, y = sympy.symbols("x y", real=True)
run, rise, slope_length, lean = sympy.symbols("run rise slope_length lean", positive=True)
two, nine = sympy.Integer(2), sympy.Integer(9)


def sloping_edge() -> Derivation:
    """The edge of a board that leans: Pythagoras, with the root taken at the end."""
    return Derivation.start(
        "The sloping edge of a leaning board",
        (
            Quantity(rise, "h", "height that the board stands up"),
            Quantity(run, "r", "how far it leans out"),
            Quantity(slope_length, "s", "length along the edge"),
        ),
        equation(slope_length**2, run**2 + rise**2),
        "height, lean and edge close a right triangle; so says Pythagoras",
        subject="slope_length",
        example={run: 3, rise: 4, slope_length: 5},
        limits=(Limit(run < 2 * rise, "The board lies down: lean it out by less than twice its height"),),
        keeps={"run": "it leans outwards", "rise": "it stands upwards"},
    ).then(Isolate(slope_length, keep="an edge has a length"), "we want the edge")


def lean_of_a_board() -> Derivation:
    return Derivation.start(
        "The lean of a board",
        (
            Quantity(lean, r"\alpha", "lean from upright", "degrees"),
            Quantity(run, "r", "how far it leans out"),
            Quantity(rise, "h", "height that it stands up"),
        ),
        equation(sympy.tan(lean), run / rise),
        "the lean's tangent is how far out over how high",
        subject="lean",
        example={lean: sympy.pi / 4, run: 1, rise: 1},
    ).then(Isolate(lean), "we want the angle")


# --- each operation is carried out, and told in words ---

OPERATIONS: list[tuple[Operation, Equality, Equality, str]] = [
    (Substitute(a, b + c), equation(a**2, two), equation((b + c) ** 2, two), "Write $b + c$ for $a$"),
    (Substitute(a**2, b), equation(a**4 + a**2, c), equation(b**2 + b, c), "Write $b$ for $a^{2}$"),
    (Add(b), equation(a - b, c), equation(a, b + c), "Add $b$ to both sides"),
    (Add(-b), equation(a + b, c), equation(a, c - b), "Take $b$ from both sides"),
    (Divide(two), equation(2 * a + 4 * b, c), equation(a + 2 * b, c / 2), "Divide both sides by $2$"),
    (Multiply(b), equation(a / b, c + 1), equation(a, b * c + b), "Multiply both sides by $b$"),
    (Square(), equation(sympy.sqrt(a), b + 1), equation(a, (b + 1) ** 2), "Square both sides"),
    (
        Expand(),
        equation((a - b) ** 2, c),
        equation(a**2 - 2 * a * b + b**2, c),
        "Multiply out the brackets",
    ),
    (
        Gather((a,)),
        equation(a + b, 2 * b - a),
        equation(2 * a, b),
        "Gather what has $a$ on the left, the rest on the right",
    ),
    (
        Gather((a, b)),
        equation(a - c, two - b),
        equation(a + b, c + 2),
        "Gather what has $a$ and $b$ on the left, the rest on the right",
    ),
    (Gather(), equation(a, b), equation(a - b, sympy.Integer(0)), "Bring everything to one side"),
    (
        Factor(),
        equation(a**2, b**2 - c**2),
        equation(a**2, (b - c) * (b + c)),
        "Take out the common factors",
    ),
    (
        MultiplyAboveAndBelow(b + c),
        equation(a, b - c),
        equation(a, (b**2 - c**2) / (b + c)),
        "Multiply the right side above and below by $b + c$",
    ),
    (
        TakeRoot("both are lengths"),
        equation(a**2, b**2 + c),
        equation(a, sympy.sqrt(b**2 + c)),
        "Take the square root of both sides: both are lengths",
    ),
    (
        TakeLimit(a, sympy.Integer(0)),
        equation(sympy.sin(a) / a, b + a),
        equation(sympy.Integer(1), b),
        "Let $a$ shrink to $0$",
    ),
    (Isolate(a), equation(a * b, c), equation(a, c / b), "Solve for $a$"),
    (
        Isolate(x**2, keep="there is one"),
        equation(x**2 + b, c),
        equation(x**2, c - b),
        "Solve for $x^{2}$, keeping one answer of several: there is one",
    ),
]


@pytest.mark.parametrize(("operation", "before", "after", "words"), OPERATIONS)
def test_an_operation_does_what_it_says(
    operation: Operation, before: Equality, after: Equality, words: str
) -> None:
    assert operation.carry_out(before, {}) == after
    assert operation.words(sympy.latex) == words


def test_every_operation_there_is_stands_in_the_table() -> None:
    ours = {kind for kind in Operation.__subclasses__() if kind.__module__ == "woodmath.operations"}
    assert {type(operation) for operation, *_ in OPERATIONS} == ours


def test_only_squaring_and_shrinking_widen() -> None:
    assert {type(operation) for operation, *_ in OPERATIONS if operation.widens} == {Square, TakeLimit}


def test_an_equation_stays_written_even_when_it_is_plainly_true() -> None:
    assert equation(a, a) is not sympy.true
    assert equation(a, a).lhs == equation(a, a).rhs == a


# --- several answers: one is kept, and the reason is told ---


def test_two_answers_and_no_reason_are_refused() -> None:
    with pytest.raises(ImpossibleShape, match=r"x has 2 answers \(-3, 3\)\. Say which one is kept and why"):
        Isolate(x).carry_out(equation(x**2, nine), {x: sympy.Integer(3)})


@pytest.mark.parametrize("true_one", [-3, 3])
def test_of_two_answers_the_one_that_fits_the_example_is_kept(true_one: int) -> None:
    kept = Isolate(x, keep="the example's side").carry_out(equation(x**2, nine), {x: sympy.Integer(true_one)})
    assert kept.rhs == true_one


def test_an_example_that_fits_no_answer_or_both_is_refused() -> None:
    found = solutions_for(equation(x**2, y), x)
    with pytest.raises(ImpossibleShape, match="0 of the answers for x agree"):
        kept_answer(x, found, {x: sympy.Integer(3), y: sympy.Integer(4)})
    with pytest.raises(ImpossibleShape, match="2 of the answers for x agree"):
        kept_answer(x, found, {x: sympy.Integer(0), y: sympy.Integer(0)})


@pytest.mark.parametrize(("given_one", "wanted"), [(equation(b, c), a), (equation(x, sympy.cos(x)), x)])
def test_what_cannot_be_solved_is_refused_with_what_can_be_asked(
    given_one: Equality, wanted: sympy.Symbol
) -> None:
    with pytest.raises(ImpossibleShape, match=r"cannot be solved for .* one of its own quantities"):
        solutions_for(given_one, wanted)


def test_answers_come_in_one_order_whichever_way_the_equation_is_written() -> None:
    cubic = (x - 1) * (x + 2) * (x - 3)
    assert solutions_for(equation(sympy.expand(cubic), sympy.Integer(0)), x) == (-2, 1, 3)
    assert solutions_for(equation(sympy.Integer(0), sympy.expand(-cubic)), x) == (-2, 1, 3)


def test_the_result_is_solved_for_any_quantity_with_the_reason_at_hand() -> None:
    assert sloping_edge().solved_for("run").rhs == sympy.sqrt(slope_length**2 - rise**2)
    assert sloping_edge().why_kept("run") == "it leans outwards"
    assert sloping_edge().why_kept("slope_length") == ""


def place_on_a_circle() -> Derivation:
    return Derivation.start(
        "A place on a circle",
        (Quantity(x, "x", "across"), Quantity(y, "y", "up")),
        equation(x**2 + y**2, sympy.Integer(25)),
        "it is given",
        subject="y",
        example={x: 3, y: -4},
        keeps={"y": "we draw the lower half", "x": "we draw the right half"},
    )


def test_a_quantity_with_two_answers_and_no_reason_is_not_solved_for() -> None:
    silent_about_x = replace(place_on_a_circle(), keeps=(("y", "we draw the lower half"),))
    assert silent_about_x.function("y")(x=3) == -4
    with pytest.raises(ImpossibleShape, match="x has 2 answers here") as refused:
        silent_about_x.solved_for("x")
    assert "Say in the derivation's keeps which one is true of wood, and why." in str(refused.value)


# --- steps are carried out on what was there before ---


def test_a_step_leaves_the_derivation_before_it_as_it_was() -> None:
    before = sloping_edge()
    after = before.then(Square(), "back again; a length squared keeps its side")
    assert len(before.steps) == 2
    assert after.steps[:2] == before.steps
    assert after.result == equation(slope_length**2, run**2 + rise**2)


def test_a_quantity_that_is_not_there_is_answered_with_those_that_are() -> None:
    with pytest.raises(UnknownName, match=r"no 'width' in 'The sloping edge.*rise, run, slope_length"):
        sloping_edge().solved_for("width")


def test_a_quantity_that_dropped_out_is_answered_with_those_that_are_left() -> None:
    equal = lean_of_a_board().then(Substitute(run, rise), "as far out as it is high")
    with pytest.raises(UnknownName, match=r"rise has dropped out on the way.*speaks of lean\."):
        equal.solved_for("rise")


# --- the compiled formula ---

lengths = st.floats(0.01, 1000)


@settings(deadline=None)
@given(lengths, lengths)
def test_the_compiled_formula_runs_both_ways(height: float, share: float) -> None:
    out = height * share / 1001
    edge = sloping_edge_once.function("slope_length")(run=out, rise=height)
    assert edge == pytest.approx(math.hypot(out, height))
    assert sloping_edge_once.function("rise")(run=out, slope_length=edge) == pytest.approx(height)


@settings(deadline=None)
@given(lengths, lengths)
def test_degrees_go_in_and_come_out(out: float, height: float) -> None:
    degrees = lean_once.function("lean")(run=out, rise=height)
    assert degrees == pytest.approx(math.degrees(math.atan2(out, height)))
    assert lean_once.function("run")(lean=degrees, rise=height) == pytest.approx(out)


sloping_edge_once, lean_once = sloping_edge(), lean_of_a_board()


def test_a_formula_is_compiled_once() -> None:
    assert sloping_edge_once.function("run") is sloping_edge_once.function(run)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"run": 9, "rise": 4}, r"The board lies down: .* \(given: rise 4, run 9\)\."),
        ({"run": 0, "rise": 4}, r"run is 0, and it must be more than 0 \(how far it leans out\)"),
        ({"run": -1, "rise": 4}, "run is -1, and it must be more than 0"),
        ({"run": math.nan, "rise": 4}, "run is nan; give a plain number"),
        ({"run": 1, "rise": math.inf}, "rise is inf; give a plain number"),
        ({"run": 1e200, "rise": 1e200}, r"No slope length goes with rise 1e\+200, run 1e\+200"),
    ],
)
def test_sizes_that_cannot_be_are_refused_in_the_words_of_the_trade(
    values: dict[str, float], said: str
) -> None:
    with pytest.raises(ImpossibleShape, match=said):
        sloping_edge_once.function("slope_length")(**values)


def test_an_edge_shorter_than_the_board_is_high_is_refused_and_not_made_imaginary() -> None:
    with pytest.raises(
        ImpossibleShape, match=r"No run goes with rise 5, slope length 4\. Change one of these"
    ):
        sloping_edge_once.function("run")(rise=5, slope_length=4)


@pytest.mark.parametrize("values", [{"run": 3.0}, {"run": 3.0, "rise": 4.0, "depth": 1.0}, {}])
def test_a_missing_or_a_foreign_quantity_is_answered_with_the_right_ones(values: dict[str, float]) -> None:
    with pytest.raises(
        UnknownName, match=r"slope_length follows from rise, run; given: .*Name exactly those"
    ):
        sloping_edge_once.function("slope_length")(**values)


def wall_left() -> Derivation:
    post, hole = sympy.symbols("post hole", positive=True)
    wall = sympy.Symbol("wall", nonnegative=True)
    return Derivation.start(
        "The wall that a hole leaves",
        (
            Quantity(post, "s", "side of the post"),
            Quantity(hole, "d", "depth of the hole"),
            Quantity(wall, "w", "wall behind it"),
        ),
        equation(post, hole + wall),
        "hole and wall make up the post",
        subject="wall",
        example={post: 3, hole: 2, wall: 1},
    ).then(Isolate(wall), "we want the wall")


def test_a_length_below_nothing_is_refused_and_rounding_is_not() -> None:
    wall = wall_left().function("wall")
    assert wall(post=3, hole=3) == 0
    assert wall(post=0.3, hole=0.1 + 0.2) == 0
    with pytest.raises(ImpossibleShape, match="No wall goes with post 3, hole 4"):
        wall(post=3, hole=4)


# --- what measuring errors do ---


def test_sensitivity_agrees_with_calculus_done_by_hand() -> None:
    # By hand: s = sqrt(r² + h²) changes by r/s for each unit of r and by h/s for each unit of h.
    told = sloping_edge_once.sensitivity({"run": 3, "rise": 4}, {"run": 0.5, "rise": 0.25})
    assert [part.rate for part in told.contributions] == pytest.approx([3 / 5, 4 / 5])
    assert told.value == 5
    assert told.matters_most == "run"
    assert told.at_worst == pytest.approx(0.5 * 3 / 5 + 0.25 * 4 / 5)


def test_sensitivity_of_an_angle_is_in_degrees() -> None:
    # By hand: the angle with tangent r/h changes by h / (r² + h²) radians for each unit of r.
    told = lean_once.sensitivity({"run": 3, "rise": 4}, {"run": 1})
    assert told.contributions[0].rate == pytest.approx(math.degrees(4 / 25))
    # And back: h tan(lean) changes by h / cos² for each radian.
    back = lean_once.sensitivity({"lean": 45, "rise": 4}, {"lean": 1}, of="run")
    assert back.contributions[0].rate == pytest.approx(math.radians(4 / 0.5))


@settings(deadline=None, max_examples=30)
@given(st.floats(0.1, 10), st.floats(0.5, 10))
def test_sensitivity_agrees_with_a_small_step(share: float, height: float) -> None:
    values = {"run": height * share / 10, "rise": height}
    for known in (sloping_edge_once, lean_once):
        told = known.sensitivity(values, {"run": 1, "rise": 1})
        rule, step = known.function(known.subject), 1e-6 * height
        for part in told.contributions:
            up = rule(**values | {part.name: values[part.name] + step})
            down = rule(**values | {part.name: values[part.name] - step})
            assert part.rate == pytest.approx((up - down) / (2 * step), rel=1e-5, abs=1e-7)


def test_an_error_for_nothing_that_was_measured_is_refused() -> None:
    with pytest.raises(UnknownName, match=r"width, which is not among the values \(rise, run\)"):
        sloping_edge_once.sensitivity({"run": 3, "rise": 4}, {"width": 1})
    with pytest.raises(UnknownName, match=r"No error is given\. Give one for at least one of rise, run"):
        sloping_edge_once.sensitivity({"run": 3, "rise": 4}, {})


def test_where_the_least_error_has_no_measure_that_is_said() -> None:
    with pytest.raises(ImpossibleShape, match=r"moves run without measure\. Move rise a little away from 5"):
        sloping_edge_once.sensitivity({"rise": 5, "slope_length": 5}, {"rise": 0.1}, of="run")


def test_the_words_about_errors_name_what_to_measure_with_most_care() -> None:
    told = sloping_edge_once.sensitivity({"run": 3, "rise": 4}, {"run": 0.5, "rise": 0.25})._repr_markdown_()
    assert "Measure the **run** with most care" in told
    assert "| run | 0.5 | 0.3 |" in told


def test_measurements_that_matter_alike_are_not_set_apart() -> None:
    alike = lean_once.sensitivity({"run": 4, "rise": 4}, {"run": 0.1, "rise": 0.1})
    assert alike.matters_most == ""
    assert "All matter alike." in alike._repr_markdown_()
    assert "most care" not in alike._repr_markdown_()


def test_two_that_matter_alike_are_named_where_a_third_matters_less() -> None:
    parts = (
        Contribution("run", 2.0, 0.1),
        Contribution("set_back", -1.0, 0.2),
        Contribution("rise", 1.0, 0.1),
    )
    told = Sensitivity("lean", 3.0, parts)
    assert told.matters_most == ""
    assert (
        "Measure the **run** and the **set back** with most care: they matter alike."
        in told._repr_markdown_()
    )


def test_a_single_measurement_is_the_one_to_measure_with_care() -> None:
    assert lean_once.sensitivity({"run": 3, "rise": 4}, {"run": 0.1}).matters_most == "run"


def test_the_table_of_errors_tells_degrees_and_leaves_lengths_plain() -> None:
    # By hand: at 45 degrees one unit of run in four moves the lean by 4 / (16 + 16) radians.
    told = lean_once.sensitivity({"run": 4, "rise": 4}, {"run": 0.1})._repr_markdown_()
    assert f"Lean is 45°; at worst it is out by {math.degrees(0.1 / 8):.4g}°." in told
    assert f"| run | 0.1 | {math.degrees(0.1 / 8):.4g}° |" in told
    back = lean_once.sensitivity({"lean": 45, "rise": 4}, {"lean": 1}, of="run")._repr_markdown_()
    assert "Run is 4; at worst" in back
    assert f"| lean | 1° | {math.radians(4 / 0.5):.4g} |" in back
    assert "length" not in told + back


@pytest.mark.parametrize("error", [-0.1, math.nan, math.inf, -math.inf])
def test_an_error_below_nothing_or_without_a_size_is_refused(error: float) -> None:
    with pytest.raises(ImpossibleShape, match=r"The error of run is .*0 or more, such as half a mark"):
        sloping_edge_once.sensitivity({"run": 3, "rise": 4}, {"run": error})


# --- what the page shows ---


def test_the_page_shows_every_symbol_with_meaning_and_unit_and_every_step_with_its_reason() -> None:
    for known in (sloping_edge_once, lean_once):
        page = known._repr_markdown_()
        assert known.title in page
        for quantity in known.quantities:
            assert f"| ${quantity.letter}$ | {quantity.meaning} | {quantity.unit} |" in page
        for step in known.steps:
            assert step.reason in page
            assert f"$${known.show(step.equation)}$$" in page
            if step.operation is not None:
                assert step.operation.words(known.show) in page
    assert "an edge has a length" in sloping_edge_once._repr_markdown_()


def test_no_symbol_is_shown_by_its_long_name() -> None:
    page = sloping_edge_once._repr_markdown_()
    assert "slope_length" not in page
    assert "s = " in page


def test_sums_are_shown_in_the_order_in_which_they_are_read() -> None:
    z_first = Derivation.start(
        "An order",
        (Quantity(c, "z", "first"), Quantity(b, "m", "next"), Quantity(a, "a", "last")),
        equation(c, a + b),
        "given",
        subject="z",
        example={a: 1, b: 2, c: 3},
    )
    assert z_first.show(a + b + c) == "z + m + a"
    assert z_first.show(a - b + c) == "z + a - m"


def test_numbers_are_put_in_as_they_are_written_at_the_bench() -> None:
    shown = sloping_edge_once.worked("slope_length", {"run": 1.5, "rise": 2}, {"run": "1 1/2"})
    assert r"1\tfrac{1}{2}" in shown
    assert shown.endswith("= 2.5$$")
    assert "it leans outwards" in sloping_edge_once.worked("run", {"slope_length": 5, "rise": 4}, {})


def test_numbers_of_degrees_carry_their_sign() -> None:
    assert r"\tan{\left({30^\circ} \right)}" in lean_once.worked("run", {"lean": 30, "rise": 2}, {})
    assert lean_once.worked("lean", {"run": 2, "rise": 2}, {}).endswith(r"= 45^\circ$$")


# --- a wrong step is caught ---


@dataclass(frozen=True)
class _Slip(Operation):
    """What a tired hand does to an equation, and thinks that it follows."""

    slip: Callable[[Equality], Equality]
    widens: bool = False

    def carry_out(self, before: Equality, example: Example) -> Equality:
        return self.slip(before)

    def words(self, show: Print) -> str:
        return "slip"


SLIPS = {
    "a sign": lambda before: equation(before.lhs, run**2 - rise**2),
    "one side only": lambda before: equation(before.lhs + 1, before.rhs),
    "the root of a sum taken term by term": lambda before: equation(slope_length, run + rise),
    "a factor": lambda before: equation(before.lhs, 2 * run**2 + rise**2),
    "nothing done": lambda before: before,
    "a stranger by multiplying with nothing": lambda before: equation(
        before.lhs * (run - rise), before.rhs * (run - rise)
    ),
}


def before_the_slip() -> Derivation:
    derived = sloping_edge()
    return replace(derived, steps=derived.steps[:1])


def test_the_derivations_used_here_stand_up_themselves() -> None:
    for derived in (sloping_edge(), lean_of_a_board(), wall_left(), before_the_slip()):
        assert_every_step_follows(derived)


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_on_the_way_is_caught(slip: str) -> None:
    wrong = before_the_slip().then(_Slip(SLIPS[slip]), "so it seems")
    with pytest.raises(AssertionError, match=r"does not satisfy|does not follow|changes nothing|stranger in"):
        assert_every_step_follows(wrong)


def test_a_slip_that_the_example_does_not_show_is_caught_at_other_points() -> None:
    by_chance = before_the_slip().then(
        _Slip(lambda before: equation(slope_length, (run + 3 * rise) / 3)), "it fits 3, 4 and 5"
    )
    with pytest.raises(AssertionError, match="does not follow"):
        assert_every_step_follows(by_chance)


def test_a_stranger_let_in_silently_is_caught() -> None:
    signed = Derivation.start(
        "Two signed numbers",
        (Quantity(x, "x", "one"), Quantity(y, "y", "the other")),
        equation(x, y),
        "they are equal",
        subject="x",
        example={x: 2, y: 2},
        keeps={"x": "the same side", "y": "the same side"},
    )
    silent = signed.then(_Slip(lambda before: equation(before.lhs**2, before.rhs**2)), "square both")
    with pytest.raises(AssertionError, match="lets a stranger in"):
        assert_every_step_follows(silent)
    with pytest.raises(AssertionError, match="does not say which branch is kept"):
        assert_every_step_follows(signed.then(Square(), "square both"))
    assert_every_step_follows(signed.then(Square(), "the branch with equal signs is kept"))


def test_a_substitution_that_is_not_true_is_caught() -> None:
    wrong = before_the_slip().then(Substitute(run, 2 * rise), "they say that it leans out twice its height")
    with pytest.raises(AssertionError, match="does not satisfy"):
        assert_every_step_follows(wrong)


def test_a_limit_that_is_not_approached_is_caught() -> None:
    chord = Derivation.start(
        "A chord that closes up",
        (Quantity(x, "x", "step"), Quantity(y, "y", "rise over run"), Quantity(a, "a", "place")),
        equation(((a + x) ** 2 - a**2) / x, y),
        "the rise over the run",
        subject="y",
        example={x: 0, y: 4, a: 2},
    )
    right = chord.then(Expand(), "one bracket").then(TakeLimit(x, sympy.Integer(0)), "close up")
    assert right.result == equation(2 * a, y)
    assert_every_step_follows(right)
    wrong = replace(right, steps=(*right.steps[:-1], replace(right.steps[-1], equation=equation(a**2, y))))
    with pytest.raises(AssertionError, match="does not shrink to"):
        assert_every_step_follows(wrong)


UNSAID: list[tuple[Callable[[Derivation], Derivation], str]] = [
    (lambda right: replace(right, example=right.example[1:]), "has no value for"),
    (
        lambda right: replace(right, example=((x, sympy.Integer(3)), (y, sympy.Integer(3)))),
        "does not satisfy",
    ),
    (lambda right: replace(right, quantities=right.quantities[1:]), "speaks of"),
    (lambda right: replace(right, keeps=()), "has 2 answers"),
    (lambda right: replace(right, steps=(replace(right.steps[0], reason=" "),)), "has no reason"),
    (lambda right: replace(right, steps=(replace(right.steps[0], reason="So."),)), "adds the full stop"),
    (lambda right: replace(right, limits=(Limit(x > 4, "further out"),)), "the example breaks a limit"),
    (
        lambda right: replace(
            right, quantities=tuple(replace(each, letter="q") for each in right.quantities)
        ),
        "one letter stands for two things",
    ),
]


@pytest.mark.parametrize(("change", "said"), UNSAID)
def test_a_derivation_that_leaves_something_unsaid_is_caught(
    change: Callable[[Derivation], Derivation], said: str
) -> None:
    assert_every_step_follows(place_on_a_circle())
    with pytest.raises(AssertionError, match=said):
        assert_every_step_follows(change(place_on_a_circle()))


# --- nothing happens on import ---


def test_importing_the_topics_derives_nothing_and_needs_no_numpy() -> None:
    asked = (
        "import sys; from woodmath import bevel, post_joint; "
        "print(bevel.derivation.cache_info().currsize, post_joint.derivation.cache_info().currsize, "
        "'numpy' in sys.modules, 'matplotlib' in sys.modules)"
    )
    told = subprocess.run([sys.executable, "-c", asked], capture_output=True, encoding="utf-8", check=True)
    assert told.stdout.split() == ["0", "0", "False", "False"]


def test_a_start_is_a_step_without_an_operation() -> None:
    assert sloping_edge_once.steps[0] == Step(
        "height, lean and edge close a right triangle; so says Pythagoras",
        None,
        equation(slope_length**2, run**2 + rise**2),
    )
