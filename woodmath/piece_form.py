"""The widgets of a form for a piece's file: a box for every value, a menu where there are only a few words."""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from typing import Any

import ipywidgets
from ipywidgets import Layout

from woodmath.cell_runs import with_parts
from woodmath.piece_fields import Draft, Field, groups_of, meant, texts_of
from woodmath.piece_places import Path
from woodmath.piece_values import Choice

Changed = Callable[[Path, str | float | list[str] | None], None]

_IN_TEXT = "as the text says"
"""What a menu shows when the text holds none of its words."""


class PieceForm:
    r"""The boxes of a piece, and what to do when one is filled in.

    Parameters
    ----------
    draft : Draft
        What is to be shown first.
    changed : callable
        Is told the path of what was filled in, and what it means to the file.

    >>> form = PieceForm(Draft.of('[post]\nsquare = "1 3/4"'), lambda path, value: print(path, value))
    >>> form.boxes[("post", "square")].value
    '1 3/4'
    >>> form.boxes[("post", "square")].value = "2"
    ('post', 'square') 2
    """

    def __init__(self, draft: Draft, changed: Changed) -> None:
        self._changed = changed
        self._showing = False
        self._groups: tuple[tuple[str, tuple[Field, ...]], ...] = ()
        self.boxes: dict[Path, Any] = {}
        self.widget = ipywidgets.VBox(layout=Layout(width="100%", height="560px", overflow="auto"))
        self.show(draft)

    def show(self, draft: Draft) -> None:
        """Let the boxes say what a text says; a text that cannot be parsed leaves them as they are.

        Parameters
        ----------
        draft : Draft
            The text.
        """
        if draft.given is None and self._groups:
            return
        groups = tuple(groups_of(draft))
        if groups != self._groups:
            self._build(groups)
        fields = tuple(field for _, each in groups for field in each)
        self._showing = True
        try:
            for field, text in zip(fields, texts_of(draft, fields), strict=True):
                box = self.boxes[field.path]
                if isinstance(field.kind, Choice):
                    box.value = text if text in field.kind.possible else ""
                elif box.value != text:
                    box.value = text
        finally:
            self._showing = False

    def _build(self, groups: tuple[tuple[str, tuple[Field, ...]], ...]) -> None:
        """Make the boxes anew: there are others when the rows of a list or the unit have changed."""
        before = self.widget.children
        self._groups, self.boxes = groups, {}
        rows: list[Any] = []
        for title, fields in groups:
            rows.append(ipywidgets.HTML(f"<b>{escape(title)}</b>", layout=Layout(margin="10px 0 2px 0")))
            for field in fields:
                box = _box(field)
                box.observe(self._filler(field), names="value")
                self.boxes[field.path] = box
                rows.append(box)
        self.widget.children = rows
        for old in before:
            for part in list(with_parts(old)):
                part.close()

    def _filler(self, field: Field) -> Callable[[Any], None]:
        def filled_in(change: Any) -> None:
            if not self._showing and not (isinstance(field.kind, Choice) and change["new"] == ""):
                self._changed(field.path, meant(field.kind, change["new"]))

        return filled_in


def _box(field: Field) -> Any:
    shared = {
        "description": field.label,
        "style": {"description_width": "62%"},
        "layout": Layout(width="98%", min_height="30px", height="auto"),
    }
    if isinstance(field.kind, Choice):
        options = [(_IN_TEXT, ""), *((word, word) for word in field.kind.possible)]
        return ipywidgets.Dropdown(options=options, **shared)
    return ipywidgets.Text(continuous_update=False, **shared)
