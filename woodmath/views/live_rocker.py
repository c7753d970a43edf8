"""The live rocker: a case tilted on its curve, held or let go, and the curve of energy with a ball on it."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

from woodmath import board_measure, mass
from woodmath.drawing import Drawing, Frame, Line
from woodmath.ellipse import Ellipse
from woodmath.errors import UnknownName
from woodmath.piece import Piece
from woodmath.rocking import Motion, RockingBody
from woodmath.rule import Rule
from woodmath.views.lent_rocker import lent_rocker
from woodmath.views.rocking_case import CaseOnFlatBase, CaseOnRocker
from woodmath.views.rocking_energy import energy_chart
from woodmath.views.rocking_scene import Shown, scene
from woodmath.views.rocking_words import (
    UPRIGHT,
    headline,
    swing_of,
    told,
    what_it_does,
    why_it_goes_over,
)
from woodmath.views.view import ChoiceControl, LengthControl, Settings, StepControl, View, number

_SIZE = (680.0, 660.0)
_MARGINS = (30.0, 30.0, 300.0, 30.0)
_TALLEST = 1.9
"""Times the case's height: so far up the centre of the fitting circle is drawn."""
_TILTED = 50.0
"""Degrees to both sides that the case can be tilted."""
_APART = 1.06
"""Times the widest case: from one to the next, where they stand beside one another."""
_WORDS = 190.0
"""Picture units that the words below a case may take."""
_PICTURES_A_SECOND = 60
_WATCHED = 6.0
"""Seconds that a swing with drag is watched."""
_DRAG = 0.06
"""Of what would just stop a small swing from swinging."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    metre = board_measure.metre_in(rule.unit)
    body = _body(rule, settings)
    tilt = number(settings, "tilt")
    top = _top(body) * metre
    motion, trouble = _motion(body, tilt, str(settings["motion"]))
    main = Shown(
        CaseOnRocker(body, metre, top), 0.0, "edge", tilt, motion=motion, again=settings["motion"] == "free"
    )
    shown = [main]
    if settings["beside"] == "three":
        main = replace(main, name="ellipse", note=what_it_does(body, tilt))
        shown = _side_by_side((main, *_others(main, str(settings["motion"]))))
    frame = _frame(shown, body, metre, top)
    faults = () if body.is_stable or body.is_indifferent else (why_it_goes_over(rule, body),)
    return Drawing(
        title="A case on its rocker, tilted, with its weight, its touching point and its curve of energy",
        frame=frame,
        shapes=(
            _floor(frame),
            *(shape for each in shown for shape in scene(each, rule, frame, alone=len(shown) == 1)),
            *energy_chart(shown, frame),
        ),
        headline=headline(rule, body),
        told=" ".join(
            words for words in (told(rule, body, tilt), trouble, _shortened(rule, settings, body)) if words
        ),
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


def _shortened(rule: Rule, settings: Settings, body: RockingBody) -> str:
    """Say that the rocker has been shortened to its ellipse, where the ellipse is the shorter of the two."""
    piece = settings["piece"]
    assert isinstance(piece, Piece) and piece.rocker is not None
    length = body.rocker_length * board_measure.metre_in(rule.unit)
    if length >= piece.rocker.length * (1 - 1e-9):
        return ""
    return (
        f"The ellipse is only {rule.mark(length, unit=True)} long: the rocker of "
        f"{rule.mark(piece.rocker.length)} is drawn as long as that."
    )


def _top(body: RockingBody) -> float:
    """Return how high the case is drawn, in metres: high enough for its weight, and never a mere slab."""
    return max(1.35 * body.centre_height, body.rise + 0.5 * body.rocker_length)


def _motion(body: RockingBody, tilt: float, wanted: str) -> tuple[Motion | None, str]:
    """Return the motion that is played, if any; and a sentence if there can be none."""
    if wanted == "held" or not body.is_stable:
        return None, ""
    amplitude = tilt - body.rest_tilt
    if abs(amplitude) < UPRIGHT:
        return None, "Tilt it before you let it go."
    if abs(amplitude) >= body.rolling_limit:
        return None, (
            f"Let go from here it does not roll back: choose a tilt less than {body.rolling_limit:.1f}° from where it "
            "rests."
        )
    period = swing_of(body, amplitude)
    if period is None:
        return None, "It hangs so nearly balanced that no swing is played."
    if wanted == "dragged":
        # Half as many pictures, with straight ways between them, are nowhere off by what can be seen.
        count = math.ceil(_WATCHED * _PICTURES_A_SECOND / 2)
        return body.motion(amplitude, _WATCHED, damping_ratio=_DRAG, pictures=count), ""
    return body.motion(amplitude, period, pictures=math.ceil(period * _PICTURES_A_SECOND)), ""


def _others(main: Shown, wanted: str) -> tuple[Shown, ...]:
    """Return the same case on a round rocker as flat at the bottom, and on a flat base, beside the first."""
    case = main.case
    assert isinstance(case, CaseOnRocker)
    body, metre, top = case.body, case.metre, case.top
    radius = body.ellipse.radius_at_bottom
    rounded = replace(
        body, ellipse=Ellipse(radius, radius), rocker_length=min(body.rocker_length, 2 * radius)
    )
    base = body.on_flat_base(case.half / metre)
    motion, _ = _motion(rounded, main.tilt, wanted)
    circle = replace(
        main,
        case=CaseOnRocker(rounded, metre, top),
        role="thin",
        name="circle",
        note=what_it_does(rounded, main.tilt),
        motion=motion,
    )
    flat = replace(main, case=CaseOnFlatBase(base, body, metre, top), role="hidden", name="flat", motion=None)
    return circle, replace(flat, note=f"knocks, over at {base.tip_angle:.1f}°")


def _side_by_side(shown: tuple[Shown, ...]) -> list[Shown]:
    """Return three cases with their places: the first in the middle, the second to its left, the third to its right."""
    reaches = [each.reach(0.0) for each in shown]
    high = max(high for *_, high in reaches)
    # As wide as the widest, and never so narrow that there is no room for the words below.
    room = _SIZE[1] - _MARGINS[0] - _MARGINS[2]
    slot = max(_WORDS * high / room, _APART * max(right - left for left, right, _ in reaches))
    return [
        replace(each, middle=place * slot - (left + right) / 2, below=place * slot, slot=slot)
        for each, (left, right, _), place in zip(shown, reaches, (0, -1, 1), strict=True)
    ]


def _frame(shown: list[Shown], body: RockingBody, metre: float, top: float) -> Frame:
    """Return the frame that holds every tilt of a case by itself; of three, what is seen of them now."""
    alone = len(shown) == 1
    lefts, rights, highs = zip(*(each.reach(_TILTED if alone else 0.0) for each in shown), strict=True)
    high = max(highs)
    if alone:
        high = max(high, min(1.04 * body.ellipse.radius_at_bottom * metre, _TALLEST * top))
    return Frame.around(((min(lefts), 0.0), (max(rights), high)), _SIZE, _MARGINS)


def _floor(frame: Frame) -> Line:
    level = frame.place((0.0, 0.0))[1]
    return Line((frame.at(16.0, level), frame.at(_SIZE[0] - 16.0, level)), "outline")


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
