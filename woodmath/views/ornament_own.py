"""A student's own motif, made of the primitives: drawn step by step on a board, and painted when it is done."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Shape, Wood, rectangle
from woodmath.errors import ImpossibleShape
from woodmath.ornament_strokes import Motif, gaps
from woodmath.rule import Rule
from woodmath.views.ornament_drawn import FINELY, cross, drawn, painted
from woodmath.views.view import ChoiceControl, Settings, StepControl, View, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 440.0)
_MARGINS = (22.0, 22.0, 22.0, 22.0)
_ROOM = 0.12
_CROSS = 0.012
_CLOSED = 1e-6


def own_ornament(motif: Motif) -> View:
    """Return a view of a motif, to be looked at and stepped through.

    Parameters
    ----------
    motif : Motif
        Made of `woodmath.ornament`'s primitives.

    Returns
    -------
    View
        With its steps as a control, and the choice whether it is painted.

    Raises
    ------
    ImpossibleShape
        If nothing of the motif stays on the wood.

    >>> from woodmath.ornament import fan
    >>> from woodmath.piece import Piece
    >>> own_ornament(fan(ribs=5, radius=2.0, angle=90.0)).drawing(Piece.demo("cat-bed")).headline
    'The fan of 5 ribs is drawn.'
    """
    if not motif.points:
        raise ImpossibleShape(
            f"{motif.name} has no stroke that stays. Put a rosette, a fan or a line of your own into it."
        )
    last = len(motif.steps)

    def draw(rule: Rule, settings: Settings) -> Drawing:
        taken = min(max(round(number(settings, "step")), 0), last)
        return _drawing(rule, motif, taken, settings["finish"] == "painted")

    def start(piece: Piece) -> Settings:
        return {"step": last, "finish": "painted"}

    return View(
        name="own_ornament",
        draw=draw,
        controls=(
            StepControl("step", "step", "steps", Fraction(0), Fraction(last)),
            ChoiceControl(
                "finish", "finish", (("incised and painted", "painted"), ("incised only", "incised"))
            ),
        ),
        start=start,
    )


def _drawing(rule: Rule, motif: Motif, taken: int, paint: bool) -> Drawing:
    xs, ys = [x for x, _ in motif.points], [y for _, y in motif.points]
    room = _ROOM * max(max(xs) - min(xs), max(ys) - min(ys))
    board = rectangle(min(xs) - room, min(ys) - room, max(xs) + room, max(ys) + room)
    frame = Frame.around(board, _SIZE, _MARGINS)
    shapes: list[Shape] = [Wood(board, "board", "long", 0.0, line="edge")]
    finished = taken == len(motif.steps)
    if finished and paint:
        shapes += painted(motif.regions, frame.length(FINELY))
    for place, step in enumerate(motif.steps[:taken], 1):
        if step.kept:
            shapes += drawn(
                step.strokes, "accent" if place == taken and not finished else "pencil", frame.length(FINELY)
            )
    if not paint:
        for centre in motif.centres:
            if all(low < value < high for value, low, high in zip(centre, board[0], board[2], strict=True)):
                shapes += cross(centre, _CROSS * (board[2][0] - board[0][0]), "quiet")
    gap = gaps(motif)
    open_by = rule.mark(max(gap, rule.one_mark), unit=True)
    return Drawing(
        title=f"{motif.name}, on a board",
        frame=frame,
        shapes=tuple(shapes),
        headline=_headline(motif, taken),
        told=f"{rule.mark(max(xs) - min(xs))} wide and {rule.mark(max(ys) - min(ys), unit=True)} high; the compass "
        f"stands in {len(motif.centres)} places, and {len(motif.regions)} areas can be painted.",
        faults=(f"An area stays open by {open_by}: let each stroke begin where the one before it ends.",)
        if gap > _CLOSED * max(max(xs) - min(xs), max(ys) - min(ys))
        else (),
    )


def _headline(motif: Motif, taken: int) -> str:
    if taken == len(motif.steps):
        return f"The {motif.name} is drawn."
    return motif.steps[taken - 1].words if taken else "Bare wood."
