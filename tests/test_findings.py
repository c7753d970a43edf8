"""The master's remarks: each is provoked by changing a sound piece, and is absent from the sound one."""

from __future__ import annotations

import math
import re
from dataclasses import asdict, replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.drawing import Hatch
from woodmath.finding import SEVERITIES, Finding
from woodmath.piece import Piece
from woodmath.piece_tables import TenonPlace
from woodmath.post_joint import ENDS, PostJoint
from woodmath.rule import Rule
from woodmath.views.post_joint import post_section
from woodmath.wall_findings import thin_walls

DEMOS = ("cat-bed", "log-box")


def changed(name: str, **tables: dict[str, Any]) -> Piece:
    piece = Piece.demo(name)
    return replace(
        piece, **{table: replace(getattr(piece, table), **sizes) for table, sizes in tables.items()}
    )


def remark(piece: Piece, severity: str, place: str) -> Finding:
    """Return the one remark of that severity and place, which the demo pieces must not have."""
    for name in DEMOS:
        assert not [f for f in Piece.demo(name).findings() if (f.severity, f.place) == (severity, place)]
    found = [
        finding for finding in piece.findings() if (finding.severity, finding.place) == (severity, place)
    ]
    assert len(found) == 1, f"{len(found)} remarks '{severity}' on {place} in:\n" + "\n".join(
        map(str, piece.findings())
    )
    return found[0]


def test_the_demo_pieces_have_nothing_to_stop_and_nothing_to_take_care_of() -> None:
    assert {finding.severity for name in DEMOS for finding in Piece.demo(name).findings()} == {"note"}


def test_a_remark_reads_as_a_sentence_with_its_place_and_its_remedy() -> None:
    finding = Finding("stop", "the posts", "They are short.", "Cut longer ones.")
    assert str(finding) == "Stop, the posts: They are short. Cut longer ones."


# --- walls ---


def test_a_wall_under_a_quarter_of_an_inch_beside_a_mortise_is_a_caution() -> None:
    # common practice
    finding = remark(
        changed("cat-bed", joint={"set_back": 3 / 16}), "caution", "the wall outside the mortises"
    )
    assert finding.reason == (
        "Between each mortise and the outer face of the post 3/16 is left, and less than 1/4 splits easily "
        "when you lever against it."
    )
    assert finding.remedy.startswith("Set them further back")


def test_a_wall_under_an_eighth_of_an_inch_stops_the_work() -> None:
    # common practice
    finding = remark(changed("cat-bed", joint={"set_back": 1 / 16}), "stop", "the wall outside the mortises")
    assert "1/16 is left, and less than 1/8 breaks out" in finding.reason


def test_a_mortise_that_is_open_on_the_face_of_the_post_stops_the_work() -> None:
    bed = changed("cat-bed", joint={"set_back": 1.25, "end_clearance": 0})
    finding = remark(bed, "stop", "the wall inside the mortises")
    assert "the inside face of the post 0 is left" in finding.reason
    assert finding.remedy.startswith("Set them less far back")


def test_a_thin_wall_beside_one_mortise_only_is_named_and_the_sound_one_is_not() -> None:
    box = changed("log-box", joint={"other_set_back": 5})
    finding = remark(box, "caution", "the wall outside the side's mortise")
    assert finding.reason.startswith("Between the side's mortise and the outer face of the post 5 is left")
    assert finding.remedy.startswith("Set it further back")
    assert not [each for each in box.findings() if each.place == "the wall outside the end's mortise"]


def test_two_thin_walls_that_are_not_alike_are_both_told_each_by_its_own_size() -> None:
    box = changed("log-box", joint={"set_back": 5, "other_set_back": 2.5})
    assert "5 is left" in remark(box, "caution", "the wall outside the end's mortise").reason
    assert "2.5 is left" in remark(box, "stop", "the wall outside the side's mortise").reason


