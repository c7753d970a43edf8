"""A drawing as data, and the marks that it turns into: where things stand, what keeps clear of what."""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import matplotlib
import pytest
from hypothesis import given
from hypothesis import strategies as st
from matplotlib.ft2font import FT2Font, LoadFlags

from woodmath import lettering
from woodmath.drawing import (
    Angle,
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Point,
    Points,
    Shape,
    Wood,
    arc,
    break_line,
    rectangle,
    spread,
)
from woodmath.flow import moved
from woodmath.lettering import BELOW_THE_LINE, LETTER_HEIGHT, text_width
from woodmath.marks import marks
from woodmath.pens import PALETTE, PENS, Body, Disc, Mark, Motion, Stroke, Words

FRAME = Frame(400.0, 300.0, left=-1.0, bottom=-1.0, scale=50.0)
lengths = st.floats(-1e3, 1e3)
points = st.tuples(lengths, lengths)


def picture(*shapes: Shape, frame: Frame = FRAME) -> Drawing:
    """Return a drawing of some shapes, with the words that every drawing has."""
    return Drawing("shapes", frame, shapes, "They are drawn.")


def the_words(drawing: Drawing) -> Words:
    """Return the one text of a drawing."""
    (words,) = (mark for mark in marks(drawing) if isinstance(mark, Words))
    return words


def strokes(drawing: Drawing) -> list[Stroke]:
    """Return the strokes of a drawing."""
    return [mark for mark in marks(drawing) if isinstance(mark, Stroke)]


@given(point=points)
def test_a_place_in_the_picture_leads_back_to_the_point(point: Point) -> None:
    assert FRAME.at(*FRAME.place(point)) == pytest.approx(point, abs=1e-9)


def test_up_on_the_bench_is_up_in_the_picture() -> None:
    assert FRAME.place((0.0, 1.0))[1] < FRAME.place((0.0, 0.0))[1]
    assert FRAME.length(50.0) == 1.0


@given(seen=st.lists(points, min_size=2, max_size=8, unique=True))
def test_a_frame_around_points_shows_all_of_them_inside_its_margins(seen: list[Point]) -> None:
    frame = Frame.around(seen, size=(640.0, 400.0), margins=(20.0, 90.0, 40.0, 60.0))
    for point in seen:
        x, y = frame.place(point)
        assert 60.0 - 1e-6 <= x <= 550.0 + 1e-6
        assert 20.0 - 1e-6 <= y <= 360.0 + 1e-6


def test_a_frame_around_points_is_as_large_as_its_margins_allow() -> None:
    frame = Frame.around(((0.0, 0.0), (10.0, 1.0)), size=(640.0, 400.0), margins=(20.0, 20.0, 20.0, 20.0))
    assert frame.place((0.0, 0.5)) == pytest.approx((20.0, 200.0))
    assert frame.place((10.0, 0.5)) == pytest.approx((620.0, 200.0))


@given(places=st.lists(st.floats(0, 100), min_size=1, max_size=8).map(sorted), gap=st.floats(0, 30))
def test_texts_pushed_apart_keep_their_gap_their_order_and_their_bounds(
    places: list[float], gap: float
) -> None:
    moved = spread(places, gap, 0.0, 100.0)
    step = min(gap, 100.0 / max(len(places) - 1, 1))
    assert len(moved) == len(places)
    assert all(-1e-9 <= place <= 100.0 + 1e-9 for place in moved)
    assert all(after - before >= step - 1e-9 for before, after in itertools.pairwise(moved))


def test_texts_far_enough_apart_are_left_where_they_are() -> None:
    assert spread([1.0, 3.0, 9.0], 2.0, 0.0, 10.0) == [1.0, 3.0, 9.0]
    assert spread([], 2.0, 0.0, 10.0) == []


@given(radius=st.floats(0.01, 1e3), start=st.floats(-360, 360), sweep=st.floats(-360, 360))
def test_every_point_of_an_arc_is_a_radius_away(radius: float, start: float, sweep: float) -> None:
    turned = arc((3.0, -2.0), radius, start, start + sweep)
    assert all(math.dist(point, (3.0, -2.0)) == pytest.approx(radius) for point in turned)


