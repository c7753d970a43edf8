"""The turned top of a post as it lies in the lathe: half as it is seen, half cut, every station with its calipers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import (
    Dimension,
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
    spread,
)
from woodmath.finding import more
from woodmath.rule import Rule
from woodmath.turned_profile import HOLLOW, ROUND, STRAIGHT, Station, TurnedProfile
from woodmath.turning_card import allowance, finer
from woodmath.views.view import LengthControl, Settings, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 500.0)
_MARGINS = (92.0, 60.0, 150.0, 84.0)
_STUB = 0.55
"""Of the square, shown before the turning."""
_SLOT = 58.0
_LEAST = 0.15
"""Of the top's height: a turning shorter than this is drawn as long as this, and told as a fault."""
_NECK = 3.0

_SHAPE = (
    (0.0, "fillet", STRAIGHT),
    (0.05, "fillet", ROUND),
    (0.15, "bead", ROUND),
    (0.25, "fillet", STRAIGHT),
    (0.3, "fillet", HOLLOW),
    (0.4, "neck", ROUND),
    (0.7, "ball", ROUND),
    (1.0, "nib", STRAIGHT),
)
"""Where the stations lie along the turning, what each is, and how it runs on: a bead, half a cove, a flattened ball."""


def shaped(begins: float, top: float, bead: float, neck: float, ball: float) -> TurnedProfile:
    """Return a top with a bead, half a cove and a ball, for the view's sliders.

    Parameters
    ----------
    begins, top : float
        Where the turning begins and ends, `begins` less than `top`, in any length unit.
    bead, neck, ball : float
        Diameters, > 0, in the same unit; the fillets lie half way between bead and neck.

    Returns
    -------
    TurnedProfile
        The demo pieces' own tops are of this family.

    >>> from woodmath.piece import Piece
    >>> shaped(0.75, 2.0, 1.625, 1.0, 1.5).outline() == Piece.demo("cat-bed").post.turned.profile().outline()
    True
    """
    thick = {"fillet": (bead + neck) / 2, "bead": bead, "neck": neck, "ball": ball, "nib": ball / 6}
    return TurnedProfile(
        tuple(
            Station(begins + share * (top - begins), thick[part], to_next) for share, part, to_next in _SHAPE
        )
    )


def _draw(rule: Rule, settings: Settings) -> Drawing:
    square, top = number(settings, "square"), number(settings, "top")
    asked = number(settings, "begins")
    begins = min(asked, (1 - _LEAST) * top)
    profile = shaped(begins, top, *(number(settings, name) for name in ("bead", "neck", "ball")))
    left_on = number(settings, "left_on")
    half = max(square, profile.largest) / 2
    start = -_STUB * square
    frame = Frame.around(((start, -half), (top, half)), _SIZE, _MARGINS)
    return Drawing(
        title="The turned top of a post in the lathe, the upper half as it is seen, the lower half cut along the axis",
        frame=frame,
        shapes=(
            *_wood(profile, square, start),
            *_marked(profile, square, frame),
            *_sizes(rule, profile, square, half, frame),
            *_table(rule, profile, left_on, half, frame),
        ),
        headline=_headline(rule, profile, left_on),
        told=_told(rule, profile),
        faults=tuple(_faults(rule, settings, profile)),
    )


def _wood(profile: TurnedProfile, square: float, start: float) -> list[Shape]:
    """Return the square's end and the turning; below the axis both are cut, and struck with lines."""
    half, begins = square / 2, profile.start
    edge = profile.outline(16)
    upper: Points = ((begins, 0.0), *edge, (profile.end, 0.0))
    lower: Points = tuple((x, -y) for x, y in upper)
    broken = break_line((start, -half), (start, half))
    post: Points = ((begins, -half), (begins, half), *reversed(broken))
    cut: Points = ((start, -half), (begins, -half), (begins, 0.0), (start, 0.0))
    return [
        Wood(post, "post", "long", 0.0, line=""),
        Wood((*upper[1:-1], *reversed(lower[1:-1])), "post", "long", 0.0, line=""),
        Hatch(cut, "waste"),
        Hatch(lower, "waste"),
        Line(post, "outline", True),
        Line((*upper[1:-1], *reversed(lower[1:-1])), "outline", True),
    ]


def _marked(profile: TurnedProfile, square: float, frame: Frame) -> list[Shape]:
    """Return the axis, and a line round the upper half at every station between the two ends."""
    beyond = frame.length(22.0)
    start = -_STUB * square
    return [
        *(
            Line(((each.place, 0.0), (each.place, each.diameter / 2)), "quiet")
            for each in profile.stations[1:-1]
        ),
        Line(((start - beyond, 0.0), (profile.end + beyond, 0.0)), "centre"),
    ]


def _sizes(rule: Rule, profile: TurnedProfile, square: float, half: float, frame: Frame) -> list[Shape]:
    start = -_STUB * square
    above = (half - square / 2) * frame.scale
    sizes: list[Shape] = [
        Dimension((start, -square / 2), (start, square / 2), rule.mark(square), 38.0),
        Dimension(
            (profile.start, square / 2), (profile.end, square / 2), rule.mark(profile.length), above + 30.0
        ),
    ]
    if profile.start * frame.scale > 34.0:
        sizes.append(
            Dimension((0.0, square / 2), (profile.start, square / 2), rule.mark(profile.start), above + 30.0)
        )
    sizes.append(Line(((0.0, -square / 2), (0.0, square / 2)), "hidden"))
    return sizes


