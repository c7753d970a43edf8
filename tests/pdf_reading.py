"""What stands in a PDF file of one page: its size, the paths that are painted, and where texts begin."""

from __future__ import annotations

import re
import zlib
from dataclasses import dataclass, field

Point = tuple[float, float]

_TOKEN = re.compile(rb"\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f]*>|[\[\]]|/\S+|[^\s\[\]()<>/]+", re.DOTALL)
_PAINTED = {b"S", b"s", b"f", b"F", b"f*", b"B", b"B*", b"b", b"b*"}


@dataclass(frozen=True)
class Page:
    """A page, in points of 1/72 inch from its lower left corner."""

    width: float
    height: float
    lines: list[list[Point]] = field(default_factory=list)
    texts: list[Point] = field(default_factory=list)


def page_of(pdf: bytes) -> Page:
    """Read the only page of a PDF as Matplotlib writes it: no nesting, one content stream."""
    (window,) = re.findall(rb"/MediaBox \[ 0 0 (\S+) (\S+) \]", pdf)
    (content,) = re.findall(rb"/Contents (\d+) 0 R", pdf)
    stream = re.search(rb"\n%b 0 obj\n.*?stream\n(.*?)\nendstream" % content, pdf, re.DOTALL)
    assert stream
    page = Page(float(window[0]), float(window[1]))
    _read(zlib.decompress(stream[1]), page)
    return page


def _read(content: bytes, page: Page) -> None:
    numbers: list[float] = []
    path: list[list[Point]] = []
    clipping = False
    for token in _TOKEN.findall(content):
        try:
            numbers.append(float(token))
            continue
        except ValueError:
            pass
        if token == b"m":
            path.append([_last(numbers)])
        elif token in {b"l", b"c"}:
            path[-1].append(_last(numbers))
        elif token == b"W":
            clipping = True
        elif token == b"n" or token in _PAINTED:
            if token != b"n" and not clipping:
                page.lines.extend(path)
            path, clipping = [], False
        elif token == b"cm":
            page.texts.append(_last(numbers))
        numbers = []


def _last(numbers: list[float]) -> Point:
    return (numbers[-2], numbers[-1])
