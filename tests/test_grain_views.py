"""The pictures of grain say what the topics say, at the start and at the ends of their sliders."""

from __future__ import annotations

import pytest

from woodmath.drawing import Circle, Drawing, Hatch, Line
from woodmath.grain_strength import TENON_EXPONENTS, TENON_SHARES, strength_at_angle, strength_kept
from woodmath.piece import Piece
from woodmath.planing_direction import runs_with_the_grain
from woodmath.tenon_fibres import TenonFibres
from woodmath.timber import in_a_sentence, species
from woodmath.views.grain_in_the_tenon import TIMBERS, grain_in_the_tenon
from woodmath.views.sloped_edge import sloped_edge

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")


def hatches(drawing: Drawing) -> list[Hatch]:
    return [shape for shape in drawing.shapes if isinstance(shape, Hatch)]


@pytest.mark.parametrize("splay", [2.0, 9.0, 17.5, 25.0])
def test_the_two_ends_of_what_is_kept_are_those_of_the_rule(splay: float) -> None:
    ends = zip(TENON_SHARES, TENON_EXPONENTS, strict=True)
    low, high = (round(100 * strength_kept(splay, share, exponent)) for share, exponent in ends)
    drawing = grain_in_the_tenon.drawing(CAT_BED, splay=splay)
    assert f"keeps {low} to {high} percent" in drawing.headline


def test_the_cats_bed_keeps_what_was_worked_out_by_hand() -> None:
    # By hand: tangent 1.25 over 8; k = q / (q cosⁿ + sinⁿ), which is q (1 + tangent²)^(n/2) / (q + tangentⁿ).
    tangent = 1.25 / 8
    low, high = (
        round(100 * share * (1 + tangent**2) ** (n / 2) / (share + tangent**n))
        for share, n in ((0.04, 1.5), (0.10, 2))
    )
    assert f"{low} to {high} percent" in grain_in_the_tenon.drawing(CAT_BED).headline
    assert (low, high) == (40, 82)


@pytest.mark.parametrize("name", TIMBERS)
def test_a_timber_is_pressed_by_its_own_two_strengths(name: str) -> None:
    known = species(name)
    assert known.compression_parallel and known.compression_perpendicular
    along = known.compression_parallel.value
    kept = strength_at_angle(along, known.compression_perpendicular.value, 15) / along
    told = grain_in_the_tenon.drawing(CAT_BED, timber=name, splay=15).told
    assert f"{in_a_sentence(name)} keeps {round(100 * kept)} percent" in told


@pytest.mark.parametrize("tenon", ["square", "along"])
def test_no_load_is_ever_told(tenon: str) -> None:
    words = grain_in_the_tenon.drawing(CAT_BED, tenon=tenon).words
    assert "no load follows" in words
    assert "psi" not in words


def test_short_grain_is_hatched_only_where_there_is_any() -> None:
    assert len(hatches(grain_in_the_tenon.drawing(CAT_BED))) == 2
    assert hatches(grain_in_the_tenon.drawing(CAT_BED, tenon="along")) == []
    assert hatches(grain_in_the_tenon.drawing(LOG_BOX)) == []
    assert "keeps all its strength" in grain_in_the_tenon.drawing(LOG_BOX).headline


def test_the_hatched_parts_are_those_of_the_topic() -> None:
    splay, width, reach = 20.0, 2.5, 1.25
    drawing = grain_in_the_tenon.drawing(CAT_BED, splay=splay, width=width, reach=reach)
    tenon = TenonFibres(width, reach, splay)
    for hatch, part in zip(hatches(drawing), (tenon.without_root, tenon.short_of_the_tip), strict=True):
        assert len(hatch.outline) == len(part)
    # The fibres that bound the whole part lie level, as the panel's grain does.
    bounds = [shape for shape in drawing.shapes if isinstance(shape, Line) and shape.role == "accent"][:2]
    for line in bounds:
        (_, start), (_, end) = line.points
        assert start == pytest.approx(end)


def test_a_tenon_without_a_whole_fibre_is_a_fault_until_it_follows_the_grain() -> None:
    settings = {"splay": 25.0, "width": 0.5, "reach": 1.5}
    (fault,) = grain_in_the_tenon.drawing(CAT_BED, **settings).faults
    assert "Cut it along the grain" in fault
    assert grain_in_the_tenon.drawing(CAT_BED, tenon="along", **settings).faults == ()


def test_a_tenon_longer_than_the_post_says_so() -> None:
    (fault,) = grain_in_the_tenon.drawing(CAT_BED, reach=2.0).faults
    assert "comes out on the far side" in fault


def test_along_the_grain_the_mark_stands_at_nought_degrees() -> None:
    def marks(tenon: str) -> list[tuple[float, float]]:
        shapes = grain_in_the_tenon.drawing(CAT_BED, tenon=tenon).shapes
        return [shape.centre for shape in shapes if isinstance(shape, Circle)]

    assert marks("along")[0] == marks("along")[1]
    assert marks("square")[0] != marks("square")[1]


@pytest.mark.parametrize("direction", ["up", "down"])
@pytest.mark.parametrize("splay", [-15.0, -3.0, 6.0, 25.0])
@pytest.mark.parametrize("run_out", [-10.0, 0.0, 10.0])
def test_the_edge_is_drawn_torn_where_the_plane_goes_against_the_grain(
    direction: str, splay: float, run_out: float
) -> None:
    drawing = sloped_edge.drawing(CAT_BED, direction=direction, splay=splay, run_out=run_out)
    with_it = runs_with_the_grain(splay, run_out, upward=direction == "up")
    assert ("With the grain" in drawing.headline) is with_it
    surface = max(
        (shape.points for shape in drawing.shapes if isinstance(shape, Line) and not shape.closed), key=len
    )
    shaving_or_less = 60
    assert (len(surface) > shaving_or_less) is not with_it


def test_end_grain_is_told_as_such_both_ways() -> None:
    for direction in ("up", "down", "both"):
        for splay, run_out in ((0.0, 0.0), (6.0, -6.0)):
            drawing = sloped_edge.drawing(CAT_BED, direction=direction, splay=splay, run_out=run_out)
            assert "both ways are alike" in drawing.headline


def test_waste_backs_up_the_corner_to_which_the_plane_goes() -> None:
    (upper,) = hatches(sloped_edge.drawing(CAT_BED, direction="up"))
    (lower,) = hatches(sloped_edge.drawing(CAT_BED, direction="down"))
    assert min(x for x, _ in upper.outline) > max(x for x, _ in lower.outline)
    assert hatches(sloped_edge.drawing(CAT_BED, direction="both")) == []


def test_from_both_corners_one_half_is_against_the_grain_and_the_better_way_is_told() -> None:
    headline = sloped_edge.drawing(CAT_BED, direction="both", splay=12.0).headline
    assert "one half is planed against the grain" in headline
    assert "Plane upward where you can" in headline
    assert "Plane downward" in sloped_edge.drawing(CAT_BED, direction="both", splay=-12.0).headline