def test_a_break_line_runs_from_corner_to_corner_and_sways_to_both_sides() -> None:
    wavy = break_line((2.0, 0.0), (2.0, 4.0))
    assert (wavy[0], wavy[-1]) == ((2.0, 0.0), (2.0, 4.0))
    assert min(x for x, _ in wavy) < 2.0 < max(x for x, _ in wavy)


def test_the_words_of_a_drawing_are_its_headline_what_is_told_and_its_faults() -> None:
    drawing = Drawing("t", FRAME, (), "It fits.", "With room.", ("The wall is thin.",))
    assert drawing.words == "It fits. With room. The wall is thin."


def test_words_are_painted_last_so_that_no_line_runs_over_a_number() -> None:
    drawing = picture(
        Label("post", (0.0, 0.0)), Line(((0.0, 0.0), (1.0, 1.0))), Dimension((0, 0), (1, 0), "1")
    )
    kinds = [isinstance(mark, Words) for mark in marks(drawing)]
    assert kinds == sorted(kinds)
    assert sum(kinds) == 2


@pytest.mark.parametrize("end", [(3.0, 0.0), (0.0, 3.0), (2.0, 2.0), (-3.0, 1.0)])
@pytest.mark.parametrize("offset", [0.0, 30.0, -30.0])
def test_no_dimension_line_touches_its_own_number(end: Point, offset: float) -> None:
    drawing = picture(Dimension((0.0, 0.0), end, "2 5/8", offset))
    left, top, right, bottom = the_words(drawing).box
    for stroke in strokes(drawing):
        for line in stroke.lines:
            for step in range(101):
                x = line[0][0] + (line[-1][0] - line[0][0]) * step / 100
                y = line[0][1] + (line[-1][1] - line[0][1]) * step / 100
                assert not (left < x < right and top < y < bottom)


def test_the_arrowheads_of_a_dimension_stand_on_its_two_points() -> None:
    drawing = picture(Dimension((0.0, 0.0), (4.0, 0.0), "4"))
    tips = [stroke.lines[0][0] for stroke in strokes(drawing) if stroke.fill == "measure"]
    assert tips == [FRAME.place((0.0, 0.0)), FRAME.place((4.0, 0.0))]


def test_a_positive_offset_sets_a_dimension_to_the_left_of_its_way() -> None:
    rightwards = the_words(picture(Dimension((0.0, 0.0), (4.0, 0.0), "4", 40.0)))
    leftwards = the_words(picture(Dimension((4.0, 0.0), (0.0, 0.0), "4", 40.0)))
    level = FRAME.place((0.0, 0.0))[1]
    assert rightwards.where[1] < level < leftwards.where[1]


def test_a_dimension_of_no_length_is_not_drawn() -> None:
    assert marks(picture(Dimension((1.0, 1.0), (1.0, 1.0), "0"))) == ()


def test_a_dimension_shows_its_fraction_as_a_fraction() -> None:
    assert the_words(picture(Dimension((0.0, 0.0), (4.0, 0.0), "1 3/4"))).text == "1¾"


def test_the_text_of_an_angle_stands_outside_its_arc() -> None:
    words = the_words(picture(Angle((1.0, 1.0), 0.0, 90.0, "90°", radius=40.0)))
    left, _, _, bottom = words.box
    vertex = FRAME.place((1.0, 1.0))
    assert math.dist((left, bottom), vertex) > 40.0


def test_a_leader_ends_in_a_dot_on_what_it_names() -> None:
    drawing = picture(Label("inside corner block", (3.0, 2.0), (1.0, 1.0), note="held above and below"))
    (dot,) = (mark for mark in marks(drawing) if isinstance(mark, Disc))
    assert dot.centre == FRAME.place((1.0, 1.0))
    assert strokes(drawing)[0].lines[0][-1] == dot.centre


@pytest.mark.parametrize("side", ["right", "left", "middle"])
def test_a_leader_does_not_run_through_its_own_label(side: str) -> None:
    drawing = picture(Label("tenon", (3.0, 2.0), (1.0 if side != "left" else 5.0, 1.0), side=side))
    left, top, right, bottom = the_words(drawing).box
    (x, y) = strokes(drawing)[0].lines[0][0]
    assert not (left < x < right and top < y < bottom)


