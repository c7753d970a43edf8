"""The pattern of a turned top: as it is seen, as a card template, and its diameters as bars to set the calipers on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.drawing import Drawing, Frame, Hatch, Label, Line, Points, Shape, Wood, rectangle, spread
from woodmath.errors import ImpossibleShape
from woodmath.pattern import KnownLength, Pattern
from woodmath.true_frame import true_frame
from woodmath.turned_profile import CaliperSetting, TurnedProfile
from woodmath.turning_card import allowance, finer

if TYPE_CHECKING:
    from woodmath.piece import Piece

_ROW, _WORD = 17.0, 13.0
_STUB, _BESIDE, _TICK, _BAR_ROW, _CARD = "12 mm", "46 mm", "5 mm", "9 mm", "22 mm"
"""Of square post below the turning; from the turning to the template; a line drawn on; row of a bar; card left."""
_PIECES = 24


def turned_pattern(piece: Piece, case: Case) -> Pattern:
    """Draw the turned top of a post in its true shape, its template beside it, and its caliper settings as bars.

    Parameters
    ----------
    piece : Piece
        Whose posts are turned.
    case : Case
        Of that piece.

    Returns
    -------
    Pattern
        In the piece's unit: the axis at 0, the end of the square at height 0.

    Raises
    ------
    ImpossibleShape
        If nothing is turned, or the stations make no turning.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("cat-bed")
    >>> turned_pattern(piece, Case.of(piece)).name
    'Turned top, profile and template'
    """
    if piece.post.turned is None:
        raise ImpossibleShape(
            f"The posts of {piece.name} are not turned. Add [post.turned] with its stations to the file."
        )
    laid = _Laid(piece, case, piece.post.turned.profile())
    mark, start = piece.rule.mark, piece.post.turned.profile().start
    drawing = Drawing(
        "A turned top in its true shape, its template, and bars to set the calipers on",
        laid.frame,
        (*laid.turning(), *laid.template(), *laid.bars()),
        f"The turned top: {mark(laid.profile.length, unit=True)} from the end of the square to the top of the post.",
        told=f"The square ends {mark(start, unit=True)} above the panels' upper edge. Paste the template on stiff card "
        "and cut the striped side away. Each bar below is a diameter with what is left on for the finishing cut: set "
        "the calipers on its two ends.",
    )
    return Pattern("Turned top, profile and template", drawing, tuple(laid.known()))


class _Laid:
    """Where everything lies on the sheet: the turning at the left, its template beside it, the bars below."""

    def __init__(self, piece: Piece, case: Case, profile: TurnedProfile) -> None:
        self.rule = piece.rule
        self.half = case.square / 2
        self.profile = profile.moved(-profile.start)
        self.settings = self.profile.caliper_settings(allowance(piece.rule))
        self.stub, self.beside, self.tick, self.row, self.card = (
            piece.rule.read(each) for each in (_STUB, _BESIDE, _TICK, _BAR_ROW, _CARD)
        )
        self.widest = max(self.half, self.profile.largest / 2)
        self.axis = self.widest + self.beside
        self.right = self.axis + self.widest + self.card
        self.columns = 2
        rows = -(-len(self.settings) // self.columns)
        self.below = -self.stub - 2 * self.row - rows * self.row
        whole = ((-self.widest, self.below), (self.right, self.profile.length))
        self.frame: Frame = true_frame(whole, piece.rule, (64.0, 90.0, 30.0, 30.0))

    def edge(self, side: float, from_axis: float = 0.0) -> Points:
        """Return one edge of the profile, upright, so far from its axis to the right (1) or the left (-1)."""
        return tuple((from_axis + side * radius, along) for along, radius in self.profile.outline(_PIECES))

    def turning(self) -> list[Shape]:
        """Draw the turning on its stub of square post, a line round it at every station, and what each measures."""
        unit, half, length = self.frame.length(1.0), self.half, self.profile.length
        right = self.edge(1.0)
        shapes: list[Shape] = [
            Wood(rectangle(-half, -self.stub, half, 0.0), "pattern", "long", 90.0, line="edge"),
            Wood((*right, *reversed(self.edge(-1.0))), "pattern", "long", 90.0, line="edge"),
            Line(((0.0, -self.stub - 12 * unit), (0.0, length + 14 * unit)), "centre"),
            Label("the turning", (0.0, length + 44 * unit), side="middle", bold=True, size=_WORD),
            Label("square of the post", (0.0, -self.stub / 2), side="middle", role="quiet", size=_WORD),
        ]
        column = self.widest + 22 * unit
        rows = spread([each.place / unit for each in self.settings], _ROW, -1e6, 1e6)
        for each, row in zip(self.settings, rows, strict=True):
            level, radius = row * unit, each.diameter / 2
            shapes += [
                Line(((-radius, each.place), (radius, each.place)), "thin"),
                Line(((radius, each.place), (column, level), (column + 5 * unit, level)), "quiet"),
                Label(
                    f"{each.number}:  {self.rule.mark(each.diameter)}",
                    (column + 9 * unit, level),
                    bold=True,
                    size=_WORD,
                ),
                Label(f"at {self.rule.mark(each.place)}", (column + 84 * unit, level), size=_WORD),
            ]
        return shapes

    def template(self) -> list[Shape]:
        """Draw the card: what stays of it lies outside the profile, and what is cut away is struck with lines."""
        unit, length, axis = self.frame.length(1.0), self.profile.length, self.axis
        edge = self.edge(1.0, axis)
        low, high = -self.stub, length + self.tick
        inner: Points = (
            (axis + self.half, low),
            (axis + self.half, 0.0),
            *edge,
            (axis, length),
            (axis, high),
        )
        card: Points = (*inner, (self.right, high), (self.right, low))
        return [
            Hatch(((axis, low), *inner[:-1]), "waste"),
            Line(card, "edge", True, "paper"),
            Line(inner, "accent"),
            Line(((axis, low - 12 * unit), (axis, high)), "centre"),
            *(
                Line(((self.right - self.tick, each.place), (self.right, each.place)), "edge")
                for each in self.settings
            ),
            Label(
                "template of card",
                ((axis + self.right) / 2, length + 44 * unit),
                side="middle",
                bold=True,
                size=_WORD,
            ),
        ]

    def bars(self) -> list[Shape]:
        """Draw every caliper setting as a bar with upright ends, two columns of them below the turning."""
        unit = self.frame.length(1.0)
        shapes: list[Shape] = [
            Label(
                "calipers: the diameter, and what is left on for the finishing cut",
                (-self.widest, -self.stub - 1.1 * self.row),
                role="quiet",
                size=_WORD,
            )
        ]
        for each in self.settings:
            left, right, level = self.bar(each)
            half = 0.38 * self.row
            shapes += [
                Line(((left, level), (right, level)), "thin"),
                *(Line(((x, level - half), (x, level + half)), "edge") for x in (left, right)),
                Label(
                    f"{each.number}:  {finer(self.rule, each.setting)}",
                    (right + 12 * unit, level),
                    bold=True,
                    size=_WORD,
                ),
            ]
        return shapes

    def bar(self, each: CaliperSetting) -> tuple[float, float, float]:
        """Return where a station's bar begins and ends, and its level."""
        rows = -(-len(self.settings) // self.columns)
        column, row = divmod(each.number - 1, rows)
        left = -self.widest + column * (2 * self.widest + self.beside)
        return left, left + each.setting, -self.stub - (row + 2.1) * self.row

    def known(self) -> list[KnownLength]:
        """Return what can be measured on the sheet: every bar, and the stations along the template's outer edge."""
        found: list[KnownLength] = []
        for each in self.settings:
            left, right, level = self.bar(each)
            found.append(KnownLength(f"calipers at station {each.number}", (left, level), (right, level)))
        x = self.right - 0.2 * self.tick
        apart = [each for each in self.settings if each.place > 0]
        found += [
            KnownLength(f"from the square to station {each.number}", (x, 0.0), (x, each.place))
            for each in apart
        ]
        found.append(KnownLength("the square", (-self.half, -0.4 * self.stub), (self.half, -0.4 * self.stub)))
        return found
