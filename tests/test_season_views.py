"""The pictures of moving wood: what they say and show is what the topics say, at every position of their sliders."""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as some

from woodmath.air_and_moisture import PLACES, equilibrium_moisture
from woodmath.drawing import Drawing, Hatch, Label, Line, MovingLine, Points, Wood
from woodmath.piece import Piece
from woodmath.piece_seasons import PieceSeasons
from woodmath.ring_section import RingSection, heart_for
from woodmath.season_derivations import mitre_derivation, mitre_gap_derivation, splay_change_derivation
from woodmath.timber_table import SPECIES
from woodmath.views.board_through_the_year import board_through_the_year
from woodmath.views.mitre_through_the_year import mitre_through_the_year
from woodmath.views.moving_timber import TIMBERS
from woodmath.views.panel_through_the_year import panel_through_the_year
from woodmath.views.view import ChoiceControl, Control, LengthControl, StepControl, View
from woodmath.views.wood_in_the_air import wood_in_the_air
from woodmath.wood_movement import limits_left, movement

CAT = Piece.demo("cat-bed")
BOX = Piece.demo("log-box")
MOVING = (board_through_the_year, panel_through_the_year, mitre_through_the_year)
VIEWS = (*MOVING, wood_in_the_air)
CHERRY = (0.00248, 0.00126)
"""Along and across the rings (USDA Wood Handbook, GTR-190, Table 13-5)."""


def named(values: tuple[Any, ...] | list[Any], what: str = "name") -> Any:
    return {"argvalues": values, "ids": [getattr(each, what) for each in values]}


def ends(control: Control, piece: Piece) -> tuple[Any, ...]:
    match control:
        case LengthControl():
            return control.bounds(piece.rule)
        case StepControl():
            return (float(control.low), float(control.high))
        case ChoiceControl():
            return (control.options[0][1], control.options[-1][1])
        case _:
            raise AssertionError(control)


def labels(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, Label)]


def lines(drawing: Drawing, role: str) -> list[Points]:
    return [shape.points for shape in drawing.shapes if isinstance(shape, Line) and shape.role == role]


def moving(drawing: Drawing, role: str = "outline") -> list[MovingLine]:
    return [shape for shape in drawing.shapes if isinstance(shape, MovingLine) and shape.role == role]


def woods(drawing: Drawing, tint: str) -> list[Points]:
    return [shape.outline for shape in drawing.shapes if isinstance(shape, Wood) and shape.tint == tint]


def numbers(value: object) -> Iterator[float]:
    match value:
        case float() | int():
            yield float(value)
        case dict():
            for each in value.values():
                yield from numbers(each)
        case tuple() | list():
            for each in value:
                yield from numbers(each)


def same(one: Points, other: Points) -> bool:
    return len(one) == len(other) and all(
        math.dist(here, there) < 1e-9 for here, there in zip(one, other, strict=True)
    )


def ahead(text: str, words: str) -> float:
    """Return the number that stands where a sentence has its brackets."""
    found = re.search(words, text)
    assert found, f"{words} is not in: {text}"
    return float(found[1])


# --- every position ---


@pytest.mark.parametrize("piece", **named([CAT, BOX]))
@pytest.mark.parametrize("view", **named(VIEWS))
def test_at_every_end_of_all_sliders_together_a_view_draws_and_speaks(view: View, piece: Piece) -> None:
    for settings in itertools.product(*(ends(control, piece) for control in view.controls)):
        chosen = dict(zip((control.name for control in view.controls), settings, strict=True))
        drawing = view.drawing(piece, **chosen)
        assert drawing.headline.endswith(".") and drawing.title, chosen
        words = " ".join((drawing.headline, drawing.told, *drawing.faults, *labels(drawing)))
        assert not re.search(r"\bnan\b|\binf\b|-0(\.0+)?\b(?!\d)", words), (chosen, words)
        for shape in drawing.shapes:
            assert all(map(math.isfinite, numbers(asdict(shape)))), (chosen, shape)


