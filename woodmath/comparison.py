"""Our number beside somebody else's: a table to read, and an error when they are too far apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from woodmath.errors import Disagreement

_NOTHING_TO_SPEAK_OF = 1e-6


@dataclass(frozen=True)
class Comparison:
    """Rows of (what, ours, published), the tolerance that they were held to, and where the published ones stand.

    >>> Comparison((("a mitre, degrees", 45.0, 45.0),), 0.01, "a table")._repr_markdown_().count("45")
    2
    """

    rows: tuple[tuple[str, float, float], ...]
    within: float
    source: str

    def _repr_markdown_(self) -> str:
        lines = "\n".join(
            f"| {what} | {ours:.8g} | {published:.8g} | {_apart(ours, published)} | ✓ |"
            for what, ours, published in self.rows
        )
        return (
            f"| what | ours | published | apart by | |\n|---|---|---|---|---|\n{lines}\n\n"
            f"{self._agreement()} Source: {self.source}."
        )

    def _agreement(self) -> str:
        if self.within < _NOTHING_TO_SPEAK_OF:
            return "They agree to the last digit shown."
        return f"None is more than {self.within:.3g} apart."


def _apart(ours: float, published: float) -> str:
    difference = abs(ours - published)
    return "0" if difference < _NOTHING_TO_SPEAK_OF else f"{difference:.2g}"


def compare(rows: Sequence[tuple[str, float, float]], *, within: float, source: str) -> Comparison:
    """Compare our numbers with published ones, and stop the page if they disagree.

    Parameters
    ----------
    rows : sequence of (str, float, float)
        What it is with its unit, our number, the published number.
    within : float
        How far apart the two may be, >= 0: half of the last digit that the source prints, as a rule.
    source : str
        Title and table or page, with its mark; or "common practice" for a rule of thumb.

    Returns
    -------
    Comparison
        Shows itself as a table.

    Raises
    ------
    Disagreement
        If any two are further apart, or ours is no number; the message names them.

    >>> compare([("a mitre, degrees", 45.0, 44.0)], within=0.01, source="a table")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
    woodmath.errors.Disagreement: a mitre, degrees: ours is 45, published is 44 (a table), ...
    """
    for what, ours, published in rows:
        if not abs(ours - published) <= within:
            raise Disagreement(
                f"{what}: ours is {ours:.10g}, published is {published:.10g} ({source}), and they may be {within:g} "
                "apart. One of the two is wrong: look at the derivation, then at the source."
            )
    return Comparison(tuple(rows), within, source)
