"""The rule reads what is written at the bench, marks the nearest line, and refuses the rest by name."""

import dataclasses
import math
import pickle
import re
import timeit
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction
from functools import partial

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from woodmath.errors import BadLength
from woodmath.fractions_in_print import set_fractions
from woodmath.graduations import INCH_DIVISIONS
from woodmath.rule import SAME_LENGTH, Rule
from woodmath.rule_reading import LONGEST_TEXT

SIXTEENTHS = Rule.inches(16)
HALF_MILLIMETRES = Rule.millimetres(0.5)
SPACINGS = (0.01, 0.02, 0.025, 0.05, 0.1, 0.125, 0.2, 0.25, 0.5, 1, 2, 3, 5, 7, 10, 50, 1000)
RULES = [Rule.inches(divisions) for divisions in INCH_DIVISIONS] + [
    Rule.millimetres(size) for size in SPACINGS
]

rules = st.sampled_from(RULES)
lengths = st.one_of(
    st.floats(0, 3937),
    st.floats(0, 20),
    st.fractions(0, 100, max_denominator=256).map(float),
    st.decimals(0, 1000, places=3).map(float),
)


# What others have published


@pytest.mark.parametrize(
    ("run", "rise", "printed"),
    [
        (12, 24 / 4, "13' 5\""),
        (11, 22 / 3, "13' 2 8/12\""),
        (7, 14 * 5 / 8, "11' 2 6/12\""),
    ],
)
def test_rafters_come_out_in_twelfths_as_printed(run: float, rise: float, printed: str) -> None:
    # Noyes, Handwork in Wood, 1910, ch. IV, steel square: a pitch is the rise over the whole span (READ).
    twelfths = Rule.inches(12)
    assert twelfths.nearest(12 * math.hypot(run, rise)) == twelfths.read(printed)


@pytest.mark.parametrize(("number", "size"), [(9, "9/16"), (6, "3/8"), (4, "1/4"), (16, "1")])
def test_an_auger_bits_number_counts_sixteenths(number: int, size: str) -> None:
    # Noyes, ch. IV, "Boring tools"; US Army EN5155, p. 2-1 (READ).
    assert SIXTEENTHS.mark(SIXTEENTHS.length(number)) == size
    assert SIXTEENTHS.marks(SIXTEENTHS.read(size)) == number


def test_the_set_of_thirteen_bits_holds_thirty_two_and_a_half_quarters() -> None:
    # Griffith, Essentials of Woodworking: 1/4 to 1 in by sixteenths; the set's label says 32 1/2 (READ).
    total = sum(SIXTEENTHS.length(number) for number in range(4, 17))
    assert total / SIXTEENTHS.read("1/4") == SIXTEENTHS.read("32 1/2")


def test_a_mortise_five_times_as_deep_as_wide_reads_as_printed() -> None:
    # Port Townsend school notes: 5/16 wide, 15/16 deep at least, 1-9/16 at most (READ).
    width = SIXTEENTHS.read("5/16")
    assert (3 * width, 5 * width) == (SIXTEENTHS.read("15/16"), SIXTEENTHS.read("1-9/16"))


def test_a_dovetail_of_five_eighths_in_three_inches_is_one_in_four_point_eight() -> None:
    # Noyes, no. 48: slope triangle 3 : 5/8 = 1 : 4.8 (READ).
    assert SIXTEENTHS.read("3") / SIXTEENTHS.read("5/8") == 4.8


def test_the_handbooks_board_has_the_same_width_in_both_units() -> None:
    # USDA Wood Handbook (GTR-190), ch. 13, worked example: 232 mm (9-1/8 in) (from memory).
    assert Rule.millimetres(1).mark(Rule.millimetres(1).read("9-1/8 in")) == "232"
    assert Rule.inches(8).mark(Rule.inches(8).read("232 mm")) == "9 1/8"


def test_an_inch_is_exactly_25_4_millimetres() -> None:
    # International inch, 1959 (from memory).
    assert HALF_MILLIMETRES.read('1"') == 25.4
    assert SIXTEENTHS.read("25.4 mm") == 1.0
    assert (SIXTEENTHS.millimetres_per_unit, HALF_MILLIMETRES.millimetres_per_unit) == (25.4, 1.0)


