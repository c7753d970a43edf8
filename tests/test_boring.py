"""Counted turns tell the depth, trial holes tell the lead, and a row of holes fills a mortise."""

import math
import random
import re
import statistics
from collections.abc import Callable
from itertools import pairwise

import numpy as np
import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.stats import linregress, t

from woodmath import boring
from woodmath.boring import (
    AugerBit,
    auger_bit_diameter,
    auger_bit_number,
    boring_order,
    fit_lead,
    holes_along,
    threads_per_inch,
)
from woodmath.derivation import Derivation
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.piece import Piece
from woodmath.views.boring import bored_hole

leads = st.floats(0.02, 3)
points = st.floats(0, 12)
counts = st.floats(0, 200)
bits = st.builds(AugerBit, st.floats(0.1, 40), leads, points)
DERIVATIONS = [getattr(boring, name) for name in boring.__all__ if name.endswith("derivation")]


@pytest.mark.parametrize("derive", DERIVATIONS, ids=lambda derive: derive.__name__)
def test_every_step_of_every_derivation_follows(derive: Callable[[], Derivation]) -> None:
    assert_every_step_follows(derive())


# READ: Noyes, *Handwork in Wood*, 1910, ch. IV, "Boring tools"; Army correspondence course EN5155, p. 2-1.
@pytest.mark.parametrize(("number", "diameter"), [(4, 1 / 4), (6, 3 / 8), (9, 9 / 16), (16, 1)])
def test_a_bits_number_counts_the_sixteenths_of_an_inch(number: int, diameter: float) -> None:
    assert auger_bit_number(diameter) == number
    assert auger_bit_diameter(number) == diameter


def test_a_set_of_thirteen_bits_adds_up_to_the_number_on_its_box() -> None:
    # READ: Griffith, *Essentials of Woodworking*, 1908: 1/4 to 1 in by sixteenths; the box is labelled 32 1/2,
    # the sum in quarters of an inch (oregonwoodworker.blogspot.com, "This is boring", 2017).
    diameters = [auger_bit_diameter(number) for number in range(4, 17)]
    assert len(diameters) == 13
    assert sum(diameters) / (1 / 4) == 32.5


@pytest.mark.parametrize("diameter", [0.4, 0, -0.25, 1 / 32, math.nan, math.inf])
def test_no_bit_is_numbered_between_the_sixteenths(diameter: float) -> None:
    with pytest.raises(ImpossibleShape, match="whole sixteenths"):
        auger_bit_number(diameter)


def test_the_nearest_numbers_are_named() -> None:
    with pytest.raises(ImpossibleShape, match=r"number 6 \(6/16 in\) and number 7 \(7/16 in\)"):
        auger_bit_number(0.4)


@pytest.mark.parametrize("number", [0, -3, 2.5, math.nan])
def test_a_number_that_is_on_no_bit_is_refused(number: float) -> None:
    with pytest.raises(ImpossibleShape, match="Read the tang again"):
        auger_bit_diameter(number)


def test_the_published_pitch_of_a_coarse_screw_is_its_threads_per_inch() -> None:
    # READ: US patent 6,612,788 (2003): a coarse feed spur of about 1.75 mm, 14.5 threads per inch, one thread.
    bit = AugerBit.from_threads(25, 14.5, 8, unit="millimetre")
    assert bit.lead == pytest.approx(1.75, abs=0.005)
    assert AugerBit.from_threads(1, 14.5, 5 / 16).lead * 25.4 == pytest.approx(1.75, abs=0.005)


@given(st.floats(4, 40), st.integers(1, 3), st.sampled_from(["inch", "millimetre"]))
def test_lead_is_pitch_times_starts(threads: float, starts: int, unit: str) -> None:
    # Lead = pitch times starts, as for every screw (from memory).
    inch = {"inch": 1.0, "millimetre": 25.4}[unit]
    bit = AugerBit.from_threads(10, threads, 6, starts, unit=unit)
    assert bit.lead == pytest.approx(starts * inch / threads, rel=1e-14)


