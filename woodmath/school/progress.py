"""A line that tells how far a long job is: rewritten in place on a terminal, now and then elsewhere."""

from __future__ import annotations

import shutil
import time
from collections.abc import Callable
from typing import TextIO

SECONDS_BETWEEN_LINES = 10.0


class ProgressLine:
    """Where a long job stands.

    Parameters
    ----------
    stream : TextIO
        Where it is written; in place when that is a terminal.
    clock : callable
        The time in seconds; a test gives its own.

    >>> import sys
    >>> line = ProgressLine(sys.stdout, clock=lambda: 0.0)
    >>> line.show("Fetching 1 of about 109: anyio")
    Fetching 1 of about 109: anyio
    >>> line.show("Fetching 2 of about 109: arrow")
    >>> line.close()
    """

    def __init__(self, stream: TextIO, clock: Callable[[], float] = time.monotonic) -> None:
        self._stream = stream
        self._clock = clock
        self._in_place = stream.isatty()
        self._shown = ""
        self._last: float | None = None

    def show(self, text: str) -> None:
        """Show where the job stands; elsewhere than on a terminal, a line every ten seconds at most."""
        if text == self._shown:
            return
        self._shown = text
        if self._in_place:
            width = max(20, shutil.get_terminal_size().columns - 1)
            self._stream.write("\r" + text[:width].ljust(width))
            self._stream.flush()
        elif self._last is None or self._clock() - self._last >= SECONDS_BETWEEN_LINES:
            self._last = self._clock()
            print(text, file=self._stream, flush=True)

    def close(self) -> None:
        """Clear the line on a terminal, so that what follows starts at its left end."""
        if self._in_place and self._shown:
            width = max(20, shutil.get_terminal_size().columns - 1)
            self._stream.write("\r" + " " * width + "\r")
            self._stream.flush()
        self._shown = ""
