"""The four posts in plan: which of their faces look outward, which take mortises, and which hand each post is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import (
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Point,
    Points,
    Shape,
    Wood,
    break_line,
)
from woodmath.errors import ImpossibleShape
from woodmath.hands_of_posts import CornerPost, Face, hands
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule
from woodmath.setting_out import gauge_settings
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 500.0)
_MARGINS = (76.0, 104.0, 76.0, 104.0)
_WORD = 13.0
_APART = (2.9, 1.7)
"""Room between the posts, in posts: the panels are broken off, the posts are what is looked at."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    square, shown = number(settings, "square"), str(settings["hand"])
    wide, deep = (square * (2 + apart) for apart in _APART)
    frame = Frame.around(((0.0, 0.0), (wide, deep)), _SIZE, _MARGINS)
    joint, trouble = _joint(settings)
    shapes: list[Shape] = [*_panels(settings, wide, deep)]
    for post in hands():
        seat = _Seat(post, wide, deep)
        shapes += _post(seat, square, joint)
        lit = shown in ("both", post.hand)
        shapes += [Line(seat.edge(face, square), "accent" if lit else "thin") for face in post.mortised]
        shapes += _words(seat, square, lit, frame)
    middle = (wide / 2, deep / 2)
    shapes.append(Label("middle of the case", middle, side="middle", role="quiet", size=_WORD))
    end = gauge_settings(number(settings, "set_back"), number(settings, "tenon_thickness"))
    pins = " and ".join(rule.mark(pin.distance) for pin in end)
    told = {
        "both": "Two posts are left hands and two right; across the diagonal they are alike, side by side "
        "they are mirror images.",
        "left": "Left hands stand to your left when you face an end from outside: back left at the one end, "
        "front right at the other.",
        "right": "Right hands stand to your right when you face an end from outside: front left at the one "
        "end, back right at the other.",
    }[shown]
    return Drawing(
        title="The four posts in plan, panels broken off, with their hands and their mortised faces",
        frame=frame,
        shapes=tuple(shapes),
        headline="Mortises look toward the middle, the gauge works from outside: for the end the pins are at "
        f"{pins} {rule.unit_mark}.",
        told=told,
        faults=(trouble,) if trouble else (),
    )


class _Seat:
    """Where a post stands in the plan; its own corner, outside both faces, is its origin."""

    def __init__(self, post: CornerPost, wide: float, deep: float) -> None:
        self.post = post
        self._x, self._y = (-1 if each < 0 else 1 for each in post.stands[:2])
        self._corner = (0.0 if self._x < 0 else wide, 0.0 if self._y < 0 else deep)

    def at(self, across: float, up: float) -> Point:
        """Return the point so far in from the face side, and so far in from the face edge."""
        return (self._corner[0] - self._x * across, self._corner[1] - self._y * up)

    def edge(self, face: Face, square: float) -> Points:
        """Return the two corners of the post between which a face lies."""
        x, y, _ = face.looks
        # Along a face one way in is fixed: 0 for an outer face, the whole post for an inside one.
        if x:
            across = 0.0 if x == self._x else square
            return (self.at(across, 0.0), self.at(across, square))
        up = 0.0 if y == self._y else square
        return (self.at(0.0, up), self.at(square, up))

    @property
    def outward(self) -> tuple[int, int]:
        """Which way is outward, to the right and up in the picture."""
        return (self._x, self._y)


def _joint(settings: Settings) -> tuple[PostJoint | None, str]:
    try:
        return (
            PostJoint(
                post=number(settings, "square"),
                tenon_thickness=number(settings, "tenon_thickness"),
                set_back=number(settings, "set_back"),
                other_thickness=number(settings, "other_thickness"),
                other_set_back=number(settings, "other_set_back"),
                ends="mitred",
            ),
            "",
        )
    except ImpossibleShape as impossible:
        return None, str(impossible)


def _post(seat: _Seat, square: float, joint: PostJoint | None) -> list[Shape]:
    corners = tuple(
        seat.at(across, up) for across, up in ((0.0, 0.0), (square, 0.0), (square, square), (0.0, square))
    )
    shapes: list[Shape] = [Wood(corners, "post", "end")]
    if joint is None:
        shapes.append(Hatch(corners, "fault"))
    else:
        # A joint counts the end's mortise along its first way and across its second; in the plan the end runs
        # up and down, so the two change places.
        for tenon, tint in ((joint.tenon, "end"), (joint.other_tenon, "side")):
            outline = tuple(seat.at(up, across) for across, up in tenon.outline)
            shapes.append(Wood(outline, tint, "long", 90.0 if tint == "end" else 0.0, line="edge"))
    return shapes


