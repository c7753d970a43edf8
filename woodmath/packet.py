"""The shop packet: everything of a piece that goes on the bench, as one file to print, a cut list and patterns.

Nothing is worked out here. The cards, the patterns and the views come with their lengths already read; this module
puts them in the order in which the work is done, on paper, and into a folder.
"""

from __future__ import annotations

import functools
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from woodmath.card import Card
from woodmath.cards_on_paper import card_sheets
from woodmath.drawing import Drawing
from woodmath.drawings_on_paper import NOT_TO_BE_CUT, drawing_sheets
from woodmath.errors import ImpossibleShape
from woodmath.finding import Finding, stops_among
from woodmath.harmless_names import file_name, one_line, unlike_names
from woodmath.paper import PaperSheet, numbered, paper_size
from woodmath.pattern import Pattern
from woodmath.pattern_svg import pattern_svg
from woodmath.patterns_on_paper import pattern_sheets
from woodmath.safe_writing import write_all
from woodmath.sheets_in_pdf import pdf_of

if TYPE_CHECKING:
    from woodmath.piece import Piece

MOST_COPIES = 100
STOPPED = "Stopped: cut nothing, see page 1"
"""What stands on every sheet of a piece that the master would stop."""
STOPPED_DRAWING = "Stopped: cut nothing, see page 1 of the packet"
"""The same on a pattern's own drawing, which has no pages."""


def _silently(_: str) -> None:
    """Say nothing: what `packet_of` and `write_packet` do unless they are told otherwise."""


@dataclass(frozen=True)
class Contents:
    """What a packet is made of, in words and drawings.

    Parameters
    ----------
    name : str
        Of the piece.
    millimetres_per_unit : float
        One length unit of the patterns in millimetres, > 0.
    views : tuple of Drawing
        The piece with its dimensions.
    remarks : tuple of Finding
        What the master says of it.
    before_patterns, after_patterns : tuple of Card
        The cards in the order of the packet; one at least before the patterns.
    patterns : tuple of Pattern
        At true size.
    cut_list : str
        As CSV.
    """

    name: str
    millimetres_per_unit: float
    views: tuple[Drawing, ...]
    remarks: tuple[Finding, ...]
    before_patterns: tuple[Card, ...]
    patterns: tuple[Pattern, ...]
    after_patterns: tuple[Card, ...]
    cut_list: str


@dataclass(frozen=True)
class Section:
    """One part of the packet, with its sheets.

    Parameters
    ----------
    title : str
        What it is called while it is set.
    sheets : tuple of PaperSheet
        One at least.
    """

    title: str
    sheets: tuple[PaperSheet, ...]


@dataclass(frozen=True)
class Packet:
    """A packet, ready to be written.

    Parameters
    ----------
    name : str
        Of the piece.
    paper : {"a4", "letter"}
        What it is printed on.
    sections : tuple of Section
        In the order in which they are printed.
    cut_list : str
        As CSV.
    patterns : tuple of (str, str)
        Each pattern's name and its SVG.
    stops : tuple of Finding
        Why nothing is to be cut by it; every sheet is marked where there are any.
    """

    name: str
    paper: str
    sections: tuple[Section, ...]
    cut_list: str
    patterns: tuple[tuple[str, str], ...]
    stops: tuple[Finding, ...] = ()

    @property
    def sheets(self) -> tuple[PaperSheet, ...]:
        """All sheets, each with its number at the upper right, and with a warning where the work is stopped."""
        warning = STOPPED if self.stops else ""
        return numbered((sheet for section in self.sections for sheet in section.sheets), warning)

    def pdf(self) -> bytes:
        """Return the file to be printed: the same bytes for the same piece."""
        return pdf_of(f"{self.name}: shop packet", self.sheets)

    @property
    def places(self) -> tuple[PurePosixPath, ...]:
        """Where every file goes in the folder: the one to print, the cut list, each pattern."""
        name = file_name(self.name)
        called = unlike_names([pattern for pattern, _ in self.patterns], "pattern")
        return (
            PurePosixPath(f"{name}-packet-{self.paper}.pdf"),
            PurePosixPath(f"{name}-cut-list.csv"),
            *(PurePosixPath("patterns", f"{name}-{pattern}.svg") for pattern in called),
        )

    def files(self) -> tuple[tuple[PurePosixPath, bytes], ...]:
        """Return every file of the packet, by its place in the folder."""
        drawings = (content.encode("utf-8") for _, content in self.patterns)
        contents = (self.pdf(), self.cut_list.encode("utf-8"), *drawings)
        return tuple(zip(self.places, contents, strict=True))

    def replaces(self, folder: Path) -> bool:
        """Tell whether a folder holds files of an older packet that this one is written over.

        Parameters
        ----------
        folder : Path
            Where it is going to be written.
        """
        return any(folder.joinpath(place).is_file() for place in self.places)