@pytest.mark.parametrize(
    ("joint", "walls"),
    [
        (PostJoint(45, 12, 12), []),
        (PostJoint(45, 12, 5), [("outside_tenon", "outside_other")]),
        (PostJoint(45, 12, 12, 12, 4), [("outside_other",), ("behind_tenon",)]),
        (PostJoint(45, 12, 30), [("inside_tenon", "inside_other")]),
        (PostJoint(45, 12, 12, ends="one_long", reserve=2), [("behind_tenon",)]),
        (
            PostJoint(45, 12, 4, ends="one_long", reserve=4),
            [("outside_tenon", "outside_other"), ("behind_tenon",), ("behind_other",)],
        ),
    ],
)
def test_a_remark_on_walls_says_which_of_the_joints_walls_they_are(
    joint: PostJoint, walls: list[tuple[str, ...]]
) -> None:
    told = list(thin_walls(Rule.millimetres(0.5), joint))
    assert [remark.walls for remark in told] == walls
    for remark in told:
        sizes = [getattr(joint.walls, name) for name in remark.walls]
        assert f" {sizes[0]:g} is left" in remark.finding.reason
        assert max(sizes) == pytest.approx(min(sizes))


@pytest.mark.parametrize(
    ("set_back", "other", "struck"),
    # In log-box sizes: outside walls are the set-backs, and each mortise stops that far from the far face.
    [(12.0, 11.0, 0), (5.0, 5.5, 2), (5.0, 5.0, 2), (5.0, 4.0, 3), (4.0, 4.0, 4), (0.0, 5.0, 1)],
)
def test_every_wall_that_is_told_of_is_struck_in_the_section(
    set_back: float, other: float, struck: int
) -> None:
    drawing = post_section.drawing(Piece.demo("log-box"), set_back=set_back, other_set_back=other)
    hatched = [shape for shape in drawing.shapes if isinstance(shape, Hatch)]
    assert len(hatched) == struck
    # The narrow way of each is the wall itself, and it touches a face of the post.
    for hatch in hatched:
        xs, ys = [x for x, _ in hatch.outline], [-y for _, y in hatch.outline]
        assert min(max(xs) - min(xs), max(ys) - min(ys)) in {set_back, other}
        assert min(*xs, *ys) == 0


def test_a_wall_behind_a_mortise_grows_with_the_other_mortises_set_back() -> None:
    # With mitred ends each mortise stops at the other's outer cheek.
    box = changed("log-box", joint={"other_set_back": 4})
    finding = remark(box, "caution", "the wall behind the end's mortise")
    assert finding.remedy.startswith("Set the side's mortise further back")
    cured = changed("log-box", joint={"other_set_back": 6})
    assert not [each for each in cured.findings() if each.place.startswith("the wall behind")]


@given(
    set_back=some.floats(0, 30),
    other=some.floats(0, 30),
    reserve=some.floats(0, 40),
    ends=some.sampled_from(ENDS),
)
def test_no_wall_that_is_thinner_than_its_limit_is_passed_over_and_none_is_told_twice(
    set_back: float, other: float, reserve: float, ends: str
) -> None:
    joint = PostJoint(45, 10, set_back, 12, other, ends=ends, reserve=reserve)
    told = [name for remark in thin_walls(Rule.millimetres(0.5), joint) for name in remark.walls]
    limits = {"outside": 6, "inside": 6, "behind": 4.5}
    thin = [name for name, wall in asdict(joint.walls).items() if wall < limits[name.split("_")[0]] - 1e-6]
    assert len(told) == len(set(told))
    assert set(thin) <= set(told)
    assert all(getattr(joint.walls, name) < limits[name.split("_")[0]] for name in told)


@pytest.mark.parametrize(("reserve", "severity"), [(4.4, "caution"), (2.9, "stop")])
def test_less_than_4_5_mm_behind_a_mortise_is_too_little(reserve: float, severity: str) -> None:
    # At least 4.5 mm of wood is left behind: diyinfo.org, "Constructing Mortice and Tenon Joints" (READ).
    box = changed("log-box", joint={"ends": "one_long", "reserve": reserve})
    finding = remark(box, severity, "the wall behind the end's mortise")
    assert finding.remedy.startswith("Give reserve a greater length")
    enough = changed("log-box", joint={"ends": "one_long", "reserve": 4.5})
    assert not [each for each in enough.findings() if each.place.startswith("the wall behind")]


# --- the bit in the mortise ---