def test_end_grain_is_rings_about_one_pith_and_long_grain_is_lines_along_the_board() -> None:
    square = rectangle(0.0, 0.0, 2.0, 2.0)
    rings = [mark for mark in marks(picture(Wood(square, "post", "end"))) if isinstance(mark, Disc)]
    assert len(rings) > 10
    assert len({ring.centre for ring in rings}) == 1
    grain = next(stroke for stroke in strokes(picture(Wood(square, "end", "long", 90.0))) if stroke.clip)
    for line in grain.lines:
        assert abs(line[-1][1] - line[0][1]) > 10 * max(abs(x - line[0][0]) for x, _ in line)


def test_all_grain_stays_inside_the_outline_of_its_wood() -> None:
    outline = rectangle(0.0, 0.0, 2.0, 2.0)
    placed = tuple(map(FRAME.place, outline))
    for grain in ("end", "long"):
        inside = [mark for mark in marks(picture(Wood(outline, "post", grain))) if _is_grain(mark)]
        assert inside
        assert all(isinstance(mark, Stroke | Disc) and mark.clip == placed for mark in inside)


def _is_grain(mark: Mark) -> bool:
    return isinstance(mark, Stroke | Disc) and mark.pen is not None and mark.pen.colour.endswith("grain")


def test_the_grain_of_a_piece_is_the_same_at_every_drawing() -> None:
    wood = picture(Wood(rectangle(0.0, 0.0, 2.0, 2.0), "post", "end"))
    assert marks(wood) == marks(wood)


def test_a_hatched_area_keeps_its_lines_inside() -> None:
    area = ((0.0, 0.0), (2.0, 0.0), (0.0, 2.0))
    drawing = picture(Hatch(area, "fault"))
    assert [stroke.clip for stroke in strokes(drawing)] == [(), tuple(map(FRAME.place, area)), ()]


def test_a_circle_scales_with_the_drawing_and_a_dot_does_not() -> None:
    drawing = picture(Circle((0.0, 0.0), 1.0), Circle((0.0, 0.0), dot=6.0))
    assert [mark.radius for mark in marks(drawing) if isinstance(mark, Disc)] == [50.0, 6.0]


def test_a_moving_line_brings_all_its_frames() -> None:
    frames: tuple[Points, ...] = (((0.0, 0.0), (1.0, 0.0)), ((0.0, 0.0), (0.0, 1.0)))
    (motion,) = marks(picture(MovingLine(frames, 4.0)))
    assert isinstance(motion, Motion)
    assert motion.frames[1][1] == FRAME.place((0.0, 1.0))


def the_body(shape: MovingBody) -> Body:
    """Return the one body of a drawing of it."""
    (body,) = marks(picture(shape))
    assert isinstance(body, Body)
    return body


turns = st.floats(-360.0, 360.0)
near = st.tuples(st.floats(-5.0, 5.0), st.floats(-5.0, 5.0))


@given(outline=st.lists(near, min_size=2, max_size=6), about=near, to=near, degrees=turns)
def test_a_moving_body_keeps_its_shape_at_every_pose(
    outline: list[Point], about: Point, to: Point, degrees: float
) -> None:
    body = the_body(MovingBody((Line((about, *outline)),), about, ((*about, 0.0), (*to, degrees)), 1.0))
    (rest,), (turned,) = body.first, body.at(body.poses[1])
    assert isinstance(rest, Stroke) and isinstance(turned, Stroke)
    assert turned.lines[0][0] == pytest.approx(FRAME.place(to), abs=1e-9)
    for one, other in itertools.combinations(range(len(outline) + 1), 2):
        assert math.dist(turned.lines[0][one], turned.lines[0][other]) == pytest.approx(
            math.dist(rest.lines[0][one], rest.lines[0][other]), abs=1e-9
        )
    # By complex numbers: a turn counter-clockwise in the plane, y up, is a product.
    unit = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
    for at_rest, point in zip((about, *outline), turned.lines[0], strict=True):
        due = complex(*to) + unit * (complex(*at_rest) - complex(*about))
        assert point == pytest.approx(FRAME.place((due.real, due.imag)), abs=1e-9)


def test_a_body_turned_by_more_than_nothing_leans_to_the_left() -> None:
    post = Line(((0.0, 0.0), (0.0, 2.0)))
    (leaning,) = the_body(MovingBody((post,), (0.0, 0.0), ((1.0, 1.0, 90.0),), 1.0)).first
    assert isinstance(leaning, Stroke)
    assert leaning.lines[0][1] == pytest.approx(FRAME.place((-1.0, 1.0)))


