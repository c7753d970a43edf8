"""What the packet and the master say about rocking: the card, and the remarks."""

from __future__ import annotations

from dataclasses import replace

import pytest

from woodmath.findings_rocking import rocking_findings
from woodmath.piece import Piece
from woodmath.rocking_card import rocking_card


def remarks(piece: Piece) -> list[tuple[str, str]]:
    return [(each.severity, each.reason) for each in rocking_findings(piece)]


@pytest.mark.parametrize("name", ["cat-bed", "hound-bed"])
def test_the_card_says_what_the_body_does(name: str) -> None:
    piece = Piece.demo(name)
    card = rocking_card(piece)
    said = {row[0]: row[1:] for row in card.rows}
    for column, body in enumerate((piece.rocking_body(), piece.rocking_body(load=True))):
        assert float(said["a small swing, there and back"][column].split()[0]) == pytest.approx(
            body.period(), abs=0.0051
        )
        assert float(said["rolling limit: rolls back from"][column].rstrip("°")) == pytest.approx(
            body.rolling_limit, abs=0.051
        )
        assert float(said["barrier: work to bring it over"][column].split()[0]) == pytest.approx(
            body.barrier, abs=0.051
        )
        assert float(said["goes over at"][column].rstrip("°")) == pytest.approx(body.tip_angle, abs=0.051)
        rim = next(key for key in said if key.startswith("push at the rim"))
        push = float(said[rim][column].split()[0])
        assert 0 < push < body.mass * 9.80665
        assert float(said["grip of the floor for that push"][column]) == pytest.approx(
            push / (body.mass * 9.80665), abs=0.01
        )
        higher = said["so much higher the weight may lie and it still stands"][column]
        margin = piece.rule.read(higher) * 0.0254
        assert replace(body, centre_height=body.centre_height + 0.99 * margin).is_stable
        assert not replace(body, centre_height=body.centre_height + 1.01 * margin).is_stable
    assert all(len(row) == len(card.columns) for row in card.rows)
    assert "promise nothing" in card.notes[0]


def test_a_sound_bed_gets_no_remark_on_its_rocking() -> None:
    assert remarks(Piece.demo("cat-bed")) == remarks(Piece.demo("hound-bed")) == []


def test_a_bed_on_rockers_that_are_too_round_is_stopped_before_it_is_sawn() -> None:
    bed = Piece.demo("cat-bed")
    round_one = replace(bed, rocker=replace(bed.rocker, length=9.0, rise=2.0, bottom_radius=6.0))
    [(severity, said), *_] = remarks(round_one)
    assert severity == "stop" and "does not stand empty" in said
    assert rocking_card(round_one).rows[2][1] == "it goes over"


def test_a_cat_on_the_rim_makes_it_lean_and_a_heavy_one_takes_it_over() -> None:
    bed = Piece.demo("cat-bed")
    cushion, cat = bed.load
    [(severity, said)] = remarks(replace(bed, load=(cushion, replace(cat, offset=5.0))))
    assert severity == "caution" and "askew" in said
    [(severity, said)] = remarks(replace(bed, load=(cushion, replace(cat, offset=9.0, mass=60.0))))
    assert severity == "stop" and "over" in said


def test_with_the_load_aside_no_height_is_promised() -> None:
    bed = Piece.demo("cat-bed")
    cushion, cat = bed.load
    aside = rocking_card(replace(bed, load=(cushion, replace(cat, offset=5.0))))
    assert aside.rows[2][1] != aside.rows[2][2] == "leans already"
    assert "askew" in aside.rows[5][2]
