"""What one post can take: sizes that cannot be are refused by name, each with what to change.

The usual thickness of a tenon stands here too; it is a rule of thumb, and nothing is refused on its account.
"""

from __future__ import annotations

import math

from woodmath.errors import ImpossibleShape
from woodmath.post_joint_geometry import Cut


def usual_thickness(stock: float) -> tuple[float, float]:
    """Usual thickness of a tenon, from a quarter to a third of the stock that is mortised.

    Parameters
    ----------
    stock : float
        Thickness of the stock, > 0, in any length unit.

    Returns
    -------
    tuple of float
        The least and the greatest usual thickness, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the stock is not more than 0.

    Source: common practice, a rule of thumb and no limit.

    >>> usual_thickness(1.5)
    (0.375, 0.5)
    """
    check_more_than_nothing("stock's thickness", stock)
    return stock / 4, stock / 3


def check_more_than_nothing(what: str, length: float) -> None:
    """Refuse a length that is 0, negative or no number.

    Parameters
    ----------
    what : str
        What it is the length of, for the message.
    length : float
        In any length unit.

    Raises
    ------
    ImpossibleShape
        If it is not more than 0.

    >>> check_more_than_nothing("post", 1.5)
    """
    if not (math.isfinite(length) and length > 0):
        raise ImpossibleShape(f"The {what} is {length:g}. Give a length of more than 0.")


def check_across(name: str, post: float, thickness: float, set_back: float) -> None:
    """Refuse a mortise that does not find room across the post.

    Parameters
    ----------
    name : str
        Which tenon it belongs to, for the message.
    post, thickness, set_back : float
        Side of the square post, width of the mortise and its set-back, in one length unit.

    Raises
    ------
    ImpossibleShape
        If the thickness is not more than 0, the set-back is less than 0, or both together exceed the post.

    Source: plane geometry, lengths set end to end across the post.

    >>> check_across("first", post=1.5, thickness=0.5, set_back=0.375)
    """
    if not (math.isfinite(thickness) and thickness > 0):
        least, greatest = usual_thickness(post)
        raise ImpossibleShape(
            f"The {name} tenon is {thickness:g} thick. Give a thickness of more than 0; a quarter to a third "
            f"of the post is usual, here {least:g} to {greatest:g}."
        )
    if not (math.isfinite(set_back) and set_back >= 0):
        raise ImpossibleShape(
            f"The {name} tenon's set-back is {set_back:g}. Give 0 or more, measured from the post's "
            "outer face."
        )
    if set_back + thickness > post * (1 + 1e-12):
        if max(thickness, set_back) < post:
            remedy = (
                f"Set it back {post - thickness:g} or less, or make the tenon {post - set_back:g} thick "
                "or less."
            )
        else:
            remedy = "Take a thinner tenon nearer the outer face, or a bigger post."
        raise ImpossibleShape(
            f"The {name} mortise does not fit the post: set-back {set_back:g} and thickness {thickness:g} "
            f"make {set_back + thickness:g}, and the post is {post:g}. {remedy}"
        )


def check_clearance(end_clearance: float) -> None:
    """Refuse a clearance that is negative or no number.

    Parameters
    ----------
    end_clearance : float
        How much shorter each tenon is than its mortise is deep, in any length unit.

    Raises
    ------
    ImpossibleShape
        If it is not 0 or more.

    >>> check_clearance(0.0625)
    """
    if not (math.isfinite(end_clearance) and end_clearance >= 0):
        raise ImpossibleShape(
            f"The end clearance is {end_clearance:g}. Give 0 or more: how much shorter each tenon is to be "
            "than its mortise is deep."
        )


def checked_reserve(reserve: float | None, post: float, usual: float) -> float:
    """Return the reserve of one long tenon, or refuse one that is missing or cannot be.

    Parameters
    ----------
    reserve : float or None
        Wood between the long mortise and the far outer face.
    post : float
        Side of the square post, > 0, in the same unit.
    usual : float
        A reserve that works, for the message.

    Returns
    -------
    float
        The reserve, 0 or more and less than the post.

    Raises
    ------
    ImpossibleShape
        If it is missing, negative, or not less than the post.

    >>> checked_reserve(0.25, post=1.5, usual=0.375)
    0.25
    """
    if reserve is None:
        raise ImpossibleShape(
            "One long tenon needs a reserve: the wood to leave between the end of its mortise and the far "
            f"outer face. Give 0 or more and less than {post:g}, such as reserve={usual:g}."
        )
    if not (math.isfinite(reserve) and 0 <= reserve < post):
        raise ImpossibleShape(
            f"The reserve is {reserve:g} in a post of {post:g}. Give 0 or more, and less than the post."
        )
    return reserve


def check_something_left(name: str, cut: Cut, end_clearance: float) -> None:
    """Refuse a tenon of which the other mortise, the reserve and the clearance leave nothing.

    Parameters
    ----------
    name : str
        Which tenon it is, for the message.
    cut : Cut
        The tenon, clearance taken off.
    end_clearance : float
        What was taken off, 0 or more, in the same unit.

    Raises
    ------
    ImpossibleShape
        If the tenon does not go into the post.

    >>> check_something_left("first", Cut(4, 1, 1, outer=3, inner=2, depth=3), end_clearance=0)
    """
    if cut.outer <= 0 or cut.inner < 0:
        raise ImpossibleShape(
            f"Nothing is left of the {name} tenon: it would go {cut.inner + end_clearance:g} into the post, "
            f"less {end_clearance:g} of end clearance. Give less clearance, set the other mortise nearer its "
            "outer face, reserve less, or take a bigger post."
        )
