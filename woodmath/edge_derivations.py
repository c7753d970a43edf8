"""The rules of a panel's edge, derived: what a rebate takes, where the panel's face comes to lie, what a groove leaves.

All of them add up lengths that stand end to end; those of the bead are in `bead`.
"""

from __future__ import annotations

import functools

import sympy

from woodmath.derivation import Derivation, Limit, Quantity
from woodmath.operations import Isolate, Substitute, equation


@functools.cache
def rebate_derivation() -> Derivation:
    """Derive how deep a rebate goes, from the board and the tongue that it leaves.

    Returns
    -------
    Derivation
        Its result gives `depth` from `board` and `tongue`.

    Source: thicknesses set one on the other.

    >>> rebate_derivation().result
    Eq(depth, board - tongue)
    """
    board, tongue, depth = _board(), _tongue(), _depth()
    return Derivation.start(
        "What a rebate takes and what it leaves",
        (board, tongue, depth),
        equation(board.symbol, depth.symbol + tongue.symbol),
        "across its thickness the edge is what the fillister takes away and what it leaves: the rebate and the "
        "tongue together are the board",
        subject="depth",
        example={board.symbol: 7, tongue.symbol: 4, depth.symbol: 3},
        limits=(
            Limit(
                tongue.symbol < board.symbol,
                "The tongue is what a rebate leaves of the board, so it is thinner than the board: choose a "
                "thinner tongue or a thicker board",
            ),
        ),
    ).then(Isolate(depth.symbol), "we want the depth of the rebate, which is where the depth stop is set")


@functools.cache
def share_derivation() -> Derivation:
    """Derive which share of the board a rebate takes.

    Returns
    -------
    Derivation
        Its result gives `share` (a number) from `board` and `tongue`.

    Source: `rebate_derivation`, divided by the board.

    >>> share_derivation().function("share")(board=0.75, tongue=0.375)
    0.5
    """
    rule = rebate_derivation()
    share = sympy.Symbol("share", positive=True)
    board, tongue, depth = (rule.quantity(name).symbol for name in ("board", "tongue", "depth"))
    return Derivation.start(
        "Which share of the board a rebate takes",
        (*rule.quantities, Quantity(share, "q", "what the rebate takes of the board's thickness", "number")),
        equation(share, depth / board),
        "a share is the part over the whole: the rebate's depth over the board",
        subject="share",
        example={board: 7, tongue: 4, depth: 3, share: sympy.Rational(3, 7)},
        limits=rule.limits,
    ).then(Substitute(depth, rule.result.rhs), "the depth is what the tongue leaves of the board")


@functools.cache
def panel_derivation() -> Derivation:
    """Derive how far the panel's outer face lies behind the post's, when it is rebated from the outer face.

    Returns
    -------
    Derivation
        Its result gives `panel_set_back` from `set_back`, `board` and `tongue`; less than 0 where the panel
        stands proud of the post.

    Source: thicknesses set one behind the other.

    >>> panel_derivation().function("panel_set_back")(set_back=0.5, board=0.875, tongue=0.5)
    0.125
    """
    rule = rebate_derivation()
    taken = _taken()
    return _panel_start("A panel rebated from its outer face").then(
        Substitute(taken.symbol, rule.result.rhs),
        "the whole rebate is taken from this face, and it is as deep as the board is thicker than the tongue",
    )


@functools.cache
def inner_face_derivation() -> Derivation:
    """Derive how far the panel's outer face lies behind the post's, when it is rebated from the inner face.

    Returns
    -------
    Derivation
        Its result gives `panel_set_back` from `set_back` alone.

    Source: thicknesses set one behind the other.

    >>> inner_face_derivation().result
    Eq(panel_set_back, set_back)
    """
    return _panel_start("A panel rebated from its inner face").then(
        Substitute(_taken().symbol, sympy.Integer(0)),
        "nothing is taken from the outer face: it runs on, and is the tongue's outer cheek as well",
    )


@functools.cache
def groove_derivation() -> Derivation:
    """Derive what a groove leaves of the post on its inside.

    Returns
    -------
    Derivation
        Its result gives `inside` from `post`, `set_back` and `width`.

    Source: thicknesses set one behind the other.

    >>> groove_derivation().function("inside")(post=1.75, set_back=0.5, width=0.5)
    0.75
    """
    post = Quantity(sympy.Symbol("post", positive=True), "s", "post, square")
    width = Quantity(sympy.Symbol("width", positive=True), "w", "width of the groove")
    inside = Quantity(sympy.Symbol("inside", positive=True), "i", "wood left on the groove's inside")
    set_back = _set_back()
    return Derivation.start(
        "What a groove leaves of the post",
        (post, set_back, width, inside),
        equation(post.symbol, set_back.symbol + width.symbol + inside.symbol),
        "from the outer face to the inner one the post is the set-back, the groove, and the wood inside it",
        subject="inside",
        example={post.symbol: 7, set_back.symbol: 2, width.symbol: 2, inside.symbol: 3},
        limits=(
            Limit(
                set_back.symbol + width.symbol < post.symbol,
                "The groove runs out through the post's inner face: make the set-back or the tongue less, or "
                "take a thicker post",
            ),
        ),
    ).then(
        Isolate(inside.symbol), "we want the wood on the inside; that on the outside is the set-back itself"
    )


