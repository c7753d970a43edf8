"""The tables of a piece file: every key with its kind and with what it measures, said once, here.

A length is in the piece's own unit. The file is read through these tables, and a fault quotes their words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from woodmath import splay
from woodmath.piece_details import FootTenon, Tongue
from woodmath.piece_reading import Group, Rows, Table
from woodmath.piece_turned import TurnedTop
from woodmath.piece_values import Choice, Count, Length, Threads
from woodmath.post_joint import ENDS


@dataclass(frozen=True)
class Post(Table):
    """The four corner posts, all alike.

    Parameters
    ----------
    square, length : float
        Side of the square section, and length to cut, > 0, in the piece's unit.
    foot, top : float
        What stands below and above the panels, measured along the post, 0 or more.
    turned : TurnedTop, optional
        How the top is turned; None where the post is square up to its end.

    >>> Post(square=1.75, length=14, foot=3, top=2).square
    1.75
    """

    square: Annotated[float, Length("side of the post's square section", stock=True)]
    length: Annotated[float, Length("whole length to cut, with the tenon for a rocker where there is one")]
    foot: Annotated[
        float,
        Length(
            "from the floor, or the shoulder on a rocker, to the panels' lower edge, measured along the post",
            from_zero=True,
        ),
    ]
    top: Annotated[
        float,
        Length("from the panels' upper edge to the post's top, measured along the post", from_zero=True),
    ]
    turned: Annotated[TurnedTop | None, Group("the turned top of every post", TurnedTop)] = None


@dataclass(frozen=True)
class End(Table):
    """The two end panels, shoulder to shoulder; wider at the top where the piece is splayed.

    Parameters
    ----------
    top, bottom : float
        Width at the upper and at the lower edge, measured level, > 0, in the piece's unit.
    height, thickness : float
        Height, measured upright, and thickness of the board, > 0.

    >>> End(top=13, bottom=10.5, height=8, thickness=0.875).height
    8
    """

    top: Annotated[float, Length("width at the upper edge, shoulder to shoulder, measured level")]
    bottom: Annotated[float, Length("width at the lower edge, shoulder to shoulder, measured level")]
    height: Annotated[float, Length("height of the panel, measured upright")]
    thickness: Annotated[float, Length("thickness of the board", stock=True)]

    @property
    def outward(self) -> float:
        """How far each edge goes outward from the bottom to the top; less than 0 where it goes inward."""
        return splay.outward(self.top, self.bottom)

    @property
    def slope_length(self) -> float:
        """Length of each sloping edge: how much of the post the panel takes, measured along the post."""
        return splay.slope_length(self.top, self.bottom, self.height)

    @property
    def splay(self) -> float:
        """Lean of each edge, and so of the posts, in degrees from upright; less than 0 where it is inward."""
        return splay.splay(self.top, self.bottom, self.height)


@dataclass(frozen=True)
class Side(Table):
    """The two side panels.

    Parameters
    ----------
    length, thickness : float
        Length, shoulder to shoulder, and thickness of the board, > 0, in the piece's unit.

    >>> Side(length=18, thickness=0.875).length
    18
    """

    length: Annotated[float, Length("length of the panel, shoulder to shoulder")]
    thickness: Annotated[float, Length("thickness of the board", stock=True)]


@dataclass(frozen=True)
class TenonPlace(Table):
    """One tenon of a panel's edge; those of end and side sit at the same heights.

    Parameters
    ----------
    place : float
        Where it begins, measured along the post from the panel's lower edge, 0 or more, in the piece's unit.
    width : float
        Measured along the post, > 0.

    >>> TenonPlace(place=0.75, width=2.5).width
    2.5
    """

    place: Annotated[
        float, Length("from the panel's lower edge to the tenon's, measured along the post", from_zero=True)
    ]
    width: Annotated[float, Length("width of the tenon, measured along the post", stock=True)]


@dataclass(frozen=True)
class Joint(Table):
    """How two tenons meet in a post: the end's is named plainly, the side's is the other.

    Parameters
    ----------
    tenon_thickness, set_back : float
        Of the end's tenons, > 0, in the piece's unit.
    ends : str
        One of `woodmath.post_joint.ENDS`.
    other_thickness, other_set_back : float, optional
        Of the side's tenons, > 0; as the end's where nothing is said.
    reserve : float, optional
        Wood left behind the long tenon, > 0; needed where one is long.
    end_clearance : float
        How much every tenon falls short of its mortise, 0 or more.
    tenons : tuple of TenonPlace
        Along one panel edge; the others are alike.
    tongue : Tongue, optional
        What runs along every panel edge between the tenons; None where the file says nothing about it.

    >>> joint = Joint(tenon_thickness=0.5, set_back=0.375, ends="mitred")
    >>> joint.side_thickness, joint.side_set_back, joint.end_clearance
    (0.5, 0.375, 0.0)
    """

    tenon_thickness: Annotated[float, Length("thickness of the end's tenons", stock=True)]
    set_back: Annotated[
        float, Length("outer face of the post to the outer cheek of the end's mortise", stock=True)
    ]
    ends: Annotated[str, Choice("how the ends of the two tenons meet", ENDS)]
    other_thickness: Annotated[
        float | None, Length("thickness of the side's tenons, where it is not the same", stock=True)
    ] = None
    other_set_back: Annotated[
        float | None, Length("set-back of the side's mortise, where it is not the same", stock=True)
    ] = None
    reserve: Annotated[float | None, Length("wood left behind the long tenon", stock=True)] = None
    end_clearance: Annotated[
        float, Length("how much every tenon falls short of its mortise", stock=True, from_zero=True)
    ] = 0.0
    tenons: Annotated[tuple[TenonPlace, ...], Rows("the tenons along one panel edge", TenonPlace)] = ()
    tongue: Annotated[Tongue | None, Group("the tongue along every panel edge", Tongue)] = None

    @property
    def side_thickness(self) -> float:
        """Thickness of the side's tenons: that of the end's where nothing else is said."""
        return self.tenon_thickness if self.other_thickness is None else self.other_thickness

    @property
    def side_set_back(self) -> float:
        """Set-back of the side's mortises: that of the end's where nothing else is said."""
        return self.set_back if self.other_set_back is None else self.other_set_back

    @staticmethod
    def together(given: Mapping[str, object]) -> Iterator[tuple[str, str]]:
        """Yield the faults that `ends` and `reserve` have together."""
        if given.get("ends") == "one_long" and "reserve" not in given:
            words = 'is missing, and ends = "one_long" needs it: the wood left behind the long tenon.'
            yield "reserve", f"{words} Add reserve with a length, or choose other ends."


@dataclass(frozen=True)
class Bit(Table):
    """The auger bit that takes the waste out of the mortises.

    Parameters
    ----------
    diameter : float
        Across the spurs, > 0, in the piece's unit.
    point_length : float
        From the tip of the lead screw to the lips, 0 or more.
    threads_per_inch : float, optional
        Threads of the lead screw in an inch, > 0; either this is given or `lead`.
    lead : float, optional
        Advance in one whole turn of the brace, > 0.
    starts : int
        Threads side by side on the screw, 1 to 4.

    >>> Bit(diameter=0.4375, point_length=0.3125, threads_per_inch=12).starts
    1
    """

    diameter: Annotated[float, Length("across the spurs", stock=True)]
    point_length: Annotated[
        float, Length("from the tip of the lead screw to the lips", stock=True, from_zero=True)
    ]
    threads_per_inch: Annotated[float | None, Threads("threads of the lead screw in an inch")] = None
    lead: Annotated[float | None, Length("advance in one whole turn of the brace", stock=True)] = None
    starts: Annotated[int, Count("threads that run side by side on the lead screw", most=4)] = 1

    @staticmethod
    def together(given: Mapping[str, object]) -> Iterator[tuple[str, str]]:
        """Yield the faults that the screw's three keys have together."""
        if "lead" not in given and "threads_per_inch" not in given:
            words = "is missing: say how far one turn takes the bit."
            yield "lead", f"{words} Add either lead with a length, or threads_per_inch with a number."
        elif "lead" in given and "threads_per_inch" in given:
            yield "lead", "and threads_per_inch say the same thing twice. Keep the one that you measured."
        elif "lead" in given and "starts" in given:
            words = "goes with threads_per_inch only: lead is already the advance of a whole turn."
            yield "starts", f"{words} Take starts out."

    @staticmethod
    def instead_of(name: str) -> tuple[str, ...]:
        """Return the other ways of saying how far a turn takes the bit."""
        return {"lead": ("threads_per_inch", "starts"), "threads_per_inch": ("lead",)}.get(name, ())


@dataclass(frozen=True)
class Rocker(Table):
    """The two rockers, each an arc of an ellipse along its lower edge.

    Parameters
    ----------
    length, rise : float
        Heel to heel in a straight line, and height of the heels above the lowest point, > 0, in the piece's unit.
    bottom_radius : float
        Radius of the circle that is as round as the bottom, > 0.
    thickness, depth : float
        Of the board: through it, and from its top edge to the lowest point, > 0.
    tenon : FootTenon, optional
        How a post's foot is joined to it; None where the file says nothing about it.

    >>> Rocker(length=19, rise=2, bottom_radius=30, thickness=1, depth=4).rise
    2
    """

    length: Annotated[float, Length("heel to heel, in a straight line")]
    rise: Annotated[float, Length("height of the heels above the lowest point")]
    bottom_radius: Annotated[float, Length("radius of the circle that is as round as the bottom")]
    thickness: Annotated[float, Length("thickness of the board", stock=True)]
    depth: Annotated[float, Length("from the top edge to the lowest point, at the middle")]
    tenon: Annotated[FootTenon | None, Group("the tenon of a post's foot in the rocker", FootTenon)] = None
