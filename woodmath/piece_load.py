"""What lies or sits in a piece: the table [[load]] of its file, one for each occupant, cushion or stack of logs.

A length is in the piece's own unit, a mass in kilograms.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from woodmath.errors import WoodmathError
from woodmath.piece_kinds import Kind, Reading, is_huge
from woodmath.piece_reading import Table
from woodmath.piece_values import Length, Words
from woodmath.rule import Rule
from woodmath.weighing import EXAMPLES, GREATEST_MASS, mass_written, read_mass


@dataclass(frozen=True)
class Mass(Kind):
    """A mass with its unit, or a plain number of kilograms; more than 0 and at most `GREATEST_MASS`.

    Parameters
    ----------
    meaning : str
        What is weighed, for a message.

    >>> reading = Reading(Rule.inches(16))
    >>> weight = Mass("what it weighs")
    >>> weight.read("10 lb", "load, number 1, mass", reading), weight.read(4.5, "load, number 2, mass", reading)
    (4.5359237, 4.5)
    """

    meaning: str

    def read(self, given: object, key: str, reading: Reading) -> float | None:
        """Return the mass in kilograms."""
        if isinstance(given, str):
            try:
                return read_mass(given)
            except WoodmathError as error:
                reading.fault(key, f"is no mass: {error}")
                return None
        if (
            isinstance(given, int | float)
            and not isinstance(given, bool)
            and not is_huge(given)
            and 0 < given <= GREATEST_MASS
        ):
            return float(given)
        reading.refuse(
            key,
            given,
            f"write a mass with its unit, such as {EXAMPLES}, or a plain number of kilograms, more than 0 and at "
            f"most {GREATEST_MASS:g} ({self.meaning}).",
        )
        return None

    def example(self, rule: Rule) -> str:
        """Return one that works, written as in the file."""
        return '"10 lb"' if rule.unit == "inch" else '"4.5 kg"'

    def shown(self, value: float, rule: Rule) -> str:
        """Return a mass as it is typed.

        Parameters
        ----------
        value : float
            In kilograms, more than 0.
        rule : Rule
            Of the piece.

        Returns
        -------
        str
            With its unit.

        >>> Mass("what it weighs").shown(0.45359237, Rule.inches(16))
        '1 lb'
        """
        return mass_written(value, rule)


@dataclass(frozen=True)
class Load(Table):
    """One thing that lies or sits in the piece, or on its rim.

    Parameters
    ----------
    name : str
        What or who it is.
    mass : float
        In kilograms, > 0.
    height : float
        Of its centre over the floor while the piece stands at rest, 0 or more, in the piece's unit.
    offset : float
        Of its centre from the middle, along the rockers, 0 or more.
    gyration_radius : float
        How far its mass is spread about its centre, 0 or more; taken alike about every line.

    >>> Load(name="the cat", mass=4.5, height=11).offset
    0.0
    """

    name: Annotated[str, Words("what or who it is")]
    mass: Annotated[float, Mass("what it weighs")]
    height: Annotated[
        float, Length("from the floor up to its centre, while the piece stands at rest", from_zero=True)
    ]
    offset: Annotated[
        float, Length("from the middle to its centre, along the rockers, to one side", from_zero=True)
    ] = 0.0
    # Its own, whatever the size of the piece that it lies in.
    gyration_radius: Annotated[
        float, Length("gyration radius about its own centre; 0 for a point", from_zero=True, stock=True)
    ] = 0.0
