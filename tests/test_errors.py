"""Every error that a maker may meet is of one family: what was given, what is possible, what to do next."""

import ast
import builtins
import inspect
from collections.abc import Callable
from pathlib import Path

import pytest

import woodmath
from woodmath import errors
from woodmath.errors import WoodmathError
from woodmath.rule import Rule

FAMILY = {
    "BadLength": ValueError,
    "ImpossibleShape": ValueError,
    "BadPiece": ValueError,
    "UnknownName": LookupError,
    "Disagreement": AssertionError,
    "NotWritten": OSError,
    "SetUpProblem": RuntimeError,
}
# Python's own protocols (ending a command, a missing attribute), and our own faults, which are no maker's.
ALLOWED = {"SystemExit", "AttributeError", "AssertionError", "NotImplementedError"}
MODULES = sorted(Path(woodmath.__file__).parent.rglob("*.py"))


@pytest.mark.parametrize(("name", "builtin"), FAMILY.items())
def test_each_error_is_of_the_family_and_also_the_fitting_builtin(
    name: str, builtin: type[Exception]
) -> None:
    error = getattr(errors, name)
    assert issubclass(error, WoodmathError) and issubclass(error, builtin)
    for catch in (WoodmathError, builtin):
        with pytest.raises(catch, match="what was given"):
            raise error("what was given")


def test_the_family_has_no_other_member() -> None:
    classes = {name for name, thing in inspect.getmembers(errors, inspect.isclass)}
    assert classes == {"WoodmathError", *FAMILY}


def test_each_error_says_what_it_is_for() -> None:
    for name in FAMILY:
        assert getattr(errors, name).__doc__


def strangers(source: str) -> list[str]:
    """Builtin errors raised, and error classes made, outside the family in a module's source."""
    names = {name for name, thing in vars(builtins).items() if isinstance(thing, type)}
    foreign = {name for name in names if issubclass(getattr(builtins, name), BaseException)} - ALLOWED
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Raise) and node.exc is not None:
            raised = node.exc.func if isinstance(node.exc, ast.Call) else node.exc
            if isinstance(raised, ast.Name) and raised.id in foreign:
                found.append(f"line {node.lineno} raises {raised.id}")
        if isinstance(node, ast.ClassDef):
            parents = {base.id for base in node.bases if isinstance(base, ast.Name)}
            if parents & (foreign | ALLOWED | {"WoodmathError", *FAMILY}):
                found.append(f"line {node.lineno} makes {node.name}")
    return found


@pytest.mark.parametrize("module", MODULES, ids=lambda path: path.stem)
def test_no_module_raises_or_makes_an_error_outside_the_family(module: Path) -> None:
    found = strangers(module.read_text(encoding="utf-8"))
    if module.name == "errors.py" and module.parent == MODULES[0].parent:
        assert len(found) == 1 + len(FAMILY)
    else:
        assert found == []


@pytest.mark.parametrize(
    "source",
    [
        "raise ValueError('no')",
        "raise TypeError",
        "def f():\n    raise KeyError('x') from None",
        "class Mine(Exception): ...",
        "class Mine(BadLength): ...",
    ],
)
def test_a_stranger_would_be_found(source: str) -> None:
    assert len(strangers(source)) == 1


INCHES, MILLIMETRES = Rule.inches(16), Rule.millimetres(0.5)


@pytest.mark.parametrize(
    ("fault", "given", "possible", "what_next"),
    [
        (
            lambda: INCHES.read("7 5/x"),
            "“7 5/x”",
            "a whole number above and below",
            "Write it as on this rule",
        ),
        (lambda: INCHES.read("7 cubits"), "“7 cubits”", "in, ft, mm, cm and m", "7 5/8 or 1' 2 1/4\""),
        (lambda: MILLIMETRES.read("1,5"), "“1,5”", "a point (1.5)", "194 or 19.4 cm"),
        (lambda: MILLIMETRES.read("-3"), "“-3”", "a rule begins at 0", "Write it as on this rule"),
        (lambda: MILLIMETRES.read("1" * 41), "“" + "1" * 20 + "…”", "40 at most", "Write it as on this rule"),
        (lambda: INCHES.read("7 9/8"), "“7 9/8”", "less than 1", "8 1/8"),
        (lambda: INCHES.mark(-0.5), "-0.5 in", "from 0 to 100 m", "Check the sizes"),
        (lambda: MILLIMETRES.nearest(float("nan")), "nan mm", "from 0 to 100 m", "Check the sizes"),
        (lambda: INCHES.mark("7"), "“7”", "marks numbers only", "read() turns"),  # type: ignore[arg-type]
        (lambda: INCHES.length(-1), "-1", "whole marks from 0 to 62993", "marks() gives"),
        (lambda: Rule.inches(7), "7 marks to the inch", "has 1, 2, 4, 8", "Rule.inches(16)"),
        (lambda: Rule.millimetres(0.3), "3/10", "a whole number of times", "Rule.millimetres(0.5)"),
    ],
)
def test_a_rules_message_has_what_was_given_what_is_possible_and_what_to_do(
    fault: Callable[[], object], given: str, possible: str, what_next: str
) -> None:
    with pytest.raises(WoodmathError) as refusal:
        fault()
    message = str(refusal.value)
    assert given in message and possible in message and what_next in message
    assert message.isprintable() and message.endswith(".")
