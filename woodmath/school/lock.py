"""One set-up at a time: a lock that the system itself releases when its holder ends, however it ends."""

from __future__ import annotations

import errno
import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

SECONDS_BETWEEN_TRIES = 0.2

if sys.platform == "win32":
    import msvcrt

    def _try_lock(descriptor: int) -> None:
        msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _try_lock(descriptor: int) -> None:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)


_TAKEN = (errno.EACCES, errno.EAGAIN, errno.EDEADLK)


@contextmanager
def locked(path: Path, waiting: Callable[[], None]) -> Iterator[int]:
    """Hold a lock for as long as the block runs, waiting for whoever holds it now.

    A child that is given the descriptor holds the lock too: a pip that outlives its killed parent keeps
    the next set-up waiting until it has ended. There is nothing stale to clean up after a crash. A file
    system that knows no locks is used without.

    Parameters
    ----------
    path : Path
        The lock file; it stays.
    waiting : callable
        Called once when somebody else holds the lock.

    Yields
    ------
    int
        The descriptor of the lock file.
    """
    descriptor = os.open(path, os.O_RDWR | os.O_CREAT, 0o666)
    told = False
    try:
        while True:
            try:
                _try_lock(descriptor)
                break
            except OSError as error:
                if error.errno not in _TAKEN:
                    break
            if not told:
                waiting()
                told = True
            time.sleep(SECONDS_BETWEEN_TRIES)
        yield descriptor
    finally:
        os.close(descriptor)
