"""A table read over another: what is given replaces what was there, and everything else stays."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

from woodmath.piece_kinds import Reading
from woodmath.piece_reading import Group, Table, dotted, kinds_of, note_strangers

ATable = TypeVar("ATable", bound=Table)


def read_over(
    base: ATable, given: Mapping[str, object], key: str, reading: Reading, only_present: bool = False
) -> ATable:
    """Return a table with those values replaced that are given, noting every fault in them.

    Parameters
    ----------
    base : Table
        What was there: a piece, or one table of it.
    given : mapping of str to object
        What TOML gave.
    key : str
        The name under which a fault tells of the table.
    reading : Reading
        The rule, and where faults are noted.
    only_present : bool
        Whether a table that the base does not have is a fault.

    Returns
    -------
    Table
        The base itself after a fault.

    >>> from woodmath.piece_tables import Side
    >>> from woodmath.rule import Rule
    >>> read_over(Side(length=18, thickness=0.875), {"length": "20"}, "side", Reading(Rule.inches(16)))
    Side(length=20.0, thickness=0.875)
    """
    before = len(reading.faults)
    values: dict[str, object] = {}
    defaults = {each.name: each.default for each in dataclasses.fields(base)}
    gone = {other for name in given for other in base.instead_of(name)} - set(given)
    for name, kind in kinds_of(type(base)).items():
        here = getattr(base, name)
        if name in gone:
            values[name] = defaults[name]
        elif name in given:
            told = given[name]
            if isinstance(kind, Group) and isinstance(here, Table) and isinstance(told, dict):
                values[name] = read_over(here, told, dotted(key, name), reading, only_present)
            elif isinstance(kind, Group) and here is None and only_present:
                reading.fault(
                    dotted(key, name),
                    f"tells of {kind.meaning}, and the plan has none. Put the table into the plan first.",
                )
            else:
                values[name] = kind.read(told, dotted(key, name), reading)
    note_strangers(type(base), given, key, reading)
    stays = {
        name: getattr(base, name)
        for name in kinds_of(type(base))
        if name not in gone and getattr(base, name) != defaults[name]
    }
    for name, words in base.together({**stays, **given}):
        reading.fault(dotted(key, name), words)
    return replace(base, **values) if len(reading.faults) == before else base
