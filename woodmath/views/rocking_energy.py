"""The curve of energy over the tilt, with a ball on it: what a case must be given to lean so far."""

from __future__ import annotations

import math

from woodmath.drawing import Circle, Frame, Label, Line, MovingLine, Shape
from woodmath.rocking import GRAVITY, Motion, RockingBody
from woodmath.rocking_curves import energy_curve, over_heel_curve
from woodmath.rocking_stand import energy_at
from woodmath.views.chart import Chart, key_of
from woodmath.views.rocking_case import CaseOnFlatBase, CaseOnRocker
from woodmath.views.rocking_scene import BALL, Shown

_PLACE = (76.0, 416.0, 644.0, 596.0)
"""Left, top, right and bottom of the chart, in picture units."""
_FURTHEST = 60.0
"""Degrees to both sides that the curve goes."""
_PLACES = 40
_SMALLEST = 0.02
"""Of its height: a chart shows at least what lifts the weight so far."""
_NEAREST_HILL = 8.0
"""Degrees: a hill nearer to upright has no room for its mark."""
_HALF_THE_WORDS = 24.0
"""Picture units: so near to the right-hand end of the chart may be the middle of the words at the hill."""
_ABOVE = 1.16
"""Times the highest energy: so high goes the scale."""

Values = list[tuple[float, float]]


def energy_chart(shown: list[Shown], frame: Frame) -> tuple[Shape, ...]:
    """Return the chart of energy: a curve for each case, and the balls that lie or roll on them.

    Parameters
    ----------
    shown : list of Shown
        The cases; the first is the one that the picture is about.
    frame : Frame
        Of the picture.

    Returns
    -------
    tuple of Shape
        For a drawing.
    """
    curves = [_curve(each) for each in shown]
    main = shown[0].case
    body = main.body
    least = energy_curve()(body.mass, GRAVITY, _SMALLEST * body.centre_height)
    values = [energy for curve in curves for _, energy in curve]
    high = _ABOVE * max(least, *values)
    low = min(0.0, max(-high, _ABOVE * min(values)))
    chart = Chart(frame, *_PLACE, (-_FURTHEST, _FURTHEST), (low, high))
    alone = len(shown) == 1
    return (
        *chart.scales("tilt, degrees", "energy, J", steps=(13, 4), least=(10.0, 0.0)),
        *(_barrier(body, chart) if alone else ()),
        *(
            line
            for each, curve in zip(shown, curves, strict=True)
            for line in _lines(each, curve, chart, alone)
        ),
        *(_ball(each, chart) for each in shown),
        *_key(chart, alone),
    )


def _curve(shown: Shown) -> Values:
    """Return the energy over the tilt, from far on the left to far on the right."""
    tilts = [_FURTHEST * (2 * place / _PLACES - 1) for place in range(_PLACES + 1)]
    if isinstance(shown.case, CaseOnRocker):
        heel = min(shown.case.body.heel_angle, _FURTHEST)
        tilts = sorted({*tilts, -heel, heel})
    return [(tilt, _energy(shown, tilt)) for tilt in tilts]


def _energy(shown: Shown, tilt: float) -> float:
    if isinstance(shown.case, CaseOnRocker):
        return energy_at(shown.case.body, tilt)
    return _on_the_edge(shown.case, tilt)


def _on_the_edge(case: CaseOnFlatBase, tilt: float) -> float:
    """Return the energy of a case on a flat base at a tilt, on its edge."""
    base = case.base
    height = over_heel_curve()(math.radians(abs(tilt)), base.half_width, base.centre_height)
    return energy_curve()(base.mass, GRAVITY, height - base.centre_height)


def _lines(shown: Shown, curve: Values, chart: Chart, alone: bool) -> tuple[Line, ...]:
    if not alone or not isinstance(shown.case, CaseOnRocker):
        return chart.curve(curve, shown.role)
    heel = min(shown.case.body.heel_angle, _FURTHEST)
    return (
        *chart.curve([value for value in curve if value[0] <= -heel], "hidden"),
        *chart.curve([value for value in curve if abs(value[0]) <= heel], shown.role),
        *chart.curve([value for value in curve if value[0] >= heel], "hidden"),
    )


def _barrier(body: RockingBody, chart: Chart) -> tuple[Shape, ...]:
    """Return the mark of the hill over which it goes, on its easier side, from its rest to the top."""
    if not body.is_stable:
        return ()
    left, right = body.tip_angles
    easier = right if right == body.tip_angle else left
    if not _NEAREST_HILL < abs(easier) < _FURTHEST:
        return ()
    top, rest = energy_at(body, easier), energy_at(body, body.rest_tilt)
    x, y = chart.frame.place(chart.at(easier, top))
    return (
        Line((chart.at(easier, top), chart.at(easier, rest)), "centre"),
        Label(
            f"barrier {body.barrier:.1f} J",
            chart.frame.at(min(x, chart.right - _HALF_THE_WORDS), y - 11.0),
            side="middle",
            role="quiet",
            size=12.5,
        ),
    )


def _ball(shown: Shown, chart: Chart) -> Shape:
    case, motion = shown.case, shown.motion
    if motion is None or not isinstance(case, CaseOnRocker):
        return Circle(chart.at(shown.tilt, _energy(shown, shown.tilt)), 0.0, "", "accent", dot=BALL)
    return _rolling(shown, motion, case.body, chart)


def _rolling(shown: Shown, motion: Motion, body: RockingBody, chart: Chart) -> MovingLine:
    energy, upright, weighs = energy_curve(), body.height_at(0.0), body.mass
    places = [
        chart.at(tilt, energy(weighs, GRAVITY, height - upright))
        for tilt, height in zip(motion.tilts, motion.heights, strict=True)
    ]
    if shown.again:
        places[-1] = places[0]
    return MovingLine(tuple((place,) for place in places), motion.seconds, "accent", dot=BALL)


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
