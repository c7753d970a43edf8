"""The cards of the packet: what they say is what the piece and the rules say, and nothing is left out."""

from __future__ import annotations

import csv
import importlib
import io
import pkgutil
import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import woodmath
from woodmath.boring_card import boring_cards, mortises_of
from woodmath.card import Card
from woodmath.cut_list import (
    cut_lines,
    cut_list_card,
    cut_list_csv,
    fitting_card,
    fitting_of,
)
from woodmath.derivation import Derivation
from woodmath.ellipse import bottom_radius_derivation, rocker_derivation
from woodmath.errors import ImpossibleShape
from woodmath.finding import thicknesses
from woodmath.gauge_card import MEASURED, gauge_card, settings_of
from woodmath.numbers_as_written import read_number
from woodmath.order_of_work import order_card, steps_of
from woodmath.parts import parts_of
from woodmath.piece import Piece
from woodmath.piece_file import demo_names
from woodmath.piece_shop import Board, Boards, Timber
from woodmath.post_joint import ENDS

CAT_BED, HOUND_BED, LOG_BOX = (Piece.demo(name) for name in ("cat-bed", "hound-bed", "log-box"))
PIECES = {name: Piece.demo(name) for name in demo_names()}
every_piece = pytest.mark.parametrize("piece", PIECES.values(), ids=PIECES.keys())


def changed(piece: Piece, table: str, **values: object) -> Piece:
    return replace(piece, **{table: replace(getattr(piece, table), **values)})


VARIATIONS = {
    **PIECES,
    **{f"ends {ends}": changed(CAT_BED, "joint", ends=ends, reserve=0.5) for ends in ENDS},
    "no tongue": changed(CAT_BED, "joint", tongue=None),
    "no bead": replace(CAT_BED, bead=None),
    "no bottom": replace(CAT_BED, bottom=None),
    "no rocker": replace(CAT_BED, rocker=None),
    "no foot tenon": changed(CAT_BED, "rocker", tenon=None),
    "no timber": replace(CAT_BED, timber=None),
    "no boards": replace(CAT_BED, boards=Boards()),
    "no tenons": changed(CAT_BED, "joint", tenons=()),
    "leaning inward": changed(CAT_BED, "end", top=9.5),
}


def cards_of(piece: Piece) -> list[Card]:
    cards = [
        cut_list_card(piece),
        fitting_card(piece),
        gauge_card(piece),
        *boring_cards(piece),
        order_card(piece),
    ]
    return [card for card in cards if card is not None]


@pytest.mark.parametrize("piece", VARIATIONS.values(), ids=VARIATIONS.keys())
def test_whatever_the_piece_has_or_lacks_the_cards_are_printed_in_whole_words(piece: Piece) -> None:
    for card in cards_of(piece):
        for text in (card.title, card.lead, *card.notes, *(cell for row in card.rows for cell in row)):
            assert "None" not in text and "nan" not in text.split()
            assert "  " not in text
        for sentence in (card.lead, *card.notes):
            assert sentence.endswith(".")


def test_a_rocker_that_no_ellipse_gives_is_refused_in_a_sentence_and_not_left_out() -> None:
    with pytest.raises(ImpossibleShape, match="too flat"):
        cut_list_card(changed(CAT_BED, "rocker", bottom_radius=400))


def titles_of_derivations() -> set[str]:
    """Work every derivation of the package that takes no argument, and gather their titles."""
    found = set()
    for module in pkgutil.iter_modules(woodmath.__path__):
        if module.name.startswith("__"):
            continue
        loaded = importlib.import_module(f"woodmath.{module.name}")
        for name, value in vars(loaded).items():
            if name.endswith("derivation") and callable(value) and hasattr(value, "cache_info"):
                made = value()
                if isinstance(made, Derivation):
                    found.add(made.title)
    return found


@pytest.mark.parametrize("piece", VARIATIONS.values(), ids=VARIATIONS.keys())
def test_every_setting_of_the_gauge_card_names_the_rule_that_it_comes_from(piece: Piece) -> None:
    titles = titles_of_derivations()
    rows = settings_of(piece)
    assert rows
    for row in rows:
        assert row.rule == MEASURED or row.rule in titles, row
    assert sum(row.rule != MEASURED for row in rows) > len(rows) / 2


def setting(piece: Piece, tool: str, what: str) -> str:
    (found,) = (row.setting for row in settings_of(piece) if row.tool == tool and what in row.what)
    return found


