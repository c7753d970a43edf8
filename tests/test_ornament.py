"""Ornament by compass and rule: what is published about it, and that every motif closes and stays in its field."""

from __future__ import annotations

import itertools
import math

import pytest
from derivation_checks import assert_every_step_follows
from hypothesis import given, settings
from hypothesis import strategies as st
from picture_checks import assert_sound, assert_sound_and_readable, corners_of, random_settings

from woodmath import ornament, ornament_derivations, ornament_fitting_derivations
from woodmath.errors import ImpossibleShape
from woodmath.findings_ornament import ornament_findings, remarks_on
from woodmath.ornament import DESIGNS, Field, Motif, fitted, gaps, rosette
from woodmath.ornament_strokes import CompassArc, RuledLine
from woodmath.outlines import Point
from woodmath.pattern_ornament import ornament_pattern
from woodmath.piece import Piece
from woodmath.piece_ornament import Ornament
from woodmath.piece_ornamented import fitted_to, ground_of, ornament_of, panel_of
from woodmath.questions.ornament import QUESTIONS
from woodmath.views.ornament_lesson import ornament_step_by_step
from woodmath.views.ornament_own import own_ornament
from woodmath.views.ornament_panel import ornamented_panel

CAT_BED, LOG_BOX = Piece.demo("cat-bed"), Piece.demo("log-box")
DERIVATIONS = (
    ornament_derivations.derivation,
    ornament_derivations.six_petals,
    ornament_derivations.chord_derivation,
    ornament_derivations.six_steps,
    ornament_fitting_derivations.unit_derivation,
    ornament_fitting_derivations.running_derivation,
    ornament_fitting_derivations.fan_derivation,
    ornament_fitting_derivations.arc_derivation,
    ornament_fitting_derivations.level_margin,
    ornament_fitting_derivations.between_edges,
    ornament_fitting_derivations.in_the_corners,
    ornament_fitting_derivations.half_corner_derivation,
    ornament_fitting_derivations.corner_run,
)

counts = st.integers(3, 12)
lengths = st.floats(0.5, 500)
trapeziums = st.builds(Field, bottom=st.floats(4, 24), top=st.floats(4, 24), height=st.floats(4, 20))


@pytest.mark.parametrize("derivation", DERIVATIONS, ids=lambda derivation: derivation.__name__)
def test_every_step_of_the_derivations_follows(derivation) -> None:
    assert_every_step_follows(derivation())


@pytest.mark.parametrize(
    ("parts", "side"),
    [
        # Sides of the regular figures in a circle of radius 1. Elements IV. 15: the hexagon's is the radius. The others
        # by roots alone, plane geometry: triangle, square, pentagon, octagon, decagon, dodecagon.
        (3, math.sqrt(3)),
        (4, math.sqrt(2)),
        (5, math.sqrt((5 - math.sqrt(5)) / 2)),
        (6, 1.0),
        (8, math.sqrt(2 - math.sqrt(2))),
        (10, (math.sqrt(5) - 1) / 2),
        (12, math.sqrt(2 - math.sqrt(3))),
    ],
)
def test_the_dividers_step_off_the_regular_figures_and_petals_are_as_long(parts: int, side: float) -> None:
    assert ornament.chord(1.0, parts) == pytest.approx(side, abs=1e-12)
    assert ornament.petal_length(1.0, parts) == pytest.approx(side, abs=1e-12)


@settings(deadline=None)
@given(counts, lengths)
def test_two_circles_through_the_middle_meet_again_at_the_tip(petals: int, radius: float) -> None:
    """Checked by the circles themselves: the tip is as far from both compass points as the middle is."""
    length = ornament.petal_length(radius, petals)
    for region in rosette(petals, radius).regions:
        if region.kind == "petal":
            one, other = region.strokes
            assert isinstance(one, CompassArc) and isinstance(other, CompassArc)
            assert one.radius == other.radius == radius
            tip = one.ends[1]
            assert math.hypot(*tip) == pytest.approx(length)
            for each in (one, other):
                assert math.dist(each.centre, tip) == pytest.approx(radius)
                assert math.hypot(*each.centre) == pytest.approx(radius)


