"""A live drawing: what a slider, a typed length and the button do to the picture and its words."""

from __future__ import annotations

import gc
import math
import re
import statistics
import sys
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from front_end import FrontEnd
from IPython.core.interactiveshell import InteractiveShell
from ipywidgets import HTML, Box, Dropdown, IntSlider, Text, Widget
from machine_speed import slowness

from woodmath import page
from woodmath.drawing import Drawing, Line
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.explorer import Explorer, look
from woodmath.fractions_in_print import set_fractions
from woodmath.piece import Piece
from woodmath.rule import Rule
from woodmath.views.bevel import struck_bevel
from woodmath.views.boring import bored_hole
from woodmath.views.post_joint import post_section
from woodmath.views.trial_holes import trial_holes
from woodmath.views.view import LengthControl, Settings, TableControl, View

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
VIEWS = [view for view in (getattr(page, name) for name in page.__all__) if isinstance(view, View)]
every_view = pytest.mark.parametrize("view", VIEWS, ids=[view.name for view in VIEWS])


@pytest.fixture(autouse=True)
def strict(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WOODMATH_STRICT", "1")


@pytest.fixture
def front_end(monkeypatch: pytest.MonkeyPatch) -> FrontEnd:
    """Return the page that the widgets of a test are open in."""
    return FrontEnd.joined(monkeypatch)


class Hand:
    """A reader at one live drawing."""

    def __init__(self, front_end: FrontEnd, view: View, piece: Piece = CAT_BED) -> None:
        self.front_end = front_end
        self.explorer = look(view, piece)

    @property
    def picture(self) -> str:
        """The SVG that is shown."""
        found = re.match(r"<svg.*</svg>", self.explorer.picture.value)
        assert found
        return found[0]

    @property
    def words(self) -> str:
        """The words below it, as the browser would read them out."""
        markup = self.explorer.picture.value.removeprefix(self.picture).replace("<br>", "<br/>")
        return "".join(ElementTree.fromstring(markup).itertext())

    def slider(self, name: str) -> IntSlider:
        """Return the slider of a control."""
        return next(widget for widget in self._widgets(name) if isinstance(widget, IntSlider))

    def box(self, name: str) -> Text:
        """Return the box of a control."""
        return next(widget for widget in self._widgets(name) if isinstance(widget, Text))

    def _widgets(self, name: str) -> list[Widget]:
        return [widget for widget, _ in self.explorer.rows[name].readers]

    def slides(self, name: str, mark: int) -> None:
        """Move the slider of a control to a mark."""
        self.front_end.sets(self.slider(name), mark)

    def types(self, name: str, text: str) -> None:
        """Type into the box of a control and press Enter."""
        self.front_end.sets(self.box(name), text)


@pytest.fixture
def bevel(front_end: FrontEnd) -> Hand:
    """Return a reader at the struck bevel: two lengths, half an inch each."""
    return Hand(front_end, struck_bevel)


def test_a_slider_stands_on_whole_marks_and_the_box_says_which(bevel: Hand) -> None:
    bevel.slides("offset", 11)
    assert bevel.explorer.drawing == struck_bevel.drawing(CAT_BED, offset=11 / 16)
    assert bevel.box("offset").value == "11/16"
    assert "¹¹⁄₁₆ in along" in bevel.words


def test_a_slider_of_degrees_or_turns_goes_in_its_own_steps(front_end: FrontEnd) -> None:
    hand = Hand(front_end, bored_hole)
    control = next(control for control in bored_hole.controls if control.name == "turns")
    hand.slides("turns", 5)
    turns = float(control.low + 5 * control.step)
    assert hand.explorer.drawing == bored_hole.drawing(CAT_BED, turns=turns)
    assert Fraction(hand.box("turns").value) == Fraction(turns)


@pytest.mark.parametrize(
    ("typed", "exact", "nearest", "shown"),
    [
        ("7/16", 0.4375, 7, "7/16"),
        ("0.45", 0.45, 7, "0.45"),
        ("15 mm", float(Fraction(150, 254)), 9, "0.5906"),
        ("1 1/32", 1.03125, 17, "1.0312"),
    ],
)
def test_a_typed_length_is_kept_exactly_and_the_slider_stands_at_the_nearest_mark(
    bevel: Hand, typed: str, exact: float, nearest: int, shown: str
) -> None:
    bevel.types("offset", typed)
    assert bevel.explorer.drawing == struck_bevel.drawing(CAT_BED, offset=exact)
    assert bevel.slider("offset").value == nearest
    assert bevel.box("offset").value == shown


def test_a_typed_length_outlives_a_move_of_another_slider(bevel: Hand) -> None:
    bevel.types("offset", "0.45")
    bevel.slides("thickness", 12)
    assert bevel.explorer.drawing == struck_bevel.drawing(CAT_BED, offset=0.45, thickness=0.75)
    assert bevel.box("offset").value == "0.45"


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("a bit more", "a bit more"),
        ("", "nothing is written"),
        ("7,5", "comma"),
        ("-1", "negative"),
        ("9", "goes from 1/16 to 3 here. Type a length between the two."),
        ("2 miles", "not a unit"),
    ],
)
def test_what_cannot_be_used_is_answered_with_a_sentence_and_the_picture_stays(
    bevel: Hand, typed: str, said: str
) -> None:
    before, words = bevel.picture, bevel.words
    bevel.types("offset", typed)
    assert bevel.picture == before
    assert said in bevel.explorer.complaint
    assert bevel.explorer.complaint in bevel.words
    assert bevel.words.endswith(words)
    assert bevel.box("offset").value == typed


