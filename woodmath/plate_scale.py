"""Bench sizes from a printed drawing that gives only a few: the plate's own scale, and how far to trust it.

One length that the drawing gives, measured on the page, settles the scale; every other length is measured on
the page and multiplied by it. Each of the three measurements may be out by a share of itself, and independent
shares add as the sides of a right triangle do.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from woodmath.derivation import Sensitivity
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.plate_derivations import bench_derivation, plate_derivation

__all__ = [
    "BenchSize",
    "KnownLength",
    "PlateScale",
    "bench_derivation",
    "combined_scale",
    "in_quadrature",
    "plate_derivation",
    "plate_scale",
]


@dataclass(frozen=True)
class KnownLength:
    """A length that the drawing gives, and how long it is on the page.

    Parameters
    ----------
    length : float
        At the bench, as the drawing gives it, > 0, in any length unit.
    measured : float
        On the page, > 0, in the same unit.
    length_error : float
        How far the given length may be out, either way, 0 or more: half its last digit.
    reading_error : float
        How far your reading on the page may be out, 0 or more: half a mark.
    along : str
        Which way it runs on the page, such as "across" or "up"; "" where nothing is said.

    Raises
    ------
    ImpossibleShape
        If a length is not positive, or an error is negative or as large as its length.

    >>> KnownLength(10.5, 2.625, reading_error=1 / 32).scale
    4.0
    """

    length: float
    measured: float
    length_error: float = 0.0
    reading_error: float = 0.0
    along: str = ""

    def __post_init__(self) -> None:
        _checked("known length", self.length, self.length_error)
        _checked("length measured on the page", self.measured, self.reading_error)

    @property
    def scale(self) -> float:
        """The plate's scale by this length alone."""
        return plate_derivation().function("plate_scale")(known_length=self.length, measured=self.measured)

    @property
    def sensitivity(self) -> Sensitivity:
        """What each of the two errors does to the scale."""
        return plate_derivation().sensitivity(
            {"known_length": self.length, "measured": self.measured},
            {"known_length": self.length_error, "measured": self.reading_error},
        )


@dataclass(frozen=True)
class BenchSize:
    """A size at the bench, with how far it may be out.

    Parameters
    ----------
    size : float
        In the unit of the measurements.
    error : float
        Either way, the errors added in quadrature, as independent ones do.
    at_worst : float
        Either way, all errors pulling the same way.
    sensitivity : Sensitivity
        What the plate's scale and your own reading each contribute.

    >>> PlateScale(4.0, 0.01, 0.02).bench_size(2.0, reading_error=0.0).size
    8.0
    """

    size: float
    error: float
    at_worst: float
    sensitivity: Sensitivity


@dataclass(frozen=True)
class PlateScale:
    """The scale of a printed drawing, and how far to trust it; made by `plate_scale` or `combined_scale`.

    Parameters
    ----------
    scale : float
        Bench size for each unit on the page, > 0.
    error : float
        How far the scale may be out, either way, its errors added in quadrature.
    at_worst : float
        How far it may be out with all errors pulling the same way.
    reading_error : float
        How far a reading on the page may be out, in the unit of the measurements; 0 or more.
    remarks : tuple of str
        A sentence where known lengths disagree more than their errors allow.

    >>> PlateScale(4.0, 0.01, 0.02, reading_error=1 / 32).bench_size(2.0).size
    8.0
    """

    scale: float
    error: float
    at_worst: float
    reading_error: float = 0.0
    remarks: tuple[str, ...] = ()

    def _repr_markdown_(self) -> str:
        trust = f", within {number_shown(self.error, 3)} either way" if self.error else ""
        told = f"**The plate's scale: {number_shown(self.scale, 3)} at the bench for each 1 on the page{trust}.**"
        return "\n\n".join((told, *self.remarks))

    def bench_size(self, measured: float, reading_error: float | None = None) -> BenchSize:
        """Size at the bench of what is so long on the page.

        Parameters
        ----------
        measured : float
            On the page, > 0, in the unit of the known lengths.
        reading_error : float, optional
            How far this reading may be out; as for the known lengths where nothing is said.

        Returns
        -------
        BenchSize
            With its uncertainty.

        Raises
        ------
        ImpossibleShape
            If the length is not positive, or its error is negative or as large as the length.

        Source: `bench_derivation`, differentiated; independent errors add in quadrature (from memory).

        >>> found = plate_scale(10.0, 2.0, reading_error=0.02).bench_size(1.0)
        >>> round(found.size, 3), round(found.error, 3), round(found.at_worst, 3)
        (5.0, 0.112, 0.15)
        """
        own = self.reading_error if reading_error is None else reading_error
        _checked("length measured on the page", measured, own)
        values = {"plate_scale": self.scale, "measured": measured}
        told = bench_derivation().sensitivity(values, {"plate_scale": self.error, "measured": own})
        worst = bench_derivation().sensitivity(values, {"plate_scale": self.at_worst, "measured": own})
        return BenchSize(told.value, in_quadrature(told), worst.at_worst, told)


