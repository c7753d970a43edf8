"""What a year does to a piece: two beds worked out by hand, every remark provoked once, the card and the tables."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from importlib import resources
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.errors import BadPiece, ImpossibleShape, UnknownName
from woodmath.finding import Finding
from woodmath.findings_seasons import season_findings
from woodmath.piece import Piece
from woodmath.piece_seasons import PieceSeasons
from woodmath.season_card import season_cards
from woodmath.timber_shown import movement_figures, strength_figures
from woodmath.timber_table import SPECIES

PIECES = resources.files("woodmath") / "pieces"
CAT_BED = (PIECES / "cat-bed.toml").read_text(encoding="utf-8")


def cat(old: str, new: str) -> str:
    assert CAT_BED.count(old) == 1, old
    return CAT_BED.replace(old, new)


def changed(name: str, **tables: dict[str, Any]) -> Piece:
    piece = Piece.demo(name)
    return replace(
        piece, **{table: replace(getattr(piece, table), **sizes) for table, sizes in tables.items()}
    )


def cat_with_clearance(clearance: float, **timber: float) -> Piece:
    bed = changed("cat-bed", timber=timber)
    tongue = bed.joint.tongue
    assert tongue is not None
    return replace(bed, joint=replace(bed.joint, tongue=replace(tongue, clearance=clearance)))


# --- by hand ---


@dataclass(frozen=True)
class ByHand:
    """The numbers of a piece's file, written out once more, and the sums that a pencil does with them."""

    name: str
    top: float
    bottom: float
    height: float
    middle_of_glued_tenon: float
    inside_of_side: float
    rest: float
    bottom_thickness: float
    bottom_clearance: float
    coefficient: float
    square: float
    rocker: float
    now: float = 9.0
    low: float = 6.0
    high: float = 11.0

    @property
    def outward(self) -> float:
        return (self.top - self.bottom) / 2

    @property
    def slope(self) -> float:
        return math.sqrt(self.height**2 + self.outward**2)

    @property
    def bottom_width(self) -> float:
        # On the upper face of the board; what lies square to a leaning post is longer in a level line.
        up = self.rest + self.bottom_thickness
        lean = self.outward / self.height
        level = self.inside_of_side * self.slope / self.height
        return 2 * (self.bottom / 2 + up * lean + level - self.bottom_clearance)

    @property
    def held(self) -> float:
        # From the far edge to the middle of the tenon that is glued, the one nearest the panel's own middle.
        return max(self.middle_of_glued_tenon, self.slope - self.middle_of_glued_tenon)

    def grown(self, size: float, to: float) -> float:
        return size + size * self.coefficient * (to - self.now)


CAT = ByHand(
    "cat-bed",
    top=13,
    bottom=10.5,
    height=8,
    middle_of_glued_tenon=4.75 + 1.25,
    # The rebate takes 7/8 less 1/2 from the outer face: the panel stands 1/2 - 3/8 behind the post's; 7/8 of board.
    inside_of_side=1.75 - 0.125 - 0.875,
    rest=0.75,
    bottom_thickness=0.5,
    bottom_clearance=0.125,
    coefficient=0.00248,
    square=1.75,
    rocker=4,
)
"""Cherry, flat: 0.00248 (USDA Wood Handbook, GTR-190, Table 13-5)."""
HOUND = ByHand(
    "hound-bed",
    top=13 * 7 / 4,
    bottom=10.5 * 7 / 4,
    height=8 * 7 / 4,
    middle_of_glued_tenon=5.625 + 1.375,
    inside_of_side=2.25 - (0.625 - 0.5) - 1.125,
    rest=0.75 * 7 / 4,
    bottom_thickness=0.75,
    bottom_clearance=0.125,
    coefficient=0.00274,
    square=2.25,
    rocker=4 * 7 / 4,
)
"""White ash, flat: 0.00274 (the same table); the moistures and the cut come from the cat's file."""