@settings(deadline=None)
@given(counts, lengths, st.floats(-180, 180))
def test_a_rosette_closes_and_is_the_same_after_its_turn(petals: int, radius: float, first: float) -> None:
    motif = rosette(petals, radius, first)
    assert gaps(motif) < 1e-9 * radius
    assert max(math.hypot(x, y) for x, y in motif.points) <= ornament.reach(radius, petals) * (1 + 1e-9)
    middles = [stroke.middle for stroke in motif.kept]
    turned = [stroke.middle for stroke in ornament.turned(motif, 360 / petals).kept]
    whole = [middle for middle in middles if math.hypot(*middle) > 1e-9 * radius]
    for place in turned:
        near = min(math.dist(place, other) for other in middles)
        # A whole circle has its middle wherever it is begun: only the arcs must come to lie on arcs.
        assert near < 1e-7 * radius or math.hypot(*place) > (1 - 1e-9) * radius
    assert whole or petals % 2 == 0


@settings(deadline=None)
@given(counts)
def test_petals_touch_in_the_middle_and_cover_one_another_nowhere(petals: int) -> None:
    """Every point of a petal lies within its own share of the turn."""
    motif = rosette(petals, 1.0)
    for number, region in enumerate(region for region in motif.regions if region.kind == "petal"):
        axis = 90.0 + 360.0 * number / petals
        for x, y in region.outline:
            if math.hypot(x, y) > 1e-6:
                off = (math.degrees(math.atan2(y, x)) - axis + 180.0) % 360.0 - 180.0
                assert abs(off) <= 180.0 / petals + 1e-6


@given(counts)
def test_the_arcs_pass_through_the_middle(petals: int) -> None:
    assert all(
        math.dist(stroke.centre, (0.0, 0.0)) == pytest.approx(1.0)
        for step in rosette(petals, 1.0).steps[2 : 2 + petals]
        for stroke in step.strokes
        if isinstance(stroke, CompassArc)
    )


@settings(deadline=None)
@given(lengths, st.floats(0.3, 60))
def test_a_division_adds_up_to_the_length_and_no_other_count_is_nearer(length: float, wanted: float) -> None:
    count, unit = ornament.even_division(length, wanted)
    assert count * unit == pytest.approx(length)
    assert abs(length / wanted - count) <= 0.5 + 1e-9 or count == 1


@settings(deadline=None)
@given(lengths, st.floats(1, 60), st.floats(0, 0.5))
def test_running_circles_touch_both_ends_and_close(length: float, wanted: float, overlap: float) -> None:
    row = ornament.running_circles(length, wanted, overlap)
    count, radius = ornament.circles_along(length, wanted, overlap)
    assert len(row.centres) == count
    assert min(x for x, _ in row.points) == pytest.approx(0.0, abs=1e-9 * length)
    assert max(x for x, _ in row.points) == pytest.approx(length)
    assert gaps(row) < 1e-6 * length
    for (x, _), (further, _) in itertools.pairwise(row.centres):
        assert further - x == pytest.approx(2 * radius * (1 - overlap))


@settings(deadline=None)
@given(lengths, st.floats(0.02, 1), st.floats(0.1, 1), st.sampled_from(["leaves", "crossing arches"]))
def test_a_border_ends_where_its_length_ends_and_keeps_between_its_lines(
    length: float, part: float, low: float, kind: str
) -> None:
    wanted = max(part * length, length / 60)
    _, unit = ornament.even_division(length, wanted)
    height = low * unit
    band = ornament.border(length, wanted, height, kind)
    assert gaps(band) < 1e-8 * length
    for x, y in band.points:
        assert -1e-9 * length <= x <= length * (1 + 1e-9)
        assert -1e-9 * length <= y <= height + 1e-9 * length
    # What stands next to it goes on where it ends: both ends are drawn, corner to corner.
    lines = [stroke.ends for stroke in band.kept if isinstance(stroke, RuledLine)]
    assert ((length, 0.0), (length, height)) in lines


