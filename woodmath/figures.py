"""The still pictures of the README and of the pages, drawn from the same views as the live ones.

`python3 -m woodmath figures` draws them anew; with `--check` it says which of them no longer show what would
be drawn now. They are compared by geometry, not by bytes: another machine may round a last digit its own way.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

from woodmath.piece import Piece
from woodmath.views.bevel import struck_bevel
from woodmath.views.board_through_the_year import board_through_the_year
from woodmath.views.boring import bored_hole
from woodmath.views.edges import edge_in_section
from woodmath.views.edges_corner import panel_corner
from woodmath.views.ellipse import pins_and_string
from woodmath.views.grain_in_the_tenon import grain_in_the_tenon
from woodmath.views.hole_rows import row_of_holes
from woodmath.views.live_rocker import live_rocker
from woodmath.views.ornament_panel import ornamented_panel
from woodmath.views.piece import whole_piece
from woodmath.views.post_joint import post_section
from woodmath.views.rocker_for_a_wish import rocker_for_a_wish
from woodmath.views.setting_out import four_posts
from woodmath.views.setting_out_hands import hands_in_plan
from woodmath.views.splayed_corner import planter_corner
from woodmath.views.splayed_panel import splayed_end
from woodmath.views.square_to_round import square_to_round
from woodmath.views.two_sizes import two_sizes
from woodmath.views.view import Value, View

RENEW = "python3 -m woodmath figures"
TOLERANCE = 0.01
"""How far two numbers of a drawn path may lie apart, in points of 1/72 inch."""

_GEOMETRY = frozenset({"d", "transform", "viewBox", "width", "height", "x", "y", "points"})
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")
# Matplotlib names a clip by a hash of its numbers, so that a last digit would change the name.
_CLIP = re.compile(r"(?<=[\"#])p[0-9a-f]{10}(?=[\")])")


@dataclass(frozen=True)
class StillPicture:
    """One picture of the folder: where it comes from, and what it shows for those who cannot see it.

    Parameters
    ----------
    file : str
        Its name in the folder.
    view : View
        What draws it.
    piece : str
        Which demo piece it shows.
    alt : str
        What stands in for it, in one sentence; wherever the picture is shown, this text goes with it.
    settings : tuple of (str, value)
        Settings that differ from the piece's own.
    """

    file: str
    view: View
    piece: str
    alt: str
    settings: tuple[tuple[str, Value], ...] = ()

    def svg(self) -> str:
        """Return the picture with its sentence, as it would be drawn now."""
        # Matplotlib is wanted for nothing else here, and a first start has not installed it yet.
        from woodmath.drawing_pdf import figure_of, svg_bytes

        drawing = self.view.drawing(Piece.demo(self.piece), **dict(self.settings))
        return svg_bytes(figure_of(drawing)).decode("utf-8")


def still_pictures() -> tuple[StillPicture, ...]:
    """Return the table of all still pictures.

    >>> [picture.file for picture in still_pictures()][:2]
    ['00-start-here.svg', '02-scale-the-drawing.svg']
    """
    return (
        StillPicture(
            "00-start-here.svg",
            whole_piece,
            "cat-bed",
            "The cat's bed from the end, from the side, from above and as it stands: ends that lean outward "
            "between posts on two rockers, level sides, and a loose bottom.",
        ),
        StillPicture(
            "02-scale-the-drawing.svg",
            two_sizes,
            "cat-bed",
            "Two boxes in plan, the drawing and the larger piece with the same boards: the room inside has grown by "
            "more than the outside, and a red line shows where a photograph would have put it.",
        ),
        StillPicture(
            "03-the-splayed-end.svg",
            splayed_end,
            "cat-bed",
            "An end between two leaning posts, its tenons square to the sloping edges and its grain level; a red line "
            "cuts it level, and three widths are read there.",
        ),
        StillPicture(
            "04-rebate-bead-and-groove.svg",
            edge_in_section,
            "cat-bed",
            "The edge of a panel in its post, cut level: a rebate from the outer face leaves a tongue, which stands "
            "in the post's groove a little short of its floor, and the tenon goes on from it.",
        ),
        StillPicture(
            "04-bead-at-the-corner.svg",
            panel_corner,
            "cat-bed",
            "The upper corner of a panel: the bead and its quirk run along the level edge and out over the shoulder, "
            "the tongue is cut away beside them, and the tenon begins further down.",
        ),
        StillPicture(
            "05-the-corner-post.svg",
            post_section,
            "cat-bed",
            "The post of the cat's bed in section: the tenons of end and side, equally thick, stop on "
            "one diagonal line inside the post, at 45 degrees.",
            (("end_clearance", 0.0),),
        ),
        StillPicture(
            "06-strike-the-bevel.svg",
            struck_bevel,
            "cat-bed",
            "A tenon seen on its edge: a line as far from the square end as the tenon is thick, "
            "joined to the opposite corner, makes a bevel of 45 degrees.",
        ),
        StillPicture(
            "07-four-posts-at-once.svg",
            four_posts,
            "cat-bed",
            "Four square posts side by side with their ends flush: every line is squared across all four, the "
            "mortises lie nearer to the one arris on left-hand posts and to the other on right-hand ones.",
        ),
        StillPicture(
            "07-hands-of-the-posts.svg",
            hands_in_plan,
            "cat-bed",
            "The four posts in plan with stubs of the panels between them: each has mortises on its two inside "
            "faces, and posts across the diagonal are alike.",
        ),
        StillPicture(
            "08-boring-by-count.svg",
            bored_hole,
            "cat-bed",
            "A post cut open along a hole with the auger bit still in it: the hole is at its depth, "
            "and the screw's point stands a little short of the far face.",
        ),
        StillPicture(
            "08-row-of-holes.svg",
            row_of_holes,
            "cat-bed",
            "The holes along a mortise, each overlapping its neighbours, numbered in the order of "
            "boring, the two ends first.",
        ),
        StillPicture(
            "09-bevels-and-the-bottom.svg",
            planter_corner,
            "cat-bed",
            "The corner of a planter in three views: cut level, cut square to its hip, and the side's own face with "
            "the slanting line of the cut.",
        ),
        StillPicture(
            "10-the-rockers-ellipse.svg",
            pins_and_string,
            "cat-bed",
            "Two pins with a loop of string round them and a pencil draw a flat ellipse; its lowest "
            "part is the rocker.",
        ),
        StillPicture(
            "11-rocking.svg",
            live_rocker,
            "cat-bed",
            "A case on its rocker, tilted: the centre of gravity with its plumb line, the touching point beside "
            "it, and below, a ball on the curve of energy.",
        ),
        StillPicture(
            "12-choose-your-rocker.svg",
            rocker_for_a_wish,
            "cat-bed",
            "A rocker in its ellipse with two pins and a string; below it a chart of the period over the "
            "half-height, and one of the work to tip it over the rocker's length.",
            (("period", 0.8), ("rolling_limit", 20.0), ("rise", 1.25)),
        ),
        StillPicture(
            "13-wood-moves.svg",
            board_through_the_year,
            "cat-bed",
            "The end of a flat-sawn board, where it lay in the log, and the same board after a dry winter: "
            "narrower, and hollow on the side away from the heart.",
        ),
        StillPicture(
            "14-with-the-grain-and-against-it.svg",
            grain_in_the_tenon,
            "cat-bed",
            "An end panel's leaning edge with one tenon cut square to it: its level grain leaves the tenon's side, "
            "and the short grain is hatched; beside it a chart of the strength that is kept at an angle to the "
            "grain.",
        ),
        StillPicture(
            "15-from-square-to-round.svg",
            square_to_round,
            "cat-bed",
            "The square end of a post with a line across every corner, the same distance from it, and the circle "
            "within: what is left of each side is as wide as the new flat.",
        ),
        StillPicture(
            "16-a-pattern-from-one-radius.svg",
            ornamented_panel,
            "cat-bed",
            "A panel that is wider above than below, with a border of leaves round it and a rosette of six petals "
            "in its middle, all drawn with a compass.",
        ),
        StillPicture(
            "17-make-your-own-piece.svg",
            whole_piece,
            "hound-bed",
            "The hound's bed from the end, from the side, from above and as it stands: the cat's bed made larger, with "
            "heavier posts, three tenons in every edge and flatter rockers.",
        ),
        StillPicture(
            "readme.svg",
            post_section,
            "log-box",
            "A corner post in section: the tenon of the end comes in from the right, the thicker one of the "
            "side from below, and inside the post they meet on one slanting line.",
            (("end_clearance", 0.0),),
        ),
    )


def difference(kept: str, drawn: str) -> str:
    """Return the first thing in which two SVG files show something else, or "" where they show the same.

    Parameters
    ----------
    kept, drawn : str
        The file as it is kept, and as it would be drawn now.

    >>> difference('<svg><path d="M 0 1"/></svg>', '<svg><path d="M 0 1.004"/></svg>')
    ''
    >>> difference('<svg><path d="M 0 1"/></svg>', '<svg><path d="M 0 1.5"/></svg>')
    'path 1 has "1" in its d, and would have "1.5"'
    """
    try:
        before, after = (
            list(ElementTree.fromstring(_with_plain_names(text)).iter()) for text in (kept, drawn)
        )
    except ElementTree.ParseError as trouble:
        return f"it is not an SVG file ({trouble})"
    for number, (one, other) in enumerate(zip(before, after, strict=False)):
        name = f"{one.tag.rpartition('}')[2]} {number}"
        if one.tag != other.tag or set(one.attrib) != set(other.attrib):
            return f"{name} would be another element"
        if (one.text or "").strip() != (other.text or "").strip():
            old, new = _where_they_part(one.text or "", other.text or "")
            return f'{name} says "{old}", and would say "{new}"'
        for key, value in one.attrib.items():
            if not _same(value, other.attrib[key], key in _GEOMETRY):
                old, new = _where_they_part(value, other.attrib[key])
                return f'{name} has "{old}" in its {key.rpartition("}")[2]}, and would have "{new}"'
    if len(before) != len(after):
        return f"it has {len(before)} elements, and would have {len(after)}"
    return ""


def _with_plain_names(text: str) -> str:
    names: dict[str, str] = {}
    return _CLIP.sub(lambda found: names.setdefault(found[0], f"clip{len(names)}"), text)


def _same(one: str, other: str, geometry: bool) -> bool:
    if one == other or not geometry:
        return one == other
    if _NUMBER.sub("#", one).split() != _NUMBER.sub("#", other).split():
        return False
    pairs = zip(_NUMBER.findall(one), _NUMBER.findall(other), strict=True)
    return all(abs(float(first) - float(second)) <= TOLERANCE for first, second in pairs)


def _where_they_part(one: str, other: str) -> tuple[str, str]:
    """Return a few words of each of two texts, from the first that differs."""
    old, new = one.split(), other.split()
    alike = sum(1 for _ in itertools.takewhile(lambda pair: pair[0] == pair[1], zip(old, new, strict=False)))
    here = slice(alike, alike + 4)
    return " ".join(old[here]) or "nothing more", " ".join(new[here]) or "nothing more"


def faults(pictures: tuple[StillPicture, ...], folder: Path) -> Iterator[str]:
    """Yield a sentence for each picture of a folder that is missing, out of date, or drawn by nothing.

    Parameters
    ----------
    pictures : tuple of StillPicture
        What the folder should hold.
    folder : Path
        Where the pictures are kept.

    >>> list(faults((), Path("no-such-folder")))
    []
    """
    for picture in pictures:
        file = folder / picture.file
        if not file.is_file():
            yield f"{picture.file} is missing."
            continue
        found = difference(file.read_text(encoding="utf-8"), picture.svg())
        if found:
            yield f"{picture.file} is not what would be drawn now: {found}."
    for stray in sorted(
        {file.name for file in folder.glob("*.svg")} - {picture.file for picture in pictures}
    ):
        yield f"{stray} is drawn by nothing here: take it away, or add it to the table of still pictures."


def write(pictures: tuple[StillPicture, ...], folder: Path) -> None:
    """Draw every picture anew into a folder.

    Parameters
    ----------
    pictures : tuple of StillPicture
        What is to be drawn.
    folder : Path
        Where they go; made if it is not there.
    """
    folder.mkdir(parents=True, exist_ok=True)
    for picture in pictures:
        (folder / picture.file).write_bytes(picture.svg().encode("utf-8"))


def main(argv: list[str]) -> int:
    """Draw the still pictures, or check those that are kept.

    Parameters
    ----------
    argv : list of str
        Nothing, or "--check".

    Returns
    -------
    int
        0 when all is well, 1 when a picture must be renewed, 2 when the command was not understood.
    """
    folder = Path(__file__).resolve().parent.parent / "figures"
    pictures = still_pictures()
    if argv == ["--check"]:
        found = list(faults(pictures, folder))
        for fault in found:
            print(fault)
        if found:
            print(f"Renew the pictures with: {RENEW}\nThen look at them before you commit them.")
            return 1
        print(f"{len(pictures)} of {len(pictures)} pictures show what would be drawn now.")
        return 0
    if argv:
        print(f"figures does not know {' '.join(argv)}. Write {RENEW}, or {RENEW} --check.")
        return 2
    write(pictures, folder)
    print(f"{len(pictures)} pictures are in {folder}.")
    return 0
