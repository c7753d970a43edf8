"""What scaling did to a piece: which lengths grew, which stayed, and what became of the inside and the mass.

The boards keep their thickness while the piece grows, so neither the inside nor the mass is what a true model's
would be: the last column of the second table says what that would have been.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from woodmath.board_measure import mass
from woodmath.card import Card
from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.finding import size
from woodmath.fractions_in_print import set_fractions
from woodmath.numbers_as_written import number_shown
from woodmath.parts import parts_of
from woodmath.piece_origin import Inherited, Origin
from woodmath.rule import Rule
from woodmath.scaling import mass_ratio, scale_for, scaled, slenderness
from woodmath.weighing import mass_shown

if TYPE_CHECKING:
    from woodmath.piece import Piece

_HOW = {
    "scaled": "scaled",
    "kept": "stock, kept",
    "given": "given anew",
}
_ALL = ("length", "width", "thickness")


@dataclass(frozen=True)
class Effect:
    """One thing that scaling changed otherwise than a true model would.

    Parameters
    ----------
    what : str
        What is compared.
    drawn, became : float
        In the drawing and in the piece, in the piece's unit, kilograms or plain numbers.
    in_words : (str, str)
        Both as they are read at the bench.
    model : float
        How many times as much it would be if every length were scaled.
    """

    what: str
    drawn: float
    became: float
    in_words: tuple[str, str]
    model: float

    @property
    def times(self) -> float:
        """How many times as much it is now."""
        return scale_for(known=self.drawn, wanted=self.became)


@dataclass(frozen=True)
class ScalingTable:
    """What scaling did to a piece; shows itself on a page as two tables.

    Parameters
    ----------
    name : str
        The piece's.
    origin : Origin
        Where it comes from.
    rule : Rule
        Of the piece.
    effects : tuple of Effect
        Inside, mass and proportions, as far as the two files tell enough for them.
    """

    name: str
    origin: Origin
    rule: Rule
    effects: tuple[Effect, ...]

    @property
    def cards(self) -> tuple[Card, Card]:
        """The two tables as they are printed."""
        return (
            Card(
                "What scaled and what stayed",
                f"“{self.origin.source.name}” at {self.origin.scale} of its size has become “{self.name}”. Lengths "
                f"in {'inches' if self.rule.unit == 'inch' else 'millimetres'}.",
                ("length", "in the drawing", "here", "why"),
                tuple(self._row(row) for row in self.origin.rows),
                numeric=(1, 2),
            ),
            Card(
                "What that does to the piece",
                "Stock stays while the piece grows, so nothing grows as a true model would.",
                ("what", "in the drawing", "here", "times", "a true model"),
                tuple(
                    (
                        effect.what,
                        *effect.in_words,
                        number_shown(effect.times, 3),
                        number_shown(effect.model, 3),
                    )
                    for effect in self.effects
                ),
                notes=(
                    "Beads are not taken off in the mass, and glue and finish are not in it."
                    if any(effect.what.startswith("mass") for effect in self.effects)
                    else "The mass is told when both files name their timber.",
                ),
                numeric=(1, 2, 3, 4),
            ),
        )

    def _row(self, row: Inherited) -> tuple[str, str, str, str]:
        before, after = (
            "–" if length is None else size(self.rule, length) for length in (row.before, row.after)
        )
        return (row.key, before, after, _HOW[row.how])

    def _repr_markdown_(self) -> str:
        return "\n\n".join(_in_markdown(card) for card in self.cards)


def scaling_table(piece: Piece) -> ScalingTable:
    """Tell what scaling did to a piece.

    Parameters
    ----------
    piece : Piece
        One whose file says `scaled_from`.

    Returns
    -------
    ScalingTable
        Every length with what became of it, and the inside, the mass and the proportions.

    Raises
    ------
    ImpossibleShape
        If the piece is not scaled from another, or one of the two makes no case.

    Source: `woodmath.scaling`; the inside and the parts of `woodmath.case` and `woodmath.parts`.

    >>> from woodmath.piece import Piece
    >>> [effect.what for effect in scaling_table(Piece.demo("hound-bed")).effects][:2]
    ['inside, length', 'inside, width at the upper edge']
    """
    if piece.origin is None:
        raise ImpossibleShape(
            f"{piece.name} is not scaled from another piece. Begin its file with scaled_from and scale, or open "
            'Piece.demo("hound-bed").'
        )
    return ScalingTable(piece.name, piece.origin, piece.rule, tuple(_effects(piece, piece.origin)))


def _effects(piece: Piece, origin: Origin) -> Iterator[Effect]:
    source, scale, rule = origin.source, float(origin.scale), piece.rule

    def here(length: float) -> float:
        return source.rule.convert(length, to=rule)

    for (what, drawn), (_, became) in zip(_inside(source), _inside(piece), strict=True):
        written = (size(rule, here(drawn)), size(rule, became))
        yield Effect(f"inside, {what}", here(drawn), became, written, scaled(1.0, scale))
    drawn, became = (here(1.0) ** 3 * _volume(source), _volume(piece))
    yield Effect(
        "wood in it", drawn, became, (_volume_shown(drawn, rule), _volume_shown(became, rule)), _cube(scale)
    )
    if source.timber and piece.timber:
        drawn, became = mass_of(source), mass_of(piece)
        shown = (mass_shown(drawn, rule), mass_shown(became, rule))
        yield Effect("mass", drawn, became, shown, _cube(scale))
    if source.side and piece.side:
        drawn, became = (slenderness(each.length, each.thickness) for each in (source.side, piece.side))
        times = (f"{drawn:.1f} times", f"{became:.1f} times")
        yield Effect("side's length over its thickness", drawn, became, times, 1.0)


def _cube(scale: float) -> float:
    return mass_ratio(scale, _ALL)


def _inside(piece: Piece) -> Iterator[tuple[str, float]]:
    """Yield the inside between the panels' inner faces, in the piece's unit."""
    case = Case.of(piece)
    yield "length", 2 * case.inside_of_end
    for where, along in (("upper", case.panel[1]), ("lower", case.panel[0])):
        _, height = case.at(along)
        yield f"width at the {where} edge", 2 * case.along_a_level(height, case.inside_of_side)


def _volume(piece: Piece) -> float:
    return math.fsum(part.count * part.volume for part in parts_of(piece))


def mass_of(piece: Piece) -> float:
    """Mass of all the wood of a piece.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.

    Returns
    -------
    float
        In kilograms.

    Raises
    ------
    ImpossibleShape
        If it has no timber, or makes no case.

    Source: `woodmath.board_measure.mass_derivation`.

    >>> from woodmath.piece import Piece
    >>> round(mass_of(Piece.demo("cat-bed")), 1)
    7.4
    """
    if piece.timber is None:
        raise ImpossibleShape(
            f"{piece.name} does not say what it is made of. Add [timber] with its species to the file."
        )
    return mass(_volume(piece), piece.timber.kilograms_per_cubic_metre, unit=piece.rule.unit)


def _volume_shown(volume: float, rule: Rule) -> str:
    if rule.unit == "inch":
        return f"{number_shown(volume, 0)} in³"
    return f"{number_shown(volume / 1e6, 2)} dm³"


def _in_markdown(card: Card) -> str:
    """Return a card as a table of a page, whatever signs a name in it may hold."""
    marks = ["---:" if column in card.numeric else ":---" for column in range(len(card.columns))]
    rows = [card.columns, marks, *card.rows]
    lines = [f"| {' | '.join(_harmless(str(cell)) for cell in row)} |" for row in rows]
    return "\n\n".join(
        (
            f"**{_harmless(card.title)}.** {_harmless(card.lead)}",
            "\n".join(lines),
            *map(_harmless, card.notes),
        )
    )


def _harmless(text: str) -> str:
    plain = set_fractions(escape(text, quote=False))
    return "".join(f"&#{ord(sign)};" if sign in "|*_`$[]\\~" else sign for sign in plain)