@pytest.mark.parametrize("divisions", [100, 32, 16, 12, 10, 8, 50])
def test_every_graduation_of_a_steel_square_and_a_fifty_scale_is_a_rule(divisions: int) -> None:
    # Noyes, ch. IV; scale of fifty: US Army OD1641, p. 22 (READ).
    assert Rule.inches(divisions).mark_size == Fraction(1, divisions)


@pytest.mark.parametrize(("value", "printed"), [(0.5, "0.5"), (125.0, "125"), (12500.0, "12500")])
def test_millimetres_are_written_as_drafting_asks(value: float, printed: str) -> None:
    # 0.5 not .5; 125 not 125.0; no digit grouping: Exploring Drafting, 2018, p. 268 (READ).
    assert HALF_MILLIMETRES.mark(value) == printed


# Reading


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("7 5/8", 7.625),
        ("7-5/8", 7.625),
        ("7\u20115/8", 7.625),
        ("7\u20135/8", 7.625),
        ('7 5/8"', 7.625),
        ("7 5/8''", 7.625),
        ("7 5/8\u2033", 7.625),
        ("7 5/8\u201d", 7.625),
        ("7⅝", 7.625),
        ("7 ⅝", 7.625),
        ("7-⅝", 7.625),
        ("7 5\u20448", 7.625),
        ("7 5 / 8", 7.625),
        ("7\u00a05/8", 7.625),
        ("7\u20095/8 in", 7.625),
        ("  7   5/8  ", 7.625),
        ("7\t5/8\n", 7.625),
        ("7.625", 7.625),
        ("7 5/8 in", 7.625),
        ("7 5/8in.", 7.625),
        ("7 5/8 Inches", 7.625),
        ("61/8", 7.625),
        ("3/8", 0.375),
        ("³\u2044₁₆", 0.1875),
        ("1³\u2044₁₆", 1.1875),
        ("1 ³/₁₆", 1.1875),
        ("⅓", 1 / 3),
        (".5", 0.5),
        ("7.", 7.0),
        ("0", 0.0),
        ("0/8", 0.0),
        ("007", 7.0),
        ("1' 2 1/4\"", 14.25),
        ("1'-2 1/4\"", 14.25),
        ("1' - 2 1/4", 14.25),
        ("1\u2032 2¼\u2033", 14.25),
        ("1\u2019 2 1/4\u201d", 14.25),
        ("1 ft 2 1/4 in", 14.25),
        ("1'2", 14.0),
        ("1'", 12.0),
        ("2 1/2 feet", 30.0),
        ("50.8 mm", 2.0),
        ("50.8MM", 2.0),
        ("5.08 cm", 2.0),
        ("1.27 m", 50.0),
    ],
)
def test_a_length_is_read_as_the_bench_writes_it(text: str, inches: float) -> None:
    assert SIXTEENTHS.read(text) == inches


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("194 mm", 194.0),
        ("19.4 cm", 194.0),
        ("0.194 metres", 194.0),
        ("1.2 m", 1200.0),
        ("194", 194.0),
        ("7 5/8 in", 193.675),
        ('7⅝"', 193.675),
        ("1' 2 1/4\"", 361.95),
        ("7 1/2", 7.5),
    ],
)
def test_a_rule_in_millimetres_reads_both_units(text: str, millimetres: float) -> None:
    assert HALF_MILLIMETRES.read(text) == millimetres


@given(
    rule=rules,
    whole=st.integers(0, 3000),
    bottom=st.integers(2, 128),
    data=st.data(),
    slash=st.sampled_from(["/", "\u2044", "\u2215", " / "]),
    join=st.sampled_from([" ", "-", "  ", "\u00a0", "\u202f", "\u2010"]),
    unit=st.booleans(),
)
def test_a_whole_and_a_fraction_are_their_sum_however_joined(
    rule: Rule, whole: int, bottom: int, data: st.DataObject, slash: str, join: str, unit: bool
) -> None:
    top = data.draw(st.integers(0, bottom - 1))
    text = f"{whole}{join}{top}{slash}{bottom}" + (f" {rule.unit_mark}" if unit else "")
    assert rule.read(text) == float(whole + Fraction(top, bottom))


