"""Every step from the touching point to the period, the tipping and the fall follows from the one before."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator
from types import ModuleType

import pytest
import sympy
from derivation_checks import assert_every_step_follows

from woodmath import rocking_derivations, rocking_fall_derivations, rocking_heel, rocking_swing_derivations
from woodmath.derivation import Derivation

Derive = Callable[[], Derivation]

# Nobody asks the others at which tilt, or on which ellipse, a weight stands so high, and sympy thinks about it
# for minutes.
ASKED_BACK = ("contact", "middle_height", "energy", "stiffness", "period", "speed", "damping")


def derivations_of(module: ModuleType) -> Iterator[tuple[str, Derive]]:
    for name, found in inspect.getmembers(module, callable):
        if name.endswith(("derivation", "_sinking")) and found.__module__ == module.__name__:
            yield name, found


OF_ROCKING = dict([*derivations_of(rocking_derivations), *derivations_of(rocking_swing_derivations)])
OF_TIPPING = dict(derivations_of(rocking_heel))
OF_THE_FALL = dict(derivations_of(rocking_fall_derivations))


def test_every_derivation_is_found() -> None:
    assert OF_ROCKING.keys() == {
        "derivation",
        "lever_arm_derivation",
        *(f"{name}_derivation" for name in ASKED_BACK),
    }
    assert len(OF_TIPPING) == 7
    assert OF_THE_FALL.keys() == {"_sinking", "fall_derivation"}


@pytest.mark.parametrize("name", [f"{name}_derivation" for name in ASKED_BACK])
def test_every_step_of_rocking_follows(name: str) -> None:
    # Asked back for the tilt or the ellipse under a root of squares, sympy takes many seconds.
    slow = {"contact_derivation": {"tilt", "half_height"}, "middle_height_derivation": {"tilt"}}
    assert_every_step_follows(OF_ROCKING[name](), frozenset(slow.get(name, set())))


@pytest.mark.parametrize("name", ["derivation", "lever_arm_derivation"])
def test_every_step_of_the_height_and_of_the_lever_arm_follows(name: str) -> None:
    assert_every_step_follows(OF_ROCKING[name](), frozenset({"tilt", "half_length", "half_height"}))


@pytest.mark.parametrize("name", OF_TIPPING)
def test_every_step_of_tipping_follows(name: str) -> None:
    # Asked back for the ellipse or the weight's height, sympy takes many seconds, and nobody asks.
    sizes = {"half_length", "half_height", "centre_height"} if name == "balance_derivation" else set()
    assert_every_step_follows(OF_TIPPING[name](), frozenset(sizes or {"tilt"}))


@pytest.mark.parametrize("name", OF_THE_FALL)
def test_every_step_of_the_fall_follows(name: str) -> None:
    derivation = OF_THE_FALL[name]()
    asked_only_for = {derivation.subject}
    assert_every_step_follows(
        derivation, frozenset(quantity.name for quantity in derivation.quantities) - asked_only_for
    )


def test_the_lever_arm_is_how_fast_the_height_grows_with_the_tilt() -> None:
    # The work of a small turn is moment times turn: any mechanics text (from memory).
    (tilt,) = rocking_derivations.symbols("tilt")
    slope = sympy.diff(rocking_derivations.derivation().result.rhs, tilt)
    assert sympy.simplify(slope - rocking_derivations.lever_arm_in_full()) == 0


def test_the_lever_arm_about_the_heel_is_how_fast_the_height_over_the_heel_grows() -> None:
    (tilt,) = rocking_heel.quantities("tilt")
    slope = sympy.diff(rocking_heel.over_heel_derivation().result.rhs, tilt.symbol)
    assert sympy.simplify(slope - rocking_heel.lever_over_heel_derivation().result.rhs) == 0


def test_the_height_of_the_centre_is_that_of_the_handbooks() -> None:
    # p² = a² sin² + b² cos², from the centre of an ellipse to its tangent (from memory).
    tilt, a, b = rocking_derivations.symbols("tilt", "half_length", "half_height")
    derived = rocking_derivations.middle_height_derivation().result.rhs
    assert sympy.simplify(derived**2 - a**2 * sympy.sin(tilt) ** 2 - b**2 * sympy.cos(tilt) ** 2) == 0


def test_the_period_is_that_of_the_mechanics_texts() -> None:
    # T = 2π √((k² + h²) / (g (R − h))): Routh, Lamb, Loney (from memory).
    k, h, radius, gravity = rocking_derivations.symbols(
        "gyration_radius", "centre_height", "radius", "gravity"
    )
    published = 2 * sympy.pi * sympy.sqrt((k**2 + h**2) / (gravity * (radius - h)))
    derived = rocking_swing_derivations.period_derivation().result.rhs
    assert sympy.simplify(derived**2 - published**2) == 0