@functools.cache
def floor_derivation() -> Derivation:
    """Derive the clearance between a tongue's end and its groove's floor.

    Returns
    -------
    Derivation
        Its result gives `floor_clearance` from `groove_depth` and `tongue_length`; less than 0 where the tongue
        touches the floor before its shoulder closes.

    Source: lengths set end to end.

    >>> floor_derivation().function("floor_clearance")(groove_depth=0.375, tongue_length=0.3125)
    0.0625
    """
    depth = Quantity(sympy.Symbol("groove_depth", positive=True), "d", "depth of the groove")
    length = Quantity(
        sympy.Symbol("tongue_length", positive=True), r"\ell", "tongue, from the shoulder to its end"
    )
    clearance = Quantity(sympy.Symbol("floor_clearance", real=True), "c", "left free at the groove's floor")
    return Derivation.start(
        "What is left free at the groove's floor",
        (depth, length, clearance),
        equation(depth.symbol, length.symbol + clearance.symbol),
        "with the shoulder closed, the groove is as deep as the tongue is long and what is free beyond its end",
        subject="floor_clearance",
        example={depth.symbol: 6, length.symbol: 5, clearance.symbol: 1},
    ).then(
        Isolate(clearance.symbol), "we want the clearance; less than nothing means that the tongue bottoms"
    )


@functools.cache
def play_derivation() -> Derivation:
    """Derive the play of a tongue from side to side in its groove.

    Returns
    -------
    Derivation
        Its result gives `side_play` from `groove_width` and `tongue_thickness`; less than 0 where the tongue will
        not go in.

    Source: thicknesses set side by side.

    >>> play_derivation().function("side_play")(groove_width=0.5, tongue_thickness=0.5)
    0.0
    """
    width = Quantity(sympy.Symbol("groove_width", positive=True), "w", "width of the groove")
    tongue = Quantity(sympy.Symbol("tongue_thickness", positive=True), "t", "thickness of the tongue")
    play = Quantity(sympy.Symbol("side_play", real=True), "p", "play of the tongue, both cheeks together")
    return Derivation.start(
        "The play of a tongue from side to side",
        (width, tongue, play),
        equation(width.symbol, tongue.symbol + play.symbol),
        "from cheek to cheek the groove is the tongue and what is free beside it",
        subject="side_play",
        example={width.symbol: 5, tongue.symbol: 4, play.symbol: 1},
    ).then(Isolate(play.symbol), "we want the play; less than nothing means that the tongue is too thick")


@functools.cache
def taps_derivation() -> Derivation:
    """Derive how many taps of the mallet a length of groove takes, from what a few of them do.

    Returns
    -------
    Derivation
        Its result gives `taps` (a number) from `length`, `taps_each` and `advance`.

    Source: proportion.

    >>> taps_derivation().function("taps")(length=8.0, taps_each=2.0, advance=0.25)
    64.0
    """
    taps, each = sympy.symbols("taps taps_each", positive=True)
    length, advance = sympy.symbols("length advance", positive=True)
    return Derivation.start(
        "How many taps a length of groove takes",
        (
            Quantity(taps, "n", "taps along the whole length, one pass", "number"),
            Quantity(length, "L", "length of the groove"),
            Quantity(each, "k", "taps to a step of the chisel", "number"),
            Quantity(advance, "a", "how much further the groove is after a step"),
        ),
        equation(taps / length, each / advance),
        "the chisel goes on evenly: taps to the whole length as taps of one step to that step",
        subject="taps",
        example={taps: 8, length: 2, each: 4, advance: 1},
    ).then(Isolate(taps), "we want the taps for the whole length")


def _panel_start(title: str) -> Derivation:
    """Return the start that both faces share: what is taken from the outer face brings it forward again."""
    rule = rebate_derivation()
    board, tongue = rule.quantity("board"), rule.quantity("tongue")
    set_back, taken = _set_back(), _taken()
    # Real, not positive: a thick panel may stand proud of its post.
    panel = Quantity(
        sympy.Symbol("panel_set_back", real=True), "p", "post's outer face to the panel's outer face"
    )
    from_outside = title.endswith("outer face")
    return Derivation.start(
        title,
        (set_back, board, tongue, taken, panel),
        equation(set_back.symbol, panel.symbol + taken.symbol),
        "from the post's outer face to the tongue's outer cheek is the set-back; on the way you meet the panel's "
        "outer face first, and then the wood that was taken off it",
        subject="panel_set_back",
        example={
            set_back.symbol: 4,
            board.symbol: 7,
            tongue.symbol: 4,
            taken.symbol: 3 if from_outside else 0,
            panel.symbol: 1 if from_outside else 4,
        },
        limits=rule.limits,
    ).then(Isolate(panel.symbol), "we want the set-back of the panel's face")


def _board() -> Quantity:
    return Quantity(sympy.Symbol("board", positive=True), "b", "thickness of the board")


def _tongue() -> Quantity:
    return Quantity(sympy.Symbol("tongue", positive=True), "t", "thickness that is left as the tongue")


def _depth() -> Quantity:
    return Quantity(sympy.Symbol("depth", positive=True), "r", "depth of the rebate")


def _taken() -> Quantity:
    return Quantity(sympy.Symbol("taken", nonnegative=True), "o", "wood taken off the panel's outer face")


def _set_back() -> Quantity:
    return Quantity(
        sympy.Symbol("set_back", nonnegative=True), "g", "post's outer face to the tongue's outer cheek"
    )
