"""How a table of a piece file is read into a frozen dataclass whose fields say what kind of value they hold.

What is missing, what is strange and what stands in the wrong table are faults too, each with its remedy.
"""

from __future__ import annotations

import dataclasses
import functools
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, TypeVar, get_type_hints

from woodmath.piece_kinds import Kind, Reading, cut_short, nearest
from woodmath.rule import Rule


@dataclass(frozen=True)
class Table:
    """Base of every table of a piece file: a frozen dataclass whose fields say what kind they hold.

    >>> list(Table.together({}))
    []
    """

    @staticmethod
    def together(given: Mapping[str, object]) -> Iterable[tuple[str, str]]:
        """Yield (key, words) for every fault that only several keys together can have.

        Parameters
        ----------
        given : mapping of str to object
            What TOML gave, by key.
        """
        return ()

    @staticmethod
    def instead_of(name: str) -> tuple[str, ...]:
        """Return the keys whose values fall away when this one is given anew.

        Parameters
        ----------
        name : str
            A key of the table.
        """
        return ()


ATable = TypeVar("ATable", bound=Table)

MOST_ROWS = 100
NOT_A_KEY = MappingProxyType({"key of the file": False})
"""Metadata of a field that is worked out and stands in no file."""


@dataclass(frozen=True)
class Group(Kind):
    """A table within the file.

    Parameters
    ----------
    meaning : str
        What the table describes.
    table : type of Table
        What it is read into.

    >>> @dataclass(frozen=True)
    ... class Post(Table):
    ...     square: float
    >>> Group("the corner posts", Post).example(Rule.inches(16))
    'a table with square'
    """

    meaning: str
    table: type[Table]

    def read(self, given: object, key: str, reading: Reading) -> Table | None:
        """Return the table, or None after a fault in it."""
        if not isinstance(given, dict):
            reading.refuse(key, given, f"write it as [{key}], {self.example(reading.rule)}.")
            return None
        return read_table(self.table, given, key, reading)

    def example(self, rule: Rule) -> str:
        """Say in words what the table holds."""
        return f"a table with {', '.join(keys_of(self.table))}"


@dataclass(frozen=True)
class Rows(Kind):
    """A list of small tables that all hold the same keys.

    Parameters
    ----------
    meaning : str
        What the list describes.
    table : type of Table
        What each row is read into.

    >>> @dataclass(frozen=True)
    ... class Place(Table):
    ...     width: float
    >>> Rows("the tenons of a panel edge", Place).read([], "joint.tenons", Reading(Rule.inches(16)))
    ()
    """

    meaning: str
    table: type[Table]

    def read(self, given: object, key: str, reading: Reading) -> tuple[Table, ...] | None:
        """Return those rows that have no fault."""
        if isinstance(given, dict):
            words = f"write [[{key}]] over each of them, with two brackets on both sides ({self.meaning})."
            reading.refuse(key, given, words)
            return None
        if not isinstance(given, list) or not all(isinstance(row, dict) for row in given):
            reading.refuse(key, given, f"give a list of small tables, such as {self.example(reading.rule)}.")
            return None
        if len(given) > MOST_ROWS:
            reading.fault(key, f"is a list of {len(given)} rows; give at most {MOST_ROWS}.")
            return None
        rows = [
            read_table(self.table, row, f"{key}, number {place}", reading)
            for place, row in enumerate(given, 1)
        ]
        return tuple(row for row in rows if row is not None)

    def example(self, rule: Rule) -> str:
        """Return one row, written as in the file."""
        pairs = (f"{key} = {kind.example(rule)}" for key, kind in kinds_of(self.table).items())
        return f"[{{ {', '.join(pairs)} }}]"


def kinds_of(table: type[Table]) -> Mapping[str, Kind]:
    """Return the kind of value behind every key of a table.

    Parameters
    ----------
    table : type of Table
        A frozen dataclass with annotated fields.

    Returns
    -------
    mapping of str to Kind
        In the order of its fields.

    >>> from woodmath.piece_tables import Side
    >>> kinds_of(Side)["thickness"].meaning
    'thickness of the board'
    """
    hashable: Any = table
    return _kinds(hashable)


@functools.cache
def _kinds(table: Any) -> Mapping[str, Kind]:
    # Python works hints out anew at every call, which a slider feels.
    hints = get_type_hints(table, include_extras=True)
    return MappingProxyType({name: hints[name].__metadata__[0] for name in keys_of(table)})


def keys_of(table: type[Table]) -> tuple[str, ...]:
    """Return the keys that a table can hold.

    Parameters
    ----------
    table : type of Table
        A frozen dataclass.

    Returns
    -------
    tuple of str
        In the order of its fields.

    >>> from woodmath.piece_tables import Side
    >>> keys_of(Side)
    ('length', 'thickness')
    """
    return tuple(
        each.name for each in dataclasses.fields(table) if each.metadata.get("key of the file", True)
    )


