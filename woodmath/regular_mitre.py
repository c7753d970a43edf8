"""A box of equal sides that all lean alike, mitred at every corner: two settings of the saw.

Splay is counted from upright here, as everywhere in this course; many printed tables count the pitch of the side
from the bench instead. The two are complements: where one formula has a sine, the other has a cosine.
"""

from __future__ import annotations

import functools
from dataclasses import dataclass
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.errors import ImpossibleShape
from woodmath.operations import Add, Isolate, Substitute, equation
from woodmath.quantities import worded

_WORDS = MappingProxyType(
    {
        "sides": ("n", "how many equal sides", "number", "positive"),
        "half_corner": ("c", "half of what the wall turns at a corner, in plan", "degrees", "positive"),
        "splay": (r"\sigma", "lean of every side from upright, outward", "degrees", "real"),
        "pitch": ("p", "the same lean counted from the bench", "degrees", "real"),
        "face_x": ("n_x", "direction in which a side's face looks, straight outward", "number", "real"),
        "face_y": ("n_y", "the same, along the side", "number", "real"),
        "face_z": ("n_z", "the same, upward", "number", "real"),
        "plane_x": (
            "m_x",
            "direction in which the mitre's plane looks, by the side's outward",
            "number",
            "real",
        ),
        "plane_y": ("m_y", "the same, along the side", "number", "real"),
        "plane_z": ("m_z", "the same, upward", "number", "real"),
        "tilt": ("T", "tilt of the saw, off square to the face", "degrees", "real"),
        "hip_x": ("k_x", "a stretch of the corner's edge, outward", "number", "real"),
        "hip_y": ("k_y", "the same stretch, along the side", "number", "real"),
        "hip_z": ("k_z", "the same stretch, upward", "number", "real"),
        "face_mitre": ("M", "mitre across the face, off square to the level edge", "degrees", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    """Return the quantities that the derivations of the regular box speak of, always with the same letter.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("sides", "tilt")]
    ['n', 'T']
    """
    return worded(_WORDS, names)


@functools.cache
def pitch_derivation() -> Derivation:
    """Derive the pitch that a printed table counts from the splay.

    Returns
    -------
    Derivation
        Its result gives `pitch` (degrees) from `splay`.

    Source: upright and level make a right angle.

    >>> round(pitch_derivation().function("pitch")(splay=15.0), 9)
    75.0
    """
    spoken_of = quantities("splay", "pitch")
    splay, pitch = (quantity.symbol for quantity in spoken_of)
    return Derivation.start(
        "Splay and pitch",
        spoken_of,
        equation(splay + pitch, sympy.pi / 2),
        "from upright to the side is the splay, from the side to the bench the pitch, and from upright to the "
        "bench a right angle",
        subject="pitch",
        example={splay: sympy.pi / 6, pitch: sympy.pi / 3},
    ).then(Add(-splay), "what the splay leaves of a right angle is the pitch")


@functools.cache
def tilt_derivation() -> Derivation:
    """Derive the tilt of the saw for the mitre of a box of equal leaning sides.

    Returns
    -------
    Derivation
        Its result gives `tilt` (degrees) from `splay` and `sides`.

    Source: the scalar product of two directions.

    >>> round(tilt_derivation().function("tilt")(splay=0.0, sides=4), 9)
    45.0
    """
    spoken_of = quantities(
        "face_x", "face_y", "face_z", "plane_x", "plane_y", "plane_z", "splay", "half_corner", "sides", "tilt"
    )
    n_x, n_y, n_z, m_x, m_y, m_z, splay, half_corner, sides, tilt = (
        quantity.symbol for quantity in spoken_of
    )
    root = sympy.sqrt(3)
    return (
        Derivation.start(
            "The tilt of the saw",
            spoken_of,
            equation(sympy.sin(tilt), n_x * m_x + n_y * m_y + n_z * m_z),
            "a cut square to the face would look along the face, square to the face's own direction: the sum of "
            "products would be nothing. What it is more than nothing is the sine of the tilt",
            subject="tilt",
            example={
                n_x: root / 2,
                n_y: 0,
                n_z: -sympy.Rational(1, 2),
                m_x: sympy.Rational(1, 2),
                m_y: -root / 2,
                m_z: 0,
                splay: sympy.pi / 6,
                half_corner: sympy.pi / 6,
                sides: 6,
                tilt: sympy.asin(root / 4),
            },
            keeps={"splay": "outward; inward by as much gives the same tilt"},
        )
        .then(Substitute(n_x, sympy.cos(splay)), "the face looks outward by the cosine of its splay")
        .then(Substitute(n_z, -sympy.sin(splay)), "and a little downward, by the sine")
        .then(
            Substitute(m_x, sympy.sin(half_corner)),
            "the mitre's plane stands upright and halves the corner, so it looks along the side but for half of "
            "what the wall turns there: outward by the sine of that",
        )
        .then(Substitute(m_y, -sympy.cos(half_corner)), "and back along the side by the cosine")
        .then(Substitute(n_y, sympy.Integer(0)), "the face does not look along itself")
        .then(Substitute(m_z, sympy.Integer(0)), "and the mitre's plane is upright, so it looks level")
        .then(
            Substitute(half_corner, sympy.pi / sides),
            "once round is a whole turn, shared among the corners; half of each share counts",
        )
        .then(Isolate(tilt, keep="a saw is tilted by less than a right angle"), "we want the tilt itself")
    )


@functools.cache
def face_derivation() -> Derivation:
    """Derive the mitre across the face of a box of equal leaning sides.

    Returns
    -------
    Derivation
        Its result gives `face_mitre` (degrees) from `splay` and `sides`.

    Source: the scalar product of two directions.

    >>> round(face_derivation().function("face_mitre")(splay=90.0, sides=4), 9)
    45.0
    """
    spoken_of = quantities(
        "hip_x",
        "hip_y",
        "hip_z",
        "plane_x",
        "plane_y",
        "plane_z",
        "splay",
        "half_corner",
        "sides",
        "face_mitre",
    )
    k_x, k_y, k_z, m_x, m_y, m_z, splay, half_corner, sides, mitre = (
        quantity.symbol for quantity in spoken_of
    )
    root = sympy.sqrt(3)
    return (
        Derivation.start(
            "The mitre across the face",
            spoken_of,
            equation(k_x * m_x + k_y * m_y + k_z * m_z, sympy.Integer(0)),
            "the corner's edge lies in the mitre's plane, so it stands square to the direction in which that "
            "plane looks",
            subject="face_mitre",
            example={
                k_x: sympy.Rational(1, 2),
                k_y: root / 6,
                k_z: root / 2,
                m_x: sympy.Rational(1, 2),
                m_y: -root / 2,
                m_z: 0,
                splay: sympy.pi / 6,
                half_corner: sympy.pi / 6,
                sides: 6,
                mitre: sympy.atan(1 / (2 * root)),
            },
            keeps={"splay": "outward, by less than a right angle"},
        )
        .then(
            Substitute(k_x, sympy.sin(splay)),
            "take the stretch that goes one unit up the side's face, for it lies in that face as well: it goes "
            "outward by the sine",
        )
        .then(Substitute(k_z, sympy.cos(splay)), "and rises by the cosine")
        .then(Substitute(m_z, sympy.Integer(0)), "the mitre's plane is upright, so it looks level")
        .then(Substitute(m_x, sympy.sin(half_corner)), "outward by the sine of half of what the wall turns")
        .then(Substitute(m_y, -sympy.cos(half_corner)), "and back along the side by the cosine")
        .then(Isolate(k_y), "how far the edge runs along the side is wanted")
        .then(
            Substitute(k_y, sympy.tan(mitre)),
            "so far along for one unit up the face: an offset and a thickness, and their ratio is the tangent of "
            "the bevel",
        )
        .then(
            Substitute(half_corner, sympy.pi / sides),
            "once round is a whole turn, shared among the corners; half of each share counts",
        )
        .then(Isolate(mitre), "we want the mitre itself")
    )


@dataclass(frozen=True)
class RegularMitre:
    """The two settings of the saw for a box of equal leaning sides.

    Parameters
    ----------
    face_mitre : float
        Across the face, in degrees off square to the board's level edge.
    tilt : float
        Of the blade, in degrees off square to the face.

    >>> RegularMitre(9.85, 44.14).tilt
    44.14
    """

    face_mitre: float
    tilt: float


def regular_mitre(sides: int, splay: float) -> RegularMitre:
    """Settings of the saw for a box of equal sides that lean alike.

    Parameters
    ----------
    sides : int
        How many, 3 or more.
    splay : float
        Lean from upright, in degrees, 0 to 90: 0 for an upright box, 90 for a frame that lies flat.

    Returns
    -------
    RegularMitre
        Mitre across the face and tilt of the blade, both in degrees off square.

    Raises
    ------
    ImpossibleShape
        If there are fewer than three sides, or the splay is not between 0 and 90 degrees.

    Source: `face_derivation` and `tilt_derivation`.

    >>> settings = regular_mitre(sides=4, splay=45)
    >>> round(settings.face_mitre, 2), round(settings.tilt, 2)
    (35.26, 30.0)
    """
    if sides != int(sides) or sides < 3:
        raise ImpossibleShape(f"A box of {sides:g} sides does not close. Give a whole number, 3 or more.")
    if not 0 <= splay <= 90:
        raise ImpossibleShape(
            f"The splay is {splay:g} degrees. Count it from upright: 0 for an upright box, 90 for one that lies flat."
        )
    return RegularMitre(
        face_derivation().function("face_mitre")(splay=splay, sides=sides),
        tilt_derivation().function("tilt")(splay=splay, sides=sides),
    )


def pitch(splay: float) -> float:
    """Pitch from the bench that a printed table lists for a splay from upright.

    Parameters
    ----------
    splay : float
        Lean from upright, in degrees.

    Returns
    -------
    float
        Lean from level, in degrees: the two make a right angle together.

    Raises
    ------
    ImpossibleShape
        If the splay is not a plain number.

    Source: `pitch_derivation`.

    >>> round(pitch(15), 9)
    75.0
    """
    return pitch_derivation().function("pitch")(splay=splay)
