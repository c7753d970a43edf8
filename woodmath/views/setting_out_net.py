"""A paper post to cut out and fold: the stretch between the panel's edges, its faces side by side."""

from __future__ import annotations

from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Hatch, Label, Line, Shape, Wood, rectangle
from woodmath.hands_of_posts import FACE_EDGE, Face, post_of_hand
from woodmath.rule import Rule
from woodmath.setting_out import gauge_settings
from woodmath.views.setting_out_post import PostAsSet, post_settings
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 560.0)
_MARGINS = (64.0, 24.0, 26.0, 24.0)
_FLAP = 0.4
"""How much of the face edge is printed, in faces: four whole faces of a post are wider than the paper."""
_LOOP = ((8, 16), (0, 6), (-6, -8), (0, -15), (6, -8), (0, 6), (-8, 16))
_CROSS = ((-9, -12), (9, 12), (0, 0), (-9, 12), (9, -12))
"""The marks of the face side and of the face edge, in picture units to the right and down."""
_BEYOND = "The inner cheek lies beyond the post. Set the mortise back less, or make the tenon thinner."


def _draw(rule: Rule, settings: Settings) -> Drawing:
    post = PostAsSet.of(settings)
    square, height = post.square, post.panel
    faces = _in_a_row(str(settings["net"]))
    folds = [0.0, *accumulate(square * (_FLAP if face.name == FACE_EDGE else 1.0) for face in faces)]
    frame = Frame.around(((0.0, 0.0), (folds[-1], height)), _SIZE, _MARGINS)
    shapes: list[Shape] = []
    for column, (face, (left, right)) in enumerate(zip(faces, pairwise(folds), strict=True)):
        shapes.append(Wood(rectangle(left, 0.0, right, height), "post", "long", 90.0, line="edge"))
        if face.takes:
            shapes += _mortises(post, settings, face, faces, left)
        else:
            shapes.append(_face_mark(face, (left + right) / 2, frame))
        x, row = frame.place(((left + right) / 2, height))
        words = f"the {face.takes}'s mortises" if face.takes else face.name
        level = frame.at(x, row - (18.0 if column % 2 else 40.0))
        shapes.append(Label(words, level, side="middle", bold=not face.takes, size=13.0))
    shapes += [Line(((fold, 0.0), (fold, height)), "centre") for fold in folds[1:-1]]
    outer, inner = gauge_settings(number(settings, "set_back"), number(settings, "tenon_thickness"))
    beyond = inner.distance > square
    return Drawing(
        title="A paper post to cut out and fold, from the panel's lower edge to its upper one",
        frame=frame,
        shapes=tuple(shapes),
        headline="Cut it out and fold it on the dash-dot lines, the print outside: a post that is open behind.",
        told=f"It is {rule.mark(height, unit=True)} long, the foot is below. The end's mortises lie from "
        f"{rule.mark(outer.distance)} to {rule.mark(inner.distance, unit=True)} off the face side.",
        faults=(*post.faults, *((_BEYOND,) if beyond else ())),
    )


def _in_a_row(hand: str) -> tuple[Face, ...]:
    """Return the faces from left to right, as they pass one who walks round the post to the right.

    The row begins and ends with an outer face, so that both inside faces have their neighbours beside them.
    """
    faces = post_of_hand(hand).faces
    inside = next(at for at, face in enumerate(faces) if face.takes and not faces[at - 1].takes)
    return tuple(faces[(inside - 1 + step) % len(faces)] for step in range(len(faces)))


def _mortises(
    post: PostAsSet, settings: Settings, face: Face, faces: tuple[Face, ...], left: float
) -> list[Shape]:
    """Return groove and mortises on one face, gauged from the arris that it shares with its outer face."""
    end = face.takes == "end"
    outer, inner = (
        pin.distance
        for pin in gauge_settings(
            number(settings, "set_back" if end else "other_set_back"),
            number(settings, "tenon_thickness" if end else "other_thickness"),
        )
    )
    names = [each.name for each in faces]
    from_left = names[names.index(face.name) - 1] == face.gauged_from
    low, high = min(outer, post.square), min(inner, post.square)
    near, far = (
        (left + low, left + high) if from_left else (left + post.square - high, left + post.square - low)
    )
    shapes: list[Shape] = []
    for stretch in post.stretches:
        outline = rectangle(near, stretch.start - post.foot, far, stretch.end - post.foot)
        if stretch.kind == "groove":
            shapes.append(Line(outline, "edge", True, "void"))
        elif stretch.kind == "mortise":
            shapes += [Hatch(outline, "waste", 45.0, 6.0), Line(outline, "accent", True)]
    return shapes


def _face_mark(face: Face, middle: float, frame: Frame) -> Line:
    """Return the loop of the face side or the cross of the face edge, low on the face."""
    x, y = frame.place((middle, 0.0))[0], _SIZE[1] - 90.0
    way = _CROSS if face.name == FACE_EDGE else _LOOP
    return Line(tuple(frame.at(x + across, y + down) for across, down in way), "pencil")


def _start(piece: Piece) -> Settings:
    return {**post_settings(piece), "net": "left"}


post_net = View(
    name="post_net",
    draw=_draw,
    controls=(
        ChoiceControl("net", "net", (("the first", "left"), ("the second", "right"))),
        LengthControl("set_back", "end's set-back", ("1/8", "1"), ("3", "25")),
        LengthControl("tenon_thickness", "end's tenon, thick", ("1/4", "1"), ("6", "25")),
    ),
    start=_start,
)
