"""A piece file as text: found, decoded and parsed, or refused with the line where it went wrong."""

from __future__ import annotations

import difflib
import os
import re
import stat
import tomllib
from dataclasses import dataclass
from importlib import resources
from pathlib import Path

from woodmath.errors import BadPiece, UnknownName

LARGEST_FILE = 64 * 1024
"""Bytes; a piece with every table, its remarks and a rack full of boards has a tenth of it."""

DEEPEST = 4
"""So many pieces may be scaled one from another."""

_LINE = re.compile(r"\(at line (\d+)")
_PART = r"""(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')"""
# A reader of TOML takes time with the square of the parts, and no key here has more than three.
_TOO_MANY_PARTS = re.compile(rf"(?<![\w-]){_PART}(?:[ \t]*+\.[ \t]*+{_PART}){{8}}")


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
        if file.exists() and not stat.S_ISREG(file.stat().st_mode):
            raise BadPiece(
                f"{file} cannot be read (it is no ordinary file). Give the path of a .toml file that you may open."
            )
        with file.open("rb") as opened:
            held = opened.read(LARGEST_FILE + 1)
        if len(held) > LARGEST_FILE:
            raise BadPiece(
                f"{file} is larger than {LARGEST_FILE // 1024} kB, and no piece's file is: the demo pieces have 5. "
                "Give the path of the piece's own .toml file."
            )
        return held.decode("utf-8-sig")
    except FileNotFoundError:
        raise BadPiece(f"There is no file {file}. {_there(file.parent)}") from None
    except UnicodeDecodeError as error:
        line = error.object[: error.start].count(b"\n") + 1
        raise BadPiece(
            f"{file} is not written in UTF-8 (line {line} has a sign that is none). "
            "Open it in your editor and save it again with the encoding UTF-8."
        ) from None
    except (OSError, ValueError) as error:
        if isinstance(error, BadPiece):
            raise
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
    woodmath.errors.UnknownName: There is no demo piece 'cradle'. There are: cat-bed, hound-bed, log-box.
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
    ('cat-bed', 'hound-bed', 'log-box')
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
    if len(text) > LARGEST_FILE:
        raise BadPiece(
            f"{called} has {len(text)} signs, and a piece's file has at most {LARGEST_FILE}. Take out what is no "
            "part of the piece."
        )
    long = _TOO_MANY_PARTS.search(text)
    if long:
        line = text.count("\n", 0, long.start()) + 1
        raise BadPiece(
            f"{called} cannot be read at line {line}: {long[0]:.80}\n"
            "  No key has so many parts. A key stands in its table, as square does in [post]."
        )
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise BadPiece(
            f"{called} cannot be read: brackets stand within brackets too many times. Lists hold lengths or small "
            "tables here, and nothing deeper."
        ) from None
    except ValueError as error:
        found = _LINE.search(str(error))
        line = int(found[1]) if found else text.count("\n") + 1
        shown = _printable("".join(text.splitlines()[line - 1 : line]).strip())
        ends_early = "end of document" in str(error)
        where = f"at line {line}: {shown:.80}" if found or ends_early else "as it stands"
        raise BadPiece(
            f"{called} cannot be read {where}\n"
            f"  {_printable(str(error)[:200])}.\n"
            "  A line is a table in brackets, [post], or a key with one value; a key stands in its table "
            "only once. A length with a fraction stands between straight quotation marks, without the inch "
            'mark: square = "1 3/4".'
        ) from None


@dataclass(frozen=True)
class Shelf:
    """Where a piece's text lies, and so where the piece lies that it may be scaled from.

    Parameters
    ----------
    called : str
        What it is called in a message.
    folder : Path, optional
        The folder of its file; None for a text that lies in none, such as a demo piece's.
    before : tuple of str
        The pieces that led here, each named as it can be told from every other.

    >>> Shelf("my-bed.toml").beside("log-box")[1].called
    'log-box.toml'
    """

    called: str
    folder: Path | None = None
    before: tuple[str, ...] = ()

    @property
    def _own_name(self) -> str:
        return str((self.folder / self.called).resolve()) if self.folder else self.called

    def beside(self, name: str) -> tuple[str, Shelf]:
        """Return the text of another piece, and where it lies.

        Parameters
        ----------
        name : str
            A demo piece, or a .toml file in the same folder.

        Returns
        -------
        (str, Shelf)
            TOML, not yet read.

        Raises
        ------
        BadPiece
            If there is none, or it lies elsewhere, or it leads back to where it was named.
        """
        there = self._named(name)
        before = (*self.before, self._own_name)
        there = Shelf(there.called, there.folder, before)
        if there._own_name in before:
            round_about = [*(Path(each).name for each in before), there.called]
            raise BadPiece(
                f"it leads round in a circle: {' from '.join(round_about)}. Let one of them give its own sizes."
            )
        if len(before) > DEEPEST:
            raise BadPiece(
                f"it is number {len(before)} in a row of pieces each scaled from another. "
                "Scale it from the first of them."
            )
        return (text_of(there.folder / there.called) if there.folder else demo_text(name)), there

    def _named(self, name: str) -> Shelf:
        if name in demo_names():
            return Shelf(f"{name}.toml")
        demos = ", ".join(demo_names())
        if not name.endswith(".toml"):
            near = difflib.get_close_matches(name.lower(), demo_names(), n=1)
            hint = f"Did you mean {near[0]}? " if near else ""
            raise BadPiece(
                f"there is no demo piece of that name. {hint}There are: {demos}. Or name a file of the same folder, "
                "with .toml behind it."
            )
        if self.folder is None:
            raise BadPiece(
                f"this text lies in no folder yet, so no file lies beside it. Save it first, or name one of: {demos}."
            )
        folder = self.folder.resolve()
        elsewhere = set(name) & set("/\\:") or not name.isprintable()
        if elsewhere or (folder / name).resolve().parent != folder:
            raise BadPiece(
                "it leads out of the folder. Put the other piece's file beside this one, and give its name alone."
            )
        return Shelf(name, folder)


def _printable(words: str) -> str:
    return "".join(sign if sign.isprintable() else " " for sign in words)


def _there(folder: Path) -> str:
    try:
        names = sorted(file.name for file in folder.glob("*.toml"))
    except OSError:
        names = []
    if names:
        more = " and more" if len(names) > 8 else ""
        return f"In that folder there are: {', '.join(names[:8])}{more}."
    return "No .toml file lies in that folder. Give the path of your piece, or open Piece.demo('cat-bed')."