@given(text=st.decimals(0, 3000, places=5).map(lambda decimal: f"{decimal:f}"))
def test_a_decimal_is_read_to_its_last_place(text: str) -> None:
    assert SIXTEENTHS.read(text) == HALF_MILLIMETRES.read(text) == float(text)


@given(feet=st.integers(0, 300), sixteenths=st.integers(0, 191))
def test_feet_and_inches_add_up(feet: int, sixteenths: int) -> None:
    inches = SIXTEENTHS.mark(sixteenths / 16)
    assert SIXTEENTHS.read(f"{feet}' {inches}\"") == 12 * feet + sixteenths / 16


# Refusing


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "nothing is written there"),
        ("   ", "nothing is written there"),
        ("-3", "negative"),
        ("-", "“-” could be a minus"),
        ("- 3 1/2", "negative"),
        ("\u22123", "negative"),
        ("\u20133", "negative"),
        ("inf", "infinite"),
        ("-Infinity", "infinite"),
        ("\u221e", "infinite"),
        ("NaN", "not a number"),
        ("3/0", "“3/0” divides by zero"),
        ("1 ³\u2044₀", "divides by zero"),
        ("7 9/8", "“9/8” after a whole number must be less than 1; together they would be 8 1/8"),
        ("7 8/8", "together they would be 8."),
        ("7 4/3", "together they would be 8 1/3."),
        ("7 8", "“8” is one length too many"),
        ("7 5/8 3", "“3” is one length too many"),
        ("7.5 1/2", "“1/2” is one length too many"),
        ("7 in 5/8", "“5/8” is one length too many"),
        ("1 m 20 cm", "“20 cm” is one length too many"),
        ("1 ft 20 mm", "“20 mm” is one length too many"),
        ('1\' 2" 3"', '“3"” is one length too many'),
        ("1' 12\"", '“12"” after feet is a foot or more'),
        ("2 1/2' 3\"", "“2 1/2'” before inches is not a whole number of feet"),
        ("9" * 41, "it has 41 characters, and a length has 40 at most"),
        ("100.1 m", "longer than 100 m"),
        ("4000 in", "longer than 100 m"),
        ("1" * 40, "longer than 100 m"),
        ("1,5", "“1,5” has a comma; a decimal is written with a point (1.5)"),
        ("12,500 mm", "“12,500” has a comma"),
        ("7, 8", "“,” has no place in a length"),
        ("7\n5/8", "more than one line"),
        ("7 5/x", "“/x” is no fraction"),
        ("7 5/", "“/” is no fraction"),
        ("/8", "“/8” is no fraction"),
        ("1/2/3", "“/3” is no fraction"),
        ("1.5/2", "“/2” is no fraction"),
        ("1/2.5", "“.5” has no place in a length"),
        ("1.2.3", "“.3” has no place in a length"),
        ("7 - 5/8", "“-” could be a minus"),
        ("7-8", "“-8” could be a minus"),
        ("7 in - 5/8", "“-” could be a minus"),
        ("7 A\x08", "“A\ufffd” is not a unit"),
        ("7\u22125/8", "minus sign"),
        ("7+5/8", "“+5/8” has no place in a length"),
        ("1e3", "“e3” is not a unit of length that is known here"),
        ("7 cubits", "“cubits” is not a unit of length that is known here; in, ft, mm, cm and m are"),
        ("about 7", "“about” is not a unit"),
        ("in", "“in” has no number before it"),
        ('"', '“"” has no number before it'),
        ("1_000", "“_000” has no place in a length"),
        ("\uff17", "fullwidth digit seven), and figures are 0 to 9"),
        ("\u0667", "arabic-indic digit seven), and figures are 0 to 9"),
        ("\u2167", "roman numeral eight), and figures are 0 to 9"),
        ("7²", "superscript two), and figures are 0 to 9"),
        ("½½", "vulgar fraction one half"),
        ("3\u2044₁₆", "subscript one"),
        ("7\u200b5/8", "(zero width space)"),
        ("\ue0007", "(one without a name)"),
    ],
)
def test_what_is_no_length_is_refused_with_the_reason_and_its_part(text: str, reason: str) -> None:
    for rule in (SIXTEENTHS, HALF_MILLIMETRES):
        with pytest.raises(BadLength) as refusal:
            rule.read(text)
        assert reason in str(refusal.value)


