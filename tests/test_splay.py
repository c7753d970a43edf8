"""Leaning boards against printed tables, saw manuals, rafters and vectors worked out on their own."""

from __future__ import annotations

import math

import numpy as np
import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given
from hypothesis import strategies as st

from woodmath import corner_derivations, level_bottom, regular_mitre, splay, splay_derivations
from woodmath.case import Case
from woodmath.case_solids import bottom_solid
from woodmath.drawing import Wood
from woodmath.errors import ImpossibleShape
from woodmath.piece import Piece
from woodmath.sheet import sheet_at_true_size
from woodmath.splay import SplayedPanel
from woodmath.splayed_corner import SplayedCorner
from woodmath.views.card_end import card_end
from woodmath.views.level_bottom import bottom_between_sides
from woodmath.views.splayed_corner import planter_corner

SPLAYS = st.floats(0.5, 60)
LENGTHS = st.floats(5, 40)


NOT_ASKED = {
    # Nobody works the splay out from the room inside, the corner from the tilt or the number of sides from the saw.
    "The room between two walls": frozenset({"splay"}),
    "The tilt of the mitre": frozenset({"dihedral"}),
    "The tilt of the saw": frozenset({"sides", "splay"}),
}


@pytest.mark.parametrize(
    "derivation",
    [
        splay_derivations.outward_derivation,
        splay_derivations.slope_derivation,
        splay_derivations.splay_derivation,
        splay_derivations.width_derivation,
        splay_derivations.level_derivation,
        splay_derivations.over_all_derivation,
        splay_derivations.lower_corner_derivation,
        splay_derivations.upper_corner_derivation,
        splay_derivations.grain_derivation,
        corner_derivations.dihedral_derivation,
        corner_derivations.butt_tilt_derivation,
        corner_derivations.face_angle_derivation,
        corner_derivations.hip_lean_derivation,
        corner_derivations.mitre_tilt_derivation,
        regular_mitre.pitch_derivation,
        regular_mitre.tilt_derivation,
        regular_mitre.face_derivation,
        level_bottom.inside_derivation,
    ],
)
def test_every_step_follows(derivation):
    assert_every_step_follows(derivation(), NOT_ASKED.get(derivation().title, frozenset()))


# Pitch of side from the bench: mitre and blade for 4, 5, 6 and 8 sides, as printed. Saw manuals 315.21212, p. 24, and
# 315.212050, p. 29 (up to 50 degrees); power-saw operator's manual TSS121, p. 32 (from 55 degrees). All READ.
MANUALS = {
    0: {4: (45.00, 0.00), 5: (36.00, 0.00), 6: (30.00, 0.00), 8: (22.50, 0.00)},
    5: {4: (44.89, 3.53), 5: (35.90, 2.94), 6: (29.91, 2.50), 8: (22.42, 1.91)},
    10: {4: (44.56, 7.05), 5: (35.58, 5.86), 6: (29.62, 4.98), 8: (22.19, 3.81)},
    15: {4: (44.01, 10.55), 5: (35.06, 8.75), 6: (29.15, 7.44), 8: (21.81, 5.68)},
    20: {4: (43.22, 14.00), 5: (34.32, 11.60), 6: (28.48, 9.85), 8: (21.27, 7.52)},
    25: {4: (42.19, 17.39), 5: (33.36, 14.38), 6: (27.62, 12.20), 8: (20.58, 9.31)},
    30: {4: (40.89, 20.70), 5: (32.18, 17.09), 6: (26.57, 14.48), 8: (19.73, 11.03)},
    35: {4: (39.32, 23.93), 5: (30.76, 19.70), 6: (25.31, 16.67), 8: (18.74, 12.68)},
    40: {4: (37.45, 27.03), 5: (29.10, 22.20), 6: (23.86, 18.75), 8: (17.60, 14.24)},
    45: {4: (35.26, 30.00), 5: (27.19, 24.56), 6: (22.21, 20.70), 8: (16.32, 15.70)},
    50: {4: (32.73, 32.80), 5: (25.03, 26.76), 6: (20.36, 22.52), 8: (14.91, 17.05)},
    55: {4: (29.84, 35.40), 5: (22.62, 28.78), 6: (18.32, 24.18)},
    60: {4: (26.57, 37.76), 5: (19.96, 30.60), 6: (16.10, 25.66)},
    65: {4: (22.91, 39.86), 5: (17.07, 32.19), 6: (13.71, 26.95)},
    70: {4: (18.88, 41.64), 5: (13.95, 33.53), 6: (11.17, 28.02)},
    75: {4: (14.51, 43.08), 5: (10.65, 34.59), 6: (None, 28.88)},
    80: {4: (None, 44.14), 5: (7.19, 35.37), 6: (None, 29.50)},
    85: {4: (None, 44.78), 5: (3.62, 35.84), 6: (None, 29.87)},
    90: {4: (0.00, 45.00), 5: (0.00, 36.00), 6: (0.00, 30.00)},
}
PRINTED = [(pitch, sides, *both) for pitch, row in MANUALS.items() for sides, both in row.items()]
HALF_THE_LAST_DIGIT = 0.005


