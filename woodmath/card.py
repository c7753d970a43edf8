"""A card for the bench: a table of words, each length in it already read on the rule."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Card:
    """A table as it is printed.

    Parameters
    ----------
    title : str
        What it is called in the shop.
    lead : str
        One or two sentences below the title; "" for none.
    columns : tuple of str
        What stands at the head of each column.
    rows : tuple of tuples of str
        As many cells in every row as there are columns; fractions as they are typed, the paper sets them.
    notes : tuple of str
        Sentences below the table, a caution for instance.
    numeric : tuple of int
        The columns, counted from 0, that are set flush right.
    warnings : tuple of str
        Sentences above the table, which are to be read before it.

    Raises
    ------
    AssertionError
        If a row has more or fewer cells than there are columns.

    >>> Card("Gauge card", "In order of use.", ("what", "set to"), (("tenon", "1/2"),), numeric=(1,)).rows
    (('tenon', '1/2'),)
    """

    title: str
    lead: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...] = ()
    numeric: tuple[int, ...] = ()
    warnings: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row) != len(self.columns):
                raise AssertionError(
                    f"A row of {self.title!r} has {len(row)} cells, and the card has {len(self.columns)} "
                    f"columns. The row is {row}."
                )
