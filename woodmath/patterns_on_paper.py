"""A pattern on paper at true size: on one sheet, or shared out over several that are joined by their match marks."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from woodmath.drawing import Frame
from woodmath.fractions_in_print import set_fractions
from woodmath.layout import shortened
from woodmath.lettering import text_width
from woodmath.marks import marks
from woodmath.outlines import Point, Points, rectangle
from woodmath.paper import UNITS_IN_A_MILLIMETRE, Layer, PaperSheet, paper_size
from woodmath.pattern import Pattern
from woodmath.pens import Disc, Mark, Pen, Stroke, Words
from woodmath.tiling import MARK, OVERLAP, Box, Taken, Tile, Tiling, tiling_of
from woodmath.true_size import bars_and_title, extent, middle_of_the_room, reframed, room_beside_the_bars

_LEAST_STRIP = 40.0
_ARM, _RING = 5.0, 2.5
_MARK_SIZE = 13.0
_MARK_PEN = Pen("accent", 0.9)
_JOINT_PEN = Pen("accent", 1.5, (1.5, 4.5))
_TRIM, _TRIM_SIZE = "trim", 12.0
_PLAN_WIDE, _PLAN_HIGH, _PLAN_CELL = 22.0, 14.0, 6.0
_EDGE, _AIR = 10.0, 1.0
_PIECE, _WORDS_WEIGH = 40.0, 10
_TITLE_SIZE, _BESIDE_TITLE = 15.0, 52.0
_HOW_TO_JOIN = "Cut along a line named trim, and lay crosses of one number over one another."


@dataclass(frozen=True)
class PatternOnPaper:
    """A pattern and the sheets that it is printed on.

    Parameters
    ----------
    pattern : Pattern
        What is printed.
    tiling : Tiling
        How it is shared out.
    sheets : tuple of PaperSheet
        One for each of the tiling's windows, in the same order.
    corner : (float, float)
        Lower left corner of the whole, in millimetres of the drawing.
    unit : float
        One length unit of the drawing in millimetres.
    """

    pattern: Pattern
    tiling: Tiling
    sheets: tuple[PaperSheet, ...]
    corner: Point
    unit: float

    def place(self, point: Point, tile: Tile) -> Point:
        """Return where a point of the drawing stands on a sheet, in millimetres from its lower left corner.

        Parameters
        ----------
        point : (float, float)
            In the drawing's unit.
        tile : Tile
            One of the tiling's; the point may lie outside its window.
        """
        x, y = (self.unit * each - low for each, low in zip(point, self.corner, strict=True))
        return on_sheet((x, y), tile, self.tiling)


def on_sheet(place: Point, tile: Tile, tiling: Tiling) -> Point:
    """Return where a place of a pattern stands on a sheet, in millimetres from its lower left corner.

    Parameters
    ----------
    place : (float, float)
        In millimetres from the pattern's lower left corner.
    tile : Tile
        The part that the sheet shows.
    tiling : Tiling
        Where it belongs.

    >>> tiling = Tiling(210.0, 297.0, 300.0, 100.0, (150.0,), ())
    >>> on_sheet((144.0, 0.0), tiling.tiles[1], tiling)
    (40.0, 102.0)
    """
    middle = middle_of_the_room(tiling.sheet_width, tiling.sheet_height)
    return (place[0] - tile.middle[0] + middle[0], place[1] - tile.middle[1] + middle[1])


def pattern_sheets(pattern: Pattern, millimetres_per_unit: float, paper: str, name: str) -> PatternOnPaper:
    """Put a pattern on as few sheets as it needs at true size.

    Parameters
    ----------
    pattern : Pattern
        What is to be printed.
    millimetres_per_unit : float
        One length unit of its drawing in millimetres, > 0: 25.4 for inches.
    paper : {"a4", "letter"}
        Upright, or on its side where that takes fewer sheets.
    name : str
        Of the piece.

    Returns
    -------
    PatternOnPaper
        Every sheet with bars to check the print by.

    Raises
    ------
    UnknownName
        If there is no such paper.
    ImpossibleShape
        If it is so large that nobody would join the sheets.

    >>> from woodmath.drawing import Drawing, Line
    >>> line = Drawing("a line", Frame(96, 48, 0, 0, 10), (Line(((0, 0), (20, 1))),), "Long.")
    >>> len(pattern_sheets(Pattern("Line", line), 25.4, "a4", "A bed").sheets)
    3
    """
    scale = millimetres_per_unit * UNITS_IN_A_MILLIMETRE
    painted = marks(reframed(pattern.drawing, Frame(1.0, 0.0, 0.0, 0.0, scale)))
    boxes = [extent((mark,)) for mark in painted]
    left, top, right, bottom = (each / UNITS_IN_A_MILLIMETRE for each in extent(painted))
    size = paper_size(paper)
    rooms = (room_beside_the_bars(*size), room_beside_the_bars(size[1], size[0]))
    tiling = tiling_of(right - left, bottom - top, size, *rooms)
    if len(tiling.tiles) > 1:
        # A strip narrower than this has no room for two marks side by side.
        wider, higher = (max(0.0, _LEAST_STRIP - each) / 2 for each in (right - left, bottom - top))
        left, right, top, bottom = left - wider, right + wider, top - higher, bottom + higher
        taken = tuple(_taken(zip(painted, boxes, strict=True), left, bottom))
        tiling = tiling_of(right - left, bottom - top, size, *rooms, taken)
    upper_left = (left * UNITS_IN_A_MILLIMETRE, top * UNITS_IN_A_MILLIMETRE)
    seen = [_seen_whole(mark, box, upper_left, tiling) for mark, box in zip(painted, boxes, strict=True)]
    tiling = replace(tiling, taken=tuple(_taken(seen, left, bottom)))
    sheets = tuple(
        _sheet(_title(name, pattern.name, tiling.sheet_width), place, tiling, seen, upper_left)
        for place in range(len(tiling.tiles))
    )
    return PatternOnPaper(pattern, tiling, sheets, (left, -bottom), millimetres_per_unit)


def _title(name: str, pattern: str, width: float) -> str:
    """Return the title of a sheet in one line; what has no room is taken from the name of the piece."""
    room = (width - _BESIDE_TITLE) * UNITS_IN_A_MILLIMETRE
    called = shortened(set_fractions(pattern), _TITLE_SIZE, room / 2, bold=True)
    left = room - text_width(f": {called}", _TITLE_SIZE, True)
    return f"{shortened(set_fractions(name), _TITLE_SIZE, left, bold=True)}: {called}"


_Seen = tuple[Mark, Box]


def _seen_whole(
    mark: Mark, box: tuple[float, float, float, float], upper_left: Point, tiling: Tiling
) -> _Seen:
    """Return a mark and its box; words that a joint would run through are moved onto the nearest sheet."""
    if not isinstance(mark, Words):
        return mark, box
    ways = [_way_into(box, _between_joints(tile, tiling, upper_left)) for tile in tiling.tiles]
    right, down = min(ways, key=lambda way: abs(way[0]) + abs(way[1]))
    words = replace(mark, where=(mark.where[0] + right, mark.where[1] + down))
    return words, words.box


def _taken(seen: Iterable[_Seen], left: float, bottom: float) -> Iterator[Taken]:
    """Yield where words and lines are, in millimetres from the pattern's lower left corner; grain does not count."""
    for mark, box in seen:
        boxes = [box]
        if isinstance(mark, Stroke):
            ends = [*mark.lines, *((line[-1], line[0]) for line in mark.lines if mark.closed)]
            drawn = mark.pen is not None and not mark.clip
            boxes = [piece for line in ends for piece in _pieces(line)] if drawn else []
        for each in boxes:
            low_x, high_y, high_x, low_y = (side / UNITS_IN_A_MILLIMETRE for side in each)
            yield Taken(
                (low_x - left, bottom - low_y, high_x - left, bottom - high_y),
                _WORDS_WEIGH if isinstance(mark, Words) else 1,
            )


