"""What the views of setting out share: a post as its settings tell it, and where its marks go."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.bead import tenon_may_begin
from woodmath.errors import ImpossibleShape
from woodmath.finding import more
from woodmath.setting_out import (
    PostLine,
    Stretch,
    TongueStops,
    lines_of_a_post,
    stretches_of_a_post,
)
from woodmath.views.view import LengthControl, Settings, Value, number

if TYPE_CHECKING:
    from woodmath.piece import Piece

FOOT = LengthControl("foot", "foot, along the post", ("1", "6"), ("25", "150"))
PANEL = LengthControl("panel", "panel, along the post", ("5", "16"), ("120", "400"))
TOP = LengthControl("top", "top, along the post", ("1", "6"), ("15", "150"))


@dataclass(frozen=True)
class PostAsSet:
    """A post with the sizes that a view is set to; tenons that the panel has no room for stand apart.

    Parameters
    ----------
    square, foot, panel, top, foot_tenon : float
        In length units.
    tenons, crowded : tuple of (place, width)
        Those that fit on the panel's edge, and those that do not.
    tongue : TongueStops or None
        As in `woodmath.setting_out`.

    >>> PostAsSet(1.75, 3.0, 8.0, 2.0, 1.0, ((0.75, 2.5),), (), None).lines[-1].along
    13.0
    """

    square: float
    foot: float
    panel: float
    top: float
    foot_tenon: float
    tenons: tuple[tuple[float, float], ...]
    crowded: tuple[tuple[float, float], ...]
    tongue: TongueStops | None

    @classmethod
    def of(cls, settings: Settings) -> PostAsSet:
        """Read the post out of the settings of a view."""
        panel = number(settings, "panel")
        tenons = tuple(
            (number(settings, f"tenon_{each}_place"), number(settings, f"tenon_{each}_width"))
            for each in range(int(number(settings, "tenons")))
        )
        stops = TongueStops(number(settings, "bead_reach"), number(settings, "clearance"))
        return cls(
            square=number(settings, "square"),
            foot=number(settings, "foot"),
            panel=panel,
            top=number(settings, "top"),
            foot_tenon=number(settings, "foot_tenon"),
            tenons=tuple(tenon for tenon in tenons if not more(sum(tenon), panel)),
            crowded=tuple(tenon for tenon in tenons if more(sum(tenon), panel)),
            tongue=stops if settings["grooved"] == "yes" else None,
        )

    @property
    def length(self) -> float:
        """Whole length of the post."""
        return self.foot_tenon + self.foot + self.panel + self.top

    @property
    def stretches(self) -> tuple[Stretch, ...]:
        """Its stretches, with the tenons that fit."""
        return stretches_of_a_post(self.foot, self.panel, self.top, self.tenons, self.tongue, self.length)

    @property
    def lines(self) -> tuple[PostLine, ...]:
        """Its lines, with the tenons that fit."""
        return lines_of_a_post(self.foot, self.panel, self.top, self.tenons, self.tongue, self.length)

    @property
    def faults(self) -> tuple[str, ...]:
        """A sentence for the tenons that do not fit."""
        if not self.crowded:
            return ()
        count = len(self.tenons) + 1
        return (
            f"The panel's edge ends below the upper end of tenon {count}. Make the panel higher, or move the "
            "tenon down.",
        )


def post_settings(piece: Piece) -> dict[str, Value]:
    """Return the settings of a piece's post, as `PostAsSet` reads them.

    Parameters
    ----------
    piece : Piece
        With an end, whose sloping edge the panel takes of the post.

    Raises
    ------
    ImpossibleShape
        If the piece has no end.
    """
    if piece.end is None:
        raise ImpossibleShape(
            f"{piece.name} has no panels to set out. Add [end] and [side] to its file, or open another piece."
        )
    post, joint, end = piece.post, piece.joint, piece.end
    tongue, bead = joint.tongue, piece.bead
    return {
        "square": post.square,
        "foot": post.foot,
        "panel": end.slope_length,
        "top": post.top,
        "foot_tenon": max(0.0, post.length - post.foot - end.slope_length - post.top),
        "tenons": len(joint.tenons),
        **{f"tenon_{each}_place": tenon.place for each, tenon in enumerate(joint.tenons)},
        **{f"tenon_{each}_width": tenon.width for each, tenon in enumerate(joint.tenons)},
        "grooved": "yes" if tongue else "no",
        "bead_reach": tenon_may_begin(bead, end.splay) if bead else 0.0,
        "clearance": tongue.clearance if tongue else 0.0,
        "set_back": joint.set_back,
        "tenon_thickness": joint.tenon_thickness,
        "other_set_back": joint.side_set_back,
        "other_thickness": joint.side_thickness,
    }
