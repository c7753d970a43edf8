"""The card that says what the parts of a piece weigh, and how high it balances."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from woodmath.card import Card
from woodmath.finding import size
from woodmath.mass import MassOf, heaped, loads, mass_of_parts, whole
from woodmath.timber import in_a_sentence
from woodmath.weighing import mass_shown

if TYPE_CHECKING:
    from woodmath.piece import Piece


def weights_card(piece: Piece) -> Card:
    """Return the card that says what every kind of part weighs, and how high the whole balances.

    Parameters
    ----------
    piece : Piece
        With both pairs of panels and its timber.

    Returns
    -------
    Card
        Lengths as the rule reads them; with what lies in the piece where its file says so.

    Raises
    ------
    ImpossibleShape
        If it names no timber, or makes no case.

    Source: `woodmath.mass`.

    >>> from woodmath.piece import Piece
    >>> weights_card(Piece.demo("cat-bed")).rows[0]
    ('post', '4', '2.5 lb', '9 7/8')
    """
    kinds: dict[str, list[MassOf]] = {}
    for part in mass_of_parts(piece):
        kinds.setdefault(part.name, []).append(part)
    rows = [_row(piece, heaped(name, parts), str(len(parts))) for name, parts in kinds.items()]
    rows.append(_row(piece, replace(whole(piece), name="the whole piece, empty"), ""))
    if piece.load:
        rows += [_row(piece, load, "1") for load in loads(piece)]
        rows.append(_row(piece, replace(whole(piece, load=True), name="with its load"), ""))
    species = piece.timber.species if piece.timber else ""
    return Card(
        "What it weighs",
        f"In {in_a_sentence(species)}, as it lies in the shop. The height is that of the centre of gravity over the "
        "floor, while the piece stands at rest; lengths in "
        f"{'inches' if piece.rule.unit == 'inch' else 'millimetres'}.",
        ("part", "number", "weight of all", "height of its centre"),
        tuple(rows),
        notes=(
            "By an average density: one board of the same timber may be a tenth lighter or heavier than another. "
            "Beads are not taken off, and glue and finish are not in it.",
        ),
        numeric=(1, 2, 3),
    )


def _row(piece: Piece, thing: MassOf, count: str) -> tuple[str, str, str, str]:
    mark = size(piece.rule, piece.rule.nearest(thing.centre_height))
    return (thing.name, count, mass_shown(thing.kilograms, piece.rule), mark)
