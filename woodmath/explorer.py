"""Sliders on a drawing: `look` joins a view's controls to its picture, and nothing else.

The picture is one HTML widget that holds SVG and is rewritten when a control moves: no plotting library in the
loop, no output area that grows, a height that never changes.
"""

from __future__ import annotations

import functools
import os
import secrets
from collections.abc import Callable
from html import escape
from typing import TYPE_CHECKING, Any

import ipywidgets
from ipywidgets import Layout

from woodmath.cell_runs import when_this_cell_runs_again, with_parts
from woodmath.controls import row_for
from woodmath.drawing import Drawing, Frame
from woodmath.drawing_svg import svg
from woodmath.errors import WoodmathError
from woodmath.fractions_in_print import set_fractions
from woodmath.one_at_a_time import OneAtATime
from woodmath.rule import Rule
from woodmath.views.view import Control, Settings, Value, View

if TYPE_CHECKING:
    from woodmath.piece import Piece

_OUR_FAULT = (
    "This picture could not be drawn, and that is our fault, not yours. Go back to the start with the button, "
    "and tell whoever looks after this course what you had set."
)
_NARROW, _LEAST_WIDTH, _SCROLLBAR = 400, 420, 14
"""In pixels: a place narrower than this is a phone's, and there the picture is so wide."""


def look(view: View, piece: Piece, **settings: Value) -> Explorer:
    """Show a live drawing of a piece, with a slider and a box for each of its sizes.

    Parameters
    ----------
    view : View
        What to look at.
    piece : Piece
        Where the sizes start, and the rule that they are read on.
    **settings : length, number or word
        Sizes to start with instead of the piece's own, by the names of the view's controls.

    Returns
    -------
    Explorer
        Shows itself when it is the last line of a cell.

    Raises
    ------
    WoodmathError
        If the start itself is impossible, or a setting is not one of the view's.

    >>> from woodmath.piece import Piece
    >>> from woodmath.views.bevel import struck_bevel
    >>> look(struck_bevel, Piece.demo("cat-bed")).drawing.headline != ""
    True
    """
    return Explorer(view, piece.rule, view.settings(piece, **settings))


