"""A piece edited by form or as text, drawn as it changes, saved, and printed: `edit(piece)`.

Form and text are two views of one text. What can be read is drawn with the master's remarks; what cannot be is
told in plain sentences, and the last good picture stays.
"""

from __future__ import annotations

import os
import secrets
from collections.abc import Callable
from html import escape
from pathlib import Path
from typing import Any

import ipywidgets
from ipywidgets import Layout

from woodmath.as_given import quoted
from woodmath.cell_runs import when_this_cell_runs_again, with_parts
from woodmath.drawing import Drawing
from woodmath.drawing_svg import svg
from woodmath.errors import NotWritten, WoodmathError
from woodmath.fractions_in_print import set_fractions
from woodmath.harmless_names import file_name
from woodmath.one_at_a_time import OneAtATime
from woodmath.piece import Piece
from woodmath.piece_editor_style import style_sheet
from woodmath.piece_fields import Draft
from woodmath.piece_file import demo_names, demo_text, text_of
from woodmath.piece_form import PieceForm
from woodmath.piece_places import Path as Place
from woodmath.piece_saving import save, saved_pieces
from woodmath.piece_writing import changed_text, piece_text
from woodmath.views.piece import whole_piece

_OUR_FAULT = (
    "That could not be done, and it is our fault, not yours. Your text is as it was; tell whoever looks after this "
    "course what you did last."
)
_AT_FIRST = "Nothing is saved yet."


def edit(piece: Piece | str | os.PathLike[str], folder: str | os.PathLike[str] | None = None) -> PieceEditor:
    """Edit a piece by form or as text, with its live drawing.

    Parameters
    ----------
    piece : Piece, text or path
        A piece, the name of a demo piece, or the path of a piece's file.
    folder : text or path, optional
        Where it is saved; the folder of the file, or else the folder of the page.

    Returns
    -------
    PieceEditor
        Shows itself when it is the last line of a cell.

    Raises
    ------
    WoodmathError
        If there is no such file, or the piece cannot be drawn.

    >>> edit(Piece.demo("cat-bed")).piece.name
    'A rocking bed for the workshop cat'
    """
    if isinstance(piece, Piece):
        demos = (name for name in demo_names() if Piece.demo(name) == piece)
        text = next((demo_text(name) for name in demos), None) or piece_text(piece)
        return PieceEditor(text, Path(folder or Path.cwd()), f"{file_name(piece.name)}.toml")
    if isinstance(piece, str) and piece in demo_names():
        return PieceEditor(demo_text(piece), Path(folder or Path.cwd()), f"my-{piece}.toml")
    place = Path(piece)
    return PieceEditor(text_of(place), Path(folder or place.parent), place.name)


