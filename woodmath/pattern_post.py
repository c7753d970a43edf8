"""The patterns of the post: its four faces rolled out with every line, and the story stick that carries the lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case, Range
from woodmath.case_solids import foot_tenon_solid
from woodmath.drawing import Drawing, Label, Line, Points, Shape, Wood, rectangle, spread
from woodmath.hands_of_posts import post_of_hand
from woodmath.pattern import KnownLength, Pattern
from woodmath.story_stick import PostLine, StoryStick
from woodmath.true_frame import true_frame
from woodmath.views.setting_out_post import PostAsSet, post_settings
from woodmath.views.setting_out_stick import story_stick_drawing

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_details import FootTenon

_ROW, _WORD = 17.0, 13.0
_LATH = "20 mm"


def stick_pattern(piece: Piece, case: Case) -> Pattern:
    """Draw the story stick: every line of the post, counted from the shoulder at the foot.

    Parameters
    ----------
    piece : Piece
        Whose posts it serves.
    case : Case
        Of that piece.

    Returns
    -------
    Pattern
        In the piece's unit, the datum at 0.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> stick_pattern(piece, Case.of(piece)).known_lengths[-1].length == Case.of(piece).top
    True
    """
    lines = _lines(piece, case)
    stick = StoryStick(lines)
    width = piece.rule.read(_LATH)
    outline = ((0.0, stick.lowest), (width, stick.highest))
    frame = true_frame(outline, piece.rule, (24.0, 330.0, 24.0, 24.0))
    middle = width / 2
    known = tuple(
        KnownLength(f"datum to {line.name}", (middle, 0.0), (middle, line.along))
        for line in lines
        if line.along != 0
    )
    return Pattern("Story stick", story_stick_drawing(piece.rule, stick, width, frame), known)


def post_pattern(piece: Piece, case: Case, hand: str) -> Pattern:
    """Draw the four faces of a post side by side, as a paper that is folded round it would show them.

    Parameters
    ----------
    piece : Piece
        Whose post it is.
    case : Case
        Of that piece.
    hand : {"left", "right"}
        The two posts of a hand are alike; the other two are their mirror image.

    Returns
    -------
    Pattern
        In the piece's unit: the inside corner of the post at 0, the shoulder at the foot at height 0.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> post_pattern(piece, Case.of(piece), "left").name
    'Post, left hand'
    """
    turn = 1.0 if hand == "right" else -1.0
    square, rise = case.square, case.level_width * case.upward[0]
    lowest = min(0.0, case.top - piece.post.length)
    sheet = rectangle(-2 * square, lowest, 2 * square, case.top)
    frame = true_frame(sheet, piece.rule, (56.0, 280.0, 64.0, 24.0))

    def turned(points: Points) -> Points:
        return tuple((turn * x, y) for x, y in points)

    # Faces from the left, for the right hand: face edge, the side's mortises, the end's mortises, face side.
    shapes: list[Shape] = [
        Wood(
            turned(rectangle(left, lowest, left + square, case.square_top)),
            "pattern",
            "long",
            90.0,
            line="edge",
        )
        for left in (-2 * square, -square, 0.0, square)
    ]
    for kind, ranges in (("groove", case.grooves), ("mortise", case.tenons)):
        fill = "void" if kind == "mortise" else "paper"
        for along in ranges:
            for hole in _holes(case, along):
                shapes.append(Line(turned(hole), "edge", True, fill))
    shoulder = ((-2 * square, rise), (-square, rise), (0.0, 0.0), (square, 0.0), (2 * square, rise))
    shapes.append(Line(turned(shoulder), "accent"))
    if piece.rocker and piece.rocker.tenon:
        foot = foot_tenon_solid(case, piece.rocker.tenon)
        profile = tuple(_on_the_face(case, y, z) for y, z in foot.outline)
        thick = rectangle(
            (square - piece.rocker.tenon.thickness) / 2,
            min(y for _, y in profile),
            (square + piece.rocker.tenon.thickness) / 2,
            0.0,
        )
        shapes += [Line(turned(profile), "hidden", True), Line(turned(thick), "hidden", True)]
        end = _tenon_end(case, piece.rocker.tenon)
        shapes.append(Line(turned(tuple((x, y + end) for x, y in shoulder)), "centre"))
    if case.square_top < case.top:
        shapes += _turned_above(case)
    names = ("face edge", "for the side", "for the end", "face side")
    shapes += [
        Label(
            name,
            (turn * (left + square / 2), case.top + frame.length(14.0)),
            side="middle",
            bold=True,
            size=_WORD,
        )
        for name, left in zip(names, (-2 * square, -square, 0.0, square), strict=True)
    ]
    shapes += _readings(piece, case, turn, frame.length(1.0))
    corner = post_of_hand(hand).corner
    other = {"front left": "back right", "front right": "back left"}[corner]
    drawing = Drawing(
        f"The four faces of a post of the {hand} hand, side by side",
        frame,
        tuple(shapes),
        f"Post of the {hand} hand: {corner} and {other}.",
        told="Fold it round the post with the inside corner between the two mortised faces. The heavy line is the "
        "shoulder: level, and so at the splay to the post. The foot's tenon is sawn off at the line below it.",
    )
    return Pattern(f"Post, {hand} hand", drawing, _known(case, turn))


def _turned_above(case: Case) -> list[Shape]:
    """Return the axis of the turning over every face, up to the post's top, and where its shape is to be found."""
    square = case.square
    axes: list[Shape] = [
        Line(((x, case.square_top), (x, case.top)), "centre")
        for x in (each * square / 2 for each in (-3, -1, 1, 3))
    ]
    words = Label(
        "turned: see its template",
        (0.0, (case.square_top + case.top) / 2),
        side="middle",
        role="quiet",
        size=_WORD,
    )
    return [*axes, words]


