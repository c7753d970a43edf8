"""How wide a text is: a table of character widths, so that a picture knows where its words end.

The widths are those of DejaVu Sans (the widest of the common screen faces, and the face that the paper is set
in), in thousandths of the letter height; the font's own advance widths, rounded up.
"""

from __future__ import annotations

from types import MappingProxyType

_GROUPS = MappingProxyType(
    {
        167: "⁄",
        228: "′",
        278: "ijl'",
        295: "IJ",
        318: " ,.·‘’\u00a0",
        337: "/:;\\|",
        353: "f",
        361: "-",
        374: "″",
        393: "t()[]",
        401: "!²³¹⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉",
        412: "r",
        460: '"',
        500: "*_`°–",
        519: "“”",
        525: "zs",
        531: "?",
        550: "c",
        558: "L",
        580: "kF",
        592: "vxy",
        604: "Pπ",
        611: "TY",
        616: "eao",
        632: "E",
        638: "√$0123456789{}Sbdgpqhnu",
        656: "K",
        687: "BXZAV",
        699: "CR",
        732: "U",
        752: "HN",
        775: "GD",
        780: "&",
        788: "OQ",
        818: "w",
        838: "#+<=>^~±×÷≤≥−→←↑↓≈✗",
        863: "M",
        951: "%",
        970: "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚",
        975: "m",
        989: "W",
        1000: "@—…",
    }
)
_BOLD_GROUPS = MappingProxyType(
    {
        167: "⁄",
        264: "′",
        307: "'",
        343: "ijl",
        349: " \u00a0",
        366: "/\\|",
        373: "IJ",
        380: ",.·‘’",
        400: ":;",
        416: "-",
        438: "²³¹⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉f",
        447: "″",
        458: "()[]!",
        479: "t",
        494: "r",
        500: "_`°–",
        523: '*"',
        583: "z?",
        596: "sc",
        638: "L",
        646: "x",
        652: "vy",
        658: "“”",
        667: "√k",
        675: "a",
        683: "Te",
        688: "oEF",
        696: "$0123456789",
        716: "bdgpqhnu{}",
        721: "S",
        726: "ZY",
        734: "CP",
        763: "B",
        775: "KAVRX",
        792: "π",
        813: "U",
        821: "G",
        831: "D",
        838: "#+<=>^~±×÷≤≥−→←↑↓≈✗HN",
        851: "OQ",
        873: "&",
        924: "w",
        996: "M",
        1002: "%@—…",
        1036: "½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚",
        1042: "m",
        1104: "W",
    }
)
_WIDTHS = MappingProxyType({letter: width for width, letters in _GROUPS.items() for letter in letters})
_BOLD_WIDTHS = MappingProxyType(
    {letter: width for width, letters in _BOLD_GROUPS.items() for letter in letters}
)
_WIDEST = max(_GROUPS)
_BOLD_WIDEST = max(_BOLD_GROUPS)
LETTER_HEIGHT = 0.76
BELOW_THE_LINE = 0.24


def text_width(text: str, size: float, bold: bool = False) -> float:
    """Width of a text set in one line, never less than it will be on the screen.

    Parameters
    ----------
    text : str
        The words; a character outside the table counts as the widest in it.
    size : float
        Size of the lettering, > 0, in any unit.
    bold : bool
        Whether the letters are bold.

    Returns
    -------
    float
        The width, in the unit of the size.

    >>> text_width("1 3/4", 10)
    25.69
    """
    widths, widest = (_BOLD_WIDTHS, _BOLD_WIDEST) if bold else (_WIDTHS, _WIDEST)
    return round(sum(widths.get(character, widest) for character in text) * size / 1000, 6)