@pytest.mark.parametrize("hand", [CAT, HOUND], ids=lambda hand: hand.name)
def test_a_bed_gets_through_its_year_as_worked_out_by_hand(hand: ByHand) -> None:
    year = PieceSeasons.of(Piece.demo(hand.name))
    sizes = (
        ("end panel", hand.height),
        ("side panel", hand.slope),
        ("bottom board", hand.bottom_width),
        ("post", hand.square),
        ("rocker", hand.rocker),
    )
    assert [moving.part for moving in year.sizes] == [part for part, _ in sizes]
    for moving, (_, size) in zip(year.sizes, sizes, strict=True):
        assert moving.now == pytest.approx(size)
        assert moving.driest == pytest.approx(hand.grown(size, hand.low))
        assert moving.dampest == pytest.approx(hand.grown(size, hand.high))
        assert moving.shrinks == pytest.approx(size * hand.coefficient * 3)
        assert moving.grows == pytest.approx(size * hand.coefficient * 2)
    heights = (hand.height, hand.grown(hand.height, hand.low), hand.grown(hand.height, hand.high))
    for splay, height in zip(year.splays, heights, strict=True):
        assert splay == pytest.approx(math.degrees(math.atan(hand.outward / height)))
    assert year.held == pytest.approx(hand.held)
    assert year.edge_grows == pytest.approx(hand.held * hand.coefficient * 2)
    assert year.edge_shrinks == pytest.approx(hand.held * hand.coefficient * 3)
    assert year.bottom == year.sizes[2]
    assert year.bottom_clearance == 2 * hand.bottom_clearance


def test_the_cats_numbers_in_full() -> None:
    # 8 × 0.00248 × 3 = 0.05952 and × 2 = 0.03968; 1.25 over 8 and what it becomes, looked up as angles.
    year = PieceSeasons.of(Piece.demo("cat-bed"))
    assert (year.end.driest, year.end.dampest) == pytest.approx((7.94048, 8.03968))
    assert year.end.over_the_year == 0.099
    assert year.splays == pytest.approx((8.88066, 8.94615, 8.83752), abs=1e-5)
    assert year.edge_grows == pytest.approx(0.02976, abs=1e-5)
    assert year.groove_clearance == pytest.approx(1 / 16)


def test_a_shrinkage_in_the_file_stands_for_the_coefficient() -> None:
    # 7.1 percent from green, even steps over 30 percent of moisture: at 9 percent the board has 1 - 0.071 × 21/30 of
    # its green width, and each percent is 0.071/30 of that.
    bed = Piece.from_text(cat('cut = "flat"', 'shrinkage = 7.1\ncut = "flat"'))
    green = 8 / (1 - 0.071 * 21 / 30)
    year = PieceSeasons.of(bed)
    assert year.end.driest == pytest.approx(8 - green * 0.071 * 3 / 30)
    assert year.end.dampest == pytest.approx(8 + green * 0.071 * 2 / 30)
    assert year.end.driest != PieceSeasons.of(Piece.demo("cat-bed")).end.driest


def test_a_shrinkage_helps_a_timber_of_which_nothing_is_printed() -> None:
    box = Piece.demo("log-box")
    with pytest.raises(UnknownName, match="No coefficient of movement for ponderosa pine is in our tables"):
        PieceSeasons.of(box)
    assert box.timber is not None
    year = PieceSeasons.of(replace(box, timber=replace(box.timber, shrinkage=6.2)))
    green = 320 / (1 - 0.062 * 18 / 30)
    assert year.end.dampest - year.end.driest == pytest.approx(green * 0.062 * 6 / 30)
    assert year.splays == (0.0, 0.0, 0.0)


def test_on_the_quarter_the_lesser_coefficient_counts() -> None:
    # 0.00126, the same table.
    year = PieceSeasons.of(changed("cat-bed", timber={"cut": "quarter"}))
    assert year.end.dampest - year.end.driest == pytest.approx(8 * 0.00126 * 5)


def test_a_wood_that_stays_as_moist_as_it_is_moves_nowhere() -> None:
    year = PieceSeasons.of(changed("cat-bed", timber={"moisture_low": 9.0, "moisture_high": 9.0}))
    assert {(moving.grows, moving.shrinks) for moving in year.sizes} == {(0.0, 0.0)}
    assert year.splays == pytest.approx((year.splays[0],) * 3)


@pytest.mark.parametrize(
    "timber", [{"moisture_low": None, "moisture_high": None}, None], ids=["no year", "no timber"]
)
def test_without_a_year_the_refusal_says_what_to_add(timber: dict[str, Any] | None) -> None:
    bed = (
        changed("cat-bed", timber=timber)
        if timber is not None
        else replace(Piece.demo("cat-bed"), timber=None)
    )
    with pytest.raises(ImpossibleShape, match=r"moisture_low and moisture_high to \[timber\]"):
        PieceSeasons.of(bed)


