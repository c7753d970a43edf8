"""What goes together, in which order, and what locks."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodmath.assembly import Slide, assembly_of, assembly_steps, order_of
from woodmath.piece import Piece

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
X, Y, Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)


def along_the_post(piece: Piece) -> Piece:
    return replace(
        piece, rocker=replace(piece.rocker, tenon=replace(piece.rocker.tenon, line="along the post"))
    )


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat's bed", "log box"])
def test_the_demo_pieces_go_together_and_every_joint_is_closed_once(piece):
    order = assembly_of(piece)
    assert not order.locked
    # Each step joins groups: what is one thing at the end was so many parts at the start.
    parts = set(order.steps[-1].parts)
    assert sum(len(step.groups) - 1 for step in order.steps) == len(parts) - 1


def test_nothing_is_used_before_it_is_made():
    for piece in (CAT_BED, LOG_BOX):
        made: set[tuple[str, ...]] = set()
        for step in assembly_of(piece).steps:
            for group in step.groups:
                assert len(group) == 1 or tuple(sorted(group)) in made
            made.add(step.parts)


def test_posts_that_lean_cannot_be_driven_into_a_rocker_in_their_own_lines():
    locked = assembly_of(along_the_post(CAT_BED)).locked
    assert len(locked) == 2
    assert all(any(part.endswith("rocker") for part in group) for group in locked)
    assert "No order brings together" in assembly_steps(along_the_post(CAT_BED))[-1]


def test_upright_posts_can():
    upright = replace(CAT_BED, end=replace(CAT_BED.end, top=CAT_BED.end.bottom))
    assert not assembly_of(along_the_post(upright)).locked


def test_the_ends_are_put_together_before_the_sides():
    steps = assembly_of(CAT_BED).steps
    assert steps[-1].direction == X
    assert {
        group for step in steps[:-1] for group in step.groups if any("side" in part for part in group)
    } == set()


@given(st.lists(st.sampled_from([X, Y, Z]), min_size=2, max_size=6))
def test_a_chain_always_goes_together_and_a_ring_only_if_two_joints_share_a_way(ways):
    chain = [Slide(str(place), str(place + 1), way) for place, way in enumerate(ways)]
    assert not order_of(chain).locked
    ring = [*chain, Slide(str(len(ways)), "0", (0.6, 0.8, 0.0))]
    # A ring opens only where two joints along it let go in the same direction.
    assert bool(order_of(ring).locked) == (len(set(ways)) == len(ways))
