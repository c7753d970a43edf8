"""An end panel between its posts through a year: its height, its splay, and the room of its tongue in the groove."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import Dimension, Drawing, Frame, Hatch, Label, Line, Points, Shape, Wood, rectangle
from woodmath.finding import in_decimals, more
from woodmath.rule import Rule
from woodmath.season_derivations import edge_derivation, splay_change_derivation
from woodmath.splay import SplayedPanel
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

_SIZE = (680.0, 500.0)
_PANEL = (78.0, 74.0, 430.0, 430.0)
"""Room of the panel with its posts: left, top, right, bottom."""
_DETAIL = (510.0, 250.0)
"""Where the groove ends, beside the tongue's upper end."""
_POST, _FOOT = 30.0, 26.0
_TIMES = 8.0
_FAR, _GROOVE, _WALL = 62.0, 46.0, 34.0
_MOST_DRAWN = 0.16


def _draw(rule: Rule, settings: Settings) -> Drawing:
    frame = Frame(*_SIZE, 0.0, 0.0, 1.0)
    panel = SplayedPanel(*(number(settings, name) for name in ("top", "bottom", "height")))
    timber, cut = str(settings["timber"]), str(settings["cut"])
    parts = {
        name: growth(timber, cut, settings, "moisture_now", f"moisture_{name}")
        for name in ("driest", "dampest")
    }
    # Whichever of the two sliders stands lower is the dry end of the year.
    dry, damp = sorted(parts.values())
    heights = (panel.height * (1 + dry), panel.height * (1 + damp))
    lean = splay_change_derivation().function("new_splay")
    splays = tuple(lean(splay=panel.splay, height=panel.height, new_height=each) for each in heights)
    edge = edge_derivation().function("edge_moves")
    slope = panel.slope_length
    edges = tuple(edge(change=slope * part, width=slope, held=slope / 2) for part in (dry, damp))
    clearance = number(settings, "clearance")
    strikes = more(edges[1], clearance)
    moving = settings["motion"] == "moving"
    return Drawing(
        title="An end panel between its posts through a year, and its tongue at the end of the groove",
        frame=frame,
        shapes=(
            *_panel(rule, panel, (dry, damp), frame, moving),
            *_detail(rule, clearance, (edges[0], edges[1]), strikes, frame, moving),
        ),
        headline=(
            f"The panel is {in_decimals(rule, heights[1] - heights[0])} {rule.unit_mark} higher on the dampest day "
            "than on the driest; its widths stay."
        ),
        told=_told(settings, panel, (splays[0], splays[1])),
        faults=(
            (
                f"The tongue's end moves {in_decimals(rule, edges[1])} {rule.unit_mark} until the dampest day and has "
                f"{rule.mark(clearance, unit=True)} of room: it pushes against the post. Leave more, or fit the "
                "panel when it is damp.",
            )
            if strikes
            else ()
        ),
    )


def _panel(
    rule: Rule, panel: SplayedPanel, parts: tuple[float, float], frame: Frame, moving: bool
) -> tuple[Shape, ...]:
    left, top, right, bottom = _PANEL
    widest = max(panel.top, panel.bottom)
    scale = min((right - left - 2 * _POST) / widest, (bottom - top) / panel.height / (1 + _MOST_DRAWN))
    middle, floor = frame.at((left + right) / 2, bottom)
    # Drawn larger still, a panel would leave the picture.
    times = min(_TIMES, _MOST_DRAWN / max(*map(abs, parts), 1e-9))

    def outline(part: float) -> Points:
        low, high = panel.bottom / 2 * scale, panel.top / 2 * scale
        up = panel.height * scale * (1 + times * part)
        return (
            (middle - low, floor),
            (middle + low, floor),
            (middle + high, floor + up),
            (middle - high, floor + up),
        )

    dry, now, damp = outline(parts[0]), outline(0.0), outline(parts[1])
    body: tuple[Shape, ...] = (
        (through_the_year(dry, damp, "outline", True, "end"),)
        if moving
        else (Wood(now, "end", "long", 0.0), Line(dry, "hidden", True), Line(damp, "accent", True))
    )
    return (
        *(Wood(_post(now, side), "post", "long", 90.0) for side in (-1.0, 1.0)),
        *body,
        Dimension(now[1], now[0], rule.mark(panel.bottom), 34.0),
        Dimension(now[0], (now[0][0], now[3][1]), rule.mark(panel.height), now[0][0] - left + 46.0),
        Label(
            f"whole line: dampest; broken: driest; drawn {times:.2g} times over",
            frame.at(20.0, 28.0),
            role="quiet",
            size=13.0,
        ),
    )


