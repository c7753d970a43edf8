"""A printed sheet as an independent renderer paints it, and where the middle of a line lies in it.

The renderer is poppler's pdftoppm, which shares no code with what writes the files. A line is found by its ink: the
darkness across it, averaged along it, and the middle of the darkest run.
"""

from __future__ import annotations

import math
import os
import shutil
import subprocess
from dataclasses import dataclass
from typing import Any

import numpy
import pytest

from woodmath.outlines import Point

Grey = numpy.ndarray[Any, numpy.dtype[numpy.uint8]]


def need_poppler() -> None:
    """Skip a test where there is no pdftoppm; where everything must be tested, that is a failure."""
    if shutil.which("pdftoppm") is None:
        told = "No pdftoppm here. To measure the printed sheets too:  sudo apt install poppler-utils"
        if os.environ.get("CI"):
            pytest.fail(told)
        pytest.skip(told)


@dataclass(frozen=True)
class Raster:
    """One page, grey, with its resolution in dots per inch."""

    grey: Grey
    dpi: float

    @property
    def dots_in_a_millimetre(self) -> float:
        return self.dpi / 25.4

    def darkness(self, place: Point) -> float:
        """Return how dark it is at a place in millimetres from the upper left corner: 0 for white, 1 for black."""
        x, y = (each * self.dots_in_a_millimetre - 0.5 for each in place)
        column, row = math.floor(x), math.floor(y)
        right, down = x - column, y - row
        (one, two), (three, four) = self.grey[row : row + 2, column : column + 2].astype(float) / 255
        upper, lower = one + (two - one) * right, three + (four - three) * right
        return float(1 - upper - (lower - upper) * down)

    def line_middle(
        self,
        near: Point,
        way: Point,
        band: tuple[float, float] = (1.0, 2.8),
        reach: float = 1.5,
        both_sides: bool = False,
    ) -> float:
        """Return how far along a way of length 1 the middle of a line lies from where it is looked for, in millimetres.

        The line crosses the way. Its darkness is taken beside the way, from the band's begin to its end, on the side
        on which the line is seen better.
        """
        step = 0.5 / self.dots_in_a_millimetre
        count = round(reach / step)
        runs = numpy.arange(-count, count + 1) * step
        besides = numpy.linspace(*band, 9)
        profiles = []
        for side in (1.0, -1.0):
            profiles.append(
                numpy.array(
                    [
                        numpy.mean(
                            [
                                self.darkness(
                                    (
                                        near[0] + run * way[0] - side * beside * way[1],
                                        near[1] + run * way[1] + side * beside * way[0],
                                    )
                                )
                                for beside in besides
                            ]
                        )
                        for run in runs
                    ]
                )
            )
        if both_sides:
            profiles = [(profiles[0] + profiles[1]) / 2]
        clear = [profile - numpy.median(profile) for profile in profiles]
        ink = max(clear, key=lambda profile: float(profile.max()))
        assert ink.max() > 0.15, f"no line crosses near {near}"
        dark = ink > ink.max() / 2
        peaks = numpy.flatnonzero(dark)
        peak = int(peaks[numpy.argmin(numpy.abs(runs[peaks]))])
        first = last = peak
        # At half its own darkness a line is as wide on its left as on its right, whatever else stands near.
        while first > 0 and dark[first - 1]:
            first -= 1
        while last < len(ink) - 1 and dark[last + 1]:
            last += 1
        run = slice(first, last + 1)
        return float((runs[run] * ink[run]).sum() / ink[run].sum())

    def distance(self, start: Point, end: Point, band: tuple[float, float] = (1.0, 2.8)) -> float:
        """Return the distance between the lines that cross a way near its two ends, in millimetres."""
        length = math.dist(start, end)
        way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        return length + self.line_middle(end, way, band) - self.line_middle(start, way, band)


def rendered(pdf: bytes, page: int, dpi: int) -> Raster:
    """Return a page, counted from 1, as poppler paints it."""
    command = ["pdftoppm", "-gray", "-r", str(dpi), "-f", str(page), "-l", str(page), "-"]
    image = subprocess.run(command, input=pdf, check=True, capture_output=True).stdout
    kind, size, most, pixels = image.split(b"\n", 3)
    assert (kind, most) == (b"P5", b"255")
    width, height = map(int, size.split())
    return Raster(numpy.frombuffer(pixels, numpy.uint8).reshape(height, width), float(dpi))


def boxes_in_millimetres(pdf: bytes) -> list[tuple[float, float]]:
    """Return width and height of every page's media box, as pdfinfo reads them from the file."""
    command = ["pdfinfo", "-box", "-f", "1", "-l", "9999", "-"]
    told = subprocess.run(command, input=pdf, check=True, capture_output=True, encoding=None).stdout.decode()
    found = []
    for line in told.splitlines():
        words = line.split()
        if words[:1] == ["Page"] and "MediaBox:" in words:
            left, low, right, high = (float(word) for word in words[-4:])
            found.append(((right - left) * 25.4 / 72, (high - low) * 25.4 / 72))
    return found


def words_on(pdf: bytes, page: int) -> str:
    """Return the text of a page, in one line."""
    command = ["pdftotext", "-f", str(page), "-l", str(page), "-layout", "-", "-"]
    return " ".join(
        subprocess.run(command, input=pdf, check=True, capture_output=True).stdout.decode("utf-8").split()
    )
