"""The figures of the timbers as a page shows them: what is from memory is marked, what is missing is said."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from woodmath.timber import species
from woodmath.timber_table import SPECIES, Printed, Species

MISSING = "missing"
FROM_MEMORY = "from memory"

_MOVEMENT = (
    ("radial_shrinkage", "shrinks across the rings, %"),
    ("tangential_shrinkage", "along the rings, %"),
    ("radial_coefficient", "moves across the rings, for 1 %"),
    ("tangential_coefficient", "along the rings"),
)
_STRENGTH = (
    ("specific_gravity", "specific gravity"),
    ("compression_parallel", "compression along, psi"),
    ("compression_perpendicular", "across"),
    ("shear_parallel", "shear along"),
    ("tension_perpendicular", "tension across"),
)


@dataclass(frozen=True)
class TimberFigures:
    """A table of timbers, which shows itself as the last line of a cell.

    Parameters
    ----------
    rows : tuple of Species
        In their order.
    columns : tuple of (str, str)
        The values' names, and what stands above them.
    note : str
        Below the table.

    >>> "from memory" in movement_figures("yellow-poplar")._repr_markdown_()
    True
    """

    rows: tuple[Species, ...]
    columns: tuple[tuple[str, str], ...]
    note: str

    def _repr_markdown_(self) -> str:
        heads = " | ".join(words for _, words in self.columns)
        lines = [
            f"| timber | {heads} |",
            "|---" * (len(self.columns) + 1) + "|",
            *(
                f"| {row.name} (*{row.botanical}*) | "
                + " | ".join(_shown(row.values[name]) for name, _ in self.columns)
                + " |"
                for row in self.rows
            ),
        ]
        sources = "; ".join(dict.fromkeys(self._sources()))
        return "\n".join(lines) + f"\n\n{self.note} Printed in: {sources}."

    def _sources(self) -> Iterator[str]:
        for row in self.rows:
            for name, _ in self.columns:
                printed = row.values[name]
                if printed is not None:
                    yield printed.source


def movement_figures(*names: str) -> TimberFigures:
    """Return how much timbers shrink and move.

    Parameters
    ----------
    *names : str
        Of `woodmath.timber.SPECIES`; all of them where none is given.

    Returns
    -------
    TimberFigures
        To be shown on a page.

    Raises
    ------
    UnknownName
        If the course has no such timber.

    Source: beside each value.

    >>> "missing" in movement_figures("pine, ponderosa")._repr_markdown_()
    True
    """
    return TimberFigures(
        _rows(names),
        _MOVEMENT,
        "Shrinkage is from green to oven-dry. What is marked “from memory” we have not seen in print; what is "
        "missing is not made up.",
    )


def strength_figures(*names: str) -> TimberFigures:
    """Return how heavy and how strong timbers are.

    Parameters
    ----------
    *names : str
        Of `woodmath.timber.SPECIES`; all of them where none is given.

    Returns
    -------
    TimberFigures
        To be shown on a page.

    Raises
    ------
    UnknownName
        If the course has no such timber.

    Source: beside each value.

    >>> "missing" in strength_figures("maple, sugar")._repr_markdown_()
    True
    """
    return TimberFigures(
        _rows(names),
        _STRENGTH,
        "At 12 percent of moisture. Strengths are averages of small clear samples: they compare one choice with "
        "another, and rate no load. What is marked “from memory” we have not seen in print; what is missing is not "
        "made up.",
    )


def _rows(names: tuple[str, ...]) -> tuple[Species, ...]:
    return tuple(map(species, names)) or SPECIES


def _shown(printed: Printed | None) -> str:
    if printed is None:
        return MISSING
    mark = f" ({FROM_MEMORY})" if printed.seen == FROM_MEMORY else ""
    return f"{printed.value:g}{mark}"