def test_a_screw_point_that_comes_through_stops_the_work_and_the_depth_that_works_is_named() -> None:
    finding = remark(changed("cat-bed", bit={"point_length": 9 / 16}), "stop", "the bottom of the mortises")
    assert finding.reason == (
        "The screw's point comes through: 1 1/4 deep plus 9/16 of screw needs 1 13/16, and the post is 1 3/4."
    )
    assert finding.remedy == "Bore to 1 1/8 or less, and finish the bottom with a chisel."


def test_the_depth_that_is_bored_is_the_mortises_and_not_the_tenons() -> None:
    # A point as long as the tenon leaves wood would pass if the clearance were not bored.
    bed = changed("cat-bed", joint={"end_clearance": 0.25}, bit={"point_length": 9 / 16})
    assert "1 1/4 deep" in remark(bed, "stop", "the bottom of the mortises").reason


def test_a_screw_longer_than_the_post_is_thick_asks_for_another_bit() -> None:
    finding = remark(changed("cat-bed", bit={"point_length": 1.75}), "stop", "the bottom of the mortises")
    assert finding.remedy.startswith("Take a bit with a shorter screw")


def test_a_mortise_through_the_post_takes_the_bit_itself_through_the_far_face() -> None:
    bed = changed("cat-bed", joint={"ends": "one_long", "reserve": 0.0})
    finding = remark(bed, "stop", "the bottom of the mortises")
    assert finding.reason == "The bit comes through: the mortise is 1 3/4 deep, and the post is 1 3/4."
    # A through mortise is laid out on both faces and bored from both: Noyes, Handwork in Wood, 1910, ch. VII,
    # nos. 31-32 (READ).
    assert "bore from both" in finding.remedy


def test_a_point_within_one_turn_of_the_far_face_is_a_caution() -> None:
    finding = remark(
        changed("cat-bed", bit={"point_length": 7 / 16}), "caution", "the bottom of the mortises"
    )
    assert (
        "stands 1/16 from the far face, and one turn of the brace takes it 0.083 in further" in finding.reason
    )


def test_a_bit_that_cannot_be_bored_with_is_a_remark_and_not_a_crash() -> None:
    bed = changed("cat-bed", bit={"threads_per_inch": None, "lead": 0.0})
    assert "lead" in remark(bed, "stop", "the auger bit").reason


def test_a_bit_wider_than_the_narrower_mortise_stops_the_work() -> None:
    finding = remark(changed("log-box", bit={"diameter": 13}), "stop", "the auger bit")
    assert finding.reason == "It is 13 across, wider than the end's mortise, which is 12."
    # Bore 1/16 inch under the mortise's width: WOOD magazine, "Mortises and tenons" (READ). Here 1.5875 mm.
    assert finding.remedy == "Bore with 10 or less, and pare to the line."


def test_a_bit_as_wide_as_the_mortise_leaves_nothing_to_pare() -> None:
    # Bore 1/16 inch under the mortise's width: WOOD magazine, "Mortises and tenons" (READ).
    finding = remark(changed("cat-bed", bit={"diameter": 0.5}), "note", "the auger bit")
    assert finding.remedy == "Bore with 7/16 or less, about 1/16 under the mortise, and pare to the line."


def test_a_mortise_too_narrow_for_any_bit_is_chopped() -> None:
    bed = changed("cat-bed", joint={"tenon_thickness": 1 / 16})
    assert remark(bed, "stop", "the auger bit").remedy.startswith("Chop it with the chisel alone")


# --- tenons ---


def test_tenons_that_collide_along_the_post_stop_the_work() -> None:
    bed = changed("cat-bed", joint={"tenons": (TenonPlace(4, 2.5), TenonPlace(2, 2.5))})
    finding = remark(bed, "stop", "tenons 2 and 1")
    assert (
        finding.reason
        == "They collide: along the post, one ends 4 1/2 from the panel's lower edge, the next begins at 4."
    )


def test_two_mortises_with_hardly_any_post_between_them_are_a_caution() -> None:
    bed = changed("cat-bed", joint={"tenons": (TenonPlace(1, 2.5), TenonPlace(3.625, 2.5))})
    assert "1/8 of the post is left" in remark(bed, "caution", "tenons 1 and 2").reason


def test_a_tenon_that_runs_off_the_panel_stops_the_work() -> None:
    box = changed("log-box", joint={"tenons": (TenonPlace(261, 60),)})
    finding = remark(box, "stop", "tenon 1")
    assert finding.reason == (
        "It ends 321 from the panel's lower edge, and the whole edge along the post measures 320."
    )