@pytest.mark.parametrize(
    "thing", [None, 7, 7.625, True, b"7 5/8", ["7"], pytest.param(10**5000, id="five thousand digits")]
)
def test_what_is_not_text_is_refused_and_not_converted(thing: object) -> None:
    with pytest.raises(BadLength, match=f"it is not text but {type(thing).__name__}"):
        SIXTEENTHS.read(thing)  # type: ignore[arg-type]


def test_a_page_pasted_by_mistake_is_named_by_its_length_and_shown_by_its_beginning() -> None:
    with pytest.raises(BadLength, match="100000 characters") as refusal:
        SIXTEENTHS.read("Cut the tenon first. " + "x" * 99979)
    assert str(refusal.value).startswith("“Cut the tenon first.…”")
    assert len(str(refusal.value)) < 250


_written = st.text(
    alphabet="0123456789 /.-'\"⅝³₁\u2044\u2032\u2033,inmcft\u00a0\u2212", max_size=LONGEST_TEXT + 5
)


@given(rule=rules, text=st.one_of(_written, st.text(max_size=60)))
@example(SIXTEENTHS, "\ud800")
@example(SIXTEENTHS, "\u3000")
@example(SIXTEENTHS, "7\u30005/8\u2028")
def test_any_text_is_a_length_on_the_rule_or_one_printable_sentence(rule: Rule, text: str) -> None:
    try:
        length = rule.read(text)
    except BadLength as refusal:
        message = str(refusal)
        assert message.isprintable() and len(message) < 400
        examples = re.search(r"for example (.+) or (.+)\.$", message)
        assert examples and all(rule.read(written) > 0 for written in examples.groups())
    else:
        assert 0 <= length * rule.millimetres_per_unit <= 100_000 + 1000
        assert any(character.isnumeric() for character in text)


@pytest.mark.parametrize("rule", RULES, ids=repr)
def test_both_lengths_offered_as_examples_can_be_read_and_the_first_is_a_mark(rule: Rule) -> None:
    with pytest.raises(BadLength) as refusal:
        rule.read("x")
    first, second = str(refusal.value).rsplit("for example ", 1)[1].removesuffix(".").split(" or ")
    assert rule.mark(rule.read(first)) == first
    assert rule.read(second) > 0


@pytest.mark.parametrize(
    ("value", "reason"),
    [
        (-1.0, "-1 in is negative"),
        (-2e-9, "negative"),
        (float("-inf"), "negative"),
        (float("inf"), "infinite"),
        (float("nan"), "not a number"),
        (1e9, "1e+09 in is too long"),
        (3937.1, "too long"),
        (10**400, "infinite"),
        ("7 5/8", "not a number but str"),
        (None, "not a number but NoneType"),
        (True, "not a number but bool"),
        (1j, "not a number but complex"),
    ],
)
def test_no_mark_stands_for_what_is_no_length(value: float, reason: str) -> None:
    for use in (
        SIXTEENTHS.mark,
        SIXTEENTHS.nearest,
        SIXTEENTHS.marks,
        lambda length: SIXTEENTHS.convert(length, HALF_MILLIMETRES),
    ):
        with pytest.raises(BadLength, match=re.escape(reason)):
            use(value)


@pytest.mark.parametrize(
    "marks", [-1, 62994, pytest.param(10**5000, id="five thousand digits"), 1.5, "3", None]
)
def test_no_length_stands_at_what_is_no_number_of_marks(marks: int) -> None:
    with pytest.raises(BadLength, match="whole marks from 0 to 62993"):
        SIXTEENTHS.length(marks)


