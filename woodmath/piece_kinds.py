"""What every kind of value in a piece file shares: how a reading goes, and how its faults are noted."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from woodmath.rule import Rule

LONGEST_QUOTE = 60
MOST_FAULTS = 25
"""So many are told one by one; who has more begins with these."""
LARGEST_NUMBER = 10**18


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
    apart : tuple of str
        The keys at the top of the file that are read before its tables.

    >>> reading = Reading(Rule.inches(16))
    >>> reading.fault("post.square", "is missing.")
    >>> reading.faults
    ['post.square is missing.']
    """

    rule: Rule
    tables: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)
    apart: tuple[str, ...] = ()

    @property
    def full(self) -> bool:
        """Whether there are as many faults as anyone wants to read at once."""
        return len(self.faults) > MOST_FAULTS

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

    >>> as_written("1 3/4"), as_written(True), as_written([1, 2]), as_written(10**9999)
    ('"1 3/4"', 'true', 'a list', 'a huge number')
    """
    if is_huge(given):
        return "a huge number"
    if isinstance(given, bool):
        return str(given).lower()
    if isinstance(given, list):
        return "a list"
    if isinstance(given, dict):
        return "a table"
    text = f'"{given}"' if isinstance(given, str) else f"{given}"
    return text if len(text) <= LONGEST_QUOTE else f"{text[:LONGEST_QUOTE]}..."


def is_huge(given: object) -> bool:
    """Tell whether a whole number is larger than anything that is ever measured or counted here.

    Parameters
    ----------
    given : object
        What TOML gave.

    Returns
    -------
    bool
        Python may refuse to write out such a number at all.

    >>> is_huge(10**5000), is_huge(14), is_huge("14")
    (True, False, False)
    """
    return isinstance(given, int) and abs(given) > LARGEST_NUMBER


def cut_short(key: str) -> str:
    """Return a key as it can be told, cut short where it is long.

    Parameters
    ----------
    key : str
        As it stands in the file.

    Returns
    -------
    str
        At most a little more than `LONGEST_QUOTE` signs.

    >>> cut_short("set_back"), len(cut_short("x" * 1000))
    ('set_back', 63)
    """
    return key if len(key) <= LONGEST_QUOTE else f"{key[:LONGEST_QUOTE]}..."


def _on_one_line(words: str) -> str:
    return "".join(sign if sign.isprintable() else " " for sign in words)