@pytest.mark.parametrize("view", **named(MOVING))
def test_the_timbers_to_choose_from_are_those_of_which_both_figures_are_printed(view: View) -> None:
    control = next(each for each in view.controls if each.name == "timber")
    assert isinstance(control, ChoiceControl)
    offered = {value for _, value in control.options}
    assert offered == {
        each.name for each in SPECIES if each.radial_coefficient and each.tangential_coefficient
    }
    assert view.settings(CAT)["timber"] == "cherry, black"
    # Nothing is printed of ponderosa pine: the picture says whose figures it takes.
    assert view.settings(BOX)["timber"] in offered


@pytest.mark.parametrize("view", **named(MOVING))
def test_moistures_beyond_the_coefficients_are_told_and_those_within_are_not(view: View) -> None:
    names = [each.name for each in view.controls if "moisture" in each.name]
    within = dict(zip(names, (9.0, 6.0, 11.0) if len(names) == 3 else (11.0, 6.0), strict=True))
    assert limits_left(6, 11) == ()
    assert "The coefficients hold" not in view.drawing(CAT, **within).told
    for moisture in (4.0, 24.0):
        for name in names:
            told = view.drawing(CAT, **{**within, name: moisture}).told
            assert f"{moisture:g} lies outside" in told, (name, told)


# --- the year that goes round ---


