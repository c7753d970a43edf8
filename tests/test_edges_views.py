"""The two pictures of a panel's edge show what the numbers say, and mark what cannot be."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from woodmath.bead import tenon_may_begin
from woodmath.drawing import Drawing, Hatch, Line
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.views.edges import edge_in_section
from woodmath.views.edges_corner import panel_corner

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")


def accent(drawing: Drawing) -> tuple[tuple[float, float], ...]:
    (line,) = (shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "accent")
    return line.points


def struck(drawing: Drawing) -> list[Hatch]:
    return [shape for shape in drawing.shapes if isinstance(shape, Hatch) and shape.role == "fault"]


def test_the_shoulder_stands_on_the_posts_face_and_is_as_high_as_the_rebate_is_deep() -> None:
    (x1, y1), (x2, y2) = accent(edge_in_section.drawing(CAT_BED))
    assert x1 == x2 == 1.75
    assert (y1, y2) == (-1 / 8, -1 / 2)


def test_from_the_inner_face_the_shoulder_stands_on_the_inside_of_the_tongue() -> None:
    (_, y1), (_, y2) = accent(edge_in_section.drawing(CAT_BED, rebated_from="inner face"))
    assert (y1, y2) == (-1, -1 - 3 / 8)


def test_a_groove_too_shallow_opens_the_shoulder_and_the_gap_is_struck() -> None:
    drawing = edge_in_section.drawing(CAT_BED, groove_depth=0.25)
    assert accent(drawing)[0][0] == 1.75 + 1 / 16
    assert len(struck(drawing)) == 1
    assert "stands off by 1/16 in" in drawing.faults[0]
    assert not edge_in_section.drawing(CAT_BED).faults


def test_a_tongue_as_thick_as_its_board_is_shown_with_what_to_change() -> None:
    (fault,) = edge_in_section.drawing(LOG_BOX, board=12.0, tongue=12.0).faults
    assert "choose a thinner tongue or a thicker board" in fault


def test_a_panel_that_stands_proud_of_its_post_is_told() -> None:
    told = edge_in_section.drawing(CAT_BED, set_back=0.25).told
    assert "stands proud of the post by 1/8 in" in told


def test_the_red_line_at_the_corner_is_as_long_as_the_bead_takes_of_the_edge() -> None:
    assert CAT_BED.bead is not None and CAT_BED.end is not None
    start, end = accent(panel_corner.drawing(CAT_BED))
    assert math.dist(start, end) == pytest.approx(tenon_may_begin(CAT_BED.bead, CAT_BED.end.splay))
    # The edge leans as the end does: outward by 1 1/4 on a height of 8.
    assert (end[0] - start[0]) / (start[1] - end[1]) == pytest.approx(1.25 / 8)
    assert end[1] == pytest.approx(-5 / 16)


def test_a_tenon_that_begins_too_early_is_struck_and_told_by_how_much() -> None:
    drawing = panel_corner.drawing(LOG_BOX, place=6.0)
    assert len(struck(drawing)) == 1
    assert "too early: 4 mm of the bead's hollow shows" in drawing.faults[0]
    assert not panel_corner.drawing(LOG_BOX).faults


def test_a_quirk_deeper_than_the_rebate_is_told() -> None:
    settings = {**panel_corner.settings(CAT_BED, bead_width=0.5), "tongue": 0.75}
    (fault,) = panel_corner.draw(CAT_BED.rule, settings).faults
    assert "deeper than the rebate: it would cut into the tongue" in fault


def test_a_piece_without_tongue_or_bead_says_so() -> None:
    bare = replace(CAT_BED, bead=None, joint=replace(CAT_BED.joint, tongue=None))
    with pytest.raises(ImpossibleShape, match="has no tongue on its panels' edges"):
        edge_in_section.settings(bare)
    with pytest.raises(ImpossibleShape, match="has no bead along its panels' edges"):
        panel_corner.settings(bare)
