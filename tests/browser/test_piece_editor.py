"""The editor of page 17 in a real Chromium: form, text and drawing follow one another, and nothing gets lost."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from lab import CourseServer, LabPage
from playwright.sync_api import Browser, Locator, expect
from test_live_pages import READABLE, contrast, cut_off

pytestmark = pytest.mark.browser

PAGE = "notebooks/17-make-your-own-piece.ipynb"
WIDE, PHONE = {"width": 1250, "height": 900}, {"width": 390, "height": 844}
SIDE = "length: length of the panel, shoulder to shoulder, in"
SQUARE = "square: side of the post's square section, in"


class Editor:
    """The editor as a reader sees it."""

    def __init__(self, lab: LabPage) -> None:
        self.lab = lab
        self.page = lab.page
        self.area = lab.page.locator(".woodmath-editor")
        self.picture = self.area.locator("[class*='-picture'] .widget-html-content")
        self.words = self.area.locator("[class*='-words'] .widget-html-content")
        self.status = self.area.locator("p[role=status]")
        self.text = self.area.locator("textarea")

    def tab(self, words: str) -> None:
        """Turn to the form or to the text."""
        self.area.get_by_role("tab", name=words).click()
        self.lab.rest()

    def box(self, label: str) -> Locator:
        """Return the box of that label."""
        return self.area.get_by_label(label, exact=True)

    def fill(self, label: str, text: str) -> None:
        """Type into a box and press Enter."""
        self.box(label).fill(text)
        self.box(label).press("Enter")
        self.lab.rest()

    def press(self, words: str) -> None:
        """Press a button."""
        self.area.get_by_role("button", name=words).click()
        self.lab.rest()


@pytest.fixture(scope="module")
def opened(browser: Browser, course_server: CourseServer) -> Iterator[LabPage]:
    """Return page 17, run to the bottom, once for all tests."""
    lab = LabPage(browser, course_server, PAGE, viewport=WIDE)
    lab.clear_sides()
    lab.run_all()
    yield lab
    lab.close()


@pytest.fixture
def editor(opened: LabPage) -> Iterator[Editor]:
    """Return the editor with the cat's bed in it, whatever a test before has typed."""
    shown = Editor(opened)
    shown.area.scroll_into_view_if_needed()
    shown.area.get_by_label("demo piece", exact=True).select_option("cat-bed")
    shown.press("start from it")
    shown.tab("by form")
    expect(shown.box(SIDE)).to_have_value("18")
    yield shown


def test_a_size_typed_in_the_form_changes_text_and_drawing(editor: Editor) -> None:
    before = editor.picture.inner_html()
    editor.fill(SIDE, "20")
    editor.page.wait_for_function(
        "before => document.querySelector(\"[class*='-picture'] .widget-html-content\").innerHTML !== before",
        arg=before,
    )
    editor.tab("as text")
    assert 'length = "20"  ' in editor.text.input_value()


def test_a_size_typed_in_the_text_changes_form_and_drawing(editor: Editor) -> None:
    before = editor.picture.inner_html()
    editor.tab("as text")
    editor.text.fill(editor.text.input_value().replace('length = "18"', 'length = "19 1/2"'))
    editor.tab("by form")
    expect(editor.box(SIDE)).to_have_value("19 1/2")
    assert editor.picture.inner_html() != before


def test_rubbish_is_told_in_a_sentence_and_the_picture_stays(editor: Editor) -> None:
    before = editor.picture.inner_html()
    editor.fill(SQUARE, "a bit <b>more</b>")
    expect(editor.words.get_by_role("alert")).to_contain_text("a bit <b>more</b>")
    assert editor.picture.inner_html() == before
    editor.fill(SQUARE, "1 3/4")
    expect(editor.words.get_by_role("alert")).to_have_count(0)


def test_a_file_is_saved_and_never_written_over_unasked(editor: Editor, course_root: Path) -> None:
    file = course_root / "notebooks" / "written-in-a-test.toml"
    file.unlink(missing_ok=True)
    editor.fill("save as", file.name)
    editor.press("save")
    expect(editor.status).to_contain_text("Saved as")
    first = file.read_text(encoding="utf-8")
    expect(editor.area.get_by_role("button", name="replace it")).to_be_hidden()
    editor.fill(SIDE, "21")
    editor.press("save")
    expect(editor.status).to_contain_text("is there already")
    assert file.read_text(encoding="utf-8") == first
    editor.press("replace it")
    expect(editor.status).to_contain_text("Saved as")
    assert 'length = "21"' in file.read_text(encoding="utf-8")
    expect(editor.area.get_by_role("button", name="replace it")).to_be_hidden()


def test_every_box_has_a_name_and_every_word_can_be_read_in_both_themes(
    editor: Editor, opened: LabPage
) -> None:
    for box in editor.area.locator("input, select, textarea").all():
        assert box.evaluate("box => box.labels.length && box.labels[0].innerText.trim() !== ''") is True
    editor.fill(SQUARE, "nonsense")
    expect(editor.words.get_by_role("alert")).to_be_visible()
    for theme in ("JupyterLab Dark", "JupyterLab Light"):
        opened.use_theme(theme)
        label = editor.area.locator(".widget-label").first
        for text in (editor.words.locator("li").first, editor.status, label, editor.box(SIDE)):
            assert contrast(text) >= READABLE
        assert contrast(editor.words.locator("b").first) >= READABLE


def test_its_height_stays_whatever_it_says(editor: Editor) -> None:
    def height() -> float:
        place = editor.picture.locator("xpath=ancestor::*[contains(@class,'widget-box')][2]").bounding_box()
        assert place is not None
        return place["height"]

    before = height()
    editor.tab("as text")
    editor.text.fill("post = 3")
    expect(editor.words.get_by_role("alert")).to_be_visible()
    assert height() == before


def test_nothing_is_cut_off_in_a_window_or_on_a_phone(editor: Editor, opened: LabPage) -> None:
    assert cut_off(opened.page) == []
    opened.page.set_viewport_size(PHONE)
    editor.area.scroll_into_view_if_needed()
    found = cut_off(opened.page)
    opened.page.set_viewport_size(WIDE)
    assert found == []


def test_the_console_stays_empty(opened: LabPage) -> None:
    assert opened.outside == []
    assert opened.messages == []
    assert opened.errors() == []