@given(
    some.floats(0, 30),
    some.tuples(some.floats(0, 30), some.floats(0, 30)).map(sorted),
    some.sampled_from(("flat", "quarter")),
)
def test_whatever_the_moistures_the_dampest_is_the_widest_and_the_splays_answer(
    now: float, ends: list[float], cut: str
) -> None:
    low, high = ends
    bed = changed(
        "hound-bed", timber={"moisture_now": now, "moisture_low": low, "moisture_high": high, "cut": cut}
    )
    year = PieceSeasons.of(bed)
    for moving in year.sizes:
        assert 0 < moving.driest <= moving.dampest
        assert moving.grows >= -1e-12 or now > high
        assert moving.shrinks >= -1e-12 or now < low
    _, driest, dampest = year.splays
    assert driest >= dampest - 1e-12
    assert all(finding.reason and finding.remedy for finding in season_findings(bed))
    assert len(season_cards(bed)) == 1


# --- the file ---


@pytest.mark.parametrize(
    ("old", "new", "key", "remedy"),
    [
        ("moisture_low = 6 ", "# 6 ", "timber.moisture_low is missing", "Give both, or neither"),
        ("moisture_high = 11 ", "# 11 ", "timber.moisture_high is missing", "Give both, or neither"),
        ("moisture_low = 6 ", "moisture_low = 12 ", "timber.moisture_high", "Change the two about"),
        ("moisture_low = 6 ", "moisture_low = 12.5 ", "timber.moisture_high", "Change the two about"),
        ("moisture_low = 6 ", "moisture_low = -1 ", "timber.moisture_low = -1", "from 0 to 30"),
        ("moisture_high = 11 ", "moisture_high = 31 ", "timber.moisture_high = 31", "from 0 to 30"),
        ("moisture_high = 11 ", "moisture_high = nan ", "timber.moisture_high", "from 0 to 30"),
        ("moisture_high = 11 ", 'moisture_high = "damp" ', "timber.moisture_high", "from 0 to 30"),
        ('cut = "flat"', 'cut = "rift"', "timber.cut", "quarter"),
        ('cut = "flat"', "shrinkage = 0", "timber.shrinkage = 0", "0.5 to 20"),
        ('cut = "flat"', "shrinkage = 71", "timber.shrinkage = 71", "0.5 to 20"),
        ('cut = "flat"', "shrinkge = 7.1", "timber.shrinkge", "shrinkage?"),
    ],
)
def test_a_year_that_cannot_be_is_a_plain_fault_of_the_file(
    old: str, new: str, key: str, remedy: str
) -> None:
    with pytest.raises(BadPiece) as refused:
        Piece.from_text(cat(old, new))
    assert key in str(refused.value) and remedy in str(refused.value)


def test_a_year_whose_two_ends_are_alike_and_a_file_without_a_year_are_read() -> None:
    bed = Piece.from_text(cat("moisture_low = 6 ", "moisture_low = 11 "))
    assert bed.timber is not None and bed.timber.year == (11.0, 11.0)
    bed = Piece.from_text(CAT_BED.replace("moisture_low = 6 ", "# ").replace("moisture_high = 11 ", "# "))
    assert bed.timber is not None and bed.timber.year is None


def test_a_piece_scaled_from_another_keeps_its_year_but_not_the_shrinkage_of_another_timber(
    tmp_path: Path,
) -> None:
    (tmp_path / "small.toml").write_text(cat('cut = "flat"', "shrinkage = 7.1"), encoding="utf-8")
    large = 'name = "Mine"\nscaled_from = "small.toml"\nscale = "3/2"\n'
    (tmp_path / "same.toml").write_text(large, encoding="utf-8")
    (tmp_path / "other.toml").write_text(large + '[timber]\nspecies = "ash, white"\n', encoding="utf-8")
    same, other = (Piece.read(tmp_path / f"{name}.toml").timber for name in ("same", "other"))
    assert same is not None and other is not None
    assert same.year == other.year == (6.0, 11.0)
    assert same.shrinkage == 7.1
    assert other.shrinkage is None


# --- the remarks ---