def _pieces(line: Points) -> Iterator[Box]:
    """Yield the boxes of a line cut into pieces so short that their boxes are hardly larger than they."""
    for (x, y), (u, v) in itertools.pairwise(line):
        count = math.ceil(max(math.dist((x, y), (u, v)) / _PIECE, 1.0))
        places = [(x + (u - x) * step / count, y + (v - y) * step / count) for step in range(count + 1)]
        for (a, b), (c, d) in itertools.pairwise(places):
            yield (min(a, c), min(b, d), max(a, c), max(b, d))


def _way_into(box: tuple[float, ...], window: tuple[float, ...]) -> Point:
    """Return the shortest way that brings a box into a window, right and down."""
    right, down = (
        max(window[side] - box[side], 0.0) + min(window[side + 2] - box[side + 2], 0.0) for side in (0, 1)
    )
    return right, down


def _window(tile: Tile, tiling: Tiling, upper_left: Point) -> tuple[float, float, float, float]:
    """Return the window of a sheet, in the picture units of the whole pattern."""
    left, right = (upper_left[0] + each * UNITS_IN_A_MILLIMETRE for each in (tile.left, tile.right))
    top, bottom = (
        upper_left[1] + (tiling.height - each) * UNITS_IN_A_MILLIMETRE for each in (tile.top, tile.bottom)
    )
    return (left, top, right, bottom)


