"""A drawing as SVG: the live picture on the screen, and the file that prints at true size."""

from __future__ import annotations

import functools
import itertools
from collections.abc import Iterable, Sequence
from html import escape

from woodmath.drawing import Drawing, Points
from woodmath.marks import marks
from woodmath.pens import PALETTE, Body, Disc, Mark, Motion, Pen, Stroke, Words

FACES = "'Noto Sans','Open Sans','Segoe UI','Helvetica Neue',Arial,'DejaVu Sans',sans-serif"
_STYLE = (
    "<style>.wm-still{display:none}@media (prefers-reduced-motion:reduce)"
    "{.wm-motion{display:none}.wm-still{display:inline}}</style>"
)


def svg(drawing: Drawing, prefix: str = "wm", size: str = 'width="100%"') -> str:
    """Write a drawing as one SVG element.

    Parameters
    ----------
    drawing : Drawing
        What is to be seen.
    prefix : str
        Begins the ids of this picture; two pictures on one page need two.
    size : str
        The width and height attributes; by default as wide as the place it is put in.

    Returns
    -------
    str
        The element, the same for the same drawing.

    >>> from woodmath.drawing import Frame, Line
    >>> svg(Drawing("a line", Frame(100, 80, 0, 0, 10), (Line(((1, 1), (2, 2))),), "Short."))[:4]
    '<svg'
    """
    return svg_of_marks(marks(drawing), drawing, prefix, size)


def svg_of_marks(
    painted: Sequence[Mark], drawing: Drawing, prefix: str = "wm", size: str = 'width="100%"'
) -> str:
    """Write a drawing as one SVG element, from marks that are worked out already.

    Parameters
    ----------
    painted : sequence of Mark
        What `marks` says of the drawing.
    drawing : Drawing
        Its frame and its words.
    prefix, size : str
        As for `svg`.

    Returns
    -------
    str
        The same element.

    >>> from woodmath.drawing import Frame, Line
    >>> line = Drawing("a line", Frame(100, 80, 0, 0, 10), (Line(((1, 1), (2, 2))),), "Short.")
    >>> svg_of_marks(marks(line), line) == svg(line)
    True
    """
    frame = drawing.frame
    writer = _Writer(prefix)
    body = writer.elements(painted)
    shapes = "".join(
        f'<clipPath id="{name}"><path d="{_path((outline,), True)}"/></clipPath>'
        for outline, name in writer.clips.items()
    )
    style = _STYLE if any(isinstance(mark, Motion | Body) for mark in painted) else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_number(frame.width)} {_number(frame.height)}" '
        f'{size} role="img" aria-label="{escape(drawing.title)}: {escape(drawing.headline)}" '
        f'font-family="{FACES}">{style}<defs>{shapes}</defs>'
        f'<rect width="{_number(frame.width)}" height="{_number(frame.height)}" rx="10" fill="{PALETTE["paper"]}"/>'
        f"{body}</svg>"
    )


class _Writer:
    """Writes the marks of one picture, and keeps the names that they go by."""

    def __init__(self, prefix: str) -> None:
        self.clips: dict[Points, str] = {}
        self._prefix = prefix
        self._bodies = 0

    def elements(self, painted: Iterable[Mark]) -> str:
        """Return the elements of marks, one after another."""
        parts: list[str] = []
        for look, run in itertools.groupby(painted, self._look):
            first, *others = run
            parts.append(
                f"<g{look}>{''.join(map(self._element, (first, *others)))}</g>"
                if others
                else self._element(first, look)
            )
        return "".join(parts)

    def _look(self, mark: Mark) -> str:
        """Return the attributes that a mark has in common with others like it, which are written once for all."""
        match mark:
            case Stroke():
                joins = (
                    ' stroke-linejoin="round" stroke-linecap="round"'
                    if mark.pen and not mark.pen.dashes
                    else ""
                )
                return f"{_fill(mark.fill)}{_pen(mark.pen)}{joins}{self._clip(mark.clip)}"
            case Disc():
                return f"{_fill(mark.fill)}{_pen(mark.pen)}{self._clip(mark.clip)}"
            case Words():
                return f' stroke="{PALETTE["paper"]}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
            case Motion() | Body():
                return ""

    def _element(self, mark: Mark, look: str = "") -> str:
        match mark:
            case Stroke():
                return f'<path d="{_path(mark.lines, mark.closed)}"{look}/>'
            case Disc():
                x, y = map(_number, mark.centre)
                return f'<circle cx="{x}" cy="{y}" r="{_number(mark.radius)}"{look}/>'
            case Words():
                return _words(mark, look)
            case Motion():
                return _motion(mark)
            case Body():
                return self._body(mark)

    def _clip(self, outline: Points) -> str:
        if not outline:
            return ""
        name = self.clips.setdefault(outline, f"{self._prefix}-clip{len(self.clips)}")
        return f' clip-path="url(#{name})"'

    def _body(self, body: Body) -> str:
        name = f"{self._prefix}-body{self._bodies}"
        self._bodies += 1
        time, poses = _time(body.seconds, body.again), body.poses
        places = _values("%.2f,%.2f", [value for x, y, _ in poses for value in (x, y)], len(poses))
        # SVG turns clockwise.
        turns = _values("%.3f", [-degrees for *_, degrees in poses], len(poses))
        place, turn = (
            f"{kind}({values.partition(';')[0]})"
            for kind, values in (("translate", places), ("rotate", turns))
        )
        away_x, away_y = body.about
        change = '<animateTransform attributeName="transform" calcMode="linear"'
        # Drawn once: reduced motion shows the body again where it is not moved, by its name.
        return (
            f'<g class="wm-motion"><g transform="{place}">{change} type="translate" {time} values="{places}"/>'
            f'<g transform="{turn}">{change} type="rotate" {time} values="{turns}"/>'
            f'<g id="{name}" transform="translate({-away_x:.2f},{-away_y:.2f})">{self.elements(body.marks)}</g>'
            f'</g></g></g><g class="wm-still"><use href="#{name}" transform="{place} {turn}"/></g>'
        )


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def _path(lines: tuple[Points, ...], closed: bool) -> str:
    """Return lines as the data of a path, each point by its way from the one before: that is a third shorter."""
    data = ""
    for line in lines:
        # In whole tenths, so that what is rounded away does not add up along the line.
        tenths = [round(10 * value) for point in line for value in point]
        ways = [(end - start) / 10 for start, end in zip(tenths, tenths[2:], strict=False)]
        text = "M%.1f,%.1f" + "l%.1f,%.1f" * (len(line) - 1) + ("z" if closed else "")
        data += text % (tenths[0] / 10, tenths[1] / 10, *ways)
    return data.replace(".0", "")


