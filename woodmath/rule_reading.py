"""Reading a length as it is written at the bench, exactly, with the reason why where it cannot be read."""

import re
import unicodedata
from fractions import Fraction
from types import MappingProxyType
from typing import NamedTuple

from woodmath.as_given import LONGEST_QUOTED, quoted
from woodmath.errors import BadLength
from woodmath.fractions_in_print import FIGURES, LOWERED, ONE_CHARACTER, RAISED

LONGEST_TEXT = LONGEST_QUOTED
INCH = Fraction(254, 10)
"""Millimetres in an inch, exactly."""

_FOOT = 12 * INCH
_SINGLE_READ = MappingProxyType({sign: Fraction(text) for text, sign in ONE_CHARACTER.items()})
_SINGLES = "".join(_SINGLE_READ)
_LEVEL = MappingProxyType(str.maketrans(RAISED + LOWERED, FIGURES * 2))

_UNITS = MappingProxyType(
    {
        name: millimetres
        for names, millimetres in (
            ("in inch inches \" ''", INCH),
            ("ft foot feet '", _FOOT),
            ("mm millimetre millimetres millimeter millimeters", Fraction(1)),
            ("cm centimetre centimetres centimeter centimeters", Fraction(10)),
            ("m metre metres meter meters", Fraction(1000)),
        )
        for name in names.split()
    }
)

# Typographic primes and quotation marks, slashes, dashes; the minus sign is deliberately not among them.
_PLAIN = MappingProxyType(
    str.maketrans(
        "\u2032\u2018\u2019\u2033\u201c\u201d\u2044\u2215\u2010\u2011\u2013", "'''" + '"""' + "//---"
    )
)
_PART = re.compile(
    rf"""(?P<gap>[ ]*-?[ ]*)
    (?:
        (?:(?P<whole>[0-9]+)(?:[ ]+|-|(?=[{RAISED}{_SINGLES}])))?
        (?P<fraction>
            (?P<top>[0-9]+)(?:/|[ ]/[ ])(?P<bottom>[0-9]+)
            | (?P<raised>[{RAISED}]+)/(?P<lowered>[{LOWERED}]+)
            | (?P<single>[{_SINGLES}])
        )
        | (?P<number>[0-9]+\.?[0-9]*|\.[0-9]+)
    )
    (?:[ ]*(?P<unit>''|["']|[A-Za-z]+\.?))?""",
    re.VERBOSE,
)


class _Part(NamedTuple):
    text: str
    number: Fraction
    unit: Fraction | None


def millimetres_in(text: object, own_unit: Fraction) -> Fraction:
    r"""Length that is written in a text, exactly as written.

    Parameters
    ----------
    text : str
        One line of at most `LONGEST_TEXT` characters, as for `Rule.read`.
    own_unit : Fraction
        Millimetres in the unit that is meant where none is written.

    Returns
    -------
    Fraction
        In millimetres.

    Raises
    ------
    BadLength
        If it is no length; the message is the reason alone, for a sentence that says what was given.

    >>> millimetres_in("1' 2 1/4\"", own_unit=INCH) / INCH
    Fraction(57, 4)
    """
    first, *others = _parts(_plain(text))
    if not others:
        return first.number * (first.unit or own_unit)
    second, last = others[0], others[-1]
    if len(others) > 1 or first.unit != _FOOT or second.unit not in (None, INCH):
        raise BadLength(f"“{last.text}” is one length too many, and only feet and inches go together")
    if first.number.denominator != 1:
        raise BadLength(f"“{first.text}” before inches is not a whole number of feet")
    if second.number >= 12:
        raise BadLength(f"“{second.text}” after feet is a foot or more")
    return first.number * _FOOT + second.number * INCH


def _parts(written: str) -> list[_Part]:
    parts: list[_Part] = []
    place = 0
    while place < len(written):
        found = _PART.match(written, place)
        before = parts[-1].unit if parts else INCH
        if not found or ("-" in found["gap"] and before != _FOOT) or (before is None and not found["gap"]):
            raise BadLength(_why_not(written[place:].split()[0]))
        unit = (found["unit"] or "").rstrip(".").lower()
        if unit and unit not in _UNITS:
            raise BadLength(_why_not(written[found.start("unit") :].split()[0]))
        parts.append(_Part(found[0].strip(" -"), _number(found), _UNITS.get(unit)))
        place = found.end()
    return parts


def _plain(text: object) -> str:
    """Text with one kind of space, prime, slash and dash, once it is sure that it can be a length at all."""
    if not isinstance(text, str):
        raise BadLength(f"it is not text but {type(text).__name__}, and a length is text in quotation marks")
    lines = text.strip().splitlines()
    if not lines:
        raise BadLength("nothing is written there")
    if len(lines) > 1:
        raise BadLength("it runs over more than one line")
    if len(lines[0]) > LONGEST_TEXT:
        raise BadLength(f"it has {len(lines[0])} characters, and a length has {LONGEST_TEXT} at most")
    written = "".join(" " if character.isspace() else character for character in lines[0]).translate(_PLAIN)
    bare = written.lower().strip("+-\u2212 ")
    if bare in ("inf", "infinity", "\u221e"):
        raise BadLength("it is infinite, and every piece of wood has an end")
    if bare == "nan":
        raise BadLength("nan stands for “not a number”")
    if written[0] in "-\u2212" and bare:
        raise BadLength("it is negative, and a rule begins at 0")
    comma = re.search(r"[0-9]*,[0-9]+", written)
    if comma:
        raise BadLength(
            f"“{comma[0]}” has a comma; a decimal is written with a point ({comma[0].replace(',', '.')}), "
            "and a large number without anything between its digits"
        )
    return written


def _number(found: re.Match[str]) -> Fraction:
    if found["number"]:
        return Fraction(found["number"])
    if found["single"]:
        fraction = _SINGLE_READ[found["single"]]
    else:
        top = int((found["top"] or found["raised"]).translate(_LEVEL))
        bottom = int((found["bottom"] or found["lowered"]).translate(_LEVEL))
        if bottom == 0:
            raise BadLength(f"“{found['fraction']}” divides by zero")
        fraction = Fraction(top, bottom)
    together = int(found["whole"] or 0) + fraction
    if found["whole"] and fraction >= 1:
        whole, rest = divmod(together, 1)
        raise BadLength(
            f"“{found['fraction']}” after a whole number must be less than 1; "
            f"together they would be {f'{whole} {rest}' if rest else whole}"
        )
    return together


def _why_not(part: str) -> str:
    """Reason why a part of a text is no part of a length."""
    named = quoted(part)
    exotic = next((character for character in part if not character.isascii()), "")
    if exotic:
        name = unicodedata.name(exotic, "one without a name").lower()
        figures = ", and figures are 0 to 9" if exotic.isnumeric() else ""
        return f"{named} has a character out of place ({name}){figures}"
    if part.rstrip(".").lower() in _UNITS:
        return f"{named} has no number before it"
    if part[0] == "-":
        return f"{named} could be a minus; a dash only joins a whole number to its fraction, as in 7-5/8"
    if part[0] == "/":
        return f"{named} is no fraction, which has a whole number above and below the line"
    if part[0].isalpha():
        return f"{named} is not a unit of length that is known here; in, ft, mm, cm and m are"
    return f"{named} has no place in a length"
