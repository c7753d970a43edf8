"""A year that goes round by itself on page 13: the browser moves the wood, with no word to or from the kernel."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from lab import CourseServer, LabPage, from_or_to_a_kernel
from playwright.sync_api import Browser, Locator, Page

from woodmath.drawing import MovingLine
from woodmath.drawing_svg import svg
from woodmath.piece import Piece
from woodmath.views.board_through_the_year import board_through_the_year
from woodmath.views.mitre_through_the_year import mitre_through_the_year
from woodmath.views.panel_through_the_year import panel_through_the_year
from woodmath.views.view import View

pytestmark = pytest.mark.browser

PAGE = "notebooks/13-wood-moves.ipynb"
CAT = Piece.demo("cat-bed")
BEGINS = 0.1
"""Seconds after which the browser sets a picture moving."""
MOVING = (board_through_the_year, panel_through_the_year, mitre_through_the_year)
WATCH = """async ([place, seconds]) => {
    const picture = document.querySelector(place);
    const lines = [...picture.querySelectorAll('.wm-motion > polygon, .wm-motion > polyline')];
    const seen = [], started = performance.now();
    for (let now = started; now < started + 1000 * seconds;) {
        now = await new Promise(requestAnimationFrame);
        seen.push({ clock: picture.getCurrentTime(), lines: lines.map(
            line => [...line.animatedPoints].map(({ x, y }) => [x, y])) });
    }
    return seen;
}"""
"""Where every line that moves has its points, in each frame that the browser paints, with the picture's own clock."""
LEAF_THROUGH = """async moments => {
    const picture = document.querySelector('svg');
    const lines = [...picture.querySelectorAll('.wm-motion > polygon, .wm-motion > polyline')];
    const seen = [];
    picture.pauseAnimations();
    for (const moment of moments) {
        picture.setCurrentTime(moment);
        await new Promise(requestAnimationFrame);
        seen.push({ clock: picture.getCurrentTime(), lines: lines.map(
            line => [...line.animatedPoints].map(({ x, y }) => [x, y])) });
    }
    return seen;
}"""
"""The same at moments to which the picture's clock is put by hand, so that nobody waits for a whole year."""
Frames = list[dict[str, Any]]
Show = Callable[..., Page]


@pytest.fixture
def show(browser: Browser) -> Iterator[Show]:
    """Put a view, its year going round, into a page that is already open."""
    contexts = []

    def show_one(view: View, **context: Any) -> Page:
        drawing = view.drawing(CAT, motion="moving")
        wide, high = int(drawing.frame.width), int(drawing.frame.height)
        contexts.append(browser.new_context(viewport={"width": wide, "height": high}, **context))
        page = contexts[-1].new_page()
        page.set_content("<body style='margin:0'><div></div></body>")
        page.evaluate("text => { document.querySelector('div').innerHTML = text; }", svg(drawing))
        return page

    yield show_one
    for context in contexts:
        context.close()


def spread(one: list[list[float]], other: list[list[float]]) -> float:
    """Return how far the point lies that has moved most between two moments, in picture units."""
    return max(math.dist(here, there) for here, there in zip(one, other, strict=True))


def assert_it_moves_in_nearly_every_frame(frames: Frames) -> None:
    pairs = list(itertools.pairwise(each for each in frames if each["clock"] > 2 * BEGINS))
    assert len(pairs) > 20
    still = sum(one["lines"] == other["lines"] for one, other in pairs)
    assert still <= 0.05 * len(pairs)


def lines_of(view: View) -> list[MovingLine]:
    return [shape for shape in view.drawing(CAT, motion="moving").shapes if isinstance(shape, MovingLine)]