@pytest.mark.parametrize("typed", ["many", "", "1e9", "1e999999999", "7 mm", "99", "-2", "1 2", "1/0"])
def test_a_count_that_cannot_be_read_is_answered_with_its_range(front_end: FrontEnd, typed: str) -> None:
    hand = Hand(front_end, bored_hole)
    before = hand.picture
    hand.types("turns", typed)
    assert hand.picture == before
    assert f"“{typed}”" in hand.explorer.complaint
    assert re.search(
        r"goes from 0\.25 to 40 here\. Type a number between the two, such as \d", hand.explorer.complaint
    )


@pytest.mark.parametrize(("typed", "turns"), [("7.5", 7.5), ("7 1/2", 7.5), ("7½", 7.5), (" 8 ", 8.0)])
def test_a_count_is_read_in_any_notation(front_end: FrontEnd, typed: str, turns: float) -> None:
    hand = Hand(front_end, bored_hole)
    hand.types("turns", typed)
    assert hand.explorer.complaint == ""
    assert hand.explorer.drawing == bored_hole.drawing(CAT_BED, turns=turns)


def test_the_next_good_move_clears_the_sentence_and_the_box_it_was_about(bevel: Hand) -> None:
    bevel.types("offset", "a bit more")
    bevel.slides("thickness", 12)
    assert bevel.explorer.complaint == ""
    assert "Not taken" not in bevel.words
    assert bevel.box("offset").value == "1/2"


def test_a_mended_length_clears_the_sentence(bevel: Hand) -> None:
    bevel.types("offset", "a bit more")
    bevel.types("offset", "3/4")
    assert bevel.explorer.complaint == ""
    assert bevel.explorer.drawing == struck_bevel.drawing(CAT_BED, offset=0.75)


def test_typed_signs_of_markup_are_only_words(bevel: Hand) -> None:
    bevel.types("offset", '<img src=x onerror="alert(1)"> & more')
    assert "<img" not in bevel.explorer.picture.value
    assert '<img src=x onerror="alert(1)"> & more' in bevel.words


