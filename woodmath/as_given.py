"""What was given, short and fit to print: on one line, in a message or beside an answer."""

LONGEST_QUOTED = 40
"""Characters of a text that a message repeats in full."""


def on_one_line(text: str) -> str:
    r"""Text on one line, with a sign in place of whatever cannot be printed.

    Parameters
    ----------
    text : str
        Anything that was typed.

    Returns
    -------
    str
        As long as the text, less the blanks at its ends.

    >>> on_one_line(" 1 3/4\tin ")
    '1 3/4 in'
    """
    return "".join(
        sign if sign.isprintable() else " " if sign.isspace() else "\ufffd" for sign in text
    ).strip()


def quoted(given: object) -> str:
    """What was given, as a sentence quotes it.

    Parameters
    ----------
    given : object
        Text or anything else; of more than `LONGEST_QUOTED` characters only the beginning is shown.

    Returns
    -------
    str
        Text in quotation marks on one line; anything else as Python writes it.

    >>> quoted("7 5/x"), quoted(None)
    ('“7 5/x”', 'None')
    """
    if not isinstance(given, str):
        try:
            return f"{given!r:.{LONGEST_QUOTED}}"
        except ValueError:  # an integer of thousands of digits, which Python does not write out
            return "a huge number"
    plain = on_one_line(given.strip()[: LONGEST_QUOTED + 1])
    return f"“{plain}”" if len(plain) <= LONGEST_QUOTED else f"“{plain[: LONGEST_QUOTED // 2]}…”"
