"""The corner where two leaning boards meet, derived from the directions in which their faces look.

The side runs along x and leans outward along y; the end runs along y and leans outward along x; z is upright. A
board's face looks along its normal, a direction one unit long. Two directions stand square to one another when
the products of their components add up to nothing; else the sum is the cosine of the angle between them.
"""

from __future__ import annotations

import functools
from types import MappingProxyType

import sympy

from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Divide, Isolate, Multiply, Substitute, equation
from woodmath.quantities import worded

# Splays are real: a pair of boards may also lean inward. Components of a direction are plain numbers.
_WORDS = MappingProxyType(
    {
        "side_splay": (r"\alpha", "lean of the side from upright, outward", "degrees", "real"),
        "end_splay": (r"\beta", "lean of the end from upright, outward", "degrees", "real"),
        "own_splay": (r"\alpha", "lean of the board that is cut, from upright, outward", "degrees", "real"),
        "other_splay": (
            r"\beta",
            "lean of the board that it meets, from upright, outward",
            "degrees",
            "real",
        ),
        "side_x": ("n_x", "direction inward from the side's outer face, along the side", "number", "real"),
        "side_y": ("n_y", "the same, across the piece", "number", "real"),
        "side_z": ("n_z", "the same, upward", "number", "real"),
        "other_x": (
            "m_x",
            "direction of the other board's outer face, along the board that is cut",
            "number",
            "real",
        ),
        "other_y": ("m_y", "the same, square to that", "number", "real"),
        "other_z": ("m_z", "the same, upward", "number", "real"),
        "dihedral": ("D", "corner between the two boards, inside, square to the hip", "degrees", "positive"),
        "butt_tilt": ("T_b", "tilt of a butt joint's cut, off square to the face", "degrees", "real"),
        "hip_x": ("k_x", "a stretch of the hip, along the board", "number", "real"),
        "hip_y": ("k_y", "the same stretch, square to the board in plan", "number", "real"),
        "hip_z": ("k_z", "the same stretch, upward", "number", "real"),
        "face_angle": (
            r"\varphi",
            "cut across the board's face, off square to its level edge",
            "degrees",
            "real",
        ),
        "hip_lean": (r"\eta", "lean of the hip from upright", "degrees", "nonnegative"),
        "hip_plan": ("k_p", "the same stretch of the hip as it is seen from above", "number", "nonnegative"),
        "own_thickness": ("t_1", "thickness of the board that is cut", "length", "positive"),
        "other_thickness": ("t_2", "thickness of the board that it meets", "length", "positive"),
        "inward_x": (
            "i_x",
            "inward from the other board's face, along the board that is cut",
            "number",
            "real",
        ),
        "inward_y": ("i_y", "the same, through that board's thickness", "number", "real"),
        "along": ("g", "how far the inner hip stands along the face from the outer one", "length", "real"),
        "mitre_tilt": ("T_m", "tilt of the mitre's cut, off square to the face", "degrees", "real"),
    }
)


def quantities(*names: str) -> tuple[Quantity, ...]:
    r"""Return the quantities that the corner's derivations speak of, always with the same letter and meaning.

    Parameters
    ----------
    *names : str
        Their names, in the order in which a derivation introduces them.

    Returns
    -------
    tuple of Quantity
        One for each name.

    >>> [quantity.letter for quantity in quantities("dihedral", "hip_lean")]
    ['D', '\\eta']
    """
    return worded(_WORDS, names)


