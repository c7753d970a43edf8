"""The order of work: from square stock to the finished piece, each step with the caution that belongs to it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.assembly import assembly_steps
from woodmath.boards_for_parts import glued_up
from woodmath.card import Card
from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.parts import Part, parts_of
from woodmath.turning import octagon_setting

if TYPE_CHECKING:
    from woodmath.piece import Piece

_EDGE = "Keep both hands behind the cutting edge, and hold the work in a vice or against a stop, never in the hand."
_SAW = "Start the saw with the thumb beside the blade and above the teeth; support what falls off."
_CHISEL = "Chop with the work clamped flat, pare with both hands behind the edge; a dull chisel slips first."
_BRACE = "Keep chips and fingers off the screw, and back up the far face where it might break through."
_GLUE = "Try it all dry first. Read what the glue's label says about skin, air and time."
_DUST = (
    "Wear a mask for sanding. Rags with drying oil can catch fire by themselves: spread them out flat, outdoors, "
    "to dry."
)
_DUST_MASK = "Wear a mask for sanding."
_CRAMP = "Close it with cramps and not with blows; where you must strike, strike a block of waste."
_LATHE = (
    "Face shield, no gloves, no loose sleeves or rings, hair tied. Turn it by hand before you switch on, begin slowly, "
    "and stop the lathe to move the rest and to use the calipers."
)
_END_GRAIN = (
    "The sloping edges are end grain with a lean: plane the way the fibres lean, with waste clamped behind the far "
    "corner, or from both corners toward the middle."
)

_PANELS = ("end panel", "side panel", "bottom board")


@dataclass(frozen=True)
class Step:
    """One step of the work.

    Parameters
    ----------
    what : str
        What is done, with its numbers where it has any.
    caution : str
        What belongs to the tool that does it.

    >>> Step("Saw the tenons.", "Keep the thumb above the teeth.").what
    'Saw the tenons.'
    """

    what: str
    caution: str


def order_card(piece: Piece, copies: int = 1) -> Card:
    """Print the order of work.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made at once, 1 or more; the steps are told for one.

    Returns
    -------
    Card
        Numbered steps with their cautions.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: common practice.

    >>> from woodmath.piece import Piece
    >>> order_card(Piece.demo("log-box")).columns
    ('', 'step', 'care')
    """
    return Card(
        "Order of work",
        ("" if copies == 1 else f"The steps and their numbers are for each piece; {copies} are made. ")
        + "Joints first, shaping after them, and everything tried dry before glue is opened.",
        ("", "step", "care"),
        tuple(
            (str(number), step.what, step.caution) for number, step in enumerate(steps_of(piece, copies), 1)
        ),
        notes=(
            "Follow the rules of your own workshop and the law of the place. What is made for a child or for an infant "
            "is regulated: this paper certifies nothing.",
        ),
        numeric=(0,),
    )


def steps_of(piece: Piece, copies: int = 1) -> tuple[Step, ...]:
    """Return the steps of a piece's work.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.
    copies : int
        How many pieces are made at once, 1 or more; the parts are counted for each.

    Returns
    -------
    tuple of Step
        From square stock to the finish.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: common practice; the order of assembly is `woodmath.assembly`'s.

    >>> from woodmath.piece import Piece
    >>> steps_of(Piece.demo("cat-bed"))[0].what.split(",")[0]
    'Choose the boards by the card on choosing and facing'
    """
    case, parts = Case.of(piece), parts_of(piece)
    return (
        *_stock(piece, parts, copies),
        *_posts(piece, case),
        *_panels(piece, case),
        *_rockers(piece),
        *_turning(piece, case),
        *_ornament(piece),
        *_together(piece, case),
        *_last(piece, case),
    )


def _stock(piece: Piece, parts: tuple[Part, ...], copies: int) -> Iterator[Step]:
    listed = ", ".join(f"{part.count} {part.name}{'s' if part.count > 1 else ''}" for part in parts)
    each = "" if copies == 1 else " for each piece"
    yield Step(
        f"Choose the boards{each} by the card on choosing and facing, and saw out the blanks: {listed}. Lengths first, "
        "then widths, by the cut list.",
        _SAW,
    )
    wide = _wider_than_a_board(piece, parts)
    if wide:
        yield Step(
            f"{wide} Joint the edges in pairs, so that an edge off square in one is off square the other way in its "
            "neighbour.",
            f"{_EDGE} {_GLUE}",
        )
    yield Step(
        "Plane a face side and a face edge on every part, square to one another, and mark both. On the posts they are "
        "the outer faces; on the panels put the poorer face inside.",
        _EDGE,
    )


def _wider_than_a_board(piece: Piece, parts: tuple[Part, ...]) -> str:
    """Say what is glued up; where the file lists no boards, how wide those must be that would save it."""
    if piece.boards.on_hand:
        wide = [part.name for part in parts if _is_glued(piece, part)]
        return f"Glue up what is wider than a board: {', '.join(wide)}." if wide else ""
    mark = piece.rule.mark
    widths = ", ".join(f"{part.name} {mark(part.rough_width)}" for part in parts if part.name in _PANELS)
    return f"Glue up what is wider than your boards. The wide blanks are: {widths}."


def _is_glued(piece: Piece, part: Part) -> bool:
    try:
        return glued_up(piece, part) is not None
    except ImpossibleShape:
        # More strips than anybody glues: the findings say so.
        return False


def _posts(piece: Piece, case: Case) -> Iterator[Step]:
    yield Step(
        "Mark two posts as left hands and two as right. Then cramp the four side by side, ends flush, all with the "
        "same inside face up, and square every line across them in one go from the story stick, its datum on the "
        "shoulder line.",
        "A marking knife is sharp on the pull and on the way back to its place: lay it down pointing away.",
    )
    yield Step(
        "Bore the end's mortises by the boring card, then chop and pare them; then the side's mortises, which open "
        "into them."
        + (
            " Those whose tenons stay dry are cut a little longer than these are wide, for the panel to move: by the "
            "remarks on the seasons, or by what you have measured on boards of your own."
            if len(case.tenons) > 1
            else ""
        ),
        f"{_BRACE} {_CHISEL}",
    )
    if case.grooves:
        yield Step(
            "Cut the grooves between and beyond the mortises to the router plane's depth, stopped where the lines say.",
            _CHISEL,
        )
    if piece.post.turned:
        yield Step(
            "Find the middle of both ends of every post by its diagonals and prick it: the lathe's centres go there. "
            "Leave the posts square, feet and tops, until every mortise is cut and its tenon fitted.",
            "A turned part has no face to gauge from, and a joint that is spoilt in a square post wastes no turning.",
        )
        return
    yield from _feet(piece, case)
    yield Step(
        "Leave the tops of the posts long until the joints are closed, and shape them last.",
        "What is shaped first has no square face left to mark from.",
    )


def _feet(piece: Piece, case: Case) -> Iterator[Step]:
    if piece.rocker and piece.rocker.tenon:
        line = "level shoulders, by the sliding bevel" if more(abs(case.splay), 0.0) else "square shoulders"
        yield Step(f"Saw the tenons on the posts' feet, with {line}.", _SAW)
    elif more(abs(case.splay), 0.0):
        yield Step("Saw the posts' feet level, by the sliding bevel.", _SAW)


def _turning(piece: Piece, case: Case) -> Iterator[Step]:
    """Yield the turning: after every joint that is fitted in the square, before the feet by which the lathe drives."""
    if piece.post.turned is None:
        return
    mark = piece.rule.mark
    yield Step(
        "Plug every mortise and groove of the posts with waste, fitted dry and tight. Gauge "
        f"{mark(octagon_setting(piece.post.square), unit=True)} from each corner, saw the corners in where the square "
        "ends, pare the tops to octagons, and turn them by the turning card and its template. They come last of all "
        "shaping, and before any glue: a turned part has no face to gauge from, a joint that is spoilt earlier wastes "
        "no turning, and the lathe takes a post alone. Only the feet come later: the lathe drives the post by its "
        "square end.",
        f"{_LATHE} {_DUST_MASK}",
    )
    yield from _feet(piece, case)


def _ornament(piece: Piece) -> Iterator[Step]:
    """Yield the ornament: while its panel still lies flat on the bench, and after its edges are fitted."""
    if piece.ornament is None:
        return
    yield Step(
        f"Prick the ornament through its pattern onto the outer faces of the {piece.ornament.on}s, their beads done "
        "and their tenons fitted. Incise every line twice, lightly and then to its depth, and paint before the "
        "finish.",
        "Clamp the panel flat. Cut away from the other hand, and where a line meets the grain cut from both its ends.",
    )


def _panels(piece: Piece, case: Case) -> Iterator[Step]:
    mark = piece.rule.mark
    if more(abs(case.splay), 0.0):
        yield Step(
            f"Saw and plane the ends to {mark(case.height)} high, their edges to the sliding bevel; rip the sides to "
            f"{mark(case.slope_length)}, the slope and not the height. Bring the ends to their widths and the sides to "
            "their length by the cut list, tenons counted: the rebate is gauged from these edges.",
            f"{_SAW} {_END_GRAIN}",
        )
    else:
        yield Step(
            f"Plane ends and sides to {mark(case.height)} high. Saw both to their length by the cut list, tenons "
            "counted, and plane their ends square: the rebate is gauged from there.",
            f"{_SAW} {_EDGE}",
        )
    tongue = piece.joint.tongue
    face = tongue.rebated_from if tongue else "outer face"
    yield Step(
        f"Rebate the edges that go into the posts, from the {face} and over the whole length, as wide as the tenons "
        "reach. Knife the shoulder first, so that the grain does not tear.",
        _EDGE,
    )
    if piece.bead:
        yield Step(
            "Run the beads along the level edges. They come after the rebate and before the tenons, or their hollow "
            "shows at the shoulder.",
            _EDGE,
        )
    yield Step(
        "Saw the tenons out of the rebated edge, the tongue between them back to its line, and the tenons' ends "
        + {
            "mitred": "to their bevels.",
            "square": "square.",
            "halved": "in halves, one long and one short.",
            "one_long": "square, the long ones and the short ones apart.",
        }.get(case.joint.ends, "as the post joint asks.")
        + " Fit each to its own mortise, and number the pair.",
        f"{_SAW} {_CHISEL}",
    )


def _together(piece: Piece, case: Case) -> Iterator[Step]:
    leans = more(abs(case.splay), 0.0)
    if leans:
        yield Step(
            f"Saw wedges of {abs(case.splay):.1f}° from waste for the leaning posts' outer faces, thick end where the "
            "post stands back: they give the cramps' jaws a plumb seat. Sandpaper glued to their backs holds them.",
            _SAW,
        )
    steps = assembly_steps(piece)
    yield Step(
        "Put the whole together dry, in the order of the next steps and with every cramp that you will use, and take "
        "it apart again. Only then open the glue.",
        _CRAMP,
    )
    if case.tenons:
        tongues = " The tongues stay dry too." if piece.joint.tongue else ""
        feet = (
            " The tenons of the feet are glued all round: post and rocker hardly move against each other."
            if piece.rocker and piece.rocker.tenon
            else ""
        )
        panels = (
            f"Of the panels' tenons glue goes on one of each edge alone, tenon {case.glued_tenon} from the foot, the "
            "one nearest the middle: on its cheeks and in its mortise. The others stay dry in mortises a little "
            "longer, for a panel that is held at two places cannot grow and shrink, and splits."
            if len(case.tenons) > 1
            else "Of the panels' joints glue goes on the tenon of each edge alone: on its cheeks and in its mortise."
        )
        yield Step(f"{panels}{tongues}{feet}", _GLUE)
    for number, sentence in enumerate(steps):
        yield Step(sentence, "Cramps and not blows, as before." if number else f"{_GLUE} {_CRAMP}")
    if leans:
        yield Step(
            "Cramp the ends level across the wedges, at the tenons. A level pull also pushes a leaning post along its "
            "shoulder: hold post and panel at their lines with a hand cramp while you tighten, and measure both "
            "diagonals while the glue is soft.",
            "Tighten a little at a time. A cramp that slips on a slope flies: stand beside it, not in its line.",
        )
    else:
        yield Step(
            "Cramp square across the tenons, and measure both diagonals while the glue is soft.",
            "Tighten a little at a time, and no more than closes the shoulders.",
        )


def _rockers(piece: Piece) -> Iterator[Step]:
    if piece.rocker is None:
        return
    if piece.rocker.tenon:
        yield Step(
            "Gauge the mortises in the rockers' top edges, both rockers side by side; bore them by the boring card, "
            "and chop and pare them before the curve is sawn, while the lower edge still lies flat on the bench.",
            f"{_BRACE} {_CHISEL}",
        )
    yield Step(
        "Draw the curve with pins and string on one blank, with waste as thick laid against it where the pins stand "
        "beyond it; saw it, draw the other rocker from it, and plane them together in the vice, from the middle down "
        "to each heel.",
        f"{_SAW} {_EDGE} Keep fingers, paws and toes from under a piece that rocks: it pinches.",
    )


def _last(piece: Piece, case: Case) -> Iterator[Step]:
    if piece.bottom:
        bevelled = ", its long edges to the sliding bevel" if more(abs(case.splay), 0.0) else ""
        backs = ", the side cleats' backs planed to the bevel" if bevelled else ""
        yield Step(
            f"Glue and cramp the cleats to the panels, level all round{backs}. Their grain runs as the panels' does, "
            f"so they may be glued along their whole length. Then fit the loose bottom{bevelled}, its corners cut "
            "out for the posts. It must lift out with its clearance all round.",
            f"{_SAW} {_GLUE}",
        )
    if piece.post.turned:
        yield Step(
            "Pare the nibs off the turned tops, toward the middle; take every arris off, but none where a bead or a "
            "cove ends.",
            _EDGE,
        )
    else:
        yield Step("Saw the posts' tops to length and shape them; take every arris off.", _EDGE)
    yield Step("Scrape or sand, and finish, inside before outside.", _DUST)