def test_the_gauge_card_of_the_cats_bed_is_what_a_maker_reads_off_the_drawing() -> None:
    # Set-back 1/2 and a tenon of 1/2: pins at 1/2 and 1. Board 7/8 less tongue 1/2: 3/8. Post 1 3/4 less the other
    # set-back, 1/2, less 1/16: 1 3/16 to the long point, a thickness less to the short one.
    assert setting(CAT_BED, "mortise gauge", "ends' mortises") == "1/2 and 1"
    assert setting(CAT_BED, "fillister's depth stop", "the same rebate") == "3/8"
    assert setting(CAT_BED, "fillister's fence", "rebate") == "1 3/16"
    assert setting(CAT_BED, "marking gauge", "tenons, shoulder to short point") == "11/16"
    assert setting(CAT_BED, "bench rule", "depth of the ends' and sides' mortises") == "1 1/4"
    assert setting(CAT_BED, "router plane", "grooves") == "3/8"
    assert setting(CAT_BED, "bench rule", "width of the sides") == "8 1/8"
    assert setting(CAT_BED, "string", "loop") == "42 1/2"
    assert (
        setting(CAT_BED, "sliding bevel", "ends' sloping edges") == "8.9° off square: 1 1/4 outward on 8 up"
    )


def test_unequal_boards_get_a_fence_and_a_stop_of_their_own() -> None:
    # The side's set-back of 11 and its tenon of 15, from the face edge.
    assert setting(LOG_BOX, "mortise gauge", "sides' mortises") == "11 and 26"
    assert setting(LOG_BOX, "fillister's depth stop", "leaves a tongue of 12") == "10"
    assert setting(LOG_BOX, "fillister's depth stop", "leaves a tongue of 15") == "11"
    # The bevels of unequal tenons: arctangents of 15/12 and of 12/15, which make 90 together (COMP).
    first = setting(LOG_BOX, "sliding bevel", "the ends' tenons")
    second = setting(LOG_BOX, "sliding bevel", "the sides' tenons")
    angles = [float(each.split("°")[0]) for each in (first, second)]
    assert angles == pytest.approx([51.3, 38.7]) and sum(angles) == pytest.approx(90)


@every_piece
def test_the_cut_list_counts_weighs_and_measures_every_part(piece: Piece) -> None:
    lines = cut_lines(piece)
    assert [line.part.name for line in lines] == [part.name for part in parts_of(piece)]
    for line in lines:
        assert line.count == line.part.count
        cubic = piece.rule.millimetres_per_unit / 1000
        assert line.wood == pytest.approx(line.part.volume * line.count * cubic**3)
        assert line.kilograms == pytest.approx(line.wood * piece.timber.kilograms_per_cubic_metre)


def test_the_hands_of_all_copies_are_counted_on_the_card_and_in_the_table() -> None:
    numbers = {row[0]: row[1] for row in cut_list_card(CAT_BED, 3).rows}
    assert numbers["post"] == "12 (6 left, 6 right)"
    assert numbers["rocker"] == "6 (3 pairs, face sides outward)"
    assert numbers["side panel"] == "6"
    table = {row["part"]: row["hands"] for row in csv.DictReader(io.StringIO(cut_list_csv(CAT_BED, 3)))}
    assert table["post"] == "6 left, 6 right" and table["rocker"] == "3 pairs, face sides outward"
    assert {row[0]: row[1] for row in cut_list_card(CAT_BED).rows}[
        "rocker"
    ] == "2 (a pair, face sides outward)"


def test_the_order_of_work_says_that_it_is_for_each_of_several_pieces() -> None:
    one, three = order_card(CAT_BED), order_card(CAT_BED, 3)
    assert "each piece" not in one.lead and "each piece" not in one.rows[0][1]
    assert "for each piece; 3 are made" in three.lead
    assert three.rows[0][1].startswith("Choose the boards for each piece")
    assert ", and saw out the blanks: 4 posts, 2 end panels" in three.rows[0][1]
    assert three.rows[1:] == one.rows[1:]


def test_panels_come_to_their_length_before_they_are_rebated_from_it() -> None:
    for piece in (CAT_BED, LOG_BOX):
        told = [step.what for step in steps_of(piece)]
        lengths = next(
            number for number, step in enumerate(told) if "by the cut list, tenons counted" in step
        )
        assert told[lengths + 1].startswith("Rebate")


