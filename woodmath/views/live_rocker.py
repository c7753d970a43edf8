"""The live rocker: a case tilted on its curve, held or let go, and the curve of energy with a ball on it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from woodmath import board_measure, mass
from woodmath.drawing import (
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
)
from woodmath.ellipse import Ellipse
from woodmath.errors import UnknownName
from woodmath.numbers_as_written import number_shown
from woodmath.piece import Piece
from woodmath.rocking import GRAVITY, Motion, RockingBody, energy_derivation, over_heel_derivation
from woodmath.rocking_stand import stand_at
from woodmath.rule import Rule
from woodmath.views.chart import Chart, key_of
from woodmath.views.lent_rocker import lent_rocker
from woodmath.views.rocking_case import CaseOnFlatBase, CaseOnRocker, Drawable, Pose, brought, reach
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

_SIZE = (680.0, 660.0)
_MARGINS = (30.0, 30.0, 300.0, 30.0)
_CHART = (76.0, 416.0, 644.0, 596.0)
_TALLEST = 1.9
"""Times the case's height: so far up the centre of the fitting circle is drawn."""
_TILTED = 50.0
"""Degrees to both sides that the case can be tilted."""
_FURTHEST = 60.0
"""Degrees to both sides that the curve of energy goes."""
_PLACES = 40
_PICTURES_A_SECOND = 60
_WATCHED = 6.0
"""Seconds that a swing with drag is watched."""
_DRAG = 0.06
"""Of what would just stop a small swing from swinging."""
_SMALLEST = 0.02
"""Of its height: a chart shows at least what lifts the weight so far."""
_UPRIGHT = 0.05
"""Degrees: what leans less is called upright."""


@dataclass(frozen=True)
class _Shown:
    """One case of the picture: the middle of its place, how it stands, how its energy is drawn."""

    case: CaseOnRocker | CaseOnFlatBase
    middle: float
    role: str
    name: str
    tilt: float
    motion: Motion | None = None
    again: bool = False
    """Whether the motion is a whole swing, whose end is its beginning."""

    @property
    def furthest(self) -> float:
        """How far it is ever tilted, in degrees: by hand, or by itself where it rests far askew."""
        return max(_TILTED, *(map(abs, self.motion.tilts) if self.motion else (0.0,)))

    @cached_property
    def curve(self) -> list[tuple[float, float]]:
        """The energy over the tilt, from far on the left to far on the right."""
        tilts = [_FURTHEST * (2 * place / _PLACES - 1) for place in range(_PLACES + 1)]
        if isinstance(self.case, CaseOnRocker):
            heel = min(self.case.body.heel_angle, _FURTHEST)
            return [(tilt, self.case.stand(tilt).energy) for tilt in sorted({*tilts, -heel, heel})]
        return [(tilt, _on_the_edge(self.case, tilt)) for tilt in tilts]


def _draw(rule: Rule, settings: Settings) -> Drawing:
    metre = board_measure.metre_in(rule.unit)
    body = _body(rule, settings)
    tilt = number(settings, "tilt")
    top = _top(body) * metre
    motion, trouble = _motion(body, tilt, str(settings["motion"]))
    main = _Shown(CaseOnRocker(body, metre, top), 0.0, "edge", "", tilt, motion, settings["motion"] == "free")
    shown = [main, *(_others(main, str(settings["motion"])) if settings["beside"] == "three" else ())]
    frame = _frame(shown, body, metre, top)
    chart = _chart(shown, frame)
    faults = () if body.is_stable else (_goes_over(rule, body),)
    return Drawing(
        title="A case on its rocker, tilted, with its weight, its touching point and its curve of energy",
        frame=frame,
        shapes=(
            _floor(frame),
            *(shape for each in shown for shape in _scene(each, rule, frame, alone=len(shown) == 1)),
            *chart.scales("tilt, degrees", "energy, J", steps=(13, 4), least=(10.0, 0.0)),
            *(shape for each in shown for shape in _energy(each, chart, len(shown) == 1)),
            *_key(chart, len(shown) == 1),
        ),
        headline=_headline(rule, body),
        told=f"{_told(rule, body, tilt)} {trouble}".strip(),
        faults=faults,
    )