class PieceEditor:
    """A piece on its way: its text, the form, the picture of what was last good, and what is wrong now.

    Made by `edit`. `text` is what would be saved, `piece` the last one that could be read, `faults` the sentences
    on what cannot be, and `said` what the last button led to.
    """

    def __init__(self, text: str, folder: Path, name: str) -> None:
        self._folder = folder
        self._name = f"wm{secrets.token_hex(3)}"
        self._acts = OneAtATime()
        self._before = ""
        self.said = _AT_FIRST
        self._kept = "Until it can be, the picture is the workshop cat's bed."
        self.piece = Piece.demo("cat-bed")
        self.drawing: Drawing = whole_piece.drawing(self.piece)
        self.remarks = self.piece.findings()
        self.draft = Draft.of(text, folder)
        self.faults: tuple[str, ...] = self.draft.faults
        self._make_widgets(name)
        self._our_own(self._take, text)
        when_this_cell_runs_again(self.close)

    @property
    def text(self) -> str:
        """The text as it stands now, whether it can be read or not."""
        return self.draft.text

    def _make_widgets(self, name: str) -> None:
        self.picture = ipywidgets.HTML(layout=Layout(width="100%"))
        self.picture.add_class(f"{self._name}-picture")
        self.words = ipywidgets.HTML(layout=Layout(width="100%"))
        self.words.add_class(f"{self._name}-words")
        self.form = PieceForm(self.draft, self.fill_in)
        self.area = ipywidgets.Textarea(
            value=self.text,
            description="the file",
            layout=Layout(width="98%", height="560px"),
            style={"description_width": "0"},
        )
        self.area.observe(lambda change: self.take(change["new"]), names="value")
        both = ipywidgets.Tab([self.form.widget, self.area], layout=Layout(width="98%"))
        both.titles = ("by form", "as text")
        self.name = ipywidgets.Text(
            value=name, description="save as", continuous_update=False, layout=Layout(width="300px")
        )
        self.saved = ipywidgets.Dropdown(
            options=saved_pieces(self._folder), description="your pieces", layout=Layout(width="300px")
        )
        self.demo = ipywidgets.Dropdown(
            options=demo_names(), description="demo piece", layout=Layout(width="300px")
        )
        self.paper = ipywidgets.Dropdown(
            options=[("A4", "a4"), ("Letter", "letter")], description="paper", layout=Layout(width="200px")
        )
        self.buttons = {
            words: _button(words, tip, act)
            for words, tip, act in (
                ("save", "Write the text into a file of that name", self._tell(self.save)),
                ("replace it", "Write over the file of that name", self._tell(self.replace)),
                ("open it", "Put the text of that file in place of yours", self._tell(self.open)),
                ("start from it", "Put the demo piece's text in place of yours", self._tell(self.start_from)),
                (
                    "bring my text back",
                    "Undo opening a file or starting from a demo piece",
                    self._tell(self.bring_back),
                ),
                ("print the packet", "Write the sheets for the bench into a folder", self._tell(self.print)),
            )
        }
        self.name.observe(self._renamed, names="value")
        self._offer("replace it", False)
        self._offer("bring my text back", False)
        self.status = ipywidgets.HTML()
        self.status.add_class(f"{self._name}-status")
        wrapped = Layout(flex_flow="row wrap", align_items="center", width="100%")
        self._list_saved()
        rows = [
            ipywidgets.Box([self.name, self.buttons["save"], self.buttons["replace it"]], layout=wrapped),
            ipywidgets.Box([self.saved, self.buttons["open it"]], layout=wrapped),
            ipywidgets.Box(
                [self.demo, self.buttons["start from it"], self.buttons["bring my text back"]], layout=wrapped
            ),
            ipywidgets.Box([self.paper, self.buttons["print the packet"]], layout=wrapped),
        ]
        left = ipywidgets.VBox(
            [self.picture, self.words], layout=Layout(flex="1 1 440px", max_width="720px", min_width="200px")
        )
        right = ipywidgets.VBox([both], layout=Layout(flex="1 1 380px", max_width="620px", min_width="200px"))
        sheet = ipywidgets.HTML(style_sheet(self._name, self.drawing.frame), layout=Layout(display="none"))
        beside = ipywidgets.Box(
            [left, right],
            layout=Layout(flex_flow="row wrap", align_items="flex-start", width="100%", grid_gap="0 16px"),
        )
        self.widget: Any = ipywidgets.VBox([sheet, beside, *rows, self.status], layout=Layout(width="100%"))
        self.widget.add_class("woodmath-editor")
        self.widget.add_class(self._name)

    def _repr_mimebundle_(self, **kwargs: Any) -> dict[str, Any]:
        live: dict[str, Any] = self.widget._repr_mimebundle_(**kwargs) or {} if self.widget else {}
        return {**live, "text/plain": self.drawing.words, "image/svg+xml": svg(self.drawing, self._name)}

    def close(self) -> None:
        """Take everything away, in the page and in the kernel; the text can still be read."""
        with self._acts.act():
            if self.widget:
                for part in list(with_parts(self.widget)):
                    part.close()
            self.widget = None

    def take(self, text: str) -> None:
        """Take up a text: draw it and show it in both views, or tell what is wrong with it.

        Parameters
        ----------
        text : str
            As it would stand in the file.
        """
        self._our_own(self._take, text)

    def _take(self, text: str) -> None:
        draft = Draft.of(text, self._folder)
        self.draft, self.faults = draft, draft.faults
        if draft.piece is not None:
            try:
                drawing, remarks = whole_piece.drawing(draft.piece), draft.piece.findings()
                self.piece, self.drawing, self.remarks = draft.piece, drawing, remarks
                self._kept = "The picture is the last that could be drawn."
            except WoodmathError as trouble:
                self.faults = ("It can be read, but not drawn.", str(trouble))
        self._show()

    def fill_in(self, path: Place, value: str | float | list[str] | None) -> None:
        """Change one value in the text, as a box of the form does.

        Parameters
        ----------
        path : tuple
            Tables and key.
        value : text, number, list of text or None
            What is to stand there; None takes the key out.
        """

        def changed() -> None:
            try:
                self._take(changed_text(self.text, path, value))
            except WoodmathError as trouble:
                self.faults = ("That was not taken into the text.", *str(trouble).splitlines())
                self._show()

        self._our_own(changed)

    def save(self) -> str:
        """Save the text under the name in its box; what has that name already stays, and can then be replaced.

        Returns
        -------
        str
            Where it is.

        Raises
        ------
        NotWritten
            If it was not saved; the message says why.
        """
        place = self._place()
        try:
            return self._saved(save(self.text, place))
        except NotWritten:
            self._offer("replace it", place.is_file() and place == self._place())
            raise

    def replace(self) -> str:
        """Save the text over the file of that name.

        Returns
        -------
        str
            Where it is.

        Raises
        ------
        NotWritten
            If it was not saved; what was there is as it was.
        """
        place = self._place()
        told = self._saved(save(self.text, place, replace=True))
        self._offer("replace it", False)
        return told

    def _saved(self, place: Path) -> str:
        self._list_saved(place.name)
        faults = " It has faults still, and is saved all the same." if self.faults else ""
        return f"Saved as {place}.{faults}"

    def _place(self) -> Path:
        name = self.name.value.strip()
        if not name or set(name) & set('/\\:*?"<>|') or name.startswith("."):
            raise NotWritten(
                f"{quoted(name)} is no name for a file. Use letters, figures and hyphens, such as my-bed.toml; it is "
                f"saved in {self._folder}."
            )
        return self._folder / (name if name.endswith(".toml") else f"{name}.toml")

    def open(self) -> str:
        """Put the text of a saved piece in place of what is there, which can be brought back.

        Returns
        -------
        str
            What was done.

        Raises
        ------
        BadPiece
            If the file cannot be read any more.
        """
        place = self._folder / self.saved.value
        self._put_aside(text_of(place))
        self.name.value = place.name
        return f"This is {place} now. Save it under another name, or press save and then replace it."

    def _list_saved(self, chosen: str = "") -> None:
        """Offer the pieces that lie in the folder now; nothing is offered where there are none."""
        names = saved_pieces(self._folder)
        self.saved.options = names
        if chosen in names:
            self.saved.value = chosen
        self.saved.layout.display = "" if names else "none"
        self._offer("open it", bool(names))

    def _put_aside(self, text: str) -> None:
        before = self.text
        self._take(text)
        self._before = before
        self._offer("bring my text back", True)

    def start_from(self) -> str:
        """Put a demo piece's text in place of what is there, which can be brought back.

        Returns
        -------
        str
            What was done.
        """
        self._put_aside(demo_text(self.demo.value))
        return f"This is {self.demo.value} now. No file was changed, and your text can be brought back."

    def bring_back(self) -> str:
        """Put the text back that stood there before another piece's.

        Returns
        -------
        str
            What was done.
        """
        self._take(self._before)
        self._offer("bring my text back", False)
        return "Your text is back."

    def print(self) -> str:
        """Write the shop packet of the piece into a folder beside its file.

        Returns
        -------
        str
            Where it is.

        Raises
        ------
        WoodmathError
            If the text has faults, or the packet cannot be made or written.
        """
        # What paints paper takes a second to load, and nobody who only draws should wait for it.
        from woodmath.packet import packet_of, write_packet

        if self.faults:
            raise NotWritten("The text has faults, and nothing was printed. Put right what is listed first.")
        folder = self._folder / f"{file_name(self.piece.name)}-packet"
        packet = packet_of(self.piece, self.paper.value)
        older = " It was written over an older packet." if packet.replaces(folder) else ""
        first, *others = write_packet(packet, folder)
        stops = len(packet.stops)
        held = (
            f" The master would stop you {_times(stops)}: read the first sheet, and cut nothing."
            if stops
            else ""
        )
        return f"{first.name} is in {folder}, with {len(others)} beside it. Print at 100 %.{older}{held}"

    def _tell(self, act: Callable[[], str]) -> Callable[[Any], None]:
        """Make of an act what a button calls: what it led to is said, whether it went well or not."""

        def pressed(_: Any) -> None:
            def done() -> None:
                self.said = act()

            with self._acts.act():
                if self.widget:
                    self._as_far_as_it_goes(done)
                    self._paint()

        return pressed

    def _our_own(self, act: Callable[..., None], *given: Any) -> None:
        """Do something once, not again for every widget that it sets."""
        with self._acts.act() as readers_own:
            if readers_own and self.widget:
                self._as_far_as_it_goes(act, *given)

    def _as_far_as_it_goes(self, act: Callable[..., None], *given: Any) -> None:
        """Do something, and say it if it cannot be done; a fault of ours is not hidden in tests."""
        try:
            act(*given)
        except WoodmathError as trouble:
            self.said = str(trouble)
        except Exception:
            if os.environ.get("WOODMATH_STRICT"):
                raise
            self.said = _OUR_FAULT
            self._paint()

    def _renamed(self, _: object) -> None:
        """Take back the offer to replace, which was made for another name."""
        with self._acts.act():
            self._offer("replace it", False)

    def _offer(self, button: str, offered: bool) -> None:
        self.buttons[button].layout.display = "" if offered else "none"

    def _show(self) -> None:
        self.form.show(self.draft)
        if self.area.value != self.text:
            self.area.value = self.text
        self._paint()

    def _paint(self) -> None:
        self.picture.value = svg(self.drawing, self._name)
        self.words.value = self._words()
        self.status.value = f'<p role="status">{set_fractions(escape(self.said))}</p>'

    def _words(self) -> str:
        if self.faults:
            first, *others = (set_fractions(escape(fault)) for fault in self.faults)
            listed = "".join(f"<li>{fault}</li>" for fault in others)
            return f'<div role="alert"><p><b>✗ Not drawn:</b> {first} {self._kept}</p><ul>{listed}</ul></div>'
        drawing = self.drawing
        faults = "".join(f"<li><b>✗</b> {set_fractions(escape(fault))}</li>" for fault in drawing.faults)
        remarks = "".join(
            f"<li><b>{finding.severity.capitalize()}</b>, {set_fractions(escape(_without_severity(finding)))}</li>"
            for finding in self.remarks
        )
        told = f"<strong>{set_fractions(escape(drawing.headline))}</strong> {set_fractions(escape(drawing.told))}"
        none = "" if remarks else "<p>The master has nothing to remark.</p>"
        return f'<div role="status"><p>{told}</p><ul>{faults}{remarks}</ul>{none}</div>'


def _without_severity(finding: Any) -> str:
    return f"{finding.place}: {finding.reason} {finding.remedy}"


def _times(count: int) -> str:
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def _button(words: str, tip: str, act: Callable[[Any], None]) -> Any:
    button = ipywidgets.Button(description=words, tooltip=tip, layout=Layout(width="auto", min_width="120px"))
    button.on_click(act)
    return button
