"""The piece put together in three directions: nothing overlaps, and nothing gapes beyond its stated clearance."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from solid_checks import Membership, named, overlap, points_in

from woodmath.case import Case, between
from woodmath.case_solids import solids_of
from woodmath.piece import Piece
from woodmath.post_joint import ENDS
from woodmath.solids import Solid

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")


def changed(piece: Piece, table: str, **values: object) -> Piece:
    return replace(piece, **{table: replace(getattr(piece, table), **values)})


def variations() -> dict[str, Piece]:
    joint = CAT_BED.joint
    inner = replace(joint, tongue=replace(joint.tongue, rebated_from="inner face"))
    return {
        "cat's bed": CAT_BED,
        "log box": LOG_BOX,
        **{f"cat's bed, {ends}": changed(CAT_BED, "joint", ends=ends, reserve=0.5) for ends in ENDS},
        "rebated from the inner face": replace(CAT_BED, joint=inner),
        "without a tongue": changed(CAT_BED, "joint", tongue=None),
        "without a bead": replace(CAT_BED, bead=None),
        "leaning inward": changed(CAT_BED, "end", top=10.5, bottom=13),
        "far leaning": changed(CAT_BED, "end", top=18),
        "the foot's tenon along the post": changed(
            CAT_BED, "rocker", tenon=replace(CAT_BED.rocker.tenon, line="along the post")
        ),
    }


VARIATIONS = variations()


def biggest_overlap(piece: Piece) -> tuple[float, str]:
    placed = solids_of(piece)
    # One of each mirrored pair of joints is enough: the parts are mirrored from one quarter of the case.
    quarter = [each for each in placed if each.where in ("", "right", "back", "back right")]
    found = [
        (overlap(one.solid, other.solid), f"{one.name} {one.where} and {other.name} {other.where}")
        for one, other in itertools.combinations(quarter, 2)
    ]
    return max(found)


@pytest.mark.parametrize("piece", VARIATIONS.values(), ids=VARIATIONS.keys())
def test_no_two_parts_want_the_same_wood(piece: Piece) -> None:
    volume, where = biggest_overlap(piece)
    assert volume <= 1e-6 * piece.post.square**3, where


def test_a_part_that_is_moved_a_hair_is_found_out() -> None:
    one, *_ = named(solids_of(CAT_BED), "end panel")
    post, *_ = named(solids_of(CAT_BED), "post")
    moved = tuple(
        replace(
            prism,
            axes=replace(
                prism.axes,
                origin=(prism.axes.origin[0], prism.axes.origin[1] + 0.01, prism.axes.origin[2]),
            ),
        )
        for prism in one.added
    )
    assert overlap(one, post) < 1e-9
    assert overlap(Solid(moved), post) > 0.01


@settings(max_examples=6, deadline=None)
@given(st.floats(9, 17), st.floats(6, 14), st.floats(0.45, 0.6))
def test_whatever_the_splay_and_the_height_the_parts_keep_out_of_one_another(top, height, set_back):
    joint = replace(
        CAT_BED.joint,
        set_back=set_back,
        tenons=tuple(
            replace(tenon, place=tenon.place * height / 8, width=tenon.width * height / 8)
            for tenon in CAT_BED.joint.tenons
        ),
    )
    piece = replace(changed(CAT_BED, "end", top=top, height=height), joint=joint, bead=None)
    volume, where = biggest_overlap(piece)
    assert volume <= 1e-6, where


@pytest.mark.parametrize(
    "piece",
    [piece for name, piece in VARIATIONS.items() if "halved" not in name and "one_long" not in name],
    ids=[name for name in VARIATIONS if "halved" not in name and "one_long" not in name],
)
def test_wherever_a_mortise_or_a_groove_is_empty_wood_is_within_the_clearance(piece: Piece) -> None:
    placed, case = solids_of(piece), Case.of(piece)
    post, *_ = named(placed, "post")
    panels = [
        Membership(each) for each in (*named(placed, "end panel")[:1], *named(placed, "side panel")[:1])
    ]
    most = max(piece.joint.end_clearance, piece.joint.tongue.clearance if piece.joint.tongue else 0.0)
    frame = np.array((case.post_axes.across, case.post_axes.up, case.post_axes.along))
    # Where two clearances cross in a corner, wood is a diagonal away.
    ways = np.array([way for way in itertools.product((-1, 0, 1), repeat=3) if any(way)]) @ frame
    steps = np.linspace(0, 1.0001 * most, 8)
    for seed, cut in enumerate(post.removed):
        points = points_in(cut, 600, seed)
        empty = points[~np.logical_or.reduce([panel(points) for panel in panels])]
        probes = (empty[:, None, None, :] + ways[None, :, None, :] * steps[None, None, :, None]).reshape(
            -1, 3
        )
        reached = np.logical_or.reduce([panel(probes) for panel in panels])
        assert reached.reshape(len(empty), -1).any(axis=1).all()


def test_every_shoulder_closes_on_the_posts_face() -> None:
    for piece in (CAT_BED, LOG_BOX):
        case, placed = Case.of(piece), solids_of(piece)
        post, end, side = (Membership(named(placed, name)[0]) for name in ("post", "end panel", "side panel"))
        hair = 1e-4 * piece.post.square
        random = np.random.default_rng(1)
        for along in random.uniform(*case.panel, 40):
            # Just this side of the post's inside face there is panel, just the other side there is post,
            # in front of the tongue, where the shoulder is seen.
            y_in, z_in = case.at(along, -hair)
            y_out, z_out = case.at(along, hair)
            x = case.half_over_posts - case.end_face - hair
            assert end(np.array([[x, y_in, z_in]])).all() == (abs(z_in - case.at(case.panel[1])[1]) > 1e-2)
            assert post(np.array([[x, y_out, z_out]])).all()
            point = case.at(along, case.square - case.side_face - hair)
            assert side(np.array([[case.half_length - hair, *point]])).all()
            assert post(np.array([[case.half_length + hair, *point]])).all()


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat's bed", "log box"])
def test_the_volume_of_each_part_is_what_random_points_say(piece: Piece) -> None:
    for placed in solids_of(piece):
        solid = placed.solid
        corners = np.array([corner for prism in solid.added for corner in prism.corners])
        low, high = corners.min(0), corners.max(0)
        points = np.random.default_rng(7).uniform(low, high, (40000, 3))
        share = Membership(solid)(points).mean()
        box = float(np.prod(high - low))
        error = 4 * box * math.sqrt(share * (1 - share) / len(points))
        assert solid.volume == pytest.approx(share * box, abs=error + 1e-9), placed.name


def test_the_packages_own_look_inside_agrees_with_the_hulls() -> None:
    random = np.random.default_rng(3)
    for placed in solids_of(CAT_BED)[::3]:
        low, high = (np.array([placed.solid.extent(way)[end] for way in np.eye(3)]) for end in (0, 1))
        points = random.uniform(low - 0.1, high + 0.1, (600, 3))
        assert (
            Membership(placed.solid)(points) == [placed.solid.holds(tuple(point)) for point in points]
        ).all()


def test_the_posts_are_two_left_and_two_right() -> None:
    posts = named(solids_of(CAT_BED), "post")
    assert len(posts) == 4
    signs = [math.prod(post.extent(way)[1] > 0 or -1 for way in ((1, 0, 0), (0, 1, 0))) for post in posts]
    assert sorted(signs) == [-1, -1, 1, 1]


def test_what_is_left_between_tenons_is_in_order_and_never_empty() -> None:
    assert between((0, 10), ((0, 2), (5, 12))) == ((2, 5),)
    assert between((0, 10), ()) == ((0, 10),)
    assert between((3, 4), ((0, 10),)) == ()


def test_the_cats_bed_stands_where_a_drawn_section_puts_it() -> None:
    case = Case.of(CAT_BED)
    lean = math.atan(1.25 / 8)
    assert case.half_foot == pytest.approx(5.25 - 3 * math.sin(lean))
    assert case.at(case.panel[0]) == pytest.approx((5.25, 3 * math.cos(lean)))
    assert case.at(case.panel[1]) == pytest.approx((6.5, 3 * math.cos(lean) + 8))
    assert case.inside_of_end == pytest.approx(9 + 1.75 - 0.125 - 0.875)