def _body(rule: Rule, settings: Settings) -> RockingBody:
    """Return the case with its load, its weight as high as the slider says."""
    piece = settings["piece"]
    if not isinstance(piece, Piece) or piece.rocker is None:
        raise UnknownName("live_rocker draws a piece on rockers. Open one with Piece.read.")
    metre = board_measure.metre_in(rule.unit)
    ellipse = Ellipse(number(settings, "half_length") / metre, number(settings, "half_height") / metre)
    case = replace(
        piece.rocking_body(),
        ellipse=ellipse,
        rocker_length=min(piece.rocker.length / metre, 2 * ellipse.half_length),
    )
    load = number(settings, "load")
    if load:
        heap = mass.heaped("the load", mass.loads(piece)) if piece.load else None
        height = heap.centre_height / metre if heap else case.centre_height
        spread = heap.gyration_radius() / metre if heap else 0.0
        case = case.with_body(load, height, spread, number(settings, "aside") / metre)
    return replace(case, centre_height=number(settings, "weight_height") / metre)


def _top(body: RockingBody) -> float:
    """Return how high the case is drawn, in metres: high enough for its weight, and never a mere slab."""
    return max(1.35 * body.centre_height, body.rise + 0.5 * body.rocker_length)


def _motion(body: RockingBody, tilt: float, wanted: str) -> tuple[Motion | None, str]:
    """Return the motion that is played, if any; and a sentence if there can be none."""
    if wanted == "held" or not body.is_stable:
        return None, ""
    amplitude = tilt - body.rest_tilt
    if not amplitude:
        return None, "Tilt it before you let it go."
    if abs(amplitude) >= body.rolling_limit:
        return None, (
            f"Let go from here it does not roll back: choose a tilt less than {body.rolling_limit:.1f}° from where it "
            "rests."
        )
    if wanted == "dragged":
        return body.motion(amplitude, _WATCHED, damping_ratio=_DRAG), ""
    period = body.period(amplitude)
    return body.motion(amplitude, period, pictures=math.ceil(period * _PICTURES_A_SECOND)), ""


def _others(main: _Shown, wanted: str) -> tuple[_Shown, ...]:
    """Return the same case on a round rocker as flat at the bottom, and on a flat base."""
    case = main.case
    assert isinstance(case, CaseOnRocker)
    body = case.body
    radius = body.ellipse.radius_at_bottom
    round_one = replace(
        body, ellipse=Ellipse(radius, radius), rocker_length=min(body.rocker_length, 2 * radius)
    )
    rounded = CaseOnRocker(round_one, case.metre, case.top)
    flat = CaseOnFlatBase(body.on_flat_base(case.half / case.metre), body, case.metre, case.top)
    left, right, _ = reach(case, _TILTED)
    apart = 1.02 * max(right - reach(flat, _TILTED)[0], reach(rounded, _TILTED)[1] - left)
    motion, _ = _motion(round_one, main.tilt, wanted)
    return (
        _Shown(rounded, -apart, "thin", "circle", main.tilt, motion, main.again),
        _Shown(flat, apart, "hidden", "flat", main.tilt),
    )


def _frame(shown: list[_Shown], body: RockingBody, metre: float, top: float) -> Frame:
    """Return the frame that holds every tilt of every case: it stays while one is tilted by hand."""
    reaches = [(each.middle, *reach(each.case, each.furthest)) for each in shown]
    high = max(high for *_, high in reaches)
    if len(shown) == 1:
        high = max(high, min(1.04 * body.ellipse.radius_at_bottom * metre, _TALLEST * top))
    left = min(middle + left for middle, left, *_ in reaches)
    right = max(middle + right for middle, _, right, _ in reaches)
    return Frame.around(((left, 0.0), (right, high)), _SIZE, _MARGINS)


def _floor(frame: Frame) -> Line:
    level = frame.place((0.0, 0.0))[1]
    return Line((frame.at(16.0, level), frame.at(_SIZE[0] - 16.0, level)), "outline")


