"""What came out otherwise than planned: measured values take the plan's place, and what no longer fits is named."""

from __future__ import annotations

import pytest

from woodmath.finding import Finding
from woodmath.findings_as_made import as_made_findings
from woodmath.part_needs import holder, needs_of
from woodmath.piece import Piece
from woodmath.piece_as_made import CUT
from woodmath.piece_file import demo_text

CAT_BED = demo_text("cat-bed")


def made(cut: str, *tables: str) -> Piece:
    return Piece.from_text(CAT_BED + f"\n[as_made]\ncut = [{cut}]\n" + "\n".join(tables) + "\n")


def told(piece: Piece) -> dict[str, Finding]:
    return {finding.place: finding for finding in as_made_findings(piece)}


def stops(piece: Piece) -> list[str]:
    return [finding.place for finding in as_made_findings(piece) if finding.severity == "stop"]


def test_measured_values_are_in_place_and_the_plan_is_remembered() -> None:
    piece = made('"posts"', '[as_made.side]\nthickness = "13/16"')
    assert piece.side is not None and piece.side.thickness == 0.8125
    assert piece.planned == Piece.demo("cat-bed") and piece.cut == ("posts",)
    [change] = piece.changes
    assert (change.key, change.planned, change.made) == ("side.thickness", 0.875, 0.8125)


def test_a_piece_that_says_nothing_of_it_is_its_own_plan() -> None:
    piece = Piece.demo("cat-bed")
    assert piece.planned is piece and piece.changes == () and piece.cut == ()
    assert told(piece) == {}


def test_what_is_cut_but_came_out_as_planned_needs_no_remark() -> None:
    piece = made('"posts", "rockers"')
    assert piece.planned == Piece.demo("cat-bed") and told(piece) == {}


def test_a_board_that_came_out_thinner_changes_the_rebate_that_is_not_yet_cut() -> None:
    # By hand: 7/8 less a tongue of 1/2 leaves 3/8 for the rebate; of 13/16 it leaves 5/16.
    remarks = told(made('"posts"', '[as_made.side]\nthickness = "13/16"'))
    assert "depth of the rebate 3/8 → 5/16" in remarks["the side panels"].reason
    assert remarks["the side panels"].severity == "note"
    assert "the posts" not in remarks


def test_a_mortise_that_came_out_wider_changes_tenons_bevels_and_reaches_of_what_is_not_cut() -> None:
    remarks = told(made('"posts"', '[as_made.joint]\ntenon_thickness = "9/16"\nother_thickness = "1/2"'))
    assert stops(made('"posts"', '[as_made.joint]\ntenon_thickness = "9/16"')) == []
    end, side = remarks["the end panels"].reason, remarks["the side panels"].reason
    assert "thickness of the tenons 1/2 → 9/16" in end and "bevel of the tenons' ends 45.0° → " in end
    assert "bevel of the tenons' ends 45.0° → " in side and "thickness of the tenons" not in side


def test_sides_that_were_cut_to_a_lower_end_must_be_made_again_with_the_numbers() -> None:
    piece = made('"posts", "end panels", "side panels"', '[as_made.end]\nheight = "8 1/4"')
    assert "the side panels" in stops(piece)
    remark = told(piece)["the side panels"]
    # By hand, Pythagoras: 8.25 and 1.25 outward make 8.344, a whole 8 1/4 where 8 and 1.25 made 8.097.
    assert "width, along the post 8 1/8 and half a mark under → 8 3/8 and half a mark under" in remark.reason
    assert "must be made again" in remark.remedy
    assert "the end panels" not in told(piece)


def test_a_higher_end_asks_for_longer_grooves_and_for_no_new_posts() -> None:
    higher = made('"posts", "end panels", "side panels"', '[as_made.end]\nheight = "8 1/8"')
    remark = told(higher)["the posts"]
    assert remark.severity == "note" and stops(higher) == ["the side panels"]
    # By hand, Pythagoras: the slope grows from 8.097 to 8.221, and the groove's upper end with it.
    assert (
        "upper end of the groove, over the shoulder 10 13/16 and half a mark over → 10 15/16" in remark.reason
    )
    lower = made('"posts", "end panels", "side panels"', '[as_made.end]\nheight = "7 7/8"')
    assert "the posts" not in told(lower)


