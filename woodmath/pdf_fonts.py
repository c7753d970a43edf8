"""The two faces that paper is set in, cut down to the letters that a file uses, and how wide each letter is.

DejaVu Sans comes with Matplotlib, so that paper looks alike on every machine. Matplotlib itself is not needed.
"""

from __future__ import annotations

import io
import math
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path
from typing import Any

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

from woodmath.errors import SetUpProblem

_FILES = {False: "DejaVuSans.ttf", True: "DejaVuSans-Bold.ttf"}
_NEEDED_IN_PDF = ("glyf", "head", "hhea", "hmtx", "loca", "maxp")


class Face:
    """One face: the number and the width of each letter, and the file with those that were used.

    Parameters
    ----------
    bold : bool
        Which of the two.

    >>> Face(bold=False).width("1", 10.0)
    6.36
    """

    def __init__(self, bold: bool) -> None:
        self.name = "DejaVuSans-Bold" if bold else "DejaVuSans"
        self._content = _content(bold)
        font = TTFont(io.BytesIO(self._content), lazy=True)
        self._glyphs: dict[int, str] = font.getBestCmap()
        self._numbers: dict[str, int] = font.getReverseGlyphMap()
        self._advances: dict[str, tuple[int, int]] = font["hmtx"].metrics
        self._em: int = font["head"].unitsPerEm
        head, hhea = font["head"], font["hhea"]
        self.box = tuple(
            round(1000 * value / self._em) for value in (head.xMin, head.yMin, head.xMax, head.yMax)
        )
        self.ascent, self.descent = (round(1000 * value / self._em) for value in (hhea.ascent, hhea.descent))
        self.used: dict[int, str] = {}

    def codes(self, text: str) -> str:
        """Return the glyph numbers of a text in hexadecimal, and remember that they are used.

        Parameters
        ----------
        text : str
            A letter that the face does not have becomes the empty box.
        """
        written = ""
        for letter in text:
            number = self._numbers[self._glyphs.get(ord(letter), ".notdef")]
            self.used.setdefault(number, letter)
            written += f"{number:04x}"
        return written

    def advance(self, letter: str) -> int:
        """Return how far the pen moves on after a letter, in thousandths of its size."""
        units = self._advances[self._glyphs.get(ord(letter), ".notdef")][0]
        return math.floor(1000 * units / self._em + 0.5)

    def width(self, text: str, size: float) -> float:
        """Return how wide a text is, in the unit of its size."""
        return sum(map(self.advance, text)) * size / 1000

    def file(self) -> bytes:
        """Return a TrueType file with the letters that were used, each under its own number."""
        options = Options(retain_gids=True, notdef_outline=True, hinting=False, layout_features=[])
        font: Any = TTFont(io.BytesIO(self._content), recalcTimestamp=False)
        for table in set(font.keys()) - {*_NEEDED_IN_PDF, "GlyphOrder"}:
            del font[table]
        subsetter = Subsetter(options)
        subsetter.populate(gids=sorted(self.used))
        subsetter.subset(font)
        kept = io.BytesIO()
        font.save(kept)
        return kept.getvalue()


@lru_cache(maxsize=2)
def _content(bold: bool) -> bytes:
    found = find_spec("matplotlib")
    for folder in (found.submodule_search_locations or ()) if found else ():
        face = Path(folder, "mpl-data", "fonts", "ttf", _FILES[bold])
        if face.is_file():
            return face.read_bytes()
    raise SetUpProblem(
        f"The face {_FILES[bold]} that paper is set in is missing. It comes with Matplotlib; "
        "run python3 -m woodmath open once, and it is fetched."
    )
