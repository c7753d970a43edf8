"""A piece as the text of its file, with a remark behind every key; and one value of a text changed.

What a maker wrote stays as it was: a change of one value touches that value and nothing else.
"""

from __future__ import annotations

import contextlib
import copy
import dataclasses
import json
import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING

from woodmath import piece_as_made
from woodmath.errors import BadLength, BadPiece
from woodmath.piece_file import parsed
from woodmath.piece_kinds import Kind
from woodmath.piece_load import Mass
from woodmath.piece_places import Path as Place
from woodmath.piece_places import value_places
from woodmath.piece_reading import Rows, Table, dotted, kinds_of
from woodmath.piece_values import Choice, Length, Lengths, RuleMark, Words
from woodmath.rule import Rule

if TYPE_CHECKING:
    from woodmath.piece import Piece

_TO_REMARK = re.compile(r"[ \t]+(?=#)")
_REMARK_AT = 30
"""The column where remarks begin, so that they can be read as a column."""


def piece_text(piece: Piece) -> str:
    """Return the text of a piece's file, with a remark behind every key.

    Parameters
    ----------
    piece : Piece
        Any piece; one that is scaled from another is written with all sizes of its own.

    Returns
    -------
    str
        TOML that reads back as the same piece.

    >>> from woodmath.piece import Piece
    >>> piece = Piece.demo("log-box")
    >>> Piece.from_text(piece_text(piece)) == piece
    True
    """
    planned = piece.planned
    lines = ["# Lengths are written as on the rule, between straight quotation marks, without the inch mark."]
    if piece.origin is not None:
        lines.append(f"# Scaled {piece.origin.scale} from: {piece.origin.source.name}")
    lines += ["", *_lines_of(planned, "", piece.rule)]
    if piece.plan is not None:
        lines += ["", "[as_made]                     # what came out otherwise than planned"]
        lines.append(f"cut = {json.dumps(list(piece.cut))}")
        lines += _changed_lines(piece)
    return "\n".join(lines) + "\n"


def _lines_of(table: Table, named: str, rule: Rule) -> Iterator[str]:
    """Yield the lines of a table: its own keys first, then the tables within it."""
    within: list[tuple[str, Kind, Table]] = []
    listed: list[tuple[str, Rows, tuple[Table, ...]]] = []
    usual = {each.name: each.default for each in dataclasses.fields(table)}
    for name, kind in kinds_of(type(table)).items():
        value = getattr(table, name)
        if isinstance(value, Table):
            within.append((dotted(named, name), kind, value))
        elif isinstance(kind, Rows) and not named:
            listed.append((name, kind, value))
        elif value != usual[name]:
            yield from _line(name, kind, value, rule)
    for name, kind, value in within:
        inner = list(_lines_of(value, name, rule))
        if inner:
            yield ""
            yield _remarked(f"[{name}]", kind.meaning)
            yield from inner
    for name, rows, each in listed:
        for row in each:
            yield ""
            yield _remarked(f"[[{name}]]", rows.meaning)
            yield from _lines_of(row, name, rule)


def _line(name: str, kind: Kind, value: object, rule: Rule) -> Iterator[str]:
    if isinstance(kind, Rows) and isinstance(value, tuple):
        yield _remarked(f"{name} = [", kind.meaning)
        for row in value:
            pairs = (
                f"{key} = {written(each, getattr(row, key), rule)}"
                for key, each in kinds_of(type(row)).items()
                if getattr(row, key) is not None
            )
            yield f"    {{ {', '.join(pairs)} }},"
        yield "]"
    else:
        yield _remarked(f"{name} = {written(kind, value, rule)}", kind.meaning)


def _changed_lines(piece: Piece) -> Iterator[str]:
    """Yield, table by table, the values that came out otherwise than planned."""
    changed: dict[str, dict[str, tuple[Kind, object]]] = {}
    for change in piece.changes:
        table: Table = piece
        named = ""
        for name in change.path.split("."):
            kind, value = kinds_of(type(table))[name], getattr(table, name)
            if not isinstance(value, Table):
                changed.setdefault(named, {})[name] = (kind, value)
                break
            table, named = value, dotted(named, name)
    for named, values in changed.items():
        yield ""
        yield f"[{dotted(piece_as_made.KEY, named)}]"
        for name, (kind, value) in values.items():
            if value is not None:
                yield from _line(name, kind, value, piece.rule)


def _remarked(line: str, remark: str) -> str:
    return f"{line.ljust(_REMARK_AT - 1)} # {remark}"


def shown(kind: Kind, value: object, rule: Rule) -> str:
    """Return a value as it is typed: a length as on the rule where that is exact, else with its decimals.

    Parameters
    ----------
    kind : Kind
        What it is.
    value : object
        As a piece holds it.
    rule : Rule
        Of the piece.

    Returns
    -------
    str
        Without quotation marks; "" for nothing.

    >>> length = Length("side of the post")
    >>> shown(length, 1.75, Rule.inches(16)), shown(length, 1.7412, Rule.inches(16))
    ('1 3/4', '1.7412')
    """
    if value is None:
        return ""
    if isinstance(kind, Length) and isinstance(value, (int, float)):
        with contextlib.suppress(BadLength):
            mark = rule.mark(value)
            if rule.read(mark) == value:
                return mark
        return format(Fraction(value), "f") if isinstance(value, int) else f"{value!r}"
    if isinstance(kind, Mass) and isinstance(value, (int, float)):
        return kind.shown(value, rule)
    if isinstance(kind, RuleMark) and isinstance(value, Rule):
        size = value.mark_size
        return f"1/{size.denominator} in" if value.unit == "inch" else f"{value.mark(value.one_mark)} mm"
    if isinstance(kind, Lengths) and isinstance(value, tuple):
        return ", ".join(shown(Length(kind.meaning), each, rule) for each in value)
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value)


