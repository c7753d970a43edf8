"""The two pages that are compared: the same drawing, once live as ours and once as stock pages draw it."""

from __future__ import annotations

import importlib.util
import json
import math
import statistics
import time
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType
from typing import Any

HERE = Path(__file__).parent
PROBE = HERE / "probe.js"


@dataclass(frozen=True)
class Subject:
    """Which live drawing is compared, and which of its sliders is moved from which mark."""

    view: str
    control: str
    mark: int


SUBJECTS = {
    "post_section": Subject("post_section", "set_back", 24),
    "whole_piece": Subject("whole_piece", "end_top", 600),
    "live_rocker": Subject("live_rocker", "weight_height", 500),
    "rocker_for_a_wish": Subject("rocker_for_a_wish", "rise", 100),
}


def ours(subject: Subject) -> str:
    """Return the cell that makes our live drawing."""
    return f"""
from woodmath.page import Piece, look, {subject.view}

live = look({subject.view}, Piece.demo("log-box"))
slider = live.rows["{subject.control}"].readers[0][0]
live
"""


def stock(subject: Subject) -> str:
    """Return the cell that paints the same drawing as a stock page does."""
    return f"""
%matplotlib inline
import ipywidgets
from IPython.display import display
from woodmath.drawing_pdf import figure_of
from woodmath.page import Piece, {subject.view}

piece = Piece.demo("log-box")
slider = ipywidgets.IntSlider(value={subject.mark}, min=0, max=1200, description="{subject.control}")

@ipywidgets.interact(mark=slider)
def drawn(mark):
    display(figure_of({subject.view}.drawing(piece, {subject.control}=piece.rule.length(mark))))
"""


def redraws(subject: Subject, count: int) -> str:
    """Return the cell that tells what a redraw costs the kernel, in milliseconds."""
    return f"""
import statistics, time

def cost_of(mark):
    before = time.perf_counter()
    slider.value = mark
    return 1000 * (time.perf_counter() - before)

print(statistics.median(cost_of({subject.mark} + number % 2) for number in range(1, {count} + 1)))
"""


STORE = """
import psutil
from comm import get_comm_manager
print(psutil.Process().memory_info().rss, len(get_comm_manager().comms))
"""


def load_lab() -> ModuleType:
    """Return the browser tests' own way of starting the server and opening a page."""
    spec = importlib.util.spec_from_file_location("lab", HERE.parent / "browser" / "lab.py")
    assert spec is not None and spec.loader is not None
    lab = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(lab)
    return lab


@dataclass(frozen=True)
class Step:
    """One move of a slider, in milliseconds: all of it, and its parts one after the other."""

    whole: float
    leaving: float
    hearing: float
    drawing: float
    arriving: float
    painting: float


@dataclass(frozen=True)
class Drag:
    """A drag of the slider: pictures a second while it lasts, and milliseconds to the last one after it."""

    rate: float
    lag: float


@dataclass(frozen=True)
class Store:
    """What is held: megabytes and widgets in the kernel, megabytes and nodes in the browser."""

    kernel: float
    widgets: int
    browser: float
    nodes: int


class ComparedPage:
    """A notebook of one cell, open in the browser with its slider ready to be moved."""

    def __init__(self, lab: ModuleType, browser: Any, server: Any, name: str, source: str) -> None:
        cell = {"cell_type": "code", "id": "one", "metadata": {}, "execution_count": None, "outputs": []}
        kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
        book = {
            "cells": [cell | {"source": source.strip()}],
            "metadata": {"kernelspec": kernel},
            "nbformat": 4,
            "nbformat_minor": 5,
        }
        (server.root / f"{name}.ipynb").write_text(json.dumps(book), encoding="utf-8")
        self.name = name
        self._lab = lab.LabPage(browser, server, f"{name}.ipynb", viewport={"width": 1250, "height": 900})
        self._lab.clear_sides()
        self._lab.run_all()
        self._page = self._lab.page
        self._devtools = self._page.context.new_cdp_session(self._page)
        self._page.wait_for_selector(".jp-OutputArea-output :is(svg[role=img], img)")
        self._slider = self._page.locator(".noUi-target").nth(2 if name == "ours" else 0)
        self._handle = self._slider.locator(".noUi-handle")
        self._handle.focus()
        self._page.evaluate(PROBE.read_text(encoding="utf-8"), ".jp-OutputArea")
        self._moves = 0

    def step(self) -> Step:
        """Press an arrow key on the slider, ten times one way and ten times the other, and wait for the paint."""
        self._page.evaluate("window.benchmark.arm()")
        self._page.keyboard.press("ArrowRight" if self._moves % 20 < 10 else "ArrowLeft")
        self._moves += 1
        return Step(**self._page.evaluate("window.benchmark.step"))

    def drag(self, seconds: float) -> Drag:
        """Drag the slider over 28 of its marks and back once a second, with sixty moves of the mouse."""
        place, whole = self._handle.bounding_box(), self._slider.bounding_box()
        reach = 0.28 * whole["width"]
        x, y = place["x"] + place["width"] / 2, place["y"] + place["height"] / 2
        mouse = self._page.mouse
        mouse.move(x, y)
        mouse.down()
        self._page.evaluate("window.benchmark.drag()")
        start = time.perf_counter()
        tick = 0
        while (passed := time.perf_counter() - start) < seconds:
            mouse.move(x + reach * (1 - abs(1 - 2 * (passed % 1))), y)
            tick += 1
            time.sleep(max(0.0, start + tick / 60 - time.perf_counter()))
        self._page.evaluate("window.benchmark.stop()")
        self._page.wait_for_timeout(1000)
        seen = self._page.evaluate("window.benchmark.dragged()")
        mouse.move(x, y)
        mouse.up()
        self._handle.focus()
        return Drag(rate=seen["pictures"] / seconds, lag=seen["lag"])

    def redraw(self, subject: Subject, count: int) -> float:
        """Return the median cost of a redraw in the kernel, everything sent included, in milliseconds."""
        return float(self._say(redraws(subject, count)))

    def store(self) -> Store:
        """Return what kernel and browser hold, after the browser has cleared away what nobody uses."""
        size, widgets = map(int, self._say(STORE).split())
        self._devtools.send("HeapProfiler.collectGarbage")
        heap = self._devtools.send("Runtime.getHeapUsage")["usedSize"]
        nodes = self._devtools.send("Memory.getDOMCounters")["nodes"]
        return Store(size / 1e6, widgets, heap / 1e6, nodes)

    def _say(self, code: str) -> str:
        """Run code in the page's kernel and return what it prints."""
        said: str = self._page.evaluate(
            """async code => {
                const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
                const request = kernel.requestExecute({ code, store_history: false });
                let said = '';
                request.onIOPub = message => {
                    if (message.header.msg_type === 'stream') said += message.content.text;
                    if (message.header.msg_type === 'error') said += message.content.traceback.join('\\n');
                };
                await request.done;
                return said;
            }""",
            code,
        )
        return said


def median(values: list[float]) -> float:
    """Return the value that half of them do not exceed."""
    return statistics.median(values)


def p95(values: list[float]) -> float:
    """Return the value that nineteen of twenty do not exceed."""
    return sorted(values)[math.ceil(0.95 * len(values)) - 1]