def _between_joints(tile: Tile, tiling: Tiling, upper_left: Point) -> tuple[float, float, float, float]:
    """Return what is left of a window when its sheet is cut along the joints, with a little air."""
    left, top, right, bottom = _window(tile, tiling, upper_left)
    cut = (OVERLAP / 2 + _AIR) * UNITS_IN_A_MILLIMETRE
    return (
        left + cut * (tile.column > 1),
        top + cut * (tile.row > 1),
        right - cut * (tile.column < tiling.columns),
        bottom - cut * (tile.row < tiling.rows),
    )


def _sheet(title: str, number: int, tiling: Tiling, seen: list[_Seen], upper_left: Point) -> PaperSheet:
    tile = tiling.tiles[number]
    window, inner = _window(tile, tiling, upper_left), _between_joints(tile, tiling, upper_left)
    x, y = on_sheet((tile.left, tile.top), tile, tiling)
    corner = _picture_units((x, y), tiling)
    moved = (corner[0] - window[0], corner[1] - window[1])
    lines = tuple(mark for mark, box in seen if not isinstance(mark, Words) and _meets(box, window))
    words = tuple(mark for mark, box in seen if isinstance(mark, Words) and _within(box, inner))
    on_page = tuple(each + moved[side % 2] for side, each in enumerate(window))
    several = len(tiling.tiles) > 1
    place = (
        f"sheet {number + 1} of {len(tiling.tiles)}, column {tile.column}, row {tile.row}. {_HOW_TO_JOIN}"
        if several
        else ""
    )
    furniture = bars_and_title(
        title, tiling.sheet_width, tiling.sheet_height, "", place, _PLAN_WIDE + 3.0 if several else 0.0
    )
    plan = tuple(_key_plan(tile, tiling)) if several else ()
    layers = (
        Layer(lines, on_page, moved),
        Layer(words, (), moved),
        Layer(tuple(_joints(tile, tiling))),
        Layer((*marks(furniture), *plan)),
    )
    return PaperSheet(title, tiling.sheet_width, tiling.sheet_height, layers)


def _meets(box: tuple[float, ...], window: tuple[float, ...]) -> bool:
    return box[0] <= window[2] and box[2] >= window[0] and box[1] <= window[3] and box[3] >= window[1]


def _within(box: tuple[float, ...], window: tuple[float, ...]) -> bool:
    noise = 1e-6
    return all(box[side] >= window[side] - noise for side in (0, 1)) and all(
        box[side] <= window[side] + noise for side in (2, 3)
    )


def _picture_units(place: Point, tiling: Tiling) -> Point:
    """Return a place in millimetres from the lower left corner in picture units from the upper left one."""
    return (place[0] * UNITS_IN_A_MILLIMETRE, (tiling.sheet_height - place[1]) * UNITS_IN_A_MILLIMETRE)


