"""The master's remarks on the whole case: whether it goes together, and what it asks for when it does."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.assembly import assembly_of
from woodmath.bead import hollow_shown
from woodmath.case import Case
from woodmath.case_solids import bottom_solid, solids_of
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, about, marks_between, more, size
from woodmath.grain_strength import tenon_keeps
from woodmath.level_bottom import cleat_derivation, height_where_it_rests
from woodmath.wedge import push_for_load

if TYPE_CHECKING:
    from woodmath.piece import Piece

SLIPPING = 3.0
"""Degrees of splay beyond which a cramp's jaws want wedges (common practice)."""


LONGEST_ROW = "280 mm"
"""What may be glued across the grain of a board that moves (common practice)."""


def case_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on how the parts of a piece come together.

    Parameters
    ----------
    piece : Piece
        As read; one without panels gets none.

    Yields
    ------
    Finding
        Stops where the case cannot be put together, cautions and notes on how it is.

    Source: `woodmath.assembly` and `woodmath.case`; thresholds beside their names.

    >>> from woodmath.piece import Piece
    >>> [finding.place for finding in case_findings(Piece.demo("cat-bed"))]
    ['cramping the ends', "the grain of the end's tenons"]
    """
    if piece.end is None or piece.side is None:
        return
    try:
        case = Case.of(piece)
    except ImpossibleShape:
        # Whatever makes no case is told by a remark of its own: a tenon off its panel, a tongue too thick.
        return
    yield from _faces(piece, case)
    yield from _edges(piece, case)
    yield from _order(piece)
    yield from _cramping(case)
    yield from _across_the_grain(piece, case)
    yield from _nothing_left(piece)


def _faces(piece: Piece, case: Case) -> Iterator[Finding]:
    for panel, behind in (("end", case.end_face), ("side", case.side_face)):
        if more(-behind, 0.0):
            yield Finding(
                "caution",
                f"the face of the {panel}",
                f"It stands {size(piece.rule, -behind)} proud of the posts: its set-back is less than the rebate "
                "is deep.",
                "Set the mortise further back, rebate from the inner face, or take a thinner board.",
            )
        elif not more(behind, 0.0):
            yield Finding(
                "note",
                f"the face of the {panel}",
                "It comes flush with the posts' outer faces, and the least movement shows there.",
                "Plane both together once the joint is closed, or set the mortise a little further back.",
            )


def _edges(piece: Piece, case: Case) -> Iterator[Finding]:
    rule, joint, tongue, bead = piece.rule, piece.joint, piece.joint.tongue, piece.bead
    if bead:
        for number, tenon in enumerate(joint.tenons, 1):
            top = case.slope_length - tenon.place - tenon.width
            for edge, place in (("lower", tenon.place), ("upper", top)):
                shown = hollow_shown(bead, max(place, 0.0), case.splay)
                if more(shown, 0.0):
                    yield Finding(
                        "stop",
                        f"tenon {number} and the bead",
                        f"It lies {size(rule, place)} from the {edge} edge, and bead and quirk reach "
                        f"{size(rule, place + shown)} along it: {size(rule, shown)} of the bead's hollow would "
                        "show at the shoulder.",
                        "Move the tenon away from the edge, or take a narrower bead.",
                    )
    if tongue is None:
        return
    if not bead and tongue.clearance:
        yield Finding(
            "note",
            "the ends of the grooves",
            "No bead stops the tongues, so the grooves end with the panels and leave no clearance lengthwise.",
            "Stop the tongues short of the panel's edges, or add a bead.",
        )
    for panel, other, room in (
        ("end", "side", case.square - joint.side_set_back - joint.side_thickness),
        ("side", "end", case.square - joint.set_back - joint.tenon_thickness),
    ):
        if more(tongue.groove_depth, max(room, 0.0)):
            yield Finding(
                "stop",
                f"the {panel}'s groove",
                f"It is {size(rule, tongue.groove_depth)} deep and the {other}'s groove begins "
                f"{size(rule, max(room, 0.0))} from the same face: the grooves cut the post's inside corner off over "
                "their whole length.",
                "Take a shorter tongue, or set the mortises less far back.",
            )


def _order(piece: Piece) -> Iterator[Finding]:
    for group in assembly_of(piece).locked:
        rocker = next((part for part in group if part.endswith("rocker")), "")
        remedy = (
            'Write line = "upright" under [rocker.tenon]: both tenons of an end then point the same way.'
            if rocker
            else "Change a joint so that all that close together slide one way."
        )
        yield Finding(
            "stop",
            f"putting together the {rocker or group[0]}",
            f"No order closes its joints: {', '.join(group[:-1])} and {group[-1]} slide together in directions "
            "that exclude one another.",
            remedy,
        )


def _across_the_grain(piece: Piece, case: Case) -> Iterator[Finding]:
    """Remark on short grain in the end's tenons, and on a long row of tenons glued across a moving board."""
    rule = piece.rule
    if abs(case.splay) > SLIPPING and case.tenons:
        least, most = tenon_keeps(abs(case.splay))
        yield Finding(
            "note",
            "the grain of the end's tenons",
            f"They are cut square to edges that lean, and level grain runs through them at {abs(case.splay):.1f}°: "
            f"short grain, which keeps {100 * least:.0f} to {100 * most:.0f} percent of the strength that a tenon "
            "along the grain has (Hankinson's rule, its shares and exponents from memory; it compares and rates "
            "nothing).",
            "Choose straight-grained boards for the ends, and lay the tenons out where it runs truest.",
        )
    if case.tenons:
        row = case.tenons[-1][1] - case.tenons[0][0]
        if more(row, rule.read(LONGEST_ROW)):
            yield Finding(
                "note",
                "the row of tenons",
                f"Along each post the tenons are glued over {size(rule, row)} of board that grows and shrinks across "
                f"its grain, and over more than {about(rule, LONGEST_ROW)} either the glue or the panel gives.",
                f"Glue tenon {case.glued_tenon} of each edge, the one nearest its middle, and let the others sit dry "
                "in mortises a little longer."
                if len(case.tenons) > 1
                else "Make two tenons or more of it, and glue the one nearest the middle alone.",
            )


