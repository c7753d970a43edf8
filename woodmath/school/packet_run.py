"""The command that prints a piece's shop packet, as `python -m woodmath.school.packet_run` inside the environment.

Only `main` needs the packages: the options are read before there is an environment, so that a slip of the
keyboard is answered at once.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from woodmath.errors import UnknownName, WoodmathError
from woodmath.paper import PAPERS
from woodmath.school.progress import ProgressLine

if TYPE_CHECKING:
    from woodmath.piece import Piece

PAGES = Path("notebooks")
"""Where a piece is saved from its page, seen from the folder in which the command is given."""


def add_options(parser: argparse.ArgumentParser) -> None:
    """Tell a parser what the command understands.

    Parameters
    ----------
    parser : ArgumentParser
        Gets one argument and three options.
    """
    parser.add_argument("piece", metavar="PIECE.toml", help="your piece's file, or a demo piece's name")
    parser.add_argument("--paper", choices=tuple(PAPERS), default="a4", help="what you print on (a4)")
    parser.add_argument("--copies", metavar="N", type=int, default=1, help="how many you make at once (1)")
    parser.add_argument(
        "--to", metavar="FOLDER", type=Path, default=Path(), help="where the files go (this folder)"
    )


def options_as_given(given: argparse.Namespace) -> list[str]:
    """Return options that were read, to be handed on.

    Parameters
    ----------
    given : Namespace
        From a parser with these options.

    >>> parser = argparse.ArgumentParser()
    >>> add_options(parser)
    >>> options_as_given(parser.parse_args(["bed.toml", "--copies", "2"]))
    ['--paper=a4', '--copies=2', '--to=.', '--', 'bed.toml']
    """
    return [f"--paper={given.paper}", f"--copies={given.copies}", f"--to={given.to}", "--", given.piece]


def main(arguments: Sequence[str]) -> int:
    """Make and write the packet.

    Parameters
    ----------
    arguments : sequence of str
        The piece and the options.

    Returns
    -------
    int
        0 when it is written, 1 with one sentence when it cannot be, 130 when it was stopped by Ctrl-C.
    """
    parser = argparse.ArgumentParser(allow_abbrev=False)
    add_options(parser)
    given = parser.parse_args(arguments)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    progress = ProgressLine(sys.stdout)
    try:
        progress.show(f"Reading {given.piece}")
        # The packages take most of a second to come in, and the line above is to be seen before.
        from woodmath.drawings_on_paper import NOT_TO_BE_CUT
        from woodmath.packet import packet_of, write_packet

        packet = packet_of(_piece(given.piece), given.paper, given.copies, progress.show)
        replaced = packet.replaces(given.to)
        written = write_packet(packet, given.to, progress.show)
    except WoodmathError as problem:
        progress.close()
        print(problem, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        progress.close()
        print("Stopped before the packet was ready.", file=sys.stderr)
        return 130
    progress.close()
    printed, cut_list, *patterns = (path.resolve() for path in written)
    if replaced:
        print(f"An older packet of this piece lay in {printed.parent}; this one was written over it.")
    print(f"Open first, and print at 100 % ({len(packet.sheets)} pages):  {printed}")
    print(f"The cut list as a table:  {cut_list}")
    if patterns:
        print(f"The patterns as drawings in millimetres:  {patterns[0].parent}")
    if packet.stops:
        print(f"\n{NOT_TO_BE_CUT} Every sheet is marked.")
        for stop in packet.stops:
            print(stop)
    return 0


def _piece(given: str) -> Piece:
    """Open a file, or a demo piece where there is no such file and the name looks like none."""
    from woodmath.piece import Piece
    from woodmath.piece_file import demo_names

    path = Path(given)
    if path.exists() or given in demo_names():
        return Piece.read(path) if path.exists() else Piece.demo(given)
    beside = path if path.suffix else path.with_name(f"{path.name}.toml")
    for meant in (beside, PAGES / beside):
        if meant.is_file():
            raise UnknownName(f"There is no piece {given}, but there is a file {meant}. Give that name.")
    is_a_name = len(path.parts) == 1 and not path.suffix
    return Piece.demo(given) if is_a_name else Piece.read(path)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
