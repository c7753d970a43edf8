"""The card that says what a year does to a piece: each size across the grain today, at its driest and its dampest."""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.card import Card
from woodmath.errors import WoodmathError
from woodmath.finding import in_decimals, size
from woodmath.piece_seasons import MovingSize, PieceSeasons
from woodmath.timber import in_a_sentence

if TYPE_CHECKING:
    from woodmath.piece import Piece


def season_cards(piece: Piece) -> tuple[Card, ...]:
    """Return the card of the year, or nothing where the file or our tables do not say enough.

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    tuple of Card
        One or none; the findings say why there is none.

    Source: `woodmath.piece_seasons`.

    >>> from woodmath.piece import Piece
    >>> season_cards(Piece.demo("log-box"))
    ()
    """
    timber = piece.timber
    if timber is None or timber.year is None:
        return ()
    try:
        year = PieceSeasons.of(piece)
    except WoodmathError:
        # No case, or no figure for this timber: both are findings.
        return ()
    low, high = timber.year
    today, driest, dampest = year.splays
    leans = (
        (
            f"The panels keep their widths and change their height, so the splay goes from {driest:.2f}° at the "
            f"driest to {dampest:.2f}° at the dampest ({today:.2f}° today): strike the bevel from the panel as it "
            "is on the day.",
        )
        if abs(today) > 0
        else ()
    )
    return (
        Card(
            "The year in the wood",
            f"In {in_a_sentence(timber.species)}, {timber.cut}-sawn: {timber.moisture_now:g} percent of moisture "
            f"today, {low:g} at the driest and {high:g} at the dampest. Only what lies across the grain is here; "
            f"lengths along it stay. Lengths in {'inches' if piece.rule.unit == 'inch' else 'millimetres'}.",
            ("part", "size across the grain", "today", "less when driest", "more when dampest"),
            tuple(_row(piece, moving) for moving in year.sizes),
            notes=(
                *leans,
                "By average figures: a board of the same timber may move a fifth more or less, and a thick or "
                "varnished one follows the air slowly. Posts and rockers are reckoned as if sawn like the panels.",
            ),
            numeric=(2, 3, 4),
        ),
    )


def _row(piece: Piece, moving: MovingSize) -> tuple[str, ...]:
    return (
        moving.part,
        moving.size,
        size(piece.rule, moving.now),
        in_decimals(piece.rule, moving.shrinks),
        in_decimals(piece.rule, moving.grows),
    )
