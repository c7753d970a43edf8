"""Which way to plane a sloping edge: the way in which its fibres lean where they come out of it.

Stroke a cat from head to tail and the fur lies down; stroke her the other way and it stands up. Fibres that lean in
the plane's direction lie down under the iron. Against it they are lifted, and split down into the wood.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Add, Substitute, equation
from woodmath.quantities import worded
from woodmath.splay_derivations import quantities as of_the_splay
from woodmath.splay_derivations import upper_corner_derivation

_WORDS = MappingProxyType(
    {
        "fibre_angle": (
            r"\varphi",
            "from the edge's way up to the way in which the fibres come out of it",
            "degrees",
            "real",
        ),
        "run_out": ("r", "how far the grain rises toward the edge, from level", "degrees", "real"),
    }
)
_NO_LEAN = 1e-9
"""Degrees; fibres nearer than this to square lean neither way."""


def _quantities(*names: str) -> tuple[Quantity, ...]:
    return worded(_WORDS, names, of_the_splay)


@functools.cache
def fibre_angle_derivation() -> Derivation:
    """Derive at what angle the fibres of an end come out of its sloping edge.

    Returns
    -------
    Derivation
        Its result gives `fibre_angle` (degrees) from `splay` and `run_out` (degrees).

    Source: plane geometry, angles side by side.

    >>> round(fibre_angle_derivation().function("fibre_angle")(splay=9.0, run_out=2.0), 9)
    79.0
    """
    spoken_of = _quantities("fibre_angle", "run_out", "upper_corner", "splay")
    fibre, run_out, corner, splay = (each.symbol for each in spoken_of)
    return (
        Derivation.start(
            "How the fibres lean where they come out",
            spoken_of,
            equation(fibre + run_out, corner),
            "level grain meets the edge at the panel's upper corner; grain that rises toward the edge takes its rise "
            "away from that corner, and what is left lies between the fibres and the edge",
            subject="fibre_angle",
            example={
                fibre: sympy.pi / 4,
                run_out: sympy.pi / 12,
                corner: sympy.pi / 3,
                splay: sympy.pi / 6,
            },
        )
        .then(
            Substitute(corner, upper_corner_derivation().solved_for("upper_corner").rhs),
            "the upper corner is what the splay leaves of a right angle",
        )
        .then(
            Add(-run_out),
            "splay and rise work alike: under a right angle the fibres lean upward and you plane upward, over it "
            "they lean downward and you plane downward",
        )
    )


def fibre_angle(splay: float, run_out: float = 0.0) -> float:
    """Angle from an edge's way up to the way in which its fibres come out.

    Parameters
    ----------
    splay : float
        Lean of the edge from upright, between -90 and 90 degrees: outward above more than 0.
    run_out : float
        How far the grain rises toward the edge, between -90 and 90 degrees; falling, less than 0.

    Returns
    -------
    float
        Degrees, more than 0 and less than 180; 90 for end grain that leans neither way.

    Raises
    ------
    ImpossibleShape
        If splay and rise together lay the fibres along the edge, or beyond it.

    Source: `fibre_angle_derivation`.

    >>> fibre_angle(splay=0.0)
    90.0
    """
    if not abs(splay + run_out) < 90:
        raise ImpossibleShape(
            f"A splay of {splay:g}° and grain that rises {run_out:g}° lay the fibres along the edge or beyond it: it "
            "is no end any more. Give two angles that make less than 90° together."
        )
    return fibre_angle_derivation().function("fibre_angle")(splay=splay, run_out=run_out)


def runs_with_the_grain(splay: float, run_out: float, upward: bool) -> bool:
    """Whether a plane that goes up or down an edge goes the way in which its fibres lean.

    Parameters
    ----------
    splay, run_out : float
        As in `fibre_angle`.
    upward : bool
        Whether the plane goes from the lower corner to the upper one.

    Returns
    -------
    bool
        False both ways where the fibres come out square: plain end grain has no way with it.

    Raises
    ------
    ImpossibleShape
        As in `fibre_angle`.

    Source: fibres that lean the plane's way lie down under the iron (common practice).

    >>> runs_with_the_grain(splay=9.0, run_out=0.0, upward=True)
    True
    >>> runs_with_the_grain(splay=9.0, run_out=-12.0, upward=True)
    False
    """
    lean = 90.0 - fibre_angle(splay, run_out)
    return lean > _NO_LEAN if upward else lean < -_NO_LEAN
