"""The live rocker: it touches the floor, hangs plumb, rolls without slip, and its ball lies on its curve."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest

from woodmath.drawing import Circle, Drawing, Label, Line, MovingBody, MovingLine, Wood
from woodmath.ellipse import Ellipse
from woodmath.piece import Piece
from woodmath.rocking import RockingBody
from woodmath.rocking_stand import energy_at, stand_at
from woodmath.views.live_rocker import live_rocker
from woodmath.views.rocking_case import CaseOnRocker, brought
from woodmath.views.rocking_scene import BALL, TOUCH

CAT = Piece.demo("cat-bed")
BODY = CAT.rocking_body(load=True)
ROUND = replace(BODY, ellipse=Ellipse(0.4, 0.4), rocker_length=0.6)
INCH = 1 / 0.0254


def drawn(**changes: float | str) -> Drawing:
    return live_rocker.drawing(CAT, **changes)


@pytest.mark.parametrize("tilt", [-50, -30, -12, -1, 0, 1, 7, 20, 32, 33, 50])
@pytest.mark.parametrize("body", [BODY, ROUND, replace(BODY, centre_offset=0.03)])
def test_the_lowest_point_of_the_tilted_rocker_is_on_the_floor_where_it_is_said_to_touch(
    body: RockingBody, tilt: float
) -> None:
    case = CaseOnRocker(body, 1.0, 0.5)
    stand = stand_at(body, tilt)
    half, ellipse = body.rocker_length / 2, body.ellipse
    fine = tuple((x, ellipse.height_at(abs(x))) for x in (half * (n / 20000 - 1) for n in range(40001)))
    points = brought(fine, case.weight, case.pose(tilt))
    lowest = min(points, key=lambda point: point[1])
    assert lowest[1] == pytest.approx(0.0, abs=1e-9)
    assert lowest[0] == pytest.approx(stand.touch, abs=3e-5)


@pytest.mark.parametrize("body", [BODY, ROUND, replace(BODY, centre_offset=0.03)])
def test_it_rolls_without_slip_as_far_as_its_edge_is_long(body: RockingBody) -> None:
    for tilt in (5, 15, body.heel_angle):
        a, b = body.ellipse.half_length, body.ellipse.half_height
        # The touching point by its angle round the ellipse, and the edge up to it laid out in short straight pieces.
        end = math.atan2(a * math.sin(math.radians(tilt)), b * math.cos(math.radians(tilt)))
        points = [(a * math.sin(end * n / 4000), b * (1 - math.cos(end * n / 4000))) for n in range(4001)]
        edge = sum(math.dist(one, other) for one, other in itertools.pairwise(points))
        assert stand_at(body, tilt).touch == pytest.approx(edge, rel=1e-6)


def test_on_its_heel_the_heel_stays_where_it_is() -> None:
    touches = {round(stand_at(BODY, tilt).touch, 12) for tilt in (33, 40, 50, 80)}
    assert len(touches) == 1
    at_the_heel = BODY.heel_angle
    before, after = stand_at(BODY, at_the_heel), stand_at(BODY, at_the_heel * (1 + 1e-9))
    assert before.touch == pytest.approx(after.touch, abs=1e-9)
    assert before.height == pytest.approx(after.height, abs=1e-9)


def test_the_energy_is_greatest_where_it_goes_over() -> None:
    top = stand_at(BODY, BODY.tip_angle)
    assert energy_at(BODY, BODY.tip_angle) == pytest.approx(BODY.barrier, rel=1e-9)
    assert top.lever_arm == pytest.approx(0.0, abs=1e-9)
    assert all(
        energy_at(BODY, tilt) < energy_at(BODY, BODY.tip_angle)
        for tilt in (BODY.tip_angle - 2, BODY.tip_angle + 2)
    )


def test_the_plumb_line_falls_from_the_weight_and_the_lever_arm_ends_at_the_touching_point() -> None:
    drawing = drawn(tilt=15.0)
    stand = stand_at(BODY, 15)
    plumb = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "centre"]
    assert plumb[0].points[0] == pytest.approx((stand.across * INCH, stand.height * INCH))
    assert plumb[0].points[1] == pytest.approx((stand.across * INCH, 0.0))
    arms = [
        shape
        for shape in drawing.shapes
        if isinstance(shape, Line) and shape.role == "accent" and len(shape.points) == 2
    ]
    assert arms[0].points[1] == pytest.approx((stand.touch * INCH, 0.0))


def test_the_centre_of_curvature_is_plumb_over_the_touching_point_and_on_its_way() -> None:
    body = replace(BODY, centre_offset=0.0)
    case = CaseOnRocker(body, 1.0, 0.5)
    centres = case.centres()
    # Upright it is at R over the floor; the way of the centres begins there to both sides.
    middle = centres[len(centres) // 2]
    assert middle == pytest.approx((0.0, body.ellipse.radius_at_bottom), abs=1e-9)
    a, b = body.ellipse.half_length, body.ellipse.half_height
    for x, y in centres:
        # The evolute of the ellipse, any book of curves (from memory): (ax)^(2/3) + (by)^(2/3) = (a² - b²)^(2/3).
        # Its y is counted from the ellipse's centre, which is b over the floor.
        left = abs(a * x) ** (2 / 3) + abs(b * (y - b)) ** (2 / 3)
        assert left == pytest.approx(abs(a**2 - b**2) ** (2 / 3), rel=1e-6)


def moving(drawing: Drawing) -> tuple[MovingBody, list[MovingLine]]:
    [body] = [shape for shape in drawing.shapes if isinstance(shape, MovingBody)]
    return body, [shape for shape in drawing.shapes if isinstance(shape, MovingLine)]


def test_let_go_it_plays_one_whole_swing_in_its_true_time_and_begins_again_where_it_ends() -> None:
    body, lines = moving(drawn(tilt=10.0, motion="free"))
    assert body.seconds == pytest.approx(BODY.period(10), rel=1e-12)
    assert body.again and body.poses[0] == body.poses[-1]
    assert body.poses[0][2] == pytest.approx(-10.0)
    assert len(body.poses) >= 60 * body.seconds
    assert all(line.seconds == body.seconds and len(line.frames) == len(body.poses) for line in lines)
    assert min(turned for *_, turned in body.poses) == pytest.approx(-10.0)
    assert max(turned for *_, turned in body.poses) == pytest.approx(10.0, abs=0.02)


def test_every_pose_that_is_played_stands_on_the_floor_where_the_touching_point_is() -> None:
    body, lines = moving(drawn(tilt=14.0, motion="free"))
    dots = [line for line in lines if line.dot == TOUCH]
    for (x, y, turned), (touch,) in zip(body.poses, dots[0].frames, strict=True):
        stand = stand_at(BODY, -turned)
        assert (x, y) == pytest.approx((stand.across * INCH, stand.height * INCH), abs=1e-6)
        assert touch == pytest.approx((stand.touch * INCH, 0.0), abs=1e-6)


def test_with_drag_every_swing_goes_less_far() -> None:
    body, _ = moving(drawn(tilt=14.0, motion="dragged"))
    assert body.seconds == pytest.approx(6.0)
    turned = [abs(pose[2]) for pose in body.poses]
    thirds = [max(turned[start : start + 60]) for start in (0, 60, 120)]
    assert thirds[0] > 1.5 * thirds[1] > 2 * thirds[2]


def test_the_ball_lies_on_the_curve_of_energy() -> None:
    for changes in ({"tilt": 20.0}, {"tilt": -45.0}, {"tilt": 5.0, "weight_height": 33.0}):
        drawing = drawn(**changes)
        ball = next(shape for shape in drawing.shapes if isinstance(shape, Circle) and shape.dot == BALL)
        lines = [
            shape
            for shape in drawing.shapes
            if isinstance(shape, Line) and shape.role in {"edge", "hidden"} and len(shape.points) > 5
        ]
        pixels = [drawing.frame.place(point) for line in lines for point in line.points]
        x, y = drawing.frame.place(ball.centre)
        before = max((point for point in pixels if point[0] <= x + 1e-6), key=lambda point: point[0])
        after = min((point for point in pixels if point[0] >= x - 1e-6), key=lambda point: point[0])
        part = 0.0 if after[0] == before[0] else (x - before[0]) / (after[0] - before[0])
        assert y == pytest.approx(before[1] + (after[1] - before[1]) * part, abs=1.0)


def test_a_case_that_goes_over_says_so_and_is_not_played() -> None:
    drawing = drawn(weight_height=33.0, motion="free")
    assert drawing.headline == "It goes over by itself."
    assert drawing.faults and "take a flatter rocker" in drawing.faults[0]
    assert not [shape for shape in drawing.shapes if isinstance(shape, MovingBody)]


def test_from_too_far_it_is_not_let_go_and_the_limit_is_told() -> None:
    drawing = drawn(tilt=40.0, motion="free")
    assert f"less than {BODY.rolling_limit:.1f}°" in drawing.told
    assert not [shape for shape in drawing.shapes if isinstance(shape, MovingBody)]


def test_beside_one_another_stand_a_circle_an_ellipse_and_a_flat_base() -> None:
    drawing = drawn(beside="three")
    names = [shape.text for shape in drawing.shapes if getattr(shape, "side", "") == "middle"]
    assert {"circle", "ellipse", "flat"} <= set(names)
    boards = [shape for shape in drawing.shapes if isinstance(shape, Wood) and shape.tint == "board"]
    assert len(boards) == 3


def test_a_load_to_the_side_makes_it_rest_askew() -> None:
    assert "askew" in drawn(aside=3.0).headline
    assert "askew" not in drawn(aside=0.0).headline


def test_three_cases_beside_one_another_do_not_stand_in_each_others_way() -> None:
    for tilt in (-50.0, 0.0, 12.0, 50.0):
        drawing = drawn(beside="three", tilt=tilt)
        woods = [shape.outline for shape in drawing.shapes if isinstance(shape, Wood)]
        cases = sorted(
            (min(x for x, _ in points), max(x for x, _ in points))
            for points in (
                [point for outline in woods[start : start + 4] for point in outline] for start in (0, 4, 8)
            )
        )
        assert all(one[1] < other[0] for one, other in itertools.pairwise(cases))


def test_below_each_of_three_stands_its_time_and_where_it_goes_over() -> None:
    notes = {
        shape.text: shape.note
        for shape in drawn(beside="three", tilt=10.0).shapes
        if isinstance(shape, Label) and shape.note
    }
    flat = BODY.on_flat_base(BODY.rocker_length / 2)
    assert notes["ellipse"] == f"{BODY.period(10):.2f} s, over at {BODY.tip_angle:.1f}°"
    assert notes["flat"] == f"knocks, over at {flat.tip_angle:.1f}°"


def test_of_three_let_go_each_swings_in_its_own_true_time() -> None:
    bodies = [
        shape
        for shape in drawn(beside="three", tilt=10.0, motion="free").shapes
        if isinstance(shape, MovingBody)
    ]
    radius = BODY.ellipse.radius_at_bottom
    circle = replace(BODY, ellipse=Ellipse(radius, radius))
    assert [body.seconds for body in bodies] == pytest.approx([BODY.period(10), circle.period(10)])


def test_the_way_of_the_fitting_circles_centres_rocks_with_the_case_and_each_centre_lies_on_it() -> None:
    body, lines = moving(drawn(tilt=20.0, motion="free"))
    ways = [
        points
        for shape in body.shapes
        if isinstance(shape, Line) and shape.role == "quiet"
        for points in [shape.points]
    ]
    (fitting,) = [line for line in lines if line.role == "quiet"]
    pose, (_, centre) = body.poses[0], fitting.frames[0]
    assert centre[1] == pytest.approx(BODY.radius_at(20) * INCH)
    pieces = [piece for way in ways for piece in itertools.pairwise(brought(way, body.about, pose))]
    assert min(away(centre, *piece) for piece in pieces) < 0.05


def away(point: tuple[float, float], start: tuple[float, float], end: tuple[float, float]) -> float:
    """Return how far a point is from a straight piece."""
    along = (end[0] - start[0], end[1] - start[1])
    part = ((point[0] - start[0]) * along[0] + (point[1] - start[1]) * along[1]) / math.hypot(*along) ** 2
    part = min(1.0, max(0.0, part))
    return math.dist(point, (start[0] + part * along[0], start[1] + part * along[1]))


def test_the_barrier_is_marked_where_it_goes_over_on_its_easier_side() -> None:
    for aside in (0.0, 3.0):
        drawing = drawn(aside=aside)
        (mark,) = [shape for shape in drawing.shapes if isinstance(shape, Label) and "barrier" in shape.text]
        x, _ = drawing.frame.place(mark.where)
        # The chart goes from 60 degrees on the left to 60 on the right.
        told = float(drawing.told.partition("goes over at ")[2].partition("°")[0])
        assert 76.0 + (644.0 - 76.0) * (told + 60.0) / 120.0 == pytest.approx(x, abs=1.0)
        assert f"takes {mark.text.removeprefix('barrier ')}" in drawing.told


def test_with_the_weight_in_the_centre_of_a_round_rocker_it_stays_wherever_it_is_left() -> None:
    drawing = drawn(half_length=9.5, half_height=9.5, weight_height=9.5, tilt=30.0, motion="free")
    assert "stays wherever you leave it" in drawing.headline
    assert not drawing.faults
    assert not [shape for shape in drawing.shapes if isinstance(shape, MovingBody)]


def test_a_swing_that_hangs_all_but_balanced_is_not_played_and_not_timed() -> None:
    log_box = Piece.demo("log-box")
    drawing = live_rocker.drawing(
        log_box, half_length=200.0, half_height=400.0, weight_height=100.0, tilt=1.0, motion="free"
    )
    assert "so nearly balanced" in drawing.told
    assert " s." not in drawing.headline


def test_a_rocker_longer_than_its_ellipse_is_drawn_as_long_as_the_ellipse_and_that_is_said() -> None:
    assert "only 12 in long" in drawn(half_length=6.0).told
    assert "only" not in drawn().told


def test_a_tilt_is_told_with_its_side() -> None:
    assert "Tilted 8° to the left" in drawn(tilt=-8.0).told
    assert "Upright" in drawn(tilt=0.0).told


def test_the_push_is_the_one_of_the_body() -> None:
    assert f"{BODY.push(BODY.centre_height):.0f} N" in drawn().told
