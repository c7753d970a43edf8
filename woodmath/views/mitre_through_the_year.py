"""Two boards mitred at a corner, and how their joint opens when they have become narrower or wider."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Label, Line, Points, Shape, Wood
from woodmath.finding import in_decimals
from woodmath.rule import Rule
from woodmath.season_derivations import mitre_derivation, mitre_gap_derivation
from woodmath.views.moving_timber import (
    growth,
    moisture_control,
    through_the_year,
    timber_control,
    timber_of,
    usual,
    year_of,
)
from woodmath.views.view import ChoiceControl, LengthControl, Settings, View, number
from woodmath.wood_movement import limits_left

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 470.0)
_WIDE = 170.0
"""Picture units that a board takes as it was sawn."""
_LONG = 290.0
_CORNER = (120.0, 66.0)
_WIDEST = 0.45
"""Of the width that may be drawn as lost or gained: what moves more is drawn fewer times over."""


def _draw(rule: Rule, settings: Settings) -> Drawing:
    frame = Frame(*_SIZE, 0.0, 0.0, 1.0)
    width = number(settings, "width")
    lost = -growth(str(settings["timber"]), str(settings["cut"]), settings, "from_moisture", "to_moisture")
    times = min(float(str(settings["times"])), _WIDEST / max(abs(lost), 1e-9))
    seen = times * lost
    opening = mitre_derivation().function("opening")(shrinkage=lost)
    gap = mitre_gap_derivation().function("gap")(width=width, shrinkage=lost)
    headline, told = _told(rule, settings, opening, abs(gap))
    return Drawing(
        title="Two boards mitred at a corner, seen on their faces, after their moisture has changed",
        frame=frame,
        shapes=(
            *_boards(frame, seen, settings["motion"] == "moving"),
            *_sizes(rule, frame, width, seen, opening, times),
        ),
        headline=headline,
        told=told,
    )


def _outlines(frame: Frame, lost: float) -> tuple[Points, Points]:
    """Return the level and the upright board: lost is the part of its width that each has lost.

    Whatever they lose, the two lie at a right angle and touch: at the outer corner when they have shrunk, at the
    inner one when they have swollen.
    """
    x, y = frame.at(*_CORNER)
    across = _WIDE * (1 - lost)
    apart = max(0.0, -lost) * _WIDE
    level = ((x, y), (x + _LONG, y), (x + _LONG, y - across), (x + _WIDE, y - across))
    upright = ((x, y), (x, y - _LONG), (x + across, y - _LONG), (x + across, y - _WIDE))
    # Swollen boards meet at the inner corner first, and stand off from one another outside.
    return (
        tuple((a + apart, b) for a, b in level),
        tuple((a, b - apart) for a, b in upright),
    )


def _boards(frame: Frame, lost: float, moving: bool) -> tuple[Shape, ...]:
    before, after = _outlines(frame, 0.0), _outlines(frame, lost)
    if moving:
        return (
            through_the_year(before[0], after[0], "outline", True, "end"),
            through_the_year(before[1], after[1], "outline", True, "board"),
        )
    level, upright = after
    gap = (level[0], level[-1], upright[-1], upright[0])
    return (
        *((Line(gap, "", True, "fault"),) if lost else ()),
        Wood(after[0], "end", "long", 0.0),
        Wood(after[1], "board", "long", 90.0),
        *(Line(outline, "hidden", True) for outline in before if lost),
    )


def _sizes(
    rule: Rule, frame: Frame, width: float, lost: float, opening: float, times: float
) -> tuple[Shape, ...]:
    x, y = frame.at(*_CORNER)
    where = "closed" if not lost else "open inside" if lost > 0 else "open outside"
    point = (x + 0.8 * _WIDE, y - 0.8 * _WIDE) if lost >= 0 else (x + 0.15 * _WIDE, y - 0.15 * _WIDE)
    drawn = "as it is" if times == 1 else f"{times:.2g} times over"
    apart = max(0.0, -lost) * _WIDE
    return (
        Dimension((x + _LONG, y), (x + _LONG, y - _WIDE), rule.mark(width), 34.0 + apart),
        Label(where, frame.at(400.0, 356.0), point, role="accent", bold=True, size=17.0),
        Label(f"gap of {abs(opening):.2f}°", frame.at(400.0, 384.0), role="accent", size=15.0),
        Label(f"the movement drawn {drawn}", frame.at(400.0, 412.0), role="quiet", size=13.0),
        Label("grain along each board: lengths stay", frame.at(20.0, 28.0), role="quiet", size=13.0),
    )


def _told(rule: Rule, settings: Settings, opening: float, gap: float) -> tuple[str, str]:
    first, afterwards = number(settings, "from_moisture"), number(settings, "to_moisture")
    if opening == 0:
        return f"At {first:g} percent the mitre is closed.", ""
    side = "inside" if opening > 0 else "outside"
    why = (
        "The boards have become narrower and no shorter: each mitre leans closer to its board than 45°."
        if opening > 0
        else "The boards have become wider and no longer: each mitre stands steeper than 45°."
    )
    return (
        f"From {first:g} to {afterwards:g} percent the mitre opens {side}, by {in_decimals(rule, gap)} "
        f"{rule.unit_mark} at its end.",
        " ".join((why, *limits_left(first, afterwards))),
    )


def _start(piece: Piece) -> Settings:
    low, high = year_of(piece)
    return {
        "timber": timber_of(piece),
        "width": usual(piece.rule, "3", "75"),
        "cut": "flat",
        "from_moisture": high,
        "to_moisture": low,
        "times": "8",
        "motion": "still",
    }


mitre_through_the_year = View(
    name="mitre_through_the_year",
    draw=_draw,
    controls=(
        timber_control(),
        LengthControl("width", "boards, wide", ("1", "6"), ("25", "150")),
        ChoiceControl("cut", "boards sawn", (("flat", "flat"), ("on the quarter", "quarter"))),
        moisture_control("from_moisture", "moisture when sawn"),
        moisture_control("to_moisture", "moisture after"),
        ChoiceControl("times", "drawn", (("as it is", "1"), ("eight times", "8"))),
        ChoiceControl(
            "motion", "the year", (("stands at its end", "still"), ("goes round by itself", "moving"))
        ),
    ),
    start=_start,
)
