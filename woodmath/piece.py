"""A whole piece read from a TOML file: its sizes, the topics that work with them, the master's remarks.

Reading checks everything at once. A size that can be read but not built is no fault of the file: the piece
opens, and `findings` says what must change.
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import Annotated

from woodmath import piece_as_made, piece_file, piece_origin
from woodmath.boring import AugerBit
from woodmath.ellipse import Ellipse
from woodmath.errors import BadPiece, ImpossibleShape
from woodmath.finding import Remarks
from woodmath.findings import findings_of
from woodmath.piece_as_made import Change, changes_between, made_over
from woodmath.piece_details import Bead, Bottom
from woodmath.piece_file import Shelf
from woodmath.piece_kinds import MOST_FAULTS, Reading, as_written
from woodmath.piece_load import Load
from woodmath.piece_origin import Origin, origin_of, scaled_over
from woodmath.piece_ornament import Ornament
from woodmath.piece_reading import NOT_A_KEY, Group, Rows, Table, keys_of, read_table, tables_of
from woodmath.piece_rocking import rocking_body_of
from woodmath.piece_shop import NO_BOARDS, UNLISTED, Boards, Timber, Tools
from woodmath.piece_tables import Bit, End, Joint, Post, Rocker, Side
from woodmath.piece_values import RuleMark, Words
from woodmath.post_joint import PostJoint
from woodmath.rocking import RockingBody
from woodmath.rule import Rule

APART = (*piece_origin.KEYS, piece_as_made.KEY)
"""Keys at the top of a file that say how its tables are to be taken."""


@dataclass(frozen=True)
class Piece(Table):
    """A piece as its file describes it; every length is in the unit of its rule.

    Read one with `Piece.read`, or open one of those that come with the package with `Piece.demo`.

    Parameters
    ----------
    name : str
        What it is called.
    rule : Rule
        Reads and marks every length of it.
    post, joint, bit : Post, Joint, Bit
        What every piece has; the sizes are told in `woodmath.piece_tables`, as are the following.
    end, side, rocker : End, Side, Rocker, optional
        None where the piece has no such part.
    bead, bottom, ornament, timber : Bead, Bottom, Ornament, Timber, optional
        None where the file says nothing about them.
    load : tuple of Load
        What lies or sits in it; empty where the file says nothing about it.
    tools, boards : Tools, Boards
        What the shop has; empty where nothing is said about it.
    origin : Origin, optional
        Where it is scaled from; None where its file gives all sizes itself.
    cut : tuple of str
        What is already cut, by the names in `woodmath.piece_as_made.CUT`.

    >>> piece = Piece.demo("cat-bed")
    >>> piece.rule.mark(piece.post.square, unit=True)
    '1 3/4 in'
    """

    name: Annotated[str, Words("what the piece is called")]
    rule: Annotated[Rule, RuleMark("the smallest mark of the rule, with its unit")]
    post: Annotated[Post, Group("the four corner posts", Post)]
    joint: Annotated[Joint, Group("how two tenons meet in a post", Joint)]
    bit: Annotated[Bit, Group("the auger bit for the mortises", Bit)]
    end: Annotated[End | None, Group("the two end panels", End)] = None
    side: Annotated[Side | None, Group("the two side panels", Side)] = None
    rocker: Annotated[Rocker | None, Group("the two rockers", Rocker)] = None
    bead: Annotated[Bead | None, Group("the bead along the panels' level edges", Bead)] = None
    bottom: Annotated[Bottom | None, Group("the loose bottom board", Bottom)] = None
    ornament: Annotated[
        Ornament | None, Group("the ornament on a pair of panels, with compass and rule", Ornament)
    ] = None
    timber: Annotated[Timber | None, Group("the wood that it is made of", Timber)] = None
    load: Annotated[tuple[Load, ...], Rows("what lies or sits in it", Load)] = ()
    tools: Annotated[Tools, Group("what hangs in the rack", Tools)] = UNLISTED
    boards: Annotated[Boards, Group("the boards from which it is to be made", Boards)] = NO_BOARDS
    origin: Origin | None = field(default=None, compare=False, repr=False, metadata=NOT_A_KEY)
    cut: tuple[str, ...] = field(default=(), metadata=NOT_A_KEY)
    plan: Piece | None = field(default=None, compare=False, repr=False, metadata=NOT_A_KEY)

    @classmethod
    def read(cls, path: str | os.PathLike[str]) -> Piece:
        """Read a piece file.

        Parameters
        ----------
        path : str or path
            A TOML file in UTF-8; lengths as on the rule ("7 5/8") or with a unit ("194 mm").

        Returns
        -------
        Piece
            Its lengths in the unit of its own rule. Whether it can be built is for `findings` to say.

        Raises
        ------
        BadPiece
            If the file cannot be read, or has faults; every fault is listed, with its key, what was given and
            what is possible.

        >>> Piece.read("no-such-piece.toml")  # doctest: +ELLIPSIS
        Traceback (most recent call last):
        woodmath.errors.BadPiece: There is no file no-such-piece.toml. ...
        """
        file = Path(path)
        return cls._on_shelf(piece_file.text_of(file), Shelf(file.name, file.parent))

    @classmethod
    def from_text(cls, text: str, folder: str | os.PathLike[str] | None = None) -> Piece:
        """Read a piece from the text of a file, whether it was saved or not.

        Parameters
        ----------
        text : str
            TOML.
        folder : str or path, optional
            Where it is going to lie, and so where the file lies that it may be scaled from.

        Returns
        -------
        Piece
            Its lengths in the unit of its own rule.

        Raises
        ------
        BadPiece
            As for `read`.

        >>> text = piece_file.demo_text("cat-bed").replace('length = "18"', 'length = "20"')
        >>> Piece.from_text(text).side.length
        20.0
        """
        return cls._on_shelf(text, Shelf("This text", Path(folder) if folder is not None else None))

    @classmethod
    def demo(cls, name: str) -> Piece:
        """Open one of the pieces that come with the package.

        Parameters
        ----------
        name : str
            "cat-bed" (a rocking bed for the workshop cat, in inches), "hound-bed" (the same for a hound, scaled up
            from it) or "log-box" (upright, in millimetres).

        Returns
        -------
        Piece
            Its lengths in the unit of its own rule.

        Raises
        ------
        UnknownName
            If there is no such piece; the message lists those there are.

        >>> Piece.demo("log-box").rule.unit
        'millimetre'
        """
        return cls._on_shelf(piece_file.demo_text(name), Shelf(f"{name}.toml"))

    @classmethod
    def _on_shelf(cls, text: str, shelf: Shelf) -> Piece:
        given = piece_file.parsed(text, shelf.called)
        said = {key: given.pop(key) for key in APART if key in given}
        reading = Reading(_rule_in(given), {"": (*keys_of(cls), *APART), **tables_of(cls)}, apart=APART)
        planned = cls._planned(given, said, shelf, reading)
        cut: tuple[str, ...] = ()
        piece = planned
        if planned is not None and piece_as_made.KEY in said and not reading.faults:
            piece, cut = made_over(planned, said[piece_as_made.KEY], reading)
        if piece is None or reading.faults:
            raise _refusal(shelf.called, reading.faults)
        return replace(piece, cut=cut, plan=planned) if piece_as_made.KEY in said else piece

    @classmethod
    def _planned(
        cls, given: dict[str, object], said: dict[str, object], shelf: Shelf, reading: Reading
    ) -> Piece | None:
        """Return the piece as its file plans it: from its own tables, or by scale from another piece."""
        if "scaled_from" not in said:
            for key in piece_origin.KEYS:
                if key in said:
                    reading.fault(key, f"goes with scaled_from only. Add scaled_from, or take {key} out.")
            return read_table(cls, given, "", reading)
        source = cls._source(said["scaled_from"], shelf, reading)
        if source is None:
            return None
        if "rule" not in given:
            reading.rule = source.rule
        piece, scale = scaled_over(source, given, said, reading)
        if reading.faults:
            return None
        return replace(piece, origin=origin_of(piece, source, scale, given))

    @classmethod
    def _source(cls, name: object, shelf: Shelf, reading: Reading) -> Piece | None:
        if not isinstance(name, str):
            reading.refuse(
                "scaled_from", name, 'name a demo piece, or a file of the same folder: "other-bed.toml".'
            )
            return None
        try:
            text, there = shelf.beside(name)
            return cls._on_shelf(text, there).planned
        except BadPiece as trouble:
            reading.fault("scaled_from", f"= {as_written(name)}: {trouble!s:.600}")
            return None

    @property
    def planned(self) -> Piece:
        """The piece as it was planned; itself where its file says nothing of what came out otherwise."""
        return self if self.plan is None else self.plan

    @cached_property
    def changes(self) -> tuple[Change, ...]:
        """Every value that came out otherwise than planned."""
        return changes_between(self.planned, self)

    def post_joint(self) -> PostJoint:
        """Return the joint in a post: the end's tenon first, the side's as the other.

        Returns
        -------
        PostJoint
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If no post of that size can hold such a joint.

        >>> Piece.demo("cat-bed").post_joint().tenon.bevel
        45.0
        """
        return PostJoint(
            post=self.post.square,
            tenon_thickness=self.joint.tenon_thickness,
            set_back=self.joint.set_back,
            other_thickness=self.joint.side_thickness,
            other_set_back=self.joint.side_set_back,
            ends=self.joint.ends,
            reserve=self.joint.reserve,
            end_clearance=self.joint.end_clearance,
        )

    def auger_bit(self) -> AugerBit:
        """Return the bit for the mortises, its lead in the piece's unit even where threads are per inch.

        Returns
        -------
        AugerBit
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If there is no such bit.

        >>> round(Piece.demo("log-box").auger_bit().lead, 2)
        2.54
        """
        bit = self.bit
        if bit.threads_per_inch is not None:
            return AugerBit.from_threads(
                bit.diameter, bit.threads_per_inch, bit.point_length, bit.starts, unit=self.rule.unit
            )
        return AugerBit(bit.diameter, bit.lead or 0.0, bit.point_length)

    def ellipse(self) -> Ellipse:
        """Return the ellipse of which the rocker's lower edge is an arc.

        Returns
        -------
        Ellipse
            In the piece's unit.

        Raises
        ------
        ImpossibleShape
            If the piece has no rocker, or no ellipse has that length, rise and roundness.

        Source: the ellipse through the rocker's heels (see `woodmath.ellipse_rocker`).

        >>> round(Piece.demo("cat-bed").ellipse().radius_at_bottom, 9)
        30.0
        """
        if self.rocker is None:
            raise ImpossibleShape(
                f"{self.name} stands on its posts and has no rocker. Add [rocker] to its file "
                f"({', '.join(keys_of(Rocker))}), or open a piece that rocks."
            )
        return Ellipse.from_rocker(self.rocker.length, self.rocker.rise, self.rocker.bottom_radius)

    def rocking_body(self, load: bool = False) -> RockingBody:
        """Return the piece as one stiff body that rocks, by its weight and its rockers.

        Parameters
        ----------
        load : bool
            Whether what its file lists under [[load]] lies in it.

        Returns
        -------
        RockingBody
            In metres and kilograms.

        Raises
        ------
        ImpossibleShape
            If the piece has no rockers, names no timber, or makes no case.

        Source: `woodmath.piece_rocking`.

        >>> Piece.demo("cat-bed").rocking_body(load=True).is_stable
        True
        """
        return rocking_body_of(self, load)

    def findings(self) -> Remarks:
        """Return the master's remarks on the piece: what must stop, then cautions, then notes.

        Returns
        -------
        Remarks
            Empty when there is nothing to say.

        Source: beside each threshold of the modules of findings.

        >>> Piece.demo("cat-bed").findings()[0].severity
        'note'
        """
        return findings_of(self)


def _rule_in(given: dict[str, object]) -> Rule:
    """Return the rule that the file names; where it names none, one that can at least check its lengths."""
    rule = RuleMark("").read(given.get("rule"), "rule", Reading(Rule.inches(16)))
    if rule is not None:
        return rule
    return Rule.millimetres(0.5) if "mm" in str(given.get("rule")) else Rule.inches(16)


def _refusal(called: str, faults: list[str]) -> BadPiece:
    told = "one fault" if len(faults) == 1 else f"{len(faults)} faults"
    if len(faults) > MOST_FAULTS:
        told, faults = f"more than {MOST_FAULTS} faults", faults[:MOST_FAULTS]
    lines = "\n".join(f"  {fault}" for fault in faults)
    return BadPiece(f"{called} has {told}; put right what is listed and read it again.\n{lines}")