def _nothing_left(piece: Piece) -> Iterator[Finding]:
    try:
        placed = solids_of(piece)
    except ImpossibleShape:
        # A rocker that no ellipse gives: another remark says so.
        return
    for name in dict.fromkeys(part.name for part in placed if part.solid.volume <= 0):
        yield Finding(
            "stop",
            f"the {name}",
            "What the other parts leave it is less than nothing: there is no room for it between them.",
            "Make the case larger, or this part and what it lies against smaller.",
        )


def _cramping(case: Case) -> Iterator[Finding]:
    if abs(case.splay) > SLIPPING:
        yield Finding(
            "note",
            "cramping the ends",
            f"The posts lean {abs(case.splay):.1f}° each, so their outer faces stand "
            f"{2 * abs(case.splay):.1f}° to one another, and a cramp laid across slips.",
            f"Seat the jaws on wedges of {abs(case.splay):.1f}° sawn from waste, and hold each post against sliding "
            "along its shoulder while you tighten.",
        )


def bottom_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the loose bottom.

    Parameters
    ----------
    piece : Piece
        As read; one without a bottom gets none.

    Yields
    ------
    Finding
        What carries it, and whether it comes out again.

    Source: plane geometry; a board between two leaning faces is a wedge.

    >>> from woodmath.piece import Piece
    >>> list(bottom_findings(Piece.demo("cat-bed")))
    []
    """
    bottom = piece.bottom
    if bottom is None or piece.end is None or piece.side is None:
        return
    rule, splay = piece.rule, piece.end.splay
    if not bottom.cleat and splay > 0:
        yield _wedged(piece, splay)
    elif not bottom.cleat:
        yield Finding(
            "stop",
            "what the bottom rests on",
            "It has no cleats, and sides that do not lean outward hold nothing up.",
            "Give it cleats under [bottom].",
        )
    begin = max(_sides_begin(piece), 0.0)
    if bottom.cleat and more(begin, bottom.rest):
        yield Finding(
            "stop",
            "what the bottom rests on",
            f"It rests {size(rule, bottom.rest)} over the ends' lower edge, and the inner faces of the sides begin "
            f"higher, at {size(rule, begin)}: there is nothing to fix the cleats to.",
            f"Rest it at {marks_between(rule, begin + bottom.cleat, piece.end.height)[0]} or higher, under [bottom].",
        )
    elif more(bottom.cleat, bottom.rest - begin):
        higher = f", and the sides' inner faces begin at {size(rule, begin)}" if more(begin, 0.0) else ""
        yield Finding(
            "caution",
            "the cleats",
            f"They are {size(rule, bottom.cleat)} high and the bottom rests {size(rule, bottom.rest)} over the panels' "
            f"lower edge{higher}: they show below it.",
            "Rest the bottom higher, or take smaller cleats.",
        )
    if splay < 0:
        yield Finding(
            "caution",
            "the bottom",
            "The sides lean inward, so it is wider than the opening above it and cannot be lifted out.",
            "Lay it in before the second side goes on, or make it of two halves.",
        )
    if not bottom.clearance:
        yield Finding(
            "caution",
            "the bottom",
            "It has no clearance all round, and a board that swells in a damp season pushes the joints open.",
            f"Leave {about(rule, '3 mm')} or so under [bottom].",
        )
    if more(bottom.rest + bottom.thickness, piece.end.height):
        yield Finding(
            "stop",
            "the bottom",
            f"It ends {size(rule, bottom.rest + bottom.thickness)} over the panels' lower edge, and they are "
            f"{size(rule, piece.end.height)} high.",
            "Rest it lower.",
        )


def _wedged(piece: Piece, splay: float) -> Finding:
    """Say what becomes of a bottom that nothing but the leaning sides holds."""
    rest = _comes_to_rest(piece)
    if rest is not None and rest < 0:
        return Finding(
            "stop",
            "what the bottom rests on",
            f"It has no cleats, and with its clearance of {size(piece.rule, _clearance(piece))} all round it drops "
            "through between the sides.",
            "Give it cleats under [bottom].",
        )
    sinks = "" if rest is None else f" {size(piece.rule, rest)} above the panels' lower edge"
    return Finding(
        "caution",
        "what the bottom rests on",
        f"It has no cleats and wedges itself{sinks} between sides that lean {splay:.1f}°: it pushes each of them "
        f"outward with {push_for_load(splay):.1f} times what lies on it, friction left out.",
        "Give it cleats under [bottom], so that the panels carry and do not spread.",
    )


def _sides_begin(piece: Piece) -> float:
    """Return how high over the ends' lower edge the sides' inner faces begin; 0 where no case is."""
    try:
        case = Case.of(piece)
    except ImpossibleShape:
        return 0.0
    return cleat_derivation().function("up")(along=0.0, depth=case.inside_of_side, splay=case.splay)


def _clearance(piece: Piece) -> float:
    return piece.bottom.clearance if piece.bottom else 0.0


def _comes_to_rest(piece: Piece) -> float | None:
    """Return how high a bottom touches both sides, less than 0 where it falls through; None where no case is."""
    try:
        case = Case.of(piece)
        (_, _), (under, _), *_ = bottom_solid(piece, case).added[0].outline
        outside = case.along_a_level(case.at(case.panel[0])[1], case.square - case.side_face)
        return height_where_it_rests(2 * under, 2 * outside, case.splay, case.side_thickness)
    except ImpossibleShape:
        return None