def _joints(tile: Tile, tiling: Tiling) -> Iterator[Mark]:
    """Yield the dotted lines along which sheets are trimmed, and the crosses that come over one another."""
    half, right, top = OVERLAP / 2, tile.right, tile.top
    joints: list[tuple[Points, Point]] = []
    for there, x, way in (
        (tile.column > 1, tile.left + half, -1.0),
        (tile.column < tiling.columns, right - half, 1.0),
    ):
        joints += [(((x, tile.bottom), (x, top)), (way, 0.0))] if there else []
    for there, y, way in (
        (tile.row > 1, top - half, 1.0),
        (tile.row < tiling.rows, tile.bottom + half, -1.0),
    ):
        joints += [(((tile.left, y), (right, y)), (0.0, way))] if there else []
    for joint, outward in joints:
        line = tuple(_picture_units(on_sheet(point, tile, tiling), tiling) for point in joint)
        yield Stroke((line,), _JOINT_PEN)
        yield _trim(joint, outward, tile, tiling)
    for mark in tiling.marks_on(tile):
        x, y = _picture_units(on_sheet(mark.place, tile, tiling), tiling)
        arm, ring = _ARM * UNITS_IN_A_MILLIMETRE, _RING * UNITS_IN_A_MILLIMETRE
        yield Stroke((((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))), _MARK_PEN)
        yield Disc((x, y), ring, _MARK_PEN)
        yield Words(str(mark.number), (x + 0.75 * ring, y - 0.85 * ring), _MARK_SIZE, "accent", "start", True)


def _trim(joint: Points, outward: Point, tile: Tile, tiling: Tiling) -> Words:
    """Return the name of a trim line, on the strip that falls off, where it meets least; of several the middle."""
    wide = text_width(_TRIM, _TRIM_SIZE, True) / UNITS_IN_A_MILLIMETRE
    high = _TRIM_SIZE / UNITS_IN_A_MILLIMETRE
    off = (wide / 2 + _AIR / 2, high / 2 + _AIR / 2)
    met = [
        *tiling.taken,
        *(
            Taken((x - MARK, y - MARK, x + MARK, y + MARK), 100)
            for x, y in (mark.place for mark in tiling.marks_on(tile))
        ),
    ]
    (x, y), (u, v) = joint
    # Clear of the corners, where another strip falls off.
    places = [(x + (u - x) * part / 60, y + (v - y) * part / 60) for part in range(8, 53)]
    boxes = [
        (a - wide / 2, b - high / 2, a + wide / 2, b + high / 2)
        for a, b in ((a + outward[0] * off[0], b + outward[1] * off[1]) for a, b in places)
    ]
    lefts, lows, rights, tops = zip(*boxes, strict=True)
    strip = (min(lefts), min(lows), max(rights), max(tops))
    met = [each for each in met if _meets(each.box, strip)]
    left, low, right, _ = min(
        boxes,
        key=lambda box: (
            sum(each.weight for each in met if _meets(each.box, box)),
            math.dist(box[:2], boxes[len(boxes) // 2][:2]),
        ),
    )
    where = _picture_units(on_sheet(((left + right) / 2, low + high / 4), tile, tiling), tiling)
    return Words(_TRIM, where, _TRIM_SIZE, "accent", "middle", True)


def _key_plan(tile: Tile, tiling: Tiling) -> Iterator[Mark]:
    """Yield the small plan of all sheets at the lower right corner, this one filled."""
    cell_wide = min(_PLAN_CELL * tiling.sheet_width / tiling.sheet_height, _PLAN_WIDE / tiling.columns)
    cell_high = min(_PLAN_CELL, _PLAN_HIGH / tiling.rows)
    left, top = tiling.sheet_width - _EDGE - cell_wide * tiling.columns, _EDGE + cell_high * tiling.rows
    for each in sorted(tiling.tiles, key=lambda other: other == tile):
        x, y = left + (each.column - 1) * cell_wide, top - each.row * cell_high
        outline = tuple(
            _picture_units(point, tiling) for point in rectangle(x, y, x + cell_wide, y + cell_high)
        )
        yield Stroke((outline,), Pen("quiet", 0.8), True, "measure" if each == tile else "paper")
