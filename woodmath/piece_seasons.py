"""What a year does to a piece: the parts that move across their grain, and what follows for its joints.

Every size in the file is taken as it is at the moisture of today; the year's two ends come from the file too.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from woodmath.case import Case
from woodmath.case_solids import bottom_solid
from woodmath.errors import ImpossibleShape
from woodmath.season_derivations import edge_derivation, splay_change_derivation

if TYPE_CHECKING:
    from woodmath.piece import Piece
    from woodmath.piece_shop import Timber

BOTTOM = "bottom board"


@dataclass(frozen=True)
class MovingSize:
    """A size across the grain, today and at the two ends of the year.

    Parameters
    ----------
    part, size : str
        Whose it is, and which.
    now, driest, dampest : float
        In the piece's unit.

    >>> MovingSize("end panel", "height", 8.0, 7.94, 8.04).over_the_year
    0.1
    """

    part: str
    size: str
    now: float
    driest: float
    dampest: float

    @property
    def over_the_year(self) -> float:
        """From the driest to the dampest day, in the piece's unit, to a thousandth."""
        return round(self.dampest - self.driest, 3)

    @property
    def grows(self) -> float:
        """From today to the dampest day; less than 0 where today is damper."""
        return self.dampest - self.now

    @property
    def shrinks(self) -> float:
        """From today to the driest day, as a length that is lost; less than 0 where today is drier."""
        return self.now - self.driest


@dataclass(frozen=True)
class PieceSeasons:
    """What a year does to a piece.

    Parameters
    ----------
    sizes : tuple of MovingSize
        The end's height first.
    splays : (float, float, float)
        Lean of the posts in degrees, today, driest and dampest, as the panels would have it.
    held : float
        From the panels' farther edge to the middle of the tenon that is glued, the one nearest their own middle, along
        the post, in the piece's unit.
    edge_grows, edge_shrinks : float
        What that edge moves until the dampest and until the driest day.
    groove_clearance : float
        What the grooves leave at their ends; 0 where there is no tongue.
    bottom_clearance : float
        What it leaves free on both sides together.

    >>> from woodmath.piece import Piece
    >>> from woodmath.piece_shop import Timber
    >>> from dataclasses import replace
    >>> wood = Timber("cherry, black", moisture_now=9, moisture_low=6, moisture_high=11)
    >>> year = PieceSeasons.of(replace(Piece.demo("cat-bed"), timber=wood))
    >>> year.end.over_the_year
    0.099
    """

    sizes: tuple[MovingSize, ...]
    splays: tuple[float, float, float]
    held: float
    edge_grows: float
    edge_shrinks: float
    groove_clearance: float
    bottom_clearance: float

    @property
    def end(self) -> MovingSize:
        """The height of the end panels."""
        return self.sizes[0]

    @property
    def bottom(self) -> MovingSize | None:
        """The bottom board across its grain; None where the piece has none."""
        return next((each for each in self.sizes if each.part == BOTTOM), None)

    @classmethod
    def of(cls, piece: Piece) -> PieceSeasons:
        """Work out what the year of its file does to a piece.

        Parameters
        ----------
        piece : Piece
            With both pairs of panels and its timber, which gives both ends of the year.

        Returns
        -------
        PieceSeasons
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If it names no timber or no year, or makes no case.
        UnknownName
            If nothing is known of how its timber moves.

        Source: `woodmath.wood_movement`, `woodmath.season_derivations`.
        """
        timber = piece.timber
        if timber is None or timber.year is None:
            raise ImpossibleShape(
                f"{piece.name} does not say what a year does to its wood. Add species, moisture_low and "
                "moisture_high to [timber] in its file."
            )
        case = Case.of(piece)
        end = _moving(timber, "end panel", "height", case.height)
        sizes = [end, _moving(timber, "side panel", "width, along the slope", case.slope_length)]
        if piece.bottom:
            low, high = bottom_solid(piece, case).extent((0.0, 1.0, 0.0))
            sizes.append(_moving(timber, BOTTOM, "width", high - low))
        sizes.append(_moving(timber, "post", "square", case.square))
        if piece.rocker:
            sizes.append(_moving(timber, "rocker", "depth in the middle", piece.rocker.depth))
        lean = splay_change_derivation().function("new_splay")
        driest, dampest = (
            lean(splay=case.splay, height=end.now, new_height=height) for height in (end.driest, end.dampest)
        )
        held = _held(case)
        edge = edge_derivation().function("edge_moves")
        along = sizes[1]
        grows, shrinks = (
            edge(change=change, width=along.now, held=held) for change in (along.grows, along.shrinks)
        )
        return cls(
            tuple(sizes),
            (case.splay, driest, dampest),
            held,
            grows,
            shrinks,
            case.end_clearance,
            2 * piece.bottom.clearance if piece.bottom else 0.0,
        )


def _moving(timber: Timber, part: str, size: str, now: float) -> MovingSize:
    low, high = timber.year or (timber.moisture_now, timber.moisture_now)
    driest, dampest = (now + timber.movement(now, moisture) for moisture in (low, high))
    return MovingSize(part, size, now, driest, dampest)


def _held(case: Case) -> float:
    """Return how far the panels' farther edge lies from the tenon that is glued: the one nearest their middle."""
    low, high = case.panel
    glued = sum(case.tenons[case.glued_tenon - 1] if case.tenons else case.panel) / 2
    return max(glued - low, high - glued)
