"""Blanks fitted to boards: nothing is lost, nothing lies on anything else, and it stays quick."""

from __future__ import annotations

import itertools
import math
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath.boards_on_hand import PLANED_AWAY, Blank, Fitting, Region, StockBoard, fit
from woodmath.errors import ImpossibleShape

sizes = st.floats(0.5, 40, allow_nan=False)
blanks = st.lists(st.builds(Blank, st.sampled_from("abcdefg"), sizes, sizes, st.floats(0.25, 2)), max_size=25)
board_sizes = st.lists(
    st.tuples(
        st.sampled_from((96.0, 48.0, 24.5)),
        st.sampled_from((4.0, 9.5, 12.0)),
        st.sampled_from((0.5, 1.0, 2.0)),
    ),
    max_size=8,
)


def boards_of(listed: list[tuple[float, float, float]]) -> list[StockBoard]:
    return [StockBoard(f"board {number}", *size) for number, size in enumerate(listed, start=1)]


def overlap(one: Region, other: Region) -> bool:
    def shared(start, length, other_start, other_length):
        return min(start + length, other_start + other_length) - max(start, other_start)

    return (
        one.board == other.board
        and shared(one.along, one.length, other.along, other.length) > 1e-7
        and shared(one.across, one.width, other.across, other.width) > 1e-7
    )


def assert_nothing_is_lost(fitted: Fitting) -> None:
    for board in fitted.boards:
        regions = [region for region in fitted.regions if region.board == board.name]
        for region in regions:
            assert region.along + region.length <= board.length + 1e-7
            assert region.across + region.width <= board.width + 1e-7
        if regions:
            area = math.fsum(region.area for region in regions)
            assert math.isclose(area, board.length * board.width, rel_tol=1e-6)
        assert not any(overlap(one, other) for one, other in itertools.combinations(regions, 2))


@settings(max_examples=150, deadline=None)
@given(wanted=blanks, listed=board_sizes, kerf=st.sampled_from((0.0, 0.0625, 0.125, 3.0)))
def test_blanks_kerf_and_what_is_left_make_up_the_boards_and_no_two_overlap(wanted, listed, kerf):
    fitted = fit(wanted, boards_of(listed), kerf)
    assert_nothing_is_lost(fitted)
    placed = sorted((each.name, each.length, each.width) for each in fitted.blanks)
    missing = sorted((each.name, each.length, each.width) for each in fitted.missing)
    assert sorted(placed + missing) == sorted((each.name, each.length, each.width) for each in wanted)


@settings(max_examples=100, deadline=None)
@given(wanted=blanks, listed=board_sizes)
def test_every_blank_lies_in_a_board_that_is_thick_enough_and_one_that_fits_a_whole_board_is_never_missing_alone(
    wanted, listed
):
    boards = boards_of(listed)
    thickness = {board.name: board.thickness for board in boards}
    for blank in wanted:
        alone = fit([blank], boards, 0.125)
        there = any(
            blank.length <= board.length and blank.width <= board.width and blank.thickness <= board.thickness
            for board in boards
        )
        assert bool(alone.blanks) == there
        assert all(thickness[region.board] >= blank.thickness for region in alone.blanks)


def test_two_short_blanks_side_by_side_take_a_kerf_between_them():
    board = StockBoard("board 1", length=20, width=9, thickness=1)
    rockers = [Blank("rocker 1", 20, 4.25, 1), Blank("rocker 2", 20, 4.25, 1)]
    fitted = fit(rockers, [board], kerf=0.125)
    assert [(each.name, each.across) for each in fitted.blanks] == [("rocker 1", 0.0), ("rocker 2", 4.375)]
    assert fitted.left_over == (Region("board 1", "left over", "", 0.0, 8.75, 20, 0.25),)
    assert [kerf.width for kerf in fitted.kerfs] == [0.125, 0.125]


def test_two_blanks_as_wide_as_the_board_together_do_not_come_out_of_it_when_the_saw_takes_its_kerf():
    board = StockBoard("board 1", length=20, width=8, thickness=1)
    halves = [Blank("half 1", 20, 4, 1), Blank("half 2", 20, 4, 1)]
    assert not fit(halves, [board], kerf=0).missing
    assert [blank.name for blank in fit(halves, [board], kerf=0.125).missing] == ["half 2"]


def test_a_narrow_blank_leaves_the_wide_board_to_the_wide_one():
    boards = [StockBoard("wide", 30, 10, 1), StockBoard("narrow", 30, 4, 1)]
    fitted = fit([Blank("strip", 30, 3, 1), Blank("panel", 28, 9, 1)], boards, kerf=0.125)
    assert {(each.board, each.name) for each in fitted.blanks} == {("narrow", "strip"), ("wide", "panel")}


