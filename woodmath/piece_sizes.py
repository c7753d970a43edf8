"""Every value of a piece, one by one, under the key that a file writes it with; and all lengths changed at once."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TypeVar

from woodmath.piece_kinds import Kind
from woodmath.piece_reading import Group, Rows, Table, dotted, kinds_of
from woodmath.piece_values import Length, Lengths

ATable = TypeVar("ATable", bound=Table)

SHOP = ("tools", "boards")
"""Tables that tell of the shop and not of the piece."""
NOT_OF_THE_PIECE = (*SHOP, "load")
"""Tables of which no length is one of the piece's own sizes."""


@dataclass(frozen=True)
class Entry:
    """One value of a piece.

    Parameters
    ----------
    key : str
        As a fault names it: "joint.tenons, number 1, place".
    path : str
        Alike for every row of a list: "joint.tenons.place".
    kind : Kind
        What it is.
    value : object
        None where the file says nothing about it; a length in the piece's unit.
    """

    key: str
    path: str
    kind: Kind
    value: object

    @property
    def length(self) -> float | None:
        """The value where it is a length that the file gives, else None."""
        is_length = isinstance(self.kind, Length) and isinstance(self.value, (int, float))
        return float(self.value) if is_length else None  # type: ignore[arg-type]


def entries_of(table: Table, key: str = "", path: str = "") -> Iterator[Entry]:
    """Yield every value of a table and of the tables within it.

    Parameters
    ----------
    table : Table
        A piece, or one table of it.
    key, path : str
        The table's own name; "" for a piece.

    Yields
    ------
    Entry
        In the order of the tables; lists of small tables row by row.

    >>> from woodmath.piece_tables import Side
    >>> [(entry.key, entry.length) for entry in entries_of(Side(length=18, thickness=0.875), "side", "side")]
    [('side.length', 18.0), ('side.thickness', 0.875)]
    """
    for name, kind in kinds_of(type(table)).items():
        value = getattr(table, name)
        named, walked = dotted(key, name), dotted(path, name)
        if isinstance(value, Table):
            yield from entries_of(value, named, walked)
        elif isinstance(kind, Rows):
            for place, row in enumerate(value, 1):
                yield from entries_of(row, f"{named}, number {place}", walked)
        elif not isinstance(kind, Group):
            yield Entry(named, walked, kind, value)


def paths_of(table: type[Table], path: str = "") -> Iterator[tuple[str, Kind]]:
    """Yield the path and the kind of every value that a table can hold.

    Parameters
    ----------
    table : type of Table
        A piece's class, or that of one table.
    path : str
        The table's own name; "" for a piece.

    Yields
    ------
    (str, Kind)
        In the order of the tables, tables within tables too.

    >>> from woodmath.piece_tables import Side
    >>> [path for path, _ in paths_of(Side, "side")]
    ['side.length', 'side.thickness']
    """
    for name, kind in kinds_of(table).items():
        if isinstance(kind, (Group, Rows)):
            yield from paths_of(kind.table, dotted(path, name))
        else:
            yield dotted(path, name), kind


def with_lengths(table: ATable, change: Callable[[str, Kind, float], float], path: str = "") -> ATable:
    """Return a table with every length in it changed.

    Parameters
    ----------
    table : Table
        A piece, or one table of it.
    change : callable
        From a path, its kind and the length there to the new length.
    path : str
        The table's own name; "" for a piece.

    Returns
    -------
    Table
        Of the same class; what is no length is as it was.

    >>> from woodmath.piece_tables import Side
    >>> with_lengths(Side(length=18, thickness=0.875), lambda path, kind, length: 2 * length, "side")
    Side(length=36, thickness=1.75)
    """
    changed: dict[str, object] = {}
    for name, kind in kinds_of(type(table)).items():
        value, walked = getattr(table, name), dotted(path, name)
        if isinstance(value, Table):
            changed[name] = with_lengths(value, change, walked)
        elif isinstance(kind, Rows):
            changed[name] = tuple(with_lengths(row, change, walked) for row in value)
        elif isinstance(kind, Lengths):
            changed[name] = tuple(change(walked, kind, each) for each in value)
        elif isinstance(kind, Length) and value is not None:
            changed[name] = change(walked, kind, value)
    return replace(table, **changed)