@pytest.mark.parametrize("starts", [0, -1, 1.5, math.nan])
def test_a_screw_has_a_whole_number_of_threads_side_by_side(starts: float) -> None:
    with pytest.raises(ImpossibleShape, match="threads side by side"):
        AugerBit.from_threads(0.5, 16, 0.25, starts)


def test_a_piece_is_measured_in_inches_or_in_millimetres() -> None:
    with pytest.raises(UnknownName, match="'inch' or 'millimetre'"):
        AugerBit.from_threads(0.5, 16, 0.25, unit="ell")


@pytest.mark.parametrize(
    "sizes", [(0, 0.1, 0.2), (0.5, 0, 0.2), (0.5, -0.1, 0.2), (0.5, 0.1, -0.2), (0.5, math.nan, 0.2)]
)
def test_a_bit_with_a_size_that_cannot_be_is_refused(sizes: tuple[float, float, float]) -> None:
    with pytest.raises(ImpossibleShape, match="of the bit"):
        AugerBit(*sizes)


@given(bits, bits, counts)
def test_the_same_lead_goes_the_same_depth_for_the_same_count(
    one: AugerBit, other: AugerBit, turns: float
) -> None:
    # Common practice: the same bit goes the same depth for the same count of turns; what the hole is wide, or how
    # long the point is, does not matter once the lips cut.
    twin = AugerBit(other.diameter, one.lead, other.point_length)
    assert one.depth(turns, "lips") == twin.depth(turns, "lips")
    twice = one.depth(2 * turns, "lips")
    assert twice == pytest.approx(2 * one.depth(turns, "lips"), rel=1e-14)


@given(bits, counts)
def test_depth_is_turns_times_lead_less_the_point_if_counted_from_its_bite(
    bit: AugerBit, turns: float
) -> None:
    assert bit.depth(turns, "lips") == pytest.approx(turns * bit.lead)
    went_in = turns * bit.lead
    from_the_screw = bit.depth(turns, "screw")
    assert from_the_screw == pytest.approx(max(0.0, went_in - bit.point_length), abs=1e-9)
    assert from_the_screw >= 0


def test_counting_from_the_first_bite_is_one_point_short_of_what_you_wanted() -> None:
    bit = AugerBit(diameter=3 / 8, lead=1 / 16, point_length=5 / 16)
    wanted = 1.5
    counted = wanted / bit.lead
    assert bit.depth(counted, "lips") == wanted
    assert bit.depth(counted, "screw") == wanted - bit.point_length


@given(bits, st.floats(0, 300), st.sampled_from(["lips", "screw"]))
def test_the_turns_for_a_depth_bore_that_depth(bit: AugerBit, depth: float, counted_from: str) -> None:
    turns = bit.turns(depth, counted_from)
    assert bit.depth(turns, counted_from) == pytest.approx(depth, rel=1e-9, abs=1e-9)
    assert bit.turns(depth, "screw") >= bit.turns(depth, "lips")


@given(bits)
def test_there_is_no_full_hole_before_the_lips_touch(bit: AugerBit) -> None:
    until_the_lips_touch = bit.turns(0, "screw")
    assert until_the_lips_touch == pytest.approx(bit.point_length / bit.lead)
    assert bit.depth(until_the_lips_touch / 2, "screw") == 0


@given(bits, st.floats(0.5, 300))
def test_the_point_pricks_through_after_the_same_turns_however_long_it_is(
    bit: AugerBit, thickness: float
) -> None:
    longer = AugerBit(bit.diameter, bit.lead, bit.point_length + 1)
    turns = bit.turns_until_through(thickness)
    assert turns == longer.turns_until_through(thickness) == pytest.approx(thickness / bit.lead)
    assume(thickness > bit.point_length)
    assert bit.point_depth(bit.depth(turns, "screw")) == pytest.approx(thickness)