@pytest.mark.parametrize(("pitch", "sides", "mitre", "blade"), PRINTED)
def test_a_box_of_equal_sides_is_cut_as_the_saw_manuals_print(pitch, sides, mitre, blade):
    found = regular_mitre.regular_mitre(sides=sides, splay=90 - pitch)
    # The manual itself says that its settings are to the closest 0.005 degree.
    if mitre is not None:
        assert found.face_mitre == pytest.approx(mitre, abs=HALF_THE_LAST_DIGIT)
    assert found.tilt == pytest.approx(blade, abs=HALF_THE_LAST_DIGIT)


@pytest.mark.parametrize(
    ("what", "found", "printed", "within"),
    [
        # Crown moulding of 52/38 laid flat, corner of 90: saw manual MS1065LZ, Fig. 29 (READ; its own second digit is
        # off by a hundredth), and LS1017, p. 14, Table (A) (READ, one decimal).
        ("52/38, mitre", lambda: regular_mitre.regular_mitre(4, 38).face_mitre, 31.62, 0.005),
        ("52/38, blade", lambda: regular_mitre.regular_mitre(4, 38).tilt, 33.85, 0.015),
        ("52/38, mitre, one decimal", lambda: regular_mitre.regular_mitre(4, 38).face_mitre, 31.6, 0.05),
        ("52/38, blade, one decimal", lambda: regular_mitre.regular_mitre(4, 38).tilt, 33.9, 0.05),
        ("45, mitre", lambda: regular_mitre.regular_mitre(4, 45).face_mitre, 35.3, 0.05),
        ("45, blade", lambda: regular_mitre.regular_mitre(4, 45).tilt, 30.0, 0.05),
        # Box of four sides, saw manual DCS361, p. 16 (READ): 26 degrees, mitre 42, bevel 18, whole degrees.
        ("26, mitre", lambda: regular_mitre.regular_mitre(4, 64).face_mitre, 42, 0.5),
        ("26, bevel", lambda: regular_mitre.regular_mitre(4, 64).tilt, 18, 0.5),
        # A how-to page with the usual chart (READ): splay 5, gauge 85 counted from the edge, tilt 44.75.
        ("5 splay, gauge", lambda: 90 - regular_mitre.regular_mitre(4, 5).face_mitre, 85, 0.05),
        ("5 splay, tilt", lambda: regular_mitre.regular_mitre(4, 5).tilt, 44.75, 0.05),
    ],
)
def test_single_settings_agree_with_what_their_sources_print(what, found, printed, within):
    assert found() == pytest.approx(printed, abs=within), what


# Usual quarter-degree chart for four sides, splay from upright: butt tilt, mitre tilt, gauge. Radial-arm-saw handbooks,
# from memory; the chart is rounded to a quarter and wrong by up to half a degree against the exact values.
CHART = {
    5: (0.5, 44.75, 85),
    10: (1.5, 44.25, 80.25),
    15: (3.75, 43.25, 75.5),
    20: (6.25, 41.75, 71.25),
    25: (10, 40, 67),
    30: (14.5, 37.75, 63.5),
    35: (19.5, 35.25, 60.25),
    40: (24.5, 32.5, 57.25),
    45: (30, 30, 54.75),
}


@pytest.mark.parametrize(("lean", "butt", "mitre", "gauge"), [(lean, *row) for lean, row in CHART.items()])
def test_the_usual_chart_from_memory_is_right_to_half_a_degree(lean, butt, mitre, gauge):
    corner = SplayedCorner(side_splay=lean, end_splay=lean)
    assert corner.butt_tilt == pytest.approx(butt, abs=0.5)
    assert corner.mitre_tilt == pytest.approx(mitre, abs=0.5)
    assert 90 - corner.side_face_angle == pytest.approx(gauge, abs=0.5)


