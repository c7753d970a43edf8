"""The hands of the posts, proved with vectors: two left and two right, all mortises toward the middle."""

from __future__ import annotations

import math

import pytest

from woodmath.hands_of_posts import (
    END_INSIDE,
    FACE_EDGE,
    FACE_SIDE,
    SIDE_INSIDE,
    CornerPost,
    hands,
    post_of_hand,
    to_the_right,
)

Vector = tuple[float, float, float]

POSTS = hands()
UP = (0.0, 0.0, 1.0)
every_post = pytest.mark.parametrize("post", POSTS, ids=[post.corner for post in POSTS])


def dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def cross(one: Vector, other: Vector) -> Vector:
    (a, b, c), (d, e, f) = one, other
    return (b * f - c * e, c * d - a * f, a * e - b * d)


def turning(post: CornerPost) -> float:
    """Return +1 or -1: which way round up, the end's mortises and the side's mortises follow one another.

    It is the determinant of the three. A mirror changes its sign, and no turning about does: it tells the hands
    apart as a left glove from a right one.
    """
    end, side = post.mortised
    return dot(UP, cross(end.looks, side.looks))


def mirrored(vector: Vector) -> Vector:
    """Return the mirror image in the plane half way between the two ends."""
    return (-vector[0], vector[1], vector[2])


def half_turned(vector: Vector) -> Vector:
    """Return what a half turn about the upright middle line of the case makes of a direction."""
    return (-vector[0], -vector[1], vector[2])


def post_at(stands: Vector) -> CornerPost:
    return next(post for post in POSTS if post.stands == stands)


def takes(post: CornerPost) -> dict[Vector, str]:
    return {face.looks: face.takes for face in post.faces}


def test_the_four_posts_stand_in_four_corners():
    assert {post.stands for post in POSTS} == {(x, y, 0) for x in (-1, 1) for y in (-1, 1)}
    assert {post.corner for post in POSTS} == {"front left", "front right", "back left", "back right"}


def test_exactly_two_posts_are_left_hands_and_two_right_and_a_determinant_agrees():
    assert sorted(post.hand for post in POSTS) == ["left", "left", "right", "right"]
    assert {(post.hand, turning(post)) for post in POSTS} == {("left", 1.0), ("right", -1.0)}


@every_post
def test_the_mirror_image_of_a_post_is_its_neighbour_and_of_the_other_hand(post):
    image = post_at(mirrored(post.stands))
    assert takes(image) == {mirrored(looks): taken for looks, taken in takes(post).items()}
    assert image.hand != post.hand
    assert turning(image) == -turning(post)


@every_post
def test_a_half_turn_about_the_middle_takes_a_post_to_the_one_across_the_diagonal_which_is_alike(post):
    across = post_at(half_turned(post.stands))
    assert takes(across) == {half_turned(looks): taken for looks, taken in takes(post).items()}
    assert across.hand == post.hand


@every_post
def test_no_turning_about_its_own_length_makes_one_hand_of_the_other(post):
    other = post_at(mirrored(post.stands))
    turned, seen = takes(post), []
    for _ in range(4):
        turned = {to_the_right(looks): taken for looks, taken in turned.items()}
        seen.append(turned)
    assert takes(post) in seen
    assert takes(other) not in seen


@every_post
@pytest.mark.parametrize("lean", [0.0, 8.9, 20.0])
def test_mortised_faces_look_toward_the_middle_and_outer_faces_away_even_where_posts_lean(post, lean):
    # The case is splayed at its ends: each post leans outward to the front or to the back.
    x, y, _ = post.stands
    tilt = math.radians(lean) * -y

    def leaning(vector: Vector) -> Vector:
        a, b, c = vector
        return (
            a,
            b * math.cos(tilt) - c * math.sin(tilt),
            b * math.sin(tilt) + c * math.cos(tilt),
        )

    assert dot(leaning(UP), (0, y, 0)) >= 0
    half_way_up = (9.0 * x, 6.0 * y, 0.0)
    toward_the_middle = tuple(-each for each in half_way_up)
    for face in post.faces:
        assert (dot(leaning(face.looks), toward_the_middle) > 0) is bool(face.takes)


@every_post
def test_the_end_s_mortises_look_at_the_other_post_of_the_same_end(post):
    x, y, z = post.stands
    partner = post_at((x, -y, z))
    end, side = post.mortised
    way = tuple(there - here for there, here in zip(partner.stands, post.stands, strict=True))
    assert dot(end.looks, way) > 0 and dot(side.looks, way) == 0
    assert dot(end.looks, partner.mortised[0].looks) == -1


@every_post
def test_every_mortise_is_gauged_from_an_outer_face_beside_it_which_lies_in_the_board_s_own_plane(post):
    for face in post.mortised:
        stock = post.face(face.gauged_from)
        assert stock.takes == ""
        assert dot(stock.looks, face.looks) == 0, "a gauge works round one arris, never from the far side"
    assert post.face(END_INSIDE).gauged_from == FACE_SIDE
    assert post.face(SIDE_INSIDE).gauged_from == FACE_EDGE


@every_post
def test_the_faces_are_told_as_they_pass_one_who_walks_round_the_post_to_the_right(post):
    assert post.faces[0].name == FACE_SIDE
    assert len({face.looks for face in post.faces}) == 4
    for face in post.faces:
        beside = post.to_the_right_of(face.name)
        # Looking at a face, right is the cross product of the way one looks and up.
        into_the_wood = tuple(-each for each in face.looks)
        assert beside.looks == cross(into_the_wood, UP)


def test_a_left_hand_is_the_left_post_of_an_end_that_is_faced_from_outside():
    for x in (-1, 1):
        into_the_case = (-x, 0, 0)
        right = cross(into_the_case, UP)
        for post in POSTS:
            if post.stands[0] == x:
                assert post.hand == ("right" if dot(post.stands, right) > 0 else "left")
    assert post_of_hand("left").hand == "left" and post_of_hand("right").hand == "right"
