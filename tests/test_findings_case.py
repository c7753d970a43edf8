"""The master's remarks on the whole case: each provoked by the one change that calls for it."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st

from woodmath import wedge
from woodmath.boring_card import boring_cards
from woodmath.cut_list import cut_lines
from woodmath.errors import WoodmathError
from woodmath.finding import Finding
from woodmath.gauge_card import gauge_card
from woodmath.piece import Piece
from woodmath.piece_details import Bead, Tongue
from woodmath.piece_file import demo_names
from woodmath.piece_shop import Board, Boards
from woodmath.piece_tables import TenonPlace
from woodmath.views.piece import whole_piece

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")


def changed(piece: Piece, table: str, **values: object) -> Piece:
    return replace(piece, **{table: replace(getattr(piece, table), **values)})


def foot(piece: Piece = CAT_BED, **values: object) -> Piece:
    return changed(piece, "rocker", tenon=replace(piece.rocker.tenon, **values))


def remarks(piece: Piece, place: str) -> list[Finding]:
    return [finding for finding in piece.findings() if finding.place == place]


PROVOKED = [
    (changed(LOG_BOX, "side", thickness=28), "caution", "the face of the side", "2 proud"),
    (LOG_BOX, "note", "the face of the side", "flush"),
    (
        changed(CAT_BED, "joint", tenons=(TenonPlace(0.125, 2.5), TenonPlace(4.75, 2.5))),
        "stop",
        "tenon 1 and the bead",
        "of the bead's hollow would show",
    ),
    (
        changed(CAT_BED, "joint", tenons=(TenonPlace(0.75, 2.5), TenonPlace(5.5, 2.5))),
        "stop",
        "tenon 2 and the bead",
        "upper edge",
    ),
    (replace(CAT_BED, bead=Bead(0.75, 0.125)), "stop", "tenon 1 and the bead", "lower edge"),
    (replace(CAT_BED, bead=None), "note", "the ends of the grooves", "no clearance lengthwise"),
    (
        changed(CAT_BED, "joint", tongue=Tongue(length=0.75, clearance=0.0625)),
        "stop",
        "the end's groove",
        "3/4 from the same face",
    ),
    (foot(line="along the post"), "stop", "putting together the right rocker", "No order closes its joints"),
    (CAT_BED, "note", "cramping the ends", "17.8° to one another"),
    # 1/16 of clearance over 5/32, the tangent of the splay, are 0.4 down from 3/4 (COMP); 1/8 are 0.8.
    (
        changed(CAT_BED, "bottom", cleat=0.0, clearance=0.0625),
        "caution",
        "what the bottom rests on",
        "3/8 and half a mark under above the panels' lower edge",
    ),
    (
        changed(CAT_BED, "bottom", cleat=0.0, clearance=0.0625),
        "caution",
        "what the bottom rests on",
        "3.2 times what lies on it",
    ),
    (changed(CAT_BED, "bottom", cleat=0.0), "stop", "what the bottom rests on", "drops through"),
    (changed(LOG_BOX, "bottom", cleat=0.0), "stop", "what the bottom rests on", "hold nothing up"),
    (changed(CAT_BED, "bottom", cleat=1.0), "caution", "the cleats", "show below"),
    (changed(CAT_BED, "end", top=10.0), "caution", "the bottom", "cannot be lifted out"),
    # The sides lean in 2 1/2 over 8, 17.35 degrees, and their inner faces lie 3/4 out: 0.224 higher by the sine (COMP).
    (
        changed(changed(CAT_BED, "end", top=5.5), "bottom", rest=0.125, cleat=0.125),
        "stop",
        "what the bottom rests on",
        "begin higher, at 1/4 and half a mark under",
    ),
    (
        changed(changed(CAT_BED, "end", top=5.5), "bottom", rest=0.25, cleat=0.25),
        "caution",
        "the cleats",
        "the sides' inner faces begin at 1/4",
    ),
    (changed(CAT_BED, "bottom", clearance=0.0), "caution", "the bottom", "pushes the joints open"),
    (changed(CAT_BED, "bottom", rest=9.0), "stop", "the bottom", "8 high"),
    (
        changed(CAT_BED, "rocker", length=13.0, rise=1.0),
        "stop",
        "the posts on the rocker",
        "beyond its heels",
    ),
    (changed(CAT_BED, "rocker", tenon=None), "caution", "the posts on the rocker", "Nothing is said"),
    (foot(width=1.75), "stop", "the foot's tenon", "has room for"),
    (foot(thickness=2.0), "stop", "the foot's tenon", "1 3/4 square"),
    (
        changed(CAT_BED, "post", length=13.125),
        "stop",
        "the length of the posts",
        "the tenon in the rocker needs",
    ),
    (CAT_BED, "note", "the grain of the foot's tenon", "8.9°"),
    (foot(thickness=1.0), "stop", "the mortise in the rocker", "nothing is left beside it"),
    (foot(thickness=0.75), "caution", "the mortise in the rocker", "1/8 of the rocker is left on each side"),
    (
        foot(changed(CAT_BED, "post", length=18), length=3.5),
        "stop",
        "the wood under the rocker's mortise",
        "through",
    ),
    (
        foot(changed(CAT_BED, "post", length=18), length=3.15),
        "caution",
        "the wood under the rocker's mortise",
        "is left",
    ),
    (CAT_BED, "note", "the rocker's heels", "short grain"),
    (
        replace(
            CAT_BED,
            boards=Boards((Board(1.75, 5, 40), Board(0.875, 6, 90), Board(1, 9, 40), Board(0.5, 7, 60))),
        ),
        "note",
        "the width of the side panel",
        "glue up 2 boards",
    ),
    (
        replace(CAT_BED, boards=Boards((Board(0.5, 7, 60),))),
        "caution",
        "the wood for the post",
        "no board on hand",
    ),
]


@pytest.mark.parametrize(
    ("piece", "severity", "place", "words"), PROVOKED, ids=[f"{each[1]}: {each[3]}" for each in PROVOKED]
)
def test_each_remark_is_called_for_by_its_own_cause(
    piece: Piece, severity: str, place: str, words: str
) -> None:
    found = remarks(piece, place)
    assert [finding.severity for finding in found if words in finding.reason] == [severity], found
    told = next(finding for finding in found if words in finding.reason)
    assert told.remedy.endswith(".")
    assert (
        re.search(r"\d", told.reason)
        or severity != "stop"
        or "cleats" in told.reason
        or "order" in told.reason
    )


def test_what_is_sound_calls_for_no_stop() -> None:
    for piece in (CAT_BED, LOG_BOX):
        assert [finding for finding in piece.findings() if finding.severity == "stop"] == []


def test_cleats_that_rest_as_high_as_the_remedy_says_are_passed() -> None:
    low = changed(changed(CAT_BED, "end", top=5.5), "bottom", rest=0.125, cleat=0.125)
    (stop,) = remarks(low, "what the bottom rests on")
    assert stop.remedy == "Rest it at 3/8 or higher, under [bottom]."
    raised = changed(low, "bottom", rest=0.375)
    assert not remarks(raised, "what the bottom rests on") and not remarks(raised, "the cleats")


def test_a_bottom_without_cleats_is_not_told_where_to_fix_them() -> None:
    (stop,) = remarks(
        changed(changed(CAT_BED, "end", top=5.5), "bottom", rest=0.125, cleat=0.0), "what the bottom rests on"
    )
    assert "no cleats" in stop.reason


@pytest.mark.parametrize("place", ["the width of the bottom board"])
def test_boards_that_are_wide_enough_call_for_no_glue(place: str) -> None:
    assert remarks(CAT_BED, place)
    wide = replace(CAT_BED, boards=Boards((*CAT_BED.boards.on_hand, Board(0.5, 14, 40))))
    assert not remarks(wide, place)


def test_a_piece_that_lists_no_boards_hears_nothing_about_them() -> None:
    assert not remarks(replace(CAT_BED, boards=Boards()), "the width of the bottom board")


def test_every_step_of_the_wedge_follows() -> None:
    assert_every_step_follows(wedge.derivation(), not_asked=frozenset({"splay"}))


@given(st.floats(1, 60))
def test_a_wedge_is_in_balance_with_what_the_sides_press(splay: float) -> None:
    # Two pressures square to the leaning faces carry the load, and their level parts are the push (statics).
    lean = math.radians(splay)
    press = 1 / (2 * math.sin(lean))
    assert wedge.push_for_load(splay) == pytest.approx(press * math.cos(lean))


FACTORS = st.sampled_from([0.05, 0.3, 0.7, 1.0, 1.0, 1.3, 2.0, 5.0])
TABLES = ("post", "end", "side", "joint", "bit", "rocker", "bead", "bottom")


@st.composite
def spoilt_pieces(draw: st.DrawFn) -> Piece:
    """Return a demo piece with some of its sizes blown up or shrunk, whether it can be built or not."""
    piece = Piece.demo(draw(st.sampled_from(demo_names())))
    for table in draw(st.lists(st.sampled_from(TABLES), min_size=1, max_size=3, unique=True)):
        held = getattr(piece, table)
        if held is not None:
            sizes = {key: size * draw(FACTORS) for key, size in vars(held).items() if isinstance(size, float)}
            piece = replace(piece, **{table: replace(held, **sizes)})
    return piece


@settings(max_examples=150, deadline=None)
@given(spoilt_pieces())
def test_whatever_the_sizes_the_master_has_words_and_the_picture_fails_at_most_in_a_sentence(
    piece: Piece,
) -> None:
    stops = [finding for finding in piece.findings() if finding.severity == "stop"]
    try:
        drawing = whole_piece.drawing(piece)
    except WoodmathError as told:
        assert str(told).endswith((".", ")."))
        assert stops
    else:
        assert drawing.headline
    if not stops:
        assert gauge_card(piece).rows and cut_lines(piece) and boring_cards(piece)
