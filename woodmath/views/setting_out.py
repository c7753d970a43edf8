"""Four posts cramped side by side: every line squared across all of them, and its distance from the datum."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Hatch, Label, Line, Shape, Wood, rectangle, spread
from woodmath.fractions_in_print import set_fractions
from woodmath.hands_of_posts import END_INSIDE, LEFT, RIGHT, SIDE_INSIDE, CornerPost, Face, hands
from woodmath.lettering import text_width
from woodmath.rule import Rule
from woodmath.setting_out import StoryStick, gauge_settings
from woodmath.views.setting_out_post import FOOT, PANEL, TOP, PostAsSet, post_settings
from woodmath.views.view import ChoiceControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MARGINS = (92.0, 88.0, 96.0, 92.0)
_READING = 14.0
_NAME = 13.0
_ON_THE_BENCH = ("back right", "front right", "front left", "back left")
"""From the near edge of the bench to the far one: the two posts of an end lie together."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    post = PostAsSet.of(settings)
    low, high = -post.foot_tenon, post.foot + post.panel + post.top
    far = max([high, *(post.foot + place + width for place, width in post.crowded)])
    frame = Frame.around(((low, 0.0), (far, 4 * post.square)), _SIZE, _MARGINS)
    posts = {each.corner: each for each in hands()}
    shapes: list[Shape] = []
    for row, corner in enumerate(_ON_THE_BENCH):
        bottom = row * post.square
        shapes.append(
            Wood(rectangle(low, bottom, high, bottom + post.square), "post", "long", 0.0, line="edge")
        )
        shapes += _upper_face(post, posts[corner], settings, bottom, frame)
        middle = frame.place((0.0, bottom + post.square / 2))[1]
        shapes += [
            Label(corner, frame.at(_MARGINS[3] - 10.0, middle), side="left", size=_NAME),
            Label(f"{posts[corner].hand} hand", frame.at(_SIZE[0] - _MARGINS[1] + 10.0, middle), size=_NAME),
        ]
    shapes += _lines_across(post, frame)
    shapes += _readings(rule, post, frame)
    shapes += _names(post, frame)
    count = len(post.lines)
    return Drawing(
        title="Four posts side by side on the bench, with every line squared across them",
        frame=frame,
        shapes=tuple(shapes),
        headline=f"{count} lines from one datum; the last of them, the top, is at "
        f"{rule.mark(high, unit=True)}.",
        told=_told(str(settings["up"])),
        faults=post.faults,
    )


def _told(up: str) -> str:
    """Return which face is up, and on which side of it the gauge works: not the same for both hands."""
    side_of = {
        post.hand: "near" if _gauged_from_the_near_side(post, _inside(post, up)) else "far"
        for post in hands()
    }
    return (
        f"Up is the inside face that takes the {up}'s mortises. The small v stands on the arris that the gauge works "
        f"from: at the {side_of[LEFT]} side of a left-hand post, at the {side_of[RIGHT]} side of a right-hand one."
    )


def _inside(post: CornerPost, up: str) -> Face:
    return post.face(END_INSIDE if up == "end" else SIDE_INSIDE)


def _gauged_from_the_near_side(post: CornerPost, face: Face) -> bool:
    """Whether the gauge rides on the near side of a post that lies with its foot to the left and this face up.

    The near side is then the one that was to the right of the face while the post stood.
    """
    return post.to_the_right_of(face.name).name == face.gauged_from


def _upper_face(
    post: PostAsSet, corner: CornerPost, settings: Settings, bottom: float, frame: Frame
) -> list[Shape]:
    """Return mortises, groove and face mark on the face that is up, the post's foot to the left."""
    end = settings["up"] == "end"
    pins = gauge_settings(
        number(settings, "set_back" if end else "other_set_back"),
        number(settings, "tenon_thickness" if end else "other_thickness"),
    )
    near = _gauged_from_the_near_side(corner, _inside(corner, str(settings["up"])))
    arris, inward = (bottom, 1.0) if near else (bottom + post.square, -1.0)
    outer, inner = sorted(arris + inward * pin.distance for pin in pins)
    outer, inner = max(outer, bottom), min(inner, bottom + post.square)
    shapes: list[Shape] = []
    for stretch in post.stretches:
        if stretch.kind == "groove":
            shapes.append(Line(rectangle(stretch.start, outer, stretch.end, inner), "edge", True, "void"))
    for stretch in post.stretches:
        if stretch.kind == "mortise":
            outline = rectangle(stretch.start, outer, stretch.end, inner)
            shapes += [Hatch(outline, "waste", 45.0, 6.0), Line(outline, "edge", True)]
    for place, width in post.crowded:
        shapes.append(
            Hatch(rectangle(post.foot + place, outer, post.foot + place + width, inner), "fault", 135.0, 6.0)
        )
    x = 0.45 * post.foot
    wing, deep = frame.length(4.5), frame.length(9.0) * inward
    shapes.append(Line(((x - wing, arris + deep), (x, arris), (x + wing, arris + deep)), "pencil"))
    return shapes


