"""The paper: the same picture as on the screen, and a page that is true when it is printed at 100 %."""

from __future__ import annotations

import math
import os
import re
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import matplotlib
import numpy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from matplotlib.figure import Figure
from matplotlib.transforms import Affine2D
from pdf_reading import Page, page_of
from sample_drawing import FRAME, sample

from woodmath.drawing import (
    Angle,
    Circle,
    Dimension,
    Drawing,
    Frame,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Point,
    Shape,
    rectangle,
)
from woodmath.drawing_pdf import PAPERS, figure_of, pdf_bytes, svg_bytes, true_size_page
from woodmath.drawing_svg import svg
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.lettering import text_width
from woodmath.marks import marks
from woodmath.paper import Layer, PaperSheet
from woodmath.pattern import Pattern
from woodmath.pattern_svg import pattern_svg
from woodmath.sheets_in_pdf import pdf_of

SVG = "{http://www.w3.org/2000/svg}"
MILLIMETRE = 72 / 25.4
PIXEL = 72 / 96
UNRULY: dict[Any, Any] = {
    "savefig.bbox": "tight",
    "figure.autolayout": True,
    "figure.dpi": 50,
    "figure.facecolor": "black",
    "font.family": "serif",
    "font.size": 30,
    "lines.scale_dashes": True,
    "patch.linewidth": 9,
    "path.sketch": (3, 20, 5),
    "path.simplify": True,
    "path.simplify_threshold": 1.0,
    "pdf.fonttype": 3,
    "svg.fonttype": "none",
    "svg.hashsalt": "another",
    "text.color": "red",
    "axes.facecolor": "black",
}


def picture(*shapes: Shape) -> Drawing:
    """Return a drawing of some shapes, with the words that every drawing has."""
    return Drawing("shapes", FRAME, shapes, "They are drawn.")


def true_page(drawing: Drawing, unit_in_millimetres: float, paper: str = "a4") -> Page:
    """Return what stands on the page of a drawing at true size."""
    return page_of(pdf_bytes(true_size_page(drawing, unit_in_millimetres, paper)))


def has_line(page: Page, wanted: list[Point]) -> bool:
    """Tell whether a page has a line of that shape anywhere, to a thousandth of a millimetre."""
    for line in page.lines:
        moved = [((x - line[0][0]) / MILLIMETRE, (y - line[0][1]) / MILLIMETRE) for x, y in line]
        if len(moved) >= len(wanted) and all(
            math.dist(one, other) < 1e-3 for one, other in zip(moved, wanted, strict=False)
        ):
            return True
    return False


def svg_lines(drawing: Drawing) -> list[list[Point]]:
    """Return the lines of the screen's picture in painting order; a circle as its centre and a point."""
    lines: list[list[Point]] = []
    root = ElementTree.fromstring(svg(drawing))
    named = {element.get("id"): element for element in root.iter()}

    def collect(element: ElementTree.Element, placed: Affine2D) -> None:
        if element.get("class") == "wm-motion" or element.tag == f"{SVG}defs":
            return
        inside = _transform(element.get("transform", "")) + placed
        found: list[list[Point]] = []
        if element.tag == f"{SVG}use":
            collect(named[element.attrib["href"].removeprefix("#")], inside)
        elif element.tag == f"{SVG}path":
            for part in element.attrib["d"].split("M")[1:]:
                found.append(_walked(_points(part.removesuffix("z").replace("l", " "))))
        elif element.tag == f"{SVG}polyline":
            found.append(_points(element.attrib["points"]))
        elif element.tag == f"{SVG}circle":
            x, y, radius = (float(element.attrib[name]) for name in ("cx", "cy", "r"))
            found.append([(x, y), (x, y + radius)])
        lines.extend([(x, y) for x, y in inside.transform(line)] for line in found)
        for part in element:
            collect(part, inside)

    collect(root, Affine2D())
    return lines


def _transform(text: str) -> Affine2D:
    """Return what a transform attribute does; the part that is written last is done first."""
    done = Affine2D()
    for kind, values in reversed(re.findall(r"(translate|rotate)\(([^)]*)\)", text)):
        numbers = [float(value) for value in values.split(",")]
        if kind == "translate":
            done.translate(*numbers)
        else:
            done.rotate_deg(*numbers)
    return done


