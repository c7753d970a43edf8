"""The patterns at true size: what their drawings say, measured on their own points, against the piece and by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from picture_checks import assert_sound_and_readable

from woodmath.case import Case
from woodmath.drawing import Label, Line, Wood
from woodmath.paper import UNITS_IN_A_MILLIMETRE
from woodmath.pattern import KnownLength, Pattern
from woodmath.patterns import patterns_of
from woodmath.piece import Piece
from woodmath.piece_file import demo_names
from woodmath.post_joint import ENDS

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")


def pattern(piece: Piece, name: str) -> Pattern:
    return next(each for each in patterns_of(piece) if each.name == name)


def known(piece: Piece, name: str) -> dict[str, float]:
    return {each.name: each.length for each in pattern(piece, name).known_lengths}


def changed(piece: Piece, table: str, **values: object) -> Piece:
    return replace(piece, **{table: replace(getattr(piece, table), **values)})


VARIATIONS = {
    **{name: Piece.demo(name) for name in demo_names()},
    **{f"cat's bed, {ends}": changed(CAT_BED, "joint", ends=ends, reserve=0.5) for ends in ENDS},
    "leaning inward": changed(CAT_BED, "end", top=9.5),
    "no tongue, no bead": replace(changed(CAT_BED, "joint", tongue=None), bead=None),
    "no tenons": changed(CAT_BED, "joint", tenons=()),
    "no foot tenon": changed(CAT_BED, "rocker", tenon=None),
    "foot tenon along the post": changed(
        CAT_BED, "rocker", tenon=replace(CAT_BED.rocker.tenon, line="along the post")
    ),
}


@pytest.mark.parametrize("piece", VARIATIONS.values(), ids=VARIATIONS.keys())
def test_every_pattern_is_a_sound_drawing_at_true_size_with_readable_words(piece: Piece) -> None:
    for each in patterns_of(piece):
        assert_sound_and_readable(each.drawing)
        millimetres = each.drawing.frame.scale / UNITS_IN_A_MILLIMETRE
        assert millimetres == pytest.approx(piece.rule.millimetres_per_unit)


def crosses(ends: tuple[tuple[float, float], tuple[float, float]], at: tuple[float, float]) -> bool:
    """Tell whether a point lies on the way between two others."""
    (x0, y0), (x1, y1) = ends
    return math.isclose(
        math.dist((x0, y0), at) + math.dist(at, (x1, y1)), math.dist((x0, y0), (x1, y1)), abs_tol=1e-6
    )


def lines_through(each: Pattern, at: tuple[float, float]) -> int:
    count = 0
    for shape in each.drawing.shapes:
        if isinstance(shape, Wood) or (isinstance(shape, Line) and shape.closed):
            points = shape.outline if isinstance(shape, Wood) else shape.points
            pairs = list(zip(points, (*points[1:], points[0]), strict=True))
        elif isinstance(shape, Line):
            pairs = list(zip(shape.points, shape.points[1:], strict=False))
        else:
            continue
        count += any(crosses(pair, at) for pair in pairs)
    return count


@pytest.mark.parametrize("piece", VARIATIONS.values(), ids=VARIATIONS.keys())
def test_every_known_length_begins_and_ends_on_a_line_that_is_drawn(piece: Piece) -> None:
    for each in patterns_of(piece):
        assert each.known_lengths, each.name
        for length in each.known_lengths:
            assert isinstance(length, KnownLength) and length.length > 0
            # The rocker's curve is drawn in short straight pieces, and a point of it lies beside them by a hair.
            if (each.name, length.name) != ("Rocker", "depth in the middle"):
                assert lines_through(each, length.start), (each.name, length.name)
                assert lines_through(each, length.end), (each.name, length.name)


def test_the_end_of_the_cats_bed_measures_what_its_file_says() -> None:
    joint = CAT_BED.post_joint()
    assert known(CAT_BED, "End panel") == pytest.approx(
        {
            "height": 8.0,
            "shoulder to long point": joint.tenon.reach,
            "tenon's width": 2.5,
            # Less twice bead and quirk, 1/4 and 1/16 (COMP).
            "between the beads": 8 - 2 * (1 / 4 + 1 / 16),
        }
    )


def test_the_side_is_as_wide_as_the_ends_slope_is_long() -> None:
    # Root of 8² + 1.25² (Pythagoras, COMP).
    assert known(CAT_BED, "End of a side panel")["width of the side"] == pytest.approx(8.0970674)


def test_the_two_hands_of_the_post_are_mirror_images() -> None:
    for piece in (CAT_BED, LOG_BOX):
        left, right = (pattern(piece, f"Post, {hand} hand") for hand in ("left", "right"))
        assert [length.length for length in left.known_lengths] == pytest.approx(
            [length.length for length in right.known_lengths]
        )
        for one, other in zip(left.drawing.shapes, right.drawing.shapes, strict=True):
            if isinstance(one, Wood) and isinstance(other, Wood):
                assert [each for x, y in one.outline for each in (-x, y)] == pytest.approx(
                    [each for point in other.outline for each in point]
                )


def test_the_mortises_stand_where_set_back_and_thickness_put_them() -> None:
    (net,) = (each for each in patterns_of(LOG_BOX) if each.name == "Post, right hand")
    mortises = [shape for shape in net.drawing.shapes if isinstance(shape, Line) and shape.fill == "void"]
    lefts = sorted({(min(x for x, _ in hole.points), max(x for x, _ in hole.points)) for hole in mortises})
    # From the file: the side's 11 from the face edge and 15 wide, the end's 12 from the face side and 12 wide.
    assert lefts == [(11 - 45, 26 - 45), (45 - 24, 45 - 12)]


def test_the_shoulder_is_level_round_the_post() -> None:
    # Rolled up again, every corner of the shoulder line lies at height 0 of the case.
    case = Case.of(CAT_BED)
    (net,) = (each for each in patterns_of(CAT_BED) if each.name == "Post, right hand")
    (shoulder,) = (
        shape
        for shape in net.drawing.shapes
        if isinstance(shape, Line) and shape.role == "accent" and not shape.closed and len(shape.points) == 5
    )
    depths = (case.square, case.square, 0.0, 0.0, case.square)
    for (_, along), depth in zip(shoulder.points, depths, strict=True):
        assert case.at(along, depth)[1] == pytest.approx(0.0, abs=1e-12)


def test_the_stick_and_the_post_say_where_the_foots_tenon_ends_and_where_the_post_is_sawn() -> None:
    # The tenon is 3/4 long, upright; along the post that is 0.759, where 8 up are 8.097 along (by hand, Pythagoras).
    # The post is cut to 14, and foot, panel and top take 13.097 of it: 0.903 stand below the datum.
    for name in ("Story stick", "Post, left hand", "Post, right hand"):
        texts = [shape.text for shape in pattern(CAT_BED, name).drawing.shapes if isinstance(shape, Label)]
        assert texts[texts.index("foot's tenon ends, level") - 1] == "3/4 below"
        assert texts[texts.index("lower end of the post") - 1] == "7/8 below"
    lengths = known(CAT_BED, "Story stick")
    assert lengths["datum to foot's tenon ends, level"] == pytest.approx(0.75 * math.hypot(8, 1.25) / 8)
    assert lengths["datum to lower end of the post"] == pytest.approx(14 - 5 - math.hypot(8, 1.25))
    assert "datum to foot's tenon ends, level" not in known(LOG_BOX, "Story stick")


def test_a_foots_tenon_along_the_post_ends_its_own_length_below_the_datum() -> None:
    bed = VARIATIONS["foot tenon along the post"]
    assert known(bed, "Story stick")["datum to foot's tenon ends, level"] == pytest.approx(0.75)


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat-bed", "log-box"])
def test_a_dashed_short_point_is_named_so_that_nobody_cuts_along_it(piece: Piece) -> None:
    for name in ("End panel", "End of a side panel"):
        shapes = pattern(piece, name).drawing.shapes
        (label,) = (shape for shape in shapes if isinstance(shape, Label) and shape.text == "short point")
        dashed = [shape.points for shape in shapes if isinstance(shape, Line) and shape.role == "hidden"]
        assert any(crosses((ends[0], ends[-1]), label.point) for ends in dashed)


def test_the_pins_of_the_rocker_stand_at_the_foci() -> None:
    ellipse = CAT_BED.ellipse()
    lengths = known(CAT_BED, "Rocker")
    assert lengths["between the pins"] == pytest.approx(ellipse.pin_spacing)
    assert lengths["mortise 1, length"] == pytest.approx(CAT_BED.rocker.tenon.width)
    assert lengths["mortise 1, depth"] == pytest.approx(
        CAT_BED.rocker.tenon.length + CAT_BED.joint.end_clearance
    )


def test_a_rocker_that_cannot_be_has_no_pattern_and_the_others_stay() -> None:
    impossible = changed(CAT_BED, "rocker", bottom_radius=500)
    assert [each.name for each in patterns_of(impossible)] == [
        each.name for each in patterns_of(CAT_BED) if each.name != "Rocker"
    ]
