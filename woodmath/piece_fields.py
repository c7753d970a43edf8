"""A piece file as a form: one field for every value, what stands in it, and what a typed text means to the file.

The form and the text are two views of one thing, and that is the text: a field shows what the text says.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path as Folder

from woodmath.errors import BadPiece
from woodmath.piece import Piece
from woodmath.piece_file import parsed
from woodmath.piece_kinds import Kind
from woodmath.piece_load import Mass
from woodmath.piece_places import Path
from woodmath.piece_reading import Group, Rows, Table, kinds_of
from woodmath.piece_sizes import entries_of
from woodmath.piece_values import Count, Length, Lengths, Number, Threads, Words
from woodmath.piece_writing import shown
from woodmath.rule import Rule

_PLAIN_NUMBER = re.compile(r"[+-]?\d{1,15}(\.\d{1,15})?")
_SCALED = (
    ("scaled_from", Words("a demo piece, or a file of the same folder, that it is scaled from")),
    ("scale", Words("how many times as large as that, such as 7/4")),
)


@dataclass(frozen=True)
class Field:
    """One field of the form.

    Parameters
    ----------
    path : tuple
        Tables and key, a number for the row of a list.
    kind : Kind
        What stands there.
    label : str
        Key, meaning and unit, as the form shows them.
    """

    path: Path
    kind: Kind
    label: str


@dataclass(frozen=True)
class Draft:
    """A text on its way to become a piece.

    Parameters
    ----------
    text : str
        As typed.
    given : mapping or None
        What it holds by table and key; None when it cannot be parsed.
    piece : Piece or None
        None when it has faults.
    faults : tuple of str
        One plain sentence each; the first says how many there are.

    >>> Draft.of("post = 3").faults[0]
    'This text has 5 faults; put right what is listed and read it again.'
    """

    text: str
    given: Mapping[str, object] | None
    piece: Piece | None
    faults: tuple[str, ...] = ()

    @classmethod
    def of(cls, text: str, folder: Folder | None = None) -> Draft:
        """Read a text as far as it goes.

        Parameters
        ----------
        text : str
            As typed.
        folder : Path, optional
            Where it is going to lie.

        Returns
        -------
        Draft
            With a piece or with faults.
        """
        given: Mapping[str, object] | None = None
        try:
            given = parsed(text, "This text")
            return cls(text, given, Piece.from_text(text, folder))
        except BadPiece as trouble:
            first, *others = str(trouble).splitlines()
            return cls(text, given, None, (first, *(each.strip() for each in others if each.strip())))


def groups_of(draft: Draft) -> Iterator[tuple[str, tuple[Field, ...]]]:
    """Yield the groups of fields that a form for a text has.

    Parameters
    ----------
    draft : Draft
        How many rows its lists have decides how many fields there are.

    Yields
    ------
    (str, tuple of Field)
        The group's title, and its fields in the order of the table.

    >>> title, fields = next(groups_of(Draft.of("")))
    >>> title, [field.path for field in fields]
    ('The piece', [('name',), ('rule',), ('scaled_from',), ('scale',)])
    """
    unit = _rule_of(draft).unit_mark
    scaled = tuple(Field((name,), kind, f"{name}: {kind.meaning}") for name, kind in _SCALED)
    yield "The piece", (*_fields(Piece, (), draft, unit), *scaled)
    yield from _within(Piece, (), draft, unit)


def _within(
    table: type[Table], path: Path, draft: Draft, unit: str
) -> Iterator[tuple[str, tuple[Field, ...]]]:
    for name, kind in kinds_of(table).items():
        here = (*path, name)
        if isinstance(kind, Rows) and not path and _rows(draft, here):
            yield f"{_begun(kind.meaning)}  [[{name}]]", tuple(_row_fields(kind, here, draft, unit))
        if isinstance(kind, Group):
            yield (
                f"{_begun(kind.meaning)}  [{'.'.join(map(str, here))}]",
                tuple(_fields(kind.table, here, draft, unit)),
            )
            yield from _within(kind.table, here, draft, unit)


def _fields(table: type[Table], path: Path, draft: Draft, unit: str) -> Iterator[Field]:
    for name, kind in kinds_of(table).items():
        here = (*path, name)
        if isinstance(kind, Rows) and path:
            yield from _row_fields(kind, here, draft, unit)
        elif not isinstance(kind, (Group, Rows)):
            yield Field(here, kind, _label(name, kind, unit))


def _row_fields(kind: Rows, path: Path, draft: Draft, unit: str) -> Iterator[Field]:
    for row in range(_rows(draft, path)):
        for key, each in kinds_of(kind.table).items():
            yield Field((*path, row, key), each, _label(f"{path[-1]} {row + 1}, {key}", each, unit))


def _begun(meaning: str) -> str:
    return meaning[0].upper() + meaning[1:]


def _label(name: str, kind: Kind, unit: str) -> str:
    return f"{name}: {kind.meaning}" + (f", {unit}" if isinstance(kind, (Length, Lengths)) else "")


def _rule_of(draft: Draft) -> Rule:
    if draft.piece is not None:
        return draft.piece.rule
    return Rule.millimetres(1) if "mm" in str((draft.given or {}).get("rule")) else Rule.inches(16)


def _found(given: Mapping[str, object] | None, path: Path) -> object:
    here: object = given
    for step in path:
        if isinstance(here, list):
            here = dict(enumerate(here))
        if isinstance(here, Mapping) and step in here:
            here = here[step]
        else:
            return None
    return here


def _rows(draft: Draft, path: Path) -> int:
    told = _found(draft.given, path)
    if isinstance(told, list):
        return len(told)
    here: object = draft.piece.planned if draft.piece else None
    for step in path:
        here = getattr(here, str(step), None)
    return len(here) if isinstance(here, tuple) else 0


def texts_of(draft: Draft, fields: tuple[Field, ...]) -> tuple[str, ...]:
    r"""Return what stands in fields: what the text says, or what a scaled piece has from its drawing.

    Parameters
    ----------
    draft : Draft
        A text that can be parsed.
    fields : tuple of Field
        Of its form.

    Returns
    -------
    tuple of str
        "" where the text says nothing and nothing is inherited.

    >>> draft = Draft.of('[post]\nsquare = "44.45 mm"')
    >>> texts_of(draft, (Field(("post", "square"), Length("side"), "square"),))
    ('44.45 mm',)
    """
    inherited: dict[str, str] = {}
    if draft.piece is not None and draft.piece.origin is not None:
        rule = draft.piece.rule
        inherited = {
            entry.key: shown(entry.kind, entry.value, rule) for entry in entries_of(draft.piece.planned)
        }
    return tuple(_as_typed(draft, field, inherited) for field in fields)


def _as_typed(draft: Draft, field: Field, inherited: Mapping[str, str]) -> str:
    told = _found(draft.given, field.path)
    if told is None:
        return inherited.get(_key(field.path), "")
    if isinstance(told, list):
        return ", ".join(map(str, told))
    if isinstance(told, bool):
        return str(told).lower()
    return str(told)


def _key(path: Path) -> str:
    key = ""
    for step in path:
        key += (
            f", number {step + 1},"
            if isinstance(step, int)
            else f" {step}"
            if key.endswith(",")
            else f".{step}"
        )
    return key.removeprefix(".")


def meant(kind: Kind, typed: str) -> str | float | list[str] | None:
    """Return what a typed text means to the file.

    Parameters
    ----------
    kind : Kind
        Of the field.
    typed : str
        What stands in it.

    Returns
    -------
    text, number, list of text or None
        None for an empty field. A text that cannot be one of its kind is handed on as it is, so that reading the
        file says what is wrong with it.

    >>> meant(Length("side"), " 1 3/4 "), meant(Count("boards", 9), "3"), meant(Count("boards", 9), "few")
    ('1 3/4', 3, 'few')
    """
    text = typed.strip()
    if not text:
        return None
    if isinstance(kind, Lengths):
        return [part.strip() for part in text.split(",") if part.strip()]
    if isinstance(kind, (Count, Mass, Number, Threads)) and _PLAIN_NUMBER.fullmatch(text):
        return float(text) if "." in text else int(text)
    return text