def written(kind: Kind, value: object, rule: Rule) -> str:
    """Return a value as it stands in the file.

    Parameters
    ----------
    kind, value, rule
        As for `shown`; the value is not None.

    Returns
    -------
    str
        With the quotation marks that it needs.

    >>> written(Length("side of the post"), 1.75, Rule.inches(16))
    '"1 3/4"'
    """
    if isinstance(kind, Lengths) and isinstance(value, tuple):
        return f"[{', '.join(written(Length(kind.meaning), each, rule) for each in value)}]"
    text = shown(kind, value, rule)
    return _in_quotes(text) if isinstance(kind, (Length, Mass, RuleMark, Words, Choice)) else text


def changed_text(text: str, path: Place, value: str | float | list[str] | None) -> str:
    r"""Return a text with one value changed; every remark and all other lines stay as they are.

    Parameters
    ----------
    text : str
        Of a piece's file.
    path : tuple
        Tables and key, as in ("post", "square") or ("joint", "tenons", 0, "place").
    value : text, number, list of text or None
        What is to stand there; None takes the key out.

    Returns
    -------
    str
        A key that was not there stands at the head of its table, or in a new table at the end.

    Raises
    ------
    BadPiece
        If the text cannot be parsed, or the value stands where it cannot be changed alone.

    >>> changed_text('[post]  # all four\nsquare = "1 3/4"  # planed', ("post", "square"), "2")
    '[post]  # all four\nsquare = "2"  # planed'
    """
    given = parsed(text, "This text")
    wanted = _with(given, path, value)
    new = _edited(text, path, value)
    try:
        same = parsed(new, "This text") == wanted
    except BadPiece:
        same = False
    if not same:
        raise BadPiece(
            f"{'.'.join(map(str, path))} stands in the text in a way that the form cannot change alone. Change it in "
            "the text itself."
        )
    return new


def _edited(text: str, path: Place, value: str | float | list[str] | None) -> str:
    places = value_places(text)
    end_of_line = "\r\n" if "\r\n" in text else "\n"
    if path in places:
        start, end = places[path]
        if value is not None:
            new = _as_toml(value)
            room = _TO_REMARK.match(text, end)
            if room is None:
                return f"{text[:start]}{new}{text[end:]}"
            # The remark behind it stays in its column where there is room.
            return f"{text[:start]}{new.ljust(room.end() - start - 1)} {text[room.end() :]}"
        first = text.rfind("\n", 0, start) + 1
        last = text.find("\n", end)
        return text[:first] + (text[last + 1 :] if last >= 0 else "")
    if value is None:
        return text
    line = f"{path[-1]} = {_as_toml(value)}{end_of_line}"
    if len(path) == 1:
        return line + text
    whole = text if text.endswith("\n") or not text else f"{text}{end_of_line}"
    row = path[-2] if isinstance(path[-2], int) else None
    name = ".".join(map(str, path[:-1] if row is None else path[:-2]))
    header = _header(whole, name, row)
    if header:
        return f"{whole[: header.end()]}{line}{whole[header.end() :]}"
    return f"{whole}{end_of_line}[{name}]{end_of_line}{line}"


def _header(text: str, name: str, row: int | None) -> re.Match[str] | None:
    """Return the line over a table, or over one row of a list whose rows are tables."""
    if row is None:
        return re.search(rf"^[ \t]*\[{re.escape(name)}\].*\n", text, re.MULTILINE)
    found = list(re.finditer(rf"^[ \t]*\[\[{re.escape(name)}\]\].*\n", text, re.MULTILINE))
    return found[row] if row < len(found) else None


def _with(given: dict[str, object], path: Place, value: object) -> dict[str, object]:
    """Return what a file holds, copied, with one value changed."""
    copied = copy.deepcopy(given)
    here: object = copied
    for step, following in pairwise(path):
        if isinstance(here, list) and isinstance(step, int) and step < len(here):
            here = here[step]
        elif isinstance(here, dict):
            here = here.setdefault(str(step), [] if isinstance(following, int) else {})
    if isinstance(here, dict):
        if value is None:
            here.pop(str(path[-1]), None)
        else:
            here[str(path[-1])] = value
    return copied


def _as_toml(value: str | float | list[str]) -> str:
    if isinstance(value, list):
        return f"[{', '.join(map(_in_quotes, value))}]"
    return _in_quotes(value) if isinstance(value, str) else repr(value)


def _in_quotes(text: str) -> str:
    # What JSON escapes, TOML reads; DEL alone JSON leaves as it is.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
