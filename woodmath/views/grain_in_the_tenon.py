"""A tenon on a sloping edge, cut square to the edge or along the grain, and what either keeps of its strength."""

from __future__ import annotations

import functools
from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import (
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    Points,
    Shape,
    Wood,
    break_line,
)
from woodmath.finding import more
from woodmath.grain_strength import TENON_EXPONENTS, TENON_SHARES, strength_kept, tenon_keeps
from woodmath.rule import Rule
from woodmath.tenon_fibres import TenonFibres
from woodmath.timber import in_a_sentence, species
from woodmath.timber_table import SPECIES
from woodmath.views.chart import Chart, key_of
from woodmath.views.edge_aslant import EdgeAslant
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (740.0, 470.0)
_MARGINS = (56.0, 376.0, 62.0, 34.0)
_CHART = (462.0, 112.0, 704.0, 330.0)
_STEEPEST = 45.0
_POINTS = 19
_USUAL = "cherry, black"

TIMBERS = tuple(each.name for each in SPECIES if each.compression_parallel and each.compression_perpendicular)
"""The timbers whose strength in compression is known both along and across the grain."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    tenon = TenonFibres(number(settings, "width"), number(settings, "reach"), number(settings, "splay"))
    square, along = number(settings, "square"), settings["tenon"] == "along"
    edge = EdgeAslant(tenon.splay)
    beyond = 0.3 * tenon.width + 0.25 * tenon.reach
    panel = 0.5 * max(tenon.width, tenon.reach)
    post = max(square, 1.1 * tenon.reach)
    # Cut along the grain, the tenon climbs along the post on its way out.
    low, high = -beyond, tenon.width + beyond + (edge.level_rise(tenon.reach) if along else 0.0)
    far_left = min(edge.at(low)[0], edge.at(high)[0]) - panel
    seen = (*(edge.at(up, out) for up in (low, high) for out in (0.0, post)), (far_left, edge.at(low)[1]))
    frame = Frame.around(seen, _SIZE, _MARGINS)
    kept = _kept(tenon.splay)
    return Drawing(
        title="A tenon on a sloping edge and the grain in it, and the strength that wood keeps at an angle",
        frame=frame,
        shapes=(
            *_wood(edge, (low, high), post, far_left),
            *_tenon(rule, tenon, edge, along, post, frame),
            *_strengths(tenon.splay, str(settings["timber"]), along, frame),
        ),
        headline=_headline(tenon.splay, kept, along),
        told=_told(rule, tenon, along, str(settings["timber"])),
        faults=_faults(rule, tenon, square, along),
    )


def _kept(splay: float) -> tuple[int, int]:
    """Return the two ends of what is kept, in whole percent."""
    low, high = (round(100 * kept) for kept in tenon_keeps(splay))
    return low, high


def _wood(edge: EdgeAslant, ends: tuple[float, float], post: float, far_left: float) -> tuple[Shape, ...]:
    low, high = ends
    foot, head = edge.at(low), edge.at(high)
    beside = (
        *break_line(edge.at(low), edge.at(low, post)),
        *break_line(edge.at(high, post), edge.at(high)),
    )
    panel = (foot, head, *break_line((far_left, head[1]), (far_left, foot[1])))
    return (
        Wood(beside, "post", "long", 90.0 - edge.splay, line=""),
        Line((edge.at(low, post), edge.at(high, post)), "edge"),
        Wood(panel, "end", "long", 0.0, line=""),
        Line((foot, head), "edge"),
    )


def _tenon(
    rule: Rule, tenon: TenonFibres, edge: EdgeAslant, along: bool, post: float, frame: Frame
) -> tuple[Shape, ...]:
    width, reach = tenon.width, tenon.reach
    outline: Points = (edge.at(0.0), edge.at(0.0, reach), edge.at(width, reach), edge.at(width))
    if along:
        outline = (edge.at(0.0), edge.level(0.0, reach), edge.level(width, reach), edge.at(width))
    short = [
        Hatch(tuple(edge.at(up, out) for out, up in part), role, 90.0 - tenon.splay, 6.0)
        for part, role in ((tenon.without_root, "fault"), (tenon.short_of_the_tip, "waste"))
        if part and not along
    ]
    return (
        Wood(outline, "end", "long", 0.0, line="edge"),
        *short,
        *_bounds(tenon, edge, along),
        Dimension(outline[2], outline[1], rule.mark(width), (post - reach) * frame.scale + 26.0),
        Dimension(
            outline[0] if not along else edge.at(edge.level_rise(reach)),
            outline[1],
            rule.mark(reach),
            -(0.3 * width + 0.25 * reach) * frame.scale
            - 26.0
            - (edge.level_rise(reach) * frame.scale if along else 0.0),
        ),
        Label(
            _fibre_words(rule, tenon, along),
            frame.at(24.0, 26.0),
            role="accent",
            bold=True,
            note="hatched: fibres that end at the tenon's side" if short else "",
        ),
    )


def _bounds(tenon: TenonFibres, edge: EdgeAslant, along: bool) -> tuple[Shape, ...]:
    """Draw the lowest and the uppermost fibre that run from shoulder to tip."""
    if along:
        places = (
            (0.0, edge.level_rise(tenon.reach)),
            (tenon.width, tenon.width + edge.level_rise(tenon.reach)),
        )
    elif tenon.whole:
        places = ((0.0, tenon.cut_through), (tenon.whole, tenon.width))
    else:
        return ()
    return tuple(Line((edge.at(start), edge.at(end, tenon.reach)), "accent") for start, end in places)


def _fibre_words(rule: Rule, tenon: TenonFibres, along: bool) -> str:
    if along or not more(tenon.splay, 0.0):
        return "every fibre runs from shoulder to tip"
    if not tenon.whole:
        return "no fibre runs from shoulder to tip"
    return f"whole fibres in {rule.mark(tenon.whole)} of {rule.mark(tenon.width, unit=True)}"


def _strengths(splay: float, timber: str, along: bool, frame: Frame) -> tuple[Shape, ...]:
    chart = Chart(frame, *_CHART, (0.0, _STEEPEST), (0.0, 100.0))
    low, high = map(_curve, TENON_SHARES, TENON_EXPONENTS)
    band = tuple(chart.at(*value) for value in (*low, *reversed(high)))
    at = 0.0 if along else splay
    ends = tuple((at, 100 * kept) for kept in tenon_keeps(at))
    return (
        Line(band, "quiet", True, "side"),
        *chart.curve(_curve(_share(timber)), "edge"),
        *chart.scales("degrees to the grain", "strength kept, percent", (5, 5)),
        Line((chart.at(splay, 0.0), chart.at(splay, 100.0)), "hidden"),
        Line(tuple(chart.at(*end) for end in ends), "accent"),
        *(Circle(chart.at(*end), 0.0, "accent", "fault", dot=5.0) for end in ends),
        *_key(chart, timber, frame),
    )


def _key(chart: Chart, timber: str, frame: Frame) -> tuple[Shape, ...]:
    left, row = chart.left - 6.0, chart.bottom + 66.0
    sample = (frame.at(left, row - 6.0), frame.at(left + 26.0, row + 6.0))
    (x, y), (u, v) = sample
    return (
        Line(((x, y), (u, y), (u, v), (x, v)), "quiet", True, "side"),
        Label("a tenon bent (from memory)", frame.at(left + 34.0, row + 4.0), role="quiet", size=12.5),
        *key_of(chart, chart.right - left, -(chart.bottom - chart.top) - 90.0, "edge", f"{timber}, pressed"),
    )


def _share(timber: str) -> float:
    """Return a timber's strength in compression across the grain as a part of that along it."""
    known = species(timber)
    assert known.compression_parallel and known.compression_perpendicular
    return known.compression_perpendicular.value / known.compression_parallel.value


