"""The picture of the whole piece: what lies on a leaning post is drawn along it and square to it, at its size."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest

from woodmath.drawing import Drawing, Line, Point, Points, Wood
from woodmath.piece import Piece
from woodmath.views.piece import whole_piece
from woodmath.views.view import Value

BED = Piece.demo("cat-bed")


def posts_of_the_end(drawing: Drawing) -> list[Points]:
    """Return the two posts beside the leaning end, the left one first."""
    posts = [shape.outline for shape in drawing.shapes if isinstance(shape, Wood) and shape.tint == "post"]
    return sorted(posts, key=lambda outline: min(x for x, _ in outline))[:2]


def tenons_in(drawing: Drawing, post: Points) -> list[Points]:
    """Return the tenons hidden in a post: every stretch of the panel's edge that reaches as deep as a tenon."""
    low, high = min(x for x, _ in post), max(x for x, _ in post)
    reach, width = BED.post_joint().tenon.reach, BED.joint.tenons[0].width
    (edge,) = (
        shape.points
        for shape in drawing.shapes
        if isinstance(shape, Line)
        and shape.role == "hidden"
        and len(shape.points) > 4
        and all(low - 1e-9 <= x <= high + 1e-9 for x, _ in shape.points)
    )
    # A tenon begins where the edge goes out from tongue or shoulder, and ends where it comes back.
    found = []
    for one, other in pairwise(edge):
        if math.isclose(math.dist(one, other), width) and _depth(post, one) == pytest.approx(reach):
            found.append((_at_the_face(post, one), one, other, _at_the_face(post, other)))
    return found


def _along_and_out(post: Points) -> tuple[Point, Point]:
    """Return the way up a post along its inside face, and the way into it, each of length 1."""
    foot, top = post[0], post[3]
    length = math.dist(foot, top)
    up = ((top[0] - foot[0]) / length, (top[1] - foot[1]) / length)
    sign = 1.0 if post[1][0] > post[0][0] else -1.0
    return up, (sign * up[1], -sign * up[0])


def _depth(post: Points, point: Point) -> float:
    _, into = _along_and_out(post)
    return (point[0] - post[0][0]) * into[0] + (point[1] - post[0][1]) * into[1]


def _at_the_face(post: Points, point: Point) -> Point:
    _, into = _along_and_out(post)
    depth = _depth(post, point)
    return (point[0] - depth * into[0], point[1] - depth * into[1])


def sides(outline: Points) -> list[float]:
    return [math.dist(one, other) for one, other in zip(outline, (*outline[1:], outline[0]), strict=True)]


LEANS: list[dict[str, Value]] = [{}, {"end_top": 20.0}, {"end_top": 9.0}, {"end_top": 10.5}]


@pytest.mark.parametrize("settings", LEANS)
def test_a_tenon_is_a_rectangle_square_to_its_post_however_that_leans(settings: dict[str, Value]) -> None:
    drawing = whole_piece.drawing(BED, **settings)
    reach, width = BED.post_joint().tenon.reach, BED.joint.tenons[0].width
    for post in posts_of_the_end(drawing):
        tenons = tenons_in(drawing, post)
        assert len(tenons) == len(BED.joint.tenons)
        for tenon in tenons:
            assert sorted(sides(tenon)) == pytest.approx(sorted([reach, width] * 2))
            assert math.dist(tenon[0], tenon[2]) == pytest.approx(math.hypot(reach, width))


@pytest.mark.parametrize("settings", LEANS)
def test_a_leaning_post_is_square_for_foot_panel_edge_and_the_rest_up_to_its_turning(
    settings: dict[str, Value],
) -> None:
    top = float(str(settings.get("end_top", 13.0)))
    edge = math.hypot(8.0, (top - 10.5) / 2)
    for post in posts_of_the_end(whole_piece.drawing(BED, **settings)):
        # On the inside face, from the shoulder to the end of the square, 3/4 above the panels, and as thick square to
        # that as it was planed.
        assert math.dist(post[0], post[3]) == pytest.approx(BED.post.foot + edge + 0.75)
        assert _depth(post, post[2]) == pytest.approx(BED.post.square)
        # The foot is cut level, the top square.
        assert post[0][1] == post[1][1] == 0.0
        assert math.dist(post[2], post[3]) == pytest.approx(BED.post.square)


def test_a_tenon_that_the_slope_holds_is_drawn_even_where_the_height_alone_would_not_hold_it() -> None:
    # The second tenon ends at 7 1/4. An end 7 1/8 high that goes outward 2 is 7.4 along the slope (COMP).
    drawing = whole_piece.drawing(BED, end_height=7.125, end_top=14.5)
    for post in posts_of_the_end(drawing):
        assert len(tenons_in(drawing, post)) == 2
    upright = whole_piece.drawing(BED, end_height=7.125, end_top=10.5)
    for post in posts_of_the_end(upright):
        assert len(tenons_in(upright, post)) == 1


def test_a_rocker_that_cannot_be_is_told_and_the_rest_is_drawn() -> None:
    impossible = replace(BED, rocker=replace(BED.rocker, bottom_radius=400))
    drawing = whole_piece.drawing(impossible)
    assert "too flat" in drawing.faults[0]
    assert [shape for shape in drawing.shapes if isinstance(shape, Wood) and shape.tint == "end"]
