"""The text of a piece's file saved, whole or not at all, and never over another file unless that was asked for."""

from __future__ import annotations

import contextlib
import os
import secrets
import tomllib
from pathlib import Path

from woodmath.as_given import quoted
from woodmath.errors import NotWritten, WoodmathError
from woodmath.piece_file import LARGEST_FILE, text_of
from woodmath.piece_origin import KEYS


def saved_pieces(folder: str | os.PathLike[str]) -> tuple[str, ...]:
    """Return the names of the pieces' files in a folder, those with faults among them.

    Parameters
    ----------
    folder : str or path
        Where pieces are saved; it need not be there yet.

    Returns
    -------
    tuple of str
        In the order of the alphabet; a file in TOML that tells of something else is left out.

    >>> saved_pieces("no-such-folder")
    ()
    """
    try:
        files = sorted(Path(folder).glob("*.toml"))
        return tuple(file.name for file in files if not file.name.startswith(".") and _tells_of_a_piece(file))
    except OSError:
        return ()


def _tells_of_a_piece(file: Path) -> bool:
    try:
        held = tomllib.loads(text_of(file))
    except tomllib.TOMLDecodeError:
        # Half a thought that was saved so that it is not lost.
        return True
    except WoodmathError:
        return False
    return not held or bool({"post", "rule", KEYS[0]} & set(held))


def save(text: str, path: str | os.PathLike[str], replace: bool = False) -> Path:
    """Save the text of a piece's file, whole or not at all.

    Parameters
    ----------
    text : str
        What the file is to hold; a text that cannot be read is saved as well, so that nothing typed is lost.
    path : str or path
        A name that ends in .toml, in a folder that is there.
    replace : bool
        Whether a file of that name may be replaced.

    Returns
    -------
    Path
        Where it is now.

    Raises
    ------
    NotWritten
        If the name is none for a piece, the folder takes no files, or a file of that name is there and may not be
        replaced; what was there is then as it was.
    """
    place = Path(path)
    if place.suffix != ".toml" or not place.name.isprintable():
        raise NotWritten(
            f"{quoted(place.name)} is no name for a piece's file. Give it a name that ends in .toml: my-bed.toml."
        )
    content = text.encode("utf-8")
    if len(content) > LARGEST_FILE:
        raise NotWritten(
            f"The text has {len(content)} bytes, and a piece's file has at most {LARGEST_FILE}. "
            "Take out what is no part of the piece."
        )
    if not replace and place.exists():
        raise _taken(place)
    beside = place.with_name(f".{secrets.token_hex(6)}.being-written")
    try:
        with beside.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if replace:
            Path(beside).replace(place)
        else:
            _put(beside, place)
    except NotWritten:
        raise
    except OSError as error:
        raise NotWritten(
            f"{place} cannot be written ({error.strerror or error}). Choose a folder that is there and takes files."
        ) from None
    finally:
        with contextlib.suppress(OSError):
            beside.unlink()
    return place


def _put(beside: Path, place: Path) -> None:
    """Put a written file in its place unless something appeared there meanwhile."""
    try:
        os.link(beside, place)
    except FileExistsError:
        raise _taken(place) from None
    except OSError:
        # Some disks know no second name for a file; then the look before is all the guard that there is.
        if place.exists():
            raise _taken(place) from None
        Path(beside).replace(place)


def _taken(place: Path) -> NotWritten:
    return NotWritten(
        f"{place} is there already, and nothing was written. Save under another name, such as {free_name(place)}, "
        "or ask for it to be replaced."
    )


def free_name(place: Path) -> str:
    """Return a name like the one that is taken, which no file of its folder has.

    Parameters
    ----------
    place : Path
        What is taken.

    Returns
    -------
    str
        Without the folder.

    >>> free_name(Path("no-such-folder/bed.toml"))
    'bed-2.toml'
    """
    count = 2
    while place.with_name(f"{place.stem}-{count}{place.suffix}").exists():
        count += 1
    return f"{place.stem}-{count}{place.suffix}"