@settings(deadline=None)
@given(st.integers(2, 12), lengths, st.floats(5, 180), st.floats(-180, 180))
def test_a_fan_closes_and_reaches_exactly_its_radius(
    ribs: int, radius: float, angle: float, first: float
) -> None:
    if angle > 90 * (ribs - 1):
        with pytest.raises(ImpossibleShape, match="more ribs"):
            ornament.fan(ribs, radius, angle, first)
        return
    motif = ornament.fan(ribs, radius, angle, first)
    assert gaps(motif) < 1e-9 * radius
    scallops = [stroke for stroke in motif.kept if isinstance(stroke, CompassArc)]
    assert len(scallops) == ribs - 1
    for each in scallops:
        assert math.hypot(*each.middle) == pytest.approx(radius)
    for x, y in motif.points:
        assert math.hypot(x, y) <= radius * (1 + 1e-9)


@settings(deadline=None)
@given(trapeziums)
def test_the_largest_circle_touches_three_edges_or_two_and_goes_beyond_none(field: Field) -> None:
    room = field.largest_circle
    x, y = room.centre
    assert field.clear_of_edges(room.centre) == pytest.approx(room.radius)
    level = [y - field.low, field.high - y]
    lean = [field.clear_of_edges(room.centre)] if room.limited_by == "the two sides" else level
    assert min(lean) == pytest.approx(room.radius)
    # No other place on the middle line has room for a larger one.
    for step in range(41):
        other = (x, field.low + field.height * step / 40)
        assert field.clear_of_edges(other) <= room.radius * (1 + 1e-9)


@settings(deadline=None)
@given(trapeziums, st.floats(0.01, 1.5))
def test_a_margin_stands_square_to_every_edge(panel: Field, margin: float) -> None:
    try:
        field = panel.inside_margin(margin)
    except ImpossibleShape:
        return
    for corner in field.corners:
        assert panel.clear_of_edges(corner) == pytest.approx(margin, rel=1e-6)
    assert field.splay == pytest.approx(panel.splay, abs=1e-6)


@settings(deadline=None, max_examples=300)
@given(trapeziums, st.floats(0, 2.5), st.sampled_from(DESIGNS), st.integers(3, 12), st.floats(0.5, 3))
def test_whatever_is_fitted_closes_and_stays_in_its_field(
    panel: Field, margin: float, design: str, petals: int, unit: float
) -> None:
    try:
        found = fitted(panel, margin, design, petals, unit)
    except ImpossibleShape as refusal:
        assert "leave no room" in str(refusal)
        return
    assert found.outside < 1e-9 * panel.height
    assert gaps(found.motif) < 1e-7 * panel.height
    for band in found.bands[:1] if design == "running circles" else found.bands:
        parts = 1 + (band.count - 1) / 2 if design == "running circles" else band.count
        assert parts * band.unit == pytest.approx(band.length)


@settings(deadline=None, max_examples=100)
@given(trapeziums, st.integers(3, 12))
def test_fans_keep_clear_of_the_rosette(panel: Field, petals: int) -> None:
    found = fitted(panel, 0.5 if panel.bottom > 2 else 0.0, "rosette between fans", petals)
    x, y = found.inner.largest_circle.centre
    room = found.inner.largest_circle.radius
    corners = [*found.field.corners]
    for region in found.motif.regions:
        if region.kind == "bay":
            assert all(math.dist(point, (x, y)) >= room for point in region.outline)
            assert min(math.dist(region.outline[0], corner) for corner in corners) < 1e-9


