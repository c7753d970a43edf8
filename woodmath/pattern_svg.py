"""A pattern as an SVG file in millimetres: one user unit is one millimetre, for a screen, a cutter or a printer."""

from __future__ import annotations

from collections.abc import Iterator
from html import escape

from woodmath.drawing import Frame
from woodmath.flow import moved
from woodmath.harmless_names import one_line
from woodmath.marks import marks
from woodmath.outlines import Points
from woodmath.paper import UNITS_IN_A_MILLIMETRE
from woodmath.pattern import Pattern
from woodmath.pens import PALETTE, Body, Disc, Mark, Motion, Pen, Stroke, Words
from woodmath.true_size import extent, reframed

_MARGIN = 5.0
_HALO = 1.0
_WARNING = 14.0
_ON_WHITE = {**PALETTE, "paper": "#ffffff"}


def pattern_svg(pattern: Pattern, millimetres_per_unit: float, name: str, warning: str = "") -> str:
    """Write a pattern as SVG.

    Parameters
    ----------
    pattern : Pattern
        At true size.
    millimetres_per_unit : float
        One length unit of its drawing in millimetres, > 0: 25.4 for inches.
    name : str
        Of the piece.
    warning : str
        A few words over the pattern; "" for none.

    Returns
    -------
    str
        The whole file; width and height are in millimetres, and so is every number in it.

    >>> from woodmath.drawing import Drawing, Line
    >>> line = Drawing("a line", Frame(96, 48, 0, 0, 10), (Line(((0, 0), (20, 1))),), "Long.")
    >>> pattern_svg(Pattern("Line", line), 25.4, "A bed").count('d="M')
    1
    """
    scale = millimetres_per_unit * UNITS_IN_A_MILLIMETRE
    painted = marks(reframed(pattern.drawing, Frame(1.0, 0.0, 0.0, 0.0, scale)))
    if warning:
        low, high, _, _ = extent(painted)
        painted = (*painted, Words(warning, (low, high - _WARNING), _WARNING, "accent", "start", True))
    left, top, right, bottom = (each / UNITS_IN_A_MILLIMETRE for each in extent(painted))
    width, height = (f"{size + 2 * _MARGIN:.2f}" for size in (right - left, bottom - top))
    clips: dict[Points, str] = {}
    body = [
        element
        for mark in painted
        for element in _elements(moved(mark, _MARGIN - left, _MARGIN - top, 1 / UNITS_IN_A_MILLIMETRE), clips)
    ]
    windows = "".join(
        f'<clipPath id="{named}"><path d="{_path((outline,), True)}"/></clipPath>\n'
        for outline, named in clips.items()
    )
    title = escape(one_line(f"{name}: {pattern.name}"))
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="\'DejaVu Sans\',sans-serif">\n'
        f"<title>{title}</title>\n<desc>{escape(one_line(pattern.drawing.words))}</desc>\n"
        f"<defs>{windows}</defs>\n" + "\n".join(body) + "\n</svg>\n"
    )


def _elements(mark: Mark, clips: dict[Points, str]) -> Iterator[str]:
    match mark:
        case Stroke():
            yield f'<path d="{_path(mark.lines, mark.closed)}"{_look(mark.pen, mark.fill, mark.clip, clips)}/>'
        case Disc():
            yield _circle(mark)[:-2] + f"{_look(mark.pen, mark.fill, mark.clip, clips)}/>"
        case Words():
            yield _words(mark)
        case Motion(dot=0):
            yield f'<path d="{_path(mark.frames[:1], mark.closed)}"{_look(mark.pen, "", (), clips)}/>'
        case Motion():
            disc = Disc(mark.frames[0][0], mark.dot, None)
            yield _circle(disc)[:-2] + f"{_look(None, mark.pen.colour, (), clips)}/>"
        case Body():
            for each in mark.first:
                yield from _elements(each, clips)


def _circle(disc: Disc) -> str:
    x, y = disc.centre
    return f'<circle cx="{_number(x)}" cy="{_number(y)}" r="{_number(disc.radius)}"/>'


def _path(lines: tuple[Points, ...], closed: bool) -> str:
    return "".join(
        "M" + "L".join(f"{_number(x)},{_number(y)}" for x, y in line) + ("z" if closed else "")
        for line in lines
    )


def _number(value: float) -> str:
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _look(pen: Pen | None, fill: str, clip: Points, clips: dict[Points, str]) -> str:
    look = f' fill="{_ON_WHITE[fill]}"' if fill else ' fill="none"'
    if pen:
        look += f' stroke="{_ON_WHITE[pen.colour]}" stroke-width="{_number(pen.width)}"'
        look += (
            f' stroke-dasharray="{" ".join(map(_number, pen.dashes))}"'
            if pen.dashes
            else ' stroke-linejoin="round" stroke-linecap="round"'
        )
    if clip:
        look += f' clip-path="url(#{clips.setdefault(clip, f"window-{len(clips) + 1}")})"'
    return look


def _words(words: Words) -> str:
    x, y = map(_number, words.where)
    weight = ' font-weight="700"' if words.bold else ""
    anchor = f' text-anchor="{words.anchor}"' if words.anchor != "start" else ""
    return (
        f'<text x="{x}" y="{y}" font-size="{_number(words.size)}" fill="{_ON_WHITE[words.colour]}"{anchor}{weight} '
        f'stroke="#ffffff" stroke-width="{_number(_HALO)}" stroke-linejoin="round" paint-order="stroke">'
        f"{escape(one_line(words.text))}</text>"
    )