def _table(rule: Rule, profile: TurnedProfile, left_on: float, half: float, frame: Frame) -> list[Shape]:
    """Return three rows below the turning, a column for every station: place, diameter, calipers."""
    settings = profile.caliper_settings(left_on)
    places = [frame.place((each.place, 0.0))[0] for each in settings]
    columns = spread(places, _SLOT, 128.0, _SIZE[0] - 34.0)
    foot = frame.place((0.0, -half))[1]
    top = max(foot + 40.0, _SIZE[1] - 104.0)
    rows = (top, top + 26.0, top + 52.0)
    words = ("from the square", "diameter", "calipers")
    shapes: list[Shape] = [
        Label(word, frame.at(14.0, row), role="accent" if number == 2 else "quiet", size=12.0)
        for number, (word, row) in enumerate(zip(words, rows, strict=True))
    ]
    for each, column in zip(settings, columns, strict=True):
        where: Point = (each.place, -each.diameter / 2)
        shapes.append(
            Line((where, (each.place, -half - frame.length(6.0)), frame.at(column, top - 12.0)), "quiet")
        )
        texts = (
            rule.mark(each.place - profile.start),
            rule.mark(each.diameter),
            finer(rule, each.setting),
        )
        shapes += [
            Label(text, frame.at(column, row), side="middle", bold=number == 2, size=13.0)
            for number, (text, row) in enumerate(zip(texts, rows, strict=True))
        ]
    return shapes


def _headline(rule: Rule, profile: TurnedProfile, left_on: float) -> str:
    thick = max(profile.caliper_settings(left_on), key=lambda each: each.setting)
    return (
        f"Eight stations, counted from the square and sized from the top; the thickest is number {thick.number}, "
        f"with the calipers at {finer(rule, thick.setting)}."
    )


def _told(rule: Rule, profile: TurnedProfile) -> str:
    thinnest = min(profile.necks, key=lambda each: each.diameter, default=None)
    neck = f" At its neck it is {rule.mark(thinnest.diameter)} thick." if thinnest else ""
    return (
        f"The square goes on {rule.mark(profile.start)} above the panels, the turning "
        f"{rule.mark(profile.length, unit=True)} further.{neck}"
    )


def _faults(rule: Rule, settings: Settings, profile: TurnedProfile) -> list[str]:
    square, top = number(settings, "square"), number(settings, "top")
    begins = number(settings, "begins")
    faults = []
    if more(begins, profile.start):
        faults.append(
            f"The turning begins {rule.mark(begins)} above the panels and the post ends at {rule.mark(top)}: that "
            "leaves too little. Begin lower, or leave the post longer. It is drawn a little lower."
        )
    if more(profile.largest, square):
        faults.append(
            f"The largest round in a square of {rule.mark(square)} is as thick as its side, and "
            f"{rule.mark(profile.largest)} is asked for. Turn it thinner."
        )
    thin = min(each.diameter for each in profile.stations[:-1])
    if more(square, _NECK * thin):
        faults.append(
            f"The neck is {rule.mark(thin)} thick, less than a third of the square: it whips under the tool and snaps. "
            "Leave it stouter."
        )
    if more(number(settings, "neck"), min(number(settings, "bead"), number(settings, "ball"))):
        faults.append(
            "The neck is thicker than what stands beside it: there is no cove. Turn the neck thinner."
        )
    return faults


def _start(piece: Piece) -> Settings:
    square, top = piece.post.square, piece.post.top
    known = piece.post.turned.profile() if piece.post.turned else None
    if known and len(known.stations) == len(_SHAPE):
        thick = {part: each.diameter for each, (_, part, _) in zip(known.stations, _SHAPE, strict=True)}
        begins, bead, neck, ball = known.start, thick["bead"], thick["neck"], thick["ball"]
    else:
        # A top to begin with, where the posts are square to their ends: long enough to be turned.
        top = piece.rule.nearest(max(top, 1.1 * square))
        begins, bead, neck, ball = (
            piece.rule.nearest(each) for each in (0.4 * top, 0.92 * square, 0.58 * square, 0.86 * square)
        )
    return {
        "square": square,
        "top": top,
        "begins": begins,
        "bead": bead,
        "neck": neck,
        "ball": ball,
        "left_on": allowance(piece.rule),
    }


turned_top = View(
    name="turned_top",
    draw=_draw,
    controls=(
        LengthControl("square", "square, side", ("1 1/4", "3"), ("32", "75")),
        LengthControl("top", "post above the panels", ("1 1/2", "5"), ("40", "125")),
        LengthControl("begins", "turning begins at", ("0", "2"), ("0", "50")),
        LengthControl("bead", "bead, diameter", ("1/2", "3"), ("12", "75")),
        LengthControl("neck", "neck, diameter", ("1/4", "2"), ("6", "50")),
        LengthControl("ball", "ball, diameter", ("1/2", "3"), ("12", "75")),
        LengthControl("left_on", "left on for finishing", ("0", "1/8"), ("0", "3")),
    ),
    start=_start,
)
