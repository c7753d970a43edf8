"""The card at the lathe: every station with its calipers, counted from the square, and the cautions."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from woodmath.card import Card
from woodmath.errors import ImpossibleShape
from woodmath.turned_profile import HOLLOW, ROUND, Station, TurnedProfile
from woodmath.turning import octagon_setting

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.rule import Rule

LEFT_ON = ("1/32", "1")
"""Left on the diameter for the finishing cut, in inches or in millimetres (common practice)."""

LATHE_CAUTIONS = (
    "Wear a face shield over safety glasses, and a dust mask as soon as you sand. No gloves, no loose sleeves, no "
    "rings or cords, and long hair tied back: what is wound in is drawn in.",
    "The posts are mortised. Plug every mortise and groove with waste, fitted dry and tight, and tap the stick: "
    "nothing may be loose. Turn nothing that is cracked.",
    "Set the rest close, turn the work round by hand before you switch on, and stop the lathe to move the rest. A "
    "square begins at a low speed; stand out of its line when you start.",
    "Calipers go on stopped work alone. The corners of the square below the first station are hardly to be seen while "
    "they spin: keep fingers and tools behind the rest.",
)


def turning_cards(piece: Piece) -> tuple[Card, ...]:
    """Print how the tops of the posts are turned.

    Parameters
    ----------
    piece : Piece
        As read.

    Returns
    -------
    tuple of Card
        One, or none where nothing is turned.

    Raises
    ------
    ImpossibleShape
        If the stations make no turning.

    Source: `woodmath.turned_profile`; tools and cautions are common practice.

    >>> from woodmath.piece import Piece
    >>> [card.title for card in turning_cards(Piece.demo("cat-bed"))], turning_cards(Piece.demo("log-box"))
    (['Turning card'], ())
    """
    if piece.post.turned is None:
        return ()
    return (turning_card(piece),)


def turning_card(piece: Piece) -> Card:
    """Print the stations of a turned top.

    Parameters
    ----------
    piece : Piece
        With a turned top.

    Returns
    -------
    Card
        Places are measured from the end of the square.

    Raises
    ------
    ImpossibleShape
        If nothing is turned, or the stations make no turning.

    Source: as `turning_cards`.

    >>> from woodmath.piece import Piece
    >>> turning_card(Piece.demo("cat-bed")).rows[2][:4]
    ('3', '3/16', '1 5/8', '1 21/32')
    """
    if piece.post.turned is None:
        raise ImpossibleShape(
            f"The posts of {piece.name} are not turned. Add [post.turned] with its stations to the file."
        )
    rule, profile = piece.rule, piece.post.turned.profile()
    left_on = allowance(rule)
    rows = []
    for each, work in zip(profile.caliper_settings(left_on), _works(profile), strict=True):
        rows.append(
            (
                str(each.number),
                rule.mark(each.place - profile.start),
                rule.mark(each.diameter),
                finer(rule, each.setting),
                work,
            )
        )
    setting = octagon_setting(piece.post.square)
    return Card(
        "Turning card",
        f"One post of four, all alike. The square ends {rule.mark(profile.start, unit=True)} above the panels' upper "
        f"edge. Gauge {rule.mark(setting, unit=True)} from each corner, saw the corners in where the square ends, and "
        "pare what is to be turned to an octagon. Size the stations from the last row but one upward, back to the "
        "square, which is at the headstock.",
        ("", "from the square", "diameter", "calipers", "then"),
        tuple(rows),
        notes=(
            "Cut downhill always, from thick to thin, whichever way the rows run.",
            f"The calipers leave {finer(rule, left_on)} on the diameter for the finishing cut and the paper. Set them "
            "on the sizing bars of the pattern sheet. Stop the lathe and hold the card template against the work "
            "before each finishing cut.",
            *LATHE_CAUTIONS,
        ),
        numeric=(0, 1, 2, 3),
    )


def allowance(rule: Rule) -> float:
    """Return what is left on the diameter for the finishing cut.

    Parameters
    ----------
    rule : Rule
        Of the piece.

    Returns
    -------
    float
        In the rule's unit.

    Source: common practice.

    >>> from woodmath.rule import Rule
    >>> allowance(Rule.inches(16)), allowance(Rule.millimetres(0.5))
    (0.03125, 1.0)
    """
    return rule.read(LEFT_ON[0] if rule.unit == "inch" else LEFT_ON[1])


def finer(rule: Rule, length: float) -> str:
    """Return a length as a rule reads it that has marks fine enough for what is left on.

    Parameters
    ----------
    rule : Rule
        Of the piece.
    length : float
        In its unit.

    Returns
    -------
    str
        Without the unit.

    >>> from woodmath.rule import Rule
    >>> finer(Rule.inches(16), 1.28125), finer(Rule.millimetres(0.5), 34.5)
    ('1 9/32', '34.5')
    """
    fine = type(rule).inches(32) if rule.unit == "inch" and rule.one_mark > allowance(rule) else rule
    return fine.mark(length)


def _works(profile: TurnedProfile) -> list[str]:
    """Say for every station what is cut from there to the next."""
    return [*(_work(one, other) for one, other in pairwise(profile.stations)), _last(profile)]


def _work(one: Station, other: Station) -> str:
    grows = other.diameter > one.diameter
    if one.to_next == ROUND and one.diameter != other.diameter:
        return (
            "half a bead, down to here from the next crest: skew"
            if grows
            else "half a bead, down from this crest: skew"
        )
    if one.to_next == HOLLOW and one.diameter != other.diameter:
        if grows:
            return "half a cove, down to here from the next edge: spindle gouge"
        return "half a cove, down from this edge: spindle gouge"
    if one.place == other.place:
        return "a square step: parting tool"
    if one.diameter == other.diameter:
        return "straight on: parting tool, then skew"
    return "a taper, down to here from the next: skew" if grows else "a taper, down from here: skew"


def _last(profile: TurnedProfile) -> str:
    return (
        "the top: leave it thick until all else is done, then part it to this; the nib that is left is pared off when "
        "the post is out of the lathe"
    )
