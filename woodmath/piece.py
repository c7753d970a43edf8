"""A whole piece read from a TOML file: its sizes, the topics that work with them, the master's remarks.

Reading checks everything at once. A size that can be read but not built is no fault of the file: the piece
opens, and `findings` says what must change.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated

from woodmath import piece_file
from woodmath.boring import AugerBit
from woodmath.ellipse import Ellipse
from woodmath.errors import BadPiece, ImpossibleShape
from woodmath.finding import Remarks
from woodmath.findings import findings_of
from woodmath.piece_details import Bead, Bottom
from woodmath.piece_kinds import Reading
from woodmath.piece_reading import Group, Table, keys_of, read_table, tables_of
from woodmath.piece_shop import NO_BOARDS, UNLISTED, Boards, Timber, Tools
from woodmath.piece_tables import Bit, End, Joint, Post, Rocker, Side
from woodmath.piece_values import RuleMark, Words
from woodmath.post_joint import PostJoint
from woodmath.rule import Rule


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
    bead, bottom, timber : Bead, Bottom, Timber, optional
        None where the file says nothing about them.
    tools, boards : Tools, Boards
        What the shop has; empty where nothing is said about it.

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
    timber: Annotated[Timber | None, Group("the wood that it is made of", Timber)] = None
    tools: Annotated[Tools, Group("what hangs in the rack", Tools)] = UNLISTED
    boards: Annotated[Boards, Group("the boards from which it is to be made", Boards)] = NO_BOARDS

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
        return cls._from_text(piece_file.text_of(path), Path(path).name)

    @classmethod
    def demo(cls, name: str) -> Piece:
        """Open one of the pieces that come with the package.

        Parameters
        ----------
        name : str
            "cat-bed" (a rocking bed for the workshop cat, in inches) or "log-box" (upright, in millimetres).

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
        return cls._from_text(piece_file.demo_text(name), f"{name}.toml")

    @classmethod
    def _from_text(cls, text: str, called: str) -> Piece:
        given = piece_file.parsed(text, called)
        tables = tables_of(cls)
        reading = Reading(_rule_in(given), {"": keys_of(cls), **tables})
        piece = read_table(cls, given, "", reading)
        if piece is None:
            count = len(reading.faults)
            told = "one fault" if count == 1 else f"{count} faults"
            lines = "\n".join(f"  {fault}" for fault in reading.faults)
            raise BadPiece(f"{called} has {told}; put right what is listed and read it again.\n{lines}")
        return piece

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

    def findings(self) -> Remarks:
        """Return the master's remarks on the piece: what must stop, then cautions, then notes.

        Returns
        -------
        Remarks
            Empty when there is nothing to say.

        Source: beside each threshold of the modules of findings.

        >>> [finding.severity for finding in Piece.demo("cat-bed").findings()]
        ['note']
        """
        return findings_of(self)


def _rule_in(given: dict[str, object]) -> Rule:
    """Return the rule that the file names; where it names none, one that can at least check its lengths."""
    rule = RuleMark("").read(given.get("rule"), "rule", Reading(Rule.inches(16)))
    if rule is not None:
        return rule
    return Rule.millimetres(0.5) if "mm" in str(given.get("rule")) else Rule.inches(16)
