"""What came out otherwise than planned: the measured values put in place, and what is already cut."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.piece_kinds import Kind, Reading, as_written, nearest
from woodmath.piece_over import read_over
from woodmath.piece_sizes import entries_of

if TYPE_CHECKING:
    from woodmath.piece import Piece

KEY = "as_made"
CUT = ("posts", "end panels", "side panels", "rockers", "bottom")
"""What can be cut already."""
MEASURED = ("post", "end", "side", "joint", "bead", "bottom", "bit", "rocker")
"""The tables whose values can come out otherwise than planned."""


@dataclass(frozen=True)
class Change:
    """One value that came out otherwise than planned.

    Parameters
    ----------
    key, path : str
        As in the file, "side.thickness"; the path is alike for every row of a list.
    kind : Kind
        What it is.
    planned, made : object
        None where nothing was planned or is left; a length in the piece's unit.
    """

    key: str
    path: str
    kind: Kind
    planned: object
    made: object


def made_over(planned: Piece, told: object, reading: Reading) -> tuple[Piece, tuple[str, ...]]:
    """Return the piece with what was measured in place of what was planned, and the names of what is cut.

    Parameters
    ----------
    planned : Piece
        As planned.
    told : object
        What the file holds under [as_made].
    reading : Reading
        The rule, and where faults are noted.

    Returns
    -------
    (Piece, tuple of str)
        What they are worth only when no fault was noted.
    """
    if not isinstance(told, dict):
        reading.refuse(KEY, told, "write it as [as_made], with cut and a table such as [as_made.side].")
        return planned, ()
    measured = {name: value for name, value in told.items() if name in MEASURED}
    for name in told:
        if name not in MEASURED and name != "cut" and not reading.full:
            reading.fault(f"{KEY}.{name:.60}", _stranger(name))
    return read_over(planned, measured, KEY, reading, only_present=True), _cut(told.get("cut", []), reading)


def changes_between(planned: Piece, made: Piece) -> tuple[Change, ...]:
    """Return every value in which a piece differs from its plan.

    Parameters
    ----------
    planned, made : Piece
        Of one rule.

    Returns
    -------
    tuple of Change
        In the order of the tables; empty where all came out as planned.

    >>> from woodmath.piece import Piece
    >>> changes_between(Piece.demo("cat-bed"), Piece.demo("cat-bed"))
    ()
    """
    before = {entry.key: entry for entry in entries_of(planned)}
    after = {entry.key: entry for entry in entries_of(made)}
    found = []
    for key, entry in {**before, **after}.items():
        old = before[key].value if key in before else None
        new = after[key].value if key in after else None
        if old != new:
            found.append(Change(key, entry.path, entry.kind, old, new))
    return tuple(found)


def _stranger(name: str) -> str:
    near = nearest(name, ("cut", *MEASURED)) if len(name) < 100 else ""
    hint = f"Did you mean {near}? " if near else ""
    return f"is not known under [{KEY}]. {hint}Possible: cut, {', '.join(MEASURED)}."


def _cut(told: object, reading: Reading) -> tuple[str, ...]:
    if not isinstance(told, list):
        reading.refuse(f"{KEY}.cut", told, f'give a list, such as ["{CUT[0]}", "{CUT[1]}"].')
        return ()
    for name in told:
        if name not in CUT and not reading.full:
            near = nearest(name, CUT) if isinstance(name, str) and len(name) < 100 else ""
            hint = f'did you mean "{near}"? ' if near else ""
            reading.fault(f"{KEY}.cut", f"holds {as_written(name)}: {hint}Possible: {', '.join(CUT)}.")
    return tuple(name for name in CUT if name in told)
