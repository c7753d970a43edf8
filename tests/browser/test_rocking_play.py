"""The live rocker let go: the browser plays it in true time, at its own rate, with no word to or from the kernel."""

from __future__ import annotations

import itertools
import json
import math
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from lab import LabPage, from_or_to_a_kernel
from playwright.sync_api import Browser, Page, expect

from woodmath.drawing_svg import svg
from woodmath.piece import Piece
from woodmath.views.live_rocker import live_rocker

pytestmark = pytest.mark.browser

TILT = 12.0
CAT = Piece.demo("cat-bed")
PERIOD = CAT.rocking_body(load=True).period(TILT)
WATCH = """async ([place, seconds]) => {
    const body = document.querySelector(place + ' .wm-motion [id]').parentNode;
    const seen = [], started = performance.now();
    for (let now = started; now < started + 1000 * seconds;) {
        now = await new Promise(requestAnimationFrame);
        const { a, b, e, f } = body.getCTM();
        seen.push({ now: now / 1000, a, b, e, f });
    }
    return seen;
}"""
"""How the case leans and where it is, in each frame that the browser paints."""
IN_STEP = """async seconds => {
    const body = document.querySelector('svg .wm-motion [id]').parentNode;
    const lines = [...document.querySelectorAll('svg .wm-motion > polyline')];
    const seen = [], started = performance.now();
    for (let now = started; now < started + 1000 * seconds;) {
        now = await new Promise(requestAnimationFrame);
        const { e, f } = body.getCTM();
        seen.push({ weight: [e, f], ends: lines.map(line => {
            const { x, y } = line.animatedPoints[0];
            return [x, y];
        }) });
    }
    return seen;
}"""
Frames = list[dict[str, float]]
Show = Callable[..., Page]


@pytest.fixture
def show(browser: Browser) -> Iterator[Show]:
    """Put the live rocker, let go, into a page that is already open."""
    contexts = []

    def show_one(motion: str = "free", **context: Any) -> Page:
        drawing = live_rocker.drawing(CAT, tilt=TILT, motion=motion)
        wide, high = int(drawing.frame.width), int(drawing.frame.height)
        contexts.append(browser.new_context(viewport={"width": wide, "height": high}, **context))
        page = contexts[-1].new_page()
        page.set_content("<body style='margin:0'><div></div></body>")
        page.evaluate("text => { document.querySelector('div').innerHTML = text; }", svg(drawing))
        return page

    yield show_one
    for context in contexts:
        context.close()


def lean(seen: dict[str, float]) -> float:
    """Return how far the case leans to the right in a frame, in degrees; the screen counts clockwise."""
    return math.degrees(math.atan2(seen["b"], seen["a"]))


def swings(frames: Frames) -> list[float]:
    """Return when the case comes through upright on its way to the right, in seconds."""
    return [
        one["now"] + (other["now"] - one["now"]) * lean(one) / (lean(one) - lean(other))
        for one, other in itertools.pairwise(frames)
        if lean(one) < 0 <= lean(other)
    ]


def period_of(frames: Frames) -> float:
    """Return the time of one swing, from the first to the last time that it came through upright."""
    times = swings(frames)
    assert len(times) > 2
    return (times[-1] - times[0]) / (len(times) - 1)


def assert_it_moves_in_nearly_every_frame(frames: Frames) -> None:
    still = sum(lean(one) == lean(other) for one, other in itertools.pairwise(frames))
    assert still <= 0.05 * len(frames)


def test_let_go_it_rocks_in_its_true_time(show: Show) -> None:
    frames = show().evaluate(WATCH, ["svg", 5 * PERIOD])
    assert period_of(frames) == pytest.approx(PERIOD, rel=0.01)
    assert max(map(lean, frames)) == pytest.approx(TILT, abs=0.2)
    assert min(map(lean, frames)) == pytest.approx(-TILT, abs=0.2)


def test_it_moves_in_nearly_every_frame_that_the_browser_paints(show: Show) -> None:
    page = show()
    page.wait_for_timeout(200)
    assert_it_moves_in_nearly_every_frame(page.evaluate(WATCH, ["svg", 2 * PERIOD]))


def test_the_plumb_line_hangs_from_the_weight_in_every_frame(show: Show) -> None:
    page = show()
    page.wait_for_timeout(200)
    for seen in page.evaluate(IN_STEP, PERIOD):
        assert min(math.dist(seen["weight"], end) for end in seen["ends"]) < 0.3


def test_with_drag_every_swing_is_smaller_than_the_one_before(show: Show) -> None:
    frames = show("dragged").evaluate(WATCH, ["svg", 4 * PERIOD])
    times = swings(frames)
    reached = [
        max(lean(seen) for seen in frames if one <= seen["now"] < other)
        for one, other in itertools.pairwise(times)
    ]
    assert len(reached) > 1
    assert all(later < 0.95 * earlier for earlier, later in itertools.pairwise([TILT, *reached]))


def test_it_stands_still_as_it_was_tilted_for_those_who_ask_for_less_motion(show: Show) -> None:
    page = show(reduced_motion="reduce")
    assert not any(moving.is_visible() for moving in page.locator(".wm-motion").all())
    first = page.screenshot()
    page.wait_for_timeout(300)
    assert page.screenshot() == first


def notebook(folder: Path) -> str:
    """Write a page with the live rocker, let go, and return its name as the course's server sees it."""
    code = (
        "from woodmath.piece import Piece\n"
        "from woodmath.explorer import look\n"
        "from woodmath.views.live_rocker import live_rocker\n"
        f'look(live_rocker, Piece.demo("cat-bed"), tilt={TILT}, motion="free")'
    )
    cell = {
        "cell_type": "code",
        "id": "c",
        "metadata": {},
        "source": code,
        "outputs": [],
        "execution_count": None,
    }
    kernel = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    page = {"cells": [cell], "metadata": kernel, "nbformat": 4, "nbformat_minor": 5}
    (folder / "notebooks" / "let-go.ipynb").write_text(json.dumps(page), encoding="utf-8")
    return "notebooks/let-go.ipynb"


def test_while_it_plays_on_a_page_nothing_is_said_to_the_kernel_or_by_it(
    open_page: Callable[..., LabPage], course_root: Path
) -> None:
    lab = open_page(notebook(course_root))
    lab.run_all()
    lab.page.locator(".woodmath-live svg .wm-motion").first.wait_for()
    lab.rest()
    told: list[str] = []
    spy = lab.page.context.new_cdp_session(lab.page)
    for event in ("Network.webSocketFrameSent", "Network.webSocketFrameReceived"):
        spy.on(event, lambda frame, event=event: told.extend(from_or_to_a_kernel(event, frame)))
    spy.send("Network.enable")
    frames = lab.page.evaluate(WATCH, [".woodmath-live svg", 4 * PERIOD])
    assert told == []
    assert period_of(frames) == pytest.approx(PERIOD, rel=0.01)
    assert_it_moves_in_nearly_every_frame(frames)
    # The spy does hear: a slider that moves is a message to the kernel, and the new picture its answer.
    words = lab.page.locator(".woodmath-live p[role=status]")
    before = words.inner_text()
    lab.page.locator(".woodmath-live .noUi-handle").first.press("ArrowRight")
    expect(words).not_to_have_text(before)
    assert {line.partition(":")[0] for line in told} == {
        "Network.webSocketFrameSent",
        "Network.webSocketFrameReceived",
    }
