"""Remarks on a piece that came out otherwise than planned: what must be made again, and what is marked anew.

A part that is cut already was cut to the plan. Where a measurement on another part now asks a different number
of it, it does not fit; a measurement on the part itself is simply how it is, and the others follow it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, size
from woodmath.part_needs import Need, holder, needs_of
from woodmath.piece_as_made import Change
from woodmath.rule import Rule

if TYPE_CHECKING:
    from woodmath.piece import Piece

SAME_ANGLE = 0.25
"""Degrees that a bevel gauge cannot tell (common practice)."""


def as_made_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on what came out otherwise than planned.

    Parameters
    ----------
    piece : Piece
        As made.

    Yields
    ------
    Finding
        A stop for every part that must be made again, a note for every other one that is marked anew; nothing
        for a piece whose file says nothing of what was measured.

    Source: a part fits when its numbers are those that the others ask for, within half a mark of the rule.

    >>> from woodmath.piece import Piece
    >>> list(as_made_findings(Piece.demo("cat-bed")))
    []
    """
    if not piece.changes:
        return
    yield Finding("note", "what was measured", f"{_told(piece)}.", "All that is not yet cut follows from it.")
    try:
        planned, now = needs_of(piece.planned), needs_of(piece)
    except ImpossibleShape:
        # What makes no case is told by the remarks on the joint, and nothing can be compared.
        return
    for part, needs in now.items():
        known = {need.what: need for need in planned.get(part, ())}
        changed = [
            need
            for need in needs
            if _differs(known.get(need.what), need, piece.rule) and not _measured_here(part, need, piece)
        ]
        there_already = [need for need in changed if need.cut_on and need.what in known and part in piece.cut]
        moved = [
            _moved(known.get(need.what), need, piece.rule) for need in changed if need not in there_already
        ]
        gone = [what for what in known if what not in {need.what for need in needs}]
        moved += [f"{what} is not wanted any more" for what in gone]
        if moved and part in piece.cut:
            yield Finding(
                "stop",
                f"the {part}",
                f"They were cut to the plan, and they do not fit what was measured: {'; '.join(moved)}."
                if part != "bottom"
                else f"It was cut to the plan, and it does not fit what was measured: {'; '.join(moved)}.",
                f"The {part} must be made again; keep what can be planed or pared down to the new numbers.",
            )
        elif moved:
            yield Finding(
                "note",
                f"the {part}",
                f"Marked anew, since the plan no longer holds: {'; '.join(moved)}.",
                "Mark from these numbers, and strike out the old ones on the story stick.",
            )
        else:
            for need in there_already:
                if need.value > known[need.what].value:
                    longer = _moved(known[need.what], need, piece.rule)
                    yield Finding(
                        "note",
                        f"the {part}",
                        f"They were cut to the plan, and want a little more: {longer}.",
                        f"Cut on to the new number; the {part} need not be made again.",
                    )


def _told(piece: Piece) -> str:
    return "; ".join(_change(change, piece.rule) for change in piece.changes)


def _change(change: Change, rule: Rule) -> str:
    planned, made = (
        "nothing of its own"
        if value is None
        else size(rule, value)
        if isinstance(value, float)
        else str(value)
        for value in (change.planned, change.made)
    )
    return f"{change.key} was planned as {planned} and came out as {made}"


def _measured_here(part: str, need: Need, piece: Piece) -> bool:
    """Tell whether a number was measured on the part itself."""
    measured = [change.path for change in piece.changes]
    keys = (*need.keys, *need.once_cut) if part in piece.cut else need.keys
    return any(key in measured and holder(key, piece.cut) == part for key in keys)


def _differs(planned: Need | None, now: Need, rule: Rule) -> bool:
    if planned is None:
        return True
    least = SAME_ANGLE if now.unit == "degrees" else rule.one_mark / 2
    return abs(planned.value - now.value) >= least


def _moved(planned: Need | None, now: Need, rule: Rule) -> str:
    def written(need: Need) -> str:
        return f"{need.value:.1f}°" if need.unit == "degrees" else size(rule, need.value)

    return f"{now.what} {written(planned) if planned else 'nothing'} → {written(now)}"
