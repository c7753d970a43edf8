"""The picture on the screen: an SVG that says what it shows, and is the same for the same drawing."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree

import pytest
from picture_checks import (
    assert_no_texts_overlap,
    assert_sound,
    assert_sound_and_readable,
    assert_svg_is_sound,
)
from sample_drawing import FRAME, sample

from woodmath.drawing import (
    Circle,
    Dimension,
    Drawing,
    Hatch,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Shape,
    Wood,
    rectangle,
)
from woodmath.drawing_svg import svg

SVG = "{http://www.w3.org/2000/svg}"


def picture(*shapes: Shape, title: str = "shapes") -> Drawing:
    """Return a drawing of some shapes, with the words that every drawing has."""
    return Drawing(title, FRAME, shapes, "They are drawn.")


def elements(drawing: Drawing, name: str) -> list[ElementTree.Element]:
    """Return the elements of one kind in the SVG of a drawing."""
    return list(ElementTree.fromstring(svg(drawing)).iter(f"{SVG}{name}"))


def test_the_same_drawing_gives_the_same_picture() -> None:
    assert svg(sample()) == svg(sample())


def test_a_sound_drawing_passes_its_own_checks() -> None:
    assert_sound_and_readable(sample())


def test_a_screen_reader_hears_title_and_result() -> None:
    root = ElementTree.fromstring(svg(sample()))
    assert root.attrib["role"] == "img"
    assert root.attrib["aria-label"] == f"{sample().title}: {sample().headline}"


def test_signs_that_mean_something_in_markup_are_only_words() -> None:
    drawing = picture(Label('a < b & "c"', (1.0, 1.0)), title='the "end" & <side>')
    (words,) = elements(drawing, "text")
    assert words.text == 'a < b & "c"'
    assert ElementTree.fromstring(svg(drawing)).attrib["aria-label"].startswith('the "end" & <side>')


def test_two_pictures_on_one_page_share_no_names() -> None:
    def names(prefix: str) -> set[str]:
        root = ElementTree.fromstring(svg(sample(), prefix))
        return {element.attrib["id"] for element in root.iter() if "id" in element.attrib}

    assert names("a")
    assert not names("a") & names("b")


def test_a_moving_line_is_still_for_those_who_ask_for_less_motion() -> None:
    moving = MovingLine((((0.0, 0.0), (2.0, 0.0)), ((0.0, 0.0), (0.0, 2.0))), 4.0)
    groups = {group.attrib["class"]: group for group in elements(picture(moving), "g")}
    assert list(groups["wm-motion"].iter(f"{SVG}animate"))
    assert not list(groups["wm-still"].iter(f"{SVG}animate"))
    assert "prefers-reduced-motion" in svg(picture(moving))
    assert "prefers-reduced-motion" not in svg(picture())


def test_every_frame_of_a_motion_has_as_many_points() -> None:
    moving = MovingLine((((0.0, 0.0), (2.0, 0.0)), ((0.0, 0.0), (0.0, 2.0))), 4.0)
    (animation,) = elements(picture(moving), "animate")
    assert len({frame.count(",") for frame in animation.attrib["values"].split(";")}) == 1


SWINGS = MovingBody(
    (
        Wood(rectangle(0.0, 0.0, 1.0, 2.0), "post", "end"),
        Hatch(rectangle(1.0, 0.0, 2.0, 1.0)),
        Circle((0, 0), dot=4.0),
    ),
    about=(0.0, 0.0),
    poses=((1.0, 1.0, 10.0), (2.0, 1.0, 0.0), (3.0, 1.0, -10.0), (4.0, 1.5, -12.5)),
    seconds=1.234,
)


def test_a_moving_body_has_a_place_and_a_turn_for_every_pose() -> None:
    place, turn = elements(picture(SWINGS), "animateTransform")
    assert [change.attrib["type"] for change in (place, turn)] == ["translate", "rotate"]
    places = [tuple(map(float, value.split(","))) for value in place.attrib["values"].split(";")]
    assert places == [pytest.approx(FRAME.place((x, y)), abs=0.005) for x, y, _ in SWINGS.poses]
    # SVG counts clockwise, for its y goes down.
    assert [float(value) for value in turn.attrib["values"].split(";")] == [-10.0, 0.0, 10.0, 12.5]


def test_a_moving_body_stands_at_its_first_pose_before_it_begins_and_where_less_motion_is_asked_for() -> None:
    x, y = FRAME.place((1.0, 1.0))
    groups = elements(picture(SWINGS), "g")
    starts = [
        group.attrib["transform"] for group in groups if group.find(f"{SVG}animateTransform") is not None
    ]
    assert starts == [f"translate({x:.2f},{y:.2f})", "rotate(-10.000)"]
    (still,) = elements(picture(SWINGS), "use")
    assert still.attrib["transform"] == " ".join(starts)


def test_a_moving_body_is_written_once() -> None:
    at_rest = len(svg(picture(*SWINGS.shapes))) - len(svg(picture()))
    assert len(svg(picture(SWINGS))) - len(svg(picture())) < at_rest + 1200


def test_all_that_moves_begins_at_the_same_instant_and_takes_the_time_that_it_is_given() -> None:
    dot = MovingLine((((0.0, 0.0),), ((1.0, 0.0),)), SWINGS.seconds, dot=5.0)
    drawing = picture(SWINGS, dot)
    changes = [*elements(drawing, "animateTransform"), *elements(drawing, "animate")]
    assert len(changes) == 4
    assert {(change.attrib["begin"], change.attrib["dur"]) for change in changes} == {("0.1s", "1.234s")}


@pytest.mark.parametrize(
    "shape",
    [SWINGS, MovingLine((((0.0, 0.0), (1.0, 0.0)), ((0.0, 0.0), (0.0, 1.0))), 4.0)],
    ids=["body", "line"],
)
def test_what_moves_begins_again_or_stays_where_it_ends(shape: MovingBody | MovingLine) -> None:
    for again, repeated, kept in ((True, "indefinite", None), (False, None, "freeze")):
        drawing = picture(replace(shape, again=again))
        changes = [*elements(drawing, "animateTransform"), *elements(drawing, "animate")]
        assert changes
        assert {(change.get("repeatCount"), change.get("fill")) for change in changes} == {(repeated, kept)}


def test_two_bodies_in_one_picture_have_names_of_their_own() -> None:
    drawing = picture(SWINGS, replace(SWINGS, about=(1.0, 0.0)))
    assert len({still.attrib["href"] for still in elements(drawing, "use")}) == 2
    assert_svg_is_sound(svg(drawing), drawing)


def test_the_picture_asks_nothing_from_anywhere_else() -> None:
    text = svg(sample()).replace('xmlns="http://www.w3.org/2000/svg"', "")
    assert "http" not in text
    assert "<script" not in text


@pytest.mark.parametrize(
    "shape",
    [
        Line(((0.0, 0.0), (99.0, 0.0))),
        Circle((0.0, 0.0), 3.0),
        Label("a long text that begins near the edge", (7.0, 1.0)),
        Wood(rectangle(0.0, 0.0, 9.0, 1.0)),
        Hatch(rectangle(0.0, 0.0, 9.0, 1.0)),
        MovingLine((((0.0, 0.0), (1.0, 0.0)), ((0.0, 0.0), (99.0, 0.0))), 4.0),
        MovingLine((((8.55, 0.0),), ((0.0, 0.0),)), 4.0, dot=5.0),
        MovingBody((Circle((0.0, 0.0), 1.0),), (0.0, 0.0), ((0.0, 0.0, 0.0), (7.7, 0.0, 0.0)), 4.0),
        MovingBody(
            (Wood(rectangle(0.0, 0.0, 4.0, 0.2)),), (0.0, 0.0), ((0.0, 1.0, 0.0), (0.0, 1.0, 180.0)), 4.0
        ),
        Dimension((0.0, 0.0), (1.0, 0.0), "1", -400.0),
    ],
    ids=lambda shape: type(shape).__name__,
)
def test_the_check_sees_what_stands_outside_the_picture(shape: Shape) -> None:
    with pytest.raises(AssertionError, match="outside the picture"):
        assert_sound(picture(shape))


def test_the_check_sees_a_number_that_is_none() -> None:
    with pytest.raises(AssertionError, match="not a number"):
        assert_sound(picture(Line(((0.0, 0.0), (float("nan"), 1.0)))))
    with pytest.raises(AssertionError, match="points is"):
        text = svg(picture(MovingLine((((0.0, 0.0), (1.0, 1.0)),), 4.0)))
        assert_svg_is_sound(text.replace('points="', 'points="nan,'), picture())


def test_the_check_sees_texts_on_one_another() -> None:
    with pytest.raises(AssertionError, match="'the post' and 'the tenon' overlap"):
        assert_no_texts_overlap(picture(Label("the post", (1.0, 1.0)), Label("the tenon", (1.5, 1.02))))


def test_the_check_sees_a_clip_that_is_not_there() -> None:
    wood = picture(Wood(rectangle(0.0, 0.0, 1.0, 1.0)))
    with pytest.raises(AssertionError):
        assert_svg_is_sound(svg(wood).replace('<clipPath id="wm-clip0"', '<clipPath id="other"'), wood)


def test_the_check_sees_a_body_that_is_not_there() -> None:
    drawing = picture(SWINGS)
    with pytest.raises(AssertionError):
        assert_svg_is_sound(svg(drawing).replace('<g id="wm-body0"', '<g id="other"'), drawing)
