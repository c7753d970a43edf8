"""How moist wood becomes in the air of a room: the curve over the humidity, and the two ends of a year on it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.air_and_moisture import (
    PLACES,
    USUAL_CELSIUS,
    Air,
    air_limits_left,
    equilibrium_moisture,
    season,
)
from woodmath.drawing import Circle, Drawing, Frame, Label, Line, Shape
from woodmath.rule import Rule
from woodmath.views.chart import Chart
from woodmath.views.view import ChoiceControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MOST = 26.0
_STEPS = 40
_OWN = "your own"


def _draw(rule: Rule, settings: Settings) -> Drawing:
    frame = Frame(*_SIZE, 0.0, 0.0, 1.0)
    chart = Chart(frame, 74.0, 56.0, 600.0, 372.0, (0.0, 100.0), (0.0, _MOST))
    dry, damp = _ends(settings)
    curves = [
        (air.celsius, [(h, equilibrium_moisture(air.celsius, h / 100)) for h in _humidities()])
        for air in ((dry, damp) if dry.celsius != damp.celsius else (dry,))
    ]
    low, high = dry.moisture, damp.moisture
    return Drawing(
        title="Moisture of wood over the humidity of the air, with the driest and the dampest time of a year",
        frame=frame,
        shapes=(
            *chart.scales("relative humidity of the air, percent", "moisture of the wood, percent"),
            *(
                line
                for (_, values), role in zip(curves, ("accent", "edge"), strict=False)
                for line in chart.curve(values, role)
            ),
            *_end(chart, dry, "driest"),
            *_end(chart, damp, "dampest"),
        ),
        headline=f"Wood comes to {low:.1f} percent at the driest and {high:.1f} percent at the dampest.",
        told=" ".join(
            (
                f"That is in air of {100 * dry.humidity:.0f} percent at {dry.celsius:g} °C and of "
                f"{100 * damp.humidity:.0f} percent at {damp.celsius:g} °C, if it lies there long enough. The "
                "temperature moves the curve little; the humidity does nearly everything. The two ends are common "
                "practice for such a place, no measurement of yours: hang a hygrometer and set them.",
                *air_limits_left(max(dry.celsius, damp.celsius)),
            )
        ),
    )


def _humidities() -> list[float]:
    return [98.0 * step / _STEPS for step in range(_STEPS + 1)]


def _ends(settings: Settings) -> tuple[Air, Air]:
    """Return the driest and the dampest air, whichever way round the sliders stand."""
    place = str(settings["place"])
    if place != _OWN:
        ends = season(place)
        return ends.dry, ends.damp
    celsius = number(settings, "celsius")
    first, second = (Air(celsius, number(settings, name) / 100) for name in ("dry", "damp"))
    return (first, second) if first.humidity <= second.humidity else (second, first)


def _end(chart: Chart, air: Air, name: str) -> tuple[Shape, ...]:
    x, y = 100 * air.humidity, air.moisture
    at = chart.at(x, y)
    dry = name == "driest"
    return (
        Line((chart.at(x, 0.0), at, chart.at(0.0, y)), "hidden"),
        Circle(at, 0.0, "edge", "accent" if dry else "ink", dot=6.0),
        Label(
            f"{name}: {y:.1f}",
            chart.frame.at(110.0, 70.0 if not dry else 98.0),
            role="accent" if dry else "ink",
            bold=True,
            size=16.0,
        ),
    )


def _start(piece: Piece) -> Settings:
    return {"place": PLACES[0].name, "celsius": USUAL_CELSIUS, "dry": 35, "damp": 65}


wood_in_the_air = View(
    name="wood_in_the_air",
    draw=_draw,
    controls=(
        ChoiceControl("place", "place", (*((each.name, each.name) for each in PLACES), (_OWN, _OWN))),
        StepControl("celsius", "your own air", "°C", Fraction(0), Fraction(60)),
        StepControl("dry", "driest, humidity", "percent", Fraction(5), Fraction(95)),
        StepControl("damp", "dampest, humidity", "percent", Fraction(5), Fraction(95)),
    ),
    start=_start,
)