SEASONS = (
    "the seasons",
    "the moisture of the wood",
    "the figures of the seasons",
    "the height of the panels",
    "the tongues' clearance",
    "the bottom in a damp season",
    "the bottom through the year",
)
"""Every place that the year's remarks speak of."""


def places(piece: Piece) -> list[str]:
    return [finding.place for finding in season_findings(piece)]


def remark(piece: Piece, severity: str, place: str) -> Finding:
    """Return the one remark on a place, which the piece tells among all its others as well."""
    assert place in SEASONS
    found = [finding for finding in season_findings(piece) if finding.place == place]
    assert [each.severity for each in found] == [severity], list(map(str, season_findings(piece)))
    assert found[0] in piece.findings()
    return found[0]


def test_the_demo_beds_hear_what_moves_and_nothing_to_take_care_of() -> None:
    for name in ("cat-bed", "hound-bed"):
        assert places(Piece.demo(name)) == ["the height of the panels", "the bottom through the year"]
        assert {each.severity for each in season_findings(Piece.demo(name))} == {"note"}


def test_the_log_box_hears_that_nothing_is_printed_of_its_timber_and_has_no_card() -> None:
    box = Piece.demo("log-box")
    assert places(box) == ["the seasons"]
    finding = remark(box, "note", "the seasons")
    assert (
        "No coefficient of movement for ponderosa pine is in our tables, and none is made up"
        in finding.reason
    )
    assert finding.remedy == "Until you know, leave more room than looks needed."
    assert season_cards(box) == ()


def test_a_timber_in_no_table_is_told_of_and_its_own_shrinkage_ends_that() -> None:
    bed = Piece.from_text(cat('species = "cherry, black"', 'species = "plum"\ndensity = 700'))
    assert "plum" in remark(bed, "note", "the seasons").reason
    assert season_cards(bed) == ()
    bed = Piece.from_text(cat('species = "cherry, black"', 'species = "plum"\ndensity = 700\nshrinkage = 9'))
    assert "the seasons" not in places(bed)
    assert len(season_cards(bed)) == 1


@pytest.mark.parametrize(("now", "words"), [(5.5, "too wide"), (12.5, "too narrow")])
def test_wood_that_is_drier_or_damper_than_the_whole_year_is_a_caution(now: float, words: str) -> None:
    finding = remark(changed("cat-bed", timber={"moisture_now": now}), "caution", "the moisture of the wood")
    assert finding.reason == (
        f"It holds {now:g} percent today, and where the piece will stand it comes to 6 to 11: what you fit now "
        f"turns out {words} all the year."
    )


@pytest.mark.parametrize("now", [6.0, 8.0, 11.0])
def test_wood_within_its_year_is_none(now: float) -> None:
    assert "the moisture of the wood" not in places(changed("cat-bed", timber={"moisture_now": now}))


@pytest.mark.parametrize(
    ("timber", "outside"),
    [
        ({"moisture_low": 5.0}, "5 lies outside"),
        ({"moisture_high": 16.0}, "16 lies outside"),
        ({"moisture_low": 4.0, "moisture_high": 18.0}, "4 and 18 lie outside"),
        # Reckoned from today, the figures are carried as far as today is away.
        ({"moisture_now": 20.0}, "20 lies outside"),
        ({"moisture_now": 3.0}, "3 lies outside"),
    ],
)
def test_moistures_beyond_the_coefficients_range_are_told_and_a_shrinkage_needs_no_such_word(
    timber: dict[str, float], outside: str
) -> None:
    finding = remark(changed("cat-bed", timber=timber), "note", "the figures of the seasons")
    assert "The coefficients hold from 6 to 14 percent" in finding.reason and outside in finding.reason
    own = changed("cat-bed", timber={**timber, "shrinkage": 7.1})
    assert "the figures of the seasons" not in places(own)


def test_the_height_of_the_panels_is_told_with_the_splay_where_there_is_one() -> None:
    finding = remark(Piece.demo("cat-bed"), "note", "the height of the panels")
    assert (
        "the splay they ask of the posts goes from 8.95° at the driest to 8.84° at the dampest"
        in finding.reason
    )
    assert "7 15/16" in finding.reason and "8 1/16" in finding.reason
    box = changed("log-box", timber={"shrinkage": 6.2})
    assert "splay" not in remark(box, "note", "the height of the panels").reason