def test_the_button_goes_back_to_the_start_exactly(bevel: Hand) -> None:
    first = bevel.explorer.picture.value
    bevel.types("offset", "0.45")
    bevel.slides("thickness", 20)
    bevel.types("thickness", "nonsense")
    assert bevel.explorer.picture.value != first
    bevel.front_end.presses(bevel.explorer.reset)
    assert bevel.explorer.picture.value == first
    assert bevel.explorer.complaint == ""
    assert [bevel.box(name).value for name in ("offset", "thickness")] == ["1/2", "1/2"]
    assert [bevel.slider(name).value for name in ("offset", "thickness")] == [8, 8]


def test_sizes_to_start_with_are_where_the_button_goes(front_end: FrontEnd) -> None:
    explorer = look(struck_bevel, CAT_BED, offset=0.25)
    start = struck_bevel.drawing(CAT_BED, offset=0.25)
    assert explorer.drawing == start
    front_end.sets(explorer.rows["offset"].readers[0][0], 16)
    explorer.back_to_the_start()
    assert explorer.drawing == start


def test_a_control_that_is_not_there_is_named(front_end: FrontEnd) -> None:
    with pytest.raises(UnknownName, match="no control called colour"):
        look(struck_bevel, CAT_BED, colour="red")


def test_a_choice_changes_picture_and_words(front_end: FrontEnd) -> None:
    hand = Hand(front_end, post_section)
    menu = hand.explorer.rows["ends"].widget
    names = [value for _, value in menu.options]
    front_end.sets(menu, names.index("square"))
    assert hand.explorer.drawing == post_section.drawing(CAT_BED, ends="square")


def test_a_line_of_a_table_is_asked_for_whole_and_then_drawn(front_end: FrontEnd) -> None:
    hand = Hand(front_end, trial_holes)
    (control,) = trial_holes.controls
    assert isinstance(control, TableControl)
    first, before = hand.picture, hand.explorer.drawing
    cells = [cell for cell, _ in hand.explorer.rows["holes"].readers]
    empty = next(number for number, cell in enumerate(cells) if not cell.value)
    front_end.sets(cells[empty], "20")
    assert hand.picture == first
    assert hand.explorer.complaint.startswith(f"Line {empty // 2 + 1} has only one")
    front_end.sets(cells[empty + 1], "1 7/8")
    assert hand.explorer.complaint == ""
    assert hand.explorer.drawing != before
    hand.explorer.back_to_the_start()
    assert hand.picture == first
    assert cells[empty].value == ""


def test_impossible_settings_are_drawn_with_what_to_change(front_end: FrontEnd) -> None:
    hand = Hand(front_end, post_section)
    hand.slides("set_back", 32)
    assert hand.explorer.complaint == ""
    (fault,) = hand.explorer.drawing.faults
    assert set_fractions(fault) in hand.words
    hand.slides("set_back", 8)
    assert hand.explorer.drawing == post_section.drawing(CAT_BED)


def breaking(error: Exception) -> View:
    """Return a view that draws, except where the first of its sizes is two."""

    def draw(rule: Rule, settings: Settings) -> Drawing:
        if settings["size"] == 2.0:
            raise error
        return struck_bevel.draw(rule, {"offset": settings["size"], "thickness": settings["other"]})

    return View(
        name="breaking",
        draw=draw,
        controls=tuple(LengthControl(name, name, ("1/4", "3"), ("6", "75")) for name in ("size", "other")),
        start=lambda piece: {"size": 1.0, "other": 1.0},
    )


def test_a_shape_that_the_view_refuses_is_a_sentence_under_the_last_picture(front_end: FrontEnd) -> None:
    hand = Hand(front_end, breaking(ImpossibleShape("The end is too long. Shorten it.")))
    before = hand.picture
    hand.slides("size", 32)
    assert hand.picture == before
    assert hand.explorer.complaint == "The end is too long. Shorten it."
    hand.slides("other", 20)
    assert hand.explorer.complaint == "The end is too long. Shorten it."
    hand.slides("size", 31)
    assert hand.explorer.complaint == ""
    assert hand.box("other").value == "1 1/4"


