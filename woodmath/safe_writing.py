"""Files written whole or not at all: beside their place first, and then put in it."""

from __future__ import annotations

import contextlib
import os
import secrets
from collections.abc import Sequence
from pathlib import Path, PurePath

from woodmath.errors import NotWritten


def write_all(folder: Path, files: Sequence[tuple[PurePath, bytes]]) -> tuple[Path, ...]:
    """Write files into a folder; whatever has one of their names is replaced, and nothing else is touched.

    Parameters
    ----------
    folder : Path
        Is made where there is none.
    files : sequence of (path within the folder, bytes)
        Whole files.

    Returns
    -------
    tuple of Path
        Where they are now.

    Raises
    ------
    NotWritten
        If one cannot be written; as long as they are not all on the disk, none is put in its place.
    """
    ready: list[tuple[Path, Path]] = []
    try:
        for name, content in files:
            place = folder / name
            if place.is_dir():
                raise NotWritten(
                    f"{place} is a folder, and a file is to be written there. Move it, or give another folder."
                )
            place.parent.mkdir(parents=True, exist_ok=True)
            ready.append((place.with_name(f".{secrets.token_hex(6)}.being-written"), place))
            _write(ready[-1][0], content)
        for written, place in ready:
            written.replace(place)
    except BaseException as error:
        for written, _ in ready:
            with contextlib.suppress(OSError):
                written.unlink()
        if isinstance(error, OSError) and not isinstance(error, NotWritten):
            raise NotWritten(
                f"Nothing can be written into {folder} ({error.strerror or error}). Give another folder."
            ) from None
        raise
    return tuple(place for _, place in ready)


def _write(place: Path, content: bytes) -> None:
    with place.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
