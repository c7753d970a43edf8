"""A piece made from another by scale: which lengths are scaled, which are stock and stay, which are given anew."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from woodmath.errors import BadPiece, WoodmathError
from woodmath.piece_kinds import Kind, Reading, as_written, cut_short, is_huge, nearest
from woodmath.piece_over import read_over
from woodmath.piece_sizes import NOT_OF_THE_PIECE, entries_of, paths_of, with_lengths
from woodmath.piece_values import Length
from woodmath.scaling import read_scale, scale_for, scaled

if TYPE_CHECKING:
    from woodmath.piece import Piece

KEYS = ("scaled_from", "scale", "wanted", "stock")
"""What a file says about where it is scaled from, at its top."""

How = Literal["scaled", "kept", "given"]


@dataclass(frozen=True)
class Inherited:
    """One length of a scaled piece.

    Parameters
    ----------
    key : str
        As in the file.
    meaning : str
        What it measures.
    before, after : float or None
        In the drawing and in the piece, both in the piece's unit; None where there was or is none.
    how : "scaled", "kept" or "given"
        Kept: it is stock. Given: the piece's own file says it.
    """

    key: str
    meaning: str
    before: float | None
    after: float | None
    how: How


@dataclass(frozen=True)
class Origin:
    """Where a scaled piece comes from.

    Parameters
    ----------
    source : Piece
        As drawn, in its own unit.
    scale : Fraction
        How many times as long every scaled length becomes.
    rows : tuple of Inherited
        Every length of the piece itself; those of the shop and of what lies in it are not among them.
    """

    source: Piece
    scale: Fraction
    rows: tuple[Inherited, ...]


def scaled_over(
    source: Piece, given: Mapping[str, object], said: Mapping[str, object], reading: Reading
) -> tuple[Piece, Fraction]:
    """Return a piece scaled from another, with its own values in place.

    Parameters
    ----------
    source : Piece
        As drawn.
    given : mapping of str to object
        The tables of the piece's own file.
    said : mapping of str to object
        Its `KEYS`.
    reading : Reading
        The rule of the new piece, and where faults are noted.

    Returns
    -------
    (Piece, Fraction)
        The piece in the unit of its own rule, and the scale; what it is worth only when no fault was noted.

    Source: `woodmath.scaling.scale_derivation`.
    """
    kept = _stock(source, said, reading)
    scale = _scale(source, said, kept, reading)
    name = given.get("name")
    if name is None:
        reading.fault(
            "name", 'is missing: a scaled piece has a name of its own. Add it, like name = "A larger bed".'
        )

    def change(path: str, kind: Kind, length: float) -> float:
        here = source.rule.convert(length, to=reading.rule)
        # A length of nothing stays so at every scale, and the rule for scaling knows none.
        there = here if path in kept or not here else scaled(here, float(scale))
        reading.rule.marks(there)
        return there

    try:
        return read_over(with_lengths(source, change), given, "", reading), scale
    except WoodmathError as trouble:
        reading.fault("scale", f"makes a length that no rule carries. {trouble}")
        return source, scale


def origin_of(piece: Piece, source: Piece, scale: Fraction, given: Mapping[str, object]) -> Origin:
    """Return where a scaled piece comes from, length by length.

    Parameters
    ----------
    piece, source : Piece
        As it became, and as drawn.
    scale : Fraction
        From the one to the other.
    given : mapping of str to object
        The tables of the piece's own file.

    Returns
    -------
    Origin
        With a row for every length of the piece and of its source.
    """
    before = {entry.key: entry for entry in entries_of(source) if entry.length is not None}
    after = {entry.key: entry for entry in entries_of(piece) if entry.length is not None}
    rows = []
    gone = {key: entry for key, entry in before.items() if key not in after}
    for key, entry in {**after, **gone}.items():
        if entry.path.split(".")[0] in NOT_OF_THE_PIECE:
            continue
        drawn, became = before.get(key), after.get(key)
        old = source.rule.convert(drawn.length, to=piece.rule) if drawn and drawn.length is not None else None
        new = became.length if became else None
        if _is_given(given, entry.path) or old is None or new is None:
            how: How = "given"
        else:
            how = "kept" if old == new and (scale != 1 or _is_stock(entry.kind)) else "scaled"
        rows.append(Inherited(key, entry.kind.meaning, old, new, how))
    return Origin(source, scale, tuple(rows))


def _is_stock(kind: Kind) -> bool:
    return not isinstance(kind, Length) or kind.stock


def _is_given(given: Mapping[str, object], path: str) -> bool:
    here: object = given
    for part in path.split("."):
        if not isinstance(here, dict):
            return True
        if part not in here:
            return False
        here = here[part]
    return True


def _stock(source: Piece, said: Mapping[str, object], reading: Reading) -> frozenset[str]:
    """Return the paths of all lengths that stay as they are."""
    kinds = dict(paths_of(type(source)))
    kept = {path for path, kind in kinds.items() if _is_stock(kind)}
    wanted = said.get("stock", [])
    if not isinstance(wanted, list) or len(wanted) > len(kinds):
        reading.refuse(
            "stock", wanted, 'give a list of keys that stay as they are, such as ["rocker.depth"].'
        )
        return frozenset(kept)
    for name in wanted:
        found = {path for path in kinds if isinstance(name, str) and f"{path}.".startswith(f"{name}.")}
        if not found:
            near = nearest(str(name), kinds) if isinstance(name, str) and len(name) < 100 else ""
            hint = (
                f'Did you mean "{near}"?' if near else 'A key is written with its table, such as "post.foot".'
            )
            reading.fault("stock", f"names {as_written(name)}, which is no length of the drawing. {hint}")
        kept |= found
    return frozenset(kept)


def _scale(source: Piece, said: Mapping[str, object], kept: frozenset[str], reading: Reading) -> Fraction:
    """Return the scale as it is said, or the one that makes a length as long as it is wanted; 1 after a fault."""
    if ("scale" in said) == ("wanted" in said):
        words = (
            "and wanted say the same thing twice. Keep one of the two."
            if "scale" in said
            else 'is missing: how many times as large as the drawing? Add scale = "3/2", or wanted = '
            '{ "end.top" = "24" }.'
        )
        reading.fault("scale", words)
        return Fraction(1)
    if "wanted" in said:
        return _scale_of_wanted(source, said["wanted"], kept, reading)
    told = said["scale"]
    if isinstance(told, bool) or not isinstance(told, str | int | float) or is_huge(told):
        reading.refuse("scale", told, 'write how many times as large it becomes: "3/2", "2:1" or 1.75.')
        return Fraction(1)
    try:
        return read_scale(told if isinstance(told, str) else format(Decimal(repr(told)), "f"))
    except WoodmathError as trouble:
        reading.fault("scale", f"is not one: {trouble}")
        return Fraction(1)


def _scale_of_wanted(source: Piece, told: object, kept: frozenset[str], reading: Reading) -> Fraction:
    sizes = _flat(told) if isinstance(told, dict) else {}
    if len(sizes) != 1:
        words = 'give exactly one size, and the scale follows from it: wanted = { "end.top" = "24" }.'
        reading.refuse("wanted", told, words)
        return Fraction(1)
    ((path, size),) = sizes.items()
    known = {
        entry.path: entry.length
        for entry in entries_of(source)
        if entry.length and entry.key == entry.path and entry.path not in kept
    }
    if path not in known:
        near = nearest(path, known) if len(path) < 100 else ""
        hint = f"Did you mean {near}? " if near else ""
        what = "is stock, and stays whatever the scale" if path in kept else "is no length of the drawing"
        reading.fault(f"wanted.{cut_short(path)}", f"{what}. {hint}Possible: {', '.join(known)}.")
        return Fraction(1)
    length = Length("the size that is wanted").read(size, f"wanted.{path}", reading)
    if length is None:
        return Fraction(1)
    drawn = source.rule.convert(known[path], to=reading.rule)
    return Fraction(scale_for(known=drawn, wanted=length)).limit_denominator(10**6)


def _flat(told: Mapping[str, object], within: str = "") -> dict[str, object]:
    found: dict[str, object] = {}
    for name, value in told.items():
        path = f"{within}.{name}" if within else name
        found.update(_flat(value, path) if isinstance(value, dict) else {path: value})
    return found


def scaled_piece(piece: Piece, scale: str, name: str) -> Piece:
    """Return a piece at another size, its stock as it is.

    Parameters
    ----------
    piece : Piece
        As drawn.
    scale : str
        How many times as large, as a file writes it.
    name : str
        What the new piece is called.

    Returns
    -------
    Piece
        In the unit of the same rule.

    Raises
    ------
    BadPiece
        If there is no such scale, or a length leaves the rule.

    Source: `woodmath.scaling.scale_derivation`.

    >>> from woodmath.piece import Piece
    >>> large = scaled_piece(Piece.demo("cat-bed"), "2", "A bed for two cats")
    >>> large.side.length, large.side.thickness
    (36.0, 0.875)
    """
    reading = Reading(piece.rule)
    given = {"name": name}
    made, ratio = scaled_over(piece.planned, given, {"scale": scale}, reading)
    if reading.faults:
        raise BadPiece(" ".join(reading.faults))
    return replace(made, origin=origin_of(made, piece.planned, ratio, given))
