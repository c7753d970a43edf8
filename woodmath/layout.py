"""Text broken into lines that fit a width, by the table of letter widths."""

from __future__ import annotations

from woodmath.lettering import text_width


def wrapped(text: str, size: float, bold: bool, width: float) -> list[str]:
    """Break a text into lines at its spaces.

    Parameters
    ----------
    text : str
        Words with single spaces between them.
    size : float
        Of the lettering, > 0.
    bold : bool
        Whether the letters are bold.
    width : float
        That no line exceeds unless a single word does, in the unit of the size.

    Returns
    -------
    list of str
        The lines; none for no text.

    >>> wrapped("A tenon of the end", 10.0, False, 60.0)
    ['A tenon of', 'the end']
    """
    lines: list[str] = []
    for word in text.split(" ") if text else []:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def wrapped_anywhere(text: str, size: float, bold: bool, width: float) -> list[str]:
    """Break a text into lines at its spaces, and inside a word that is wider than the line.

    Parameters
    ----------
    text : str
        Any words.
    size, bold, width
        As for `wrapped`; a line holds one letter at least.

    Returns
    -------
    list of str
        The lines; none for no text.

    >>> wrapped_anywhere("unglued", 10.0, False, 30.0)
    ['unglu', 'ed']
    """
    broken: list[str] = []
    for word in text.split():
        piece = ""
        for letter in word:
            if piece and text_width(piece + letter, size, bold) > width:
                broken.append(piece)
                piece = ""
            piece += letter
        broken.append(piece)
    return wrapped(" ".join(broken), size, bold, width)


def shortened(text: str, size: float, room: float, bold: bool = False) -> str:
    """Return a text as it is, or its beginning with three dots where there is no room for more.

    Parameters
    ----------
    text : str
        In one line.
    size, room : float
        Of the lettering, and what there is for it, in one unit.
    bold : bool
        Whether the letters are bold.

    >>> shortened("A rocking bed for the workshop cat", 10.0, 80.0)
    'A rocking bed…'
    """
    if text_width(text, size, bold) <= room:
        return text
    while text and text_width(f"{text}…", size, bold) > room:
        text = text[:-1].rstrip()
    return f"{text}…"
