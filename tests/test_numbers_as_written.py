"""A plain number is read in every notation of the bench, and a length with its unit is not taken for one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodmath.errors import WoodmathError
from woodmath.numbers_as_written import read_number


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("6", 6),
        ("6.5", 6.5),
        (".5", 0.5),
        ("6 1/2", 6.5),
        ("6-1/2", 6.5),
        ("6½", 6.5),
        (" 1/4 ", 0.25),
        ("0", 0),
    ],
)
def test_turns_are_read_as_they_are_written(text: str, number: float) -> None:
    assert read_number(text) == number


@pytest.mark.parametrize(
    "text",
    ["8 mm", "8mm", "0 mm", "1 in", '6"', "6'", "6″", "6 1/2 cm", "3 ft", "45°", "", "  ", "six", "1 2", "1/0", "-3",
     "nan", "inf", "1e3", "7 5/4"],
)  # fmt: skip
def test_a_unit_or_anything_else_is_refused_with_what_can_be_read(text: str) -> None:
    with pytest.raises(WoodmathError, match=r"cannot be read as a number\. .* 6, 6\.5 or 6 1/2\."):
        read_number(text)


def test_a_decimal_comma_is_told_to_be_a_point() -> None:
    with pytest.raises(WoodmathError, match=r"“6,5” .* A decimal is written with a point\."):
        read_number("6,5")


def test_what_is_no_text_is_refused_and_not_guessed() -> None:
    with pytest.raises(WoodmathError, match="None cannot be read as a number"):
        read_number(None)


@given(st.integers(0, 10**6), st.integers(0, 63))
def test_a_whole_number_and_a_fraction_are_read_exactly(whole: int, sixty_fourths: int) -> None:
    written = f"{whole} {sixty_fourths}/64" if sixty_fourths else f"{whole}"
    assert read_number(written) == whole + sixty_fourths / 64


@given(st.text(max_size=60))
def test_no_text_at_all_does_more_than_refuse(text: str) -> None:
    try:
        assert read_number(text) >= 0
    except WoodmathError as refusal:
        assert len(str(refusal)) < 220
