"""The rules of setting out: running marks from one datum, the groove's stops, the gauge's pins, and drift.

A running mark is a line's distance from the datum. Counted so, a line is out by what its own mark is out;
stepped off with dividers, it is out by what every step before it was out as well.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Expand, Isolate, Substitute, TakeRoot, equation


@functools.cache
def running_derivation() -> Derivation:
    """Derive the running mark of a line from that of a line below it.

    Returns
    -------
    Derivation
        Speaks of `running`, `base` and `beyond`, lengths in one unit; its subject is `running`.

    Source: plane geometry, lengths set end to end on one line.

    >>> running_derivation().function("running")(base=3.0, beyond=0.75)
    3.75
    """
    running, base, beyond = sympy.symbols("running base beyond", real=True)
    return Derivation.start(
        "A running mark",
        (
            Quantity(running, "r", "running mark of the line: its distance from the datum, along the post"),
            Quantity(base, "r_0", "running mark of the line that it is counted from"),
            Quantity(beyond, "p", "how far it lies beyond that line, along the post"),
        ),
        equation(running - base, beyond),
        "on one rule the distance between two lines is the difference of their readings",
        subject="running",
        example={running: 5, base: 3, beyond: 2},
    ).then(Isolate(running), "we want the reading itself, with the rule's end at the datum")


@functools.cache
def groove_derivation() -> Derivation:
    """Derive how far inside the panel's edge the groove begins.

    Returns
    -------
    Derivation
        Speaks of `inset`, `bead_reach` and `clearance`, lengths in one unit; its subject is `inset`.

    Source: plane geometry; the bead stops the tongue, the season wants clearance (see `woodmath.edges`).

    >>> groove_derivation().function("inset")(bead_reach=0.375, clearance=0.0625)
    0.3125
    """
    inset = sympy.Symbol("inset", real=True)
    reach, clearance = sympy.symbols("bead_reach clearance", nonnegative=True)
    return Derivation.start(
        "Where the groove begins",
        (
            Quantity(inset, "i", "from the panel's edge inward to the groove's end, along the post"),
            Quantity(reach, "b", "what the bead takes of the panel's edge, where the tongue is stopped"),
            Quantity(clearance, "c", "room that the groove leaves beyond the tongue's end"),
        ),
        equation(reach, inset + clearance),
        "going inward from the panel's edge you come to the groove's end first, and one clearance further on to the "
        "end of the tongue, which stops at the bead",
        subject="inset",
        example={inset: 2, reach: 3, clearance: 1},
    ).then(Isolate(inset), "we want where to stop the groove")


@functools.cache
def pins_derivation() -> Derivation:
    """Derive how far the inner pin of a mortise gauge stands from its stock.

    Returns
    -------
    Derivation
        Speaks of `inner_pin`, `outer_pin`, `set_back` and `thickness`; its subject is `inner_pin`.

    Source: plane geometry; the face side is the one face that a gauge works from (common practice).

    >>> pins_derivation().function("inner_pin")(set_back=0.5, thickness=0.5)
    1.0
    """
    names = "inner_pin outer_pin set_back thickness"
    inner, outer, set_back, thickness = sympy.symbols(names, positive=True)
    return (
        Derivation.start(
            "The two pins of the mortise gauge",
            (
                Quantity(inner, "g_i", "from the stock to the inner pin, at the inner cheek"),
                Quantity(outer, "g_o", "from the stock to the outer pin, at the outer cheek"),
                Quantity(set_back, "g", "set-back, from the outer face to the outer cheek"),
                Quantity(thickness, "w", "thickness of the tenon, and so of its mortise"),
            ),
            equation(inner - outer, thickness),
            "the pins stand as far apart as the mortise is wide, which is the chisel's width",
            subject="inner_pin",
            example={inner: 3, outer: 1, set_back: 1, thickness: 2},
        )
        .then(Substitute(outer, set_back), "the stock rides on the outer face: the outer pin is the set-back")
        .then(Isolate(inner), "we want the inner pin from the same face")
    )


@functools.cache
def drift_derivation() -> Derivation:
    """Derive how far out the last line of a chain of steps is.

    Returns
    -------
    Derivation
        Speaks of `drift`, `count`, `error`, and on the way of `step` and `meant`; its subject is `drift`.

    Source: lengths set end to end.

    >>> drift_derivation().result
    Eq(drift, count*error)
    """
    step, count, meant = sympy.symbols("step count meant", positive=True)
    drift, error = sympy.symbols("drift error", real=True)
    return (
        Derivation.start(
            "The drift of dividers",
            (
                Quantity(count, "n", "number of steps", "number"),
                Quantity(step, "s", "the step that is meant"),
                Quantity(error, "e", "how much too wide the dividers stand; below 0, too narrow"),
                Quantity(meant, "m", "where the last line is meant to be, from the datum"),
                Quantity(drift, "d", "drift: how far beyond its place the last line is"),
            ),
            equation(drift, count * (step + error) - meant),
            "every step is taken with the same dividers, so every one has the same error; the drift is where the "
            "last step ends, less where it was meant to end",
            subject="drift",
            example={step: 2, count: 4, error: 1, meant: 8, drift: 4},
        )
        .then(Expand(), "take the steps and their errors apart")
        .then(
            Substitute(count * step, meant),
            "n steps without any error end where they are meant to; so the steps cancel, and only errors are left",
        )
    )


@functools.cache
def scatter_derivation() -> Derivation:
    """Derive how far out the last line usually is when each step is set anew.

    Returns
    -------
    Derivation
        Speaks of `scatter`, `count` and `error`; its subject is `scatter`.

    Source: the squares of independent errors add (Gauss).

    >>> scatter_derivation().result
    Eq(scatter, sqrt(count)*error)
    """
    scatter, count, error = sympy.symbols("scatter count error", positive=True)
    return Derivation.start(
        "The scatter of steps set anew",
        (
            Quantity(count, "n", "number of steps, each set anew", "number"),
            Quantity(error, "e", "usual error of one step, as often too wide as too narrow"),
            Quantity(scatter, "d_r", "usual error of the last line"),
        ),
        equation(scatter**2, count * error**2),
        "errors that know nothing of one another partly cancel: it is their squares that add, one for every step",
        subject="scatter",
        example={scatter: 2, count: 4, error: 1},
    ).then(
        TakeRoot("a usual error is a size and never less than nothing"), "we want the error, not its square"
    )