def _holes(case: Case, along: Range) -> tuple[Points, Points]:
    """Return where the side's and the end's mortise or groove stands on the rolled-out faces, right hand."""
    end, side, square = case.joint.tenon, case.joint.other_tenon, case.square
    low, high = along
    return (
        rectangle(side.set_back - square, low, side.set_back + side.thickness - square, high),
        rectangle(square - end.set_back - end.thickness, low, square - end.set_back, high),
    )


def _on_the_face(case: Case, y: float, z: float) -> tuple[float, float]:
    """Return where a point of the end's view stands on the face that takes the side's mortises."""
    (out_y, out_z), (up_y, up_z) = case.outward, case.upward
    across, up = y - case.half_foot, z
    return (-(across * out_y + up * out_z), across * up_y + up * up_z)


def _tenon_end(case: Case, tenon: FootTenon) -> float:
    """Return where the foot's tenon ends, along the post's inside corner from the datum: less than 0."""
    return min(up for _, up in foot_tenon_solid(case, tenon).outline) / case.upward[1]


def _lines(piece: Piece, case: Case) -> tuple[PostLine, ...]:
    """Return the lines of the post from the lowest up: where the foot's tenon and the square end among them."""
    lines = list(PostAsSet.of(post_settings(piece)).lines)
    tenon = piece.rocker.tenon if piece.rocker else None
    if tenon is not None:
        lines.append(PostLine("foot's tenon ends, level", _tenon_end(case, tenon)))
    if case.square_top < case.top:
        lines.append(PostLine("square ends", case.square_top))
    return tuple(sorted(lines, key=lambda line: line.along))


def _readings(piece: Piece, case: Case, turn: float, unit: float) -> list[Shape]:
    """Write every line's distance from the shoulder beside the faces, each on a row of its own."""
    lines, edge = _lines(piece, case), 2 * case.square
    rows = spread([line.along / unit for line in lines], _ROW, -1e6, 1e6)
    shapes: list[Shape] = []
    for mark, row in zip(StoryStick(lines).readings(piece.rule), rows, strict=True):
        role = "accent" if mark.along == 0 else "ink"
        level = row * unit
        shapes += [
            Line(((edge, mark.along), (edge + 22 * unit, level), (edge + 28 * unit, level)), "quiet"),
            Label(mark.reading, (edge + 33 * unit, level), role=role, bold=True, size=_WORD),
            Label(mark.name, (edge + 122 * unit, level), role=role, size=_WORD),
        ]
    return shapes


def _known(case: Case, turn: float) -> tuple[KnownLength, ...]:
    square = case.square
    known = [
        KnownLength(
            "round the post",
            (-2 * square * turn, case.square_top * 0.97),
            (2 * square * turn, case.square_top * 0.97),
        )
    ]
    for number, (low, high) in enumerate(case.tenons, 1):
        for whose, hole in zip(("side", "end"), _holes(case, (low, high)), strict=True):
            (left, _), (right, _) = hole[0], hole[1]
            middle, level = (left + right) / 2 * turn, low + (high - low) / 3
            known += [
                KnownLength(f"{whose}'s mortise {number}, height", (middle, low), (middle, high)),
                KnownLength(
                    f"{whose}'s mortise {number}, width", (left * turn, level), (right * turn, level)
                ),
            ]
    return tuple(known)
