"""True scale, measured and not believed: the sheets rendered by poppler, and their lines found as ink."""

from __future__ import annotations

import functools
import itertools
import math

import pytest
import sample_packet
from raster_reading import Raster, boxes_in_millimetres, need_poppler, rendered

from woodmath.drawing import Dimension
from woodmath.outlines import Point
from woodmath.paper import PAPERS, PaperSheet
from woodmath.patterns import patterns_of
from woodmath.patterns_on_paper import PatternOnPaper, on_sheet, pattern_sheets
from woodmath.piece import Piece
from woodmath.sheets_in_pdf import pdf_of
from woodmath.tiling import Tile
from woodmath.true_size import bars_and_title

INCH = 25.4
PATTERNS = {
    "one sheet": sample_packet.small_pattern,
    "a row of sheets": sample_packet.rocker_pattern,
    "rows and columns": sample_packet.large_pattern,
}


@pytest.fixture(autouse=True)
def _poppler() -> None:
    need_poppler()


@functools.cache
def on_paper(which: str, paper: str) -> PatternOnPaper:
    return pattern_sheets(PATTERNS[which](), INCH, paper, "A bed")


@functools.cache
def rasters(which: str, paper: str, dpi: int) -> tuple[Raster, ...]:
    sheets = on_paper(which, paper).sheets
    pdf = pdf_of("measured", sheets)
    return tuple(rendered(pdf, number, dpi) for number in range(1, len(sheets) + 1))


def from_top(place: Point, sheet: PaperSheet) -> Point:
    return (place[0], sheet.height - place[1])


def per_200(length: float) -> float:
    """A tenth of a millimetre over 200 mm; over less than 100 mm, half of that."""
    return 0.1 * max(length, 100.0) / 200


def test_all_four_bars_of_a_sheet_are_true() -> None:
    """100 mm, and 4 in of 25.4 mm each, level and upright, on every sheet; between the lines at the bars' ends."""
    for paper, which in itertools.product(PAPERS, PATTERNS):
        dpi = 600 if (paper, which) == ("a4", "one sheet") else 300
        for raster, sheet in zip(rasters(which, paper, dpi), on_paper(which, paper).sheets, strict=True):
            bars = [
                shape
                for shape in bars_and_title("", sheet.width, sheet.height, "").shapes
                if isinstance(shape, Dimension)
            ]
            assert len(bars) == 4
            for bar in bars:
                start, end = from_top(bar.start, sheet), from_top(bar.end, sheet)
                true = {"100 mm": 100.0, "4 in": 4 * INCH}[bar.text]
                assert raster.distance(start, end, band=(1.2, 2.0)) == pytest.approx(true, abs=0.05)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("which", PATTERNS)
def test_every_known_length_that_one_sheet_shows_is_true_as_ink(which: str, paper: str) -> None:
    printed = on_paper(which, paper)
    measured = 0
    shown = zip(
        rasters(which, paper, 600 if paper == "a4" else 300),
        printed.sheets,
        printed.tiling.tiles,
        strict=True,
    )
    for raster, sheet, tile in shown:
        for known in printed.pattern.known_lengths:
            ends = [printed.place(point, tile) for point in (known.start, known.end)]
            if all(_in_window(printed, point, tile) for point in (known.start, known.end)):
                found = raster.distance(*(from_top(end, sheet) for end in ends))
                true = INCH * known.length
                assert found == pytest.approx(true, abs=per_200(true)), known.name
                measured += 1
    assert measured >= 2


@pytest.mark.parametrize(("demo", "dpi"), [("cat-bed", 600), ("log-box", 300)])
def test_every_known_length_of_a_demo_s_patterns_is_true_as_ink(demo: str, dpi: int) -> None:
    piece = Piece.demo(demo)
    unit = piece.rule.millimetres_per_unit
    measured: set[tuple[str, str]] = set()
    for pattern in patterns_of(piece):
        printed = pattern_sheets(pattern, unit, "a4", piece.name)
        pdf = pdf_of("measured", printed.sheets)
        for page, (sheet, tile) in enumerate(zip(printed.sheets, printed.tiling.tiles, strict=True), start=1):
            shown = [
                known
                for known in pattern.known_lengths
                if all(_in_window(printed, point, tile) for point in (known.start, known.end))
            ]
            raster = rendered(pdf, page, dpi) if shown else None
            for known in shown:
                ends = (from_top(printed.place(point, tile), sheet) for point in (known.start, known.end))
                assert raster is not None
                true = unit * known.length
                found = raster.distance(*ends)
                assert found == pytest.approx(true, abs=0.1), f"{pattern.name}: {known.name}"
                measured.add((pattern.name, known.name))
    assert len(measured) >= 10


