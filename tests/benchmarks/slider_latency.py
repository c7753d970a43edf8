"""How long a slider's move takes to be seen, on our page and on a stock one that draws the same thing.

`python tests/benchmarks/slider_latency.py` opens two notebooks in a real Chromium, on the server that
`woodmath open` starts: a live drawing, and the same drawing painted by Matplotlib in a stock
`interact`. Moves alternate between the two. A step is timed from the key on the slider's handle to the task
after the animation frame that shows the new picture. With `--assert` a missed promise is an error.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from compared_pages import (
    SUBJECTS,
    ComparedPage,
    Drag,
    Step,
    Store,
    Subject,
    load_lab,
    median,
    ours,
    p95,
    stock,
)
from playwright.sync_api import sync_playwright

PARTS = (
    ("leaving", "key to the message leaving the browser"),
    ("hearing", "from there to the kernel's first word"),
    ("drawing", "from there to the new picture's message"),
    ("arriving", "from there to the picture in the page"),
    ("painting", "from there to the task after the frame"),
)


@dataclass(frozen=True)
class Measured:
    """What was found on one page."""

    steps: list[Step]
    drags: list[Drag]
    redraw: float

    @property
    def whole(self) -> list[float]:
        """Key to paint, in milliseconds, every move."""
        return [step.whole for step in self.steps]

    @property
    def rate(self) -> float:
        """Pictures a second while dragging."""
        return median([drag.rate for drag in self.drags])

    @property
    def lag(self) -> float:
        """Milliseconds from the last move of a drag to the last picture."""
        return median([drag.lag for drag in self.drags])


def measure(
    subject: Subject, moves: int, drags: int, seconds: float
) -> tuple[Measured, Measured, Store, Store]:
    """Measure both pages by turns; then move our slider until it has made 50 and 550 moves."""
    lab = load_lab()
    program = lab.chromium()
    if program is None:
        sys.exit(lab.NO_CHROMIUM)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        root = Path(folder, "pages")
        root.mkdir()
        server = lab.CourseServer(root, Path(folder, "jupyter"), ["--LabApp.expose_app_in_browser=True"])
        browser = playwright.chromium.launch(executable_path=program, args=list(lab.CHROMIUM_FLAGS))
        try:
            mine = ComparedPage(lab, browser, server, "ours", ours(subject))
            pages = (mine, ComparedPage(lab, browser, server, "stock", stock(subject)))
            steps: dict[str, list[Step]] = {page.name: [] for page in pages}
            for number in range(moves + 3):
                for page in pages:
                    step = page.step()
                    time.sleep(0.1)
                    # The first moves of a page are slower: the browser has not seen its code run yet.
                    steps[page.name] += [step] if number >= 3 else []
            dragged = {page.name: [] for page in pages}
            for _ in range(drags):
                for page in pages:
                    dragged[page.name].append(page.drag(seconds))
            found = [
                Measured(steps[page.name], dragged[page.name], page.redraw(subject, 40)) for page in pages
            ]
            for _ in range(50):
                mine.step()
            before = mine.store()
            for _ in range(500):
                mine.step()
            return found[0], found[1], before, mine.store()
        finally:
            browser.close()
            server.stop()


def report(mine: Measured, theirs: Measured, before: Store, after: Store) -> str:
    """Return the table of everything found."""
    ratio = median(theirs.whole) / median(mine.whole)
    rows = [
        ("", "ours", "stock", ""),
        ("key to painted, median", f"{median(mine.whole):.1f}", f"{median(theirs.whole):.1f}", "ms"),
        ("key to painted, p95", f"{p95(mine.whole):.1f}", f"{p95(theirs.whole):.1f}", "ms"),
        ("moves", str(len(mine.whole)), str(len(theirs.whole)), ""),
        ("times faster, by the medians", f"{ratio:.1f}", "", ""),
        ("dragging, pictures a second", f"{mine.rate:.1f}", f"{theirs.rate:.1f}", ""),
        ("dragging, last move to last picture", f"{mine.lag:.0f}", f"{theirs.lag:.0f}", "ms"),
        ("a redraw costs the kernel, median", f"{mine.redraw:.2f}", f"{theirs.redraw:.2f}", "ms"),
        ("", "", "", ""),
        ("of a step on our page, medians:", "", "", ""),
        *(
            (f"  {told}", f"{median([getattr(step, name) for step in mine.steps]):.1f}", "", "ms")
            for name, told in PARTS
        ),
        ("", "", "", ""),
        ("our page after so many moves:", "50", "550", ""),
        ("  kernel, resident", f"{before.kernel:.1f}", f"{after.kernel:.1f}", "MB"),
        ("  kernel, widgets", str(before.widgets), str(after.widgets), ""),
        ("  browser, script heap", f"{before.browser:.1f}", f"{after.browser:.1f}", "MB"),
        ("  browser, nodes", str(before.nodes), str(after.nodes), ""),
    ]
    return "\n".join(f"{told:42}{one:>8}{other:>9} {unit}".rstrip() for told, one, other, unit in rows)


def missed(mine: Measured, theirs: Measured, before: Store, after: Store) -> list[str]:
    """Return what is promised and was not found."""
    ratio = median(theirs.whole) / median(mine.whole)
    promises = [
        ("a step in 35 ms at most", median(mine.whole) <= 35),
        ("4 times faster than a stock page", ratio >= 4),
        ("15 pictures a second while dragging", mine.rate >= 15),
        ("a redraw in 5 ms at most", mine.redraw <= 5),
        ("no more widgets after 500 moves", after.widgets == before.widgets),
        ("no more than 2 MB more in the kernel after 500 moves", after.kernel - before.kernel <= 2),
        ("no more than 2 MB more in the browser after 500 moves", after.browser - before.browser <= 2),
    ]
    return [promise for promise, kept in promises if not kept]


def main() -> int:
    """Measure, print, and with `--assert` judge."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    parser.add_argument("--moves", type=int, default=40, help="moves of each slider (30 or more)")
    parser.add_argument("--drags", type=int, default=3, help="drags of each slider")
    parser.add_argument("--seconds", type=float, default=2.7, help="how long a drag lasts")
    parser.add_argument("--assert", action="store_true", dest="judge", help="fail when a promise is missed")
    parser.add_argument("--view", choices=tuple(SUBJECTS), default="post_section", help="which live drawing")
    given = parser.parse_args()
    found = measure(SUBJECTS[given.view], given.moves, given.drags, given.seconds)
    print(report(*found))
    broken = missed(*found) if given.judge else []
    for promise in broken:
        print(f"missed: {promise}")
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
