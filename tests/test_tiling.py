"""A pattern larger than a sheet is shared out so that nothing is lost and every sheet finds its neighbour."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from dataclasses import replace

import pytest
import sample_packet
from hypothesis import given, settings
from hypothesis import strategies as st
from sheet_checks import assert_it_can_be_read, words_of

from woodmath.drawing import Drawing, Label, Line, rectangle
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.paper import PAPERS, UNITS_IN_A_MILLIMETRE, numbered, paper_size
from woodmath.pattern import Pattern
from woodmath.patterns_on_paper import on_sheet, pattern_sheets
from woodmath.pens import PENS, Stroke
from woodmath.tiling import OVERLAP, Taken, Tiling, tiling_of
from woodmath.true_size import room_beside_the_bars


def shared_out(width: float, height: float, paper: str = "a4") -> Tiling:
    size = paper_size(paper)
    rooms = (room_beside_the_bars(*size), room_beside_the_bars(size[1], size[0]))
    return tiling_of(width, height, size, *rooms)


SIZES = st.floats(1.0, 1200.0)


def test_a_pattern_that_one_sheet_holds_is_one_sheet() -> None:
    """A4 leaves 164 by 250 mm beside the bars, and 251 by 163 on its side."""
    for width, height in ((164.0, 250.0), (251.0, 163.0), (10.0, 10.0)):
        tiling = shared_out(width, height)
        assert len(tiling.tiles) == 1
        assert tiling.match_marks == ()
    assert len(shared_out(165.0, 250.0).tiles) == 2


def test_the_way_that_takes_fewer_sheets_is_taken() -> None:
    assert (shared_out(480.0, 100.0).sheet_width, len(shared_out(480.0, 100.0).tiles)) == (297.0, 2)
    assert (shared_out(100.0, 480.0).sheet_width, len(shared_out(100.0, 480.0).tiles)) == (210.0, 2)


@settings(max_examples=60, deadline=None)
@given(width=SIZES, height=SIZES, paper=st.sampled_from(list(PAPERS)))
def test_every_window_fits_its_sheet_and_together_they_are_the_pattern(
    width: float, height: float, paper: str
) -> None:
    tiling = shared_out(width, height, paper)
    room = room_beside_the_bars(tiling.sheet_width, tiling.sheet_height)
    for tile in tiling.tiles:
        assert tile.right - tile.left <= room[0] + 1e-9
        assert tile.top - tile.bottom <= room[1] + 1e-9
    first, last = tiling.tiles[0], tiling.tiles[-1]
    assert (first.left, first.top, last.right, last.bottom) == (0.0, height, width, 0.0)
    for one, other in itertools.pairwise(tiling.tiles):
        if one.row == other.row:
            assert one.right - other.left == pytest.approx(OVERLAP)


def test_a_joint_and_its_marks_run_clear_of_words_where_they_can() -> None:
    """The middle of the pattern is full of words; on both sides of it is room enough for a joint."""
    words = Taken((115.0, 0.0, 125.0, 200.0), 10)
    size = paper_size("a4")
    rooms = (room_beside_the_bars(*size), room_beside_the_bars(size[1], size[0]))
    tiling = tiling_of(240.0, 200.0, size, *rooms, [words])
    assert tiling.upright_joints != shared_out(240.0, 200.0).upright_joints
    for joint in tiling.upright_joints:
        assert joint + OVERLAP / 2 <= 115.0 or joint - OVERLAP / 2 >= 125.0
    level = Taken((0.0, 45.0, 240.0, 55.0), 10)
    for mark in replace(tiling, taken=(level,)).match_marks:
        assert not 45.0 < mark.place[1] < 55.0


@settings(max_examples=30, deadline=None)
@given(width=SIZES, height=SIZES)
def test_every_joint_has_two_marks_and_each_is_on_two_sheets(width: float, height: float) -> None:
    tiling = shared_out(max(width, 40.0), max(height, 40.0))
    joints = tiling.rows * (tiling.columns - 1) + tiling.columns * (tiling.rows - 1)
    assert [mark.number for mark in tiling.match_marks] == list(range(1, 2 * joints + 1))
    for mark in tiling.match_marks:
        assert sum(mark in tiling.marks_on(tile) for tile in tiling.tiles) == 2
    for one, other in itertools.combinations(tiling.match_marks, 2):
        assert math.dist(one.place, other.place) > 10.0


def test_a_mark_is_the_same_place_of_the_pattern_on_both_sheets() -> None:
    tiling = shared_out(600.0, 480.0)
    for mark in tiling.match_marks:
        tiles = [tile for tile in tiling.tiles if mark in tiling.marks_on(tile)]
        for tile in tiles:
            x, y = on_sheet(mark.place, tile, tiling)
            corner = on_sheet((tile.left, tile.bottom), tile, tiling)
            assert (x - corner[0] + tile.left, y - corner[1] + tile.bottom) == pytest.approx(mark.place)


def test_nobody_joins_a_thousand_sheets() -> None:
    with pytest.raises(ImpossibleShape, match=r"9000 by 9000 mm, which takes \d+ sheets; 200 is the most"):
        shared_out(9000.0, 9000.0)


def test_a_paper_that_there_is_not_is_refused_by_name() -> None:
    with pytest.raises(UnknownName, match=r"no paper called 'a5'\. Choose one of: a4, letter"):
        pattern_sheets(sample_packet.small_pattern(), 25.4, "a5", "A bed")


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(
    "pattern",
    [sample_packet.small_pattern(), sample_packet.rocker_pattern(), sample_packet.large_pattern()],
    ids=lambda pattern: str(pattern.name),
)
def test_every_sheet_says_what_it_is_and_can_be_read(pattern: Pattern, paper: str) -> None:
    printed = pattern_sheets(pattern, 25.4, paper, "A bed")
    for number, (sheet, tile) in enumerate(zip(printed.sheets, printed.tiling.tiles, strict=True), start=1):
        said = " ".join(words.text for words in words_of(sheet))
        for words in (f"A bed: {pattern.name}", "100 mm", "4 in", "Print at 100 %, measure"):
            assert words in said
        if len(printed.sheets) > 1:
            assert f"sheet {number} of {len(printed.sheets)}, column {tile.column}, row {tile.row}." in said
            for mark in printed.tiling.marks_on(tile):
                assert str(mark.number) in {words.text for words in words_of(sheet)}
    for sheet in numbered(printed.sheets):
        assert_it_can_be_read(sheet)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("which", [sample_packet.rocker_pattern, sample_packet.large_pattern])
def test_a_trim_line_is_named_on_the_strip_that_falls_off_and_looks_like_no_line_of_a_pattern(
    which: Callable[[], Pattern], paper: str
) -> None:
    printed = pattern_sheets(which(), 25.4, paper, "A bed")
    tiling = printed.tiling
    for sheet, tile in zip(printed.sheets, tiling.tiles, strict=True):
        joints = (tile.column > 1) + (tile.column < tiling.columns)
        joints += (tile.row > 1) + (tile.row < tiling.rows)
        named = [words for words in words_of(sheet) if words.text == "trim"]
        assert len(named) == joints
        assert "Cut along a line named trim" in " ".join(words.text for words in words_of(sheet))
        kept = [
            (tile.left + 6.0) if tile.column > 1 else -1e9,
            (tile.bottom + 6.0) if tile.row < tiling.rows else -1e9,
            (tile.right - 6.0) if tile.column < tiling.columns else 1e9,
            (tile.top - 6.0) if tile.row > 1 else 1e9,
        ]
        left, top = on_sheet((kept[0], kept[3]), tile, tiling)
        right, bottom = on_sheet((kept[2], kept[1]), tile, tiling)
        for words in named:
            low_x, high_y, high_x, low_y = (side / UNITS_IN_A_MILLIMETRE for side in words.box)
            below, above = tiling.sheet_height - low_y, tiling.sheet_height - high_y
            assert high_x <= left or low_x >= right or above <= bottom or below >= top
        dotted = {mark.pen for mark in sheet.layers[2].marks if isinstance(mark, Stroke) and mark.pen}
        assert sum(bool(pen.dashes) for pen in dotted) == 1
        assert not dotted & set(PENS.values())


def test_words_that_a_joint_would_run_through_stand_whole_on_one_sheet() -> None:
    """On the seam of two sheets, in the seam of four, and at the pattern's very end."""
    places = [(x, y) for x in (0.0, 150.0, 156.0, 162.0, 300.0) for y in (0.0, 122.0, 240.0, 246.0, 480.0)]
    shapes = [Line(rectangle(-70.0, -10.0, 380.0, 490.0), "outline", True)]
    words = [f"here {x:g} {y:g}" for x, y in places]
    labels = [Label(text, place, side="middle") for text, place in zip(words, places, strict=True)]
    drawing = Drawing("words", sample_packet.FRAME, (*shapes, *labels), "")
    printed = pattern_sheets(Pattern("Words", drawing), 1.0, "a4", "A bed")
    assert len(printed.sheets) > 3
    seen = [words.text for sheet in printed.sheets for words in words_of(sheet)]
    for text in words:
        assert seen.count(text) == 1, text


def test_a_long_name_of_the_piece_gives_way_to_the_pattern_s() -> None:
    printed = pattern_sheets(
        sample_packet.small_pattern(), 25.4, "a4", "a bed for the cat of the workshop " * 5
    )
    title = next(words.text for words in words_of(printed.sheets[0]) if "The grid" in words.text)
    assert title.startswith("a bed for the cat")
    assert title.endswith("…: The grid")
    assert_it_can_be_read(numbered(printed.sheets)[0])
