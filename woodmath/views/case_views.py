"""A case as it is seen from the end, from the side and from above: the wood and the hidden edges, no sizes.

Each view stands about the middle of the case; the floor, or the top of the rockers, is at height 0.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.case_solids import bottom_solid, foot_tenon_solid
from woodmath.drawing import Line, Point, Points, Wood, rectangle
from woodmath.ellipse import Ellipse
from woodmath.views.turned_seen import turned_from_above, turned_from_the_end, turned_from_the_side

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.solids import Solid

Shapes = tuple[Wood | Line, ...]

_KNIFE = 1e-9
"""A stretch of shoulder shorter than this part of the whole is the computer's rounding, not wood."""


def from_the_end(piece: Piece, case: Case, ellipse: Ellipse | None) -> Shapes:
    """Return the end in elevation, with what its posts hide.

    Parameters
    ----------
    piece : Piece
        What is seen.
    case : Case
        Of that piece.
    ellipse : Ellipse or None
        Of its rockers; None where there are none, or where they cannot be.

    Returns
    -------
    tuple of Wood and Line
        In the piece's unit, y to the right.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> [shape.tint for shape in from_the_end(piece, Case.of(piece), None) if isinstance(shape, Wood)]
    ['end', 'post', 'post']
    """
    low, high = case.at(case.panel[0]), case.at(case.panel[1])
    panel = (mirrored(low), low, high, mirrored(high))
    post = case.post_outline
    seen: list[Wood | Line] = [
        *_rocker(piece, ellipse),
        Wood(panel, "end", "long", 0.0, line="edge"),
        *_end_beads(piece, case),
        Wood(flipped(post), "post", "long", 90.0 + case.splay, line="edge"),
        Wood(post, "post", "long", 90.0 - case.splay, line="edge"),
        *turned_from_the_end(piece, case),
    ]
    hidden = [edge_in_the_post(case)]
    if piece.rocker and piece.rocker.tenon:
        inner, outer, outer_end, inner_end = foot_tenon_solid(case, piece.rocker.tenon).outline
        hidden.append((inner, inner_end, outer_end, outer))
    for points in hidden:
        seen += [Line(points, "hidden"), Line(flipped(points), "hidden")]
    if piece.bottom:
        seen.append(Line(bottom_solid(piece, case).added[0].outline, "hidden", True))
    return tuple(seen)


def from_the_side(piece: Piece, case: Case, ellipse: Ellipse | None) -> Shapes:
    """Return the side in elevation, where what leans is seen less high than it is long.

    Parameters
    ----------
    piece, case, ellipse
        As for `from_the_end`.

    Returns
    -------
    tuple of Wood and Line
        In the piece's unit, x to the right.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> [shape.tint for shape in from_the_side(piece, Case.of(piece), None) if isinstance(shape, Wood)]
    ['side', 'post', 'post']
    """
    outer, inner = case.square - case.side_face, case.inside_of_side
    low, high = case.panel
    foot, head, rim = case.at(low, outer)[1], case.at(high, outer)[1], case.at(high, inner)[1]
    half, over = case.half_length, case.half_over_posts
    top_outer, top_inner = case.at(case.square_top, case.square)[1], case.at(case.square_top)[1]
    seen: list[Wood | Line] = []
    if piece.rocker and ellipse:
        middle, thick = half + case.square / 2, piece.rocker.thickness / 2
        seen += [
            Wood(
                rectangle(x - thick, -piece.rocker.depth, x + thick, 0.0),
                "board",
                "end",
                pith=(x, 3 * piece.rocker.depth),
                line="edge",
            )
            for x in (-middle, middle)
        ]
    seen.append(Wood(rectangle(-half, foot, half, max(head, rim)), "side", "long", 0.0, line="edge"))
    if rim > head:
        seen.append(Line(((-half, head), (half, head)), "quiet"))
    if piece.bead:
        upward = case.upward[1]
        for place in (piece.bead.width, piece.bead.width + piece.bead.quirk):
            seen += [
                Line(((-half, at), (half, at)), "quiet")
                for at in (foot + place * upward, head - place * upward)
            ]
    for sign in (-1.0, 1.0):
        left, right = sorted((sign * half, sign * over))
        seen.append(
            Wood(rectangle(left, 0.0, right, max(top_outer, top_inner)), "post", "long", 90.0, line="edge")
        )
        if top_inner > top_outer:
            seen.append(Line(((left, top_outer), (right, top_outer)), "quiet"))
        seen.append(Line(_side_edge_in_the_post(case, sign), "hidden"))
    return (*seen, *turned_from_the_side(piece, case))