def test_one_tenon_of_each_edge_is_glued_and_those_of_the_feet_all_round() -> None:
    (glue,) = (step.what for step in steps_of(CAT_BED) if "glue goes on one" in step.what)
    # By hand: the panel is 8.1 along the post, its tenons' middles at 2 and 6: the second is nearer to 4.05.
    assert "tenon 2 from the foot" in glue and "feet are glued all round" in glue
    (glue,) = (step.what for step in steps_of(LOG_BOX) if "glue goes on one" in step.what)
    assert "feet" not in glue


def test_three_beds_take_three_times_the_wood_of_one() -> None:
    for one, three in zip(cut_lines(CAT_BED), cut_lines(CAT_BED, 3), strict=True):
        assert three.count == 3 * one.count
        assert three.measure == pytest.approx(3 * one.measure)
        assert three.kilograms == pytest.approx(3 * one.kilograms)


def test_board_feet_of_the_posts_by_hand() -> None:
    # Four blanks of 14 1/2 by 2 by 1 3/4; a board foot is 144 cubic inches (Danforth, An Elementary Outline of
    # Mechanical Processes, section 46, read in a copy).
    assert cut_lines(CAT_BED)[0].measure == pytest.approx(4 * 14.5 * 2 * 1.75 / 144, abs=0.001)


def test_a_yard_sells_the_thin_boards_of_the_cats_bed_as_inch_boards() -> None:
    # Danforth, section 46 (READ): boards less than an inch in thickness are regarded as an inch thick in selling, and
    # thicker ones are sold for what they contain.
    for line in cut_lines(CAT_BED):
        thickness = line.part.rough_thickness
        assert line.sold_as == pytest.approx(line.measure * (1 / thickness if thickness < 1 else 1))
    (note,) = (note for note in cut_list_card(CAT_BED).notes if "a yard counts" in note)
    sold_as = sum(line.sold_as for line in cut_lines(CAT_BED))
    told = [float(number) for number in re.findall(r"\d+\.\d+", note)]
    assert told[1:] == pytest.approx([sold_as, 1.25 * sold_as], abs=0.05)


def test_a_piece_in_millimetres_is_measured_in_square_and_in_cubic_metres() -> None:
    card = cut_list_card(LOG_BOX)
    assert card.columns[5:7] == ("m²", "m³")
    # Four blanks of 392 by 51 by 45 mm.
    assert card.rows[0][5:7] == ("0.08", "0.0036")
    assert cut_lines(LOG_BOX)[0].blanks == pytest.approx(4 * 0.392 * 0.051 * 0.045)


def test_the_blanks_hold_more_wood_than_the_parts() -> None:
    for piece in PIECES.values():
        assert all(line.blanks > line.wood > 0 for line in cut_lines(piece))


def test_a_timber_that_is_not_named_is_shown_as_not_known() -> None:
    card = cut_list_card(replace(CAT_BED, timber=None))
    assert {row[-1] for row in card.rows} == {"not known"}


@every_piece
def test_the_csv_can_be_read_back_and_holds_the_same(piece: Piece) -> None:
    rows = list(csv.DictReader(io.StringIO(cut_list_csv(piece, 2))))
    assert [row["part"] for row in rows] == [part.name for part in parts_of(piece)]
    assert [int(row["number"]) for row in rows] == [2 * part.count for part in parts_of(piece)]
    for row, part in zip(rows, parts_of(piece), strict=True):
        assert float(row[f"finished length ({piece.rule.unit_mark})"]) == pytest.approx(part.length, abs=1e-4)
    assert cut_list_csv(piece, 2).isascii()


def test_no_cell_of_the_csv_is_taken_for_a_formula() -> None:
    trick = replace(CAT_BED, timber=Timber(species="=1+1", density=600))
    for row in csv.reader(io.StringIO(cut_list_csv(trick))):
        assert not any(cell.startswith(("=", "+", "-", "@")) for cell in row)


@every_piece
def test_each_blank_is_on_a_board_or_among_the_missing(piece: Piece) -> None:
    fitted = fitting_of(piece)
    wanted = sum(part.count for part in parts_of(piece))
    named = {region.name.split(",")[0] for region in fitted.blanks} | {
        blank.name.split(",")[0] for blank in fitted.missing
    }
    assert len(named) == wanted


