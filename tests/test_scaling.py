"""A piece at another size than its drawing: scales, kept stock, marks, plates and dividers."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import curve_fit

from woodmath import plate_scale as plate
from woodmath import proportional_dividers as dividers
from woodmath import running_marks as running
from woodmath import scaling
from woodmath.errors import ImpossibleShape, UnknownName, WoodmathError
from woodmath.rule import Rule

SIXTEENTHS, HALF_MILLIMETRES = Rule.inches(16), Rule.millimetres(0.5)
lengths = st.lists(st.floats(0.3, 40), min_size=1, max_size=14)
scales = st.floats(0.3, 4)


@pytest.mark.parametrize(
    "derivation",
    [
        scaling.scale_derivation,
        scaling.inside_derivation,
        scaling.inside_ratio_derivation,
        scaling.mass_derivation,
        scaling.board_mass_derivation,
        scaling.slenderness_derivation,
        scaling.paper_step_derivation,
        running.drift_derivation,
        plate.plate_derivation,
        plate.bench_derivation,
        dividers.opening_derivation,
        dividers.pivot_derivation,
    ],
)
def test_every_step_follows(derivation):
    assert_every_step_follows(derivation())


@pytest.mark.parametrize(
    ("text", "scale"),
    [("3/2", "3/2"), ("1:2", "1/2"), ("1.75", "7/4"), ("175 %", "7/4"), ("2", "2"), (" 5 : 3 ", "5/3")],
)
def test_a_scale_is_read_exactly_as_it_is_written(text, scale):
    assert scaling.read_scale(text) == Fraction(scale)


@pytest.mark.parametrize("text", ["", "large", "0", "-2", "1:0", "1/2/3", "nan", "inf", "1e9"])
def test_what_is_no_scale_is_refused_with_examples(text):
    with pytest.raises(WoodmathError, match=r"3/2|scale"):
        scaling.read_scale(text)


# ISO 5455:1979, clause 5.1, recommended scales (read), extended by powers of ten as the clause says.
RECOMMENDED = [50, 20, 10, 5, 2, 1, *(Fraction(1, n) for n in (2, 5, 10, 20, 50, 100, 200, 500, 1000, 10000))]


@given(st.floats(1, 5000), st.floats(10, 400))
def test_the_recommended_scale_is_the_largest_of_the_standard_that_fits(full, room):
    found = scaling.recommended_scale(full=full, room=room)
    assert found * Fraction(full) <= Fraction(room) * (1 + Fraction(1, 10**9))
    larger = [scale for scale in RECOMMENDED if scale > found]
    assert all(scale * full > room * (1 - 1e-9) for scale in larger)
    digits = str(max(found.numerator, found.denominator)).rstrip("0")
    assert digits in ("1", "2", "5", "")


@pytest.mark.parametrize(
    ("scale", "written"),
    [(Fraction(1, 2), "SCALE 1:2"), (Fraction(1, 20), "SCALE 1:20"), (1, "SCALE 1:1"), (5, "SCALE 5:1")],
)
def test_a_scale_is_named_by_the_word_and_the_ratio(scale, written):
    # EN ISO 5455:1994, clause 3: the word SCALE, or its translation, then the ratio (read).
    assert scaling.scale_name(scale) == written
    assert scaling.read_scale(written) == scale


def test_a_copier_goes_from_paper_to_paper_by_the_root_of_two():
    step = float(scaling.paper_step_derivation().result.rhs)
    # ISO 216: A3 is 297 by 420, A4 210 by 297 mm (read); copiers print 141 and 71 percent (read).
    for large, small in ((420, 297), (297, 210), (841, 594), (1189, 841)):
        assert large / small == pytest.approx(step, abs=0.002)
    assert 100 * step == pytest.approx(141, abs=0.5)
    assert 100 / step == pytest.approx(71, abs=0.5)


@given(st.floats(4, 40), st.floats(0.2, 1.5), scales)
def test_the_inside_is_what_two_kept_boards_leave_of_the_scaled_outside(outside, stock, scale):
    if scale * outside <= 2 * stock:
        with pytest.raises(ImpossibleShape):
            scaling.inside_after(outside, stock, scale)
        return
    inside = scaling.inside_after(outside, stock, scale)
    assert inside == pytest.approx(scale * outside - 2 * stock)
    # Surprise 22: it is the scale times the inside only where nothing was scaled.
    if outside > 2 * stock:
        textbook = scale * (outside - 2 * stock)
        assert (inside > textbook) == (scale > 1) or inside == pytest.approx(textbook)


@given(
    scales,
    st.lists(st.tuples(st.floats(0.1, 10), st.sampled_from([("length",), ("length", "width")])), min_size=1),
)
def test_the_mass_of_a_piece_with_kept_stock_is_never_the_cube_of_the_scale(scale, parts):
    ratio = scaling.total_mass_ratio(parts, scale)
    assert min(scale, scale**2) - 1e-9 <= ratio <= max(scale, scale**2) + 1e-9
    if abs(scale - 1) > 0.05:
        assert ratio != pytest.approx(scale**3, rel=1e-3)


@given(lengths, st.sampled_from([SIXTEENTHS, HALF_MILLIMETRES]))
def test_running_marks_keep_every_line_within_half_a_mark(parts, rule):
    found = running.marks_along(parts, rule)
    assert found.furthest <= rule.one_mark / 2 * (1 + 1e-9)
    assert math.fsum(found.parts) == pytest.approx(found.marks[-1])


@given(lengths, st.sampled_from([SIXTEENTHS, HALF_MILLIMETRES]))
def test_parts_that_sum_add_up_to_the_rounded_whole_and_are_each_within_a_mark(parts, rule):
    found = running.parts_that_sum(parts, rule)
    assert math.fsum(found) == pytest.approx(rule.nearest(math.fsum(parts)), abs=1e-9)
    for part, exact in zip(found, parts, strict=True):
        assert abs(part - exact) <= rule.one_mark * (1 + 1e-9)


def test_rounding_each_part_by_itself_can_drift_by_half_a_mark_for_each():
    # Surprise 23: eight parts that each lie just over half a mark: 8/32 in all (arithmetic, COMP).
    part = 1 + 1 / 32 + 1e-6
    assert running.rounded_alone([part] * 8, SIXTEENTHS).errors[-1] == pytest.approx(8 / 32, abs=1e-4)
    assert running.marks_along([part] * 8, SIXTEENTHS).furthest <= 1 / 32


@given(lengths, st.sampled_from([SIXTEENTHS, HALF_MILLIMETRES]))
def test_rounding_each_part_by_itself_never_drifts_further_than_the_derivation_says(parts, rule):
    at_most = running.drift_derivation().function("drift")(count=len(parts), mark=rule.one_mark)
    assert running.rounded_alone(parts, rule).furthest <= at_most * (1 + 1e-9)


@given(st.sampled_from([2, 4, 8, 16, 32, 64]), st.floats(0, 60))
def test_a_rounded_length_errs_by_half_a_division_at_most(divisions, length):
    # Half the smallest fraction, 1/16 to 0.03125 and 1/64 to 0.0078125 in (arithmetic, COMP); engineers' forum
    # eng-tips.com, thread 85074, on implied tolerance: 5/32 is meant within 1/64 (read).
    (error,) = running.marks_along([length], Rule.inches(divisions)).errors
    assert abs(error) <= {16: 0.03125, 32: 1 / 64, 64: 0.0078125}.get(divisions, 0.5 / divisions) + 1e-12


def test_parts_that_sum_do_not_bound_the_lines_between_them():
    part = 4.175
    summed = running.marked_to_sum([part] * 6, SIXTEENTHS)
    assert abs(summed.errors[-1]) <= 1 / 32
    assert summed.furthest > 1 / 32


@given(st.floats(5, 60), st.floats(1, 12), st.floats(0.001, 0.05), st.floats(0.3, 8))
def test_a_plate_scale_carries_its_errors_as_thrown_ones_do(known, measured, error, wanted):
    found = plate.plate_scale(known, measured, reading_error=error).bench_size(wanted)
    assert found.size == pytest.approx(known / measured * wanted)
    # First order, by hand: a product and a quotient add their relative errors in quadrature.
    relative = math.hypot(error / measured, error / wanted)
    assert found.error == pytest.approx(found.size * relative, rel=1e-6)
    assert found.error <= found.at_worst


def test_a_thousand_thrown_readings_scatter_as_the_plate_scale_says():
    dice = np.random.default_rng(5)
    known, measured, wanted, error = 18.0, 4.125, 1.8125, 1 / 32
    thrown = (
        known
        / (measured + error * dice.standard_normal(20000))
        * (wanted + error * dice.standard_normal(20000))
    )
    found = plate.plate_scale(known, measured, reading_error=error).bench_size(wanted)
    assert found.error == pytest.approx(float(np.std(thrown)), rel=0.03)


def test_several_known_lengths_weigh_by_their_errors_as_a_weighted_fit_does():
    known = [plate.KnownLength(18, 4.49, 0, 1 / 32), plate.KnownLength(8, 2.01, 0, 1 / 64)]
    found = plate.combined_scale(known)
    scale = np.array([each.scale for each in known])
    errors = np.array([each.scale * each.reading_error / each.measured for each in known])
    # scipy's least-squares fit of one constant to measurements with known errors.
    fitted, covariance = curve_fit(
        lambda _, constant: np.full(2, constant), np.arange(2), scale, sigma=errors, absolute_sigma=True
    )
    assert found.scale == pytest.approx(fitted[0], rel=1e-7)
    assert found.error == pytest.approx(math.sqrt(covariance[0, 0]), rel=1e-5)
    assert not found.remarks


def test_a_plate_scale_shows_its_error_and_what_does_not_fit():
    askew = plate.combined_scale(
        [plate.KnownLength(18, 4.5, 0, 1 / 32, "across"), plate.KnownLength(8, 2.3, 0, 1 / 32, "up")]
    )
    shown = askew._repr_markdown_()
    assert f"{askew.scale:.3f}" in shown
    assert f"within {askew.error:.3f}" in shown
    assert "One runs across and one up: the paper shrank one way" in shown
    assert "within" not in plate.plate_scale(18, 4.5)._repr_markdown_()


def test_the_longest_known_length_is_the_surest():
    errors = [plate.plate_scale(4 * page, page, reading_error=1 / 32).error for page in (1, 2, 4, 8)]
    assert errors == sorted(errors, reverse=True)
    assert errors[0] == pytest.approx(8 * errors[-1])


def test_a_page_that_was_photographed_askew_is_found_out():
    known = [plate.KnownLength(18, 4.5, 0, 1 / 32), plate.KnownLength(8, 2.3, 0, 1 / 32)]
    assert plate.combined_scale(known).remarks
    assert not plate.combined_scale(known[:1] * 2).remarks


@given(st.floats(1, 5), st.floats(6, 15), st.floats(0.2, 1.9))
def test_the_pivot_of_the_dividers_makes_two_similar_triangles(ratio, length, narrow):
    place = dividers.pivot_place(ratio, length)
    assert place / (length - place) == pytest.approx(ratio) or (length - place) / place == pytest.approx(
        ratio
    )
    assert dividers.wide_opening(narrow, ratio, length) == pytest.approx(ratio * narrow)


@given(st.floats(1.2, 4), st.floats(6, 15), st.floats(0.01, 0.2))
def test_a_pivot_out_of_place_turns_the_ratio_by_as_much_as_measuring_both_arms_says(ratio, length, out):
    place = length * ratio / (1 + ratio)
    arms = [(place + off, length - place - off) for off in (-out, out)]
    worst = max(abs(long / short - ratio) for long, short in arms)
    assert dividers.ratio_error(ratio, length, out) == pytest.approx(worst, rel=1e-6)


def test_a_direction_that_a_part_does_not_have_is_named():
    with pytest.raises(UnknownName, match="height"):
        scaling.mass_ratio(2, ("length", "height"))


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: scaling.scale_for(known=0, wanted=3),
        lambda: scaling.inside_after(outside=1, stock=1, scale=1),
        lambda: running.marks_along([], SIXTEENTHS),
        lambda: running.marks_along([-1], SIXTEENTHS),
        lambda: plate.plate_scale(18, 0),
        lambda: plate.combined_scale([]),
        lambda: dividers.pivot_place(0, 6),
        lambda: dividers.wide_opening(narrow_opening=5, ratio=2, length=6),
        lambda: dividers.ratio_error(ratio=2, length=6, pivot_error=2),
        lambda: scaling.total_mass_ratio([], 2),
        lambda: scaling.recommended_scale(full=1e6, room=10),
        lambda: plate.combined_scale([plate.KnownLength(18, 4, 0, 0.03), plate.KnownLength(8, 2)]),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(wrong):
    with pytest.raises(WoodmathError) as told:
        wrong()
    assert str(told.value).endswith(".")