@pytest.mark.parametrize(("end", "runs_off"), [(8.05, False), (8.09, False), (8.1, True)])
def test_a_tenon_on_a_leaning_post_has_the_slope_to_stand_on_and_not_the_height(
    end: float, runs_off: bool
) -> None:
    # By Pythagoras the edge is the root of 8² + 1.25², 8.097 (COMP).
    bed = changed("cat-bed", joint={"tenons": (TenonPlace(end - 2.5, 2.5),)})
    assert runs_off == any(each.place == "tenon 1" for each in bed.findings())


def test_a_tenon_wider_than_five_times_its_thickness_is_a_caution() -> None:
    # Manual of Purpose-Made Woodworking Joinery, p. 23 (READ).
    bed = changed("cat-bed", joint={"tenons": (TenonPlace(1, 2.5625),)})
    assert "wider than 5 times its thickness, 2 1/2" in remark(bed, "caution", "tenon 1").reason


def test_a_tenon_is_a_quarter_to_a_third_of_the_post() -> None:
    # common practice
    thin = changed("cat-bed", joint={"tenon_thickness": 3 / 8})
    assert remark(thin, "note", "the end's tenons").reason.endswith(
        "a third of the post would be 7/16 to 9/16."
    )
    box = changed("log-box", joint={"other_thickness": 16.0})
    assert "They are 16 thick" in remark(box, "note", "the side's tenons").reason


def test_a_tenon_as_thick_as_its_board_has_no_shoulder_and_stops_the_work() -> None:
    bed = changed("cat-bed", side={"thickness": 0.5})
    assert "bare-faced tenon needs a shoulder" in remark(bed, "stop", "the side's tenons").reason


def test_tenons_without_a_closing_clearance_hold_the_joint_open() -> None:
    finding = remark(changed("cat-bed", joint={"end_clearance": 0}), "caution", "the ends of the tenons")
    # A stopped mortise is cut 2 mm deeper than the tenon is long: diyinfo.org, as above (READ).
    assert finding.remedy == "Give end_clearance about 1/16."
    box = changed("log-box", joint={"end_clearance": 0})
    assert remark(box, "caution", "the ends of the tenons").remedy == "Give end_clearance about 2."


def test_a_coarse_rule_still_names_a_clearance_that_it_can_mark() -> None:
    bed = changed("cat-bed", joint={"end_clearance": 0})
    coarse = replace(bed, rule=type(bed.rule).inches(4))
    assert remark(coarse, "caution", "the ends of the tenons").remedy == "Give end_clearance about 1/4."


def test_a_joint_that_no_post_can_hold_stops_the_work_with_the_joints_own_words() -> None:
    finding = remark(changed("cat-bed", joint={"set_back": 1.5}), "stop", "the post joint")
    assert "does not fit the post" in finding.reason
    assert "[joint]" in finding.remedy


def test_a_clearance_that_eats_the_tenon_stops_the_work() -> None:
    finding = remark(changed("cat-bed", joint={"end_clearance": 1}), "stop", "the post joint")
    assert "learance" in finding.reason


def test_mitred_tenons_of_unequal_thickness_take_two_bevels() -> None:
    # The tangents are 15/12 and 12/15: 51.34 and 38.66 degrees, in any table of tangents (from memory).
    [finding] = [each for each in Piece.demo("log-box").findings() if each.place == "the mitred ends"]
    assert finding.severity == "note"
    assert "the end's is 51.3 off square, the side's 38.7" in finding.reason
    equal = changed("log-box", joint={"other_thickness": None})
    assert "the mitred ends" not in {each.place for each in equal.findings()}


@pytest.mark.parametrize("ends", ENDS)
def test_tenons_that_meet_cut_the_inside_corner_free_however_they_end(ends: str) -> None:
    box = changed("log-box", joint={"ends": ends, "reserve": 10})
    [finding] = [each for each in box.findings() if each.place == "the inside corner of the post"]
    # The mortises leave 45 - 11 - 15 and 45 - 12 - 12 inside.
    assert (finding.severity, "19 by 21 over their height" in finding.reason) == ("note", True)