@functools.lru_cache(maxsize=256)
def _pen(pen: Pen | None) -> str:
    if pen is None:
        return ""
    dashes = f' stroke-dasharray="{" ".join(map(_number, pen.dashes))}"' if pen.dashes else ""
    return f' stroke="{PALETTE[pen.colour]}" stroke-width="{_number(pen.width)}"{dashes}'


def _fill(role: str) -> str:
    return f' fill="{PALETTE[role]}"' if role else ' fill="none"'


def _words(words: Words, look: str) -> str:
    weight = ' font-weight="700"' if words.bold else ""
    anchor = f' text-anchor="{words.anchor}"' if words.anchor != "start" else ""
    x, y = map(_number, words.where)
    return (
        f'<text x="{x}" y="{y}" font-size="{_number(words.size)}" fill="{PALETTE[words.colour]}"'
        f"{anchor}{weight}{look}>{escape(words.text)}</text>"
    )


def _time(seconds: float, again: bool) -> str:
    """Return when a motion begins and how long it takes: all begin at once, so that they keep in step."""
    # Chromium leaves an animation standing that begins at 0 in a picture put into a page that is already open.
    lasting = f"{seconds:.3f}".rstrip("0").rstrip(".")
    return f'begin="0.1s" dur="{lasting}s" ' + ('repeatCount="indefinite"' if again else 'fill="freeze"')


def _values(form: str, values: list[float], count: int) -> str:
    return ";".join([form] * count) % tuple(values)


def _tenths(form: str, values: list[float], count: int) -> str:
    """Return values in tenths, without the noughts that say nothing."""
    return _values(form, values, count).replace(".0", "")


def _motion(motion: Motion) -> str:
    time = _time(motion.seconds, motion.again)
    if motion.dot:
        places = [frame[0] for frame in motion.frames]
        columns = (("cx", [x for x, _ in places]), ("cy", [y for _, y in places]))
        changes = "".join(
            f'<animate attributeName="{name}" {time} values="{_tenths("%.1f", values, len(values))}"/>'
            for name, values in columns
        )
        shape = (
            f'<circle cx="{_number(places[0][0])}" cy="{_number(places[0][1])}" r="{_number(motion.dot)}" '
            f'fill="{PALETTE[motion.pen.colour]}"'
        )
        return f'<g class="wm-motion">{shape}>{changes}</circle></g><g class="wm-still">{shape}/></g>'
    kind = "polygon" if motion.closed else "polyline"
    one = " ".join(["%.1f,%.1f"] * len(motion.frames[0]))
    values = [value for frame in motion.frames for point in frame for value in point]
    frames = _tenths(one, values, len(motion.frames))
    first = frames.partition(";")[0]
    shape = (
        f'<{kind} points="{first}" {_fill(motion.fill).lstrip()}{_pen(motion.pen)} stroke-linejoin="round"'
    )
    moving = f'{shape}><animate attributeName="points" {time} values="{frames}"/></{kind}>'
    return f'<g class="wm-motion">{moving}</g><g class="wm-still">{shape}/></g>'
