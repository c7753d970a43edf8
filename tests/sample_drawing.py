"""One drawing with a shape of every kind in it, for the tests of the renderers."""

from __future__ import annotations

from woodmath.drawing import (
    Angle,
    Circle,
    Dimension,
    Drawing,
    Frame,
    Hatch,
    Label,
    Line,
    MovingBody,
    MovingLine,
    Wood,
    break_line,
    rectangle,
)

FRAME = Frame(480.0, 360.0, left=-1.0, bottom=-2.0, scale=50.0)


def sample() -> Drawing:
    """Return a board let into a post, dimensioned and named, with a bit of everything."""
    far = break_line((6.0, 2.0), (6.0, 1.0))
    return Drawing(
        title="A board let into a post",
        frame=FRAME,
        shapes=(
            Wood(rectangle(0.0, 0.0, 3.0, 3.0), "post", "end"),
            Line(rectangle(1.0, 1.0, 3.0, 2.0), "edge", True, "void"),
            Wood(((1.25, 2.0), (1.25, 1.0), *reversed(far)), "end", "long", line=""),
            Line((far[0], (1.25, 2.0), (1.25, 1.0), far[-1]), "outline"),
            Line(far, "edge"),
            Hatch(rectangle(0.0, 1.0, 1.0, 2.0), "fault"),
            Line(((-0.5, 1.5), (6.5, 1.5)), "centre"),
            Line(((1.0, 0.0), (1.0, 3.0)), "hidden"),
            Line(((1.0, 1.0), (1.25, 2.0)), "accent"),
            Circle((4.0, 1.5), 0.25, "edge", "steel"),
            Circle((5.0, 1.5), dot=4.0, role="", fill="ink"),
            MovingLine((((4.0, 2.5), (5.0, 3.0)), ((4.0, 2.5), (5.0, 2.0))), 3.0),
            MovingLine((((5.0, 3.0),), ((5.0, 2.0),)), 3.0, "pencil", dot=3.0),
            MovingBody(
                (
                    Wood(rectangle(0.0, 0.0, 1.0, 0.5), "side", "long"),
                    Wood(rectangle(0.0, 0.5, 0.25, 0.75), "post", "end"),
                    Circle((0.75, 0.25), 0.1, "edge", "steel"),
                ),
                about=(0.5, 0.0),
                poses=((3.0, -1.0, 20.0), (4.0, -1.0, -20.0), (3.0, -1.0, 20.0)),
                seconds=2.5,
            ),
            Dimension((0.0, 3.0), (3.0, 3.0), "3", 30.0),
            Dimension((1.0, 0.0), (3.0, 0.0), "2", -40.0),
            Dimension((0.0, 1.0), (0.0, 2.0), "1", 24.0),
            Angle((1.0, 1.0), 0.0, 76.0, "14°", 50.0, "accent"),
            Label("a board, 1 thick", (4.2, 0.2), (4.0, 1.2), note="grain runs into the post"),
            Label("wall 1", (0.5, -1.7), (0.5, 1.5), side="middle", bold=True),
        ),
        headline="The board stops 1/4 short of the mortise's floor.",
        told="What is left behind it is a wall of 1, a third of the post. "
        "A wall as thick as the tenon is plenty, and this one is.",
        faults=("The corner is cut free. Make the mortise 1/2 shorter, or move it.",),
    )
