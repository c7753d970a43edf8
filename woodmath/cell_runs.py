"""What a cell has made can be cleared away when that cell is run again, so that nothing piles up in the kernel."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

import ipywidgets
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


def with_parts(widget: Any) -> Iterator[Any]:
    """Yield a widget and all that it is made of: what stands in it, and the layouts and styles.

    Parameters
    ----------
    widget : Widget
        From ipywidgets.

    Yields
    ------
    Widget
        Each of them is to be closed when the widget is wanted no more.

    >>> len(list(with_parts(ipywidgets.VBox([ipywidgets.Text()]))))
    5
    """
    yield widget
    for name in widget.keys:
        value = getattr(widget, name)
        for part in value if isinstance(value, (list, tuple)) else (value,):
            if isinstance(part, ipywidgets.Widget):
                yield from with_parts(part)
