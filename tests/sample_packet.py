"""A packet of every kind of sheet, made up for the tests of the paper: long cells, long cards, wide patterns."""

from __future__ import annotations

import itertools
import math

from woodmath.card import Card
from woodmath.drawing import Circle, Dimension, Drawing, Frame, Label, Line, Point, Wood, rectangle
from woodmath.finding import Finding
from woodmath.packet import Contents
from woodmath.pattern import KnownLength, Pattern

FRAME = Frame(640.0, 480.0, -1.0, -1.0, 25.0)


def cut_list() -> Card:
    """Return a card of many columns, some of them numbers."""
    rows = tuple(
        (part, count, finished, rough, "cherry, black", "along the length", "0.82", "1 3/4 lb")
        for part, count, finished, rough in (
            ("Post", "4", "14 x 1 3/4 x 1 3/4", "15 x 2 x 2"),
            ("End panel, with its tongues", "2", "13 7/8 x 8 1/8 x 7/8", "15 x 8 5/8 x 1"),
            ("Side panel, with its tongues", "2", "19 3/4 x 8 x 7/8", "21 x 8 1/2 x 1"),
            ("Rocker", "2", "19 x 4 x 1", "20 x 4 1/2 x 1 1/4"),
            ("Bottom", "1", "17 1/2 x 10 x 1/2", "18 1/2 x 10 1/2 x 5/8"),
        )
    )
    return Card(
        "Cut list",
        "For one piece, with a quarter more wood than is in it.",
        ("part", "number", "finished", "rough", "timber", "grain", "board feet", "mass"),
        rows,
        ("The rough sizes allow 1 in of length and 1/2 in of width for each part.",),
        numeric=(1, 6, 7),
    )


def gauge_card() -> Card:
    """Return a card that needs more than one sheet."""
    rows = tuple(
        (
            f"{number}",
            f"Mortise gauge, cheek {number}",
            "1/2 and 1" if number % 2 else "11/16",
            "from the face side, with the stock against the outer face of the post",
            "set-back, post joint",
        )
        for number in range(1, 41)
    )
    return Card(
        "Gauge card",
        "Every setting in the order in which it is used. Set each gauge once, and mark all parts with it.",
        ("no.", "tool", "set to", "from where", "rule"),
        rows,
        ("A gauge that is set twice is set two ways: mark the spare piece as well, and keep it.",),
    )


def order_card() -> Card:
    """Return a card of sentences."""
    rows = tuple(
        (
            f"{number}",
            "Shoot the edges and glue up the panels; let them lie for a day before they are planed to thickness.",
            "Keep both hands behind the edge of a chisel.",
        )
        for number in range(1, 21)
    )
    return Card("Order of work", "", ("no.", "what to do", "caution"), rows)


def small_pattern() -> Pattern:
    """Return a pattern that one sheet holds: a grid with a ring, in inches."""
    lines = tuple(Line(((x, 0.0), (x, 6.0)), "edge") for x in (0.0, 1.0, 3.0, 5.5))
    levels = tuple(Line(((0.0, y), (5.5, y)), "thin") for y in (0.0, 2.0, 6.0))
    drawing = Drawing(
        "A grid",
        FRAME,
        (
            *lines,
            *levels,
            Circle((4.2, 4.2), 0.7, "edge"),
            Dimension((0.0, 6.0), (5.5, 6.0), "5 1/2", 24.0),
            Label("the ring", (4.6, 5.4), (4.2, 4.9)),
        ),
        "It has lines both ways.",
    )
    lengths = (
        KnownLength("width", (0.0, 1.3), (5.5, 1.3)),
        KnownLength("first bay", (0.0, 3.1), (1.0, 3.1)),
        KnownLength("height", (0.4, 0.0), (0.4, 6.0)),
        KnownLength("lower bay", (2.2, 0.0), (2.2, 2.0)),
    )
    return Pattern("The grid", drawing, lengths)


def rocker_pattern(length: float = 24.0, depth: float = 4.0) -> Pattern:
    """Return a pattern wider than any sheet, with an arc that crosses the joints."""
    radius = 40.0
    half = length / 2
    arc = tuple(
        (x, radius - depth - math.sqrt(radius**2 - x**2))
        for x in (half * step / 60 for step in range(-60, 61))
    )
    outline = ((half, 1.0), (-half, 1.0), *arc)
    places = (-11.0, -6.0, 0.0, 6.0, 11.0)
    drawing = Drawing(
        "The rocker, seen on its face",
        FRAME,
        (
            Wood(outline, "board"),
            *(Line(((x, -2.0), (x, 0.8)), "edge") for x in places),
            Dimension((-11.0, 1.0), (11.0, 1.0), "22", 30.0),
            Label("the middle, where the rocker rests when nobody is in it", (0.5, -3.2), (0.0, -3.0)),
        ),
        "Its lower edge is an arc.",
    )
    lengths = tuple(
        KnownLength(f"from line {first + 1} to line {first + 2}", (start, -0.7), (end, -0.7))
        for first, (start, end) in enumerate(itertools.pairwise(places))
    )
    return Pattern(
        "The rocker <left> / right", drawing, (*lengths, KnownLength("over all", (-11.0, -0.7), (11.0, -0.7)))
    )


def large_pattern() -> Pattern:
    """Return a pattern that takes several sheets both ways, in inches."""
    wide, high = 16.0, 18.0
    lines: list[Line] = [Line(rectangle(0.0, 0.0, wide, high), "outline", True)]
    uprights: tuple[float, ...] = (2.0, 7.0, 14.0)
    levels: tuple[float, ...] = (1.0, 9.0, 16.5)
    lines += [Line(((x, 0.0), (x, high)), "edge") for x in uprights]
    lines += [Line(((0.0, y), (wide, y)), "edge") for y in levels]
    lines.append(Line(((0.0, 0.0), (wide, high)), "accent"))
    drawing = Drawing("A frame", FRAME, tuple(lines), "It is large.")

    def known(name: str, start: Point, end: Point) -> KnownLength:
        return KnownLength(name, start, end)

    return Pattern(
        "The frame",
        drawing,
        (
            known("left to right", (2.0, 4.3), (14.0, 4.3)),
            known("left bay", (2.0, 12.0), (7.0, 12.0)),
            known("low to high", (4.3, 1.0), (4.3, 16.5)),
            known("low bay", (10.6, 1.0), (10.6, 9.0)),
        ),
    )


def contents(name: str = "A rocking bed for the workshop cat") -> Contents:
    """Return a whole packet's contents."""
    remarks = (
        Finding("stop", "the post", "The mortise needs 1 3/8 and the post is 1 1/4.", "Take a thicker post."),
        Finding(
            "note", "the grain", "Each tenon's grain runs out by 9 degrees.", "Pare toward the shoulder."
        ),
    )
    return Contents(
        name,
        25.4,
        (small_pattern().drawing,),
        remarks,
        (cut_list(), gauge_card()),
        (small_pattern(), rocker_pattern(), large_pattern()),
        (order_card(),),
        "part,number\r\npost,4\r\n",
    )