def positions(view, piece: Piece) -> list[dict]:
    start = view.settings(piece)
    ends = list(corners_of(view, piece.rule))
    return [{**start, **each} for each in (*ends, *random_settings(view, piece.rule, count=200, seed=16))]


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat-bed", "log-box"])
def test_at_every_slider_setting_of_the_panel_the_motif_stays_in_its_field_or_the_fault_is_told(
    piece: Piece,
) -> None:
    for setting in positions(ornamented_panel, piece):
        drawing = ornamented_panel.draw(piece.rule, setting)
        panel = Field(setting["bottom"], setting["top"], setting["height"])
        try:
            found = fitted(
                panel, setting["margin"], setting["design"], round(setting["petals"]), setting["unit"]
            )
        except ImpossibleShape as refusal:
            assert drawing.faults == (str(refusal),)
            continue
        assert drawing.faults == (), setting
        assert found.outside < 1e-9 * panel.height, setting
        assert gaps(found.motif) < 1e-7 * panel.height, setting


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat-bed", "log-box"])
def test_at_every_slider_setting_of_the_lesson_the_rosette_closes(piece: Piece) -> None:
    for setting in positions(ornament_step_by_step, piece):
        motif = rosette(round(setting["petals"]), setting["radius"])
        assert gaps(motif) < 1e-9 * setting["radius"], setting
        assert ornament_step_by_step.draw(piece.rule, setting).faults == ()


def test_the_lesson_ends_with_every_kept_stroke_and_begins_with_bare_wood() -> None:
    bare = ornament_step_by_step.drawing(CAT_BED, step=0)
    done = ornament_step_by_step.drawing(CAT_BED, step=15)
    assert "Bare wood" in bare.headline and "side by side" in done.headline
    assert len(done.shapes) > len(bare.shapes)


def test_a_motif_moved_turned_and_mirrored_is_the_same_motif() -> None:
    fan = ornament.fan(ribs=4, radius=3.0, angle=70.0, first=10.0)
    there_and_back = ornament.moved(ornament.turned(ornament.turned(fan, 33.0), -33.0), (0.0, 0.0))
    twice = ornament.mirrored(ornament.mirrored(fan))
    for changed in (there_and_back, twice):
        for one, other in zip(fan.points, changed.points, strict=True):
            assert one == pytest.approx(other)
    lengths_before = sorted(stroke.length for stroke in fan.kept)
    assert sorted(stroke.length for stroke in ornament.mirrored(fan).kept) == pytest.approx(lengths_before)


def test_a_student_s_own_motif_is_drawn_and_an_open_area_is_told() -> None:
    row = ornament.running_circles(8.0, 2.0)
    own = ornament.together("mine", ornament.rosette(6, 2.0), ornament.moved(row, (-4.0, -4.5)))
    view = own_ornament(own)
    for settings_ in corners_of(view, CAT_BED.rule):
        drawing = view.draw(CAT_BED.rule, settings_)
        assert_sound_and_readable(drawing)
        assert drawing.faults == ()
    open_one = ornament.Region(
        "petal", (RuledLine((0.0, 0.0), (1.0, 0.0)), RuledLine((1.0, 0.5), (0.0, 0.0)))
    )
    line = ornament.Step("Two lines.", open_one.strokes)
    (fault,) = own_ornament(Motif("open", (line,), (open_one,))).drawing(CAT_BED).faults
    assert "1/2 in" in fault


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        (lambda: rosette(2, 1.0), "from 3 to 12"),
        (lambda: rosette(13, 1.0), "from 3 to 12"),
        (lambda: rosette(6, 0.0), "open"),
        (lambda: rosette(6, -1.0), "open"),
        (lambda: ornament.fan(1, 1.0, 60.0), "no bay"),
        (lambda: ornament.fan(3, 1.0, 200.0), "more ribs"),
        (lambda: ornament.border(10.0, 2.0, 3.0), "lower than a unit"),
        (lambda: ornament.border(10.0, 2.0, 1.0, "waves"), "leaves or crossing arches"),
        (lambda: ornament.running_circles(10.0, 2.0, 0.6), "half"),
        (lambda: ornament.rows(rosette(6, 1.0), 0, 2.0), "one row"),
        (lambda: ornament.divide(ornament.circle((0.0, 0.0), 1.0), 1), "two parts"),
        (lambda: Field(10.0, 12.0, 8.0).inside_margin(4.0), "less than 4"),
        (lambda: Field(2.0, 12.0, 8.0).inside_margin(2.0), "leave no room"),
        (lambda: fitted(Field(10.0, 12.0, 8.0), 1.0, "garland"), "rosette between fans"),
        (lambda: own_ornament(Motif("nothing", ())), "stays"),
    ],
)
def test_what_cannot_be_is_refused_with_what_can(wrong, words: str) -> None:
    with pytest.raises(ImpossibleShape, match=words):
        wrong()


