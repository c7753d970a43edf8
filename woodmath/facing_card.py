"""The card that is read before a board is sawn: which board for which part, and which face goes where."""

from __future__ import annotations

from woodmath.card import Card
from woodmath.facing import CHOICES


def facing_card() -> Card:
    """Return the card of choosing and facing.

    Returns
    -------
    Card
        The same for every piece.

    Source: beside each choice of `woodmath.facing`.

    >>> facing_card().columns
    ('part', 'choose', 'because')
    """
    return Card(
        "Choosing and facing the boards",
        "Before anything is sawn, with the boards leaning side by side and their ends to the light.",
        ("part", "choose", "because"),
        tuple((choice.part, choice.choose, choice.reason) for choice in CHOICES),
    )
