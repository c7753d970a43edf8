"""The marks of a sheet as the content of a PDF page (ISO 32000-1, 8 and 9): paths, windows and letters."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from woodmath.outlines import Point, Points, rectangle
from woodmath.paper import PaperSheet
from woodmath.pdf_fonts import Face
from woodmath.pens import PALETTE, Disc, Mark, Motion, Pen, Stroke, Words

_POINTS_IN_A_UNIT = 72 / 96
_HALO = 4.0
_ROUND = 0.5522847498307936
"""How far the two handles of a quarter circle reach, for a radius of 1."""

_ON_WHITE = {**PALETTE, "paper": "#ffffff"}


def content_of(sheet: PaperSheet, faces: Mapping[bool, Face]) -> bytes:
    """Write what stands on a sheet.

    Parameters
    ----------
    sheet : PaperSheet
        Its marks in picture units, from its upper left corner.
    faces : mapping of bool to Face
        The plain face and the bold one; they remember the letters that are used.

    Returns
    -------
    bytes
        The page's content, not packed.

    >>> content_of(PaperSheet("nothing", 210.0, 297.0, ()), {})
    b'0.75 0 0 -0.75 0 841.88976 cm'
    """
    unit = number(_POINTS_IN_A_UNIT)
    lines = [b"%b 0 0 -%b 0 %b cm" % (unit, unit, number(_POINTS_IN_A_UNIT * sheet.height_in_units, 5))]
    for layer in sheet.layers:
        lines.append(b"q")
        if layer.window:
            lines.append(_window(rectangle(*layer.window)))
        lines.append(b"1 0 0 1 %b cm" % _at(layer.moved))
        for mark in layer.marks:
            lines += _painted(mark, faces)
        lines.append(b"Q")
    return b"\n".join(lines)


def number(value: float, places: int = 4) -> bytes:
    """Write a number as short as it goes.

    >>> number(2.50001), number(-0.00001)
    (b'2.5', b'0')
    """
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return b"0" if text == "-0" else text.encode("ascii")


def _painted(mark: Mark, faces: Mapping[bool, Face]) -> Iterator[bytes]:
    match mark:
        case Stroke():
            paths = [_path(line, mark.closed) for line in mark.lines]
            yield from _drawn(paths, mark.pen, mark.fill, mark.clip)
        case Disc():
            yield from _drawn([_circle(mark.centre, mark.radius)], mark.pen, mark.fill, mark.clip)
        case Words():
            yield from _letters(mark, faces[mark.bold])
        case Motion(dot=0):
            yield from _drawn([_path(mark.frames[0], mark.closed)], mark.pen, "", ())
        case Motion():
            yield from _drawn([_circle(mark.frames[0][0], mark.dot)], None, mark.pen.colour, ())


def _drawn(paths: Iterable[bytes], pen: Pen | None, fill: str, clip: Points) -> Iterator[bytes]:
    if pen is None and not fill:
        return
    yield b"q"
    if clip:
        yield _window(clip)
    if fill:
        yield _colour(fill) + b" rg"
    if pen:
        joins = b"0 J 0 j" if pen.dashes else b"1 J 1 j"
        dashes = b" ".join(map(number, pen.dashes))
        yield b"%b RG %b w %b [%b] 0 d" % (_colour(pen.colour), number(pen.width), joins, dashes)
    yield from paths
    yield {(True, True): b"B", (True, False): b"f", (False, True): b"S"}[bool(fill), pen is not None]
    yield b"Q"


def _window(outline: Points) -> bytes:
    return _path(outline, closed=True) + b" W n"


def _path(line: Points, closed: bool) -> bytes:
    (first, *others) = line
    steps = [_at(first) + b" m", *(_at(point) + b" l" for point in others)]
    if not others:
        steps.append(_at(first) + b" l")
    return b"\n".join([*steps, b"h"] if closed else steps)


def _circle(centre: Point, radius: float) -> bytes:
    x, y = centre
    handle = _ROUND * radius
    quarters = (
        ((x + radius, y + handle), (x + handle, y + radius), (x, y + radius)),
        ((x - handle, y + radius), (x - radius, y + handle), (x - radius, y)),
        ((x - radius, y - handle), (x - handle, y - radius), (x, y - radius)),
        ((x + handle, y - radius), (x + radius, y - handle), (x + radius, y)),
    )
    curves = [b" ".join(map(_at, quarter)) + b" c" for quarter in quarters]
    return b"\n".join([_at((x + radius, y)) + b" m", *curves, b"h"])


def _at(point: Point) -> bytes:
    return number(point[0]) + b" " + number(point[1])


def _colour(role: str) -> bytes:
    colour = _ON_WHITE[role]
    return b" ".join(number(int(colour[start : start + 2], 16) / 255, 3) for start in (1, 3, 5))


def _letters(words: Words, face: Face) -> Iterator[bytes]:
    """Yield a text twice: its halo in white, stroked, and then the letters."""
    x, y = words.where
    before = {"start": 0.0, "middle": 0.5, "end": 1.0}[words.anchor] * face.width(words.text, words.size)
    codes = face.codes(words.text).encode("ascii")
    yield b"q BT /F%d %b Tf 1 0 0 -1 %b Tm" % (words.bold, number(words.size), _at((x - before, y)))
    yield b"%b RG %b w 1 J 1 j [] 0 d 1 Tr <%b> Tj" % (_colour("paper"), number(_HALO), codes)
    yield b"1 0 0 -1 %b Tm 0 Tr %b rg <%b> Tj ET Q" % (_at((x - before, y)), _colour(words.colour), codes)