def _scene(shown: _Shown, rule: Rule, frame: Frame, alone: bool) -> tuple[Shape, ...]:
    case = shown.case
    at_rest = tuple(_moved(shape, shown.middle) for shape in case.wood(frame))
    about = (case.weight[0] + shown.middle, case.weight[1])
    names = () if alone else (_name(shown, frame),)
    if shown.motion is not None and isinstance(case, CaseOnRocker):
        return (*_playing(shown, case, at_rest, about, frame), *names)
    x, y, turned = case.pose(shown.tilt)
    pose = (x + shown.middle, y, turned)
    still = tuple(_brought(shape, about, pose) for shape in at_rest)
    if not isinstance(case, CaseOnRocker):
        edge = shown.middle + (case.half if shown.tilt > 0 else -case.half)
        touching = (Circle((edge, 0.0), 0.0, "accent", "accent", dot=4.5),) if shown.tilt else ()
        return (*still, Line((pose[:2], (pose[0], 0.0)), "centre"), *touching, *names)
    stand = case.stand(shown.tilt)
    touch = shown.middle + stand.touch * case.metre
    return (
        *still,
        *(_curvature(shown, case, pose, about, touch, frame) if alone else ()),
        Line((pose[:2], (pose[0], 0.0)), "centre"),
        *((Label("G", frame.at(*_beside(frame.place(pose[:2]))), bold=True),) if alone else ()),
        *(_lever(rule, frame, pose[0], touch) if alone else ()),
        Circle((touch, 0.0), 0.0, "accent", "accent", dot=4.5),
        *names,
    )


def _beside(place: Point) -> Point:
    """Return where a letter stands beside a mark of the picture."""
    return (place[0] + 13.0, place[1] - 7.0)


def _name(shown: _Shown, frame: Frame) -> Label:
    x, level = frame.place((shown.middle, 0.0))
    return Label(shown.name or "ellipse", frame.at(x, level + 26.0), side="middle", bold=True)


def _playing(
    shown: _Shown, case: CaseOnRocker, at_rest: tuple[Drawable, ...], about: Point, frame: Frame
) -> tuple[Shape, ...]:
    """Return the case let go, with its plumb line, its lever arm and its touching point in step."""
    motion, body, metre = shown.motion, case.body, case.metre
    assert motion is not None
    poses: list[Pose] = [
        (shown.middle + (body.centre_offset + position) * metre, height * metre, -tilt)
        for position, height, tilt in zip(motion.positions, motion.heights, motion.tilts, strict=True)
    ]
    touches = [
        x + body.lever_arm_at(tilt) * metre for (x, _, _), tilt in zip(poses, motion.tilts, strict=True)
    ]
    if shown.again:
        poses[-1], touches[-1] = poses[0], touches[0]
    both = tuple(zip(poses, touches, strict=True))

    def moving(role: str, points: Callable[[Pose, float], Points], dot: float = 0.0) -> MovingLine:
        return MovingLine(tuple(points(pose, touch) for pose, touch in both), motion.seconds, role, dot=dot)

    return (
        MovingBody(at_rest, about, tuple(poses), motion.seconds),
        moving("centre", lambda pose, _: (pose[:2], (pose[0], 0.0))),
        moving("accent", lambda pose, touch: ((pose[0], 0.0), (touch, 0.0))),
        moving("accent", lambda _, touch: ((touch, 0.0),), dot=4.5),
    )


def _moved(shape: Drawable, across: float) -> Drawable:
    return _brought(shape, (0.0, 0.0), (across, 0.0, 0.0))


def _brought(shape: Drawable, about: Point, pose: Pose) -> Drawable:
    """Return a shape of the body at rest where the body has brought it."""
    match shape:
        case Wood():
            return replace(shape, outline=brought(shape.outline, about, pose), angle=shape.angle + pose[2])
        case Line():
            return replace(shape, points=brought(shape.points, about, pose))
        case Circle():
            return replace(shape, centre=brought((shape.centre,), about, pose)[0])
        case Hatch():
            return replace(shape, outline=brought(shape.outline, about, pose))


