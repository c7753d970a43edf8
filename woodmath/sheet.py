"""A page's drawing on paper at true size, as a link to click: nothing is written beside the notebook."""

from __future__ import annotations

import base64
from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.paper import PAPERS
from woodmath.views.view import Value, View

if TYPE_CHECKING:
    from woodmath.piece import Piece


@dataclass(frozen=True)
class Sheet:
    """A drawing ready to be printed: one PDF for each paper that it fits, or the sentence why it fits none.

    Parameters
    ----------
    title : str
        What is on it.
    files : tuple of (str, bytes)
        The paper's name and the PDF.
    trouble : str
        Why there is no file, where there is none.

    >>> Sheet("a line", (), "It is too long.")._repr_html_().count("too long")
    1
    """

    title: str
    files: tuple[tuple[str, bytes], ...]
    trouble: str = ""

    def _repr_html_(self) -> str:
        links = " · ".join(
            f'<a download="{escape(self.title)}, {paper}.pdf" '
            f'href="data:application/pdf;base64,{base64.b64encode(content).decode()}">{escape(paper)}</a>'
            for paper, content in self.files
        )
        if not links:
            return f"<p>{escape(self.trouble)}</p>"
        return (
            f"<p><b>{escape(self.title)}</b>, at true size, to download and print: {links}. "
            "Print at 100 %, and measure the bars before you cut.</p>"
        )


def sheet_at_true_size(view: View, piece: Piece, **settings: Value) -> Sheet:
    """Put a view of a piece on paper at true size.

    Parameters
    ----------
    view : View
        What is to be drawn.
    piece : Piece
        Where its sizes come from.
    **settings
        Sizes to use instead of the piece's own, by the names of the view's controls.

    Returns
    -------
    Sheet
        Shows itself as links, one for each paper that has the room.

    Raises
    ------
    WoodmathError
        If a setting is not one of the view's, or cannot be.

    >>> from woodmath.piece import Piece
    >>> from woodmath.views.bevel import struck_bevel
    >>> [paper for paper, _ in sheet_at_true_size(struck_bevel, Piece.demo("cat-bed")).files]
    ['A4', 'Letter']
    """
    # Matplotlib takes half a second to come in, and only a page that prints needs it.
    from woodmath.drawing_pdf import pdf_bytes, true_size_page

    drawing = view.drawing(piece, **settings)
    files: list[tuple[str, bytes]] = []
    trouble = ""
    for paper, (called, _, _) in PAPERS.items():
        try:
            page = true_size_page(drawing, piece.rule.millimetres_per_unit, paper, piece.name)
            files.append((called, pdf_bytes(page)))
        except ImpossibleShape as too_large:
            trouble = str(too_large)
    return Sheet(f"{piece.name}: {view.name.replace('_', ' ')}", tuple(files), trouble)