@pytest.mark.parametrize(
    ("run", "rise", "feet", "inches"),
    # Noyes, Handwork in Wood, 1910, ch. IV, the steel square (READ), to a twelfth of an inch; the pitch is the rise
    # over the whole span.
    [(12, 6, 13, 5), (11, 22 / 3, 13, 2 + 8 / 12), (7, 8.75, 11, 2 + 6 / 12)],
)
def test_a_slope_is_as_long_as_the_rafter_of_its_run_and_rise(run, rise, feet, inches):
    slope = splay.slope_length(top=2 * run + 1, bottom=1, height=rise)
    assert 12 * slope == pytest.approx(12 * feet + inches, abs=0.5)


@pytest.mark.parametrize(
    ("top", "bottom", "height", "slope"),
    # Triangles of whole numbers, 3 4 5 and three more, as every list of them has (from memory).
    [(10, 4, 4, 5), (11, 1, 12, 13), (1, 17, 15, 17), (50, 10, 21, 29)],
)
def test_the_edge_of_an_end_is_the_long_side_of_a_right_triangle(top, bottom, height, slope):
    assert splay.slope_length(top, bottom, height) == pytest.approx(slope)


@pytest.mark.parametrize(
    ("outward", "degrees"),
    # Tangents of 5, 10, 15 and 45 degrees to four places, as any table of tangents has them (from memory).
    [(0.0875, 5), (0.1763, 10), (0.2679, 15), (1.0, 45)],
)
def test_the_splay_has_the_outward_over_the_height_for_its_tangent(outward, degrees):
    assert splay.splay(4 + 2 * outward, 4, 1) == pytest.approx(degrees, abs=0.005)
    assert splay.splay(4, 4 + 2 * outward, 1) == pytest.approx(-degrees, abs=0.005)


def test_an_upright_end_has_no_splay_and_its_edge_is_its_height():
    end = Piece.demo("log-box").end
    assert (end.outward, end.slope_length, end.splay) == (0, 320, 0)


def test_an_end_fourteen_over_eleven_and_nine_and_a_half_high_leans_just_under_nine_degrees():
    # Common practice.
    assert 8.5 < SplayedPanel(top=14, bottom=11, height=9.5).splay < 9


@given(st.floats(8, 20), st.floats(-3, 6), LENGTHS)
def test_the_panel_is_the_trapezium_that_four_drawn_points_make(bottom, wider, height):
    top = bottom + wider
    panel = SplayedPanel(top=top, bottom=bottom, height=height)
    corners = np.array([(bottom / 2, 0), (top / 2, height)])
    edge = corners[1] - corners[0]
    assert panel.slope_length == pytest.approx(float(np.linalg.norm(edge)))
    assert panel.splay == pytest.approx(math.degrees(math.atan2(edge[0], edge[1])))
    level = np.array([-1.0, 0.0])
    lower = math.degrees(math.acos(np.clip(edge @ level / np.linalg.norm(edge), -1, 1)))
    assert panel.corner_angles == pytest.approx((lower, 180 - lower))
    assert panel.grain_angle == pytest.approx(abs(panel.splay))
    assert panel.width_at(height / 3) == pytest.approx(bottom + wider / 3)


@given(st.floats(8, 20), st.floats(-3, 6), LENGTHS, st.floats(1, 3), st.floats(0.5, 2))
def test_the_chain_of_widths_is_what_a_level_line_cuts_of_posts_and_tenons(
    bottom, wider, height, post, reach
):
    panel = SplayedPanel(top=bottom + wider, bottom=bottom, height=height)
    chain = panel.widths_at(height / 2, post, reach)
    lean = math.radians(panel.splay)
    out = np.array([math.cos(lean), -math.sin(lean)])
    up = np.array([math.sin(lean), math.cos(lean)])
    for across, width in (
        (0.0, chain.between_shoulders),
        (reach, chain.over_tenon_ends),
        (post, chain.over_posts),
    ):
        # On the line that runs so far outward from the shoulder: where does it stand at half the height?
        start = np.array([bottom / 2, 0.0]) + across * out
        there = start + up * (height / 2 - start[1]) / up[1]
        assert width == pytest.approx(2 * there[0])


def test_the_sides_finished_width_is_the_slope_and_not_the_height():
    # Surprise 28.
    bed = Piece.demo("cat-bed")
    case = Case.of(bed)
    assert case.slope_length == pytest.approx(SplayedPanel(13, 10.5, 8).slope_length)
    assert case.slope_length > bed.end.height


