"""Your own trial holes: depth against turns, the line that fits them best, and how far each hole is off it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from woodmath.boring import LeadFit, fit_lead, threads_per_inch
from woodmath.drawing import Circle, Drawing, Frame, Label, Line, Point, Shape, rectangle
from woodmath.errors import BadLength, ImpossibleShape
from woodmath.numbers_as_written import read_number
from woodmath.rule import Rule
from woodmath.views.view import Settings, TableControl, View

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 480.0)
_PLOT = (84.0, 30.0, 608.0, 300.0)
_BELOW = (84.0, 350.0, 608.0, 440.0)
_ROWS = 8


def _draw(rule: Rule, settings: Settings) -> Drawing:
    turns, depths = _read(rule, settings)
    fit = fit_lead(turns, depths)
    most_turns = max(turns)
    deepest = max(*depths, fit.line_at(most_turns), 1e-9)
    lowest = min(0.0, fit.intercept)
    frame = Frame(_SIZE[0], _SIZE[1], 0.0, 0.0, 1.0)

    def place(count: float, depth: float) -> Point:
        left, top, right, bottom = _PLOT
        x = left + (right - left) * count / (1.06 * most_turns)
        return frame.at(x, bottom - (bottom - top) * (depth - lowest) / (1.06 * (deepest - lowest)))

    shapes: tuple[Shape, ...] = (
        Line((place(0.0, lowest), place(1.06 * most_turns, lowest)), "edge"),
        Line((place(0.0, lowest), place(0.0, deepest)), "edge"),
        Line((place(0.0, 0.0), place(1.06 * most_turns, 0.0)), "centre"),
        Line((place(0.0, fit.intercept), place(most_turns, fit.line_at(most_turns))), "accent"),
        *(
            Line((place(count, depth), place(count, fit.line_at(count))), "thin")
            for count, depth in zip(turns, depths, strict=True)
        ),
        *(
            Circle(place(count, depth), 0.0, "edge", "end", dot=6.0)
            for count, depth in zip(turns, depths, strict=True)
        ),
        Label(f"depth, {rule.unit_mark}", frame.at(92.0, 22.0), bold=True, role="quiet", size=14.0),
        Label(
            rule.mark(deepest), frame.at(76.0, frame.place(place(0.0, deepest))[1]), side="left", size=14.0
        ),
        Label("0", frame.at(76.0, frame.place(place(0.0, 0.0))[1]), side="left", size=14.0),
        Label(f"{most_turns:g} turns", frame.at(600.0, 318.0), side="left", size=14.0),
        Label("how far each hole is off the line", frame.at(92.0, 340.0), bold=True, role="quiet", size=14.0),
        *_residuals(rule, turns, fit, frame),
    )
    return Drawing(
        title="Trial holes: depth against turns, the fitted line, and the residuals below",
        frame=frame,
        shapes=shapes,
        headline=f"Each turn goes {fit.lead:.4f} {rule.unit_mark} deep, give or take {fit.lead_error:.4f}.",
        told=_told(rule, fit),
    )


def _residuals(rule: Rule, turns: Sequence[float], fit: LeadFit, frame: Frame) -> tuple[Shape, ...]:
    left, top, right, bottom = _BELOW
    largest = max((abs(residual) for residual in fit.residuals), default=0.0)
    scale = max(largest, rule.one_mark / 4)
    middle, half = (top + bottom) / 2, (bottom - top) / 2 - 6.0
    shapes: list[Shape] = [
        Line((frame.at(left, middle), frame.at(right, middle)), "accent"),
        Label(f"{scale:.3f}", frame.at(76.0, top + 8.0), side="left", size=14.0),
        Label(f"−{scale:.3f}", frame.at(76.0, bottom - 8.0), side="left", size=14.0),
    ]
    for count, residual in zip(turns, fit.residuals, strict=True):
        x = left + (right - left) * count / (1.06 * max(turns))
        y = middle - half * residual / scale
        low, high = sorted((frame.at(x, middle)[1], frame.at(x, y)[1]))
        bar = rectangle(frame.at(x - 5.0, 0.0)[0], low, frame.at(x + 5.0, 0.0)[0], high)
        shapes.append(Line(bar, "edge", True, "end"))
    return tuple(shapes)


def _told(rule: Rule, fit: LeadFit) -> str:
    threads = threads_per_inch(fit.lead, unit=rule.unit) if fit.lead > 0 else 0.0
    screw = f"A single-threaded screw of {threads:.1f} threads to the inch does that. " if threads else ""
    return screw + _beginning(rule, fit)


def _beginning(rule: Rule, fit: LeadFit) -> str:
    """Say what the line's beginning means: where the lips stood when the counting began."""
    away = f"{abs(fit.intercept):.3f} {rule.unit_mark}, give or take {fit.intercept_error:.3f}"
    if abs(fit.intercept) <= 2 * fit.intercept_error:
        return "At no turns the line is at the face, within its doubt: so it should be if you counted from the lips."
    if fit.intercept < 0:
        return (
            f"At no turns the lips are still {away}, short of the face: as long as the screw's point, if you counted "
            "from its first bite."
        )
    return f"At no turns the hole is already {away}, deep: counting began with the bit in the wood."


def _read(rule: Rule, settings: Settings) -> tuple[list[float], list[float]]:
    rows = settings["holes"]
    if not isinstance(rows, tuple):
        raise BadLength("The holes are a table of turns and depths. Write one hole on each line.")
    turns, depths = [], []
    for line, (count, depth) in enumerate(rows, start=1):
        if not count and not depth:
            continue
        if not count or not depth:
            raise BadLength(
                f"Line {line} has only one of turns and depth. Fill in the other, or clear the line."
            )
        turns.append(read_number(count))
        depths.append(rule.read(depth))
    if len(turns) < 3:
        raise ImpossibleShape(
            f"{len(turns)} holes do not tell how sure the line is: fill in three or more, at different turns."
        )
    return turns, depths


def _start(piece: Piece) -> Settings:
    """Begin with holes as this piece's bit would bore them, read to the nearest mark by a hurried eye."""
    bit, rule = piece.auger_bit(), piece.rule
    rows = []
    for count, hurry in ((6, 0.5), (8, -0.4), (11, 0.4), (14, -0.5), (16, 0.6)):
        depth = max(bit.depth(count, "screw") + hurry * rule.one_mark, 0.0)
        rows.append((str(count), rule.mark(depth)))
    return {"holes": (*rows, *(("", "") for _ in range(_ROWS - len(rows))))}


trial_holes = View(
    name="trial_holes",
    draw=_draw,
    controls=(TableControl("holes", "your trial holes", ("turns", "depth"), _ROWS),),
    start=_start,
)