def test_without_wood_inside_the_mortises_there_is_no_corner_to_care_for() -> None:
    places = {
        each.place for each in changed("cat-bed", joint={"set_back": 1.25, "end_clearance": 0}).findings()
    }
    assert "the wall inside the mortises" in places
    assert "the inside corner of the post" not in places


# --- posts, rack, rocker ---


def test_posts_too_short_for_foot_panel_and_top_stop_the_work() -> None:
    finding = remark(changed("log-box", post={"length": 379}), "stop", "the length of the posts")
    assert finding.reason == "Foot, panel and top make 380 along the post, and the posts are 379 long."


@pytest.mark.parametrize(("length", "too_short"), [(13.05, True), (13.1, False)])
def test_a_leaning_post_must_be_as_long_as_the_slope_and_not_only_as_the_piece_is_high(
    length: float, too_short: bool
) -> None:
    # 3 and 8.097 (the root of 8² + 1.25²) and 2 make 13.097 (COMP).
    bed = changed("cat-bed", post={"length": length})
    # Whether enough is left for the tenon in the rocker is another remark.
    told = (each.reason for each in bed.findings() if each.place == "the length of the posts")
    assert too_short == any(reason.startswith("Foot, panel and top make") for reason in told)


def test_the_demo_posts_hold_foot_panel_and_top_and_the_cats_a_tenon_for_the_rocker() -> None:
    for name, left in (("cat-bed", 0.75), ("log-box", 0.0)):
        piece = Piece.demo(name)
        assert piece.end is not None
        panel = math.hypot(piece.end.height, (piece.end.top - piece.end.bottom) / 2)
        assert piece.post.length - piece.post.foot - panel - piece.post.top >= left


def test_the_wood_above_the_highest_mortise_is_measured_along_the_leaning_post() -> None:
    # 8.097 of slope and 1 above it, less 8 1/8 to the tenon's upper edge: 0.972 is less than 25 mm (COMP).
    bed = changed("cat-bed", post={"top": 1.0}, joint={"tenons": (TenonPlace(5.625, 2.5),)})
    # 0.028 is a little less than half of a sixteenth.
    assert "Only 1 and half a mark under" in remark(bed, "caution", "the top of the posts").reason


def test_a_mortise_near_the_end_of_a_post_wants_a_horn() -> None:
    # A horn of 25 to 35 mm: diyinfo.org, "Constructing Mortice and Tenon Joints" (READ).
    low, high = (
        changed("log-box", post={"foot": 0.0}, joint={"tenons": (TenonPlace(24, 60),)}),
        changed("log-box", post={"top": 0.0}, joint={"tenons": (TenonPlace(240, 60),)}),
    )
    assert (
        "Only 24 of the post stands below the lowest mortise"
        in remark(low, "caution", "the foot of the posts").reason
    )
    assert (
        "Only 20 of the post stands above the highest"
        in remark(high, "caution", "the top of the posts").reason
    )


def test_a_chisel_that_does_not_hang_in_the_rack_is_missed_and_the_nearest_is_named() -> None:
    finding = remark(
        changed("log-box", tools={"chisels": (6.0, 15.0, 10.0)}), "caution", "the chisels in the rack"
    )
    assert finding.reason == "There is no chisel of 12 for the end's mortise; there are 6, 10, 15."
    assert finding.remedy == "Lay the end's mortise out to a chisel that you have, such as 10, or borrow one."


def test_each_mortise_wants_its_own_chisel_and_two_alike_want_one() -> None:
    box = changed("log-box", tools={"chisels": (20.0,)})
    assert [each.place for each in box.findings() if each.severity == "caution"] == [
        "the chisels in the rack"
    ] * 2
    bed = changed("cat-bed", tools={"chisels": (0.75,)})
    assert [each.place for each in bed.findings() if each.severity == "caution"] == [
        "the chisels in the rack"
    ]


def test_a_bit_that_does_not_hang_in_the_rack_is_missed() -> None:
    finding = remark(changed("cat-bed", tools={"bits": (0.25, 0.375)}), "caution", "the bits in the rack")
    assert finding.reason == "There is no bit of 7/16 for the mortises; there are 1/4, 3/8."


def test_a_rack_that_nobody_listed_is_not_held_against_anyone() -> None:
    bed = changed("cat-bed", tools={"chisels": (), "bits": ()})
    assert bed.findings() == Piece.demo("cat-bed").findings()


