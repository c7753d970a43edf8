"""The master's remarks on the turned tops of the posts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, about, more, size
from woodmath.turned_profile import TurnedProfile
from woodmath.turning_card import allowance

if TYPE_CHECKING:
    from woodmath.piece import Piece

THINNEST_NECK = 3
"""Times as thick as its thinnest neck a post may be: beyond that it whips and snaps in the lathe (common practice)."""
SQUARE_ABOVE = "25 mm"
"""Square wood left between a mortise and the turning: the horn (diyinfo.org, Constructing Mortice and Tenon Joints)."""
_PLACE = "the turned top"


def turned_findings(piece: Piece) -> Iterator[Finding]:
    """Yield the remarks on the turned tops.

    Parameters
    ----------
    piece : Piece
        As read; one without turned posts gets none.

    Yields
    ------
    Finding
        Stops where the post does not hold the turning; cautions for a thin neck and for a top that is not all turned.

    Source: the largest round of a square is as thick as its side (plane geometry); thresholds beside their names.

    >>> from woodmath.piece import Piece
    >>> list(turned_findings(Piece.demo("cat-bed")))
    []
    """
    if piece.post.turned is None:
        return
    try:
        profile = piece.post.turned.profile()
    except ImpossibleShape as trouble:
        yield Finding("stop", _PLACE, str(trouble), "Correct the stations under [post.turned].")
        return
    yield from _thick_and_thin(piece, profile)
    yield from _its_ends(piece, profile)


def _thick_and_thin(piece: Piece, profile: TurnedProfile) -> Iterator[Finding]:
    rule, square = piece.rule, piece.post.square
    for number, station in enumerate(profile.stations, 1):
        if more(station.diameter, square):
            yield Finding(
                "stop",
                f"{_PLACE}, station {number}",
                f"It is {size(rule, station.diameter)} thick, and the largest round in a square of "
                f"{size(rule, square)} is as thick as its side.",
                "Turn it thinner, or take stouter posts.",
            )
        elif more(station.diameter + allowance(rule), square):
            yield Finding(
                "caution",
                f"{_PLACE}, station {number}",
                f"With what is left on for the finishing cut the calipers would stand at "
                f"{size(rule, station.diameter + allowance(rule))}, more than the square of {size(rule, square)}.",
                "Turn it thinner by that much, or take stouter posts.",
            )
    for station in profile.necks:
        if more(square, THINNEST_NECK * station.diameter):
            yield Finding(
                "caution",
                f"{_PLACE}, station {profile.stations.index(station) + 1}",
                f"The neck is {size(rule, station.diameter)} thick, less than a third of the square, "
                f"{size(rule, square / THINNEST_NECK)}: it whips under the tool and snaps when someone leans on it.",
                "Leave the neck stouter, and turn it last of all.",
            )


def _its_ends(piece: Piece, profile: TurnedProfile) -> Iterator[Finding]:
    rule, top = piece.rule, piece.post.top
    if more(profile.end, top):
        yield Finding(
            "stop",
            _PLACE,
            f"Its last station lies {size(rule, profile.end)} above the panels, and the post ends at "
            f"{size(rule, top)}.",
            "Leave the posts longer above the panels, or turn a shorter top.",
        )
    elif more(top, profile.end):
        yield Finding(
            "caution",
            _PLACE,
            f"Its last station lies {size(rule, profile.end)} above the panels, and the post goes on to "
            f"{size(rule, top)}: the rest is not drawn.",
            "Add a station at the post's top, or let the post end with the turning.",
        )
    if more(0.0, profile.start):
        yield Finding(
            "stop",
            _PLACE,
            f"It begins {size(rule, -profile.start)} below the panels' upper edge, and the panels need square wood "
            "beside them.",
            "Let the square go on to the panels' upper edge or above it.",
        )
        return
    if piece.end is None or not piece.joint.tenons:
        return
    highest = max(tenon.place + tenon.width for tenon in piece.joint.tenons)
    square_above = piece.end.slope_length + profile.start - highest
    if more(0.0, square_above):
        yield Finding(
            "stop",
            _PLACE,
            f"The highest mortise reaches {size(rule, -square_above)} into the turning.",
            "Let the turning begin higher, or place the tenon lower.",
        )
    elif more(rule.read(SQUARE_ABOVE), square_above):
        yield Finding(
            "caution",
            _PLACE,
            f"Only {size(rule, square_above)} of square wood stands between the highest mortise and the turning, and "
            "its short grain can be pushed out.",
            f"Leave {about(rule, SQUARE_ABOVE)} or more square there.",
        )
