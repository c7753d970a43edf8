"""The boring card: for every mortise the bit, the turns and where they are counted from, the holes and the walls."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.boring import AugerBit
from woodmath.card import Card
from woodmath.case import Case
from woodmath.case_solids import foot_tenon_cheeks, wood_under_mortise
from woodmath.errors import ImpossibleShape
from woodmath.finding import mark_at_most as deepest_mark
from woodmath.finding import more
from woodmath.groove import depth_for
from woodmath.hole_rows import boring_order, holes_along
from woodmath.numbers_as_written import number_shown
from woodmath.whole_marks import mark_at_least, mark_at_most

if TYPE_CHECKING:
    from woodmath.piece import Piece


@dataclass(frozen=True)
class MortiseRow:
    """One row of holes: a mortise to be bored.

    Parameters
    ----------
    name : str
        Which mortise.
    gauged_from : str
        The face from which its middle line is gauged.
    middle : float
        From that face to the middle line, in the piece's unit.
    start, end : float
        Where the mortise begins and ends along the part.
    depth, wall : float
        Of the mortise, and what is left behind its floor.
    opens_at : float or None
        How far down the bit breaks into a mortise that is there already; None where the wood goes on.

    >>> MortiseRow("mortise 1", "face side", 0.75, 3.75, 6.25, 1.25, 0.5, None).depth
    1.25
    """

    name: str
    gauged_from: str
    middle: float
    start: float
    end: float
    depth: float
    wall: float
    opens_at: float | None


def boring_cards(piece: Piece) -> tuple[Card, ...]:
    """Print how every mortise is bored.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of Card
        The count of the brace, and the places of the holes.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `woodmath.boring`, `woodmath.hole_rows`.

    >>> from woodmath.piece import Piece
    >>> [card.title for card in boring_cards(Piece.demo("cat-bed"))]
    ['Boring card: the count', 'Boring card: the holes']
    """
    rows, bit = mortises_of(piece), piece.auger_bit()
    return (_counts(piece, rows, bit), _holes(piece, rows, bit))


def mortises_of(piece: Piece) -> tuple[MortiseRow, ...]:
    """Return every mortise of a piece in the order in which it is bored.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels.

    Returns
    -------
    tuple of MortiseRow
        Those of one post for the end, then those for the side, then one rocker's.

    Raises
    ------
    ImpossibleShape
        If the sizes make no case.

    Source: `woodmath.case`, `woodmath.post_joint`.

    >>> from woodmath.piece import Piece
    >>> [row.opens_at for row in mortises_of(Piece.demo("cat-bed"))]
    [None, None, 0.75, 0.75, None]
    """
    case = Case.of(piece)
    joint, walls, clearance = case.joint, case.joint.walls, piece.joint.end_clearance
    rows: list[MortiseRow] = []
    for whose, face, tenon, wall, opens_at in (
        ("end", "face side", joint.tenon, walls.behind_tenon, None),
        # The end's mortise is there already, and the side's bit comes to its inner cheek.
        ("side", "face edge", joint.other_tenon, walls.behind_other, walls.inside_tenon),
    ):
        depth = depth_for(tenon.reach, clearance)
        rows += [
            MortiseRow(
                f"{whose}'s mortise {number}",
                face,
                tenon.set_back + tenon.thickness / 2,
                low,
                high,
                depth,
                wall,
                opens_at if opens_at is not None and more(depth, opens_at) else None,
            )
            for number, (low, high) in enumerate(case.tenons, 1)
        ]
    rocker = piece.rocker
    if rocker and rocker.tenon:
        inner, outer = foot_tenon_cheeks(case, rocker.tenon)
        depth = depth_for(rocker.tenon.length, clearance)
        under = wood_under_mortise(piece, case, rocker.tenon)
        rows.append(
            MortiseRow(
                "rocker's mortise", "its face side", rocker.thickness / 2, inner, outer, depth, under, None
            )
        )
    return tuple(rows)


def _counts(piece: Piece, rows: tuple[MortiseRow, ...], bit: AugerBit) -> Card:
    mark = piece.rule.mark
    kinds: dict[str, MortiseRow] = {}
    for row in rows:
        kinds.setdefault(row.name.rsplit(" ", 1)[0] if row.name[-1].isdigit() else row.name, row)
    cells: list[tuple[str, ...]] = []
    notes: list[str] = []
    for kind, row in kinds.items():
        bored, told = _as_deep_as_the_screw_may(piece, row, bit)
        counts = (_count(bit.turns(bored, "lips")), _count(bit.turns(bored, "screw")))
        if row.opens_at is not None:
            # It ends on the far cheek of the one that it opens into.
            counts = ("–", "–")
            if not more(row.opens_at, bored):
                bored, told = row.opens_at, ""
        cells.append(
            (
                f"{kind}s",
                mark(row.depth),
                *counts,
                mark(bit.point_depth(bored)),
                mark(max(row.wall, 0.0)),
            )
        )
        if row.opens_at is not None:
            notes.append(
                f"The {kind}s are bored second and open into those of the end, {mark(row.opens_at)} down: after "
                f"{_count(bit.turns_until_through(row.opens_at))} turns from its first bite the screw finds no wood, "
                f"pulls no more, and the count ends. Lean on the brace until the lips are through and stop there: "
                "what lies beyond is the end's mortise, cut already."
            )
        if told:
            notes.append(f"In the {kind}s {told}")
    notes.append(
        "Turns are to the nearest quarter: a quarter of a turn is three hours on the face of a clock."
    )
    notes.append(
        "A trial hole in waste tells your own bit's lead better than its label. Clear the chips, keep the brace in "
        "line with a square or the sliding bevel, and keep the other hand behind the cutting edge."
    )
    return Card(
        "Boring card: the count",
        f"Bit {mark(bit.diameter, unit=True)} across the spurs, {_lead(piece, bit)}, "
        f"screw {mark(bit.point_length)} from its tip to the lips.",
        (
            "mortise",
            "depth",
            "turns from the lips' first cut",
            "turns from the screw's first bite",
            "screw's point then stands at",
            "wall behind",
        ),
        tuple(cells),
        tuple(notes),
        numeric=(1, 2, 3, 4, 5),
    )


def _as_deep_as_the_screw_may(piece: Piece, row: MortiseRow, bit: AugerBit) -> tuple[float, str]:
    """Return how deep a mortise is bored, and where the screw would come through, why no deeper."""
    mark, wall = piece.rule.mark, max(row.wall, 0.0)
    if not more(bit.point_length, wall):
        return row.depth, ""
    beyond = f"the screw's point would stand {mark(bit.point_length)} beyond the floor, and the wall is {mark(wall)}:"
    least = deepest_mark(piece, row.depth + wall - bit.point_length - piece.rule.one_mark)
    if not least:
        return row.depth, f"{beyond} take a bit with a shorter screw, or chop them without one."
    return piece.rule.read(least), (
        f"{beyond} the turns are counted to a hole {least} deep and no deeper. Finish with a chisel."
    )


def _holes(piece: Piece, rows: tuple[MortiseRow, ...], bit: AugerBit) -> Card:
    mark = piece.rule.mark
    cells: list[tuple[str, ...]] = []
    remarks: list[str] = []
    for row in rows:
        try:
            centres = [
                row.start + centre for centre in holes_along(row.end - row.start, bit.diameter, overlap=0.0)
            ]
            # Rounded outward, the holes at the ends would cross the mortise's lines.
            ends = {
                min(centres): mark_at_least(piece.rule, min(centres)),
                max(centres): mark_at_most(piece.rule, max(centres)),
            }
            order = boring_order(centres, bit.diameter)
            places = ", ".join(mark(ends.get(centre, centre)) for centre in order.order)
            remarks += order.remarks
        except ImpossibleShape as fault:
            places = str(fault)
        cells.append(
            (row.name, f"{mark(row.middle)} from the {row.gauged_from.removeprefix('its ')}", places)
        )
    return Card(
        "Boring card: the holes",
        "Centres in the order of boring. In a post they are counted along it from the datum, the shoulder at the "
        "inside arris of the foot"
        + ("; in a rocker from its middle, to both sides." if piece.rocker and piece.rocker.tenon else "."),
        ("mortise", "middle line", "centres"),
        tuple(cells),
        notes=(
            "The ends of the row come first and then what lies between, so that the screw always finds wood. Holes "
            "that touch leave points of wood between them for the chisel.",
            *dict.fromkeys(remarks),
        ),
    )


def _count(turns: float) -> str:
    """Write turns as the brace is counted: whole ones and quarters."""
    whole, quarters = divmod(round(4 * turns), 4)
    part = ("", "1/4", "1/2", "3/4")[quarters]
    return f"{whole} {part}".strip() if whole or not part else part


def _turns(turns: float) -> str:
    return number_shown(turns, 2)


def _lead(piece: Piece, bit: AugerBit) -> str:
    if piece.rule.unit == "inch":
        return f"{_turns(bit.threads_per_inch())} turns to the inch"
    return f"{_turns(bit.lead)} mm a turn"