@given(bits, counts)
def test_the_tip_goes_one_lead_at_each_turn_and_the_lips_are_behind_it_by_the_point(
    bit: AugerBit, turns: float
) -> None:
    assert bit.tip_depth(turns, "screw") == pytest.approx(turns * bit.lead)
    assert bit.tip_depth(turns, "lips") == pytest.approx(turns * bit.lead + bit.point_length)
    assert bit.tip_depth(0, "screw") == 0
    for counted_from in ("lips", "screw"):
        if bit.depth(turns, counted_from) > 0:
            tip = bit.point_depth(bit.depth(turns, counted_from))
            assert bit.tip_depth(turns, counted_from) == pytest.approx(tip)


@given(st.floats(0.5, 40), st.integers(1, 4), st.sampled_from(["inch", "millimetre"]))
def test_the_threads_that_are_counted_are_found_again_from_the_lead(
    threads: float, starts: int, unit: str
) -> None:
    bit = AugerBit.from_threads(10, threads, 6, starts, unit=unit)
    assert bit.threads_per_inch(starts, unit=unit) == pytest.approx(threads, rel=1e-14)
    assert threads_per_inch(bit.lead, starts, unit=unit) == bit.threads_per_inch(starts, unit=unit)


def test_the_published_threads_of_a_coarse_screw_follow_from_its_pitch() -> None:
    # READ: US patent 6,612,788 (2003), as above: about 1.75 mm is 14.5 threads per inch.
    assert threads_per_inch(1.75, unit="millimetre") == pytest.approx(14.5, abs=0.05)


@pytest.mark.parametrize("starts", [0, -1, 1.5, math.nan])
def test_threads_are_told_only_for_whole_numbers_side_by_side(starts: float) -> None:
    with pytest.raises(ImpossibleShape, match="threads side by side"):
        threads_per_inch(0.125, starts)
    with pytest.raises(UnknownName, match="'inch' or 'millimetre'"):
        threads_per_inch(0.125, unit="ell")


@pytest.mark.parametrize("ask", ["depth", "turns", "tip_depth"])
def test_counting_begins_at_the_lips_or_at_the_screw(ask: str) -> None:
    bit = AugerBit(0.5, 0.1, 0.2)
    with pytest.raises(UnknownName, match="'screw' if you count from the first bite"):
        getattr(bit, ask)(1.0, counted_from="handle")


@pytest.mark.parametrize("wrong", [-1, math.nan, math.inf])
def test_turns_and_depths_below_nothing_are_refused(wrong: float) -> None:
    bit = AugerBit(0.5, 0.1, 0.2)
    for ask in (
        lambda: bit.depth(wrong, "lips"),
        lambda: bit.tip_depth(wrong, "screw"),
        lambda: bit.turns(wrong, "screw"),
        lambda: bit.point_depth(wrong),
        lambda: bit.turns_until_through(wrong),
    ):
        with pytest.raises(ImpossibleShape):
            ask()


def test_the_fit_reproduces_a_published_regression() -> None:
    # Anscombe, "Graphs in Statistical Analysis", The American Statistician 27 (1973), data set 1: slope 0.5001,
    # intercept 3.0001, standard errors 0.1179 and 1.1247 (from memory).
    x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
    y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]
    fit = fit_lead(x, y)
    found = (fit.lead, fit.intercept, fit.lead_error, fit.intercept_error)
    assert found == pytest.approx((0.5001, 3.0001, 0.1179, 1.1247), abs=5.1e-5)


noisy_holes = st.lists(st.tuples(st.floats(1, 60), st.floats(-0.05, 0.05)), min_size=3, max_size=20)


@given(bits, noisy_holes)
def test_the_fit_agrees_with_the_reference_libraries(bit: AugerBit, holes: list[tuple[float, float]]) -> None:
    turns = [count for count, _ in holes]
    assume(max(turns) - min(turns) > 2)
    depths = [bit.depth(count, "lips") * (1 + off) for count, off in holes]
    assume(np.polyfit(turns, depths, 1)[0] > 1e-3)
    fit, other = fit_lead(turns, depths), linregress(turns, depths)
    size = max(depths)
    assert (fit.lead, fit.intercept) == pytest.approx(
        (other.slope, other.intercept), rel=1e-9, abs=1e-9 * size
    )
    assert fit.lead_error == pytest.approx(other.stderr, rel=1e-5, abs=1e-8 * size)
    assert fit.intercept_error == pytest.approx(other.intercept_stderr, rel=1e-5, abs=1e-7 * size)
    off_the_line = [deep - fit.line_at(count) for count, deep in zip(turns, depths, strict=True)]
    assert fit.residuals == pytest.approx(off_the_line, abs=1e-9 * size)
    assert math.fsum(fit.residuals) == pytest.approx(0, abs=1e-9 * size)