def _in_window(printed: PatternOnPaper, point: Point, tile: Tile) -> bool:
    x, y = (printed.unit * each - low for each, low in zip(point, printed.corner, strict=True))
    return tile.shows((x, y))


def _found(printed: PatternOnPaper, number: int, raster: Raster, place: Point) -> Point:
    """Return where a match mark's cross is, as ink, in millimetres from the upper left corner."""
    sheet, tile = printed.sheets[number], printed.tiling.tiles[number]
    near = from_top(on_sheet(place, tile, printed.tiling), sheet)
    right = raster.line_middle(near, (1.0, 0.0), band=(3.0, 4.6), both_sides=True)
    down = raster.line_middle(near, (0.0, 1.0), band=(3.0, 4.6), both_sides=True)
    return (near[0] + right, near[1] + down)


@pytest.mark.parametrize(("which", "paper"), [("a row of sheets", "a4"), ("rows and columns", "letter")])
def test_sheets_joined_by_their_match_marks_agree(which: str, paper: str) -> None:
    """Laid on one another at one mark, two sheets are off at the other mark, and turned, by next to nothing."""
    printed = on_paper(which, paper)
    tiles, found = printed.tiling.tiles, rasters(which, paper, 300)
    joints = 0
    for one, other in itertools.combinations(range(len(tiles)), 2):
        shared = [
            mark
            for mark in printed.tiling.marks_on(tiles[one])
            if mark in printed.tiling.marks_on(tiles[other])
        ]
        if not shared:
            continue
        joints += 1
        assert len(shared) == 2
        here = [_found(printed, one, found[one], mark.place) for mark in shared]
        there = [_found(printed, other, found[other], mark.place) for mark in shared]
        ways = [(x - u, y - v) for (x, y), (u, v) in zip(here, there, strict=True)]
        assert math.dist(*ways) < 0.2
    assert joints >= 2


def test_a_length_that_crosses_the_joints_is_true_when_the_sheets_are_joined() -> None:
    """Each sheet is moved so that its first shared mark lies on its neighbour's; then lines are measured across."""
    for which in ("a row of sheets", "rows and columns"):
        printed = on_paper(which, "a4")
        tiles, found = printed.tiling.tiles, rasters(which, "a4", 600)
        moved = _joined(printed, found)
        crossing = 0
        for known in printed.pattern.known_lengths:
            shows = [
                next((number for number, tile in enumerate(tiles) if _in_window(printed, end, tile)), None)
                for end in (known.start, known.end)
            ]
            if shows[0] is None or shows[1] is None or shows[0] == shows[1]:
                continue
            places = []
            way = tuple((b - a) / known.length for a, b in zip(known.start, known.end, strict=True))
            down = (way[0], -way[1])
            for number, end in zip(shows, (known.start, known.end), strict=True):
                assert number is not None
                near = from_top(printed.place(end, tiles[number]), printed.sheets[number])
                run = found[number].line_middle(near, down)
                places.append(tuple(near[axis] + run * down[axis] + moved[number][axis] for axis in (0, 1)))
            true = INCH * known.length
            reached = sum((places[1][axis] - places[0][axis]) * down[axis] for axis in (0, 1))
            assert reached == pytest.approx(true, abs=0.2 + per_200(true)), known.name
            crossing += 1
        assert crossing >= 2


def _joined(printed: PatternOnPaper, found: tuple[Raster, ...]) -> dict[int, Point]:
    """Return how far each sheet is moved when all are laid on the first by their marks, sheet after sheet."""
    tiling = printed.tiling
    moved = {0: (0.0, 0.0)}
    while len(moved) < len(tiling.tiles):
        for number, tile in enumerate(tiling.tiles):
            for laid in tuple(moved):
                shared = [
                    mark for mark in tiling.marks_on(tile) if mark in tiling.marks_on(tiling.tiles[laid])
                ]
                if number not in moved and shared:
                    here = _found(printed, number, found[number], shared[0].place)
                    there = _found(printed, laid, found[laid], shared[0].place)
                    moved[number] = (
                        moved[laid][0] + there[0] - here[0],
                        moved[laid][1] + there[1] - here[1],
                    )
    return moved


def test_more_than_ten_known_lengths_are_measured() -> None:
    assert sum(len(make().known_lengths) for make in PATTERNS.values()) > 10


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_is_the_paper_to_a_hundredth_of_a_millimetre(paper: str) -> None:
    """A4 is 210 by 297 mm (ISO 216); Letter is 8 1/2 by 11 in (ANSI/ASME Y14.1), of 25.4 mm each."""
    sizes = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}[paper]
    for which in PATTERNS:
        boxes = boxes_in_millimetres(pdf_of("boxes", on_paper(which, paper).sheets))
        assert len(boxes) == len(on_paper(which, paper).sheets)
        for box in boxes:
            assert sorted(box) == pytest.approx(sorted(sizes), abs=0.01)