def from_above(piece: Piece, case: Case, ellipse: Ellipse | None) -> Shapes:
    """Return the case seen from above: end grain of the posts, edges of the panels, the bottom within.

    Parameters
    ----------
    piece, case, ellipse
        As for `from_the_end`.

    Returns
    -------
    tuple of Wood and Line
        In the piece's unit, x to the right.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> [shape.tint for shape in from_above(piece, Case.of(piece), None) if isinstance(shape, Wood)][-4:]
    ['post', 'post', 'post', 'post']
    """
    half, over = case.half_length, case.half_over_posts
    seen: list[Wood | Line] = []
    if piece.rocker and ellipse:
        middle, thick, reach = half + case.square / 2, piece.rocker.thickness / 2, piece.rocker.length / 2
        seen += [
            Wood(rectangle(x - thick, -reach, x + thick, reach), "board", "long", 90.0, line="edge")
            for x in (-middle, middle)
        ]
    outer, inner = case.square - case.side_face, case.inside_of_side
    (low, high), top = case.panel, case.square_top
    if piece.bottom:
        seen.append(Wood(_bottom_from_above(bottom_solid(piece, case)), "board", "long", line="edge"))
    rim = max(case.at(low)[0], case.at(high)[0])
    # Outward or inward, what is seen of a side from above lies between its edges' four arrises.
    arrises = [case.at(along, depth)[0] for along in (low, high) for depth in (inner, outer)]
    foot, head = case.half_foot, case.at(top)[0]
    corners = (foot, foot + case.level_width, head, case.at(top, case.square)[0])
    for sign in (-1.0, 1.0):
        left, right = sorted((sign * case.inside_of_end, sign * (over - case.end_face)))
        seen.append(Wood(rectangle(left, -rim, right, rim), "end", "long", 90.0, line="edge"))
        down, up = sorted((sign * min(arrises), sign * max(arrises)))
        seen.append(Wood(rectangle(-half, down, half, up), "side", "long", 0.0, line="edge"))
        seen.append(
            Line(((-half, sign * case.at(high, inner)[0]), (half, sign * case.at(high, inner)[0])), "quiet")
        )
    for x_sign in (-1.0, 1.0):
        for y_sign in (-1.0, 1.0):
            left, right = sorted((x_sign * half, x_sign * over))
            down, up = sorted((y_sign * min(corners), y_sign * max(corners)))
            pith = (x_sign * (over + 3 * case.square), y_sign * (up if y_sign > 0 else down) * 1.6 * y_sign)
            seen.append(Wood(rectangle(left, down, right, up), "post", "end", pith=pith, line="edge"))
            if head > foot:
                seen.append(Line(((left, y_sign * head), (right, y_sign * head)), "quiet"))
    return (*seen, *turned_from_above(piece, case))


def edge_in_the_post(case: Case) -> Points:
    """Return the hidden edge of the end panel: shoulder, tongue and tenons in turn, from below.

    Parameters
    ----------
    case : Case
        Of a piece.

    Returns
    -------
    tuple of (float, float)
        Along the right-hand post.

    >>> from woodmath.piece import Piece
    >>> len(edge_in_the_post(Case.of(Piece.demo("cat-bed"))))
    14
    """
    reach = case.joint.tenon.reach
    return tuple(case.at(along, depth) for along, depth in edge_profile(case, reach))