def in_quadrature(told: Sensitivity) -> float:
    """Error of a result whose measurements are out independently of one another.

    Parameters
    ----------
    told : Sensitivity
        What each measurement's error does by itself.

    Returns
    -------
    float
        The root of the sum of their squares, in the result's unit; never more than `told.at_worst`.

    Source: propagation of independent errors (from memory).

    >>> errors = {"plate_scale": 1, "measured": 1}
    >>> in_quadrature(bench_derivation().sensitivity({"plate_scale": 4, "measured": 3}, errors))
    5.0
    """
    return math.hypot(*(part.effect for part in told.contributions))


def plate_scale(
    known_length: float, measured: float, *, length_error: float = 0.0, reading_error: float = 0.0
) -> PlateScale:
    """Scale of a printed drawing from one length that it gives.

    Parameters
    ----------
    known_length : float
        At the bench, as the drawing gives it, > 0, in any length unit. The longest is the best: the same
        reading error is a smaller share of it.
    measured : float
        On the page, > 0, in the same unit.
    length_error, reading_error : float
        How far each may be out, either way: 0 or more, less than the length itself.

    Returns
    -------
    PlateScale
        Which turns other lengths on the page into bench sizes.

    Raises
    ------
    ImpossibleShape
        If a length is not positive, or an error is negative or as large as its length.

    Source: `plate_derivation`, differentiated.

    >>> found = plate_scale(18, 4.5, reading_error=1 / 32)
    >>> found.scale, round(found.error, 4)
    (4.0, 0.0278)
    """
    known = KnownLength(known_length, measured, length_error, reading_error)
    told = known.sensitivity
    return PlateScale(known.scale, in_quadrature(told), told.at_worst, reading_error)


def combined_scale(known: Sequence[KnownLength]) -> PlateScale:
    """Scale of a printed drawing from several lengths that it gives, the surer ones counting for more.

    Each counts by the inverse of its error's square. Where two disagree more than their errors at worst allow,
    the error grows to take in both, and a remark says what to look for.

    Parameters
    ----------
    known : sequence of KnownLength
        At least one; either every one has an error, or none has.

    Returns
    -------
    PlateScale
        With the largest reading error among them, and a remark for every disagreement.

    Raises
    ------
    ImpossibleShape
        If there are none, or only some have an error.

    Source: weighted mean of independent measurements (from memory).

    >>> found = combined_scale([KnownLength(18, 4.5, 0, 0.03), KnownLength(8, 2.0, 0, 0.03)])
    >>> found.scale, found.remarks
    (4.0, ())
    """
    errors = [in_quadrature(length.sensitivity) for length in known]
    if not errors or 0 < errors.count(0.0) < len(errors):
        raise ImpossibleShape(
            f"{len(errors)} known lengths were given, {errors.count(0.0)} of them without any error. Give at "
            "least one, and give each how far its reading may be out: half a mark of your rule."
        )
    weights = [1 / error**2 for error in errors] if all(errors) else [length.measured**2 for length in known]
    share = [weight / math.fsum(weights) for weight in weights]
    scale = math.fsum(part * length.scale for part, length in zip(share, known, strict=True))
    worst = [length.sensitivity.at_worst for length in known]
    remarks = _disagreements(known, worst)
    furthest = max(abs(length.scale - scale) for length in known) if remarks else 0.0
    error = math.hypot(*(part * own for part, own in zip(share, errors, strict=True)))
    at_worst = math.fsum(part * own for part, own in zip(share, worst, strict=True))
    return PlateScale(
        scale,
        max(error, furthest),
        max(at_worst, furthest),
        max(length.reading_error for length in known),
        remarks,
    )


def _disagreements(known: Sequence[KnownLength], worst: Sequence[float]) -> tuple[str, ...]:
    remarks = []
    for place, (one, reach) in enumerate(zip(known, worst, strict=True)):
        for other, other_reach in zip(known[place + 1 :], worst[place + 1 :], strict=True):
            apart = abs(one.scale - other.scale)
            if apart > (reach + other_reach) * (1 + 1e-9) + 1e-12 * one.scale:
                remarks.append(_told(one, other, apart / min(one.scale, other.scale)))
    return tuple(remarks)


def _told(one: KnownLength, other: KnownLength, share: float) -> str:
    if one.along and other.along and one.along != other.along:
        cause = (
            f"One runs {one.along} and one {other.along}: the paper shrank one way, or the page was not flat "
            "under the camera. Take a scale for each direction"
        )
    else:
        cause = (
            "The page was photographed askew, a figure is misprinted, or one was measured between the wrong "
            "lines. Measure both again, and scale a part from the known length nearest to it"
        )
    return (
        f"By {one.length:g} the scale is {one.scale:.4g}, by {other.length:g} it is {other.scale:.4g}: they are "
        f"{100 * share:.2g} % apart, more than their errors allow. {cause}."
    )


def _checked(name: str, length: float, error: float) -> None:
    if not (math.isfinite(length) and length > 0):
        raise ImpossibleShape(f"The {name} is {length:g}, and it must be more than 0.")
    if not (math.isfinite(error) and 0 <= error < length):
        raise ImpossibleShape(
            f"The {name} is {length:g} and its error {error:g}. An error is 0 or more, and less than the length "
            "itself: give half a mark of your rule, or half the last digit that is printed."
        )