@given(bits, st.lists(st.integers(1, 80), min_size=3, max_size=12, unique=True))
def test_holes_without_any_error_give_back_the_bit(bit: AugerBit, beyond: list[int]) -> None:
    first = math.ceil(bit.turns(0, "screw"))
    turns = [first + count for count in beyond]
    fit = fit_lead(turns, [bit.depth(count, "screw") for count in turns])
    assert fit.lead == pytest.approx(bit.lead, rel=1e-9)
    assert fit.point_length == pytest.approx(bit.point_length, abs=1e-9 * (1 + first) * bit.lead * 10)
    assert fit.lead_error == pytest.approx(0, abs=1e-9 * (1 + first) * bit.lead)


def test_a_line_forced_through_nothing_gives_too_short_a_lead() -> None:
    bit = AugerBit(diameter=3 / 8, lead=1 / 16, point_length=5 / 16)
    turns = [8, 12, 16, 20, 24, 28]
    depths = [bit.depth(count, counted_from="screw") for count in turns]
    forced = sum(n * d for n, d in zip(turns, depths, strict=True)) / sum(n * n for n in turns)
    fit = fit_lead(turns, depths)
    assert fit.lead == pytest.approx(bit.lead, rel=1e-12)
    assert fit.point_length == pytest.approx(bit.point_length, rel=1e-12)
    assert forced < 0.8 * bit.lead


def test_the_stated_errors_are_those_that_many_trials_scatter_by() -> None:
    bit, dice = AugerBit(diameter=10, lead=1.5, point_length=6), random.Random(1910)
    turns = [8, 12, 16, 20, 24]
    fits = [
        fit_lead(turns, [bit.depth(count, "screw") + dice.gauss(0, 0.3) for count in turns])
        for _ in range(600)
    ]
    for found, stated in (
        ([fit.lead for fit in fits], [fit.lead_error for fit in fits]),
        ([fit.intercept for fit in fits], [fit.intercept_error for fit in fits]),
    ):
        expected = math.sqrt(statistics.fmean(error**2 for error in stated))
        assert statistics.stdev(found) == pytest.approx(expected, rel=0.1)


@pytest.mark.parametrize(
    ("turns", "depths", "told"),
    [
        ([1, 2], [1, 2], "three holes or more"),
        ([1, 2, 3], [1, 2], "for every hole"),
        ([4, 4, 4], [1, 2, 3], "fewer turns and some with more"),
        ([1, 2, math.nan], [1, 2, 3], "Hole 3"),
        ([1, 2, 3], [1, -2, 3], "Hole 2"),
        ([1, 2, 3], [3, 2, 1], "do not get deeper"),
        ([], [], "three holes or more"),
    ],
)
def test_trial_holes_that_tell_no_lead_are_refused(
    turns: list[float], depths: list[float], told: str
) -> None:
    with pytest.raises(ImpossibleShape, match=told):
        fit_lead(turns, depths)


rows = st.tuples(st.floats(0.1, 40), st.floats(1.001, 12), st.floats(0, 0.9))


@given(rows)
def test_holes_overlap_by_what_was_wanted_and_one_hole_fewer_would_not_do(
    row: tuple[float, float, float],
) -> None:
    diameter, lengths, share = row
    length, overlap = diameter * lengths, diameter * share
    centres = holes_along(length, diameter, overlap=overlap)
    gaps = [after - before for before, after in pairwise(centres)]
    assert len(centres) >= 2
    assert max(gaps) <= diameter - overlap + 1e-7 * diameter
    if len(centres) > 2:
        one_fewer = (length - diameter) / (len(centres) - 2)
        assert one_fewer > diameter - overlap