def test_a_thin_blank_leaves_the_thick_board_alone_while_there_is_a_thin_one():
    boards = [StockBoard("thick", 60, 10, 2), StockBoard("thin", 60, 10, 1)]
    fitted = fit([Blank("end", 20, 8, 0.875), Blank("end", 20, 8, 0.875)], boards, kerf=0.125)
    assert {each.board for each in fitted.blanks} == {"thin"}
    assert [board.name for board in fitted.untouched] == ["thick"]


def test_a_board_is_kept_for_blanks_of_its_own_thickness_even_from_a_longer_thin_one():
    boards = [StockBoard("three quarters", 30, 6, 0.75), StockBoard("inch", 24, 6, 1)]
    wanted = [Blank("long lath", 22, 5, 0.5), Blank("short end", 20, 5, 0.75), Blank("rocker", 19, 5, 1)]
    fitted = fit(wanted, boards, kerf=0.125)
    assert {(each.board, each.name) for each in fitted.blanks} == {
        ("three quarters", "short end"),
        ("inch", "rocker"),
    }
    assert [blank.name for blank in fitted.missing] == ["long lath"]


def test_a_thin_board_that_is_shorter_is_taken_before_a_thick_one_that_is_longer():
    boards = [StockBoard("thick", 96, 6, 2), StockBoard("thin", 20, 6, 0.5)]
    fitted = fit([Blank("lath", 19, 5, 0.5)], boards, kerf=0.125)
    assert [each.board for each in fitted.blanks] == ["thin"]
    assert [board.name for board in fitted.untouched] == ["thick"]


def test_a_little_planing_comes_before_thinning_thick_stock():
    """What may be planed down is had first, though the blank that thins thick stock is the longer one."""
    boards = [StockBoard("inch", 24, 6, 1)]
    fitted = fit([Blank("lath", 22, 5, 0.5), Blank("end", 20, 5, 0.875)], boards, kerf=0.125)
    assert [each.name for each in fitted.blanks] == ["end"]
    assert PLANED_AWAY * 0.875 >= 1 > PLANED_AWAY * 0.5


def test_thick_stock_is_thinned_when_nothing_else_is_left():
    boards = [StockBoard("inch", 48, 6, 1)]
    fitted = fit([Blank("lath", 22, 5, 0.5), Blank("end", 20, 5, 1)], boards, kerf=0.125)
    assert [each.name for each in fitted.blanks] == ["end", "lath"]


def test_a_blank_that_comes_later_and_is_longer_is_never_ripped_from_a_section_too_short_for_it():
    """Thin stock is wanted first for the short blank; the longer one that comes down to it needs its own section."""
    board = StockBoard("inch", 48, 12, 1)
    fitted = fit([Blank("short", 10, 5, 1), Blank("long", 30, 5, 0.875)], [board], kerf=0.125)
    places = {each.name: (each.along, each.across, each.length) for each in fitted.blanks}
    assert places == {"short": (0.0, 0.0, 10), "long": (10.125, 0.0, 30)}
    assert_nothing_is_lost(fitted)


@settings(max_examples=100, deadline=None)
@given(wanted=blanks, listed=board_sizes)
def test_blanks_that_want_thinner_stock_take_no_board_from_those_of_its_own_thickness(wanted, listed):
    boards = boards_of(listed)
    for thickness in {board.thickness for board in boards}:
        own = [Blank(f"own {n}", blank.length, blank.width, thickness) for n, blank in enumerate(wanted)]
        thinner = [
            Blank(f"thin {n}", each.length, each.width, thickness / 3) for n, each in enumerate(wanted)
        ]
        alike = [board for board in boards if board.thickness == thickness]
        alone = {each.name for each in fit(own, alike, 0.125).blanks}
        together = {each.name for each in fit([*own, *thinner], alike, 0.125).blanks}
        assert alone <= together


def test_the_grain_is_never_turned_to_make_a_blank_fit():
    board = StockBoard("board 1", length=10, width=20, thickness=1)
    assert fit([Blank("end", length=15, width=8, thickness=1)], [board], kerf=0.125).missing


def test_ten_times_the_blanks_take_about_ten_times_as_long():
    def seconds(count: int) -> float:
        wanted = [Blank(f"part {n}", 10 + n % 17, 2 + n % 5, 0.5 + n % 3 / 4) for n in range(count)]
        boards = [StockBoard(f"board {n}", 96, 6 + n % 4, 1.25) for n in range(count // 8)]
        taken = []
        for _ in range(3):
            begun = time.perf_counter()
            fit(wanted, boards, 0.125)
            taken.append(time.perf_counter() - begun)
        return min(taken)

    assert seconds(4000) < 30 * seconds(400)


def test_what_cannot_be_sawn_is_refused():
    with pytest.raises(ImpossibleShape, match="saw cut"):
        fit([], [], kerf=-1)
    with pytest.raises(ImpossibleShape, match="one name"):
        fit([], [StockBoard("board", 1, 1, 1), StockBoard("board", 1, 1, 1)], kerf=0)
    with pytest.raises(ImpossibleShape, match="width of the blank for lid"):
        Blank("lid", 1, 0, 1)