@pytest.mark.parametrize("piece", [CAT_BED, HOUND_BED], ids=["cat-bed", "hound-bed"])
def test_the_boards_on_hand_are_enough_for_the_demo_pieces(piece: Piece) -> None:
    assert not fitting_of(piece).missing


def test_alike_blanks_that_are_missing_are_counted_and_not_listed_one_by_one() -> None:
    note = fitting_card(CAT_BED, 5).notes[0]
    counts = [int(count) for count in re.findall(r"(\d+) × [a-z]", note)]
    assert sum(counts) == len(fitting_of(CAT_BED, 5).missing)
    assert max(counts) > 1 and "strip" not in note


def test_the_plan_of_the_boards_says_which_board_is_thinned_and_how() -> None:
    card = fitting_card(replace(CAT_BED, boards=Boards((Board(1.75, 9.5, 240, 2), Board(1.0, 9.5, 240, 2)))))
    assert "thick stock is thinned only when nothing else is left" in card.lead
    told = {
        row[2].split(",")[0].rstrip(" 0123456789"): row[2] for row in card.rows if row[2] != "stays whole"
    }
    assert told["end panel"].endswith(", plane to 7/8")
    assert told["end cleat"].endswith(", resaw or plane to 1/2")
    assert "to 1" not in told["rocker"].split("×")[1]


def test_what_no_board_is_left_for_is_said() -> None:
    few = replace(CAT_BED, boards=Boards((Board(0.875, 9.5, 30),)))
    assert fitting_card(few).notes[0].startswith("No board on hand is left for:")


@settings(max_examples=15, deadline=None)
@given(st.integers(1, 12))
def test_a_class_of_any_size_loses_no_blank(copies: int) -> None:
    fitted = fitting_of(CAT_BED, copies)
    wide = next(part for part in parts_of(CAT_BED) if part.name == "bottom board")
    strips = 2 if wide.rough_width > 6.5 else 1
    wanted = copies * (sum(part.count for part in parts_of(CAT_BED)) + strips - 1)
    assert len(fitted.blanks) + len(fitted.missing) == wanted


def test_the_count_ends_where_the_second_mortise_opens_into_the_first() -> None:
    counts, _ = boring_cards(CAT_BED)
    # The end's mortise takes the post from 1/2 to 1 behind its outer face, so the side's bit is in it after 3/4 from
    # the inside; twelve threads to the inch make 9 turns of that.
    (told,) = (note for note in counts.notes if "open into" in note)
    assert "3/4 down" in told and "after 9 turns" in told
    # It is 1/2 wide, and 1 1/4 deep is just its far cheek: no wood is left to bore.
    assert "until the lips are through and stop there" in told
    assert counts.rows[1] == ("side's mortises", "1 1/4", "–", "–", "1 1/16", "1/2")
    assert [row.opens_at for row in mortises_of(CAT_BED)] == [None, None, 0.75, 0.75, None]


@every_piece
@pytest.mark.parametrize("ends", ["mitred", "halved"])
def test_what_a_second_mortise_opens_into_takes_it_to_its_full_depth(piece: Piece, ends: str) -> None:
    for row in mortises_of(changed(piece, "joint", ends=ends)):
        if row.opens_at is not None:
            assert row.depth == pytest.approx(row.opens_at + thicknesses(piece)["end"])


def test_the_turns_say_from_where_they_are_counted() -> None:
    counts, _ = boring_cards(CAT_BED)
    assert counts.rows[0] == ("end's mortises", "1 1/4", "15", "18 3/4", "1 9/16", "1/2")
    assert "lips" in counts.columns[2] and "screw" in counts.columns[3]


def test_a_screw_longer_than_the_wall_is_told() -> None:
    counts, _ = boring_cards(changed(CAT_BED, "bit", point_length=0.625))
    # 1 3/4 of post less 5/8 of screw leaves 1 1/8, and a mark of it stays whole: 1 1/16, at twelve turns to the inch.
    assert any("to a hole 1 1/16 deep and no deeper" in note for note in counts.notes)
    assert counts.rows[0][1:5] == ("1 1/4", "12 3/4", "20 1/4", "1 11/16")


def test_a_screw_that_comes_through_is_told_on_the_card_as_it_is_in_the_remarks() -> None:
    bed = changed(CAT_BED, "bit", point_length=1.0)
    (stop,) = (found for found in bed.findings() if found.place == "the bottom of the mortises")
    deepest = re.findall(r"Bore to ([\d/ ]+) or less", stop.remedy)[0]
    counts, _ = boring_cards(bed)
    assert any(f"to a hole {deepest} deep" in note for note in counts.notes)


