"""The rules behind two tenons that meet in one post, each derived once from the post's own section.

The bevel of a mitred end follows from the two thicknesses alone. The two cheeks' lengths follow from the
post, the other mortise's set-back and the other tenon's thickness; the face on which the ends meet follows by
Pythagoras.
"""

from __future__ import annotations

import functools

import sympy

from woodmath import bevel
from woodmath.derivation import Derivation, Quantity
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def derivation() -> Derivation:
    """Derive the bevel of a mitred end, and see the post and the set-back drop out of it.

    Returns
    -------
    Derivation
        Its result speaks of `angle` (degrees off square), `other_thickness` and `tenon_thickness`; the
        lengths on the way are those of `outer_cheek_derivation` and `inner_cheek_derivation`.

    Source: plane geometry, the bevel struck by an offset across a thickness.

    >>> derivation().result
    Eq(angle, atan(other_thickness/tenon_thickness))
    """
    rule = bevel.derivation()
    angle, offset, thickness = (rule.quantity(name).symbol for name in ("angle", "offset", "thickness"))
    outer, inner, length = _outer_cheek(), _inner_cheek(), _lengths()
    return (
        Derivation.start(
            "The bevel of a mitred tenon end",
            (
                Quantity(angle, r"\beta", "bevel of the end, off square", "degrees"),
                rule.quantity("offset"),
                rule.quantity("thickness"),
                Quantity(length["tenon_thickness"].symbol, "w_1", "thickness of this tenon"),
                outer,
                inner,
                length["post"],
                length["other_set_back"],
                length["other_thickness"],
            ),
            rule.result,
            "the end is a bevel struck by an offset across a thickness",
            subject="angle",
            example={
                angle: sympy.pi / 4,
                offset: 1,
                thickness: 1,
                length["tenon_thickness"].symbol: 1,
                outer.symbol: 3,
                inner.symbol: 2,
                length["post"].symbol: 4,
                length["other_set_back"].symbol: 1,
                length["other_thickness"].symbol: 1,
            },
        )
        .then(
            Substitute(thickness, length["tenon_thickness"].symbol),
            "what the bevel crosses here is the thickness of the tenon, from cheek to cheek",
        )
        .then(
            Substitute(offset, outer.symbol - inner.symbol),
            "the long point lies on the outer cheek and the short point on the inner one, so their "
            "difference is the offset",
        )
        .then(
            Substitute(outer.symbol, outer_cheek_derivation().solved_for("outer_cheek").rhs),
            "the outer cheek runs from the inside face of the post to the other mortise's outer cheek",
        )
        .then(
            Substitute(inner.symbol, inner_cheek_derivation().solved_for("inner_cheek").rhs),
            "the inner cheek stops at the other mortise's inner cheek; the post and the set-back stand in "
            "both lengths and cancel, so the two thicknesses alone decide the bevel",
        )
    )


@functools.cache
def equal_thicknesses() -> Derivation:
    """Derive the case of two equal tenons: equal thicknesses, not equal set-backs, give 45 degrees.

    Returns
    -------
    Derivation
        Takes up the result of `derivation()`.

    Source: plane geometry; equal offsets strike 45 degrees (common practice).

    >>> equal_thicknesses().result
    Eq(angle, pi/4)
    """
    rule = derivation()
    named = ("angle", "tenon_thickness", "other_thickness")
    quantities = tuple(rule.quantity(name) for name in named)
    example = dict(rule.example)
    return Derivation.start(
        "Equal thicknesses meet at 45 degrees",
        quantities,
        rule.result,
        "this is the bevel for any two thicknesses, and no set-back stands in it",
        subject="angle",
        example={quantity.symbol: example[quantity.symbol] for quantity in quantities},
    ).then(
        Substitute(rule.quantity("other_thickness").symbol, rule.quantity("tenon_thickness").symbol),
        "with two tenons of one thickness the length drops out, and what is left is half a right angle, "
        "45 degrees, wherever the mortises stand",
    )


