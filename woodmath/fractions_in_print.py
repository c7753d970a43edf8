"""Fractions in print: 1 3/4, as it is typed, set as 1¾, for paper and for the screen."""

import re
import unicodedata
from types import MappingProxyType

from woodmath.graduations import INCH_DIVISIONS

FIGURES, RAISED, LOWERED = "0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
ONE_CHARACTER = MappingProxyType(
    {unicodedata.normalize("NFKC", sign).replace("\u2044", "/"): sign for sign in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"}
)
"""The fractions that are one character each, by how they are typed."""

_RAISE = MappingProxyType(str.maketrans(FIGURES, RAISED))
_LOWER = MappingProxyType(str.maketrans(FIGURES, LOWERED))
_BOTTOMS = frozenset(
    str(part) for whole in INCH_DIVISIONS for part in range(2, whole + 1) if whole % part == 0
)
_IN_PROSE = re.compile(
    r"""(?<![\w./\\^\u2044])(?<![A-Za-z_]-)
    (?:(?P<whole>[0-9]+)[-\ \u00a0\u2009\u202f])?
    (?P<top>[1-9][0-9]{0,2})[/\u2044](?P<bottom>[1-9][0-9]{0,2})
    (?![\w/\\^\u2044]|[.:]\w)""",
    re.VERBOSE,
)


def set_fractions(text: str) -> str:
    """Set the fractions of a text as fractions, for print and screen; `Rule.read` reads them back.

    Set are proper fractions that some rule carries (halves to 128ths). Dates such as 3/4/2024, paths, and
    units such as m/s stay as they are; a day and month alone (3/4) cannot be told from a fraction.

    Parameters
    ----------
    text : str
        Plain text, not markup whose tags or formulas hold fractions.

    Returns
    -------
    str
        One character where there is one (¾), else raised and lowered figures; joined to its whole number.

    >>> set_fractions("A 3/8 mortise in a post of 1 3/4")
    'A ⅜ mortise in a post of 1¾'
    """
    return _IN_PROSE.sub(_set_one, text)


def _set_one(found: re.Match[str]) -> str:
    top, bottom = found["top"], found["bottom"]
    if bottom not in _BOTTOMS or int(top) >= int(bottom):
        return found[0]
    figures = f"{top.translate(_RAISE)}\u2044{bottom.translate(_LOWER)}"
    return (found["whole"] or "") + ONE_CHARACTER.get(f"{top}/{bottom}", figures)