@pytest.mark.parametrize("lead", [2.54, 2.0, 1.7, 3.3])
def test_turns_are_printed_as_whole_ones_and_quarters_and_lie_within_an_eighth(lead: float) -> None:
    box = changed(LOG_BOX, "bit", threads_per_inch=25.4 / lead)
    bit = box.auger_bit()
    counts, _ = boring_cards(box)
    depths = {row.name.rsplit(" ", 1)[0]: row.depth for row in mortises_of(box)}
    for row, depth in zip(counts.rows, depths.values(), strict=True):
        if row[0] == "side's mortises":
            continue
        for told, counted_from in zip(row[2:4], ("lips", "screw"), strict=True):
            assert re.fullmatch(r"\d+( (1/4|1/2|3/4))?", told)
            assert abs(read_number(told) - bit.turns(depth, counted_from)) <= 0.125 + 1e-9


@every_piece
def test_every_hole_lies_in_its_mortise(piece: Piece) -> None:
    _, holes = boring_cards(piece)
    for row, mortise in zip(holes.rows, mortises_of(piece), strict=True):
        centres = [piece.rule.read(place) for place in row[2].split(", ")]
        radius, mark = piece.bit.diameter / 2, piece.rule.one_mark
        # As printed, no hole crosses the mortise's lines, and each end is reached within a mark.
        assert 0 <= min(centres) - radius - mortise.start + 1e-9 <= mark
        assert 0 <= mortise.end - max(centres) - radius + 1e-9 <= mark
        # The two ends are bored first.
        assert set(centres[:2]) == {min(centres), max(centres)}


def test_the_order_of_work_keeps_what_must_come_first_first() -> None:
    told = [step.what for step in steps_of(CAT_BED)]

    def place(words: str) -> int:
        return next(number for number, step in enumerate(told) if words in step)

    assert place("Rebate the edges") < place("Run the beads") < place("Saw the tenons out of")
    assert place("Bore the end's mortises") < place("Cut the grooves")
    assert place("Draw the curve") < place("right rocker") < place("back side and front side")
    assert place("Saw wedges") < place("left end") < place("Cramp the ends level")
    assert place("mortises in the rockers' top edges") < place("Draw the curve")
    assert place("Pare the nibs") > place("Glue and cramp the cleats")
    # All of it dry before any glue, and the tongues never glued.
    assert place("together dry") < place("glue goes on one") < place("left end")


@every_piece
def test_every_step_has_its_own_caution(piece: Piece) -> None:
    for step in steps_of(piece):
        assert step.caution.endswith(".") and step.what.endswith(".")


def test_a_rocker_that_takes_no_tenon_is_given_no_mortise() -> None:
    told = " ".join(step.what for step in steps_of(VARIATIONS["no foot tenon"]))
    assert "Draw the curve" in told and "rockers' top edges" not in told


def test_each_half_of_the_ellipse_comes_from_the_rule_that_gives_it() -> None:
    rules = {row.what.split(" of ")[0]: row.rule for row in settings_of(CAT_BED) if row.tool == "trammel"}
    assert rules == {
        "half-height": rocker_derivation().title,
        "half-length": bottom_radius_derivation().title,
    }


def test_a_piece_without_rockers_or_splay_is_not_told_of_them() -> None:
    told = " ".join(f"{step.what} {step.caution}" for step in steps_of(LOG_BOX))
    assert not re.search(r"rocker|wedge|bevel, |slope", told)
    for card in cards_of(LOG_BOX):
        cells = (*card.columns, *(cell for row in card.rows for cell in row))
        told = " ".join((card.title, card.lead, *card.notes, *cells))
        assert not re.search(r"rocker|wedge|slop|lean(s|ing)\b|splay", told), card.title


def test_without_boards_in_the_file_wide_blanks_are_glued_up_by_what_the_maker_has() -> None:
    (told,) = (step for step in steps_of(LOG_BOX) if "Glue up what is wider" in step.what)
    assert "end panel 326, side panel 326, bottom board 338" in told.what and "label" in told.caution
    boards = Boards((Board(26.0, 400.0, 2000.0), Board(45.0, 400.0, 2000.0)))
    assert not any("Glue up" in step.what for step in steps_of(replace(LOG_BOX, boards=boards)))