def test_a_moving_body_takes_its_grain_with_it_and_never_cuts_it_off() -> None:
    wood = MovingBody(
        (Wood(rectangle(0.0, 0.0, 1.0, 1.0), "post", "end"),), (0.0, 0.0), ((2.0, 1.0, 30.0),), 1.0
    )
    area, *grain, outline = the_body(wood).first
    assert isinstance(area, Stroke) and isinstance(outline, Stroke)
    assert len(grain) > 10
    assert {ring.clip for ring in grain} == set(area.lines) == set(outline.lines)


def test_a_moving_body_holds_no_words() -> None:
    shapes = (Wood(rectangle(0.0, 0.0, 1.0, 1.0)), Circle((0.0, 0.0), 1.0), Hatch(rectangle(0, 0, 1, 1)))
    body = the_body(MovingBody(shapes, (0.0, 0.0), ((0.0, 0.0, 0.0),), 1.0))
    assert {type(mark) for mark in body.marks} == {Stroke, Disc}


def test_a_body_put_elsewhere_goes_its_way_there_at_that_size() -> None:
    shape = MovingBody(
        (Line(((0.0, 0.0), (1.0, 0.0))),), (0.0, 0.0), ((0.0, 0.0, 0.0), (1.0, 1.0, 40.0)), 1.0
    )
    body = the_body(shape)
    there = moved(body, 30.0, 20.0, 2.0)
    assert isinstance(there, Body)
    for pose, pose_there in zip(body.poses, there.poses, strict=True):
        ((stroke,), (stroke_there,)) = (body.at(pose), there.at(pose_there))
        assert isinstance(stroke, Stroke) and isinstance(stroke_there, Stroke)
        for (x, y), point in zip(stroke.lines[0], stroke_there.lines[0], strict=True):
            assert point == pytest.approx((30.0 + 2.0 * x, 20.0 + 2.0 * y))


def test_every_pen_and_every_tint_has_a_colour() -> None:
    assert all(pen.colour in PALETTE for pen in PENS.values())
    for tint in ("post", "end", "side", "board"):
        assert {tint, f"{tint} grain"} <= set(PALETTE)


def _relative_luminance(colour: str) -> float:
    parts = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("role", ["ink", "quiet", "measure", "accent"])
def test_words_stand_out_from_the_paper_as_the_accessibility_guidelines_ask(role: str) -> None:
    """4.5 to 1 for text: WCAG 2.1, success criterion 1.4.3, with its definition of relative luminance."""
    light, dark = sorted((_relative_luminance(PALETTE["paper"]), _relative_luminance(PALETTE[role])))[::-1]
    assert (light + 0.05) / (dark + 0.05) >= 4.5


def _face(bold: bool) -> FT2Font:
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    face = FT2Font(str(Path(matplotlib.get_data_path(), "fonts", "ttf", name)))
    face.set_size(1000, 72)
    return face


@pytest.mark.parametrize("bold", [False, True])
def test_the_table_of_widths_is_never_below_the_font_that_the_paper_is_set_in(bold: bool) -> None:
    """The advance widths in the font file of DejaVu Sans that comes with Matplotlib."""
    face = _face(bold)
    for character in lettering._WIDTHS:
        glyph = face.load_char(ord(character), flags=LoadFlags.NO_HINTING | LoadFlags.NO_SCALE)
        advance = glyph.horiAdvance / face.units_per_EM
        assert advance - 1e-6 <= text_width(character, 1.0, bold) <= advance + 0.006, character


@pytest.mark.parametrize("bold", [False, True])
def test_letters_and_figures_stay_inside_the_height_that_is_kept_for_them(bold: bool) -> None:
    """The outlines in the font file of DejaVu Sans that comes with Matplotlib."""
    face = _face(bold)
    for character in filter(str.isalnum, lettering._WIDTHS):
        _, low, _, high = face.load_char(ord(character), flags=LoadFlags.NO_HINTING | LoadFlags.NO_SCALE).bbox
        assert high / face.units_per_EM <= LETTER_HEIGHT + 0.01, character
        assert -low / face.units_per_EM <= BELOW_THE_LINE + 0.01, character


def test_a_character_that_is_not_in_the_table_counts_as_the_widest() -> None:
    assert text_width("鋸", 10.0) == max(text_width(character, 10.0) for character in lettering._WIDTHS)