class Explorer:
    """A live drawing: the picture with its sentence, the controls beside it, and a way back to the start.

    Made by `look`. `drawing` is the picture that is shown now, `complaint` the sentence when something typed
    could not be used.
    """

    def __init__(self, view: View, rule: Rule, start: Settings) -> None:
        self._view = view
        self._rule = rule
        self._start = dict(start)
        self._settings = dict(start)
        self._name = f"wm{secrets.token_hex(3)}"
        self._acts = OneAtATime()
        self.complaint = ""
        self.drawing: Drawing = view.draw(rule, self._settings)
        self._svg = svg(self.drawing, self._name)
        self.picture = ipywidgets.HTML(layout=Layout(flex="1 1 440px", max_width="720px", min_width="200px"))
        self.picture.add_class(self._name)
        self.rows = {control.name: row_for(control, rule) for control in view.controls}
        self._show_settings(*view.controls)
        for control in view.controls:
            for widget, read in self.rows[control.name].readers:
                widget.observe(functools.partial(self._changed, control, read), names="value")
        self.reset = ipywidgets.Button(
            description="back to the start", tooltip="Set every size back to where it began"
        )
        self.reset.on_click(lambda _: self.back_to_the_start())
        controls = ipywidgets.VBox(
            [row.widget for row in self.rows.values()] + [self.reset],
            layout=Layout(flex="1 1 240px", max_width="340px", min_width="200px"),
        )
        sheet = ipywidgets.HTML(_style_sheet(self._name, self.drawing.frame), layout=Layout(display="none"))
        self.widget: ipywidgets.Box | None = ipywidgets.Box(
            [sheet, self.picture, controls],
            layout=Layout(flex_flow="row wrap", align_items="flex-start", width="100%", grid_gap="0 16px"),
        )
        self.widget.add_class("woodmath-live")
        self._paint()
        when_this_cell_runs_again(self.close)

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        live: dict[str, Any] = self.widget._repr_mimebundle_(**kwargs) or {} if self.widget else {}
        return {**live, "text/plain": self.drawing.words, "image/svg+xml": self._svg}

    def back_to_the_start(self) -> None:
        """Set every size back to where it began, as the button does."""
        with self._acts.act():
            if self.widget:
                self._take_up(self._start)
                self._show_settings(*self._view.controls)

    def close(self) -> None:
        """Take picture and controls away, in the page and in the kernel; what was drawn last can still be read."""
        with self._acts.act():
            if self.widget:
                for part in list(with_parts(self.widget)):
                    part.close()
            self.widget = None
            self.rows = {}

    def _changed(self, control: Control, read: Callable[[], Value], _: object) -> None:
        """Take up what a control says, unless it is we who are setting it, or the drawing is gone."""
        # Read before waiting: the act that is under way may set this very widget.
        said: Value | Exception
        try:
            said = read()
        except Exception as trouble:
            said = trouble
        with self._acts.act() as readers_own:
            if not (readers_own and self.widget):
                return
            corrected = bool(self.complaint)
            try:
                if isinstance(said, Exception):
                    raise said
                self._take_up({**self._settings, control.name: said})
            except WoodmathError as trouble:
                self._complain(str(trouble))
            except Exception:
                if os.environ.get("WOODMATH_STRICT"):
                    raise
                self._complain(_OUR_FAULT)
            else:
                self._show_settings(*(self._view.controls if corrected else (control,)))

    def _take_up(self, settings: Settings) -> None:
        """Draw with new settings; they stay even if that fails, because the controls show them."""
        self._settings = dict(settings)
        drawing = self._view.draw(self._rule, self._settings)
        self._svg, self.drawing = svg(drawing, self._name), drawing
        self.complaint = ""
        self._paint()

    def _complain(self, complaint: str) -> None:
        self.complaint = complaint
        self._paint()

    def _show_settings(self, *controls: Control) -> None:
        """Let the widgets of controls stand where the settings are."""
        for control in controls:
            self.rows[control.name].show(self._settings[control.name])

    def _paint(self) -> None:
        """Send the picture with its words: one message, whatever has changed."""
        drawing = self.drawing
        complaint = (
            f'<span role="alert"><b>✗ Not taken:</b> {escape(self.complaint)}</span><br>'
            if self.complaint
            else ""
        )
        faults = "".join(f"<br><b>✗</b> {set_fractions(escape(fault))}" for fault in drawing.faults)
        self.picture.value = (
            f'{self._svg}<p role="status">{complaint}'
            f"<strong>{set_fractions(escape(drawing.headline))}</strong> "
            f"{set_fractions(escape(drawing.told))}{faults}</p>"
        )


def _style_sheet(name: str, frame: Frame) -> str:
    """Return what keeps a live drawing at one height, whatever it says, and its redraw apart from the page's.

    The browser need not lay out the page anew when the picture changes, because its box hangs on nothing that
    is in it: as high as the frame is for its width, and below it room for the words, which scroll when they
    need more.
    """
    return (
        f"<style>.{name}{{container-type:inline-size}}"
        f".{name}>.widget-html-content{{contain:strict;position:relative;box-sizing:content-box;"
        f"aspect-ratio:{frame.width:g}/{frame.height:g};padding-bottom:9.4em;font-size:15px}}"
        f".{name} p{{position:absolute;inset:auto 4px 0;height:9em;margin:0;overflow:auto;"
        "font:15px/1.5 var(--jp-content-font-family,sans-serif);"
        "color:var(--jp-content-font-color1,inherit)}"
        f".{name} p b{{color:var(--jp-error-color1,#b5411e)}}"
        # On a phone the picture keeps a size at which its words can be read, and is pushed from side to side; the
        # box itself scrolls, since what is in it is new at every move, and the words stay where they are.
        f"@container (max-width:{_NARROW}px){{.{name}>.widget-html-content{{aspect-ratio:auto;overflow:auto hidden;"
        f"padding-bottom:0;height:calc({_LEAST_WIDTH * frame.height / frame.width + _SCROLLBAR:.0f}px + 14em)}}"
        f".{name} svg{{width:{_LEAST_WIDTH}px;display:block}}"
        f".{name} p{{position:sticky;inset:auto;left:4px;width:calc(100cqw - 8px);height:13.5em}}}}</style>"
    )