def test_beads_and_quirks_are_outside_the_field() -> None:
    # By hand: 8 high, a bead of 1/4 and a quirk of 1/16 on either edge.
    ground = ground_of(CAT_BED)
    assert (ground.low, ground.height) == (0.3125, 7.375)
    # The width runs with the height: 13 less twice 5/16 of 2 1/2 over 8.
    assert ground.top == pytest.approx(13 - 2.5 * 0.3125 / 8)
    assert panel_of(LOG_BOX, "side") == Field(520.0, 520.0, 320.0)


def test_a_piece_that_says_nothing_is_given_a_rosette_of_six_and_no_remarks() -> None:
    told = ornament_of(CAT_BED)
    assert (told.on, told.petals) == ("end", 6)
    assert list(remarks_on(CAT_BED, told)) == []
    assert getattr(CAT_BED, "ornament", None) is not None or list(ornament_findings(CAT_BED)) == []


@pytest.mark.parametrize(
    ("told", "severity", "words"),
    [
        (Ornament(margin=4.0, unit=1.0), "stop", "leave no room"),
        (Ornament(margin=0.0625, unit=1.0), "note", "breaks away"),
        (Ornament(margin=1.0, unit=0.25, design=DESIGNS[2]), "note", "compass set to"),
        (Ornament(margin=1.0, unit=1.0, petals=12), "note", "short"),
    ],
)
def test_the_master_remarks_on_an_ornament(told: Ornament, severity: str, words: str) -> None:
    remarks = list(remarks_on(CAT_BED, told))
    assert any(remark.severity == severity and words in str(remark) for remark in remarks)


@pytest.mark.parametrize("piece", [CAT_BED, LOG_BOX], ids=["cat-bed", "log-box"])
@pytest.mark.parametrize("design", DESIGNS)
def test_the_pattern_s_known_lengths_are_the_numbers(piece: Piece, design: str) -> None:
    usual = ornament_of(piece)
    told = Ornament(usual.margin, usual.unit, "end", design, 8)
    found, pattern = fitted_to(piece, told), ornament_pattern(piece, told)
    known = {each.name: each.length for each in pattern.known_lengths}
    assert known["compass"] == pytest.approx(found.radius)
    assert known["the panel's height"] == piece.end.height
    if design == "running circles":
        assert known["from centre to centre"] == pytest.approx(found.radius)
    else:
        assert known["petal"] == pytest.approx(found.radius * math.sqrt(2 - math.sqrt(2)))
    assert_sound(pattern.drawing)


@pytest.mark.parametrize(
    ("piece", "by_hand"),
    [
        # 8 less twice 5/16 less twice 1, halved; times 0.765367; 13 less 2 5/8 times 5/32 less twice 1.0121334.
        (CAT_BED, ["three equal sides", 2.6875, 2.056923, 11.0, 10.565577 / 11]),
        # 320 less 20 less 50 is 250, and so is 300 less 50.
        (LOG_BOX, ["three equal sides", 125.0, 95.670858, 8.0, 31.25]),
    ],
    ids=["cat-bed", "log-box"],
)
def test_the_questions_truths_are_what_a_maker_works_out_by_hand(piece: Piece, by_hand: list) -> None:
    for question, expected in zip(QUESTIONS, by_hand, strict=True):
        truth = question.truth(piece)
        assert truth == (expected if isinstance(expected, str) else pytest.approx(expected, abs=1e-5))
        assert question.worked(piece) and question.given(piece)
        for slip in question.slips:
            wrong = slip.leads_to(piece)
            assert wrong is not None, slip.hint


def test_inside_tells_in_from_out() -> None:
    field = Field(10.0, 14.0, 8.0)
    points: dict[Point, bool] = {(0.0, 4.0): True, (5.9, 4.0): True, (6.1, 4.0): False, (0.0, 8.1): False}
    assert {point: field.inside(point) for point in points} == points