@functools.cache
def dihedral_derivation() -> Derivation:
    """Derive the corner between two leaning boards from the directions of their faces.

    Returns
    -------
    Derivation
        Its result gives `dihedral` (degrees) from `side_splay` and `end_splay`.

    Source: the scalar product of two directions.

    >>> round(dihedral_derivation().function("dihedral")(side_splay=45.0, end_splay=45.0), 9)
    120.0
    """
    spoken_of = quantities(
        "side_splay", "end_splay", "side_x", "side_y", "side_z", "other_x", "other_y", "other_z", "dihedral"
    )
    side, end, n_x, n_y, n_z, m_x, m_y, m_z, dihedral = (quantity.symbol for quantity in spoken_of)
    half = sympy.sqrt(2) / 2
    return (
        Derivation.start(
            "The corner between two leaning boards",
            spoken_of,
            equation(sympy.cos(dihedral), n_x * m_x + n_y * m_y + n_z * m_z),
            "take the direction inward from the side's face and the one outward from the end's, each one unit "
            "long: the angle between these two is the corner between the boards, and its cosine is the sum of the "
            "products of their components",
            subject="dihedral",
            example={
                side: sympy.pi / 4,
                end: sympy.pi / 4,
                n_x: 0,
                n_y: -half,
                n_z: half,
                m_x: half,
                m_y: 0,
                m_z: -half,
                dihedral: 2 * sympy.pi / 3,
            },
            keeps={
                "side_splay": "a board that leans less than a right angle",
                "end_splay": "a board that leans less than a right angle",
            },
        )
        .then(
            Substitute(m_x, sympy.cos(end)), "the end's face looks outward along x by the cosine of its splay"
        )
        .then(
            Substitute(m_z, -sympy.sin(end)),
            "and, because the end leans outward, a little downward, by the sine",
        )
        .then(
            Substitute(n_y, -sympy.cos(side)),
            "inward from the side goes back along y, by the cosine of its splay",
        )
        .then(Substitute(n_z, sympy.sin(side)), "and a little upward, by the sine")
        .then(
            Substitute(n_x, sympy.Integer(0)),
            "the side runs along x, so its face does not look that way at all",
        )
        .then(Substitute(m_y, sympy.Integer(0)), "nor does the end's face look along y")
        .then(
            Isolate(dihedral, keep="a corner inside is less than half a turn"),
            "a cosine less than nothing belongs to more than a right angle: where both lean outward the corner "
            "is opened",
        )
    )


@functools.cache
def butt_tilt_derivation() -> Derivation:
    """Derive how far off square the end of a board is sawn that butts against its neighbour's face.

    Returns
    -------
    Derivation
        Its result gives `butt_tilt` (degrees) from `side_splay` and `end_splay`.

    Source: `dihedral_derivation`.

    >>> round(butt_tilt_derivation().function("butt_tilt")(side_splay=45.0, end_splay=45.0), 9)
    30.0
    """
    spoken_of = quantities("side_splay", "end_splay", "dihedral", "butt_tilt")
    side, end, dihedral, tilt = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The tilt of a butt joint",
            spoken_of,
            equation(sympy.cos(dihedral), sympy.cos(dihedral_derivation().result.rhs)),
            "this is the corner between the two boards",
            subject="butt_tilt",
            example={side: sympy.pi / 4, end: sympy.pi / 4, dihedral: 2 * sympy.pi / 3, tilt: sympy.pi / 6},
            keeps={
                "side_splay": "a board that leans less than a right angle",
                "end_splay": "a board that leans less than a right angle",
            },
        )
        .then(
            Substitute(dihedral, tilt + sympy.pi / 2),
            "the cut lies in the neighbour's face, so it makes the corner's angle with its own; what is more than "
            "a right angle is tilt",
        )
        .then(Multiply(sympy.Integer(-1)), "both sides are less than nothing where both boards lean outward")
        .then(Isolate(tilt, keep="a saw is tilted by less than a right angle"), "we want the tilt itself")
    )


@functools.cache
def face_angle_derivation() -> Derivation:
    """Derive the line across a board's face at which it meets a leaning neighbour.

    Returns
    -------
    Derivation
        Its result gives `face_angle` (degrees) from `own_splay` and `other_splay`.

    Source: the scalar product of two directions.

    >>> round(face_angle_derivation().function("face_angle")(own_splay=0.0, other_splay=10.0), 9)
    10.0
    """
    spoken_of = quantities(
        "own_splay", "other_splay", "hip_x", "hip_y", "hip_z", "other_x", "other_y", "other_z", "face_angle"
    )
    own, other, k_x, k_y, k_z, m_x, m_y, m_z, face = (quantity.symbol for quantity in spoken_of)
    root = sympy.sqrt(3)
    return (
        Derivation.start(
            "The line across the face",
            spoken_of,
            equation(k_x * m_x + k_y * m_y + k_z * m_z, sympy.Integer(0)),
            "the hip, where the two outer faces meet, lies in the neighbour's face, so it stands square to the "
            "direction in which that face looks",
            subject="face_angle",
            example={
                own: sympy.pi / 3,
                other: sympy.pi / 6,
                k_x: root / 6,
                k_y: root / 2,
                k_z: sympy.Rational(1, 2),
                m_x: root / 2,
                m_y: 0,
                m_z: -sympy.Rational(1, 2),
                face: sympy.atan(root / 6),
            },
            keeps={
                "own_splay": "outward, by less than a right angle",
            },
        )
        .then(
            Substitute(m_x, sympy.cos(other)), "the neighbour's face looks outward by the cosine of its splay"
        )
        .then(Substitute(m_z, -sympy.sin(other)), "and downward by the sine")
        .then(
            Substitute(k_z, sympy.cos(own)),
            "take the stretch of the hip that goes one unit up this board's face, for it lies in that face too: it "
            "rises by the cosine of the board's own splay",
        )
        .then(Substitute(k_y, sympy.sin(own)), "and goes outward by the sine")
        .then(Substitute(m_y, sympy.Integer(0)), "but that way the neighbour's face does not look")
        .then(Isolate(k_x), "how far the hip runs along the board is wanted")
        .then(
            Substitute(k_x, sympy.tan(face)),
            "so far along for one unit up the face: an offset and a thickness, and their ratio is the tangent of "
            "the bevel",
        )
        .then(Isolate(face), "we want the angle itself")
    )