@functools.cache
def outer_cheek_derivation() -> Derivation:
    """Derive how long a tenon is on its outer cheek when it runs to the other mortise's outer cheek.

    Returns
    -------
    Derivation
        Its result gives `outer_cheek` from `post` and `other_set_back`.

    Source: plane geometry, lengths set end to end across the post.

    >>> outer_cheek_derivation().function("outer_cheek")(post=1.5, other_set_back=0.375)
    1.125
    """
    length, outer = _lengths(), _outer_cheek()
    return Derivation.start(
        "The outer cheek: to the long point",
        (length["post"], length["other_set_back"], outer),
        equation(length["post"].symbol, length["other_set_back"].symbol + outer.symbol),
        "from the far outer face to the inside face lie, end to end, the other mortise's set-back and the "
        "tenon's outer cheek; together they are the post",
        subject="outer_cheek",
        example={length["post"].symbol: 4, length["other_set_back"].symbol: 1, outer.symbol: 3},
    ).then(Isolate(outer.symbol), "we want the length to saw, from the shoulder to the long point")


@functools.cache
def inner_cheek_derivation() -> Derivation:
    """Derive how long a tenon is when it stops at the other mortise's inner cheek.

    Returns
    -------
    Derivation
        Its result gives `inner_cheek` from `post`, `other_set_back` and `other_thickness`. A mitred tenon
        is so long on its inner cheek, a square-ended one on both.

    Source: plane geometry, lengths set end to end across the post.

    >>> inner_cheek_derivation().function("inner_cheek")(post=1.5, other_set_back=0.375, other_thickness=0.5)
    0.625
    """
    length, inner = _lengths(), _inner_cheek()
    post, back, other = (length[name].symbol for name in ("post", "other_set_back", "other_thickness"))
    return Derivation.start(
        "The inner cheek: to the short point",
        (length["post"], length["other_set_back"], length["other_thickness"], inner),
        equation(post, back + other + inner.symbol),
        "from the far outer face to the inside face lie, end to end, the other mortise's set-back, the other "
        "tenon's thickness and this tenon's inner cheek; together they are the post",
        subject="inner_cheek",
        example={post: 4, back: 1, other: 1, inner.symbol: 2},
    ).then(Isolate(inner.symbol), "we want the length to saw, from the shoulder to the short point")


@functools.cache
def meeting_face_derivation() -> Derivation:
    """Derive the length of the face on which two mitred ends meet, seen in the post's section.

    Returns
    -------
    Derivation
        Its result gives `meeting_face` from `tenon_thickness` and `other_thickness`.

    Source: Pythagoras.

    >>> meeting_face_derivation().function("meeting_face")(tenon_thickness=3.0, other_thickness=4.0)
    5.0
    """
    face = sympy.Symbol("meeting_face", positive=True)
    length = _lengths()
    first, other = length["tenon_thickness"].symbol, length["other_thickness"].symbol
    return Derivation.start(
        "The face on which mitred ends meet",
        (
            length["tenon_thickness"],
            length["other_thickness"],
            Quantity(face, "m", "length of the meeting face, corner to corner of the crossing"),
        ),
        equation(face**2, first**2 + other**2),
        "where the two mortises cross they make a rectangle, as wide and as high as the tenons are thick, "
        "and the ends lie on its diagonal; so says Pythagoras",
        subject="meeting_face",
        example={first: 3, other: 4, face: 5},
    ).then(
        Isolate(face, keep="a face has a length, and a length is more than nothing"),
        "we want the length itself, so take the root",
    )


def _lengths() -> dict[str, Quantity]:
    return {
        "post": Quantity(sympy.Symbol("post", positive=True), "s", "side of the square post"),
        "other_set_back": Quantity(
            sympy.Symbol("other_set_back", nonnegative=True),
            "g_2",
            "set-back of the other mortise, outer face to outer cheek",
        ),
        "other_thickness": Quantity(
            sympy.Symbol("other_thickness", positive=True), "w_2", "thickness of the other tenon"
        ),
        "tenon_thickness": Quantity(
            sympy.Symbol("tenon_thickness", positive=True), "w_1", "thickness of this tenon"
        ),
    }


def _outer_cheek() -> Quantity:
    symbol = sympy.Symbol("outer_cheek", positive=True)
    return Quantity(symbol, "l_o", "length along the outer cheek, from the inside face to the long point")


def _inner_cheek() -> Quantity:
    symbol = sympy.Symbol("inner_cheek", nonnegative=True)
    return Quantity(symbol, "l_i", "length along the inner cheek, from the inside face to the short point")
