"""A piece made from another by scale: lengths grow, stock stays, and what the file says itself comes before both."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece, ImpossibleShape
from woodmath.piece import Piece
from woodmath.piece_file import demo_text
from woodmath.piece_origin import Origin, scaled_piece
from woodmath.piece_scaling import mass_of, scaling_table
from woodmath.piece_sizes import entries_of
from woodmath.rule import Rule
from woodmath.weighing import KILOGRAMS_IN_A_POUND, mass_shown

SCALED = 'name = "Larger"\nscaled_from = "cat-bed"\nscale = "7/4"\n'


def origin(piece: Piece) -> Origin:
    assert piece.origin is not None
    return piece.origin


def how(piece: Piece) -> dict[str, str]:
    return {row.key: row.how for row in origin(piece).rows}


def test_lengths_grow_and_stock_stays() -> None:
    large, cat = Piece.from_text(SCALED), Piece.demo("cat-bed")
    assert large.end is not None and large.side is not None and large.rocker is not None
    # On paper: 13 and 18 inches at seven quarters are 91/4 and 126/4.
    assert (large.end.top, large.side.length) == (22.75, 31.5)
    assert (large.post.length, large.post.foot, large.post.top) == (24.5, 5.25, 3.5)
    assert (large.rocker.depth, large.rocker.bottom_radius) == (7, 52.5)
    assert large.post.square == cat.post.square
    assert large.joint.tenons[1].place == 4.75 * 1.75 and large.joint.tenons[1].width == 2.5
    assert large.joint.tongue == cat.joint.tongue and large.bead == cat.bead and large.bit == cat.bit
    assert large.rocker.tenon is not None and cat.rocker is not None
    assert large.rocker.tenon == cat.rocker.tenon and large.rocker.thickness == cat.rocker.thickness
    assert large.bottom is not None and large.bottom.rest == 0.75 * 1.75 and large.bottom.cleat == 0.5
    assert large.tools == cat.tools and large.boards == cat.boards and large.rule == cat.rule


def test_a_piece_remembers_where_it_comes_from() -> None:
    large = Piece.from_text(SCALED)
    assert origin(large).source == Piece.demo("cat-bed") and origin(large).scale == Fraction(7, 4)
    told = how(large)
    assert told["end.top"] == "scaled" and told["post.square"] == "kept"
    assert not any(key.startswith(("tools", "boards")) for key in told)
    assert Piece.demo("cat-bed").origin is None


def test_what_the_file_says_itself_comes_before_the_scale() -> None:
    large = Piece.from_text(SCALED + '[side]\nlength = "30"\n[joint]\ntenons = [{ place = 1, width = 2 }]\n')
    assert large.side is not None and large.side.length == 30
    assert len(large.joint.tenons) == 1 and large.joint.tenons[0].place == 1
    told = how(large)
    assert told["side.length"] == told["joint.tenons, number 1, place"] == "given"
    # The drawing's second tenon is gone, and the table says so.
    gone = next(row for row in origin(large).rows if row.key == "joint.tenons, number 2, place")
    assert gone.before == 4.75 and gone.after is None


def test_what_the_file_calls_stock_stays_too() -> None:
    large = Piece.from_text(SCALED + 'stock = ["rocker.depth", "post", "joint.tenons.place"]\n')
    assert large.rocker is not None and large.rocker.depth == 4
    assert large.post == Piece.demo("cat-bed").post
    assert [tenon.place for tenon in large.joint.tenons] == [0.75, 4.75]
    assert how(large)["rocker.depth"] == "kept"


@pytest.mark.parametrize("scale", ['"7/4"', '"1.75"', '"7:4"', "1.75", '"175 %"', '"1 3/4"'])
def test_a_scale_is_written_as_it_is_said(scale: str) -> None:
    assert origin(Piece.from_text(SCALED.replace('"7/4"', scale))).scale == Fraction(7, 4)


@pytest.mark.parametrize("wanted", ['{ "end.top" = "22 3/4" }', '{ end.top = "577.85 mm" }'])
def test_the_scale_follows_from_one_size_that_is_wanted(wanted: str) -> None:
    large = Piece.from_text(SCALED.replace('scale = "7/4"', f"wanted = {wanted}"))
    assert origin(large).scale == Fraction(7, 4)
    assert large.side is not None and large.side.length == 31.5


def test_two_sizes_that_are_wanted_are_one_too_many() -> None:
    with pytest.raises(BadPiece, match="wanted = a table: give exactly one size"):
        Piece.from_text(SCALED.replace('scale = "7/4"', 'wanted = { "end.top" = 24, "side.length" = 30 }'))


def test_a_piece_in_inches_becomes_one_in_millimetres() -> None:
    metric = Piece.from_text(SCALED.replace('"7/4"', "1") + 'rule = "0.5 mm"\n[side]\nlength = "500"\n')
    assert metric.rule == Rule.millimetres(0.5)
    assert metric.end is not None and metric.end.top == pytest.approx(13 * 25.4)
    assert metric.side is not None and metric.side.length == 500
    assert metric.tools.chisels[0] == pytest.approx(6.35) and metric.bit.threads_per_inch == 12
    assert metric.boards.on_hand[0].length == pytest.approx(84 * 25.4)
    row = next(row for row in origin(metric).rows if row.key == "end.top")
    assert row.before == pytest.approx(330.2)


def test_another_way_to_say_how_far_a_turn_takes_the_bit_takes_the_first_away() -> None:
    other = Piece.from_text(SCALED + '[bit]\nlead = "1/8"\n')
    assert (other.bit.lead, other.bit.threads_per_inch) == (0.125, None)
    assert other.bit.diameter == Piece.demo("cat-bed").bit.diameter


def test_a_piece_may_be_scaled_from_a_file_beside_it_and_that_from_a_third(tmp_path: Path) -> None:
    (tmp_path / "one.toml").write_text(SCALED, encoding="utf-8")
    two = tmp_path / "two.toml"
    two.write_text('name = "Two"\nscaled_from = "one.toml"\nscale = "4/7"\n', encoding="utf-8")
    piece = Piece.read(two)
    assert piece.end == Piece.demo("cat-bed").end and origin(piece).source.name == "Larger"


def test_the_plan_is_scaled_and_not_what_came_of_it(tmp_path: Path) -> None:
    cat = Piece.demo("cat-bed")
    (tmp_path / "one.toml").write_text(
        SCALED.replace("7/4", "1") + '[as_made.end]\nheight = "9"\n', encoding="utf-8"
    )
    assert cat.end is not None
    two = Piece.from_text('name = "Two"\nscaled_from = "one.toml"\nscale = "2"\n', tmp_path)
    assert two.end is not None and two.end.height == 2 * cat.end.height


@given(scale=some.fractions(Fraction(1, 4), 4, max_denominator=32))
def test_every_length_is_scaled_or_kept_or_given_and_nothing_else(scale: Fraction) -> None:
    cat = Piece.demo("cat-bed")
    large = scaled_piece(cat, str(scale), "Any")
    for row in origin(large).rows:
        assert row.before is not None and row.after is not None
        wanted = row.before * float(scale) if row.how == "scaled" else row.before
        assert row.after == pytest.approx(wanted)
    assert [entry.key for entry in entries_of(large)] == [entry.key for entry in entries_of(cat)]


def test_the_hounds_bed_is_a_sound_joint_and_glued_up_panels_in_heavier_stock() -> None:
    hound, cat = Piece.demo("hound-bed"), Piece.demo("cat-bed")
    assert [finding for finding in hound.findings() if finding.severity == "stop"] == []
    assert hound.end is not None and cat.end is not None and len(hound.joint.tenons) == 3
    assert hound.end.height > max(board.width for board in hound.boards.on_hand)
    assert hound.post.square > cat.post.square and hound.end.thickness > cat.end.thickness


def effects(piece: Piece) -> dict[str, tuple[float, float]]:
    return {effect.what: (effect.times, effect.model) for effect in scaling_table(piece).effects}


def test_with_the_stock_kept_the_inside_is_not_k_times_and_the_mass_not_k_cubed() -> None:
    told = effects(Piece.from_text(SCALED))
    times, model = told["inside, length"]
    # By hand: 18 + 2 (1 3/4 - 1/2 - 1/2) = 19 1/2 becomes 31 1/2 + 1 1/2 = 33.
    assert times == pytest.approx(33 / 19.5) and model == 1.75 > times
    times, model = told["mass"]
    assert 1.75**2 < 1.75**3 == pytest.approx(model)
    assert 1.75 < times < model
    assert told["wood in it"][0] == pytest.approx(told["mass"][0])
    times, model = told["side's length over its thickness"]
    assert times == pytest.approx(1.75) and model == 1


def test_a_true_copy_grows_by_nothing_at_all() -> None:
    for times, _ in effects(Piece.from_text(SCALED.replace("7/4", "1"))).values():
        assert times == pytest.approx(1)


def test_the_table_shows_itself_and_is_printed_with_every_length_once() -> None:
    hound = Piece.demo("hound-bed")
    table = scaling_table(hound)
    lengths, does = table.cards
    assert len(lengths.rows) == len(origin(hound).rows) == len({row[0] for row in lengths.rows})
    assert ("end.top", "13", "22 3/4", "scaled") in lengths.rows
    assert [row[0] for row in does.rows][:1] == ["inside, length"]
    shown = table._repr_markdown_()
    assert "| end.top | 13 | 22¾ | scaled |" in shown and "1/" not in shown


def test_a_name_with_any_sign_harms_no_table() -> None:
    shown = scaling_table(scaled_piece(Piece.demo("cat-bed"), "2", "<b>|*x*|`$</b>"))._repr_markdown_()
    assert "<b>" not in shown and "*x*" not in shown and "`" not in shown.replace("&#96;", "")


def test_only_a_scaled_piece_has_such_a_table() -> None:
    with pytest.raises(ImpossibleShape, match="is not scaled from another piece"):
        scaling_table(Piece.demo("cat-bed"))
    with pytest.raises(ImpossibleShape, match=r"Add \[timber\]"):
        mass_of(Piece.from_text(_without_timber()))


def _without_timber() -> str:
    text = demo_text("cat-bed")
    return text[: text.index("[timber]")] + text[text.index("[boards]") :]


def test_a_mass_is_told_in_the_unit_that_goes_with_the_rule() -> None:
    # 1 lb = 0.45359237 kg exactly (1959; from memory).
    assert KILOGRAMS_IN_A_POUND == 0.45359237
    assert mass_shown(0.45359237 * 3, Rule.inches(16)) == "3 lb"
    assert mass_shown(3, Rule.millimetres(1)) == "3 kg"
