"""Matplotlib's share of the paper: the marks of a picture painted as its artists, and written as a file.

No window, no list of open figures and no setting of the reader's is touched: settings hold only while a
figure is made or written. One picture unit is one CSS pixel, 1/96 inch.
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

import matplotlib
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.patches import Circle, PathPatch
from matplotlib.path import Path as Outline
from matplotlib.patheffects import Stroke as Halo

from woodmath.drawing import Point, Points
from woodmath.paper import UNITS_IN_AN_INCH
from woodmath.pens import PALETTE, Body, Disc, Mark, Motion, Pen, Stroke, Words

POINT = 72.0 / UNITS_IN_AN_INCH
SETTINGS: Mapping[Any, Any] = MappingProxyType(
    {
        "svg.hashsalt": "woodmath",
        "svg.fonttype": "path",
        "pdf.fonttype": 42,
        "pdf.compression": 6,
        "pdf.use14corefonts": False,
        "savefig.bbox": None,
        "savefig.facecolor": "auto",
        "savefig.edgecolor": "auto",
        "savefig.orientation": "portrait",
        "savefig.transparent": False,
        "figure.autolayout": False,
        "figure.constrained_layout.use": False,
        "lines.scale_dashes": False,
        "path.effects": (),
        "path.simplify": False,
        "path.sketch": None,
        "text.usetex": False,
    }
)
"""What a file of ours is made with, whatever a reader's own settings are."""

HALO = 4.0
"""How wide the paper shows round the letters that stand on wood, in picture units."""


def paint(
    title: str,
    width: float,
    height: float,
    painted: Iterable[Mark],
    paper: str,
    beside: Iterable[Words] = (),
) -> Figure:
    """Paint marks on a figure of one axes that fills it.

    Parameters
    ----------
    title : str
        The figure's label, and the title of a file made of it.
    width, height : float
        Size in picture units, > 0; the axes count them from the upper left corner.
    painted : iterable of marks
        In painting order.
    paper : str
        Colour of the paper, "#rrggbb": the halo of the words, and whatever is filled with paper.
    beside : iterable of Words
        Words that stand on bare paper, and so need no halo.

    Returns
    -------
    Figure
        Known to no window and to no list of open figures.

    >>> figure = paint("nothing yet", 96.0, 48.0, (), "#ffffff")
    >>> figure.get_label(), len(figure.axes)
    ('nothing yet', 1)
    """
    # Artists take settings up when they are made, and a reader's own may ask for sketchy lines, say.
    with matplotlib.rc_context(dict(SETTINGS)):
        figure = Figure(
            figsize=(width / UNITS_IN_AN_INCH, height / UNITS_IN_AN_INCH),
            dpi=UNITS_IN_AN_INCH,
            facecolor="none",
            edgecolor="none",
        )
        figure.set_label(title)
        axes = figure.add_axes((0.0, 0.0, 1.0, 1.0), frameon=False)
        axes.set_axis_off()
        axes.set_xlim(0.0, width)
        axes.set_ylim(height, 0.0)
        painter = _Painter(axes, paper)
        for mark in painted:
            painter.paint(mark)
        for words in beside:
            painter.letters(words)
    return figure


def written(figure: Figure, kind: str, told: Mapping[str, object]) -> bytes:
    """Return the file that a figure makes, the same bytes for the same figure.

    Parameters
    ----------
    figure : Figure
        From `paint`.
    kind : {"pdf", "svg"}
    told : dict
        What the file says about itself.

    >>> written(paint("a", 9.0, 9.0, (), "#ffffff"), "pdf", {"CreationDate": None})[:5]
    b'%PDF-'
    """
    with matplotlib.rc_context(dict(SETTINGS)):
        file = io.BytesIO()
        figure.savefig(file, format=kind, metadata=dict(told))
    return file.getvalue()


