"""The master's remarks on the wood that is left about the mortises, which the drawing marks too."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from woodmath.finding import Finding, about, more, size
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule

BREAKING_WALL = "3 mm"
"""Common practice: a wall under an eighth of an inch breaks out before the mortise is cut."""
THIN_WALL = "6 mm"
"""Common practice: a wall under a quarter of an inch or so splits where a chisel is levered against it."""
LEAST_BEHIND = "4.5 mm"
"""Wood to leave behind a mortise (diyinfo.org, Constructing Mortice and Tenon Joints, READ)."""


@dataclass(frozen=True)
class ThinWall:
    """A remark on one wall, or on two that are alike, and which they are.

    Parameters
    ----------
    walls : tuple of str
        One or two names of `woodmath.post_joint.Walls`.
    finding : Finding
        What is said of them.

    >>> thin = PostJoint(post=1.75, tenon_thickness=0.5, set_back=0.375, other_set_back=0.125)
    >>> next(thin_walls(Rule.inches(16), thin)).walls
    ('outside_other',)
    """

    walls: tuple[str, ...]
    finding: Finding


@dataclass(frozen=True)
class _Pair:
    """The same wall beside the end's mortise and beside the side's, with what makes each of them thicker."""

    where: str
    beyond: str
    limit: str
    remedies: tuple[str, str]
    remedy_for_both: str


def thin_walls(rule: Rule, joint: PostJoint) -> Iterator[ThinWall]:
    """Yield a remark for every wall about the mortises that is too thin to stand up to the chisel.

    Parameters
    ----------
    rule : Rule
        Of the joint's unit.
    joint : PostJoint
        As it is to be cut.

    Yields
    ------
    ThinWall
        Its finding is a stop where the wall breaks out, a caution where it splits easily. Two walls that are
        equal, and grow by the same remedy, are told in one.

    Source: the thresholds above, each with its own.

    >>> thin = PostJoint(post=1.75, tenon_thickness=0.5, set_back=0.125)
    >>> [wall.finding.severity for wall in thin_walls(Rule.inches(16), thin)]
    ['caution', 'caution']
    """
    for pair in _pairs(joint):
        names = (f"{pair.where}_tenon", f"{pair.where}_other")
        end, side = (getattr(joint.walls, name) for name in names)
        alike = not more(end, side) and not more(side, end)
        if alike and pair.remedy_for_both:
            if more(rule.read(pair.limit), end):
                yield ThinWall(names, _finding(rule, pair, end, "", pair.remedy_for_both))
            continue
        for name, wall, whose, remedy in zip(names, (end, side), ("end", "side"), pair.remedies, strict=True):
            if more(rule.read(pair.limit), wall):
                yield ThinWall((name,), _finding(rule, pair, wall, whose, remedy))


def _pairs(joint: PostJoint) -> tuple[_Pair, ...]:
    back, forth = "Set it further back", "Set it less far back"
    behind = ("Set the side's mortise further back", "Set the end's mortise further back")
    both_behind = "Set the mortises further back"
    if joint.ends == "one_long":
        # What is left behind the long one is its reserve, and no set-back changes it.
        behind, both_behind = ("Give reserve a greater length", behind[1]), ""
    return (
        _Pair("outside", "the outer face", THIN_WALL, (back, back), "Set them further back"),
        _Pair("inside", "the inside face", THIN_WALL, (forth, forth), "Set them less far back"),
        _Pair("behind", "the far face", LEAST_BEHIND, behind, both_behind),
    )


def _finding(rule: Rule, pair: _Pair, wall: float, whose: str, remedy: str) -> Finding:
    """Return the remark on the wall beside one panel's mortise, or beside both where it is nobody's own."""
    breaks = more(rule.read(BREAKING_WALL), wall)
    mortise, place = (f"the {whose}'s mortise",) * 2 if whose else ("each mortise", "the mortises")
    return Finding(
        "stop" if breaks else "caution",
        f"the wall {pair.where} {place}",
        f"Between {mortise} and {pair.beyond} of the post {size(rule, wall)} is left, and less than "
        f"{about(rule, BREAKING_WALL if breaks else pair.limit)} "
        + ("breaks out under the chisel." if breaks else "splits easily when you lever against it."),
        f"{remedy}, or take thinner tenons or a bigger post.",
    )