def _post(panel: Points, side: float) -> Points:
    """Return a post beside the panel, as it leans today, a little longer than the panel at both ends."""
    (x, y), (u, v) = (panel[1], panel[2]) if side > 0 else (panel[0], panel[3])
    slope = (u - x) / (v - y)
    low, high = y - _FOOT, v + _FOOT
    foot, head = x + slope * (low - y), u + slope * (high - v)
    return ((foot, low), (foot + side * _POST, low), (head + side * _POST, high), (head, high))


def _detail(
    rule: Rule,
    clearance: float,
    edges: tuple[float, float],
    strikes: bool,
    frame: Frame,
    moving: bool,
) -> tuple[Shape, ...]:
    scale = _FAR / max(clearance, *map(abs, edges), rule.one_mark)
    x, y = frame.at(*_DETAIL)
    left, right = x - _WALL, x + _GROOVE + _WALL
    post = rectangle(left, y - 150.0, right, y + 100.0)
    groove = rectangle(x, y - 150.0, x + _GROOVE, y)

    def tongue(moved: float) -> Points:
        return rectangle(x + 3.0, y - 150.0, x + _GROOVE - 3.0, y - clearance * scale + moved * scale)

    now, dry, damp = tongue(0.0), tongue(edges[0]), tongue(edges[1])
    body: tuple[Shape, ...] = (
        (through_the_year(dry, damp, "outline", True, "end"),)
        if moving
        else (
            Wood(now, "end", "long", 0.0, line="edge"),
            Line((dry[3], dry[2]), "hidden"),
            Line((damp[3], damp[2]), "accent"),
        )
    )
    over = rectangle(x, y, x + _GROOVE, damp[2][1])
    return (
        Wood(post, "post", "long", 90.0),
        Line(groove, "edge", True, "void"),
        *body,
        *((Hatch(over, "fault"),) if strikes and not moving else ()),
        Dimension((right, y - clearance * scale), (right, y), rule.mark(clearance), -30.0)
        if clearance * scale > 20.0
        else Label(
            f"clearance {rule.mark(clearance)}",
            frame.at(630.0, 276.0),
            role="quiet",
            size=13.0,
            side="middle",
        ),
        Label(
            "the post, its groove's end above", frame.at(556.0, 126.0), role="quiet", size=13.0, side="middle"
        ),
        Label("the tongue's upper end", frame.at(556.0, 424.0), role="quiet", size=13.0, side="middle"),
    )


def _told(settings: Settings, panel: SplayedPanel, splays: tuple[float, float]) -> str:
    dry, damp = splays
    leans = (
        f"So the splay goes from {dry:.2f}° at the driest to {damp:.2f}° at the dampest: the bevel that closed the "
        "shoulder on the day of fitting no longer quite fits."
        if abs(panel.splay) > 0.005
        else "Upright it was and upright it stays: without a splay there is none to change."
    )
    ends = [number(settings, f"moisture_{name}") for name in ("driest", "dampest")]
    now = number(settings, "moisture_now")
    outside = (
        "The wood as it lies there today is beyond both ends of the year: let it come to the room first."
        if not min(ends) <= now <= max(ends)
        else ""
    )
    return " ".join(filter(None, (leans, outside, *limits_left(min(*ends, now), max(*ends, now)))))


def _start(piece: Piece) -> Settings:
    low, high = year_of(piece)
    end = piece.end
    tongue = piece.joint.tongue
    return {
        "timber": timber_of(piece),
        "cut": piece.timber.cut if piece.timber else "flat",
        "top": end.top if end else usual(piece.rule, "12", "300"),
        "bottom": end.bottom if end else usual(piece.rule, "12", "300"),
        "height": end.height if end else usual(piece.rule, "8", "200"),
        "clearance": tongue.clearance if tongue else piece.rule.one_mark,
        "moisture_now": piece.timber.moisture_now if piece.timber else high,
        "moisture_driest": low,
        "moisture_dampest": high,
        "motion": "still",
    }


panel_through_the_year = View(
    name="panel_through_the_year",
    draw=_draw,
    controls=(
        timber_control(),
        ChoiceControl("cut", "boards sawn", (("flat", "flat"), ("on the quarter", "quarter"))),
        LengthControl("top", "end, top width", ("8", "30"), ("200", "760")),
        LengthControl("bottom", "end, lower width", ("8", "30"), ("200", "760")),
        LengthControl("height", "end, height", ("4", "24"), ("100", "600")),
        LengthControl("clearance", "tongue's clearance", ("0", "1/2"), ("0", "12")),
        moisture_control("moisture_now", "moisture today"),
        moisture_control("moisture_driest", "moisture, driest"),
        moisture_control("moisture_dampest", "moisture, dampest"),
        ChoiceControl("motion", "the year", (("both ends", "still"), ("goes round by itself", "moving"))),
    ),
    start=_start,
)