def test_a_panel_that_moves_less_than_a_mark_is_not_told_of() -> None:
    # 8 × 0.00126 × 5 is 0.050, and a mark of this rule 0.0625.
    assert "the height of the panels" not in places(changed("cat-bed", timber={"cut": "quarter"}))


def test_a_tongue_without_room_for_the_dampest_day_is_a_caution_and_its_remedy_helps() -> None:
    # 4.0971 × 0.00248 × 2 = 0.0203: a 64th is too little, and a 32nd enough.
    finding = remark(cat_with_clearance(1 / 64), "caution", "the tongues' clearance")
    assert "the swelling panel pushes against the post" in finding.reason
    assert "[joint.tongue] a clearance of 1/16 or more" in finding.remedy
    for clearance in (1 / 32, 1 / 16):
        assert "the tongues' clearance" not in places(cat_with_clearance(clearance))


def test_fitted_at_its_dampest_a_tongue_wants_no_clearance() -> None:
    assert "the tongues' clearance" not in places(cat_with_clearance(0.0, moisture_now=11.0))
    assert "the tongues' clearance" in places(cat_with_clearance(0.0, moisture_now=10.0))


def test_panels_without_a_tongue_hear_nothing_of_one() -> None:
    bed = Piece.demo("cat-bed")
    assert "the tongues' clearance" not in places(replace(bed, joint=replace(bed.joint, tongue=None)))


def test_a_tenon_that_begins_where_the_bead_ends_does_not_hide_that_the_tongue_has_no_room() -> None:
    bed = cat_with_clearance(1 / 64)
    first, second = bed.joint.tenons
    bed = replace(bed, joint=replace(bed.joint, tenons=(replace(first, place=5 / 16), second)))
    assert PieceSeasons.of(bed).groove_clearance == pytest.approx(1 / 64)
    remark(bed, "caution", "the tongues' clearance")


def test_without_a_bead_the_remedy_is_not_a_clearance_that_the_groove_cannot_have() -> None:
    bed = replace(Piece.demo("cat-bed"), bead=None)
    assert PieceSeasons.of(bed).groove_clearance == 0.0
    assert "bead" in remark(bed, "caution", "the tongues' clearance").remedy


def test_a_bottom_without_room_for_the_dampest_day_is_a_caution_and_its_remedy_helps() -> None:
    # It grows 0.060 until the dampest day; 1/64 on either side is 0.031.
    tight = changed("cat-bed", bottom={"clearance": 1 / 64})
    finding = remark(tight, "caution", "the bottom in a damp season")
    assert "it jams" in finding.reason
    assert "[bottom] a clearance of 1/8 in or more" in finding.remedy
    assert "the bottom through the year" not in places(tight)
    assert "the bottom in a damp season" not in places(changed("cat-bed", bottom={"clearance": 1 / 8}))


def test_a_bottom_that_has_room_is_told_how_much_it_moves_and_a_steady_one_nothing() -> None:
    finding = remark(Piece.demo("cat-bed"), "note", "the bottom through the year")
    assert "has room for that" in finding.reason
    steady = changed("cat-bed", timber={"moisture_low": 8.8, "moisture_high": 9.2})
    assert places(steady) == []
    without = replace(Piece.demo("cat-bed"), bottom=None)
    assert places(without) == ["the height of the panels"]
    assert PieceSeasons.of(without).bottom is None


@pytest.mark.parametrize(
    "silent",
    [
        lambda bed: replace(bed, timber=None),
        lambda bed: replace(bed, timber=replace(bed.timber, moisture_low=None, moisture_high=None)),
        lambda bed: replace(bed, side=None),
        lambda bed: replace(bed, end=None),
    ],
    ids=["no timber", "no year", "no sides", "no ends"],
)
def test_who_says_nothing_of_a_year_hears_nothing_of_one_and_has_no_card(
    silent: Callable[[Piece], Piece],
) -> None:
    bed = silent(Piece.demo("cat-bed"))
    assert places(bed) == []
    assert season_cards(bed) == ()


# --- the card ---


