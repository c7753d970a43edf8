"""The rocker that a wish asks for: its ellipse with pins and string, and what would change if it were otherwise."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from woodmath import board_measure
from woodmath.drawing import Circle, Dimension, Drawing, Frame, Line, Point, Points, Shape, Wood
from woodmath.ellipse import Ellipse, bottom_radius_derivation
from woodmath.errors import ImpossibleShape, UnknownName
from woodmath.piece import Piece
from woodmath.piece_tables import Rocker
from woodmath.rocker_choice import ChosenRocker, Wish, choose_rocker
from woodmath.rocking import GRAVITY, RockingBody, period_derivation
from woodmath.rule import Rule
from woodmath.views.chart import Chart, key_of
from woodmath.views.lent_rocker import lent_rocker
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number
from woodmath.views.weight_mark import weight_mark
from woodmath.weighing import mass_shown

_SIZE = (680.0, 640.0)
_ROCKER = (46.0, 80.0, 330.0, 80.0)
"""Margins of the upper picture, in which the rocker stands."""
_CHARTS = (396.0, 574.0)
"""Top and bottom of both charts, in picture units."""
_SEEN = 0.95
"""Times the rocker's length: so far to each side and upward its ellipse is drawn."""
_ROUND = 60
_PLACES = 20
"""Of a curve."""
_SHORTEST = 20.0


def _draw(rule: Rule, settings: Settings) -> Drawing:
    piece = settings["piece"]
    if not isinstance(piece, Piece) or piece.rocker is None:
        raise UnknownName("rocker_for_a_wish draws a piece on rockers. Open one with Piece.read.")
    load = settings["load"] == "loaded"
    try:
        wish = Wish(number(settings, "period"), number(settings, "rolling_limit"), number(settings, "rise"))
        chosen = choose_rocker(piece, wish, load)
    except ImpossibleShape as trouble:
        own = ChosenRocker(piece.rocker, piece.ellipse(), piece.rocking_body(load))
        return _drawing(
            rule,
            piece,
            own,
            "There is no such rocker. This is the one that the piece has now.",
            (str(trouble),),
        )
    return _drawing(rule, piece, chosen, "", ())


def _drawing(
    rule: Rule, piece: Piece, chosen: ChosenRocker, headline: str, faults: tuple[str, ...]
) -> Drawing:
    rocker, ellipse, body = chosen.rocker, chosen.ellipse, chosen.body
    seen = _SEEN * rocker.length
    half, top = min(ellipse.half_length, seen), min(2 * ellipse.half_height, seen)
    high = max(top, rocker.depth)
    frame = Frame.around(((-half, 0.0), (half, high)), _SIZE, _ROCKER)
    told = _swing(body) if faults else _told(rule, chosen)
    return Drawing(
        title="A rocker chosen by its period, its rolling limit and its rise, and two charts of what it gives up",
        frame=frame,
        shapes=(
            _floor(frame),
            *_board(rocker, ellipse),
            *(_as_it_is(piece, frame, high) if not faults else ()),
            *_ellipse(ellipse, half, top),
            *_pins(ellipse, half, top),
            *_weight(rule, body, frame, high),
            *_sizes(rule, rocker, ellipse, frame),
            *_period_chart(rule, body, frame),
            *_barrier_chart(rule, body, frame),
        ),
        headline=headline or _headline(rule, chosen),
        told=told,
        faults=faults,
    )


def _floor(frame: Frame) -> Line:
    level = frame.place((0.0, 0.0))[1]
    return Line((frame.at(24.0, level), frame.at(_SIZE[0] - 24.0, level)), "quiet")


def _board(rocker: Rocker, ellipse: Ellipse) -> tuple[Shape, ...]:
    arc = tuple(ellipse.lower_arc(rocker.length))
    half, depth = rocker.length / 2, max(rocker.depth, rocker.rise)
    return (
        Wood((*arc, (half, depth), (-half, depth)), "board", "long", 0.0),
        Line(arc, "accent"),
    )