def contents_of(piece: Piece, copies: int = 1) -> Contents:
    """Gather what goes into the packet of a piece.

    Parameters
    ----------
    piece : Piece
        As read.
    copies : int
        How many are made at once, 1 to 100; the cut list counts them, and the order of work names them.

    Returns
    -------
    Contents
        In the order in which the work is done.

    Raises
    ------
    ImpossibleShape
        If there cannot be so many copies, or the piece has parts that cannot be drawn.

    >>> from woodmath.piece import Piece
    >>> [card.title for card in contents_of(Piece.demo("log-box")).before_patterns][:2]
    ['Cut list', 'Choosing and facing the boards']
    """
    from woodmath.boring_card import boring_cards
    from woodmath.cut_list import cut_list_card, cut_list_csv, fitting_card
    from woodmath.facing_card import facing_card
    from woodmath.gauge_card import gauge_card
    from woodmath.order_of_work import order_card
    from woodmath.patterns import patterns_of
    from woodmath.rocking_card import weight_cards
    from woodmath.season_card import season_cards
    from woodmath.turning_card import turning_cards
    from woodmath.views.piece import whole_piece

    if not 1 <= copies <= MOST_COPIES:
        raise ImpossibleShape(
            f"A packet cannot be made for {copies} copies. Give a whole number from 1 to {MOST_COPIES}."
        )
    return Contents(
        one_line(piece.name),
        piece.rule.millimetres_per_unit,
        (whole_piece.drawing(piece),),
        piece.findings(),
        (
            cut_list_card(piece, copies),
            *filter(None, (fitting_card(piece, copies),)),
            facing_card(),
            gauge_card(piece),
            *boring_cards(piece),
            *turning_cards(piece),
        ),
        patterns_of(piece),
        (order_card(piece, copies), *season_cards(piece), *weight_cards(piece)),
        cut_list_csv(piece, copies),
    )


def packet_from(contents: Contents, paper: str = "a4", said: Callable[[str], None] = _silently) -> Packet:
    """Put contents on paper.

    Parameters
    ----------
    contents : Contents
        What is to be printed.
    paper : {"a4", "letter"}
        Every sheet is of it.
    said : callable
        Is told what is being set, in a few words.

    Returns
    -------
    Packet
        Ready to be written.

    Raises
    ------
    UnknownName
        If there is no such paper.
    ImpossibleShape
        If a pattern is too large for any number of sheets.

    >>> from woodmath.piece import Piece
    >>> [section.title for section in packet_from(contents_of(Piece.demo("log-box"))).sections][0]
    'The piece'
    """
    paper_size(paper)
    name, stops = contents.name, stops_among(contents.remarks)
    first, *cards = contents.before_patterns
    if stops:
        first = replace(first, warnings=(NOT_TO_BE_CUT, *map(str, stops)))

    def section(title: str, make: Callable[[], tuple[PaperSheet, ...]]) -> Section:
        said(f"Setting: {title}")
        return Section(title, make())

    def of_card(card: Card) -> Section:
        return section(card.title, functools.partial(card_sheets, card, paper, name))

    def of_pattern(pattern: Pattern) -> Section:
        return section(
            pattern.name,
            lambda: pattern_sheets(pattern, contents.millimetres_per_unit, paper, name).sheets,
        )

    sections = (
        section(
            "The piece",
            functools.partial(drawing_sheets, "The piece", contents.views, contents.remarks, paper, name),
        ),
        *map(of_card, (first, *cards)),
        *map(of_pattern, contents.patterns),
        *map(of_card, contents.after_patterns),
    )
    drawings = tuple(
        (
            pattern.name,
            pattern_svg(pattern, contents.millimetres_per_unit, name, STOPPED_DRAWING if stops else ""),
        )
        for pattern in contents.patterns
    )
    return Packet(name, paper, sections, contents.cut_list, drawings, stops)


def packet_of(
    piece: Piece, paper: str = "a4", copies: int = 1, said: Callable[[str], None] = _silently
) -> Packet:
    """Make the shop packet of a piece.

    Parameters
    ----------
    piece : Piece
        As read.
    paper : {"a4", "letter"}
        What it is printed on.
    copies : int
        How many are made at once, 1 to 100.
    said : callable
        Is told what is being done, in a few words.

    Returns
    -------
    Packet
        Ready to be written.

    Raises
    ------
    UnknownName
        If there is no such paper.
    ImpossibleShape
        If there cannot be so many copies, or the piece has parts that cannot be drawn.

    >>> from woodmath.piece import Piece
    >>> packet_of(Piece.demo("log-box"), paper="letter").paper
    'letter'
    """
    paper_size(paper)
    said("Working out the cards and the patterns")
    return packet_from(contents_of(piece, copies), paper, said)


def write_packet(packet: Packet, folder: Path, said: Callable[[str], None] = _silently) -> tuple[Path, ...]:
    """Write a packet into a folder, over an older packet of the same piece and over nothing else.

    Parameters
    ----------
    packet : Packet
        From `packet_of`.
    folder : Path
        Is made where there is none.
    said : callable
        Is told what is being done, in a few words.

    Returns
    -------
    tuple of Path
        The files that were written: the one to print, the cut list, each pattern.

    Raises
    ------
    NotWritten
        If the folder takes no files; then none of them is changed.
    """
    said("Writing the files")
    return write_all(folder, packet.files())