def tables_of(table: type[Table], within: str = "") -> dict[str, tuple[str, ...]]:
    """Return the keys of every table within a table, by the name under which a file writes it.

    Parameters
    ----------
    table : type of Table
        A frozen dataclass with annotated fields.
    within : str
        The name of the table itself; "" for the file as a whole.

    Returns
    -------
    dict of str to tuple of str
        Tables within tables too, as in "joint.tongue".

    >>> from woodmath.piece_tables import Rocker
    >>> tables_of(Rocker, "rocker")["rocker.tenon"]
    ('thickness', 'width', 'length', 'line')
    """
    found: dict[str, tuple[str, ...]] = {}
    for name, kind in kinds_of(table).items():
        if isinstance(kind, Group):
            found[dotted(within, name)] = keys_of(kind.table)
            found.update(tables_of(kind.table, dotted(within, name)))
    return found


def read_table(table: type[ATable], given: Mapping[str, object], key: str, reading: Reading) -> ATable | None:
    """Read one table of a piece file, noting every fault in it.

    Parameters
    ----------
    table : type of Table
        What is to be read.
    given : mapping of str to object
        What TOML gave.
    key : str
        The table's name; "" for the file as a whole.
    reading : Reading
        The rule, and where faults are noted.

    Returns
    -------
    Table or None
        None after at least one fault.

    >>> from woodmath.piece_tables import Side
    >>> reading = Reading(Rule.inches(16))
    >>> read_table(Side, {"length": "18", "thickness": "7/8"}, "side", reading)
    Side(length=18.0, thickness=0.875)
    >>> read_table(Side, {"length": "18", "thicknes": "7/8"}, "side", reading)
    >>> for fault in reading.faults:
    ...     print(fault)
    side.thickness is missing (thickness of the board). Add it under [side], written like thickness = "1 3/4".
    side.thicknes is not known under [side]. Did you mean thickness? Possible: length, thickness.
    """
    before = len(reading.faults)
    kinds = kinds_of(table)
    optional = {each.name for each in dataclasses.fields(table) if each.default is not dataclasses.MISSING}
    values: dict[str, object] = {}
    for name, kind in kinds.items():
        if name in given:
            values[name] = kind.read(given[name], dotted(key, name), reading)
        elif name not in optional:
            reading.fault(dotted(key, name), _missing(name, key, kind, reading))
    note_strangers(table, given, key, reading)
    for name, words in table.together(given):
        reading.fault(dotted(key, name), words)
    return table(**values) if len(reading.faults) == before else None


def note_strangers(table: type[Table], given: Mapping[str, object], key: str, reading: Reading) -> None:
    """Note every key that a table does not know, with the one that was meant or the table that it belongs to.

    Parameters
    ----------
    table : type of Table
        What is read.
    given : mapping of str to object
        What TOML gave.
    key : str
        The table's name; "" for the file as a whole.
    reading : Reading
        Where faults are noted.

    >>> from woodmath.piece_tables import Side
    >>> reading = Reading(Rule.inches(16))
    >>> note_strangers(Side, {"lenght": "18"}, "side", reading)
    >>> reading.faults
    ['side.lenght is not known under [side]. Did you mean length? Possible: length, thickness.']
    """
    possible = keys_of(table) + (reading.apart if not key else ())
    for name in given:
        if name not in possible and not reading.full:
            reading.fault(dotted(key, cut_short(name)), _stranger(name, key, possible, reading))


def dotted(key: str, name: str) -> str:
    """Return a key within a table, as a fault names it.

    Parameters
    ----------
    key, name : str
        Of the table ("" for the file as a whole) and within it.

    Returns
    -------
    str
        Joined by a full stop; by a comma within a list of small tables.

    >>> dotted("post", "square"), dotted("joint.tenons, number 1", "width")
    ('post.square', 'joint.tenons, number 1, width')
    """
    if not key:
        return name
    return f"{key}, {name}" if _within_a_list(key) else f"{key}.{name}"


def _within_a_list(key: str) -> bool:
    return ", number " in key


def _under(key: str) -> str:
    if not key:
        return "at the top of the file"
    return f"in {key}" if _within_a_list(key) else f"under [{key}]"


def _missing(name: str, key: str, kind: Kind, reading: Reading) -> str:
    if isinstance(kind, Group):
        return f"is missing ({kind.meaning}). Add [{name}], {kind.example(reading.rule)}."
    written = f"{name} = {kind.example(reading.rule)}"
    return f"is missing ({kind.meaning}). Add it {_under(key)}, written like {written}."


def _stranger(name: str, key: str, possible: tuple[str, ...], reading: Reading) -> str:
    near = nearest(name, possible)
    homes = [table for table, keys in reading.tables.items() if name in keys and table != key]
    hint = f" It belongs {_under(homes[0])}." if homes else f" Did you mean {near}?" if near else ""
    return f"is not known {_under(key)}.{hint} Possible: {', '.join(possible)}."
