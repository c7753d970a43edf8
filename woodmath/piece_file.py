"""A piece file as text: found, decoded and parsed, or refused with the line where it went wrong."""

from __future__ import annotations

import difflib
import os
import re
import tomllib
from importlib import resources
from pathlib import Path

from woodmath.errors import BadPiece, UnknownName

_LINE = re.compile(r"\(at line (\d+)")


def text_of(path: str | os.PathLike[str]) -> str:
    """Return the text of a piece file.

    Parameters
    ----------
    path : str or path
        A TOML file in UTF-8.

    Returns
    -------
    str
        Without the invisible mark that some editors put first.

    Raises
    ------
    BadPiece
        If there is no such file, or it cannot be read, or it is not UTF-8.

    >>> text_of("no-such-piece.toml")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    woodmath.errors.BadPiece: There is no file no-such-piece.toml. ...
    """
    file = Path(path)
    try:
        return file.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        raise BadPiece(f"There is no file {file}. {_there(file.parent)}") from None
    except UnicodeDecodeError as error:
        line = error.object[: error.start].count(b"\n") + 1
        raise BadPiece(
            f"{file} is not written in UTF-8 (line {line} has a sign that is none). "
            "Open it in your editor and save it again with the encoding UTF-8."
        ) from None
    except (OSError, ValueError) as error:
        told = getattr(error, "strerror", None) or error
        raise BadPiece(
            f"{file} cannot be read ({told}). Give the path of a .toml file that you may open."
        ) from None


def demo_text(name: str) -> str:
    """Return the text of a demo piece.

    Parameters
    ----------
    name : str
        One of `demo_names()`.

    Returns
    -------
    str
        TOML.

    Raises
    ------
    UnknownName
        If there is no such demo piece; the message lists those there are.

    >>> demo_text("cradle")
    Traceback (most recent call last):
    woodmath.errors.UnknownName: There is no demo piece 'cradle'. There are: cat-bed, log-box.
    """
    names = demo_names()
    if name not in names:
        near = difflib.get_close_matches(str(name).lower(), names, n=1)
        hint = f" Did you mean {near[0]}?" if near else ""
        raise UnknownName(f"There is no demo piece {name!r:.60}.{hint} There are: {', '.join(names)}.")
    return (resources.files("woodmath") / "pieces" / f"{name}.toml").read_text(encoding="utf-8")


def demo_names() -> tuple[str, ...]:
    """Return the names of the demo pieces that come with the package.

    Returns
    -------
    tuple of str
        In the order of the alphabet.

    >>> demo_names()
    ('cat-bed', 'log-box')
    """
    files = (resources.files("woodmath") / "pieces").iterdir()
    return tuple(sorted(file.name.removesuffix(".toml") for file in files if file.name.endswith(".toml")))


def parsed(text: str, called: str) -> dict[str, object]:
    r"""Return what a piece file holds, by table and key.

    Parameters
    ----------
    text : str
        TOML.
    called : str
        The file's name, for the message.

    Returns
    -------
    dict of str to object
        As TOML gives it.

    Raises
    ------
    BadPiece
        If it is no TOML; the message shows the line.

    >>> parsed('[post]\nsquare = "1 3/4"', "box.toml")
    {'post': {'square': '1 3/4'}}
    """
    try:
        return tomllib.loads(text)
    except ValueError as error:
        found = _LINE.search(str(error))
        line = int(found[1]) if found else text.count("\n") + 1
        shown = "".join(text.splitlines()[line - 1 : line]).strip()
        raise BadPiece(
            f"{called} cannot be read at line {line}: {shown:.80}\n"
            f"  {str(error)[:200]}.\n"
            "  A line is a table in brackets, [post], or a key with one value; a key stands in its table "
            "only once. A length with a fraction stands between straight quotation marks, without the inch "
            'mark: square = "1 3/4".'
        ) from None


def _there(folder: Path) -> str:
    try:
        names = sorted(file.name for file in folder.glob("*.toml"))
    except OSError:
        names = []
    if names:
        more = " and more" if len(names) > 8 else ""
        return f"In that folder there are: {', '.join(names[:8])}{more}."
    return "No .toml file lies in that folder. Give the path of your piece, or open Piece.demo('cat-bed')."
