"""The cards on paper: everything that they say stands there, whole, and can be read at arm's length."""

from __future__ import annotations

import collections

import pytest
import sample_packet
from hypothesis import given, settings
from hypothesis import strategies as st
from sheet_checks import assert_it_can_be_read, words_of

from woodmath.card import Card
from woodmath.cards_on_paper import card_sheets
from woodmath.drawings_on_paper import drawing_sheets
from woodmath.finding import Finding
from woodmath.fractions_in_print import set_fractions
from woodmath.paper import PAPERS, PaperSheet, numbered

CARDS = [sample_packet.cut_list(), sample_packet.gauge_card(), sample_packet.order_card()]
CELL = st.text(st.sampled_from("abcdefgh ij 1/2 mm"), max_size=120).map(lambda text: " ".join(text.split()))


def said(sheets: tuple[PaperSheet, ...]) -> str:
    return " ".join(words.text for sheet in sheets for words in words_of(sheet))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("card", CARDS, ids=lambda card: str(card.title))
def test_every_word_of_a_card_stands_on_its_sheets(card: Card, paper: str) -> None:
    sheets = numbered(card_sheets(card, paper, "A bed"))
    there = collections.Counter(said(sheets).split())
    wanted = collections.Counter(
        word
        for text in (
            card.title,
            card.lead,
            *card.columns,
            *(cell for row in card.rows for cell in row),
            *card.notes,
        )
        for word in set_fractions(text).split()
    )
    assert not wanted - there
    for sheet in sheets:
        assert_it_can_be_read(sheet)


def test_a_table_goes_on_below_its_own_head() -> None:
    card = sample_packet.gauge_card()
    sheets = card_sheets(card, "a4", "A bed")
    assert len(sheets) > 1
    for number, sheet in enumerate(sheets, start=1):
        texts = [words.text for words in words_of(sheet)]
        for column in card.columns:
            assert column in texts
        assert f"Gauge card, sheet {number} of {len(sheets)}" in texts
        assert ("Gauge card, continued" in texts) == (number > 1)


def test_the_foot_names_the_piece_and_the_page_is_counted() -> None:
    (sheet,) = numbered(card_sheets(sample_packet.cut_list(), "a4", "A rocking bed, 1/2 size"))
    assert "A rocking bed, ½ size" in said((sheet,))
    assert "page 1 of 1" in said((sheet,))


def test_numbers_end_below_one_another() -> None:
    card = Card("Masses", "", ("part", "mass"), (("post", "1.2"), ("side", "11.25")), numeric=(1,))
    (sheet,) = card_sheets(card, "a4", "A bed")
    ends = {words.box[2] for words in words_of(sheet) if words.text in {"1.2", "11.25", "mass"}}
    assert max(ends) - min(ends) < 0.01


def test_a_short_wide_table_is_laid_on_its_side_and_a_narrow_one_stands() -> None:
    masses = Card("Masses", "", ("part", "mass"), (("post", "1.2"), ("side", "11.25")))
    wide, narrow = (card_sheets(card, "a4", "A bed")[0] for card in (CARDS[0], masses))
    assert wide.width > wide.height
    assert narrow.width < narrow.height


def test_a_cell_longer_than_a_sheet_goes_on_and_one_endless_word_is_broken() -> None:
    long, endless = "glue " * 3000, "w" * 900
    sheets = numbered(card_sheets(Card("Card", "", ("a", "b"), ((long, endless),)), "a4", "A bed"))
    assert len(sheets) > 2
    text = said(sheets)
    assert text.count("glue") == 3000
    assert sum(word.count("w") for word in text.split() if set(word) == {"w"}) == 900
    for sheet in sheets:
        assert_it_can_be_read(sheet)


@settings(max_examples=40, deadline=None)
@given(
    rows=st.integers(2, 9).flatmap(
        lambda columns: st.lists(st.tuples(*[CELL] * columns), min_size=1, max_size=12)
    ),
    paper=st.sampled_from(list(PAPERS)),
)
def test_any_table_can_be_read(rows: list[tuple[str, ...]], paper: str) -> None:
    columns = tuple(f"column {number}" for number in range(len(rows[0])))
    card = Card("Any", "Of any size.", columns, tuple(rows), ("A note.",), numeric=(1,))
    for sheet in numbered(card_sheets(card, paper, "A bed")):
        assert_it_can_be_read(sheet)


def test_a_row_with_a_cell_too_few_is_our_own_fault() -> None:
    with pytest.raises(AssertionError, match="has 1 cells, and the card has 2 columns"):
        Card("Card", "", ("a", "b"), (("one",),))


def test_a_drawing_to_be_looked_at_says_that_it_is_not_to_be_measured() -> None:
    remarks = tuple(
        Finding("caution", "the post joint", f"Remark {number}. " + "It runs on. " * 12, "Look again.")
        for number in range(30)
    )
    drawing = sample_packet.small_pattern().drawing
    sheets = numbered(drawing_sheets("The piece", (drawing,), remarks, "letter", "A bed"))
    text = said(sheets)
    assert "Drawn to fit the sheet; do not measure." in text
    assert all(f"Remark {number}." in text for number in range(30))
    assert len(sheets) > 2
    for sheet in sheets:
        assert_it_can_be_read(sheet)


def test_where_there_is_nothing_to_remark_that_is_said() -> None:
    assert "The master has nothing to remark on it." in said(
        drawing_sheets("The piece", (), (), "a4", "A bed")
    )