def directions(side: float, end: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return the outward normals of a side along x and an end along y, and the hip between them."""
    a, b = math.radians(side), math.radians(end)
    of_side = np.array([0.0, math.cos(a), -math.sin(a)])
    of_end = np.array([math.cos(b), 0.0, -math.sin(b)])
    hip = np.cross(of_end, of_side)
    return of_side, of_end, hip / np.linalg.norm(hip) * np.sign(hip[2])


def between(one: np.ndarray, other: np.ndarray) -> float:
    return math.degrees(math.acos(np.clip(one @ other / np.linalg.norm(one) / np.linalg.norm(other), -1, 1)))


@given(SPLAYS, SPLAYS)
def test_a_corner_of_two_leaning_boards_is_what_their_planes_make(side, end):
    corner = SplayedCorner(side_splay=side, end_splay=end)
    of_side, of_end, hip = directions(side, end)
    # Surprise 20: the corner is more than square, and cos D is minus sin α sin β.
    assert corner.dihedral == pytest.approx(180 - between(of_side, of_end), abs=1e-6)
    assert corner.dihedral > 90
    assert corner.hip_lean == pytest.approx(between(hip, np.array([0, 0, 1.0])), abs=1e-6)
    up_the_side = np.array([0.0, math.sin(math.radians(side)), math.cos(math.radians(side))])
    up_the_end = np.array([math.sin(math.radians(end)), 0.0, math.cos(math.radians(end))])
    assert corner.side_face_angle == pytest.approx(between(hip, up_the_side), abs=1e-5)
    assert corner.end_face_angle == pytest.approx(between(hip, up_the_end), abs=1e-5)
    assert corner.butt_tilt == pytest.approx(corner.dihedral - 90)


def inner_hip(dihedral: float, own: float, other: float) -> np.ndarray:
    """Return the inner hip in the section square to the hip; the own board's outer face runs along the first axis."""
    turn = math.radians(dihedral)
    into_own, into_other = np.array([0.0, 1.0]), np.array([math.sin(turn), -math.cos(turn)])
    return np.linalg.solve(np.array([into_own, into_other]), np.array([own, other]))


@given(SPLAYS, SPLAYS, st.floats(0.3, 2), st.floats(0.3, 2))
def test_the_mitre_goes_through_the_outer_and_the_inner_hip_whatever_the_thicknesses(side, end, own, other):
    corner = SplayedCorner(side, end, side_thickness=own, end_thickness=other)
    for tilt, one, two in ((corner.mitre_tilt, own, other), (corner.end_mitre_tilt, other, own)):
        across, depth = inner_hip(corner.dihedral, one, two)
        assert tilt == pytest.approx(math.degrees(math.atan2(across, depth)), abs=1e-6)
    # The two halves fill the corner: what both are off square is what the corner is short of straight.
    assert corner.mitre_tilt + corner.end_mitre_tilt == pytest.approx(180 - corner.dihedral)


@given(SPLAYS, SPLAYS, st.floats(0.3, 2), st.floats(0.3, 2))
def test_a_level_cut_is_mitred_at_45_only_where_both_boards_measure_alike_in_it(side, end, own, other):
    corner = SplayedCorner(side, end, side_thickness=own, end_thickness=other)
    level = (own / math.cos(math.radians(side)), other / math.cos(math.radians(end)))
    assert corner.level_thicknesses == pytest.approx(level)
    assert corner.level_mitre == pytest.approx(math.degrees(math.atan2(level[1], level[0])), abs=1e-9)


@given(SPLAYS, SPLAYS, st.floats(0.3, 2))
def test_boards_that_measure_alike_in_a_level_cut_are_mitred_there_at_45(side, end, own):
    # Surprise 20: the thicknesses that do it are in the ratio of the cosines, and equal ones only for equal splays.
    other = own * math.cos(math.radians(end)) / math.cos(math.radians(side))
    assert SplayedCorner(side, end, own, other).level_mitre == pytest.approx(45, abs=1e-9)


def test_a_true_45_on_a_post_that_leans_10_degrees_does_not_read_45_in_a_level_cut():
    # Surprise 4: one tenon reads 44.56, its partner 45.44 (COMP).
    assert SplayedCorner(side_splay=10, end_splay=0).level_mitre == pytest.approx(44.56, abs=0.005)
    assert SplayedCorner(side_splay=0, end_splay=10).level_mitre == pytest.approx(45.44, abs=0.005)


@given(st.integers(3, 12), st.floats(0, 89))
def test_pitch_and_splay_are_complements_and_sine_and_cosine_change_places(sides, lean):
    # Surprise 21, with the table's own formulas (Snyder & Gottesman, Compound-Angle Joinery, 2015; COMP).
    found, pitch = regular_mitre.regular_mitre(sides, lean), math.radians(90 - lean)
    assert regular_mitre.pitch(lean) == pytest.approx(90 - lean)
    half = math.pi / sides
    assert found.face_mitre == pytest.approx(
        math.degrees(math.atan(math.cos(pitch) * math.tan(half))), abs=1e-6
    )
    assert found.tilt == pytest.approx(math.degrees(math.asin(math.sin(pitch) * math.sin(half))), abs=1e-6)


@given(st.floats(0, 60))
def test_four_equal_sides_are_a_corner_of_two_boards_alike(lean):
    corner, regular = SplayedCorner(lean, lean), regular_mitre.regular_mitre(4, lean)
    assert corner.mitre_tilt == pytest.approx(regular.tilt, abs=1e-6)
    assert corner.side_face_angle == pytest.approx(regular.face_mitre, abs=1e-6)


@pytest.mark.parametrize("demo", ["cat-bed", "hound-bed", "log-box"])
def test_the_bottom_touches_leaning_walls_at_both_faces(demo):
    piece = Piece.demo(demo)
    case = Case.of(piece)
    low_y, _ = case.at(case.panel[0], case.square - case.side_face)
    bottom = level_bottom.LevelBottom(
        outside_width=2 * case.along_a_level(case.at(case.panel[0])[1], case.square - case.side_face),
        outside_length=2 * (case.half_over_posts - case.end_face),
        side_splay=case.splay,
        end_splay=0.0,
        side_thickness=case.side_thickness,
        end_thickness=case.end_thickness,
        thickness=piece.bottom.thickness,
        height=piece.bottom.rest,
    )
    assert low_y > 0
    # The case's own bottom, worked out point by point, with its clearance on both sides.
    (_, _), (under, _), (over, _), (_, _) = bottom_solid(piece, case).added[0].outline
    assert bottom.lower.width - 2 * piece.bottom.clearance == pytest.approx(2 * under)
    assert bottom.upper.width - 2 * piece.bottom.clearance == pytest.approx(2 * over)
    assert bottom.side_bevel == pytest.approx(case.splay, abs=1e-9)
    assert bottom.end_bevel == pytest.approx(0, abs=1e-9)


@given(st.floats(1, 30), st.floats(1, 30), st.floats(0.3, 1), st.floats(0.5, 3))
def test_where_both_pairs_lean_every_edge_is_bevelled_as_its_wall_leans(side, end, thick, height):
    bottom = level_bottom.LevelBottom(20, 30, side, end, thick, thick, thickness=0.5, height=height)
    assert bottom.side_bevel == pytest.approx(side)
    assert bottom.end_bevel == pytest.approx(end)
    level = thick / math.cos(math.radians(side))
    assert bottom.lower.width == pytest.approx(20 + 2 * height * math.tan(math.radians(side)) - 2 * level)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: SplayedPanel(top=0, bottom=1, height=1),
        lambda: SplayedPanel(top=1, bottom=1, height=-1),
        lambda: SplayedPanel(top=2, bottom=8, height=3).width_at(40),
        lambda: SplayedCorner(side_splay=90, end_splay=10),
        lambda: SplayedCorner(side_splay=10, end_splay=10, side_thickness=0),
        lambda: regular_mitre.regular_mitre(2, 10),
        lambda: regular_mitre.regular_mitre(4, 91),
        lambda: level_bottom.LevelBottom(1, 1, 10, 10, 2, 2, thickness=0.5, height=0),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(wrong):
    with pytest.raises(ImpossibleShape) as told:
        wrong()
    assert str(told.value).endswith((".", ")."))


@pytest.mark.parametrize(("side", "end", "joint"), [(0, 8, "mitred"), (12, 0, "butted"), (0, 0, "mitred")])
def test_where_one_pair_stands_the_corner_is_square_and_the_planters_words_say_so(side, end, joint):
    drawing = planter_corner.drawing(Piece.demo("cat-bed"), side_splay=side, end_splay=end, joint=joint)
    assert "90.00° square to the hip." in drawing.told
    assert ("mitre line" in drawing.told) is (joint == "mitred")


def test_a_section_across_the_case_shows_the_end_grain_of_its_sides():
    drawing = bottom_between_sides.drawing(Piece.demo("cat-bed"))
    assert {shape.grain for shape in drawing.shapes if isinstance(shape, Wood)} == {"end"}


@pytest.mark.parametrize(
    ("view", "sizes"),
    [
        (card_end, {}),
        (
            planter_corner,
            {"side_splay": 20, "end_splay": 20, "side_thickness": 0.625, "end_thickness": 0.625},
        ),
    ],
)
def test_the_cards_of_pages_03_and_09_fit_on_both_papers_at_true_size(view, sizes):
    sheet = sheet_at_true_size(view, Piece.demo("cat-bed"), **sizes)
    assert [paper for paper, _ in sheet.files] == ["A4", "Letter"]
