"""What a reader does to a live drawing is done one thing after another, and once.

A widget that we have set in answer to a reader is heard in another thread of the kernel than one that we have not
touched since its cell ran (ipykernel 7, unless JupyterLab is told otherwise, as ours is): a slider, its box and a
button can be under way at the same moment. And whatever is set in the course of one of them, a slider beside a box, is
heard as if the reader had moved it.
"""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager


class OneAtATime:
    """A gate for what a reader does: another thread waits at it, and what the act itself sets off is told apart.

    >>> acts = OneAtATime()
    >>> with acts.act() as readers_own:
    ...     with acts.act() as echo:
    ...         print(readers_own, echo)
    True False
    """

    def __init__(self) -> None:
        self._turn = threading.RLock()
        self._under_way = False

    @contextmanager
    def act(self) -> Iterator[bool]:
        """Wait until no other thread acts, and hold the gate.

        Yields
        ------
        bool
            True for what the reader did, False for what was set off by the act that is under way in this thread.
        """
        with self._turn:
            readers_own = not self._under_way
            self._under_way = True
            try:
                yield readers_own
            finally:
                self._under_way = not readers_own