@functools.cache
def _curve(share: float, exponent: float = 2.0) -> tuple[tuple[float, float], ...]:
    angles = [_STEEPEST * step / (_POINTS - 1) for step in range(_POINTS)]
    return tuple((angle, 100 * strength_kept(angle, share, exponent)) for angle in angles)


def _headline(splay: float, kept: tuple[int, int], along: bool) -> str:
    if not more(splay, 0.0):
        return "An upright edge: square to it is along the grain, and the tenon keeps all its strength."
    if along:
        return f"Along the grain the tenon keeps all its strength, though the edge leans {splay:.1f}°."
    low, high = kept
    told = f"{low} percent" if low == high else f"{low} to {high} percent"
    return f"At {splay:.1f}° a tenon square to the edge keeps {told} of what it has along the grain."


def _told(rule: Rule, tenon: TenonFibres, along: bool, timber: str) -> str:
    pressed = round(100 * strength_kept(tenon.splay, _share(timber)))
    averages = (
        f"Pressed at this angle, {in_a_sentence(timber)} keeps {pressed} percent. Averages of small clear samples: "
        "they compare one choice with another, and no load follows from them."
    )
    if not more(tenon.splay, 0.0):
        return averages
    if along:
        return (
            "What it costs: the shoulder stands at an angle to the tenon, the mortise is chopped aslant, and its end "
            f"walls cross the post's grain at {90 - tenon.splay:.1f}° and are undercut at one end. {averages}"
        )
    return (
        f"In {rule.mark(tenon.cut_through, unit=True)} of its width no fibre runs from shoulder to tip, and the "
        f"longest fibre in it is {rule.mark(tenon.longest, unit=True)}. In exchange the mortise stands square to the "
        f"post and the shoulder square to the tenon. {averages}"
    )


def _faults(rule: Rule, tenon: TenonFibres, square: float, along: bool) -> tuple[str, ...]:
    found = []
    if not tenon.whole and not along:
        found.append(
            "No fibre runs through this tenon: it is held by nothing but short grain. Cut it along the grain, make it "
            "shorter, or lean the edge less."
        )
    if more(tenon.reach, square):
        found.append(
            f"The tenon reaches {rule.mark(tenon.reach)} and the post is {rule.mark(square, unit=True)}: it comes out "
            "on the far side. Make it shorter."
        )
    return tuple(found)


def _start(piece: Piece) -> Settings:
    tenons = piece.joint.tenons
    name = piece.timber.species.strip() if piece.timber else ""
    reach = piece.post_joint().tenon.reach
    return {
        "splay": min(25.0, abs(piece.end.splay)) if piece.end else 0.0,
        "width": tenons[0].width if tenons else 2 * reach,
        "reach": reach,
        "tenon": "square",
        "timber": name if name in TIMBERS else _USUAL,
        "square": piece.post.square,
    }


grain_in_the_tenon = View(
    name="grain_in_the_tenon",
    draw=_draw,
    controls=(
        StepControl("splay", "splay", "degrees", Fraction(0), Fraction(25), Fraction(1, 2)),
        LengthControl("width", "tenon, width", ("1/2", "6"), ("12", "150")),
        LengthControl("reach", "tenon, reach", ("1/2", "4"), ("12", "100")),
        ChoiceControl("tenon", "tenon", (("square to the edge", "square"), ("along the grain", "along"))),
        ChoiceControl("timber", "timber", tuple((name, name) for name in TIMBERS)),
    ),
    start=_start,
)
