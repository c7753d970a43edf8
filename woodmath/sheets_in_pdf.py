"""Many sheets in one PDF file: Matplotlib's own PDF renderer, handed the marks of each sheet one after another.

A figure with its artists takes a third of a second for a sheet of text. The renderer under it takes paths and words
as they are, and thirty sheets in less than that; it writes pages, faces and streams, and nothing of that is ours.
"""

from __future__ import annotations

import functools
import io
from collections.abc import Sequence

import matplotlib
import matplotlib.colors
from matplotlib.backends.backend_pdf import GraphicsContextPdf, PdfFile, RendererPdf
from matplotlib.path import Path as Outline
from matplotlib.textpath import text_to_path
from matplotlib.transforms import Affine2D, Bbox, TransformedPath

from woodmath.drawing_pdf import without_scaling
from woodmath.lettering import text_width
from woodmath.outlines import Point
from woodmath.paint import HALO, POINT, SETTINGS, font_of, path_of
from woodmath.paper import Layer, PaperSheet
from woodmath.pens import PALETTE, Body, Disc, Mark, Motion, Pen, Stroke, Words

_POINTS_IN_AN_INCH, _MILLIMETRES_IN_AN_INCH = 72.0, 25.4
_ON_WHITE = {**PALETTE, "paper": "#ffffff"}


def pdf_of(title: str, sheets: Sequence[PaperSheet]) -> bytes:
    """Write sheets as one PDF file that asks to be printed at 100 %.

    Parameters
    ----------
    title : str
        What the file calls itself.
    sheets : sequence of PaperSheet
        At least one.

    Returns
    -------
    bytes
        The whole file, the same for the same sheets: it holds no date and no version.

    >>> pdf_of("nothing", [PaperSheet("nothing", 210.0, 297.0, ())])[:5]
    b'%PDF-'
    """
    written = io.BytesIO()
    told = {"Title": title, "Creator": None, "Producer": None, "CreationDate": None}
    with matplotlib.rc_context(dict(SETTINGS)):
        file = PdfFile(written, metadata=told)
        for sheet in sheets:
            width, height = (size / _MILLIMETRES_IN_AN_INCH for size in (sheet.width, sheet.height))
            file.newPage(width, height)
            renderer = RendererPdf(file, _POINTS_IN_AN_INCH, height, width)
            for layer in sheet.layers:
                _Painter(renderer, sheet, layer).paint()
            renderer.finalize()
        file.finalize()
        file.close()
    return without_scaling(written.getvalue())


class _Painter:
    """Paints one layer of a sheet; the renderer counts points from the lower left corner, upward."""

    def __init__(self, renderer: RendererPdf, sheet: PaperSheet, layer: Layer) -> None:
        self._renderer = renderer
        self._layer = layer
        upright = Affine2D().scale(POINT, -POINT).translate(0.0, sheet.height_in_units * POINT)
        right, down = layer.moved
        self._moved = Affine2D().translate(right, down) + upright
        self._window: Bbox | None = None
        if layer.window:
            left, top, right, bottom = layer.window
            self._window = Bbox(upright.transform(((left, bottom), (right, top))))
        # Words over wood stand on paper of their own; on a sheet without any they stand on paper already.
        self._haloed = any(
            isinstance(mark, Body) or (isinstance(mark, Stroke) and mark.fill)
            for each in sheet.layers
            for mark in each.marks
        )

    def paint(self) -> None:
        """Paint every mark above the one before."""
        for mark in self._layer.marks:
            self._mark(mark)

    def _mark(self, mark: Mark) -> None:
        match mark:
            case Stroke():
                self._path(path_of(mark.lines, mark.closed), mark.pen, mark.fill, mark.clip)
            case Disc():
                self._path(_circle(mark.centre, mark.radius), mark.pen, mark.fill, mark.clip)
            case Words():
                self._words(mark)
            case Motion(dot=0):
                self._path(path_of(mark.frames[:1], mark.closed), mark.pen, mark.fill, ())
            case Motion():
                self._path(_circle(mark.frames[0][0], mark.dot), None, mark.pen.colour, ())
            case Body():
                for each in mark.first:
                    self._mark(each)

    def _context(self) -> GraphicsContextPdf:
        context: GraphicsContextPdf = self._renderer.new_gc()
        if self._window is not None:
            context.set_clip_rectangle(self._window)
        return context

    def _path(self, path: Outline, pen: Pen | None, fill: str, clip: tuple[Point, ...]) -> None:
        context = self._context()
        if clip:
            context.set_clip_path(TransformedPath(path_of((clip,), closed=True), self._moved))
        context.set_linewidth(pen.width * POINT if pen else 0.0)
        if pen:
            context.set_foreground(_ON_WHITE[pen.colour])
            context.set_capstyle("butt" if pen.dashes else "round")
            context.set_joinstyle("miter" if pen.dashes else "round")
            if pen.dashes:
                context.set_dashes(0.0, [dash * POINT for dash in pen.dashes])
        face = matplotlib.colors.to_rgb(_ON_WHITE[fill]) if fill else None
        self._renderer.draw_path(context, path, self._moved, face)
        context.restore()

    def _words(self, words: Words) -> None:
        before = {"start": 0.0, "middle": 0.5, "end": 1.0}[words.anchor]
        x, y = words.where
        x, y = self._moved.transform((x - before * text_width(words.text, words.size, words.bold), y))
        face = font_of(words.size, words.bold)
        if self._haloed:
            context = self._context()
            context.set_linewidth(HALO * POINT)
            context.set_foreground(_ON_WHITE["paper"])
            context.set_joinstyle("round")
            self._renderer.draw_path(
                context,
                _letters(words.text, words.size, words.bold),
                Affine2D().scale(words.size * POINT / text_to_path.FONT_SCALE).translate(x, y),
                None,
            )
            context.restore()
        context = self._context()
        context.set_foreground(_ON_WHITE[words.colour])
        self._renderer.draw_text(context, x, y, words.text, face, 0.0)
        context.restore()


def _circle(centre: Point, radius: float) -> Outline:
    return Outline.circle(centre, radius)


# The same words stand on both sheets of a joint, and in the foot of every sheet.
@functools.lru_cache(maxsize=512)
def _letters(text: str, size: float, bold: bool) -> Outline:
    corners, codes = text_to_path.get_text_path(font_of(size, bold), text)
    return Outline(corners, codes) if len(corners) else Outline([(0.0, 0.0)])