def test_the_cats_card_says_each_size_across_the_grain_with_what_it_gains_and_loses() -> None:
    (card,) = season_cards(Piece.demo("cat-bed"))
    assert len(card.columns) == 5
    assert [row[:2] for row in card.rows] == [
        ("end panel", "height"),
        ("side panel", "width, along the slope"),
        ("bottom board", "width"),
        ("post", "square"),
        ("rocker", "depth in the middle"),
    ]
    sizes = (CAT.height, CAT.slope, CAT.bottom_width, CAT.square, CAT.rocker)
    for row, size in zip(card.rows, sizes, strict=True):
        assert row[3] == f"{size * 0.00248 * 3:.3f}" and row[4] == f"{size * 0.00248 * 2:.3f}"
    assert card.rows[0][2] == "8" and card.rows[3][2] == "1 3/4"
    assert card.lead.startswith(
        "In black cherry, flat-sawn: 9 percent of moisture today, 6 at the driest and 11"
    )
    assert "in inches" in card.lead
    assert "from 8.95° at the driest to 8.84° at the dampest (8.88° today)" in card.notes[0]


def test_the_boxs_card_is_in_millimetres_and_says_nothing_of_a_splay_that_it_has_not() -> None:
    (card,) = season_cards(changed("log-box", timber={"shrinkage": 6.2}))
    assert "in millimetres" in card.lead
    assert [row[0] for row in card.rows] == ["end panel", "side panel", "bottom board", "post"]
    green = 320 / (1 - 0.062 * 18 / 30)
    assert card.rows[0][2:] == ("320", f"{green * 0.062 * 5 / 30:.2f}", f"{green * 0.062 * 1 / 30:.2f}")
    assert not any("splay" in note for note in card.notes)


@pytest.mark.parametrize("low", [9.0, 9.01, 9.02])
def test_no_card_writes_a_minus_before_nothing(low: float) -> None:
    (card,) = season_cards(changed("cat-bed", timber={"moisture_low": low}))
    assert not [text for row in card.rows for text in row if text in {"-0.000", "-0.0"}]


# --- the tables of timbers ---

COLUMNS = {
    movement_figures: (
        "radial_shrinkage",
        "tangential_shrinkage",
        "radial_coefficient",
        "tangential_coefficient",
    ),
    strength_figures: (
        "specific_gravity",
        "compression_parallel",
        "compression_perpendicular",
        "shear_parallel",
        "tension_perpendicular",
    ),
}


def cells(table: str) -> list[list[str]]:
    """Return what stands in the rows of a table, without its head."""
    return [
        [each.strip() for each in line.strip("|").split("|")]
        for line in table.splitlines()
        if line.startswith("|")
    ][2:]


@pytest.mark.parametrize("figures", COLUMNS, ids=["movement", "strength"])
def test_every_value_from_memory_is_marked_and_every_missing_one_said_and_no_other(figures: Any) -> None:
    shown = cells(figures()._repr_markdown_())
    assert len(shown) == len(SPECIES)
    kinds = set()
    for timber, row in zip(SPECIES, shown, strict=True):
        assert row[0] == f"{timber.name} (*{timber.botanical}*)"
        for name, cell in zip(COLUMNS[figures], row[1:], strict=True):
            printed = getattr(timber, name)
            if printed is None:
                assert cell == "missing"
            elif printed.seen == "from memory":
                assert cell == f"{printed.value:g} (from memory)"
            else:
                assert printed.seen == "read" and cell == f"{printed.value:g}"
            assert printed is None or float(cell.split()[0]) == printed.value
            kinds.add(printed.seen if printed else "missing")
    assert {"read", "missing"} <= kinds


@pytest.mark.parametrize("figures", COLUMNS, ids=["movement", "strength"])
@pytest.mark.parametrize("timber", SPECIES, ids=lambda timber: timber.name)
def test_the_sources_of_what_is_shown_stand_below_and_those_of_nothing_else(
    figures: Any, timber: Any
) -> None:
    shown = figures(timber.name)._repr_markdown_()
    assert len(cells(shown)) == 1
    sources = {printed.source for name in COLUMNS[figures] if (printed := getattr(timber, name)) is not None}
    below = shown.rpartition("Printed in: ")[2]
    assert below == "; ".join(sorted(sources, key=below.index)) + "."


def test_a_timber_that_the_course_does_not_have_is_refused_by_its_name() -> None:
    for figures in COLUMNS:
        with pytest.raises(UnknownName, match="lignum vitae"):
            figures("lignum vitae")