def _lines_across(post: PostAsSet, frame: Frame) -> list[Shape]:
    far, over = 4 * post.square, frame.length(14.0)
    shapes: list[Shape] = [
        Line(((line.along, 0.0), (line.along, far)), "edge") for line in post.lines if line.along
    ]
    return [*shapes, Line(((0.0, -over), (0.0, far + over)), "accent")]


def _readings(rule: Rule, post: PostAsSet, frame: Frame) -> list[Shape]:
    """Return the running marks in two rows below the posts, each led to its line."""
    marks = StoryStick(post.lines).readings(rule)
    texts = [mark.reading for mark in marks]
    widest = max(text_width(set_fractions(text), _READING, True) for text in texts)
    # A leader to the lower row passes between two texts of the upper one.
    half = widest / 2 + 5.0
    places = [frame.place((mark.along, 0.0))[0] for mark in marks]
    level = frame.place((0.0, 0.0))[1]
    shapes: list[Shape] = []
    for index, x in enumerate(spread(places, half, half, _SIZE[0] - half)):
        datum = marks[index].along == 0
        row = level + (46.0 if index % 2 == 0 else 68.0)
        lead = (
            frame.at(places[index], level + (14.0 if datum else 4.0)),
            frame.at(x, level + 30.0),
            frame.at(x, row - 9.0),
        )
        shapes.append(Line(lead, "quiet"))
        shapes.append(
            Label(
                texts[index],
                frame.at(x, row),
                side="middle",
                role="accent" if datum else "ink",
                bold=True,
                size=_READING,
            )
        )
    return shapes


def _names(post: PostAsSet, frame: Frame) -> list[Shape]:
    """Return what the stretches are called, in a row above the posts, and the groove in a row of its own."""
    named = sorted(
        (stretch for stretch in post.stretches if stretch.kind not in ("panel", "groove")),
        key=lambda stretch: stretch.start,
    )
    middles = [frame.place(((stretch.start + stretch.end) / 2, 0.0))[0] for stretch in named]
    widest = max(text_width(stretch.name, _NAME) for stretch in named)
    level = frame.place((0.0, 4 * post.square))[1]
    shapes: list[Shape] = []
    for stretch, middle, x in zip(
        named,
        middles,
        spread(middles, widest + 8.0, widest / 2 + 4.0, _SIZE[0] - widest / 2 - 4.0),
        strict=True,
    ):
        shapes.append(Line((frame.at(middle, level - 3.0), frame.at(x, level - 20.0)), "quiet"))
        shapes.append(Label(stretch.name, frame.at(x, level - 30.0), side="middle", size=_NAME))
    datum = "datum: the shoulder" if post.foot_tenon else "datum: the foot"
    panel = "panel, with its groove" if post.tongue else "panel"
    reach = text_width(datum, _NAME, True) / 2
    x, panel_x = spread(
        [frame.place((along, 0.0))[0] for along in (0.0, post.foot + post.panel / 2)],
        reach + text_width(panel, _NAME) / 2 + 14.0,
        reach,
        _SIZE[0] - reach,
    )
    top = level - 56.0
    shapes.append(Label(datum, frame.at(x, top), side="middle", role="accent", bold=True, size=_NAME))
    shapes.append(Label(panel, frame.at(panel_x, top), side="middle", size=_NAME))
    return shapes


def _start(piece: Piece) -> Settings:
    return {**post_settings(piece), "up": "end"}


four_posts = View(
    name="four_posts",
    draw=_draw,
    controls=(
        FOOT,
        PANEL,
        TOP,
        ChoiceControl("up", "up", (("the end's mortises", "end"), ("the side's mortises", "side"))),
    ),
    start=_start,
)
