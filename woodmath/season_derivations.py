"""What the seasons do to joinery, derived: the groove for a panel, the splay of an end, a mitre of 45 degrees.

Each follows from one fact: wood moves across its grain and not along it.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation
from woodmath.operations import Expand, Isolate, Substitute, equation
from woodmath.quantities import worded
from woodmath.splay_derivations import splay_derivation

_WORDS = {
    "groove_depth": ("g", "depth of the groove", "length", "positive"),
    "tongue": ("l", "length of the tongue, as the panel is made", "length", "positive"),
    "clearance": (
        "c",
        "from the tongue's end to the groove's floor, as the panel is made",
        "length",
        "nonnegative",
    ),
    "hold": ("k", "how far the tongue must still stand in the groove at its driest", "length", "nonnegative"),
    "grows": ("u", "what the panel's edge moves outward until the dampest day", "length", "nonnegative"),
    "shrinks": ("v", "what it moves back until the driest day", "length", "nonnegative"),
    "edge_moves": ("m", "what one edge of the board moves", "length", "real"),
    "change": (r"\Delta D", "change of the whole width", "length", "real"),
    "width": ("D", "width of the board, across the grain", "length", "positive"),
    "held": ("d", "from the edge to the place where the board is held", "length", "nonnegative"),
    "splay": (r"\alpha", "lean of the edge from upright, as it was made", "degrees", "real"),
    "new_splay": (r"\alpha'", "lean of the edge afterwards", "degrees", "real"),
    "outward": (
        "o",
        "how far the edge goes outward from bottom to top: along the grain, so it stays",
        "length",
        "real",
    ),
    "height": ("h", "height of the panel as it was made: across the grain", "length", "positive"),
    "new_height": ("h'", "height of the panel afterwards", "length", "positive"),
    "mitre": (r"\mu", "angle of the mitre to the board's length, afterwards", "degrees", "positive"),
    "along": ("a", "how far the mitre runs along the board", "length", "positive"),
    "across": ("b", "how far it runs across it, afterwards", "length", "positive"),
    "shrinkage": (
        "s",
        "what the board has lost of its width, as a part of 1; less than 0 when it swells",
        "number",
        "real",
    ),
    "opening": (
        r"\gamma",
        "angle between the two mitres, open toward the inside; less than 0 toward the outside",
        "degrees",
        "real",
    ),
    "gap": ("j", "width of the gap at its open end", "length", "real"),
}


@functools.cache
def edge_derivation() -> Derivation:
    """Derive what the edge of a board moves that is held at one place.

    Returns
    -------
    Derivation
        Its result gives `edge_moves` from `change`, `width` and `held` (lengths).

    Source: plane geometry; every part of the width moves in proportion.

    >>> edge_derivation().function("edge_moves")(change=0.12, width=8.0, held=4.0)
    0.06
    """
    quantities = worded(_WORDS, ("edge_moves", "change", "width", "held"))
    moves, change, width, held = (each.symbol for each in quantities)
    return Derivation.start(
        "What an edge moves",
        quantities,
        equation(moves / held, change / width),
        "a board moves evenly over its width, so the part between the edge and the place where it is held has the "
        "same share in the movement as in the width",
        subject="edge_moves",
        example={moves: 3, change: 6, width: 8, held: 4},
    ).then(Isolate(moves), "hold it in the middle, and each edge moves half as much as the board")


@functools.cache
def groove_derivation() -> Derivation:
    """Derive how deep a groove must be in which a panel neither strikes the floor nor comes out.

    Returns
    -------
    Derivation
        Its result gives `groove_depth` from `hold`, `shrinks` and `grows` (lengths).

    Source: plane geometry; a panel free in its grooves (common practice).

    >>> round(groove_derivation().function("groove_depth")(hold=0.25, shrinks=0.03, grows=0.04), 9)
    0.32
    """
    quantities = worded(_WORDS, ("groove_depth", "tongue", "clearance", "hold", "grows", "shrinks"))
    depth, tongue, clearance, hold, grows, shrinks = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "The groove that a panel wants",
            quantities,
            equation(depth, tongue + clearance),
            "on the day on which the panel is made its tongue stands in the groove, and what is left before the "
            "floor is the clearance",
            subject="groove_depth",
            example={depth: 12, tongue: 9, clearance: 3, hold: 7, grows: 3, shrinks: 2},
        )
        .then(
            Substitute(clearance, grows),
            "on the dampest day the tongue may just reach the floor: the clearance is what the edge moves outward "
            "until then",
        )
        .then(
            Substitute(tongue, hold + shrinks),
            "on the driest day it must still be held: the tongue is that hold and what the edge moves back until "
            "then",
        )
    )


@functools.cache
def splay_change_derivation() -> Derivation:
    """Derive the lean of an end's edges after the panel has changed its height.

    Returns
    -------
    Derivation
        Its result gives `new_splay` (degrees) from `splay` (degrees), `height` and `new_height`.

    Source: plane trigonometry, the splay's own rule with another height.

    >>> turned = splay_change_derivation().function("new_splay")
    >>> round(turned(splay=9.0, height=8.0, new_height=8.12), 2)
    8.87
    """
    rule = splay_derivation()
    words = worded(_WORDS, ("new_splay", "splay", "outward", "height", "new_height"))
    new_splay, splay, outward, height, new_height = (each.symbol for each in words)
    theirs = {str(each.symbol): each.symbol for each in rule.quantities}
    given = rule.result.subs(
        {theirs["splay"]: new_splay, theirs["outward"]: outward, theirs["height"]: new_height},
        simultaneous=True,
    )
    return Derivation.start(
        "The splay of a panel that has moved",
        words,
        given,
        "the splay's own rule, for the panel as it is now: the tangent is outward over height",
        subject="new_splay",
        example={
            new_splay: sympy.atan(sympy.Rational(3, 4)),
            splay: sympy.pi / 4,
            outward: 3,
            height: 3,
            new_height: 4,
        },
    ).then(
        Substitute(outward, height * sympy.tan(splay)),
        "the widths lie along the grain and stay, and so does what the edge goes outward; it follows from the "
        "splay and the height as they were made",
    )


@functools.cache
def mitre_derivation() -> Derivation:
    """Derive the angle between two mitres of 45 degrees whose boards have become narrower.

    Returns
    -------
    Derivation
        Its result gives `opening` (degrees) from `shrinkage`, a part of 1.

    Source: plane trigonometry; a board keeps its length.

    >>> round(mitre_derivation().function("opening")(shrinkage=0.02), 2)
    1.16
    """
    quantities = worded(_WORDS, ("opening", "mitre", "along", "across", "shrinkage"))
    opening, mitre, along, across, shrinkage = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "A mitre that opens",
            quantities,
            equation(opening, sympy.pi / 2 - 2 * mitre),
            "two boards lie at a right angle and touch at the outer corner; each mitre turns its own angle from "
            "its board, and what the two leave of the right angle is the gap",
            subject="opening",
            example={
                opening: sympy.pi / 2 - 2 * sympy.atan(sympy.Rational(3, 4)),
                mitre: sympy.atan(sympy.Rational(3, 4)),
                along: 4,
                across: 3,
                shrinkage: sympy.Rational(1, 4),
            },
        )
        .then(
            Substitute(mitre, sympy.atan(across / along)),
            "the mitre runs so far along the board and so far across it: its angle has their ratio for a tangent",
        )
        .then(
            Substitute(across, along * (1 - shrinkage)),
            "sawn at 45 degrees the two were alike; the way along has stayed, the way across has lost its part. "
            "More than nothing is left between them, and it lies inside",
        )
    )


@functools.cache
def mitre_gap_derivation() -> Derivation:
    """Derive how wide a mitre of 45 degrees gapes at its inner end.

    Returns
    -------
    Derivation
        Its result gives `gap` from `width` (as it was sawn) and `shrinkage`.

    Source: plane geometry, the diagonal of a square.

    >>> round(mitre_gap_derivation().function("gap")(width=3.0, shrinkage=0.02), 4)
    0.0849
    """
    quantities = worded(_WORDS, ("gap", "width", "across", "shrinkage"))
    gap, width, across, shrinkage = (each.symbol for each in quantities)
    return (
        Derivation.start(
            "How wide a mitre gapes",
            quantities,
            equation(gap, sympy.sqrt(2) * (width - across)),
            "each board's inner corner has moved straight across its own board by what the board has lost; the "
            "two ways stand square to one another, so the corners are the diagonal of that square apart",
            subject="gap",
            example={gap: sympy.sqrt(2), width: 4, across: 3, shrinkage: sympy.Rational(1, 4)},
        )
        .then(
            Substitute(across, width * (1 - shrinkage)),
            "what is left of the width, once it has lost its part",
        )
        .then(Expand(), "the width as it was falls out: only what was lost opens the joint")
    )
