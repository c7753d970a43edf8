"""The picture of the whole piece: what lies on a leaning post is drawn along it and square to it, at its size."""

from __future__ import annotations

import math

import pytest

from woodmath.drawing import Drawing, Line, Points, Wood
from woodmath.piece import Piece
from woodmath.views.piece import whole_piece
from woodmath.views.view import Value

BED = Piece.demo("cat-bed")


def posts_of_the_end(drawing: Drawing) -> list[Points]:
    """Return the two posts beside the leaning end, the left one first."""
    posts = [shape.outline for shape in drawing.shapes if isinstance(shape, Wood) and shape.tint == "post"]
    return sorted(posts, key=lambda outline: min(x for x, _ in outline))[:2]


def tenons_in(drawing: Drawing, post: Points) -> list[Points]:
    low, high = min(x for x, _ in post), max(x for x, _ in post)
    hidden = [shape.points for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "hidden"]
    return [points for points in hidden if all(low - 1e-9 <= x <= high + 1e-9 for x, _ in points)]


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
def test_a_leaning_post_is_as_long_as_foot_panel_edge_and_top_along_it(settings: dict[str, Value]) -> None:
    top = float(str(settings.get("end_top", 13.0)))
    edge = math.hypot(8.0, (top - 10.5) / 2)
    for post in posts_of_the_end(whole_piece.drawing(BED, **settings)):
        assert max(sides(post)) == pytest.approx(BED.post.foot + edge + BED.post.top)
        # Square to its length a post stays as thick as it was planed.
        (x0, y0), (x1, y1), (x2, y2) = post[0], post[1], post[2]
        area = abs((x1 - x0) * (y2 - y1) - (x2 - x1) * (y1 - y0))
        assert area / max(sides(post)) == pytest.approx(BED.post.square)


def test_a_tenon_that_the_slope_holds_is_drawn_even_where_the_height_alone_would_not_hold_it() -> None:
    # The second tenon ends at 7 1/4. An end 7 1/8 high that goes outward 2 is 7.4 along the slope (COMP).
    drawing = whole_piece.drawing(BED, end_height=7.125, end_top=14.5)
    for post in posts_of_the_end(drawing):
        assert len(tenons_in(drawing, post)) == 2
    upright = whole_piece.drawing(BED, end_height=7.125, end_top=10.5)
    for post in posts_of_the_end(upright):
        assert len(tenons_in(upright, post)) == 1