def vertices(figure: Figure, number: int) -> list[Point]:
    """Return the points of one painted patch of a figure, in picture units."""
    return [
        (float(x), float(y)) for x, y in numpy.asarray(figure.axes[0].patches[number].get_path().vertices)
    ]


def extent(points: list[Point]) -> tuple[float, float, float, float]:
    """Return left, top, right and bottom of points."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys), max(xs), max(ys))


def _walked(steps: list[Point]) -> list[Point]:
    """Return the points of a line that is written as its start and the ways from point to point."""
    return [(x, y) for x, y in numpy.cumsum(steps, axis=0)]


def _points(text: str) -> list[Point]:
    pairs = (pair.split(",") for pair in text.split())
    return [(float(x), float(y)) for x, y in pairs]


def test_paper_and_screen_show_the_same_geometry_in_the_same_order() -> None:
    drawing = sample()
    page = page_of(pdf_bytes(figure_of(drawing)))
    on_paper = [[(x / PIXEL, (page.height - y) / PIXEL) for x, y in line] for line in page.lines[1:]]
    on_screen = svg_lines(drawing)
    assert len(on_screen) > 100
    for seen, printed in zip(on_screen, on_paper, strict=False):
        # A circle of eight arcs; rounded, its end may miss its beginning, and then it is closed by one point more.
        if len(printed) in (9, 10) and len(seen) == 2:
            centre, radius = seen[0], math.dist(*seen)
            assert all(math.dist(point, centre) == pytest.approx(radius, abs=0.15) for point in printed)
        else:
            assert len(printed) - len(seen) in (0, 1)
            assert max(map(math.dist, seen, printed)) < 0.08
            assert math.dist(printed[-1], seen[len(printed) % len(seen) - 1]) < 0.08


def test_paper_and_screen_begin_their_words_at_the_same_places() -> None:
    drawing = sample()
    page = page_of(pdf_bytes(figure_of(drawing)))
    printed = [(x / PIXEL, (page.height - y) / PIXEL) for x, y in page.texts]
    for element in ElementTree.fromstring(svg(drawing)).iter(f"{SVG}text"):
        x, y, text = float(element.attrib["x"]), float(element.attrib["y"]), element.text or ""
        bold = element.get("font-weight") == "700"
        width = text_width(text, float(element.attrib["font-size"]), bold)
        before = {"start": 0.0, "middle": width / 2, "end": width}[element.get("text-anchor", "start")]
        assert any(abs(x - before - left) < 0.5 and abs(y - base) < 0.1 for left, base in printed), text


def test_paper_and_screen_use_the_same_colours() -> None:
    drawing = sample()
    colours = re.compile(r"#[0-9a-f]{6}\b")
    on_paper = set(colours.findall(svg_bytes(figure_of(drawing, sentence=False)).decode("utf-8")))
    assert on_paper == set(colours.findall(svg(drawing)))


def test_a_figure_is_as_large_on_paper_as_the_picture_is_on_the_screen() -> None:
    page = page_of(pdf_bytes(figure_of(sample(), sentence=False)))
    assert (page.width, page.height) == (FRAME.width * PIXEL, FRAME.height * PIXEL)


def test_all_that_the_picture_says_stands_below_it_in_lines_that_fit() -> None:
    figure = figure_of(sample())
    below = [text for text in figure.axes[0].texts if text.get_position()[1] > FRAME.height]
    said = " ".join(text.get_text() for text in below)
    assert said == (
        "The board stops ¼ short of the mortise's floor. "
        "What is left behind it is a wall of 1, a third of the post. "
        "A wall as thick as the tenon is plenty, and this one is. "
        "✗ The corner is cut free. Make the mortise ½ shorter, or move it."
    )
    levels = [text.get_position()[1] for text in below]
    assert levels == sorted(levels)
    assert levels[-1] < figure.get_size_inches()[1] * 96
    for text in below:
        bold = "Bold" in str(text.get_fontproperties().get_file())
        assert 24 + text_width(text.get_text(), 15.0, bold) <= FRAME.width - 24


def test_paper_shows_the_first_frame_of_what_moves() -> None:
    moving = MovingLine((((0.0, 0.0), (2.0, 0.0)), ((0.0, 0.0), (0.0, 2.0))), 4.0)
    figure = figure_of(picture(moving), sentence=False)
    assert len(figure.axes[0].patches) == 2
    assert vertices(figure, 1) == [FRAME.place((0.0, 0.0)), FRAME.place((2.0, 0.0))]


SWINGS = MovingBody(
    (Line(((0.0, 0.0), (2.0, 0.0)), closed=True, fill="board"), Circle((2.0, 0.0), 0.5)),
    about=(0.0, 0.0),
    poses=((3.0, 1.0, 90.0), (5.0, 1.0, 0.0)),
    seconds=1.0,
)


STANDS = (Line(((3.0, 1.0), (3.0, 3.0)), closed=True, fill="board"), Circle((3.0, 3.0), 0.5))
"""The same, drawn where it is at its first pose."""


def figure_page(drawing: Drawing) -> Page:
    """Return what is on the page of a figure."""
    return page_of(pdf_bytes(figure_of(drawing, sentence=False)))


def sheet_page(drawing: Drawing) -> Page:
    """Return what is on a sheet of the shop packet."""
    return page_of(pdf_of("a sheet", (PaperSheet("a sheet", 210.0, 297.0, (Layer(marks(drawing)),)),)))


@pytest.mark.parametrize("printed", [figure_page, sheet_page])
def test_paper_shows_a_moving_body_where_it_stands_first(printed: Callable[[Drawing], Page]) -> None:
    moving, standing = printed(picture(SWINGS)).lines, printed(picture(*STANDS)).lines
    assert len(moving) == len(standing) >= 2
    for line, due in zip(moving, standing, strict=True):
        assert extent(line) == pytest.approx(extent(due), abs=0.01)
    assert printed(picture(replace(SWINGS, poses=SWINGS.poses[::-1]))).lines != moving


def test_a_pattern_shows_a_moving_body_where_it_stands_first() -> None:
    moving, standing = (
        pattern_svg(Pattern("board", picture(*shapes)), 25.4, "a bed") for shapes in ((SWINGS,), STANDS)
    )
    numbers = re.compile(r"-?\d+(?:\.\d+)?")
    assert numbers.sub("", moving) == numbers.sub("", standing)
    for one, other in zip(numbers.findall(moving), numbers.findall(standing), strict=True):
        assert float(one) == pytest.approx(float(other), abs=0.0015)


def test_words_on_a_moving_body_stand_on_paper_of_their_own() -> None:
    words = Label("a board", (3.0, 2.0))
    moving, standing = (len(sheet_page(picture(*shapes, words)).lines) for shapes in ((SWINGS,), STANDS))
    assert moving == standing
    assert moving > len(sheet_page(picture(SWINGS)).lines)


def test_what_looks_like_a_formula_is_only_words() -> None:
    figure = figure_of(picture(Label("costs $2 to $3", (0.0, 0.0))))
    assert "costs $2 to $3" in {text.get_text() for text in figure.axes[0].texts}
    assert not any(text.get_parse_math() for text in figure.axes[0].texts)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_sheet_is_the_paper_to_a_hundredth_of_a_millimetre(paper: str) -> None:
    """A4 is 210 by 297 mm (ISO 216); Letter is 8 1/2 by 11 in, of 25.4 mm each."""
    page = true_page(sample(), 10.0, paper)
    _, width, height = PAPERS[paper]
    assert page.width / MILLIMETRE == pytest.approx(width, abs=0.01)
    assert page.height / MILLIMETRE == pytest.approx(height, abs=0.01)


@pytest.mark.parametrize("paper", PAPERS)
def test_three_inches_are_three_inches_of_paper(paper: str) -> None:
    square = picture(Line(rectangle(5.0, 7.0, 8.0, 9.0), "outline", True))
    page = true_page(square, 25.4, paper)
    assert has_line(page, [(0, 0), (76.2, 0), (76.2, 50.8), (0, 50.8), (0, 0)])


def test_a_hundred_and_twenty_millimetres_are_as_many_of_paper() -> None:
    page = true_page(picture(Line(((0.0, 0.0), (120.0, 50.0)))), 1.0)
    assert has_line(page, [(0, 0), (120, 50)])


@settings(max_examples=20, deadline=None)
@given(length=st.floats(1.0, 150.0), lean=st.floats(0.0, 360.0), scale=st.floats(0.1, 900.0))
def test_a_length_is_true_whatever_the_scale_of_the_picture_was(
    length: float, lean: float, scale: float
) -> None:
    end = (length * math.cos(math.radians(lean)), length * math.sin(math.radians(lean)))
    frame = Frame(300.0, 200.0, -7.0, 11.0, scale)
    figure = true_size_page(Drawing("a line", frame, (Line(((0.0, 0.0), end)),), "A line."), 1.0)
    (left, low), (right, high) = vertices(figure, 0)
    drawn = ((right - left) / 96 * 25.4, (low - high) / 96 * 25.4)
    assert drawn == pytest.approx(end, abs=1e-6)


@pytest.mark.parametrize("wide", [False, True])
def test_every_sheet_carries_check_bars_in_both_directions(wide: bool) -> None:
    """100 mm, and 4 in of 25.4 mm: the distance between the tips of the arrowheads."""
    drawing = picture(Line(((0.0, 0.0), (200.0, 0.0) if wide else (0.0, 200.0))))
    page = true_page(drawing, 1.0)
    assert (page.width > page.height) == wide
    tips = [line[0] for line in page.lines if len(line) in (3, 4) and _is_arrow(line)]
    spans = {
        (round(abs(x - u) / MILLIMETRE, 2), round(abs(y - v) / MILLIMETRE, 2))
        for x, y in tips
        for u, v in tips
    }
    assert {(100.0, 0.0), (0.0, 100.0), (101.6, 0.0), (0.0, 101.6)} <= spans


def _is_arrow(line: list[Point]) -> bool:
    return 6.0 < math.dist(line[0], line[1]) < 7.5 and math.dist(line[1], line[2]) < 4.0


def test_every_sheet_says_what_it_is_and_how_to_print_it() -> None:
    figure = true_size_page(sample(), 10.0, name="A bed for the workshop cat", sheet=2, sheets=3)
    said = " ".join(text.get_text() for text in figure.axes[0].texts)
    for words in ("A bed for the workshop cat: A board let into a post", "sheet 2 of 3", "100 mm", "4 in"):
        assert words in said
    assert "Print at 100 %" in said
    assert "measure before you cut" in said


@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_is_printed_where_a_printer_cannot_reach(paper: str) -> None:
    _, width, height = PAPERS[paper]
    largest = picture(Line(rectangle(0.0, 0.0, width - 47.0, height - 48.0), "outline", True))
    page = true_page(largest, 1.0, paper)
    xs = [x / MILLIMETRE for line in page.lines for x, _ in line]
    ys = [y / MILLIMETRE for line in page.lines for _, y in line]
    assert min(xs) > 9.0
    assert max(xs) < width - 9.0
    assert min(ys) > 9.0
    assert max(ys) < height - 9.0


def test_the_drawing_stands_clear_of_the_bars_and_of_the_title() -> None:
    figure = true_size_page(picture(Line(rectangle(0.0, 0.0, 160.0, 245.0), "outline", True)), 1.0)
    left, top, _, bottom = extent(vertices(figure, 0))
    bars = [extent(vertices(figure, number)) for number in range(1, len(figure.axes[0].patches))]
    upright = [bar for bar in bars if bar[3] - bar[1] > 100]
    level = [bar for bar in bars if bar[2] - bar[0] > 100]
    title = max(text.get_position()[1] for text in figure.axes[0].texts if text.get_text() == "shapes")
    assert left > max(bar[2] for bar in upright)
    assert bottom < min(bar[1] for bar in level)
    assert top > title


def test_a_drawing_larger_than_the_paper_is_refused_with_both_sizes() -> None:
    rocker = picture(Line(((0.0, 0.0), (24.0, 0.0)), "thin"))
    with pytest.raises(ImpossibleShape, match=r"610 by 1 mm .* sheet of A4 .* smaller part"):
        true_size_page(rocker, 25.4)
    with pytest.raises(ImpossibleShape, match="sheet of Letter"):
        true_size_page(rocker, 25.4, "letter")


def test_its_dimensions_count_when_a_drawing_is_fitted_to_the_paper() -> None:
    bare = Line(((0.0, 0.0), (0.0, 240.0)), "thin")
    true_size_page(picture(bare), 1.0, "a4")
    with pytest.raises(ImpossibleShape, match="with its dimensions"):
        true_size_page(picture(bare, Dimension((0.0, 0.0), (0.0, 240.0), "240", 700.0)), 1.0, "a4")


def test_what_is_asked_wrongly_of_a_sheet_is_said() -> None:
    with pytest.raises(UnknownName, match=r"no paper called 'a5'\. Choose one of: a4, letter"):
        true_size_page(sample(), 1.0, "a5")
    with pytest.raises(UnknownName, match="no sheet 3 of 2"):
        true_size_page(sample(), 1.0, sheet=3, sheets=2)
    for unit in (0.0, -1.0, math.inf, math.nan):
        with pytest.raises(ImpossibleShape, match=r"Give 25\.4"):
            true_size_page(sample(), unit)


def test_line_widths_and_lettering_do_not_grow_with_the_scale() -> None:
    small, large = (true_size_page(sample(), unit) for unit in (5.0, 15.0))
    assert _widths(small) == _widths(large)
    assert [text.get_fontsize() for text in small.axes[0].texts] == [
        text.get_fontsize() for text in large.axes[0].texts
    ]


def _widths(figure: Figure) -> set[float]:
    return {patch.get_linewidth() for patch in figure.axes[0].patches}


def test_labels_stay_as_far_from_what_they_name_as_they_were() -> None:
    drawing = picture(
        Line(((0.0, 0.0), (1.0, 0.0)), "thin"),
        Label("the long point", (1.5, 2.0), (0.0, 0.0)),
        Label("the short point", (4.5, 2.0), (1.0, 0.0)),
    )
    for unit in (2.0, 40.0):
        figure = true_size_page(drawing, unit)
        places = {text.get_text(): text.get_position() for text in figure.axes[0].texts}
        ends = vertices(figure, 0)
        for end, words, away in ((0, "the long point", 75.0), (1, "the short point", 175.0)):
            x, y = places[words]
            assert x - ends[end][0] == pytest.approx(away)
            assert ends[end][1] - y == pytest.approx(100.0, abs=8.0)


def test_an_angle_s_arc_shrinks_with_the_corner_that_it_stands_in() -> None:
    corner = picture(Angle((0.0, 0.0), 0.0, 90.0, "", radius=50.0))
    half = true_size_page(corner, 25.4 * 25.0 / 96.0)
    left, top, right, bottom = extent(vertices(half, 0))
    assert (right - left, bottom - top) == pytest.approx((25.0, 25.0))


def test_a_white_sheet_is_not_printed_over() -> None:
    figure = true_size_page(picture(Line(rectangle(0.0, 0.0, 1.0, 1.0), "edge", True, "paper")), 10.0)
    assert figure.axes[0].patches[0].get_facecolor() == (1.0, 1.0, 1.0, 1.0)
    assert figure.get_facecolor() == (0.0, 0.0, 0.0, 0.0)


def test_fonts_are_embedded_whole_and_come_with_the_course() -> None:
    pdf = pdf_bytes(figure_of(sample()))
    assert b"/Type3" not in pdf
    assert pdf.count(b"/FontFile2") >= 2
    assert {name.split(b"+")[1] for name in re.findall(rb"/BaseFont /(\S+)", pdf)} == {
        b"DejaVuSans",
        b"DejaVuSans-Bold",
    }


def test_the_file_asks_not_to_be_scaled_and_stays_a_sound_pdf() -> None:
    """The end of a file leads to its tables, and each table to its objects: ISO 32000-1, 7.5.4 to 7.5.6."""
    pdf = pdf_bytes(figure_of(sample()))
    ends = re.search(rb"startxref\n(\d+)\n%%EOF\n\Z", pdf)
    assert ends
    newest = pdf[int(ends[1]) :]
    (number, place), (older,) = (
        re.findall(rb"(\d+) 1\n(\d{10}) 00000 n", newest)[0],
        re.findall(rb"/Prev (\d+)", newest),
    )
    assert pdf[int(place) :].startswith(b"%b 0 obj\n<< /Type /Catalog /Pages" % number)
    assert b"/PrintScaling /None" in pdf[int(place) : int(ends[1])]
    assert pdf[int(older) :].startswith(b"xref\n0 ")


@pytest.mark.parametrize("file_of", [pdf_bytes, svg_bytes])
def test_the_same_drawing_gives_the_same_bytes_in_another_process(
    file_of: Callable[[Figure], bytes],
) -> None:
    code = (
        "import sys\n"
        "from sample_drawing import sample\n"
        f"from woodmath.drawing_pdf import figure_of, {file_of.__name__}\n"
        f"sys.stdout.buffer.write({file_of.__name__}(figure_of(sample())))\n"
    )
    tests = str(Path(__file__).parent)
    elsewhere = {**os.environ, "PYTHONHASHSEED": "7", "PYTHONPATH": tests, "SOURCE_DATE_EPOCH": "86400"}
    there = subprocess.run(
        [sys.executable, "-c", code],
        check=True,
        env=elsewhere,
        cwd=Path(__file__).parent.parent,
        capture_output=True,
    )
    assert file_of(figure_of(sample())) == there.stdout


@pytest.mark.parametrize("file_of", [pdf_bytes, svg_bytes])
def test_a_file_names_no_date_and_no_version(file_of: Callable[[Figure], bytes]) -> None:
    written = file_of(figure_of(sample()))
    assert sample().title.encode() in written
    assert matplotlib.__version__.encode() not in written
    assert not re.search(rb"Date|\b20\d\d-", written)


@pytest.mark.parametrize("file_of", [pdf_bytes, svg_bytes])
def test_a_reader_s_own_settings_of_matplotlib_change_nothing(file_of: Callable[[Figure], bytes]) -> None:
    plain = file_of(figure_of(sample()))
    with matplotlib.rc_context(UNRULY):
        assert file_of(figure_of(sample())) == plain


def test_painting_leaves_no_setting_and_no_window_behind() -> None:
    code = (
        "import sys, matplotlib\n"
        "before = dict(matplotlib.rcParams.copy())\n"
        "from sample_drawing import sample\n"
        "from woodmath.drawing_pdf import figure_of, pdf_bytes, true_size_page\n"
        "assert pdf_bytes(figure_of(sample())) != pdf_bytes(true_size_page(sample(), 10.0))\n"
        "assert 'matplotlib.pyplot' not in sys.modules\n"
        "assert dict(matplotlib.rcParams.copy()) == before\n"
    )
    tests = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    subprocess.run([sys.executable, "-c", code], check=True, env=tests, cwd=Path(__file__).parent.parent)


def test_a_drawing_on_the_screen_needs_neither_numpy_nor_matplotlib() -> None:
    code = (
        "import sys\n"
        "from sample_drawing import sample\n"
        "from woodmath.drawing_svg import svg\n"
        "svg(sample())\n"
        "assert not {'numpy', 'matplotlib'} & set(sys.modules)\n"
    )
    tests = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    subprocess.run([sys.executable, "-c", code], check=True, env=tests, cwd=Path(__file__).parent.parent)


def test_a_circle_is_round_on_paper() -> None:
    page = true_page(picture(Circle((0.0, 0.0), 30.0, "edge")), 1.0)
    left, low, right, high = extent(page.lines[0])
    assert (right - left) / MILLIMETRE == pytest.approx(60.0, abs=1e-3)
    assert (high - low) / MILLIMETRE == pytest.approx(60.0, abs=1e-3)
