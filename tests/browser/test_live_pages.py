"""Every page in a real Chromium: it runs to the bottom, and its live drawing obeys mouse, keys and typing."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from lab import CourseServer, LabPage
from playwright.sync_api import Browser, Locator, Page, expect

pytestmark = pytest.mark.browser

PAGES = sorted(f"notebooks/{path.name}" for path in (Path(__file__).parents[2] / "notebooks").glob("*.ipynb"))
TYPED = {
    "notebooks/00-start-here.ipynb": "300 mm",
    "notebooks/02-scale-the-drawing.ipynb": "500 mm",
    "notebooks/03-the-splayed-end.ipynb": "350 mm",
    "notebooks/04-rebate-bead-and-groove.ipynb": "21 mm",
    "notebooks/05-the-corner-post.ipynb": "51 mm",
    "notebooks/06-strike-the-bevel.ipynb": "15 mm",
    "notebooks/07-four-posts-at-once.ipynb": "70 mm",
    "notebooks/08-boring-by-count.ipynb": "7½",
    "notebooks/09-bevels-and-the-bottom.ipynb": "7½",
    "notebooks/10-the-rockers-ellipse.ipynb": "400 mm",
    "notebooks/11-rocking.ipynb": "300 mm",
    "notebooks/12-choose-your-rocker.ipynb": "9/10",
    "notebooks/13-wood-moves.ipynb": "210 mm",
    "notebooks/14-with-the-grain-and-against-it.ipynb": "7½",
    "notebooks/15-from-square-to-round.ipynb": "41 mm",
    "notebooks/16-a-pattern-from-one-radius.ipynb": "8",
    "notebooks/17-make-your-own-piece.ipynb": "300 mm",
}
"""What is typed into the first box of each page: a size of its own, not written as the rule would mark it."""
FORMULAS = dict.fromkeys(TYPED, 6) | {"notebooks/00-start-here.ipynb": 0}
"""How many formulas a page shows at the least."""
THEMES = ("JupyterLab Light", "JupyterLab Dark")
"""A page leaves the one on that it did not begin with: the next page begins in it, and is tried in it."""
WIDE, PHONE = {"width": 1250, "height": 900}, {"width": 390, "height": 844}
PAPER = "rgb(251, 247, 239)"
READABLE = 4.5
"""Contrast of text with its ground, at the least (WCAG 2.2, 1.4.3, level AA; from memory)."""


class LiveDrawing:
    """The first live drawing of a page, as a reader sees it."""

    def __init__(self, lab: LabPage) -> None:
        self.lab = lab
        self.page = lab.page
        self.area = self.page.locator(".woodmath-live").first
        self.picture = self.area.locator("svg[role=img]")
        self.words = self.area.locator("p[role=status]")
        self.handle = self.area.locator(".noUi-handle").first
        self.box = self.area.locator(".widget-text input").first
        self.reset = self.area.get_by_role("button", name="back to the start")

    def state(self) -> str:
        """Return picture and words, as markup."""
        text: str = self.area.locator(".widget-html-content:has(svg)").inner_html()
        return text

    def after(self, before: str) -> str:
        """Wait until picture or words are others than before, and return them."""
        self.page.wait_for_function(
            """before => document.querySelector('.woodmath-live .widget-html-content:has(svg)').innerHTML
                !== before""",
            arg=before,
        )
        self.lab.rest()
        return self.state()

    def until(self, wanted: str) -> None:
        """Wait until picture and words are the wanted ones."""
        self.page.wait_for_function(
            """wanted => document.querySelector('.woodmath-live .widget-html-content:has(svg)').innerHTML
                === wanted""",
            arg=wanted,
        )
        self.lab.rest()

    def types(self, text: str) -> None:
        """Type into the first box and press Enter."""
        self.box.fill(text)
        self.box.press("Enter")

    def height(self) -> float:
        """Return how high the whole live drawing is."""
        place = self.area.bounding_box()
        assert place is not None
        return place["height"]


@pytest.fixture(scope="module")
def lab(browser: Browser, course_server: CourseServer) -> Iterator[LabPage]:
    """Return JupyterLab in one window, in which one page after another is opened."""
    window = LabPage(browser, course_server, PAGES[0], viewport=WIDE)
    window.clear_sides()
    yield window
    window.use_theme(THEMES[0])
    window.close()


@pytest.fixture(scope="module", params=PAGES)
def opened(request: pytest.FixtureRequest, lab: LabPage) -> LabPage:
    """Return a page of the course, run to the bottom, once for all tests of it."""
    if lab.name != request.param:
        lab.turn_to(request.param)
    lab.run_all()
    return lab


@pytest.fixture
def live(opened: LabPage) -> Iterator[LiveDrawing]:
    """Return its live drawing, and let it be as it was at the start when the test ends."""
    drawing = LiveDrawing(opened)
    first = drawing.state()
    yield drawing
    if drawing.state() != first:
        drawing.reset.click()
        drawing.until(first)


def parts(state: str) -> tuple[str, str]:
    """Return picture and words apart."""
    picture, _, words = state.partition("</svg>")
    return picture, words


def assert_both_change(before: str, after: str) -> None:
    """Check that neither picture nor words are what they were."""
    assert all(one != other for one, other in zip(parts(before), parts(after), strict=True))


def test_a_page_runs_to_the_bottom_without_a_word_on_the_console(opened: LabPage) -> None:
    counts = opened.page.evaluate(
        """() => window.jupyterapp.shell.currentWidget.content.widgets
            .filter(cell => cell.model.type === 'code').map(cell => cell.model.executionCount)"""
    )
    assert counts == list(range(1, len(counts) + 1))
    assert opened.messages == []


def test_every_picture_of_a_page_is_there(opened: LabPage) -> None:
    pictures = opened.page.evaluate(
        """async () => {
            const pictures = [...document.querySelectorAll('.jp-Notebook img')];
            await Promise.all(pictures.map(picture => picture.decode().catch(() => null)));
            return pictures.map(picture => [picture.alt, picture.naturalWidth]);
        }"""
    )
    assert pictures
    assert all(alt and width > 0 for alt, width in pictures), pictures


def test_every_formula_is_typeset(opened: LabPage) -> None:
    opened.page.wait_for_function(
        "least => document.querySelectorAll('.jp-Notebook mjx-container').length >= least",
        arg=FORMULAS[opened.name],
    )
    assert opened.page.locator(".jp-Notebook mjx-merror, .jp-Notebook [data-mjx-error]").count() == 0
    left_over = opened.page.evaluate(
        r"""() => [...document.querySelectorAll('.jp-RenderedMarkdown, .jp-RenderedLatex')]
            .map(part => part.innerText).filter(text => /\$|\\(frac|sqrt|left|text)/.test(text))"""
    )
    assert left_over == []


def test_a_slider_obeys_the_arrow_keys(live: LiveDrawing) -> None:
    before, size = live.state(), live.box.input_value()
    live.handle.press("ArrowRight")
    assert_both_change(before, live.after(before))
    expect(live.box).not_to_have_value(size)


def test_a_slider_obeys_the_mouse(live: LiveDrawing) -> None:
    before, size = live.state(), live.box.input_value()
    live.handle.scroll_into_view_if_needed()
    place = live.handle.bounding_box()
    assert place is not None
    x, y = place["x"] + place["width"] / 2, place["y"] + place["height"] / 2
    live.page.mouse.move(x, y)
    live.page.mouse.down()
    live.page.mouse.move(x + 30, y, steps=6)
    live.page.mouse.up()
    assert_both_change(before, live.after(before))
    expect(live.box).not_to_have_value(size)


def test_a_typed_size_is_taken_and_marked(opened: LabPage, live: LiveDrawing) -> None:
    before, size = live.state(), live.box.input_value()
    place = live.handle.get_attribute("aria-valuenow")
    live.types(TYPED[opened.name])
    assert_both_change(before, live.after(before))
    expect(live.box).not_to_have_value(size)
    expect(live.handle).not_to_have_attribute("aria-valuenow", place or "")


def test_the_button_restores_the_first_picture_exactly(live: LiveDrawing) -> None:
    first, size = live.state(), live.box.input_value()
    live.handle.press("ArrowRight")
    moved = live.after(first)
    live.handle.press("ArrowRight")
    live.after(moved)
    live.reset.click()
    live.until(first)
    expect(live.box).to_have_value(size)


def test_what_cannot_be_read_is_said_and_the_picture_stays(live: LiveDrawing) -> None:
    before = live.state()
    live.types("a bit <b>more</b>")
    picture, _ = parts(live.after(before))
    assert picture == parts(before)[0]
    expect(live.words.get_by_role("alert")).to_contain_text("a bit <b>more</b>")
    live.words.scroll_into_view_if_needed()
    expect(live.words.get_by_role("alert")).to_be_in_viewport(ratio=1)
    expect(live.box).to_have_value("a bit <b>more</b>")
    live.handle.press("ArrowRight")
    expect(live.words.get_by_role("alert")).to_have_count(0)
    live.lab.rest()


def test_nothing_on_the_page_jumps_when_a_slider_moves(live: LiveDrawing) -> None:
    height = live.height()
    for key in ("Home", "End"):
        before = live.state()
        live.handle.press(key)
        live.after(before)
        assert live.height() == height
    before = live.state()
    live.types("no length at all")
    live.after(before)
    assert live.height() == height


def contrast(text: Locator) -> float:
    """Return the contrast of a text with the ground that it stands on (WCAG 2.2, relative luminance)."""
    colours: list[str] = text.evaluate(
        """text => {
            let ground = text;
            while (getComputedStyle(ground).backgroundColor.match(/, 0\\)$|transparent/))
                ground = ground.parentElement;
            return [getComputedStyle(text).color, getComputedStyle(ground).backgroundColor];
        }"""
    )
    dark, light = sorted(map(luminance, colours))
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    """Return the relative luminance of a colour such as "rgb(1, 2, 3)"."""
    shares = [int(part) / 255 for part in re.findall(r"\d+", colour)[:3]]
    linear = [share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_words_are_readable_and_the_picture_keeps_its_paper_in_both_themes(
    opened: LabPage, live: LiveDrawing
) -> None:
    live.types("nonsense")
    expect(live.words.get_by_role("alert")).to_be_visible()
    live.lab.rest()
    begun_in = opened.theme()
    for theme in (begun_in, *(theme for theme in THEMES if theme != begun_in)):
        opened.use_theme(theme)
        for text in (live.words, live.area.locator(".widget-label").first, live.box, live.reset):
            assert contrast(text) >= READABLE, theme
        for text in live.words.locator("b").all():
            assert contrast(text) >= READABLE, theme
        assert live.picture.locator("rect").first.evaluate("paper => getComputedStyle(paper).fill") == PAPER


def cut_off(page: Page) -> Any:
    """Return what stands out sideways from its place: of a live drawing anything, else what cannot be scrolled."""
    return page.evaluate(
        """() => {
            const live = '.woodmath-live, .woodmath-live .widget-label, .woodmath-live input, .woodmath-live p';
            const rest = '.jp-OutputArea-output, .jp-RenderedMarkdown';
            const wide = part => part.clientWidth && part.scrollWidth > part.clientWidth;
            const kept = part => !['auto', 'scroll'].includes(getComputedStyle(part).overflowX);
            return [
                ...[...document.querySelectorAll(`.jp-WindowedPanel-outer, ${live}`)].filter(wide),
                ...[...document.querySelectorAll(rest)].filter(wide).filter(kept),
            ].map(part => [part.className, part.innerText.slice(0, 60), part.scrollWidth - part.clientWidth]);
        }"""
    )


def test_nothing_is_cut_off_on_a_phone(opened: LabPage, live: LiveDrawing) -> None:
    opened.page.set_viewport_size(PHONE)
    live.handle.scroll_into_view_if_needed()
    expect(live.picture).to_be_visible()
    height = live.height()
    found = cut_off(opened.page)
    before = live.state()
    live.handle.press("ArrowRight")
    live.after(before)
    height_after = live.height()
    opened.page.set_viewport_size(WIDE)
    assert found == []
    assert height_after == height


def test_nothing_is_cut_off_in_a_window(opened: LabPage, live: LiveDrawing) -> None:
    assert cut_off(opened.page) == []


def widgets(lab: LabPage) -> int:
    """Return how many widgets are open in the kernel of a page."""
    counted: int = lab.page.evaluate(
        """async () => {
            const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
            const { content } = await kernel.requestCommInfo({ target_name: 'jupyter.widget' });
            return Object.keys(content.comms).length;
        }"""
    )
    return counted


@pytest.mark.parametrize("opened", ["notebooks/06-strike-the-bevel.ipynb"], indirect=True)
def test_a_page_that_is_run_again_leaves_no_widget_behind(opened: LabPage) -> None:
    before = widgets(opened)
    assert before > 10
    opened.run_all()
    assert widgets(opened) == before


WITH_A_PENCIL = pytest.mark.parametrize("opened", ["notebooks/10-the-rockers-ellipse.ipynb"], indirect=True)


def pencil(live: LiveDrawing) -> tuple[float, float]:
    """Return where the middle of the pencil is seen."""
    place = live.picture.locator(".wm-motion circle, .wm-still circle").locator("visible=true").bounding_box()
    assert place is not None
    return place["x"] + place["width"] / 2, place["y"] + place["height"] / 2


@WITH_A_PENCIL
def test_the_pencil_goes_round_by_itself_and_asks_the_kernel_for_nothing(
    opened: LabPage, live: LiveDrawing
) -> None:
    before = live.state()
    live.area.get_by_role("combobox", name="pencil").select_option("goes round by itself")
    live.after(before)
    opened.page.evaluate(
        """() => {
            const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
            window.fromTheKernel = 0;
            kernel.anyMessage.connect(() => { window.fromTheKernel += 1; });
        }"""
    )
    live.picture.scroll_into_view_if_needed()
    places = []
    for _ in range(4):
        places.append(pencil(live))
        opened.page.wait_for_timeout(300)
    assert len(set(places)) == 4
    assert opened.page.evaluate("window.fromTheKernel") == 0
    opened.page.emulate_media(reduced_motion="reduce")
    still = pencil(live)
    opened.page.wait_for_timeout(300)
    assert pencil(live) == still
    opened.page.emulate_media(reduced_motion="no-preference")


def test_no_request_has_left_this_machine_and_the_console_is_still_empty(opened: LabPage) -> None:
    assert opened.outside == []
    assert opened.messages == []
    assert opened.errors() == []