def _panels(settings: Settings, wide: float, deep: float) -> list[Shape]:
    """Return the stubs of the panels, broken off half way, each in line with its tenons."""
    square = number(settings, "square")
    shapes: list[Shape] = []
    for post in hands():
        seat = _Seat(post, wide, deep)
        for tint, set_back, thickness, room in (
            ("end", number(settings, "set_back"), number(settings, "tenon_thickness"), deep),
            ("side", number(settings, "other_set_back"), number(settings, "other_thickness"), wide),
        ):
            board = number(settings, f"{tint}_board")
            low = set_back + thickness - board if settings["rebated_from"] == "outer face" else set_back
            low, high = max(low, 0.0), min(low + board, square)
            stop = square + 0.32 * (room - 2 * square)

            def at(along: float, across: float, end: bool = tint == "end", seat: _Seat = seat) -> Point:
                return seat.at(across, along) if end else seat.at(along, across)

            broken = break_line(at(stop, low), at(stop, high))
            outline = (at(square, low), *broken, at(square, high))
            shapes.append(Wood(outline, tint, "long", 90.0 if tint == "end" else 0.0, line="edge"))
    return shapes


def _words(seat: _Seat, square: float, lit: bool, frame: Frame) -> list[Shape]:
    """Return the post's name and hand beyond its face edge, and the face marks with their words."""
    x, y = seat.outward
    side_x, side_y = frame.place(seat.at(0.0, square / 2))
    edge_x, edge_y = frame.place(seat.at(square / 2, 0.0))
    beyond = edge_y - 26.0 * y
    role = "ink" if lit else "quiet"
    return [
        _face_mark((side_x, side_y), (x, 0), frame),
        _face_mark((edge_x, edge_y), (0, y), frame),
        Label(
            "face side",
            frame.at(side_x + 16.0 * x, side_y),
            side="right" if x > 0 else "left",
            size=_WORD,
            role=role,
        ),
        Label("face edge", frame.at(edge_x, beyond), side="middle", size=_WORD, role=role),
        Label(
            f"{seat.post.corner}: {seat.post.hand} hand",
            frame.at(edge_x, beyond - 22.0 * y),
            side="middle",
            bold=lit,
            size=15.0,
            role=role,
        ),
    ]


def _face_mark(point: Point, outward: tuple[int, int], frame: Frame) -> Line:
    """Return a small v whose point touches the face, drawn beside it."""
    (x, y), (out, up) = point, outward
    far, half = 11.0, 5.0
    wings = [(x + far * out + turn * half * up, y - far * up + turn * half * out) for turn in (-1, 1)]
    return Line((frame.at(*wings[0]), frame.at(x, y), frame.at(*wings[1])), "pencil")


def _start(piece: Piece) -> Settings:
    if piece.end is None or piece.side is None:
        raise ImpossibleShape(
            f"{piece.name} has no panels to stand between its posts. Add [end] and [side] to its file, or "
            "open another piece."
        )
    joint = piece.joint
    return {
        "square": piece.post.square,
        "set_back": joint.set_back,
        "tenon_thickness": joint.tenon_thickness,
        "other_set_back": joint.side_set_back,
        "other_thickness": joint.side_thickness,
        "end_board": piece.end.thickness,
        "side_board": piece.side.thickness,
        "rebated_from": joint.tongue.rebated_from if joint.tongue else "outer face",
        "hand": "both",
    }


hands_in_plan = View(
    name="hands_in_plan",
    draw=_draw,
    controls=(
        LengthControl("square", "post, square", ("1 1/4", "3"), ("30", "75")),
        LengthControl("set_back", "end's set-back", ("1/8", "1"), ("3", "25")),
        LengthControl("tenon_thickness", "end's tenon, thick", ("1/4", "1"), ("6", "25")),
        ChoiceControl("hand", "shown", (("both hands", "both"), ("left", "left"), ("right", "right"))),
    ),
    start=_start,
)