@pytest.mark.parametrize("radius", [20.0, 60.0])
def test_a_rocker_that_no_ellipse_has_cannot_be_drawn(radius: float) -> None:
    # With half the chord 9 1/2 and the rise 2, an ellipse wants a radius from 22.5625 to 45.125 (COMP).
    finding = remark(changed("cat-bed", rocker={"bottom_radius": radius}), "stop", "the rocker")
    assert finding.reason.startswith(
        f"It is 19 long with a rise of 2, and a radius of {radius:g} at the bottom"
    )
    assert f"is too {'round' if radius < 30 else 'flat'}: " in finding.reason
    assert finding.remedy.endswith(" or bottom_radius to more than 22 9/16 and up to 45 1/8.")


@given(
    length=some.floats(1, 60), rise=some.floats(0.5, 12), radius=some.floats(0.5, 200), nearer=some.booleans()
)
def test_every_mark_that_a_remark_on_the_rocker_names_makes_a_rocker(
    length: float, rise: float, radius: float, nearer: bool
) -> None:
    bed = changed("cat-bed", rocker={"length": length, "rise": rise, "bottom_radius": radius, "depth": 50.0})
    told = [each for each in bed.findings() if each.place == "the rocker"]
    for finding in told:
        named = re.findall(r"(?:from|than|to) (\d[\d ./]*)", finding.remedy)
        limits = [bed.rule.read(text.strip(" .")) for text in named]
        assert len(limits) == 6
        for key, least, most in zip(
            ("length", "rise", "bottom_radius"), limits[::2], limits[1::2], strict=True
        ):
            # A hair inside either limit, which is itself left out at one end.
            size = least * 1.000_01 if nearer else most * 0.999_99
            assert least < most
            cured = changed(
                "cat-bed",
                rocker={"length": length, "rise": rise, "bottom_radius": radius, "depth": 50.0} | {key: size},
            )
            assert not [each for each in cured.findings() if each.place == "the rocker"]


def test_a_rocker_of_no_size_is_a_remark_and_not_a_crash() -> None:
    finding = remark(changed("cat-bed", rocker={"rise": 0.0}), "stop", "the rocker")
    assert finding.remedy == "Change the size under [rocker]."


def test_a_rocker_whose_heels_rise_out_of_the_board_stops_the_work() -> None:
    finding = remark(changed("cat-bed", rocker={"depth": 2.0}), "stop", "the rocker's heels")
    assert finding.reason.startswith("The rocker is 2 deep and its heels rise 2:")


# --- all of them ---


def test_stops_come_first_then_cautions_then_notes() -> None:
    bed = changed(
        "cat-bed",
        joint={"end_clearance": 0, "tenon_thickness": 3 / 8, "set_back": 3 / 16},
        rocker={"bottom_radius": 60.0},
        bit={"diameter": 0.5},
    )
    order = [SEVERITIES.index(finding.severity) for finding in bed.findings()]
    assert order == sorted(order)
    assert set(order) == {0, 1, 2}


size = some.floats(0.001, 40)


@given(
    sizes=some.lists(size, min_size=12, max_size=12),
    ends=some.sampled_from(ENDS),
    clearance=some.floats(0, 2),
    name=some.sampled_from(DEMOS),
)
def test_whatever_can_be_written_in_a_file_is_answered_with_remarks_and_never_with_a_crash(
    sizes: list[float], ends: str, clearance: float, name: str
) -> None:
    square, length, foot, thickness, back, other, reserve, across, point, place, width, lead = sizes
    piece = changed(
        name,
        post={"square": square, "length": length, "foot": foot},
        joint={
            "tenon_thickness": thickness,
            "set_back": back,
            "other_thickness": other,
            "ends": ends,
            "reserve": reserve,
            "end_clearance": clearance,
            "tenons": (TenonPlace(place, width), TenonPlace(width, place)),
        },
        bit={"diameter": across, "point_length": point, "lead": lead, "threads_per_inch": None},
    )
    for finding in piece.findings():
        assert finding.severity in SEVERITIES
        for words in (finding.place, finding.reason, finding.remedy):
            assert words and "nan" not in words and "None" not in words
        assert finding.reason.endswith(".") and finding.remedy.endswith(".")