@given(rows)
def test_holes_leave_the_web_that_was_wanted_and_one_hole_more_would_not(
    row: tuple[float, float, float],
) -> None:
    diameter, lengths, share = row
    length, web = diameter * lengths, diameter * share
    assume(length >= 2 * diameter + web)
    centres = holes_along(length, diameter, web=web)
    gaps = [after - before for before, after in pairwise(centres)]
    assert min(gaps) >= diameter + web - 1e-7 * diameter
    one_more = (length - diameter) / len(centres)
    assert one_more < diameter + web


@given(rows)
def test_the_end_holes_touch_the_ends_and_the_spaces_are_equal(row: tuple[float, float, float]) -> None:
    diameter, lengths, share = row
    length = diameter * lengths
    centres = holes_along(length, diameter, overlap=diameter * share)
    assert centres[0] == diameter / 2
    assert centres[-1] == length - diameter / 2
    gaps = [after - before for before, after in pairwise(centres)]
    assert max(gaps) - min(gaps) < 1e-12 * length


def test_holes_have_one_space_fewer_than_there_are() -> None:
    # 2 in of mortise and a 1/2 in bit: 1 1/2 from the first centre to the last.
    assert holes_along(2, 0.5, overlap=0) == (0.25, 0.75, 1.25, 1.75)
    assert holes_along(2, 0.5, web=0) == (0.25, 0.75, 1.25, 1.75)
    assert len(holes_along(2, 0.5, overlap=0.01)) == 5
    assert len(holes_along(2, 0.5, web=0.01)) == 3
    assert len(holes_along(2, 0.5, overlap=0.125)) == 5
    assert len(holes_along(2, 0.5, web=0.25)) == 3


@given(st.integers(2, 40), st.floats(0.1, 40), st.floats(0, 0.9))
def test_a_row_that_comes_out_even_gets_neither_a_hole_more_nor_one_fewer(
    count: int, diameter: float, share: float
) -> None:
    even_overlap = diameter + (count - 1) * (diameter - diameter * share)
    assert len(holes_along(even_overlap, diameter, overlap=diameter * share)) == count
    even_web = diameter + (count - 1) * (diameter + diameter * share)
    assert len(holes_along(even_web, diameter, web=diameter * share)) == count


@given(st.floats(0.1, 40))
def test_one_hole_is_bored_where_it_just_fits(diameter: float) -> None:
    assert holes_along(diameter, diameter, overlap=0.1 * diameter) == (diameter / 2,)
    assert holes_along(diameter, diameter, web=0.1 * diameter) == (diameter / 2,)


@pytest.mark.parametrize(
    ("length", "diameter", "between", "told"),
    [
        (2, 0.5, {}, "Neither of overlap and web"),
        (2, 0.5, {"overlap": 0.1, "web": 0.1}, "Both of overlap and web"),
        (0.4, 0.5, {"overlap": 0.1}, "at least 0.5 long"),
        (2, 0.5, {"overlap": 0.5}, "by less than 0.5"),
        (2, 0.5, {"overlap": -0.1}, "by 0 or more"),
        (2, 0.5, {"overlap": math.nan}, "by 0 or more"),
        (2, 0.5, {"web": -0.1}, "give overlap"),
        (2, 0, {"web": 0.1}, "both must be more than 0"),
        (math.inf, 0.5, {"web": 0.1}, "both must be more than 0"),
        (2, 0.5, {"overlap": 0.49999}, "smaller overlap"),
    ],
)
def test_rows_that_cannot_be_bored_are_refused(
    length: float, diameter: float, between: dict[str, float], told: str
) -> None:
    with pytest.raises(ImpossibleShape, match=told):
        holes_along(length, diameter, **between)


