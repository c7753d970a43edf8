"""The card that says how a piece rocks: how firmly it stands, how long it swings, how far it may go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.board_measure import metre_in
from woodmath.card import Card
from woodmath.case import Case
from woodmath.errors import ImpossibleShape
from woodmath.finding import size
from woodmath.mass import floor_level
from woodmath.numbers_as_written import number_shown
from woodmath.rocking import GRAVITY, RockingBody
from woodmath.weights_card import weights_card

if TYPE_CHECKING:
    from woodmath.piece import Piece

_SWING = 10.0
"""Degrees: so far it is let go for the great swing, where it may."""
_ASKEW = 0.05
"""Degrees: less is written as none."""
_NOT_AT_ALL = "it goes over"
_STAYS = "stays where it is left"
_LEANS_ALREADY = "leans already"
_NOT_SO_FAR = "rolls less far"


def weight_cards(piece: Piece) -> tuple[Card, ...]:
    """Return the cards on weight and rocking that a piece can have.

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    tuple of Card
        None where it names no timber or makes no case; that on rocking only where it has rockers.

    >>> from woodmath.piece import Piece
    >>> [card.title for card in weight_cards(Piece.demo("log-box"))]
    ['What it weighs']
    """
    if piece.timber is None or piece.end is None or piece.side is None:
        return ()
    try:
        return (weights_card(piece), *((rocking_card(piece),) if piece.rocker else ()))
    except ImpossibleShape:
        # The remarks on the piece say what cannot be.
        return ()


def rocking_card(piece: Piece) -> Card:
    """Return the card that says how a piece rocks, empty and with what lies in it.

    Parameters
    ----------
    piece : Piece
        With rockers, both pairs of panels and its timber.

    Returns
    -------
    Card
        Lengths as the rule reads them; the rest in seconds, degrees, joules and newtons.

    Raises
    ------
    ImpossibleShape
        If it has no rockers, names no timber, or makes no case.

    Source: `woodmath.rocking`.

    >>> from woodmath.piece import Piece
    >>> rocking_card(Piece.demo("cat-bed")).rows[3]
    ('a small swing, there and back', '0.78 s', '0.83 s')
    """
    bodies = [piece.rocking_body()]
    columns = ["empty"]
    if piece.load:
        bodies.append(piece.rocking_body(load=True))
        columns.append("with its load")
    told = [_column(piece, body) for body in bodies]
    rim = size(piece.rule, piece.rule.nearest(_rim(piece)))
    names = (
        "centre of gravity over the floor",
        "radius of the circle as round as the bottom",
        "so much higher the weight may lie and it still stands",
        "a small swing, there and back",
        f"let go at {_SWING:g}°, there and back",
        "comes to rest",
        "rolling limit: rolls back from",
        "goes over at",
        "barrier: work to bring it over",
        f"push at the rim, {rim} up, to bring it over",
        "grip of the floor for that push",
        f"grip of the floor for a swing of {_SWING:g}°",
    )
    return Card(
        "How it rocks",
        "By its weight and its rockers, without slip on a hard level floor. Lengths in "
        f"{'inches' if piece.rule.unit == 'inch' else 'millimetres'}.",
        ("what", *columns),
        tuple((name, *(column[number] for column in told)) for number, name in enumerate(names)),
        notes=(
            "A carpet shortens the swinging and changes its time; on a sloping floor it leans further than the "
            "floor, and tips sooner to that side. Keep fingers and paws from under the rockers. Who climbs in or "
            "stands on the rim is not in these numbers: they compare one rocker with another, and promise nothing.",
            "Where the floor gives less grip than a push needs, the piece slides before it goes over. Ten newtons (N) "
            "are about the weight of a kilogram; a joule (J) lifts that by a tenth of a metre.",
        ),
        numeric=tuple(range(1, 1 + len(columns))),
    )


def _rim(piece: Piece) -> float:
    """Return how high the rim of the case stands over the floor, in the piece's unit."""
    case = Case.of(piece)
    return case.at(case.panel[1])[1] - floor_level(piece)


def _column(piece: Piece, body: RockingBody) -> tuple[str, ...]:
    metre, rule = metre_in(piece.rule.unit), piece.rule

    def length(metres: float) -> str:
        return size(rule, rule.nearest(metres * metre))

    stands = (length(body.centre_height), length(body.ellipse.radius_at_bottom))
    if not body.is_stable:
        return (*stands, _STAYS if body.is_indifferent else _NOT_AT_ALL, *("" for _ in range(9)))
    far = body.rolling_limit > _SWING
    push = body.push(_rim(piece) / metre)
    return (
        *stands,
        length(body.stiffness_margin) if body.centre_offset == 0 else _LEANS_ALREADY,
        f"{body.period():.2f} s",
        f"{body.period(_SWING):.2f} s" if far else _NOT_SO_FAR,
        f"{number_shown(abs(body.rest_tilt), 1)}° askew" if abs(body.rest_tilt) >= _ASKEW else "upright",
        f"{number_shown(body.rolling_limit, 1)}°",
        f"{number_shown(body.tip_angle, 1)}°",
        f"{number_shown(body.barrier, 1)} J",
        f"{push:.0f} N",
        f"{push / (body.mass * GRAVITY):.2f}",
        number_shown(body.friction_needed(_SWING), 2) if far else _NOT_SO_FAR,
    )
