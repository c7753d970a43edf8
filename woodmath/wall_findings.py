"""The master's remarks on the wood that is left about the mortises, which the drawing marks too."""

from __future__ import annotations

from collections.abc import Iterator

from woodmath.finding import Finding, about, size
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule

BREAKING_WALL = "3 mm"
"""Common practice: a wall under an eighth of an inch breaks out before the mortise is cut."""
THIN_WALL = "6 mm"
"""Common practice: a wall under a quarter of an inch or so splits where a chisel is levered against it."""
LEAST_BEHIND = "4.5 mm"
"""Wood to leave behind a mortise (diyinfo.org, Constructing Mortice and Tenon Joints, READ)."""


def wall_findings(rule: Rule, joint: PostJoint) -> Iterator[Finding]:
    """Yield a remark for every wall about the mortises that is too thin to stand up to the chisel.

    Parameters
    ----------
    rule : Rule
        Of the joint's unit.
    joint : PostJoint
        As it is to be cut.

    Yields
    ------
    Finding
        A stop where the wall breaks out, a caution where it splits easily.

    Source: the thresholds above, each with its own.

    >>> thin = PostJoint(post=1.75, tenon_thickness=0.5, set_back=0.125)
    >>> [finding.severity for finding in wall_findings(Rule.inches(16), thin)]
    ['caution', 'caution']
    """
    walls = joint.walls
    outside, inside = (walls.outside_tenon, walls.outside_other), (walls.inside_tenon, walls.inside_other)
    behind = (walls.behind_tenon, walls.behind_other)
    further = "Give reserve more" if joint.ends == "one_long" else "Set the mortises further back"
    for where, to, pair, limit, remedy in (
        ("outside", "the outer face", outside, THIN_WALL, "Set it further back"),
        ("inside", "the inside face", inside, THIN_WALL, "Set it less far back"),
        ("behind", "the far face", behind, LEAST_BEHIND, further),
    ):
        wall = min(pair)
        whose = "each" if pair[0] == pair[1] else ("the end's", "the side's")[pair.index(wall)]
        if wall >= rule.read(limit):
            continue
        breaks = wall < rule.read(BREAKING_WALL)
        yield Finding(
            "stop" if breaks else "caution",
            f"the wall {where} the mortises",
            f"Between {whose} mortise and {to} of the post {size(rule, wall)} is left, and less than "
            f"{about(rule, BREAKING_WALL if breaks else limit)} "
            + ("breaks out under the chisel." if breaks else "splits easily when you lever against it."),
            f"{remedy}, or take thinner tenons or a bigger post.",
        )