class _Painter:
    """Paints marks on an axes, each above the one before."""

    def __init__(self, axes: Axes, paper: str) -> None:
        self._axes = axes
        self._colours = {**PALETTE, "paper": paper}
        self._clips: dict[Points, Outline] = {}
        self._level = 0

    def paint(self, mark: Mark) -> None:
        match mark:
            case Stroke():
                self._lines(mark.lines, mark.pen, mark.closed, mark.fill, mark.clip)
            case Disc():
                self._disc(mark)
            case Words():
                self.letters(mark, halo=True)
                self.letters(mark)
            case Motion(dot=0):
                self._lines(mark.frames[:1], mark.pen, mark.closed, mark.fill, ())
            case Motion():
                self._disc(Disc(mark.frames[0][0], mark.dot, None, mark.pen.colour))
            case Body():
                for each in mark.first:
                    self.paint(each)

    def _lines(
        self, lines: tuple[Points, ...], pen: Pen | None, closed: bool, fill: str, clip: Points
    ) -> None:
        self._add(PathPatch(path_of(lines, closed)), pen, fill, clip)

    def _disc(self, disc: Disc) -> None:
        self._add(Circle(disc.centre, disc.radius), disc.pen, disc.fill, disc.clip)

    def _add(self, patch: PathPatch | Circle, pen: Pen | None, fill: str, clip: Points) -> None:
        self._level += 1
        patch.set(
            facecolor=self._colours[fill] if fill else "none",
            edgecolor=self._colours[pen.colour] if pen else "none",
            linewidth=pen.width * POINT if pen else 0.0,
            linestyle=(0.0, tuple(dash * POINT for dash in pen.dashes)) if pen and pen.dashes else "solid",
            joinstyle="miter" if pen and pen.dashes else "round",
            capstyle="butt" if pen and pen.dashes else "round",
            antialiased=True,
            snap=False,
            zorder=self._level,
        )
        self._axes.add_patch(patch)
        if clip:
            outline = self._clips.setdefault(clip, path_of((clip,), True))
            patch.set_clip_path(outline, self._axes.transData)
        else:
            patch.set_clip_on(False)

    def letters(self, words: Words, halo: bool = False) -> None:
        """Set a text, or the halo under it: the two apart, because letters with a halo turn into outlines."""
        self._level += 1
        stroke = Halo(linewidth=HALO * POINT, foreground=self._colours["paper"], joinstyle="round")
        self._axes.text(
            *words.where,
            words.text,
            fontproperties=font_of(words.size, words.bold),
            color=self._colours["paper" if halo else words.colour],
            horizontalalignment={"start": "left", "middle": "center", "end": "right"}[words.anchor],
            verticalalignment="baseline",
            path_effects=[stroke] if halo else [],
            parse_math=False,
            usetex=False,
            clip_on=False,
            zorder=self._level,
        )


def path_of(lines: tuple[Points, ...], closed: bool) -> Outline:
    """Return lines as one path.

    Parameters
    ----------
    lines : tuple of tuples of (float, float)
        At least one, each with a point or more.
    closed : bool
        Whether each goes back to its start.

    >>> len(path_of((((0.0, 0.0), (1.0, 0.0)),), closed=True).vertices)
    3
    """
    points: list[Point] = []
    codes: list[int] = []
    for line in lines:
        points += [*line, line[0]] if closed else line
        codes += [int(Outline.MOVETO), *[int(Outline.LINETO)] * (len(line) - 1)]
        codes += [int(Outline.CLOSEPOLY)] if closed else []
    return Outline(points, codes)


def font_of(size: float, bold: bool) -> FontProperties:
    """Return the face that comes with Matplotlib, so that paper looks alike on every machine.

    Parameters
    ----------
    size : float
        Of the letters, in picture units.
    bold : bool
        Whether they are bold.

    >>> font_of(16.0, bold=False).get_size()
    12.0
    """
    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    face = Path(matplotlib.get_data_path(), "fonts", "ttf", name)
    return FontProperties(fname=str(face), size=size * POINT)
