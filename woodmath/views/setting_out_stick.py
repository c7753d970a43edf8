"""The story stick at true size: a lath with every line of the post, each with its name and its running mark."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.drawing import Drawing, Frame, Label, Line, Shape, Wood, rectangle, spread
from woodmath.rule import Rule
from woodmath.setting_out import StoryStick
from woodmath.views.setting_out_post import FOOT, PANEL, TOP, PostAsSet, post_settings
from woodmath.views.view import Settings, View

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SIZE = (640.0, 560.0)
_MARGINS = (40.0, 400.0, 40.0, 60.0)
_ROW = 19.0
_WORD = 14.0


def story_stick_drawing(rule: Rule, stick: StoryStick, width: float, frame: Frame | None = None) -> Drawing:
    """Draw a story stick upright, its lowest mark below; printed at true size it is as long as the post.

    Parameters
    ----------
    rule : Rule
        Writes the running marks.
    stick : StoryStick
        With its marks, in the rule's unit.
    width : float
        Of the lath, > 0, in the same unit.
    frame : Frame, optional
        Where it is to be drawn; None for one that fits the screen.

    Returns
    -------
    Drawing
        One length unit of it is one length unit of wood.

    >>> from woodmath.setting_out import PostLine
    >>> stick = StoryStick((PostLine("datum", 0.0), PostLine("top of the post", 13.0)))
    >>> story_stick_drawing(Rule.inches(16), stick, 1.0).headline
    'The story stick holds 2 marks on 13 in.'
    """
    frame = frame or Frame.around(((0.0, stick.lowest), (width, stick.highest)), _SIZE, _MARGINS)
    shapes: list[Shape] = [
        Wood(rectangle(0.0, stick.lowest, width, stick.highest), "board", "long", 90.0, line="edge")
    ]
    readings = stick.readings(rule)
    levels = [-frame.place((0.0, mark.along))[1] for mark in readings]
    edge = frame.place((width, 0.0))[0]
    for mark, level, row in zip(
        readings, levels, spread(levels, _ROW, 12.0 - frame.height, -12.0), strict=True
    ):
        datum = mark.along == 0
        role = "accent" if datum else "edge"
        shapes.append(Line(((0.0, mark.along), (width, mark.along)), role))
        shapes.append(
            Line(
                (frame.at(edge + 4.0, -level), frame.at(edge + 26.0, -row), frame.at(edge + 34.0, -row)),
                "quiet",
            )
        )
        ink = "accent" if datum else "ink"
        shapes.append(
            Label(mark.reading, frame.at(edge + 40.0, -row), role=ink, bold=True, size=_WORD),
        )
        shapes.append(Label(mark.name, frame.at(edge + 150.0, -row), role=ink, size=_WORD))
    return Drawing(
        title="A story stick with every line of the post, the foot below",
        frame=frame,
        shapes=tuple(shapes),
        headline=f"The story stick holds {len(readings)} marks on {rule.mark(stick.length, unit=True)}.",
        told="Every mark is counted from the datum. Lay the stick on each post with its datum on the shoulder line, "
        "and no rule is needed again.",
    )


def _draw(rule: Rule, settings: Settings) -> Drawing:
    post = PostAsSet.of(settings)
    drawing = story_stick_drawing(rule, StoryStick(post.lines), 0.75 * post.square)
    return Drawing(
        drawing.title, drawing.frame, drawing.shapes, drawing.headline, drawing.told, faults=post.faults
    )


def _start(piece: Piece) -> Settings:
    return post_settings(piece)


story_stick = View(name="story_stick", draw=_draw, controls=(FOOT, PANEL, TOP), start=_start)
