"""What a cell has made can be cleared away when that cell is run again, so that nothing piles up in the kernel."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from IPython import get_ipython


def when_this_cell_runs_again(clear: Callable[[], None]) -> None:
    """Call a function once, just before the cell that is running now is run the next time.

    Outside IPython, and under a front end that does not name its cells, the function is never called.

    Parameters
    ----------
    clear : callable
        Takes nothing.

    >>> when_this_cell_runs_again(lambda: print("again"))
    """
    shell = get_ipython()
    if shell is None:
        return

    def cell_has_run(result: Any) -> None:
        shell.events.unregister("post_run_cell", cell_has_run)
        cell = result.info.cell_id

        def cell_will_run(info: Any) -> None:
            if info.cell_id == cell:
                shell.events.unregister("pre_run_cell", cell_will_run)
                clear()

        if cell:
            shell.events.register("pre_run_cell", cell_will_run)

    shell.events.register("post_run_cell", cell_has_run)
