"""The upper corner of a panel in elevation, with its bead, and beside it the bead in section at the same height."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.bead import Bead, hollow_shown, tenon_may_begin
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
    arc,
    break_line,
    spread,
)
from woodmath.errors import ImpossibleShape
from woodmath.numbers_as_written import number_shown
from woodmath.rebate import OUTER_FACE, Rebate
from woodmath.rule import Rule
from woodmath.views.view import LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 480.0)
_MARGINS = (102.0, 40.0, 104.0, 128.0)
_STEEPEST = Fraction(20)
_ASLANT = math.sqrt(0.5)
"""Where the round lies at 45 degrees, in radii from its middle: two lines there make it look round."""


@dataclass(frozen=True)
class _Corner:
    """A panel's corner at the origin; its shoulder runs down and to the right, its tongue stands out to the left."""

    bead: Bead
    rebate: Rebate
    rebated_from: str
    splay: float
    place: float

    @property
    def begins(self) -> float:
        return tenon_may_begin(self.bead, self.splay)

    @property
    def stub(self) -> float:
        return self.rebate.width + 0.5 * max(self.begins, self.rebate.width)

    @property
    def low(self) -> float:
        """How far down the shoulder the picture goes."""
        return 1.3 * max(self.place, self.begins) + 0.6 * max(self.begins, self.rebate.width)

    @property
    def height(self) -> float:
        return -self.at(self.low)[1]

    @property
    def right(self) -> float:
        return self.at(self.low)[0] + 0.62 * self.height

    @property
    def section(self) -> float:
        """Where the section's outer face stands."""
        return self.right + 0.36 * self.height

    def at(self, along: float, out: float = 0.0) -> Point:
        """Return the point so far along the shoulder, and so far out from it, square to it."""
        lean = math.radians(self.splay)
        sine, cosine = math.sin(lean), math.cos(lean)
        return (along * sine - out * cosine, -along * cosine - out * sine)

    def strip(self, start: float, end: float, out: float) -> Points:
        """Return what stands out from the shoulder between two places along it."""
        return (self.at(start), self.at(start, out), self.at(end, out), self.at(end))


def _draw(rule: Rule, settings: Settings) -> Drawing:
    corner = _Corner(
        bead=Bead(number(settings, "bead_width"), number(settings, "quirk")),
        rebate=Rebate(
            number(settings, "board"), number(settings, "tongue"), number(settings, "rebate_width")
        ),
        rebated_from=str(settings["rebated_from"]),
        splay=number(settings, "splay"),
        place=number(settings, "place"),
    )
    frame = Frame.around(
        (
            corner.at(0.0, corner.stub),
            corner.at(corner.place, corner.stub),
            (corner.section + corner.rebate.board, 0.0),
            corner.at(corner.low, corner.stub),
            (0.0, -corner.height),
        ),
        _SIZE,
        _MARGINS,
    )
    shown = hollow_shown(corner.bead, corner.place, corner.splay)
    begins = rule.mark(corner.begins, unit=True)
    return Drawing(
        title="The upper corner of a panel, with its bead and a tenon, and the bead in section beside it",
        frame=frame,
        shapes=(
            *_elevation(corner, shown),
            *_section(corner),
            *_dimensions(corner, rule, frame),
            *_labels(corner, frame, shown),
        ),
        headline=f"Bead and quirk end {begins} down the edge: before that no tenon may begin.",
        told=_told(corner, rule),
        faults=tuple(_faults(corner, rule, shown)),
    )


def _elevation(corner: _Corner, shown: float) -> list[Shape]:
    bead, high, right, low = corner.bead, corner.height, corner.right, corner.low
    begins, place, out, stub = corner.begins, corner.place, corner.rebate.width, corner.stub
    tongue_from = min(begins, place)
    foot, side = break_line(corner.at(low), (right, -high)), break_line((right, -high), (right, 0.0))
    end = break_line(corner.at(place, stub), corner.at(low, stub))
    under = break_line(corner.at(low, stub), corner.at(low))
    shapes: list[Shape] = [
        Hatch(corner.strip(0.0, tongue_from, out), "waste", 135.0, 7.0),
        Wood(corner.strip(tongue_from, place, out), "end", "long", line="edge"),
        Wood((corner.at(place), *end, *under), "end", "long", line="edge"),
    ]
    if shown > 0:
        shapes.append(Hatch(corner.strip(place, begins, stub), "fault"))
    upper, lower = _across(corner, bead.width), _across(corner, bead.reach)
    shapes += [
        Wood(((0.0, 0.0), *foot, *side), "end", "long", 0.0, line=""),
        Line((*upper, *reversed(lower)), "edge", True, "end grain"),
        *(Line(_across(corner, bead.radius * (1 + turn)), "quiet") for turn in (-_ASLANT, _ASLANT)),
        Line(side, "edge"),
        Line(foot, "edge"),
        Line(((right, 0.0), (0.0, 0.0), corner.at(low)), "outline"),
        Line((corner.at(0.0), corner.at(begins)), "accent"),
        Line((lower[1], (corner.section, -bead.reach)), "centre"),
    ]
    return shapes


def _across(corner: _Corner, down: float) -> tuple[Point, Point]:
    """Return a level line over the panel's face, so far below its edge."""
    return (down * math.tan(math.radians(corner.splay)), -down), (corner.right, -down)


