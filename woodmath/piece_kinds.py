"""What every kind of value in a piece file shares: how a reading goes, and how its faults are noted."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from woodmath.rule import Rule

LONGEST_QUOTE = 60


@dataclass
class Reading:
    """One reading of a piece file: the rule that reads its lengths, and the faults met so far.

    Parameters
    ----------
    rule : Rule
        Reads every length of the file.
    tables : mapping of str to tuple of str
        The keys of every table there is, so that a key in the wrong table can be sent to its own.
    faults : list of str
        One sentence or two for each fault, its key first.

    >>> reading = Reading(Rule.inches(16))
    >>> reading.fault("post.square", "is missing.")
    >>> reading.faults
    ['post.square is missing.']
    """

    rule: Rule
    tables: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)

    def fault(self, key: str, words: str) -> None:
        """Note one fault of a key.

        Parameters
        ----------
        key, words : str
            Where it is, as in "post.square", and what is the matter and what to do.
        """
        self.faults.append(_on_one_line(f"{key} {words}"))

    def refuse(self, key: str, given: object, words: str) -> None:
        """Note what was given for a key, and why it cannot stand.

        Parameters
        ----------
        key : str
            Where it is, as in "post.square".
        given : object
            What TOML gave.
        words : str
            What is possible.
        """
        self.faults.append(_on_one_line(f"{key} = {as_written(given)}: {words}"))


class Kind:
    """A kind of value; a subclass reads it, or notes why it cannot be read and returns None.

    >>> from woodmath.piece_values import Words
    >>> Words("what the piece is called").read("Box", "name", Reading(Rule.inches(16)))
    'Box'
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> object:
        """Return the value, or None after noting what is wrong with it.

        Parameters
        ----------
        given : object
            What TOML gave.
        key : str
            Where it stands, as in "post.square".
        reading : Reading
            The rule, and where faults are noted.

        Returns
        -------
        object
            As the subclass says; a length in the rule's unit.
        """
        raise NotImplementedError

    def example(self, rule: Rule) -> str:
        """Return a value that works, written as in the file.

        Parameters
        ----------
        rule : Rule
            Marks a length.

        Returns
        -------
        str
            With the quotation marks that it needs.
        """
        raise NotImplementedError


def nearest(given: str, possible: Iterable[str]) -> str:
    """Return the name most like what was given, or "" when none is.

    Parameters
    ----------
    given : str
        What was written.
    possible : iterable of str
        The names there are.

    Returns
    -------
    str
        One of them, or "".

    >>> nearest("set_bak", ("set_back", "reserve"))
    'set_back'
    """
    found = difflib.get_close_matches(given.lower(), tuple(possible), n=1)
    return found[0] if found else ""


def as_written(given: object) -> str:
    """Return a value as it stands in the file, cut short where it is long.

    Parameters
    ----------
    given : object
        What TOML gave.

    Returns
    -------
    str
        At most a little more than `LONGEST_QUOTE` signs.

    >>> as_written("1 3/4"), as_written(True), as_written([1, 2])
    ('"1 3/4"', 'true', 'a list')
    """
    if isinstance(given, bool):
        return str(given).lower()
    if isinstance(given, list):
        return "a list"
    if isinstance(given, dict):
        return "a table"
    text = f'"{given}"' if isinstance(given, str) else f"{given}"
    return text if len(text) <= LONGEST_QUOTE else f"{text[:LONGEST_QUOTE]}..."


def _on_one_line(words: str) -> str:
    return "".join(sign if sign.isprintable() else " " for sign in words)