def test_a_web_that_two_end_holes_cannot_leave_is_refused_with_what_would_do() -> None:
    with pytest.raises(ImpossibleShape) as refused:
        holes_along(1.125, 0.5, web=0.25)
    told = str(refused.value)
    assert "at least 1.25 long" in told and len(holes_along(1.25, 0.5, web=0.25)) == 2
    assert "a bit of 0.4375 or less" in told and len(holes_along(1.125, 0.4375, web=0.25)) == 2
    assert "a web of 0.125" in told and len(holes_along(1.125, 0.5, web=0.125)) == 2
    with pytest.raises(ImpossibleShape, match="let them overlap"):
        holes_along(0.75, 0.5, web=0.25)


@given(rows)
def test_the_ends_are_bored_first_and_every_hole_once(row: tuple[float, float, float]) -> None:
    diameter, lengths, share = row
    centres = holes_along(diameter * lengths, diameter, overlap=diameter * share)
    told = boring_order(centres)
    assert sorted(told.order) == list(centres)
    assert {told.order[0], told.order[1]} == {centres[0], centres[-1]}
    assert tuple(centres[number - 1] for number in told.numbers) == told.order


@given(rows)
def test_a_remark_is_made_exactly_where_the_screw_falls_into_an_earlier_hole(
    row: tuple[float, float, float],
) -> None:
    diameter, lengths, share = row
    centres = holes_along(diameter * lengths, diameter, overlap=diameter * share)
    spacing = centres[1] - centres[0]
    spaces_to_the_rim = diameter / 2 / spacing
    assume(abs(spaces_to_the_rim - round(spaces_to_the_rim)) > 1e-6)
    told = boring_order(centres)
    falls_in = [
        number
        for place, (number, centre) in enumerate(zip(told.numbers, told.order, strict=True))
        if any(abs(centre - earlier) < diameter / 2 for earlier in told.order[:place])
    ]
    assert len(told.remarks) == len(falls_in)
    assert all(
        f"hole {number} finds no wood" in said for number, said in zip(falls_in, told.remarks, strict=True)
    )
    if spacing > diameter / 2:
        assert not told.remarks


def test_wide_overlaps_leave_the_screw_no_wood() -> None:
    told = boring_order(holes_along(1, 0.5, overlap=0.375))
    assert told.numbers == (1, 5, 3, 2, 4)
    # Hole 3 would start on the rim of hole 1, half a bit away: half its screw in the air is no hold either.
    assert len(told.remarks) == 3
    assert "overlap less than 0.25" in told.remarks[0]


def test_one_hole_is_bored_first_and_last() -> None:
    assert boring_order([0.25]).numbers == (1,)


def test_the_bit_may_be_named_where_the_row_does_not_begin_at_its_end() -> None:
    assert boring_order([3, 4, 5], diameter=0.5).remarks == ()
    assert len(boring_order([3, 3.2, 4], diameter=0.5).remarks) == 1


@pytest.mark.parametrize(
    ("centres", "diameter"), [([], 1), ([1, 1], 1), ([math.nan], 1), ([0, 1], None), ([1], -1)]
)
def test_a_row_that_is_no_row_has_no_order(centres: list[float], diameter: float | None) -> None:
    with pytest.raises(ImpossibleShape):
        boring_order(centres, diameter)


@pytest.mark.parametrize(("holes", "share"), [(5, 0.6), (3, 0.5)])
def test_how_often_the_true_lead_lies_within_one_standard_error_as_page_08_says(
    holes: int, share: float
) -> None:
    # Student's t with two degrees of freedom fewer than there are holes (scipy.stats, as reference library).
    within = 1 - 2 * t.sf(1, holes - 2)
    assert within == pytest.approx(share, abs=0.02)


@pytest.mark.parametrize("counted_from", ["lips", "screw"])
def test_who_bores_too_far_is_told_to_stop_a_whole_turn_before_the_point_comes_through(
    counted_from: str,
) -> None:
    bed = Piece.demo("cat-bed")
    drawing = bored_hole.drawing(bed, turns=24.0, counted_from=counted_from)
    (fault,) = drawing.faults
    stop = int(re.search(r"Stop at (\d+) turns", fault)[1])  # type: ignore[index]
    bit, post = bed.auger_bit(), bed.post.square
    assert bit.tip_depth(stop + 1, counted_from) <= post
    assert bit.tip_depth(stop + 2, counted_from) > post