def _as_it_is(piece: Piece, frame: Frame, high: float) -> tuple[Shape, ...]:
    """Return the piece's own rocker beside it, as a hidden line, as far as the picture goes."""
    rocker = piece.rocker
    room = frame.length(_SIZE[0] / 2 - 24.0)
    if rocker is None or rocker.depth > high or rocker.length / 2 > room:
        return ()
    half = rocker.length / 2
    arc = tuple(piece.ellipse().lower_arc(rocker.length))
    return (Line(((-half, rocker.depth), *arc, (half, rocker.depth)), "hidden"),)


def _ellipse(ellipse: Ellipse, half: float, top: float) -> tuple[Shape, ...]:
    """Return as much of the ellipse as is seen, from its lowest point to both sides."""
    b = ellipse.half_height
    points: list[Point] = []
    for step in range(_ROUND + 1):
        x, y = ellipse.point(270.0 + 180.0 * step / _ROUND)
        if x > half * (1 + 1e-9) or y + b > top * (1 + 1e-9):
            break
        points.append((x, y + b))
    left: Points = tuple((-x, y) for x, y in reversed(points))
    whole = len(points) == _ROUND + 1
    return (Line((*left, *points[1:]), "edge", whole),) if len(points) > 1 else ()


def _pins(ellipse: Ellipse, half: float, top: float) -> tuple[Shape, ...]:
    """Return pins and string, where they are near enough to be seen."""
    b = ellipse.half_height
    pins = tuple((x, y + b) for x, y in ellipse.pins)
    if any(abs(x) > half or y > top for x, y in pins) or 2 * b > top * (1 + 1e-9):
        return ()
    x, y = ellipse.point(300.0)
    pencil = (x, y + b)
    return (
        Line((pins[0], pencil, pins[1]), "string", True),
        *(Circle(pin, 0.0, "edge", "steel", dot=6.0) for pin in pins),
        Circle(pencil, 0.0, "pencil", "ink", dot=4.0),
    )


def _weight(rule: Rule, body: RockingBody, frame: Frame, high: float) -> tuple[Shape, ...]:
    above = body.centre_height * board_measure.metre_in(rule.unit)
    if above > high:
        return ()
    return weight_mark((0.0, above), frame)


def _sizes(rule: Rule, rocker: Rocker, ellipse: Ellipse, frame: Frame) -> tuple[Shape, ...]:
    half, rise = rocker.length / 2, rocker.rise
    shapes: list[Shape] = [Dimension((half, 0.0), (-half, 0.0), rule.mark(rocker.length), 30.0)]
    if rise * frame.scale > _SHORTEST:
        shapes += [
            Line(((half, rise), (half, 0.0)), "thin"),
            Dimension((half, rise), (half, 0.0), rule.mark(rise), 26.0),
        ]
    return tuple(shapes)


def _headline(rule: Rule, chosen: ChosenRocker) -> str:
    ellipse, rocker = chosen.ellipse, chosen.rocker
    standing = ", one above the other," if ellipse.half_height > ellipse.half_length else ""
    return (
        f"Pins {rule.mark(ellipse.pin_spacing)} apart{standing} and a loop of {rule.mark(ellipse.loop)}; "
        f"the rocker is {rule.mark(rocker.length, unit=True)} long."
    )


def _told(rule: Rule, chosen: ChosenRocker) -> str:
    rocker, ellipse, body = chosen.rocker, chosen.ellipse, chosen.body
    centre = body.centre_height * board_measure.metre_in(rule.unit)
    return (
        f"Half-length {rule.mark(ellipse.half_length)}, half-height {rule.mark(ellipse.half_height)}, at the "
        f"bottom as round as a circle of radius {rule.mark(rocker.bottom_radius, unit=True)}. The whole weighs "
        f"{mass_shown(body.mass, rule)}, and its centre of gravity lies {rule.mark(centre, unit=True)} over the floor. "
        f"{_swing(body)}"
    )


def _swing(body: RockingBody) -> str:
    if not body.is_stable:
        return "It does not stand on them."
    return (
        f"It swings in {body.period():.2f} s and rolls back from {body.rolling_limit:.1f}°; it goes over at "
        f"{body.tip_angle:.1f}°, and that takes {body.barrier:.1f} J."
    )


