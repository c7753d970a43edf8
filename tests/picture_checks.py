"""What every picture must keep to, whatever is set; and the settings to try pictures with."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterator, Sequence
from xml.etree import ElementTree

import numpy

from woodmath.drawing import Drawing
from woodmath.drawing_svg import svg_of_marks
from woodmath.marks import marks
from woodmath.pens import Body, Disc, Mark, Motion, Stroke, Words
from woodmath.rule import Rule
from woodmath.views.view import ChoiceControl, Control, LengthControl, StepControl, TableControl, Value, View

Box = tuple[float, float, float, float]
_ROUNDING = 0.05
_TOUCHING = 0.5
MANY = 1000
"""Corners of a view's controls, timbers and all, above which a corner has two timbers instead of every one."""
_IN_WORDS = {"aria-label", "class", "font-family", "id", "role"}


def box_of(mark: Mark) -> Box:
    """Return left, top, right and bottom of what is seen of a mark, in picture units."""
    match mark:
        case Words():
            return mark.box
        case Disc(clip=()):
            (x, y), reach = mark.centre, mark.radius
            return (x - reach, y - reach, x + reach, y + reach)
        case Stroke(clip=()):
            points = [point for line in mark.lines for point in line]
            reach = 0.0
        case Motion():
            points = [point for frame in mark.frames for point in frame]
            reach = mark.dot
        case Body():
            return _box_of_body(mark)
        case _:
            points, reach = list(mark.clip), 0.0
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs) - reach, min(ys) - reach, max(xs) + reach, max(ys) + reach)


def _box_of_body(body: Body) -> Box:
    """Return the box of a body at all its poses together."""
    seen: list[tuple[float, float, float]] = []
    for mark in body.marks:
        if isinstance(mark, Disc) and not mark.clip:
            seen.append((*mark.centre, mark.radius))
        else:
            lines = (mark.clip,) if mark.clip or isinstance(mark, Disc) else mark.lines
            seen += ((x, y, 0.0) for line in lines for x, y in line)
    right, down, reach = numpy.array(seen).T
    right, down = right - body.about[0], down - body.about[1]
    x, y, degrees = numpy.array(body.poses).T[:, :, numpy.newaxis]
    cosine, sine = numpy.cos(numpy.radians(degrees)), numpy.sin(numpy.radians(degrees))
    across, below = x + cosine * right + sine * down, y + cosine * down - sine * right
    return (
        float((across - reach).min()),
        float((below - reach).min()),
        float((across + reach).max()),
        float((below + reach).max()),
    )


def _numbers_of(mark: Mark) -> list[float]:
    match mark:
        case Words():
            return [*mark.where, mark.size]
        case Disc():
            return [*mark.centre, mark.radius, *itertools.chain(*mark.clip)]
        case Stroke():
            return [value for line in (*mark.lines, mark.clip) for point in line for value in point]
        case Motion():
            return [mark.seconds, *(value for frame in mark.frames for point in frame for value in point)]
        case Body():
            return [
                mark.seconds,
                *mark.about,
                *itertools.chain(*mark.poses),
                *(value for each in mark.marks for value in _numbers_of(each)),
            ]


def assert_sound(drawing: Drawing) -> None:
    """Check that a picture can be painted: only numbers, nothing outside the frame, an SVG that is one."""
    _assert_painted_soundly(drawing, marks(drawing))


def assert_sound_and_readable(drawing: Drawing) -> None:
    """Check that a picture can be painted, and that no text stands on another."""
    painted = marks(drawing)
    _assert_painted_soundly(drawing, painted)
    _assert_no_words_overlap(painted)


def _assert_painted_soundly(drawing: Drawing, painted: Sequence[Mark]) -> None:
    frame = drawing.frame
    assert drawing.title and drawing.headline, "a picture has a title and says its result"
    assert frame.width > 0 and frame.height > 0 and frame.scale > 0
    for mark in painted:
        assert all(map(math.isfinite, _numbers_of(mark))), f"not a number: {_shown(mark)}"
        left, top, right, bottom = box_of(mark)
        inside = (
            left >= -_ROUNDING
            and top >= -_ROUNDING
            and right <= frame.width + _ROUNDING
            and bottom <= frame.height + _ROUNDING
        )
        assert inside, (
            f"outside the picture of {frame.width:g} by {frame.height:g}: "
            f"{left:.1f} {top:.1f} {right:.1f} {bottom:.1f}, {_shown(mark)}"
        )
    assert_svg_is_sound(svg_of_marks(painted, drawing), drawing)


def assert_svg_is_sound(text: str, drawing: Drawing) -> None:
    """Check the SVG of a drawing: well formed, its window the frame, no NaN, every clip defined."""
    root = ElementTree.fromstring(text)
    window = [float(part) for part in root.attrib["viewBox"].split()]
    assert window[:2] == [0.0, 0.0]
    assert math.dist(window[2:], (drawing.frame.width, drawing.frame.height)) < 0.1
    defined = {element.attrib["id"] for element in root.iter() if "id" in element.attrib}
    for element in root.iter():
        for name, value in element.attrib.items():
            if name not in _IN_WORDS:
                plain = value.lower()
                assert "nan" not in plain and "inf" not in plain, f"{name} is {value[:80]}"
            if name == "clip-path":
                assert value.removeprefix("url(#").removesuffix(")") in defined
            if name == "href":
                assert value.removeprefix("#") in defined