@pytest.mark.parametrize("view", MOVING, ids=[view.name for view in MOVING])
def test_wood_goes_to_the_other_end_of_its_year_and_comes_back(show: Show, view: View) -> None:
    frame = view.drawing(CAT).frame
    lines = lines_of(view)
    seconds = lines[0].seconds
    page = show(view)
    assert_it_moves_in_nearly_every_frame(page.evaluate(WATCH, ["svg", 2.0]))
    moments = page.evaluate(LEAF_THROUGH, [BEGINS + 1.2 * seconds * step / 48 for step in range(49)])
    for number, line in enumerate(lines):
        began, there = (
            [list(frame.place(point)) for point in line.frames[at]] for at in (0, len(line.frames) // 2)
        )
        seen = [each["lines"][number] for each in moments]
        reached = spread(began, there)
        # Points are written to a tenth, and half a year is one of the moments.
        assert min(spread(there, points) for points in seen) < 0.5
        assert max(spread(began, points) for points in seen) == pytest.approx(reached, abs=0.5)
    # By the picture's own clock: at each moment the outline is where the frames, evenly spaced in time, have it.
    for moment in moments:
        part = max(0.0, moment["clock"] - BEGINS) % seconds / seconds * (len(lines[0].frames) - 1)
        at = int(part)
        one, other = ([list(frame.place(point)) for point in lines[0].frames[step]] for step in (at, at + 1))
        due = [
            [here + (there - here) * (part - at) for here, there in zip(first, last, strict=True)]
            for first, last in zip(one, other, strict=True)
        ]
        assert spread(due, moment["lines"][0]) < 0.6


@pytest.mark.parametrize("view", MOVING, ids=[view.name for view in MOVING])
def test_it_stands_still_at_its_first_end_for_those_who_ask_for_less_motion(show: Show, view: View) -> None:
    page = show(view, reduced_motion="reduce")
    assert not any(moving.is_visible() for moving in page.locator(".wm-motion").all())
    assert page.locator(".wm-still").first.is_visible()
    first = page.screenshot()
    page.wait_for_timeout(700)
    assert page.screenshot() == first


@pytest.fixture(scope="module")
def opened(browser: Browser, course_server: CourseServer) -> Iterator[LabPage]:
    """Return page 13, run to the bottom, once for both tests."""
    lab = LabPage(browser, course_server, PAGE)
    lab.run_all()
    yield lab
    lab.close()


@pytest.fixture
def board(opened: LabPage) -> Iterator[Locator]:
    """Return its first live drawing with the year going round by itself, which stands again when the test ends."""
    shown = opened.page.locator(".woodmath-live").first
    shown.scroll_into_view_if_needed()
    assert shown.locator("svg .wm-motion").count() == 0
    choose(opened, "goes round by itself")
    shown.locator("svg .wm-motion").first.wait_for(state="attached")
    yield shown
    choose(opened, "stands at its end")
    shown.locator("svg .wm-motion").first.wait_for(state="detached")


def choose(lab: LabPage, motion: str) -> None:
    """Choose whether the year of the first live drawing goes round."""
    lab.page.get_by_role("combobox", name="the year").first.select_option(motion)


def test_on_the_page_the_board_moves_by_itself_and_the_kernel_is_not_asked(
    opened: LabPage, board: Locator
) -> None:
    opened.rest()
    told: list[str] = []
    spy = opened.page.context.new_cdp_session(opened.page)
    for event in ("Network.webSocketFrameSent", "Network.webSocketFrameReceived"):
        spy.on(event, lambda frame, event=event: told.extend(from_or_to_a_kernel(event, frame)))
    spy.send("Network.enable")
    frames = opened.page.evaluate(WATCH, [".woodmath-live svg", 3.0])
    assert told == []
    assert_it_moves_in_nearly_every_frame(frames)
    outline = [each["lines"][0] for each in frames]
    assert max(spread(outline[0], points) for points in outline) > 3
    # The spy does hear: a choice is a message to the kernel, and the new picture its answer; the board stands again.
    choose(opened, "stands at its end")
    board.locator("svg .wm-motion").first.wait_for(state="detached")
    assert {line.partition(":")[0] for line in told} == {
        "Network.webSocketFrameSent",
        "Network.webSocketFrameReceived",
    }


def test_on_the_page_it_stands_still_for_those_who_ask_for_less_motion(
    opened: LabPage, board: Locator
) -> None:
    opened.page.emulate_media(reduced_motion="reduce")
    assert not any(moving.is_visible() for moving in board.locator("svg .wm-motion").all())
    picture = board.locator("svg").first
    first = picture.screenshot()
    opened.page.wait_for_timeout(700)
    assert picture.screenshot() == first
    opened.page.emulate_media(reduced_motion="no-preference")
    assert opened.outside == []