def test_the_same_sides_not_yet_cut_are_only_marked_anew() -> None:
    piece = made('"end panels"', '[as_made.end]\nheight = "8 1/8"')
    assert stops(piece) == []
    assert told(piece)["the side panels"].severity == "note"


def test_tenons_and_mortises_that_are_both_cut_and_differ_stop_the_work() -> None:
    piece = made('"posts", "end panels"', '[as_made.joint]\ntenon_thickness = "9/16"')
    assert "the posts" in stops(piece)
    assert "width of the end's mortises 1/2 → 9/16" in told(piece)["the posts"].reason


def test_a_bottom_that_was_cut_for_a_longer_bed_must_be_made_again() -> None:
    piece = made('"bottom"', '[as_made.side]\nlength = "17 1/2"')
    assert stops(piece) == ["the bottom"] and "It was cut" in told(piece)["the bottom"].reason


def test_less_than_half_a_mark_is_as_planned() -> None:
    piece = made('"posts", "end panels", "side panels", "bottom"', "[as_made.end]\nheight = 8.02")
    assert stops(piece) == [] and list(told(piece)) == ["what was measured"]


def test_tenons_in_another_number_are_compared_too() -> None:
    piece = made('"posts"', '[as_made.joint]\ntenons = [{ place = "3/4", width = "2 1/2" }]')
    remark = told(piece)["the end panels"]
    assert "tenon 2, width is not wanted any more" in remark.reason


def test_sizes_that_make_no_case_leave_the_stop_to_the_joint() -> None:
    piece = made('"posts"', '[as_made.joint]\nset_back = "1 5/8"')
    assert list(told(piece)) == ["what was measured"]
    assert piece.findings()[0].severity == "stop"


@pytest.mark.parametrize(
    ("path", "cut", "part"),
    [
        ("side.thickness", (), "side panels"),
        ("joint.tenon_thickness", ("posts",), "posts"),
        ("joint.tenon_thickness", ("posts", "end panels"), "end panels"),
        ("joint.tongue.length", (), "end panels"),
        ("joint.tongue.clearance", (), "posts"),
        ("rocker.tenon.width", ("rockers",), "rockers"),
        ("bit.diameter", (), ""),
    ],
)
def test_a_size_is_measured_on_the_part_that_there_is(path: str, cut: tuple[str, ...], part: str) -> None:
    assert holder(path, cut) == part


def test_every_part_that_can_be_cut_has_its_numbers() -> None:
    assert tuple(needs_of(Piece.demo("cat-bed"))) == CUT
    assert tuple(needs_of(Piece.demo("log-box"))) == ("posts", "end panels", "side panels", "bottom")
    for name in ("cat-bed", "hound-bed", "log-box"):
        for part, needs in needs_of(Piece.demo(name)).items():
            assert len({need.what for need in needs}) == len(needs), part


def test_a_longer_foot_tenon_asks_for_deeper_mortises_in_the_rockers() -> None:
    text = demo_text("cat-bed")
    piece = Piece.from_text(
        f'{text}\n[as_made]\ncut = ["posts", "rockers"]\n[as_made.rocker.tenon]\nlength = "7/8"\n', "bed.toml"
    )
    (stop,) = (finding for finding in piece.findings() if finding.severity == "stop")
    assert stop.place == "the rockers" and "depth of the mortises 13/16 → 15/16" in stop.reason


def test_a_wider_bead_moves_the_stops_of_grooves_and_tongues() -> None:
    text = demo_text("cat-bed")
    piece = Piece.from_text(
        f'{text}\n[as_made]\ncut = ["posts", "end panels"]\n[as_made.bead]\nwidth = "5/8"\n', "bed.toml"
    )
    stops = {finding.place for finding in piece.findings() if finding.severity == "stop"}
    assert {"the posts", "the end panels"} <= stops
