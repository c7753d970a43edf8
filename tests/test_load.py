"""What lies or sits in a piece: read from its file, written, scaled, filled in on the form, refused in words."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece, WoodmathError
from woodmath.piece import Piece
from woodmath.piece_editor import edit
from woodmath.piece_fields import Draft, groups_of, meant
from woodmath.piece_file import demo_text
from woodmath.piece_load import Load, Mass
from woodmath.piece_origin import scaled_piece
from woodmath.piece_writing import changed_text, piece_text
from woodmath.rule import Rule
from woodmath.weighing import EXAMPLES, KILOGRAMS_IN_A_POUND, mass_written, read_mass

CAT_BED = demo_text("cat-bed")
CAT = '\n[[load]]\nname = "a kitten"\nmass = "2 lb"\nheight = "10"\n'


def test_the_cat_lies_in_her_bed_as_her_file_says() -> None:
    cushion, cat = Piece.demo("cat-bed").load
    assert (cushion.name, cat.name) == ("the cushion", "the cat")
    # 1 lb = 0.45359237 kg exactly (1959; from memory).
    assert cat.mass == pytest.approx(4.5359237, rel=1e-15)
    assert (cat.height, cat.offset, cat.gyration_radius) == (12.0, 0.0, 2.5)


def test_a_piece_without_a_load_has_none() -> None:
    assert Piece.demo("log-box").load == ()


@pytest.mark.parametrize(
    ("text", "kilograms"),
    [
        ("10 lb", 10 * KILOGRAMS_IN_A_POUND),
        ("10lbs", 10 * KILOGRAMS_IN_A_POUND),
        ("1 pound", KILOGRAMS_IN_A_POUND),
        ("8 oz", KILOGRAMS_IN_A_POUND / 2),
        ("9 1/2 LB", 9.5 * KILOGRAMS_IN_A_POUND),
        ("4.5 kg", 4.5),
        ("650 g.", 0.65),
    ],
)
def test_a_mass_is_read_with_its_unit(text: str, kilograms: float) -> None:
    assert read_mass(text) == pytest.approx(kilograms, rel=1e-15)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "10",
        "lb",
        "ten lb",
        "10 stone",
        "-3 kg",
        "0 kg",
        "1e9 kg",
        "9999 kg",
        "3 kg 200 g",
        "1,5 kg",
        "x" * 999,
    ],
)
def test_what_is_no_mass_is_refused_with_examples(text: str) -> None:
    with pytest.raises(WoodmathError, match=re.escape(EXAMPLES)):
        read_mass(text)


@given(some.fractions(Fraction(1, 100), 900, max_denominator=997), some.booleans())
def test_a_mass_that_is_written_reads_back_as_the_very_same(kilograms: Fraction, inches: bool) -> None:
    rule = Rule.inches(16) if inches else Rule.millimetres(1)
    assert read_mass(mass_written(float(kilograms), rule)) == float(kilograms)


@given(some.integers(1, 2000))
def test_whole_pounds_stay_whole_pounds(pounds: int) -> None:
    assert mass_written(read_mass(f"{pounds} lb"), Rule.inches(16)) == f"{pounds} lb"


@pytest.mark.parametrize("name", ["cat-bed", "hound-bed", "log-box"])
def test_a_piece_written_out_keeps_its_load(name: str) -> None:
    piece = Piece.demo(name)
    text = piece_text(piece)
    assert text.count("[[load]]") == len(piece.load)
    assert Piece.from_text(text).load == piece.load


def test_the_written_load_can_be_read_by_people() -> None:
    text = piece_text(Piece.demo("cat-bed"))
    block = text[text.rindex("[[load]]") :]
    assert block.splitlines()[0].endswith("# what lies or sits in it")
    assert 'mass = "10 lb"' in block and "# what it weighs" in block


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ('mass = "10"', 'load, number 3, mass is no mass: “10” cannot be read as a mass'),
        ("mass = -3", "load, number 3, mass = -3: write a mass with its unit"),
        ("mass = true", "load, number 3, mass = true"),
        ("mass = nan", "load, number 3, mass = nan"),
        ("mass = inf", "load, number 3, mass = inf"),
        ("mass = [3]", "load, number 3, mass = a list"),
        (f"mass = {'9' * 4000}", "load, number 3, mass = a huge number"),
        ('mass = "2 lb"\noffset = "-1"', "load, number 3, offset"),
        ('mass = "2 lb"\nheigth = "1"', "load, number 3, heigth is not known in load, number 3. Did you mean height?"),
        ("", "load, number 3, mass is missing (what it weighs). Add it in load, number 3"),
    ],
)  # fmt: skip
def test_a_load_that_cannot_be_read_is_refused_with_its_key(row: str, told: str) -> None:
    text = CAT_BED + CAT.replace('mass = "2 lb"', row)
    with pytest.raises(BadPiece) as refusal:
        Piece.from_text(text)
    assert told in str(refusal.value)


def test_single_brackets_are_told_apart_from_double_ones() -> None:
    start, end = CAT_BED.index("[[load]]"), CAT_BED.index("[timber]")
    text = CAT_BED[:start] + CAT_BED[end:] + CAT.replace("[[load]]", "[load]")
    with pytest.raises(BadPiece, match=r"load = a table: write \[\[load\]\] over each of them"):
        Piece.from_text(text)


def test_a_hundred_loads_and_no_more() -> None:
    with pytest.raises(BadPiece, match="give at most 100"):
        Piece.from_text(CAT_BED + CAT * 100)


def test_the_same_cat_lies_higher_in_a_larger_bed_and_is_no_heavier() -> None:
    cat = Piece.demo("cat-bed").load[1]
    large = scaled_piece(Piece.demo("cat-bed"), "2", "A bed for two cats").load[1]
    assert (large.mass, large.gyration_radius) == (cat.mass, cat.gyration_radius)
    assert large.height == 2 * cat.height


def test_a_load_given_anew_replaces_what_is_inherited() -> None:
    hound = Piece.demo("hound-bed")
    assert [load.name for load in hound.load] == ["the cushion", "the hound"]
    inherited = Piece.from_text('name = "Mine"\nscaled_from = "cat-bed"\nscale = 2\n')
    assert [load.name for load in inherited.load] == ["the cushion", "the cat"]
    given_anew = Piece.from_text(f'name = "Mine"\nscaled_from = "cat-bed"\nscale = 2\n{CAT}')
    assert [load.name for load in given_anew.load] == ["a kitten"]


def test_lengths_of_the_load_are_no_sizes_of_the_piece() -> None:
    keys = [row.key for row in Piece.demo("hound-bed").origin.rows]
    assert "post.square" in keys and not [key for key in keys if key.startswith("load")]


def test_a_metric_piece_reads_pounds_as_well() -> None:
    piece = Piece.from_text(
        demo_text("log-box") + '\n[[load]]\nname = "logs"\nmass = "20 lb"\nheight = "9 in"\n'
    )
    assert piece.load == (Load("logs", read_mass("20 lb"), pytest.approx(228.6)),)


def test_the_form_has_a_group_for_what_lies_in_it() -> None:
    groups = dict(groups_of(Draft.of(CAT_BED)))
    fields = groups["What lies or sits in it  [[load]]"]
    assert [field.path for field in fields][:2] == [("load", 0, "name"), ("load", 0, "mass")]
    assert not [field for field in groups["The piece"] if field.path[0] == "load"]
    assert "What lies or sits in it  [[load]]" not in dict(groups_of(Draft.of(demo_text("log-box"))))


def test_a_plain_number_in_the_form_is_kilograms() -> None:
    mass = Mass("what it weighs")
    assert meant(mass, "4.5") == 4.5 and meant(mass, "10 lb") == "10 lb"


def test_the_form_changes_the_cat_alone(tmp_path: Path) -> None:
    editor = edit("cat-bed", folder=tmp_path)
    try:
        editor.form.boxes[("load", 1, "mass")].value = "12 lb"
        editor.form.boxes[("load", 1, "offset")].value = "3"
        cushion, cat = Piece.from_text(editor.text).load
        assert cushion == Piece.demo("cat-bed").load[0]
        assert (cat.mass, cat.offset) == (pytest.approx(12 * KILOGRAMS_IN_A_POUND), 3.0)
    finally:
        editor.close()


def test_a_key_that_was_not_there_comes_to_stand_in_its_own_load() -> None:
    text = changed_text(CAT_BED, ("load", 1, "offset"), "2")
    cushion, cat = Piece.from_text(text).load
    assert (cushion.offset, cat.offset) == (0.0, 2.0)
    assert text.replace('offset = "2"\n', "") == CAT_BED