def _curvature(
    shown: _Shown, case: CaseOnRocker, pose: Pose, about: Point, touch: float, frame: Frame
) -> tuple[Shape, ...]:
    """Return the centre of the circle that fits where it touches, and the way that it goes as the case rolls."""
    if not case.stand(shown.tilt).rolls:
        return ()
    _, high = frame.at(0.0, 12.0)
    low_x, high_x = frame.at(12.0, 0.0)[0], frame.at(_SIZE[0] - 12.0, 0.0)[0]
    rest = tuple((x + shown.middle, y) for x, y in case.centres())
    centres = brought(rest, about, pose)
    seen = [(x, y) for x, y in centres if 0 < y < high and low_x < x < high_x]
    shapes: list[Shape] = [Line(tuple(seen), "quiet")] if len(seen) > 1 else []
    radius = case.body.radius_at(shown.tilt) * case.metre
    if radius < high:
        shapes += [
            Line(((touch, 0.0), (touch, radius)), "quiet"),
            Circle((touch, radius), 0.0, "edge", "paper", dot=4.5),
            Label("C", (touch - frame.length(10.0), radius), side="left", role="quiet"),
        ]
    return tuple(shapes)


def _lever(rule: Rule, frame: Frame, weight: float, touch: float) -> tuple[Shape, ...]:
    """Return the lever arm along the floor, with its length below where there is room for it."""
    if abs(touch - weight) * frame.scale < 2.0:
        return ()
    right, left = max(weight, touch), min(weight, touch)
    arm = Line(((weight, 0.0), (touch, 0.0)), "accent")
    return (arm, Dimension((right, 0.0), (left, 0.0), rule.mark(right - left), 24.0))


def _chart(shown: list[_Shown], frame: Frame) -> Chart:
    values = [energy for each in shown for _, energy in each.curve]
    body = shown[0].case.body
    least = energy_derivation().function("energy")(
        mass=body.mass, gravity=GRAVITY, lift=_SMALLEST * body.centre_height
    )
    high = 1.12 * max(least, *values)
    low = min(0.0, max(-high, 1.12 * min(values)))
    return Chart(frame, *_CHART, (-_FURTHEST, _FURTHEST), (low, high))


def _on_the_edge(case: CaseOnFlatBase, tilt: float) -> float:
    """Return the energy of a case on a flat base at a tilt, on its edge."""
    base = case.base
    height = over_heel_derivation().function("over_heel")(
        out=base.half_width, above=base.centre_height, tilt=abs(tilt)
    )
    return energy_derivation().function("energy")(
        mass=base.mass, gravity=GRAVITY, lift=height - base.centre_height
    )


def _energy(shown: _Shown, chart: Chart, alone: bool) -> tuple[Shape, ...]:
    case = shown.case
    values = shown.curve
    if alone and isinstance(case, CaseOnRocker):
        heel = min(case.body.heel_angle, _FURTHEST)
        lines = (
            *chart.curve([value for value in values if value[0] <= -heel], "hidden"),
            *chart.curve([value for value in values if abs(value[0]) <= heel], shown.role),
            *chart.curve([value for value in values if value[0] >= heel], "hidden"),
        )
    else:
        lines = chart.curve(values, shown.role)
    if shown.motion is None or not isinstance(case, CaseOnRocker):
        there = (
            case.stand(shown.tilt).energy
            if isinstance(case, CaseOnRocker)
            else _on_the_edge(case, shown.tilt)
        )
        return (*lines, Circle(chart.at(shown.tilt, there), 0.0, "accent", "accent", dot=6.5))
    rule = energy_derivation().function("energy")
    upright, mass_of = case.body.height_at(0.0), case.body.mass
    places = [
        chart.at(tilt, rule(mass=mass_of, gravity=GRAVITY, lift=height - upright))
        for tilt, height in zip(shown.motion.tilts, shown.motion.heights, strict=True)
    ]
    if shown.again:
        places[-1] = places[0]
    return (*lines, MovingLine(tuple((place,) for place in places), shown.motion.seconds, "accent", dot=6.5))


def _key(chart: Chart, alone: bool) -> tuple[Shape, ...]:
    names = (
        (("edge", "on its curve"), ("hidden", "on its heel"))
        if alone
        else (("edge", "ellipse"), ("thin", "circle"), ("hidden", "flat"))
    )
    return tuple(
        shape
        for number, (role, words) in enumerate(names)
        for shape in key_of(chart, 130.0 * (len(names) - number), 16.0, role, words)
    )