def edge_profile(case: Case, reach: float) -> list[Point]:
    """Return a panel's edge as (along, depth): shoulder, tongue and tenons in turn, from its lower corner.

    Parameters
    ----------
    case : Case
        Of a piece.
    reach : float
        How deep the tenons go, in the piece's unit.

    Returns
    -------
    list of (float, float)
        Along the post and into it.

    >>> from woodmath.piece import Piece
    >>> edge_profile(Case.of(Piece.demo("log-box")), 28.0)[:3]
    [(40.0, 0.0), (50.0, 0.0), (50.0, 8.0)]
    """
    steps = sorted(
        [(low, high, reach) for low, high in case.tenons]
        + [(low, high, case.tongue_length) for low, high in case.tongues]
    )
    profile = [(case.panel[0], 0.0)]

    def along_the_shoulder(to: float) -> None:
        """Go back to the shoulder and along it, as far as there is any of it."""
        here, depth = profile[-1]
        if to > here + _KNIFE * case.slope_length:
            profile.extend([(here, 0.0)] * (depth > 0) + [(to, 0.0)])

    for low, high, depth in steps:
        along_the_shoulder(low)
        profile += [(low, depth), (high, depth)]
    along_the_shoulder(case.panel[1])
    if profile[-1][1] > 0:
        profile.append((case.panel[1], 0.0))
    return profile


def mirrored(point: Point) -> Point:
    """Return a point on the other side of the middle.

    >>> mirrored((1.0, 2.0))
    (-1.0, 2.0)
    """
    return (-point[0], point[1])


def flipped(points: Points) -> Points:
    """Return points on the other side of the middle.

    >>> flipped(((1.0, 2.0), (3.0, 4.0)))
    ((-1.0, 2.0), (-3.0, 4.0))
    """
    return tuple(map(mirrored, points))


def moved(shape: Wood | Line, right: float, up: float) -> Wood | Line:
    """Return a shape moved to another place.

    >>> moved(Line(((0.0, 0.0), (1.0, 0.0)), "thin"), 2.0, 3.0).points
    ((2.0, 3.0), (3.0, 3.0))
    """
    points = tuple((x + right, y + up) for x, y in points_of(shape))
    if isinstance(shape, Wood):
        pith = (shape.pith[0] + right, shape.pith[1] + up) if shape.pith else None
        return Wood(points, shape.tint, shape.grain, shape.angle, pith, shape.line)
    return Line(points, shape.role, shape.closed, shape.fill)


def points_of(shape: Wood | Line) -> Points:
    """Return the corners of a shape.

    >>> points_of(Line(((0, 0), (1, 0)), "thin"))
    ((0, 0), (1, 0))
    """
    return shape.outline if isinstance(shape, Wood) else shape.points


def _side_edge_in_the_post(case: Case, sign: float) -> Points:
    middle = case.square - case.side_face - case.side_thickness / 2
    return tuple(
        (sign * (case.half_length + depth), case.at(along, middle)[1])
        for along, depth in edge_profile(case, case.joint.other_tenon.reach)
    )


def _end_beads(piece: Piece, case: Case) -> list[Line]:
    if piece.bead is None:
        return []
    low, high = case.at(case.panel[0])[1], case.at(case.panel[1])[1]
    places = (piece.bead.width, piece.bead.width + piece.bead.quirk)
    lines = []
    for height in (*(low + place for place in places), *(high - place for place in places)):
        half = case.along_a_level(height)
        lines.append(Line(((-half, height), (half, height)), "quiet"))
    return lines


def _rocker(piece: Piece, ellipse: Ellipse | None) -> Shapes:
    if piece.rocker is None or ellipse is None:
        return ()
    half = piece.rocker.length / 2
    under = tuple((x, height - piece.rocker.depth) for x, height in ellipse.lower_arc(piece.rocker.length))
    return (Wood(((half, 0.0), (-half, 0.0), *under), "board", "long", 0.0, line="edge"),)


def _bottom_from_above(bottom: Solid) -> Points:
    """Return the bottom's outline with its corners cut out, as its wider face shows it."""
    main, *ears = bottom.added
    wide = max(y for y, _ in main.outline)
    if not ears:
        return rectangle(main.start, -wide, main.end, wide)
    narrow = max(y for y, _ in ears[0].outline)
    corner = ((ears[0].end, narrow), (main.end, narrow), (main.end, wide))
    quarter = (*corner, *flipped(tuple(reversed(corner))))
    return (*quarter, *((x, -y) for x, y in reversed(quarter)))
