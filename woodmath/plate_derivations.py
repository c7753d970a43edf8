"""A printed drawing's own scale, and the bench sizes that follow from it, in symbols."""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, equation


@functools.cache
def plate_derivation() -> Derivation:
    """Derive the scale of a printed drawing from one length that it gives.

    Returns
    -------
    Derivation
        Speaks of `plate_scale` (a number), `known_length` (at the bench) and `measured` (on the page), both in
        one unit; its subject is the plate's scale.

    Source: similar figures.

    >>> plate_derivation().result
    Eq(plate_scale, known_length/measured)
    """
    plate_scale, known_length, measured = sympy.symbols("plate_scale known_length measured", positive=True)
    return Derivation.start(
        "The scale of a plate",
        (
            Quantity(plate_scale, "k", "bench size for each unit on the page", "number"),
            Quantity(known_length, "L", "the length that the drawing gives"),
            Quantity(measured, "p", "the same length, measured on the page"),
        ),
        equation(known_length, plate_scale * measured),
        "the page shows the piece in its true shape, so every length on it is the same part of the true one",
        subject="plate_scale",
        example={plate_scale: 5, known_length: 10, measured: 2},
    ).then(Isolate(plate_scale), "a length that the drawing gives tells the scale")


@functools.cache
def bench_derivation() -> Derivation:
    """Derive a bench size from what is measured on the page.

    Returns
    -------
    Derivation
        Speaks of `bench_size`, `plate_scale` and `measured`; its subject is the bench size.

    Source: similar figures, the rule of `plate_derivation` for another length.

    >>> bench_derivation().result
    Eq(bench_size, measured*plate_scale)
    """
    plate_scale, bench_size, measured = sympy.symbols("plate_scale bench_size measured", positive=True)
    return Derivation.start(
        "A size off the page",
        (
            Quantity(bench_size, "s", "the size at the bench"),
            Quantity(plate_scale, "k", "scale of the plate", "number"),
            Quantity(measured, "q", "the size, measured on the page"),
        ),
        equation(bench_size / measured, plate_scale),
        "whatever you measure on the page stands in the same ratio to its true length",
        subject="bench_size",
        example={bench_size: 15, plate_scale: 5, measured: 3},
    ).then(Isolate(bench_size), "the size at the bench is wanted")