@pytest.mark.parametrize("timber", ["cherry, black", "beech"])
@pytest.mark.parametrize("view", **named(MOVING))
def test_a_year_comes_back_to_where_it_began_and_turns_slowly(view: View, timber: str) -> None:
    shapes = [
        shape
        for shape in view.drawing(CAT, motion="moving", timber=timber).shapes
        if isinstance(shape, MovingLine)
    ]
    assert len(shapes) >= 2
    assert {(shape.seconds, len(shape.frames), shape.again) for shape in shapes} == {
        (shapes[0].seconds, len(shapes[0].frames), True)
    }
    for shape in shapes:
        frames = shape.frames
        assert same(frames[0], frames[-1])
        assert {len(frame) for frame in frames} == {len(frames[0])}
        # There and back by the same way, and slowest at both ends.
        assert all(same(one, other) for one, other in zip(frames, reversed(frames), strict=True))
        strides = [
            sum(math.dist(*pair) for pair in zip(one, other, strict=True))
            for one, other in itertools.pairwise(frames)
        ]
        half = len(strides) // 2
        assert strides[0] < strides[half // 2] > strides[half - 1]


def farthest(shape: MovingLine) -> Points:
    """Return the frame that lies farthest from the first."""
    return max(
        shape.frames,
        key=lambda frame: sum(math.dist(*pair) for pair in zip(shape.frames[0], frame, strict=True)),
    )


@pytest.mark.parametrize("afterwards", [6.0, 14.0])
@pytest.mark.parametrize("rings", [0, 40, 90])
@pytest.mark.parametrize("distance", [0.25, 6])
def test_the_board_goes_as_far_as_its_still_picture(afterwards: float, rings: float, distance: float) -> None:
    settings = {
        "width": 2,
        "thickness": 1.5,
        "rings": rings,
        "distance": distance,
        "to_moisture": afterwards,
    }
    still = board_through_the_year.drawing(CAT, **settings)
    playing = board_through_the_year.drawing(CAT, motion="moving", **settings)
    (outline,), (drawn,) = moving(playing), lines(still, "outline")
    assert same(farthest(outline), drawn)
    ring_lines = lines(still, "ring")
    assert len(ring_lines) == len(moving(playing, "ring")) > 3
    for one, other in zip(moving(playing, "ring"), ring_lines, strict=True):
        assert same(farthest(one), other)
    # It begins as it was sawn: on the broken line, which both pictures have.
    assert lines(still, "hidden") == lines(playing, "hidden")
    left, low, right, high = (
        pick(point[axis] for point in lines(still, "hidden")[0]) for pick in (min, max) for axis in (0, 1)
    )
    for x, y in outline.frames[0]:
        # A hair beside the split it may stand out of its own board by as much.
        assert left - 1e-6 <= x <= right + 1e-6 and low - 1e-6 <= y <= high + 1e-6


def test_the_panel_goes_from_its_driest_to_its_dampest() -> None:
    still = panel_through_the_year.drawing(CAT)
    panel, tongue = moving(panel_through_the_year.drawing(CAT, motion="moving"))
    (dry, dry_end), (damp, damp_end) = lines(still, "hidden"), lines(still, "accent")
    assert same(panel.frames[0], dry) and same(farthest(panel), damp)
    assert same(tongue.frames[0][3:1:-1], dry_end) and same(farthest(tongue)[3:1:-1], damp_end)


@pytest.mark.parametrize("afterwards", [6.0, 14.0])
def test_the_mitre_goes_as_far_as_its_still_picture(afterwards: float) -> None:
    still = mitre_through_the_year.drawing(CAT, to_moisture=afterwards)
    playing = mitre_through_the_year.drawing(CAT, motion="moving", to_moisture=afterwards)
    for shape, tint, before in zip(moving(playing), ("end", "board"), lines(still, "hidden"), strict=True):
        (drawn,) = woods(still, tint)
        assert same(shape.frames[0], before) and same(farthest(shape), drawn)


# --- the board ---


def direction(points: Points) -> float:
    """Return the direction of a line where it passes nearest to the middle of its board, in degrees from level."""
    middle = middle_of_board()
    one, other = min(
        itertools.pairwise(points),
        key=lambda pair: math.dist(middle, ((pair[0][0] + pair[1][0]) / 2, (pair[0][1] + pair[1][1]) / 2)),
    )
    return math.degrees(math.atan2(other[1] - one[1], other[0] - one[0])) % 180


def middle_of_board(**settings: Any) -> tuple[float, float]:
    (before,) = lines(board_through_the_year.drawing(CAT, **settings), "hidden")
    return (sum(x for x, _ in before) / 4, sum(y for _, y in before) / 4)


@pytest.mark.parametrize("motion", ["still", "moving"])
@pytest.mark.parametrize("rings", [0, 20, 45, 70, 90])
def test_rings_are_drawn_along_the_face_when_flat_square_to_it_on_the_quarter_and_aslant_between(
    motion: str, rings: int
) -> None:
    drawing = board_through_the_year.drawing(
        CAT,
        width=3,
        thickness=3,
        rings=rings,
        distance=14,
        from_moisture=9.0,
        to_moisture=9.0,
        motion=motion,
    )
    drawn = (
        lines(drawing, "ring") if motion == "still" else [each.frames[0] for each in moving(drawing, "ring")]
    )
    middle = middle_of_board(width=3, thickness=3)
    nearest = min(drawn, key=lambda points: min(math.dist(point, middle) for point in points))
    # The heart lies below on the left, so a ring falls to the right; a straight step of it may turn by a little.
    off = (direction(nearest) + rings + 90) % 180 - 90
    assert abs(off) < 5
    if rings in (0, 90):
        # All of them: along the face each leaves it as it came, on the quarter each runs from face to face.
        for points in drawn:
            (x, y), (u, v) = points[0], points[-1]
            along = abs(u - x) > abs(v - y)
            assert along == (rings == 0)


@pytest.mark.parametrize("afterwards", [6.0, 14.0])
@pytest.mark.parametrize("rings", [0, 30, 90])
def test_the_board_is_told_as_its_section_is_reckoned(rings: int, afterwards: float) -> None:
    drawing = board_through_the_year.drawing(
        CAT, width=8, thickness=1, rings=rings, distance=5, from_moisture=11, to_moisture=afterwards
    )
    along, across = (figure * (afterwards - 11) for figure in CHERRY)
    section = RingSection(8, 1, heart_for(rings, 5), along, across)
    change = section.new_width - 8
    verb = "grows" if change > 0 else "shrinks"
    assert f"this board (cherry, black) {verb} {abs(change):.3f} in" in drawing.headline
    if abs(section.cup) > 1 / 128:
        shape = "hollow" if section.cup > 0 else "round"
        assert f"becomes {shape} by {abs(section.cup):.3f} in" in drawing.told
    else:
        assert "becomes" not in drawing.told


@pytest.mark.parametrize("timber", ["cherry, black", "beech"])
@pytest.mark.parametrize("times", ["1", "8", "20"])
def test_the_board_is_drawn_as_many_times_over_as_it_says(timber: str, times: str) -> None:
    for first, afterwards in ((11.0, 6.0), (4.0, 24.0)):
        drawing = board_through_the_year.drawing(
            CAT, timber=timber, times=times, from_moisture=first, to_moisture=afterwards, distance=14
        )
        said = next(text for text in labels(drawing) if text.startswith("whole line"))
        over = 1.0 if said.endswith("as it is") else ahead(said, r"drawn ([\d.]+) times over")
        (drawn,), (before,) = lines(drawing, "outline"), lines(drawing, "hidden")
        wide = max(x for x, _ in before) - min(x for x, _ in before)
        printed = next(each for each in SPECIES if each.name == timber)
        assert printed.tangential_coefficient and printed.radial_coefficient
        parts = [
            over * (afterwards - first) * each.value
            for each in (printed.tangential_coefficient, printed.radial_coefficient)
        ]
        settings = board_through_the_year.settings(CAT)
        section = RingSection(float(settings["width"]), float(settings["thickness"]), (0.0, -14.0), *parts)  # type: ignore[arg-type]
        reach = max(x for x, _ in drawn) - min(x for x, _ in drawn)
        expected = max(x for x, _ in section.outline) - min(x for x, _ in section.outline)
        # The label has two figures.
        assert reach / wide == pytest.approx(expected / section.width, abs=0.05 * abs(parts[0]) + 1e-9)


def test_the_heart_in_a_drying_board_is_a_fault_and_outside_it_or_without_drying_is_none() -> None:
    inside = {"width": 3, "thickness": 3, "distance": 0.5}
    (fault,) = board_through_the_year.drawing(CAT, **inside).faults
    assert "it splits" in fault
    assert not board_through_the_year.drawing(CAT, width=3, thickness=3, distance=2).faults
    assert not board_through_the_year.drawing(CAT, **inside, to_moisture=11.0).faults


def test_only_a_face_that_looks_away_from_the_heart_is_said_to_do_so() -> None:
    # On the quarter the heart lies beside the board, and its upper face no farther from it than its lower one.
    drawing = board_through_the_year.drawing(
        CAT, width=6, thickness=3, rings=90, distance=3.5, from_moisture=24, to_moisture=4
    )
    assert "away from the heart" not in drawing.told
    assert "away from the heart" in board_through_the_year.drawing(CAT, width=6).told


@pytest.mark.parametrize(("rings", "words"), [(0, "flat-sawn"), (45, "rift-sawn"), (90, "quarter-sawn")])
def test_the_board_is_called_by_how_its_rings_lie(rings: int, words: str) -> None:
    assert any(text.startswith(words) for text in labels(board_through_the_year.drawing(CAT, rings=rings)))


# --- the panel ---


def test_the_cats_panel_is_told_as_the_cats_year_is_reckoned() -> None:
    year = PieceSeasons.of(CAT)
    drawing = panel_through_the_year.drawing(CAT)
    assert f"{year.end.dampest - year.end.driest:.3f} in higher on the dampest day" in drawing.headline
    _, driest, dampest = year.splays
    assert f"from {driest:.2f}° at the driest to {dampest:.2f}° at the dampest" in drawing.told
    assert not drawing.faults


@given(
    some.sampled_from(TIMBERS),
    some.sampled_from(("flat", "quarter")),
    some.integers(8, 48).map(lambda step: step / 2),
    some.integers(8, 48).map(lambda step: step / 2),
    some.integers(8, 48).map(lambda step: step / 2),
    some.integers(0, 8).map(lambda marks: marks / 16),
)
def test_every_panel_is_told_as_its_topics_reckon(
    timber: str, cut: str, now: float, one: float, other: float, clearance: float
) -> None:
    drawing = panel_through_the_year.drawing(
        CAT,
        timber=timber,
        cut=cut,
        moisture_now=now,
        moisture_driest=one,
        moisture_dampest=other,
        clearance=clearance,
    )
    low, high = sorted((one, other))
    heights = [8 + movement(8, timber, cut, now, moisture) for moisture in (low, high)]
    assert f"{heights[1] - heights[0]:.3f} in higher" in drawing.headline
    lean = splay_change_derivation().function("new_splay")
    first = math.degrees(math.atan(1.25 / 8))
    driest, dampest = (lean(splay=first, height=8, new_height=each) for each in heights)
    assert f"from {driest:.2f}° at the driest to {dampest:.2f}° at the dampest" in drawing.told
    assert ("beyond both ends" in drawing.told) == (not low <= now <= high)
    # Held in its middle, an edge moves by half of what the board does along the slope.
    moves = movement(math.hypot(8, 1.25), timber, cut, now, high) / 2
    assert bool(drawing.faults) == (moves > clearance + 1e-6)
    assert bool([each for each in drawing.shapes if isinstance(each, Hatch)]) == bool(drawing.faults)
    if drawing.faults:
        assert f"moves {moves:.3f} in until the dampest day" in drawing.faults[0]


def test_an_upright_panel_is_said_to_stay_upright() -> None:
    told = panel_through_the_year.drawing(CAT, top=12, bottom=12).told
    assert told.startswith("Upright it was and upright it stays")


@pytest.mark.parametrize("timber", ["cherry, black", "beech"])
@pytest.mark.parametrize("year", [(9.0, 6.0, 11.0), (4.0, 4.0, 24.0), (24.0, 4.0, 14.0)])
def test_the_panel_is_drawn_as_many_times_over_as_it_says_with_its_widths_as_they_were(
    timber: str, year: tuple[float, float, float]
) -> None:
    now, low, high = year
    drawing = panel_through_the_year.drawing(
        CAT, timber=timber, moisture_now=now, moisture_driest=low, moisture_dampest=high
    )
    over = ahead(" ".join(labels(drawing)), r"drawn ([\d.]+) times over")
    (today,) = woods(drawing, "end")[:1]
    height = today[3][1] - today[0][1]
    for points, moisture in ((lines(drawing, "hidden")[0], low), (lines(drawing, "accent")[0], high)):
        assert [points[1][0] - points[0][0], points[2][0] - points[3][0]] == pytest.approx(
            [today[1][0] - today[0][0], today[2][0] - today[3][0]]
        )
        part = movement(1.0, timber, "flat", now, moisture)
        drawn = (points[3][1] - points[0][1]) / height - 1
        # The label has two figures.
        assert drawn == pytest.approx(over * part, abs=0.05 * abs(over * part) + 1e-9)


# --- the mitre ---


@given(
    some.sampled_from(TIMBERS),
    some.sampled_from(("flat", "quarter")),
    some.integers(8, 48).map(lambda step: step / 2),
    some.integers(8, 48).map(lambda step: step / 2),
    some.integers(16, 96).map(lambda marks: marks / 16),
)
def test_the_mitre_says_and_shows_what_its_topic_reckons(
    timber: str, cut: str, first: float, afterwards: float, width: float
) -> None:
    drawing = mitre_through_the_year.drawing(
        CAT, timber=timber, cut=cut, from_moisture=first, to_moisture=afterwards, width=width, times="1"
    )
    lost = -movement(1.0, timber, cut, first, afterwards)
    opening = mitre_derivation().function("opening")(shrinkage=lost)
    gap = mitre_gap_derivation().function("gap")(width=width, shrinkage=lost)
    assert f"gap of {abs(opening):.2f}°" in labels(drawing)
    if first == afterwards:
        assert drawing.headline == f"At {first:g} percent the mitre is closed." and "closed" in labels(
            drawing
        )
        return
    side = "inside" if lost > 0 else "outside"
    assert f"opens {side}, by {abs(gap):.3f} in at its end" in drawing.headline
    assert f"open {side}" in labels(drawing)
    # The picture: drawn as it is, the corners at the gap's end are that far apart, the others touch.
    (level,), (upright,) = woods(drawing, "end"), woods(drawing, "board")
    (before, _) = lines(drawing, "hidden")
    scale = (before[0][1] - before[-1][1]) / width
    outside, inside = math.dist(level[0], upright[0]), math.dist(level[-1], upright[-1])
    wide, closed = (inside, outside) if lost > 0 else (outside, inside)
    assert wide == pytest.approx(abs(gap) * scale, abs=1e-6) and closed == pytest.approx(0.0, abs=1e-9)
    turned = [
        math.atan2(board[-1][1] - board[0][1], board[-1][0] - board[0][0]) for board in (level, upright)
    ]
    assert math.degrees(turned[0] - turned[1]) == pytest.approx(opening, abs=1e-6)


@pytest.mark.parametrize("timber", ["cherry, black", "beech"])
@pytest.mark.parametrize("times", ["1", "8"])
@pytest.mark.parametrize(("first", "afterwards"), [(11.0, 6.0), (24.0, 4.0), (4.0, 24.0)])
def test_the_mitre_is_drawn_as_many_times_over_as_it_says(
    timber: str, times: str, first: float, afterwards: float
) -> None:
    drawing = mitre_through_the_year.drawing(
        CAT, timber=timber, times=times, from_moisture=first, to_moisture=afterwards
    )
    said = next(text for text in labels(drawing) if text.startswith("the movement drawn"))
    over = 1.0 if said.endswith("as it is") else ahead(said, r"drawn ([\d.]+) times over")
    (level,), before = woods(drawing, "end"), lines(drawing, "hidden")[0]
    lost = 1 - (level[0][1] - level[-1][1]) / (before[0][1] - before[-1][1])
    part = -movement(1.0, timber, "flat", first, afterwards)
    # The label has two figures.
    assert lost == pytest.approx(over * part, abs=0.05 * abs(over * part))


# --- the air ---


@pytest.mark.parametrize("place", **named(PLACES))
def test_a_place_comes_to_the_moistures_of_its_season(place: Any) -> None:
    drawing = wood_in_the_air.drawing(CAT, place=place.name)
    low, high = place.moistures
    assert drawing.headline == (
        f"Wood comes to {low:.1f} percent at the driest and {high:.1f} percent at the dampest."
    )
    assert f"driest: {low:.1f}" in labels(drawing) and f"dampest: {high:.1f}" in labels(drawing)


@given(some.integers(0, 38), some.integers(5, 95), some.integers(5, 95))
def test_your_own_air_comes_to_what_the_equation_gives_whichever_slider_stands_lower(
    celsius: int, one: int, other: int
) -> None:
    drawing = wood_in_the_air.drawing(CAT, place="your own", celsius=celsius, dry=one, damp=other)
    low, high = (equilibrium_moisture(celsius, percent / 100) for percent in sorted((one, other)))
    assert (
        f"comes to {low:.1f} percent at the driest and {high:.1f} percent at the dampest" in drawing.headline
    )
    assert f"air of {min(one, other)} percent at {celsius} °C" in drawing.told
