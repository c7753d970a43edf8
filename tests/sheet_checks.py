"""What must hold of every sheet: nothing overlaps, nothing is cut, everything can be read."""

from __future__ import annotations

import itertools

from woodmath.paper import UNITS_IN_A_MILLIMETRE, PaperSheet
from woodmath.pens import Words
from woodmath.true_size import extent

SMALLEST = 12.0
"""Of any lettering, in picture units: 9 points."""


def words_of(sheet: PaperSheet) -> list[Words]:
    """Return all words of a sheet, where they stand on it."""
    return [
        Words(
            mark.text,
            (mark.where[0] + layer.moved[0], mark.where[1] + layer.moved[1]),
            mark.size,
            mark.colour,
            mark.anchor,
            mark.bold,
        )
        for layer in sheet.layers
        for mark in layer.marks
        if isinstance(mark, Words)
    ]


def assert_it_can_be_read(sheet: PaperSheet, edge: float = 7.0) -> None:
    """No text over another, none smaller than 9 points, nothing nearer to the paper's edge than a printer can."""
    words = words_of(sheet)
    for one, other in itertools.combinations(words, 2):
        (left, top, right, bottom), (left_2, top_2, right_2, bottom_2) = one.box, other.box
        apart = left >= right_2 - 1 or left_2 >= right - 1 or top >= bottom_2 - 1 or top_2 >= bottom - 1
        assert apart, f"{one.text!r} runs into {other.text!r} on {sheet.title!r}"
    for each in words:
        assert each.size >= SMALLEST, each.text
    rim = edge * UNITS_IN_A_MILLIMETRE
    for layer in sheet.layers:
        if not layer.marks:
            continue
        left, top, right, bottom = extent(layer.marks)
        across, down = layer.moved
        reach = [left + across, top + down, right + across, bottom + down]
        if layer.window:
            reach = [
                max(reach[0], layer.window[0]),
                max(reach[1], layer.window[1]),
                min(reach[2], layer.window[2]),
                min(reach[3], layer.window[3]),
            ]
        assert reach[0] >= rim, sheet.title
        assert reach[1] >= rim, sheet.title
        assert reach[2] <= sheet.width_in_units - rim, sheet.title
        assert reach[3] <= sheet.height_in_units - rim, sheet.title
