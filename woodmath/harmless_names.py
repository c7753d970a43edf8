"""Names of pieces and patterns made harmless: for a file's name, and for a line of print."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

_LONGEST = 60
_TAKEN_BY_WINDOWS = frozenset(
    {"con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(10))}
)
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")
_LETTERS_OF_THEIR_OWN = str.maketrans(
    {"ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th"}
)


def file_name(name: str, otherwise: str = "piece") -> str:
    """Turn any name into one that every system takes for a file, without an ending.

    Parameters
    ----------
    name : str
        As it is written on the piece, or anything else.
    otherwise : str
        What it is to be when no letter of the name can be kept.

    Returns
    -------
    str
        Small letters a to z, figures and single hyphens, at most 60 of them.

    >>> file_name("A rocking bed for the <cat>/dog"), file_name("CON"), file_name("../..")
    ('a-rocking-bed-for-the-cat-dog', 'con-piece', 'piece')
    """
    plain = unicodedata.normalize("NFKD", name.casefold().translate(_LETTERS_OF_THEIR_OWN))
    letters = "".join(letter for letter in plain if not unicodedata.combining(letter))
    kept = _NOT_IN_A_NAME.sub("-", letters).strip("-")[:_LONGEST].strip("-")
    if not kept:
        return otherwise
    return f"{kept}-{otherwise}" if kept in _TAKEN_BY_WINDOWS else kept


def one_line(text: str, longest: int = 120) -> str:
    r"""Return a text as it can be printed in a line: no control characters, no letters that turn others around.

    Parameters
    ----------
    text : str
        Anything.
    longest : int
        More letters than that are cut off, and three dots say so.

    Returns
    -------
    str
        With single spaces.

    >>> one_line("A bed\n for\x00 the cat"), one_line("A very long bed", 6)
    ('A bed for the cat', 'A very…')
    """
    seen = (letter if unicodedata.category(letter)[0] != "C" else " " for letter in text)
    line = " ".join("".join(seen).split())
    return line if len(line) <= longest else f"{line[:longest].rstrip()}…"


def unlike_names(names: Sequence[str], otherwise: str = "piece") -> tuple[str, ...]:
    """Turn names into files' names that differ from one another.

    Parameters
    ----------
    names : sequence of str
        Any names, equal ones too.
    otherwise : str
        As for `file_name`.

    >>> unlike_names(["The end", "the END"])
    ('the-end', 'the-end-2')
    """
    found: list[str] = []
    for name in names:
        plain = file_name(name, otherwise)
        candidates = (plain, *(f"{plain}-{count}" for count in range(2, len(names) + 1)))
        found.append(next(candidate for candidate in candidates if candidate not in found))
    return tuple(found)
