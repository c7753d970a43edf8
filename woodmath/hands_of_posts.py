"""The hands of the four posts: which faces are outside, which take mortises, and from which each is gauged.

Stand outside and face an end: the post on your left is a left-hand post, the other a right-hand one, at
either end. So posts that are neighbours are mirror images, and those across the diagonal are alike.
"""

from __future__ import annotations

from dataclasses import dataclass

Vector = tuple[int, int, int]

FACE_SIDE, FACE_EDGE = "face side", "face edge"
END_INSIDE, SIDE_INSIDE = "inside face for the end", "inside face for the side"
LEFT, RIGHT = "left", "right"
UP: Vector = (0, 0, 1)


@dataclass(frozen=True)
class Face:
    """One long face of a post.

    Parameters
    ----------
    name : str
        "face side": the outer face in the plane of an end; "face edge": the outer face in the plane of a side;
        the other two look inward.
    looks : (int, int, int)
        Which way it looks: to the right of the case, to its back, up, each -1, 0 or 1. A lean is left out: it
        turns no face to another side.
    takes : {"end", "side", ""}
        Whose mortises it takes; "" for an outer face.
    gauged_from : str
        The face on which the gauge's stock rides for them; "" for an outer face.

    >>> Face("face side", (-1, 0, 0), "", "").takes
    ''
    """

    name: str
    looks: Vector
    takes: str
    gauged_from: str


@dataclass(frozen=True)
class CornerPost:
    """One post of the case.

    Parameters
    ----------
    corner : str
        Where it stands: "front left", "front right", "back left" or "back right", seen from the front, where
        one of the sides is; the ends are to the left and to the right.
    stands : (int, int, int)
        The same as a direction from the middle of the case.
    hand : {"left", "right"}
        As you see it facing its end from outside.
    faces : tuple of Face
        All four as they pass you when the post stands on its foot and you walk round it to the right: the face
        side first.

    >>> [post.hand for post in hands()]
    ['right', 'left', 'left', 'right']
    """

    corner: str
    stands: Vector
    hand: str
    faces: tuple[Face, Face, Face, Face]

    def face(self, name: str) -> Face:
        """Return the face of that name."""
        return next(face for face in self.faces if face.name == name)

    def to_the_right_of(self, name: str) -> Face:
        """Return the face next to the right, for one who looks at the named face with the foot down."""
        names = [face.name for face in self.faces]
        return self.faces[(names.index(name) + 1) % len(self.faces)]

    @property
    def mortised(self) -> tuple[Face, Face]:
        """The two inside faces, that for the end first."""
        return self.face(END_INSIDE), self.face(SIDE_INSIDE)


def hands() -> tuple[CornerPost, CornerPost, CornerPost, CornerPost]:
    """Name the four posts, with their hands and their faces.

    Returns
    -------
    tuple of CornerPost
        Front left, front right, back left, back right.

    Source: plane geometry; the outer faces are the face side and the face edge, and all gauging is done from
    them (common practice).

    >>> [(post.corner, post.hand) for post in hands()][0]
    ('front left', 'right')
    """
    return (
        _post("front left", -1, -1),
        _post("front right", 1, -1),
        _post("back left", -1, 1),
        _post("back right", 1, 1),
    )


def post_of_hand(hand: str) -> CornerPost:
    """Return the first of the two posts of a hand; the other is the same post at the other end.

    Parameters
    ----------
    hand : {"left", "right"}
        As you see it facing its end from outside.

    >>> post_of_hand("left").corner
    'front right'
    """
    return next(post for post in hands() if post.hand == hand)


def to_the_right(looks: Vector) -> Vector:
    """Return which way the next face looks, to the right for one who stands before a face of an upright post.

    Parameters
    ----------
    looks : (int, int, int)
        Which way the face looks, level.

    >>> to_the_right((0, -1, 0))
    (1, 0, 0)
    """
    x, y, _ = looks
    return (-y, x, 0)


def _post(corner: str, x: int, y: int) -> CornerPost:
    """Return the post at a corner: x to the right, y to the back, and the middle of the case at 0."""
    faces = {
        face.looks: face
        for face in (
            Face(FACE_SIDE, (x, 0, 0), "", ""),
            Face(FACE_EDGE, (0, y, 0), "", ""),
            # The end runs from front to back and meets the face that looks along it; its set-back is counted
            # from the plane of its own outside, which is the post's face side.
            Face(END_INSIDE, (0, -y, 0), "end", FACE_SIDE),
            Face(SIDE_INSIDE, (-x, 0, 0), "side", FACE_EDGE),
        )
    }
    looks: Vector = (x, 0, 0)
    second = to_the_right(looks)
    third = to_the_right(second)
    in_order = (faces[looks], faces[second], faces[third], faces[to_the_right(third)])
    # You face the end from outside, so what is to the right of its face side is to your right.
    hand = RIGHT if (0, y, 0) == second else LEFT
    return CornerPost(corner, (x, y, 0), hand, in_order)
