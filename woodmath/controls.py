"""The widgets of one control: a slider in whole marks with a box for the exact size, a menu, or a table."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from html import escape
from typing import Any

import ipywidgets
from ipywidgets import Layout

from woodmath.errors import BadLength, WoodmathError
from woodmath.numbers_as_written import number_shown, read_number
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, Control, LengthControl, StepControl, TableControl, Value

Reader = tuple[ipywidgets.Widget, Callable[[], Value]]


@dataclass(frozen=True)
class Row:
    """The widgets of one control.

    Parameters
    ----------
    widget : Widget
        All of them, as they stand in the column of controls.
    readers : tuple of (Widget, callable)
        Each widget that a reader moves or fills in, and what its value means; a text that means nothing
        raises BadLength.
    show : callable
        Lets the widgets stand where a value is.
    """

    widget: ipywidgets.Widget
    readers: tuple[Reader, ...]
    show: Callable[[Value], None]


def row_for(control: Control, rule: Rule) -> Row:
    """Make the widgets of a control.

    Parameters
    ----------
    control : LengthControl, StepControl, ChoiceControl or TableControl
        What is set.
    rule : Rule
        The rule that lengths are read and marked on.

    Returns
    -------
    Row
        Not yet standing anywhere: call its `show`.

    >>> row = row_for(LengthControl("post", "post, square", ("1", "3"), ("25", "75")), Rule.inches(16))
    >>> row.show(1.75)
    >>> [read() for _, read in row.readers]
    [1.75, 1.75]
    """
    match control:
        case LengthControl():
            return _length_row(control, rule)
        case StepControl():
            return _step_row(control)
        case ChoiceControl():
            return _choice_row(control)
        case TableControl():
            return _table_row(control)


def _slider_with_box(label: str, low: int, high: int) -> tuple[Any, Any, Any]:
    """Return a slider, the box that carries its name, and both as they stand."""
    slider = ipywidgets.IntSlider(
        min=low,
        max=high,
        readout=False,
        tooltip=label,
        layout=Layout(width="94%", margin="0 10px 6px 10px"),
    )
    box = ipywidgets.Text(
        description=label,
        continuous_update=False,
        style={"description_width": "182px"},
        layout=Layout(width="98%"),
    )
    return slider, box, ipywidgets.VBox([box, slider], layout=Layout(width="100%"))


def _length_row(control: LengthControl, rule: Rule) -> Row:
    low, high = control.bounds(rule)
    slider, box, widget = _slider_with_box(
        f"{control.label}, {rule.unit_mark}", rule.marks(low), rule.marks(high)
    )

    def read_box() -> float:
        value = rule.read(box.value)
        if not low <= value <= high:
            raise BadLength(
                f"{box.value} is out of range for {control.label}, which goes from {rule.mark(low)} to "
                f"{rule.mark(high)} here. Type a length between the two."
            )
        return value

    def show(value: Value) -> None:
        assert isinstance(value, (int, float))
        slider.value = rule.marks(value)
        near = rule.mark(value)
        box.value = near if abs(rule.read(near) - value) < 1e-9 else f"{value:.4f}".rstrip("0")

    return Row(widget, ((slider, lambda: rule.length(slider.value)), (box, read_box)), show)


def _step_row(control: StepControl) -> Row:
    label = f"{control.label}, {control.unit}" if control.unit else control.label
    slider, box, widget = _slider_with_box(label, 0, control.positions)

    def at(position: int) -> float:
        return float(control.low + position * control.step)

    def shown(value: float | Fraction) -> str:
        return number_shown(float(value), 4)

    def read_box() -> float:
        try:
            value = read_number(box.value.replace("°", " "))
        except WoodmathError:
            value = math.nan
        if not control.low <= value <= control.high:
            raise BadLength(
                f"“{box.value}” is out of range or no number: {control.label} goes from {shown(control.low)} to "
                f"{shown(control.high)} here. Type a number between the two, such as "
                f"{shown(at(control.positions // 2))}."
            )
        return value

    def show(value: Value) -> None:
        assert isinstance(value, (int, float))
        slider.value = round((Fraction(value) - control.low) / control.step)
        box.value = shown(value)

    return Row(widget, ((slider, lambda: at(slider.value)), (box, read_box)), show)


def _choice_row(control: ChoiceControl) -> Row:
    menu = ipywidgets.Dropdown(
        options=control.options,
        description=control.label,
        style={"description_width": "90px"},
        layout=Layout(width="98%", margin="0 0 8px 0"),
    )

    def show(value: Value) -> None:
        menu.value = value

    return Row(menu, ((menu, lambda: str(menu.value)),), show)


def _table_row(control: TableControl) -> Row:
    cells = [
        [
            ipywidgets.Text(
                continuous_update=False,
                tooltip=f"{column}, line {line + 1}",
                placeholder=column,
                layout=Layout(width="96%", min_width="40px"),
            )
            for column in control.columns
        ]
        for line in range(control.rows)
    ]
    heads = [ipywidgets.HTML(f"<b>{escape(column)}</b>") for column in control.columns]
    grid = ipywidgets.GridBox(
        [*heads, *(cell for line in cells for cell in line)],
        layout=Layout(grid_template_columns=f"repeat({len(control.columns)}, minmax(0, 1fr))", width="98%"),
    )

    def read() -> Value:
        return tuple(tuple(cell.value.strip() for cell in line) for line in cells)

    def show(value: Value) -> None:
        assert isinstance(value, tuple)
        for line, texts in zip(cells, value, strict=True):
            for cell, text in zip(line, texts, strict=True):
                cell.value = text

    widget = ipywidgets.VBox(
        [ipywidgets.HTML(f"<b>{escape(control.label)}</b>"), grid], layout=Layout(width="100%")
    )
    return Row(widget, tuple((cell, read) for line in cells for cell in line), show)