@pytest.mark.parametrize(
    "make",
    [
        lambda: Rule.inches(0),
        lambda: Rule.inches(7),
        lambda: Rule.inches(-16),
        lambda: Rule.inches(256),
        lambda: Rule.inches("16"),  # type: ignore[arg-type]
        lambda: Rule.millimetres(0),
        lambda: Rule.millimetres(-1),
        lambda: Rule.millimetres(0.3),
        lambda: Rule.millimetres(1.5),
        lambda: Rule.millimetres(0.001),
        lambda: Rule.millimetres(1001),
        lambda: Rule.millimetres(Fraction(1, 3)),
        lambda: Rule.millimetres(float("nan")),
        lambda: Rule.millimetres(float("inf")),
        lambda: Rule.millimetres(10**400),
        lambda: Rule.millimetres(None),  # type: ignore[arg-type]
        lambda: Rule("inch", Fraction(1, 7)),
        lambda: Rule("inch", 0.5),  # type: ignore[arg-type]
        lambda: Rule("cubit", Fraction(1)),  # type: ignore[arg-type]
    ],
)
def test_a_rule_that_nobody_carries_is_refused_with_those_that_are(make: object) -> None:
    with pytest.raises(BadLength, match=r"There is no rule with .+ 1, 2, 4, 8, .+ Rule\.millimetres\(0\.5\)"):
        make()  # type: ignore[operator]


# Marking


@pytest.mark.parametrize(
    ("rule", "value", "marked"),
    [
        (SIXTEENTHS, 7.6419, "7 5/8"),
        (SIXTEENTHS, 0, "0"),
        (SIXTEENTHS, 0.01, "0"),
        (SIXTEENTHS, 0.375, "3/8"),
        (SIXTEENTHS, 6.99, "7"),
        (SIXTEENTHS, 7.65625, "7 11/16"),
        (SIXTEENTHS, Fraction(61, 8), "7 5/8"),
        (Rule.inches(1), 7.5, "8"),
        (Rule.inches(12), 2 + 8 / 12, "2 2/3"),
        (Rule.inches(128), 7 + 127 / 128, "7 127/128"),
        (Rule.inches(10), 7.64, "7.6"),
        (Rule.inches(50), 7.64, "7.64"),
        (Rule.inches(100), 7.05, "7.05"),
        (HALF_MILLIMETRES, 193.75, "194"),
        (HALF_MILLIMETRES, 193.74, "193.5"),
        (Rule.millimetres(0.1), 0.15, "0.2"),
        (Rule.millimetres(0.1), 0.25, "0.3"),
        (Rule.millimetres(0.125), 0.126, "0.125"),
        (Rule.millimetres(0.01), 0.0649, "0.06"),
        (Rule.millimetres(5), 12.5, "15"),
        (Rule.millimetres(1000), 500, "1000"),
    ],
)
def test_a_length_is_marked_at_the_nearest_line_reduced(rule: Rule, value: float, marked: str) -> None:
    assert rule.mark(value) == marked


@pytest.mark.parametrize(
    ("rule", "value", "marked"),
    [
        (SIXTEENTHS, 7.6419, "7 5/8 in and 0.017 over"),
        (SIXTEENTHS, 7.615, "7 5/8 in and 0.01 under"),
        (SIXTEENTHS, 7.625, "7 5/8 in"),
        (SIXTEENTHS, 7.625 + 1e-12, "7 5/8 in"),
        (SIXTEENTHS, 7.62501, "7 5/8 in and less than 0.001 over"),
        (SIXTEENTHS, 0.02, "0 in and 0.02 over"),
        (HALF_MILLIMETRES, 193.675, "193.5 mm and 0.175 over"),
        (HALF_MILLIMETRES, 194, "194 mm"),
        (Rule.millimetres(10), 194, "190 mm and 4 over"),
    ],
)
def test_what_was_rounded_away_is_said_on_request(rule: Rule, value: float, marked: str) -> None:
    assert rule.mark(value, unit=True, remainder=True) == marked
    assert rule.mark(value, unit=True) == marked.split(" and ")[0]
    assert rule.mark(value, remainder=True) == marked.replace(f" {rule.unit_mark}", "")


@given(rule=rules, value=lengths)
def test_reading_a_mark_gives_the_nearest_mark(rule: Rule, value: float) -> None:
    nearest = rule.nearest(value)
    assert rule.read(rule.mark(value)) == nearest
    assert rule.read(rule.mark(value, unit=True)) == nearest
    assert rule.read(set_fractions(rule.mark(value))) == nearest
    assert rule.read(set_fractions(rule.mark(value, unit=True))) == nearest