def _goes_over(rule: Rule, body: RockingBody) -> str:
    metre = board_measure.metre_in(rule.unit)
    margin = replace(body, centre_offset=0.0)
    if margin.is_stable:
        return "With the load so far aside it rolls past its heel. Bring it nearer to the middle, or make it lighter."
    return (
        f"The weight lies {rule.mark(body.centre_height * metre)} over the floor, and the bottom is as round as "
        f"{rule.mark(body.ellipse.radius_at_bottom * metre, unit=True)}: lower the weight, or take a flatter rocker."
    )


def _headline(rule: Rule, body: RockingBody) -> str:
    if not body.is_stable:
        return "It goes over by itself."
    metre = board_measure.metre_in(rule.unit)
    stands = (
        f"It comes back: R less h is {rule.mark(body.stiffness_margin * metre, unit=True)}"
        if abs(body.rest_tilt) < _UPRIGHT
        else f"It comes back, and rests {abs(body.rest_tilt):.1f}° askew"
    )
    return f"{stands}. A small swing takes {body.period():.2f} s."


def _told(rule: Rule, body: RockingBody, tilt: float) -> str:
    metre = board_measure.metre_in(rule.unit)
    radius, height = body.ellipse.radius_at_bottom * metre, body.centre_height * metre
    stand = stand_at(body, tilt)
    arm = rule.mark(abs(stand.lever_arm) * metre, unit=True)
    now = (
        f"R is {rule.mark(radius)} and h {rule.mark(height, unit=True)}. At {number_shown(tilt, 1)}° "
        f"{'it touches with its curve' if stand.rolls else 'it stands on its heel'}"
    )
    brings = stand.lever_arm * tilt
    way = "in balance" if not brings else "which brings it back" if brings > 0 else "which takes it over"
    now = f"{now}, with a lever arm of {arm}, {way}." if brings else f"{now}."
    if not body.is_stable:
        return now
    amplitude = abs(tilt - body.rest_tilt)
    great = (
        f" Let go here it takes {body.period(tilt - body.rest_tilt):.2f} s."
        if 0 < amplitude < body.rolling_limit
        else ""
    )
    return (
        f"{now}{great} It rolls back from {body.rolling_limit:.1f}°, and goes over at {body.tip_angle:.1f}°, "
        f"which takes {body.barrier:.1f} J."
    )


def _start(piece: Piece) -> Settings:
    if piece.rocker is None:
        piece = replace(piece, rocker=lent_rocker(piece))
    metre = board_measure.metre_in(piece.rule.unit)
    whole, ellipse = piece.rocking_body(load=True), piece.ellipse()
    return {
        "piece": piece,
        "half_length": ellipse.half_length,
        "half_height": ellipse.half_height,
        "weight_height": whole.centre_height * metre,
        "load": sum(load.mass for load in piece.load),
        "aside": 0.0,
        "tilt": 12.0,
        "beside": "one",
        "motion": "held",
    }


live_rocker = View(
    name="live_rocker",
    draw=_draw,
    controls=(
        LengthControl("half_length", "ellipse, half-length", ("6", "40"), ("150", "1000")),
        LengthControl("half_height", "ellipse, half-height", ("1", "24"), ("25", "600")),
        LengthControl("weight_height", "weight over the floor", ("4", "48"), ("100", "1200")),
        StepControl("load", "load", "kg", Fraction(0), Fraction(40), Fraction(1, 2)),
        LengthControl("aside", "load to the right", ("0", "8"), ("0", "200")),
        StepControl("tilt", "tilt", "degrees", Fraction(-int(_TILTED)), Fraction(int(_TILTED))),
        ChoiceControl(
            "beside", "beside it", (("nothing", "one"), ("a round rocker and a flat base", "three"))
        ),
        ChoiceControl(
            "motion",
            "the case",
            (("is held", "held"), ("is let go", "free"), ("is let go, with some drag", "dragged")),
        ),
    ),
    start=_start,
)