def _period_chart(rule: Rule, body: RockingBody, frame: Frame) -> tuple[Shape, ...]:
    """Chart the period over the half-height, with the same half-length, weight and height of the weight."""
    metre = board_measure.metre_in(rule.unit)
    a, b = body.ellipse.half_length, body.ellipse.half_height
    stands_no_more = bottom_radius_derivation().function("half_height")(
        radius=body.centre_height, half_length=a
    )
    most = min(2 * b, stands_no_more)
    low = 0.3 * b
    rule_of_period = period_derivation().function("period")

    def period(half_height: float) -> float:
        return rule_of_period(
            gyration_radius=body.gyration_radius,
            centre_height=body.centre_height,
            radius=Ellipse(a, half_height).radius_at_bottom,
            gravity=GRAVITY,
        )

    values = [
        (height * metre, period(height))
        for step in range(_PLACES)
        if (height := low + (most - low) * step / _PLACES) < stands_no_more
    ]
    longest = min(2 * body.period(), max(value for _, value in values))
    chart = Chart(
        frame, 70.0, _CHARTS[0], 318.0, _CHARTS[1], (low * metre, most * metre), (0.0, 1.05 * longest)
    )
    return (
        *chart.scales(f"half-height b, {rule.unit_mark}", "period, s"),
        *chart.curve(values),
        *_here(chart, b * metre, body.period()),
    )


def _barrier_chart(rule: Rule, body: RockingBody, frame: Frame) -> tuple[Shape, ...]:
    """Chart what it takes to end the rolling, and to tip it really, over the length of its rockers."""
    metre = board_measure.metre_in(rule.unit)
    length = body.rocker_length
    low, most = 0.4 * length, min(1.6 * length, 2 * body.ellipse.half_length)
    rolling, over = [], []
    for step in range(_PLACES // 2 + 1):
        other = replace(body, rocker_length=low + (most - low) * step / (_PLACES // 2))
        rolling.append((other.rocker_length * metre, other.rolling_barrier))
        over.append((other.rocker_length * metre, other.barrier))
    highest = 1.1 * max(value for _, value in over)
    chart = Chart(frame, 402.0, _CHARTS[0], 650.0, _CHARTS[1], (low * metre, most * metre), (0.0, highest))
    return (
        *chart.scales(f"length of the rocker, {rule.unit_mark}", "barrier, J"),
        *chart.curve(over),
        *chart.curve(rolling, "hidden"),
        *key_of(chart, 146.0, 34.0, "edge", "to go over"),
        *key_of(chart, 146.0, 16.0, "hidden", "to leave the curve"),
        *_here(chart, length * metre, body.barrier),
    )


def _here(chart: Chart, x: float, y: float) -> tuple[Shape, ...]:
    place = chart.at(x, y)
    return (
        Line((chart.at(x, chart.up[0]), place, chart.at(chart.across[0], y)), "centre"),
        Circle(place, 0.0, "edge", "ink", dot=5.5),
    )


def _start(piece: Piece) -> Settings:
    rocker = piece.rocker or lent_rocker(piece)
    piece = replace(piece, rocker=rocker)
    body = piece.rocking_body(load=True)
    return {
        "piece": piece,
        "period": round(body.period(), 2),
        "rolling_limit": round(body.rolling_limit),
        "rise": rocker.rise,
        "load": "loaded",
    }


rocker_for_a_wish = View(
    name="rocker_for_a_wish",
    draw=_draw,
    controls=(
        StepControl("period", "period", "s", Fraction(2, 5), Fraction(2), Fraction(1, 100)),
        StepControl("rolling_limit", "rolling limit", "degrees", Fraction(5), Fraction(60), Fraction(1)),
        LengthControl("rise", "rise at the heels", ("1/4", "6"), ("5", "150")),
        ChoiceControl("load", "rocks", (("with what lies in it", "loaded"), ("empty", "empty"))),
    ),
    start=_start,
)