def _section(corner: _Corner) -> list[Shape]:
    bead, board, face, high = corner.bead, corner.rebate.board, corner.section, corner.height
    radius, reach = bead.radius, bead.reach
    end = break_line((face, -high), (face + board, -high))
    outline = (
        (face + board, 0.0),
        *arc((face + radius, -radius), radius, 90.0, 270.0),
        (face + radius, -reach),
        (face, -reach),
        *end,
    )
    tongue = face + corner.rebate.depth if corner.rebated_from == OUTER_FACE else face + corner.rebate.tongue
    return [
        Wood(outline, "end", "end", pith=(face + 0.4 * board, -1.6 * high), line=""),
        Line((end[-1], *outline[: -len(end)], (face, -high)), "outline"),
        Line(end, "edge"),
        Line(((tongue, -corner.begins), (tongue, -high)), "hidden"),
    ]


def _dimensions(corner: _Corner, rule: Rule, frame: Frame) -> list[Shape]:
    bead, face = corner.bead, corner.section
    out = frame.scale * corner.stub
    middles = [frame.scale * bead.width / 2, frame.scale * (bead.width + bead.quirk / 2)]
    moved = spread(middles, 22.0, -1e6, 1e6)
    if frame.scale * bead.quirk < 30.0:
        # Between its own arrows there is no room for the number: it goes below them.
        moved[1] = frame.scale * bead.reach + 16.0
    round_wide = frame.scale * bead.radius
    beside = round_wide / 2 + 34.0 if round_wide < 24.0 else 0.0
    return [
        Dimension(corner.at(0.0), corner.at(corner.begins), rule.mark(corner.begins), -out - 28.0),
        Dimension(corner.at(0.0), corner.at(corner.place), rule.mark(corner.place), -out - 76.0),
        Dimension((face, 0.0), (face, -bead.width), rule.mark(bead.width), -34.0, moved[0] - middles[0]),
        Dimension(
            (face, -bead.width), (face, -bead.reach), rule.mark(bead.quirk), -34.0, moved[1] - middles[1]
        ),
        Dimension((face, 0.0), (face + bead.radius, 0.0), f"R = {rule.mark(bead.radius)}", 30.0, beside),
        Dimension(
            (face, -corner.height),
            (face + corner.rebate.board, -corner.height),
            rule.mark(corner.rebate.board),
            -30.0,
        ),
    ]


def _labels(corner: _Corner, frame: Frame, shown: float) -> list[Label]:
    begins = max(corner.begins, corner.place)
    tenon = corner.at(begins + 0.5 * (corner.low - begins), 0.5 * corner.stub)
    left, right = _across(corner, corner.bead.radius)
    bead = (left[0] + 0.3 * (right[0] - left[0]), left[1])
    labels = [
        Label("bead, then quirk", frame.at(320.0, 22.0), bead, "level, along the whole edge"),
        Label("tenon", frame.at(150.0, 440.0), tenon, "on to full reach"),
    ]
    if shown > 0:
        point = corner.at(corner.begins - shown / 2, 0.5 * corner.rebate.width)
        text, note = "the hollow shows here", "the tenon begins too early"
    else:
        point = corner.at(corner.begins)
        text, note = "the tongue stops here", "what is above it is cut away"
    labels.append(Label(text, frame.at(330.0, 440.0), point, note, role="accent", bold=True))
    return labels


def _told(corner: _Corner, rule: Rule) -> str:
    level = rule.mark(corner.bead.reach, unit=True)
    if not corner.splay:
        return f"The edge is upright, so that is the reach of bead and quirk itself: {level}."
    more = corner.begins - corner.bead.reach
    return (
        f"Bead and quirk reach {level}; along an edge that leans {number_shown(abs(corner.splay))}° that is "
        f"{number_shown(more, 3)} {rule.unit_mark} more."
    )


def _faults(corner: _Corner, rule: Rule, shown: float) -> list[str]:
    faults = []
    if shown > 0:
        much = rule.mark(shown, unit=True) if shown >= rule.one_mark / 2 else "less than a mark"
        faults.append(
            f"The tenon begins too early: {much} of the bead's hollow shows at the shoulder. Begin the tenon "
            "further in, or take a narrower bead."
        )
    if corner.rebated_from == OUTER_FACE and corner.bead.quirk_depth > corner.rebate.depth:
        faults.append(
            f"The quirk goes {rule.mark(corner.bead.quirk_depth, unit=True)} deep, deeper than the rebate: it "
            "would cut into the tongue. Take a narrower bead or a thinner tongue."
        )
    return faults


def _start(piece: Piece) -> Settings:
    tongue, bead, end = piece.joint.tongue, piece.bead, piece.end
    if tongue is None or bead is None or end is None:
        raise ImpossibleShape(
            f"{piece.name} has no bead along its panels' edges, or no tongue. Add [bead], [joint.tongue] and [end] "
            "to its file, or open a piece that has them."
        )
    last = max((tenon.place + tenon.width for tenon in piece.joint.tenons), default=0.0)
    return {
        "bead_width": bead.width,
        "quirk": bead.quirk,
        "splay": abs(end.splay),
        "place": end.slope_length - last,
        "rebate_width": tongue.length,
        "board": end.thickness,
        "tongue": piece.joint.tenon_thickness,
        "rebated_from": tongue.rebated_from,
    }


panel_corner = View(
    name="panel_corner",
    draw=_draw,
    controls=(
        LengthControl("bead_width", "bead, wide", ("1/8", "1/2"), ("3", "12")),
        LengthControl("quirk", "quirk, wide", ("1/16", "1/4"), ("1", "6")),
        StepControl("splay", "splay of the edge", "degrees", Fraction(0), _STEEPEST, Fraction(1, 2)),
        LengthControl("place", "tenon begins", ("0", "1 1/2"), ("0", "40")),
        LengthControl("rebate_width", "tongue, long", ("1/8", "3/4"), ("3", "20")),
    ),
    start=_start,
)