def test_an_error_of_ours_raises_on_the_first_draw_whoever_looks(monkeypatch: pytest.MonkeyPatch) -> None:
    view = replace(breaking(ZeroDivisionError()), start=lambda piece: {"size": 2.0, "other": 1.0})
    with pytest.raises(ZeroDivisionError):
        look(view, CAT_BED)
    monkeypatch.delenv("WOODMATH_STRICT")
    with pytest.raises(ZeroDivisionError):
        look(view, CAT_BED)


def test_an_error_of_ours_raises_later_too_where_tests_run(front_end: FrontEnd) -> None:
    hand = Hand(front_end, breaking(ZeroDivisionError()))
    with pytest.raises(ZeroDivisionError):
        hand.slides("size", 32)


def test_an_error_of_ours_is_said_to_be_ours_where_students_work(
    front_end: FrontEnd, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delenv("WOODMATH_STRICT")
    hand = Hand(front_end, breaking(ZeroDivisionError()))
    before = hand.picture
    hand.slides("size", 32)
    assert hand.picture == before
    assert "our fault, not yours" in hand.words
    front_end.presses(hand.explorer.reset)
    assert hand.explorer.complaint == ""
    assert hand.slider("size").value == 16


def test_a_drawing_that_cannot_be_written_leaves_the_last_picture_too(
    front_end: FrontEnd, monkeypatch: pytest.MonkeyPatch
) -> None:
    def draw(rule: Rule, settings: Settings) -> Drawing:
        drawing = struck_bevel.draw(rule, settings)
        astray = Line(((0.0, 0.0), (math.nan, 1.0)))
        return drawing if settings["offset"] == 0.5 else replace(drawing, shapes=(astray,))

    hand = Hand(front_end, replace(struck_bevel, draw=draw))
    before = hand.picture
    with pytest.raises(ValueError, match="NaN"):
        hand.slides("offset", 9)
    monkeypatch.delenv("WOODMATH_STRICT")
    hand.slides("offset", 10)
    assert hand.picture == before
    assert "our fault, not yours" in hand.words


def test_one_move_is_one_redraw_one_picture_and_one_box(front_end: FrontEnd) -> None:
    drawn: list[Settings] = []

    def draw(rule: Rule, settings: Settings) -> Drawing:
        drawn.append(settings)
        return struck_bevel.draw(rule, settings)

    hand = Hand(front_end, replace(struck_bevel, draw=draw))
    drawn.clear()
    front_end.forget()
    hand.slides("offset", 11)
    assert len(drawn) == 1
    picture, box = hand.explorer.picture.comm.comm_id, hand.box("offset").comm.comm_id
    assert [(widget, sorted(values)) for widget, values in front_end.sent] == [
        (picture, ["value"]),
        (box, ["value"]),
    ]


def test_one_typed_length_is_one_redraw_and_the_slider_follows(front_end: FrontEnd) -> None:
    hand = Hand(front_end, struck_bevel)
    front_end.forget()
    hand.types("offset", "5/8")
    assert [widget for widget, _ in front_end.sent] == [
        hand.explorer.picture.comm.comm_id,
        hand.slider("offset").comm.comm_id,
    ]


@every_view
def test_every_slider_has_a_box_that_says_what_it_is_and_in_which_unit(
    front_end: FrontEnd, view: View
) -> None:
    for piece in (CAT_BED, LOG_BOX) if view.name != "pins_and_string" else (CAT_BED,):
        hand = Hand(front_end, view, piece)
        for control in view.controls:
            if isinstance(control, LengthControl):
                label = hand.box(control.name).description
                assert label == f"{control.label}, {piece.rule.unit_mark}"
                assert hand.slider(control.name).tooltip == label
            else:
                widgets = [widget for widget, _ in hand.explorer.rows[control.name].readers]
                assert all(widget.description or widget.tooltip for widget in widgets)


@every_view
def test_a_screen_reader_hears_the_picture_and_then_its_words(front_end: FrontEnd, view: View) -> None:
    hand = Hand(front_end, view)
    picture = ElementTree.fromstring(hand.picture)
    assert picture.attrib["role"] == "img"
    assert picture.attrib["aria-label"].startswith(hand.explorer.drawing.title)
    assert '<p role="status">' in hand.explorer.picture.value
    assert hand.words.split() == set_fractions(hand.explorer.drawing.words).split()


def test_a_complaint_is_an_alert(bevel: Hand) -> None:
    assert 'role="alert"' not in bevel.explorer.picture.value
    bevel.types("offset", "nonsense")
    assert '<span role="alert">' in bevel.explorer.picture.value


def test_without_a_kernel_the_page_still_has_a_picture_and_its_words(front_end: FrontEnd) -> None:
    explorer = look(struck_bevel, CAT_BED)
    shown = explorer._repr_mimebundle_()
    assert shown["text/plain"] == explorer.drawing.words
    ElementTree.fromstring(shown["image/svg+xml"])
    assert "application/vnd.jupyter.widget-view+json" in shown


class TwoThreads:
    """A reader at the struck bevel whose acts come in two threads, as a stock JupyterLab hands them to the kernel."""

    def __init__(self, front_end: FrontEnd) -> None:
        self.drawn, self.go_on = threading.Event(), threading.Event()
        self.hand = Hand(front_end, replace(struck_bevel, draw=self.draw))

    def draw(self, rule: Rule, settings: Settings) -> Drawing:
        """Draw, but keep the first thread waiting."""
        if threading.current_thread().name == "first":
            self.drawn.set()
            assert self.go_on.wait(timeout=30)
        return struck_bevel.draw(rule, settings)

    def acts(self, first: Callable[[], object], second: Callable[[], object]) -> None:
        """Let the second act begin while the first is being drawn."""
        threads = [threading.Thread(target=first, name="first"), threading.Thread(target=second)]
        threads[0].start()
        assert self.drawn.wait(timeout=30)
        threads[1].start()
        threads[1].join(timeout=0.2)
        assert threads[1].is_alive(), "the second act waits until the first is drawn"
        self.go_on.set()
        for thread in threads:
            thread.join(timeout=30)


def test_the_button_pressed_while_a_slider_is_still_being_drawn_is_not_lost(front_end: FrontEnd) -> None:
    reader = TwoThreads(front_end)
    hand = reader.hand
    first, mark = hand.explorer.drawing, hand.slider("offset").value
    reader.acts(lambda: hand.slides("offset", 11), hand.explorer.reset.click)
    assert hand.explorer.drawing == first
    assert hand.slider("offset").value == mark and hand.box("offset").value == "1/2"


def test_a_slider_moved_while_the_button_s_picture_is_still_being_drawn_is_not_lost(
    front_end: FrontEnd,
) -> None:
    reader = TwoThreads(front_end)
    hand = reader.hand
    hand.slides("offset", 9)
    reader.acts(hand.explorer.reset.click, lambda: hand.slides("offset", 11))
    assert hand.explorer.drawing == struck_bevel.drawing(CAT_BED, offset=11 / 16)
    assert hand.slider("offset").value == 11 and hand.box("offset").value == "11/16"


def test_a_drawing_that_was_taken_away_stays_as_it_was(front_end: FrontEnd) -> None:
    hand = Hand(front_end, struck_bevel)
    hand.slides("offset", 11)
    last, slider = hand.explorer.drawing, hand.slider("offset")
    hand.explorer.close()
    hand.explorer.back_to_the_start()
    slider.value = 12
    assert hand.explorer.drawing == last


@every_view
def test_a_redraw_costs_the_kernel_less_than_five_milliseconds(front_end: FrontEnd, view: View) -> None:
    hand = Hand(front_end, view)
    control = view.controls[0]
    (first, _), *_others = hand.explorer.rows[control.name].readers
    start = first.value
    if isinstance(first, Dropdown):
        start = first.index
        other = (start + 1) % len(first.options)
    else:
        other = start + 1 if isinstance(first, IntSlider) else f"{start}.5"

    def cost() -> float:
        costs = []
        for move in range(40):
            before = time.perf_counter()
            front_end.sets(first, start if move % 2 else other)
            costs.append(time.perf_counter() - before)
        return statistics.median(costs) / slowness()

    # One round of three is enough: what else the machine does in a round is no cost of ours. Nor is what thousands of
    # tests before this one left in the memory, which a page's kernel does not have to look through for garbage.
    gc.collect()
    gc.freeze()
    in_time = any(cost() < 0.005 for _ in range(3))
    gc.unfreeze()
    assert hand.explorer.complaint == ""
    assert in_time


def test_five_hundred_moves_leave_the_kernel_as_it_was(front_end: FrontEnd) -> None:
    hand = Hand(front_end, post_section)

    def moves(count: int) -> tuple[int, int]:
        """Return how many blocks of memory are in use after so many moves, and how many widgets are open."""
        for move in range(count):
            hand.slides("set_back", 4 + move % 12)
            front_end.forget()
        gc.collect()
        return sys.getallocatedblocks(), len(front_end.shown)

    after_some, widgets = moves(400)
    after_many, widgets_then = moves(500)
    assert widgets_then == widgets
    assert after_many - after_some < 250, "something stays behind at every other move"


@pytest.fixture
def cells() -> Iterator[InteractiveShell]:
    """Return an IPython that runs cells as the kernel does, and knows nothing else."""
    InteractiveShell.clear_instance()
    shell = InteractiveShell.instance()
    yield shell
    InteractiveShell.clear_instance()


def run(shell: InteractiveShell, code: str, cell: str | None) -> None:
    """Run a cell that has a name."""
    shell.run_cell(code, cell_id=cell).raise_error()


LOOK = "from woodmath.page import Piece, look, struck_bevel\nlive = look(struck_bevel, Piece.demo('cat-bed'))"


def test_a_cell_that_is_run_again_clears_away_what_it_had_shown(
    front_end: FrontEnd, cells: InteractiveShell
) -> None:
    run(cells, LOOK, "one")
    open_once = len(front_end.shown)
    assert open_once > 0
    first: Explorer = cells.user_ns["live"]
    for _ in range(3):
        run(cells, LOOK, "one")
    assert len(front_end.shown) == open_once
    assert first.drawing.headline
    assert "application/vnd.jupyter.widget-view+json" not in first._repr_mimebundle_()


def test_other_cells_leave_a_live_drawing_alone(front_end: FrontEnd, cells: InteractiveShell) -> None:
    run(cells, LOOK, "one")
    live: Explorer = cells.user_ns["live"]
    open_once = len(front_end.shown)
    run(cells, "2 + 2", "two")
    run(cells, LOOK, "three")
    assert len(front_end.shown) == 2 * open_once
    front_end.sets(live.rows["offset"].readers[0][0], 11)
    assert live.drawing == struck_bevel.drawing(CAT_BED, offset=11 / 16)


def test_where_cells_have_no_names_nothing_is_cleared(front_end: FrontEnd, cells: InteractiveShell) -> None:
    run(cells, LOOK, None)
    open_once = len(front_end.shown)
    run(cells, LOOK, None)
    assert len(front_end.shown) == 2 * open_once


def test_closing_leaves_no_widget_behind(front_end: FrontEnd) -> None:
    explorer = look(post_section, CAT_BED)
    assert isinstance(explorer.widget, Box)
    assert isinstance(explorer.picture, HTML)
    explorer.close()
    assert front_end.shown == set()
    explorer.close()
