"""What stands on a card, from top to bottom: blocks that are set one below the other, over as many sheets as needed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from woodmath.fractions_in_print import set_fractions
from woodmath.layout import wrapped_anywhere
from woodmath.outlines import Points
from woodmath.pens import Body, Disc, Mark, Motion, Stroke, Words


@dataclass(frozen=True)
class Block:
    """Marks that stay together, and the height that they take.

    Parameters
    ----------
    marks : tuple of marks
        In picture units from the block's upper left corner.
    height : float
        Down to where the next block begins, > 0.
    head : tuple of Block
        What is set again above this block where it begins a sheet: a table's head.
    followed_by : float
        Height below it that must be free on the same sheet, so that no title stands alone at the foot of one.

    >>> Block((), 20.0).followed_by
    0.0
    """

    marks: tuple[Mark, ...]
    height: float
    head: tuple[Block, ...] = ()
    followed_by: float = 0.0


def moved(mark: Mark, right: float, down: float, scale: float = 1.0) -> Mark:
    """Return a mark at another place, and larger or smaller on wish.

    Parameters
    ----------
    mark : mark
        Of any kind.
    right, down : float
        In picture units.
    scale : float
        Applied before it is moved, to lengths, pens and lettering alike, > 0.

    >>> moved(Words("1", (10.0, 20.0), 10.0, "ink"), 5.0, 0.0, 2.0).where
    (25.0, 40.0)
    """

    def there(line: Points) -> Points:
        return tuple((right + scale * x, down + scale * y) for x, y in line)

    if isinstance(mark, Body):
        return _moved_body(mark, right, down, scale)
    pen = mark.pen if not isinstance(mark, Words) else None
    if pen:
        pen = replace(pen, width=pen.width * scale, dashes=tuple(dash * scale for dash in pen.dashes))
    match mark:
        case Words():
            return replace(mark, where=there((mark.where,))[0], size=mark.size * scale)
        case Disc():
            (centre,) = there((mark.centre,))
            return Disc(centre, mark.radius * scale, pen, mark.fill, there(mark.clip))
        case Stroke():
            return Stroke(tuple(map(there, mark.lines)), pen, mark.closed, mark.fill, there(mark.clip))
        case Motion():
            return replace(
                mark, frames=tuple(map(there, mark.frames)), pen=pen or mark.pen, dot=mark.dot * scale
            )


def _moved_body(body: Body, right: float, down: float, scale: float) -> Body:
    marks = (moved(mark, right, down, scale) for mark in body.marks)
    x, y = body.about
    return replace(
        body,
        marks=tuple(mark for mark in marks if isinstance(mark, Stroke | Disc)),
        about=(right + scale * x, down + scale * y),
        poses=tuple((right + scale * x, down + scale * y, degrees) for x, y, degrees in body.poses),
    )


def paragraph(
    text: str,
    width: float,
    size: float,
    colour: str = "ink",
    bold: bool = False,
    left: float = 0.0,
    after: float = 0.0,
) -> Block:
    """Set a text in lines of a width, its fractions as fractions.

    Parameters
    ----------
    text : str
        Any words.
    width, size : float
        Of the lines and of the lettering, in picture units.
    colour : str
        A role of the palette.
    bold : bool
        Whether the letters are bold.
    left : float
        Where the lines begin.
    after : float
        Room below the last line.

    >>> paragraph("A tenon 1/2 thick", 60.0, 10.0).marks[0].text
    'A tenon ½'
    """
    lines = wrapped_anywhere(set_fractions(text), size, bold, width)
    pitch = line_pitch(size)
    return Block(
        tuple(
            Words(line, (left, row * pitch + size), size, colour, "start", bold)
            for row, line in enumerate(lines)
        ),
        len(lines) * pitch + after,
    )


def line_pitch(size: float) -> float:
    """From one line of lettering to the next.

    >>> line_pitch(10.0)
    13.5
    """
    return 1.35 * size


def in_pages(blocks: Iterable[Block], height: float) -> tuple[tuple[Mark, ...], ...]:
    """Set blocks below one another, and begin a new page where one does not fit any more.

    Parameters
    ----------
    blocks : iterable of Block
        From top to bottom; one that is higher than a page has a page to itself.
    height : float
        Of a page, in picture units.

    Returns
    -------
    tuple of tuples of marks
        What stands on each page, from its upper left corner; one page at least.

    >>> [len(page) for page in in_pages([paragraph("one", 99.0, 10.0)] * 5, 30.0)]
    [2, 2, 1]
    """
    pages: list[list[Mark]] = [[]]
    level = 0.0
    for block in blocks:
        if level and level + block.height + block.followed_by > height:
            pages.append([])
            level = 0.0
            for head in block.head:
                pages[-1] += (moved(mark, 0.0, level) for mark in head.marks)
                level += head.height
        pages[-1] += (moved(mark, 0.0, level) for mark in block.marks)
        level += block.height
    return tuple(map(tuple, pages))
