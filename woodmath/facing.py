"""How wood is chosen and faced before a line is struck: which board for which part, and which face goes where."""

from __future__ import annotations

from dataclasses import dataclass

COMMON = "common practice"


@dataclass(frozen=True)
class Choice:
    """One thing to settle before the marking begins.

    Parameters
    ----------
    part : str
        Which part of the piece, or which work, it is about.
    choose : str
        What to choose or to do, one sentence.
    reason : str
        Why, one sentence.
    source : str
        What it rests on: "common practice", or the rule that it follows from.

    >>> Choice("posts", "Take straight wood.", "It stays straight.", "common practice").choose
    'Take straight wood.'
    """

    part: str
    choose: str
    reason: str
    source: str


CHOICES = (
    Choice(
        "posts",
        "Lay out the posts with their rings from corner to corner of the square.",
        "All four faces then look alike and shrink alike; the square becomes a slight diamond. Where a "
        "true square counts more, lay the rings square to one pair of faces.",
        f"the fan of the rings; {COMMON}",
    ),
    Choice(
        "panels, from the quarter",
        "Give the panels the boards whose rings stand square to the face, as far as you have them.",
        "They move less than flat-sawn boards, a third to three quarters as much by timber, and stay flat.",
        "wood's two coefficients of movement",
    ),
    Choice(
        "panels, flat-sawn",
        "Turn the side of the heart outward on every panel alike.",
        "As a board dries its other side goes hollow: the hollow is then inside, and the four panels do the same.",
        f"the fan of the rings; {COMMON}",
    ),
    Choice(
        "the poorer faces",
        "Turn sapwood, knots and the poorer faces to the inside of the case; on a post those are the two with the "
        "mortises.",
        "The inside is seen least; but a panel's tenons are cut from that side, so keep knots and deep sapwood away "
        "from its ends.",
        COMMON,
    ),
    Choice(
        "tenons",
        "Keep the straightest grain for the ends of the panels, where the tenons will be.",
        "A tenon holds by the fibres that run from its shoulder to its tip, and wandering grain cuts them through.",
        "the length of the fibres in a tenon",
    ),
    Choice(
        "bottom",
        "Let the grain of the bottom run along its length.",
        "A board is stiff along its grain and weak across it, and the longer span wants that more; what it moves goes "
        "the shorter way.",
        f"wood moves across its grain; {COMMON}",
    ),
    Choice(
        "face mark and face edge mark",
        "Plane one face and one edge true and square to each other, and mark both before anything else; on the posts "
        "they are the two outer faces.",
        "Gauge and square are set against these two and no other, so that an uneven thickness never adds to an error.",
        COMMON,
    ),
    Choice(
        "sawing",
        "Saw from the show face, and across the grain only after the line has been cut with a knife.",
        "A saw tears where its teeth leave the wood, and a handsaw's leave it on the far side.",
        COMMON,
    ),
    Choice(
        "planing a sloping edge",
        "Plane a sloping edge the way its fibres lean, with waste behind the far corner, or from both corners toward "
        "the middle.",
        "Fibres that lean the plane's way lie down under the iron; the last ones at a corner have nothing behind them.",
        f"the angle of the fibres to the edge; {COMMON}",
    ),
)
"""In the order in which they are settled."""