@given(rule=rules, share=st.floats(0, 1))
@example(Rule.inches(100), 1.0)
@example(Rule.millimetres(7), 1.0)
def test_this_holds_up_to_the_end_of_the_longest_rule(rule: Rule, share: float) -> None:
    value = share * 100_000 / rule.millimetres_per_unit
    assert rule.read(rule.mark(value)) == rule.nearest(value)
    assert rule.read("100 m") == pytest.approx(100_000 / rule.millimetres_per_unit)


@given(rule=rules, value=lengths)
def test_the_nearest_mark_is_never_further_than_half_a_mark(rule: Rule, value: float) -> None:
    nearest = rule.nearest(value)
    assert abs(Fraction(nearest) - Fraction(value)) <= rule.mark_size / 2 + Fraction(2 * SAME_LENGTH)
    assert rule.nearest(nearest) == nearest == rule.length(rule.marks(value))


@given(rule=rules, value=lengths)
def test_rounding_agrees_with_decimal_arithmetic(rule: Rule, value: float) -> None:
    # Python's decimal module, by another author's rounding: half up, 60 places.
    with localcontext() as context:
        context.prec = 60
        steps = Decimal(value) * rule.mark_size.denominator / rule.mark_size.numerator
        assume(abs(steps % 1 - Decimal("0.5")) > Decimal("1e-6"))
        assert rule.marks(value) == steps.quantize(Decimal(1), rounding=ROUND_HALF_UP)


@given(rule=rules, marks=st.integers(0, 90), noise=st.integers(-3, 3))
def test_half_a_mark_rounds_up_whatever_the_noise_in_the_last_binary_places(
    rule: Rule, marks: int, noise: int
) -> None:
    half = (marks + 0.5) * rule.one_mark
    for _ in range(abs(noise)):
        half = math.nextafter(half, math.copysign(math.inf, noise))
    assert rule.marks(half) == marks + 1
    assert rule.marks(half - 3 * SAME_LENGTH) == marks
    assert rule.marks(half + 3 * SAME_LENGTH) == marks + 1


@given(rule=rules, one=lengths, other=lengths)
def test_a_longer_length_never_has_the_shorter_mark(rule: Rule, one: float, other: float) -> None:
    assert rule.marks(min(one, other)) <= rule.marks(max(one, other))


@given(rule=rules, marks=st.integers(0, 100))
def test_marks_and_lengths_are_each_others_way_back(rule: Rule, marks: int) -> None:
    assert rule.marks(rule.length(marks)) == marks
    assert rule.length(marks) == float(marks * rule.mark_size)


@given(rule=rules, value=lengths)
def test_a_mark_is_written_plainly(rule: Rule, value: float) -> None:
    marked = rule.mark(value)
    assert re.fullmatch(r"0|[1-9]\d*|([1-9]\d* )?[1-9]\d*/[1-9]\d*|(0|[1-9]\d*)\.\d{0,2}[1-9]", marked)
    if "/" in marked:
        top, bottom = map(int, marked.split()[-1].split("/"))
        assert math.gcd(top, bottom) == 1 and top < bottom


def test_a_difference_that_is_nought_but_for_noise_is_marked_nought() -> None:
    wall = 1.5 - 1.1 - 0.4
    assert wall < 0
    assert SIXTEENTHS.mark(wall, remainder=True) == "0"
    assert SIXTEENTHS.nearest(-0.0) == 0.0


# Between units


@given(value=st.floats(0, 3900))
def test_there_and_back_between_units_is_the_same_length(value: float) -> None:
    millimetres = SIXTEENTHS.convert(value, HALF_MILLIMETRES)
    assert millimetres == pytest.approx(value * 25.4, rel=1e-15)
    assert HALF_MILLIMETRES.convert(millimetres, SIXTEENTHS) == pytest.approx(value, rel=1e-15)
    assert SIXTEENTHS.convert(value, Rule.inches(100)) == value


