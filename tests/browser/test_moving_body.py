"""A body that the browser itself moves: in time, in every frame, in step with what moves beside it, or not at all."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from woodmath.drawing import Circle, Drawing, Frame, Line, MovingBody, MovingLine, Wood, rectangle
from woodmath.drawing_svg import svg

pytestmark = pytest.mark.browser

FRAME = Frame(640.0, 480.0, left=-6.4, bottom=-4.8, scale=50.0)
SECONDS, BEGINS = 1.0, 0.1
STEPS = 120
ROUND = tuple(
    (3.0 * math.cos(turn), 3.0 * math.sin(turn), math.degrees(turn))
    for turn in (2 * math.pi * step / STEPS for step in range(STEPS + 1))
)
"""Once round a circle while turning once: each place and each turn belongs to one moment of the round."""
BOARD = (
    Wood(rectangle(-1.0, -0.25, 1.0, 0.25), "board", "long"),
    Wood(rectangle(-0.25, 0.25, 0.25, 0.75), "post", "end"),
    Circle((0.0, 0.0), 0.1, "edge", "steel"),
)
WATCH = """async seconds => {
    const picture = document.querySelector('svg');
    const body = picture.querySelector('.wm-motion [id]').parentNode;
    const dot = picture.querySelector('.wm-motion > circle');
    const seen = [], started = performance.now();
    for (let now = started; now < started + 1000 * seconds;) {
        now = await new Promise(requestAnimationFrame);
        const { a, b, e, f } = body.getCTM();
        seen.push({ now: now / 1000, clock: picture.getCurrentTime(), a, b, e, f,
                    x: dot ? dot.cx.animVal.value : 0, y: dot ? dot.cy.animVal.value : 0 });
    }
    return seen;
}"""
"""Where the body is in each frame that the browser paints, with the frame's time and the picture's own clock."""

Show = Callable[..., Page]


@pytest.fixture
def show(browser: Browser) -> Iterator[Show]:
    """Put a drawing into a page that is already open, as a live drawing does."""
    contexts = []

    def show_one(drawing: Drawing, **context: Any) -> Page:
        contexts.append(browser.new_context(viewport={"width": 640, "height": 480}, **context))
        page = contexts[-1].new_page()
        page.set_content("<body style='margin:0'><div></div></body>")
        page.evaluate("text => { document.querySelector('div').innerHTML = text; }", svg(drawing))
        return page

    yield show_one
    for context in contexts:
        context.close()


def going_round(again: bool = True, beside: tuple[MovingLine, ...] = ()) -> Drawing:
    """Return the drawing of a board that goes round."""
    body = MovingBody(BOARD, (0.0, 0.0), ROUND, SECONDS, again)
    return Drawing("a board", FRAME, (Line(((-6.0, 0.0), (6.0, 0.0))), body, *beside), "It goes round.")


def apart(one: float, other: float) -> float:
    """Return how far two moments of a round that begins again are apart, in rounds."""
    return abs((one - other + 0.5) % 1.0 - 0.5)


def moment_of_turn(seen: dict[str, float]) -> float:
    """Return the moment of the round, 0 to 1, that the turn of the body belongs to; the screen counts clockwise."""
    return -math.atan2(seen["b"], seen["a"]) / (2 * math.pi) % 1.0


def moment_of_place(across: float, down: float) -> float:
    """Return the moment of the round, 0 to 1, that a place in the picture belongs to."""
    x, y = FRAME.at(across, down)
    return math.atan2(y, x) / (2 * math.pi) % 1.0


def moving(page: Page, seconds: float) -> list[dict[str, float]]:
    """Return what is seen in each frame once the motion has begun."""
    frames: list[dict[str, float]] = page.evaluate(WATCH, seconds)
    return [seen for seen in frames if seen["clock"] > BEGINS + 0.01]


def test_a_body_is_where_its_poses_say_at_the_true_time(show: Show) -> None:
    frames = moving(show(going_round()), 1.5 * SECONDS)
    assert len(frames) > 30
    for seen in frames:
        due = (seen["clock"] - BEGINS) / SECONDS
        assert apart(moment_of_turn(seen), due) < 0.01
        assert apart(moment_of_place(seen["e"], seen["f"]), due) < 0.01
        assert math.dist((seen["e"], seen["f"]), FRAME.place((0.0, 0.0))) == pytest.approx(150.0, abs=0.5)
    # The first frames of a page that is just drawn come late, and the picture's clock with them.
    drift = [seen["clock"] - seen["now"] for seen in frames[5:]]
    assert max(drift) - min(drift) < 0.01 * SECONDS


def test_a_body_moves_in_nearly_every_frame_that_the_browser_paints(show: Show) -> None:
    frames = moving(show(going_round()), 1.5 * SECONDS)
    still = sum(
        moment_of_turn(one) == moment_of_turn(next_one) for one, next_one in itertools.pairwise(frames)
    )
    assert still <= 0.05 * len(frames)


def test_a_body_and_a_dot_beside_it_keep_in_step(show: Show) -> None:
    dots = tuple(((x, y),) for x, y, _ in ROUND)
    frames = moving(show(going_round(beside=(MovingLine(dots, SECONDS, "pencil", dot=5.0),))), 1.5 * SECONDS)
    assert len(frames) > 30
    for seen in frames:
        assert math.dist((seen["e"], seen["f"]), (seen["x"], seen["y"])) < 0.2


def test_a_body_that_does_not_begin_again_stays_at_its_last_pose(show: Show) -> None:
    half = MovingBody(BOARD, (0.0, 0.0), ROUND[: STEPS // 2 + 1], 0.2, again=False)
    page = show(Drawing("a board", FRAME, (half,), "It goes half round."))
    page.wait_for_timeout(400)
    frames = moving(page, 0.3)
    assert len(frames) > 5
    for seen in frames:
        assert moment_of_turn(seen) == pytest.approx(0.5, abs=1e-4)
        assert (seen["e"], seen["f"]) == pytest.approx(FRAME.place((-3.0, 0.0)), abs=0.01)


def test_a_body_stands_still_at_its_first_pose_for_those_who_ask_for_less_motion(show: Show) -> None:
    board = Line(rectangle(-1.0, -0.25, 1.0, 0.25), "edge", True, "board")
    body = MovingBody((board,), (0.0, 0.0), ROUND, SECONDS)
    page = show(Drawing("a board", FRAME, (body,), "It would go round."), reduced_motion="reduce")
    assert page.locator(".wm-motion").is_hidden()
    places = []
    for _ in range(4):
        places.append(page.locator(".wm-still").bounding_box())
        page.wait_for_timeout(150)
    assert places == places[:1] * 4
    assert places[0] is not None
    (left, top), (right, bottom) = FRAME.place((2.0, 0.25)), FRAME.place((4.0, -0.25))
    # The pen draws half its width outside the board.
    assert places[0]["x"] == pytest.approx(left, abs=2.0)
    assert places[0]["x"] + places[0]["width"] == pytest.approx(right, abs=2.0)
    assert places[0]["y"] == pytest.approx(top, abs=2.0)
    assert places[0]["y"] + places[0]["height"] == pytest.approx(bottom, abs=2.0)