@functools.cache
def hip_lean_derivation() -> Derivation:
    """Derive how much the edge where two leaning faces meet leans itself.

    Returns
    -------
    Derivation
        Its result gives `hip_lean` (degrees) from `side_splay` and `end_splay`.

    Source: Pythagoras in plan; the hip rafter of a roof is found so.

    >>> round(hip_lean_derivation().function("hip_lean")(side_splay=0.0, end_splay=10.0), 9)
    10.0
    """
    spoken_of = quantities("side_splay", "end_splay", "hip_x", "hip_y", "hip_plan", "hip_lean")
    side, end, k_x, k_y, plan, lean = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The lean of the hip",
            spoken_of,
            equation(plan**2, k_x**2 + k_y**2),
            "seen from above, a stretch of the hip is the long side of a right triangle",
            subject="hip_lean",
            example={
                side: sympy.pi / 4,
                end: sympy.atan(sympy.Rational(3, 4)),
                k_x: sympy.Rational(3, 4),
                k_y: 1,
                plan: sympy.Rational(5, 4),
                lean: sympy.atan(sympy.Rational(5, 4)),
            },
            keeps={
                "side_splay": "outward, by less than a right angle",
                "end_splay": "outward, by less than a right angle",
            },
        )
        .then(
            Substitute(k_x, sympy.tan(end)),
            "take the stretch that rises one unit: it follows the end outward by its tangent",
        )
        .then(Substitute(k_y, sympy.tan(side)), "and the side by its own")
        .then(Substitute(plan, sympy.tan(lean)), "its own lean is counted in the same way")
        .then(
            Isolate(lean, keep="a lean counts from nothing upward"),
            "we want the lean itself; it is always more than either of the two splays",
        )
    )


@functools.cache
def mitre_tilt_derivation() -> Derivation:
    """Derive the tilt of a mitre through the outer and the inner hip, whatever the two thicknesses.

    Returns
    -------
    Derivation
        Its result gives `mitre_tilt` (degrees) from `dihedral`, `own_thickness` and `other_thickness`.

    Source: the scalar product, in the section square to the hip; then the bevel struck from two distances.

    >>> rule = mitre_tilt_derivation().function("mitre_tilt")
    >>> round(rule(dihedral=90.0, own_thickness=1.0, other_thickness=1.0), 9)
    45.0
    """
    spoken_of = quantities(
        "dihedral", "own_thickness", "other_thickness", "inward_x", "inward_y", "along", "mitre_tilt"
    )
    dihedral, own, other, i_x, i_y, along, tilt = (quantity.symbol for quantity in spoken_of)
    return (
        Derivation.start(
            "The tilt of the mitre",
            spoken_of,
            equation(along * i_x + own * i_y, other),
            "in the section square to the hip, lay the board's outer face along x and its thickness along y: the "
            "inner hip stands so far along and one thickness in. Its distance from the other outer face, which is "
            "the other thickness, is the sum of products with the direction inward from that face",
            subject="mitre_tilt",
            example={
                dihedral: 2 * sympy.pi / 3,
                own: 2,
                other: 2,
                i_x: sympy.sqrt(3) / 2,
                i_y: sympy.Rational(1, 2),
                along: 2 / sympy.sqrt(3),
                tilt: sympy.pi / 6,
            },
        )
        .then(
            Substitute(i_x, sympy.sin(dihedral)),
            "the other face lies at the corner's angle; the direction inward is square to it",
        )
        .then(Substitute(i_y, -sympy.cos(dihedral)), "its second component is the cosine, turned about")
        .then(Isolate(along), "that is how far the mitre runs along while it crosses the board")
        .then(
            Substitute(along, own * sympy.tan(tilt)),
            "an offset along the face and the thickness that the cut crosses strike a bevel",
        )
        .then(Divide(own), "the tangent is wanted alone")
        .then(Isolate(tilt), "equal thicknesses halve the corner; unequal ones do not")
    )