@given(value=st.decimals(0, 1000, places=3))
def test_a_unit_in_the_text_and_a_conversion_agree(value: Decimal) -> None:
    read = HALF_MILLIMETRES.read(f"{value} in")
    assert read == pytest.approx(SIXTEENTHS.convert(float(value), HALF_MILLIMETRES), rel=1e-15)


# Fractions in print


@pytest.mark.parametrize(
    ("plain", "printed"),
    [
        ("1 3/4", "1¾"),
        ("3/8", "⅜"),
        ("1/8 1/4 3/8 1/2 5/8 3/4 7/8", "⅛ ¼ ⅜ ½ ⅝ ¾ ⅞"),
        ("1/3 and 2/3", "⅓ and ⅔"),
        ("13/16", "¹³\u2044₁₆"),
        ("1 3/16", "1³\u2044₁₆"),
        ("127/128", "¹²⁷\u2044₁₂₈"),
        ("7-5/8 in", "7⅝ in"),
        ("7\u00a05/8", "7⅝"),
        ("1' 2 1/4\"", "1' 2¼\""),
        ("(3/8), 5/8; 1 1/2 by 2 1/4.", "(⅜), ⅝; 1½ by 2¼."),
        ("3/8-1/2", "⅜-½"),
        ("2 3/8-inch bits", "2⅜-inch bits"),
        ("Bore 1/2 at 3 m/s", "Bore ½ at 3 m/s"),
    ],
)
def test_fractions_are_set_as_fractions(plain: str, printed: str) -> None:
    assert set_fractions(plain) == printed


@pytest.mark.parametrize(
    "text",
    [
        "3/4/2024",
        "12/05/2024",
        "2024/3/4",
        "on 1/2/24",
        "05/08",
        "5/11",
        "24/7",
        "9/8",
        "12/2024",
        "m/s",
        "5 m/s",
        "km/h",
        "and/or",
        "a/b, a²/b, x1/2, 2x/3, 2^1/2",
        "figures/3/4.png",
        "/1/2",
        "tests/1/2",
        "3/4.png",
        "C:\\1/2",
        "https://example.org/1/2/3",
        "v1.1/2",
        "1/2:3",
        "post-1/2",
        "",
    ],
)
def test_dates_paths_and_units_stay_as_they_are(text: str) -> None:
    assert set_fractions(text) == text


@given(text=st.one_of(_written, st.text(max_size=60)))
def test_setting_fractions_twice_changes_nothing_more(text: str) -> None:
    once = set_fractions(text)
    assert set_fractions(once) == once


@given(
    text=st.from_regex(r"([0-9]{1,2}' ?)?([0-9][ -])?[1-9]{1,2}/(2|3|16|12|64|128)( in|\")?", fullmatch=True)
)
def test_setting_fractions_never_changes_what_is_read(text: str) -> None:
    try:
        length = SIXTEENTHS.read(text)
    except BadLength:
        assume(False)
    assert SIXTEENTHS.read(set_fractions(text)) == length


# The rule itself


def test_a_rule_is_a_plain_value() -> None:
    rule = Rule.inches(16)
    assert rule == Rule("inch", Fraction(1, 16)) == pickle.loads(pickle.dumps(SIXTEENTHS))
    assert rule != Rule.inches(8) and hash(rule) == hash(SIXTEENTHS)
    assert (rule.unit, rule.unit_mark, rule.mark_size, rule.one_mark) == (
        "inch",
        "in",
        Fraction(1, 16),
        0.0625,
    )
    assert (HALF_MILLIMETRES.unit, HALF_MILLIMETRES.unit_mark) == ("millimetre", "mm")
    assert Rule.millimetres(0.1).mark_size == Fraction(1, 10)
    with pytest.raises(dataclasses.FrozenInstanceError):
        rule.unit = "millimetre"  # type: ignore[misc]


@pytest.mark.parametrize("rule", [SIXTEENTHS, HALF_MILLIMETRES], ids=repr)
def test_a_slider_step_does_not_wait_for_the_rule(rule: Rule) -> None:
    for use in (rule.mark, rule.nearest):
        seconds = min(timeit.repeat(partial(use, 7.6419), number=500, repeat=20)) / 500
        assert seconds < 5e-6