def assert_no_texts_overlap(drawing: Drawing) -> None:
    """Check that no text stands on another, by the table of widths in `woodmath.lettering`."""
    _assert_no_words_overlap(marks(drawing))


def _assert_no_words_overlap(painted: Sequence[Mark]) -> None:
    texts = [mark for mark in painted if isinstance(mark, Words)]
    for one, other in itertools.combinations(texts, 2):
        left, top, right, bottom = one.box
        other_left, other_top, other_right, other_bottom = other.box
        across = min(right, other_right) - max(left, other_left)
        down = min(bottom, other_bottom) - max(top, other_top)
        assert across < _TOUCHING or down < _TOUCHING, (
            f"{one.text!r} and {other.text!r} overlap by {across:.1f} by {down:.1f}, at {one.where}"
        )


def _shown(mark: Mark) -> str:
    return repr(mark)[:160]


def _extremes(control: Control, rule: Rule) -> list[Value]:
    match control:
        case LengthControl():
            return list(control.bounds(rule))
        case StepControl():
            return [float(control.low), float(control.high)]
        case ChoiceControl():
            return [value for _, value in control.options]
        case TableControl():
            return _tables(control)


def _tables(control: TableControl) -> list[Value]:
    """Return tables of whole, rising lines: a few, all, with gaps, far out, from nothing."""
    across, down = len(control.columns), control.rows
    empty = ("",) * across
    rising = [(str(row + 1),) * across for row in range(down)]
    return [
        (*rising[:3], *[empty] * (down - 3)),
        tuple(rising),
        (rising[0], empty, rising[2], *[empty] * (down - 4), rising[-1]),
        (*rising[:-1], ("90",) * across),
        (*rising[:-1], (rising[-1][0], *["90"] * (across - 1))),
        (("0",) * across, *rising[1:]),
        tuple((row[0], *[f"{0.001 * (line + 1):.3f}"] * (across - 1)) for line, row in enumerate(rising)),
    ]


def unfinished_tables(control: TableControl) -> Iterator[Value]:
    """Yield tables as they stand while a student fills them in, none of which makes a picture."""
    across, down = len(control.columns), control.rows
    empty, begun = ("",) * across, ("3", *[""] * (across - 1))
    yield (empty,) * down
    yield (begun, *[empty] * (down - 1))
    yield (("2",) * across,) * down
    yield (("1",) * across, ("2",) * across, *[empty] * (down - 2))
    yield (*[("1",) * across] * (down - 1), ("three",) * across)
    yield tuple((str(line + 1), *["2"] * (across - 1)) for line in range(down))
    yield tuple((str(line + 1), *[str(down - line)] * (across - 1)) for line in range(down))


def corners_of(view: View, rule: Rule) -> Iterator[dict[str, Value]]:
    """Yield every combination of the ends of a view's controls, as settings.

    Where that is more than `MANY` and a timber is chosen, each corner of the sliders has two timbers, drawn for it: so
    each timber still meets each end of every slider.
    """
    names = [control.name for control in view.controls]
    extremes = [_extremes(control, rule) for control in view.controls]
    timbers: list[Value] = []
    if "timber" in names and math.prod(map(len, extremes)) > MANY:
        timbers, extremes[names.index("timber")] = extremes[names.index("timber")], [""]
    dice = random.Random(len(names))
    for values in itertools.product(*extremes):
        corner = dict(zip(names, values, strict=True))
        if not timbers:
            yield corner
        for timber in dice.sample(timbers, 2) if timbers else ():
            yield {**corner, "timber": timber}


def random_settings(view: View, rule: Rule, count: int, seed: int) -> Iterator[dict[str, Value]]:
    """Yield settings as a student would reach them: mostly on a mark, now and then typed in between."""
    dice = random.Random(seed)
    for _ in range(count):
        yield {control.name: _somewhere(control, rule, dice) for control in view.controls}


def _somewhere(control: Control, rule: Rule, dice: random.Random) -> Value:
    match control:
        case LengthControl():
            low, high = control.bounds(rule)
            if dice.random() < 0.2:
                return dice.uniform(low, high)
            return min(max(rule.length(dice.randint(rule.marks(low), rule.marks(high))), low), high)
        case StepControl():
            if dice.random() < 0.1:
                return dice.uniform(float(control.low), float(control.high))
            return float(control.low + dice.randint(0, control.positions) * control.step)
        case ChoiceControl():
            return dice.choice(control.options)[1]
        case TableControl():
            return _some_lines(control, dice)


def _some_lines(control: TableControl, dice: random.Random) -> Value:
    """Return three lines or more, rising but not evenly, in any order, with blank ones between."""
    filled = dice.randint(3, control.rows)
    blank = [("",) * len(control.columns)] * (control.rows - filled)
    step = dice.choice((0.02, 0.1, 2.0))
    lines = [
        (str(first), *(f"{step * (first + dice.uniform(0.1, 0.9)):.4f}" for _ in control.columns[1:]))
        for first in dice.sample(range(40), filled)
    ]
    mixed = [*lines, *blank]
    dice.shuffle(mixed)
    return tuple(mixed)
