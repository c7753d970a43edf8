"""The furniture timbers in figures: how heavy, how much they shrink and move, how strong; each value with its source.

A value that nobody has printed where we could see or remember it is None: missing, and never filled in.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Literal

Seen = Literal["read", "from memory"]

_COPY = "USDA Forest Products Laboratory, 12 percent table, in an unattributed copy"
_SHRINKAGE = "USDA Wood Handbook, GTR-190, Table 4-3"
_CHANGE = "USDA Wood Handbook, GTR-190, Table 13-5"
_CHANGE_RED_OAK = f"{_CHANGE}, row “red oak, commercial”: several red oaks together"
_CHANGE_WHITE_OAK = f"{_CHANGE}, row “white oak, commercial”: several white oaks together"
_FLOORING = "NWFA and FPL list of 1987, in a flooring dealer's page on stability"
_METRIC_DATA = "engdatabase.com, maple, sugar, which cites the Wood Handbook"
_MAPLE_FLOOR = "Maple Flooring Manufacturers Association, Physical properties and characteristics"
_DEALER = "a timber dealer's species page, black walnut"
_OTHER_DEALER = "another timber dealer's species page, walnut"
_COLUMN = "FDMC magazine, Strength and density predictors"
_UFC = "Unified Facilities Criteria 3-130-04, table of softwoods"
_HARDWOODS = "USDA Wood Handbook, GTR-190, table of hardwoods"
_SOFTWOODS = "USDA Wood Handbook, GTR-190, Table 5-3b"


@dataclass(frozen=True)
class Printed:
    """A value as somebody printed it.

    Parameters
    ----------
    value : float
        In the unit of what it measures.
    source : str
        Where it is printed.
    seen : "read" or "from memory"
        Whether we saw the print, or remember the value.

    >>> Printed(0.5, "a table", "read").value
    0.5
    """

    value: float
    source: str
    seen: Seen


@dataclass(frozen=True)
class Species:
    """A timber, with what is printed about it; None where we have no print of a value.

    Parameters
    ----------
    name, botanical : str
        The common name as its table spells it, and the botanical one.
    specific_gravity : Printed
        Oven-dry mass against the volume at 12 percent moisture, water = 1.
    radial_shrinkage, tangential_shrinkage, volumetric_shrinkage : Printed, optional
        From green to oven-dry, in percent of the green size: across the rings, along them, of the volume.
    radial_coefficient, tangential_coefficient : Printed, optional
        Change of size for each percent of moisture, as a part of the size at 10 percent.
    compression_parallel, compression_perpendicular, shear_parallel, tension_perpendicular : Printed, optional
        Strengths along and across the grain at 12 percent moisture, in pounds per square inch: averages of
        small clear samples, to compare one choice with another and for nothing else.

    >>> cherry = next(each for each in SPECIES if each.name == "cherry, black")
    >>> cherry.botanical, cherry.tangential_coefficient.value
    ('Prunus serotina', 0.00248)
    """

    name: str
    botanical: str
    specific_gravity: Printed
    radial_shrinkage: Printed | None = None
    tangential_shrinkage: Printed | None = None
    volumetric_shrinkage: Printed | None = None
    radial_coefficient: Printed | None = None
    tangential_coefficient: Printed | None = None
    compression_parallel: Printed | None = None
    compression_perpendicular: Printed | None = None
    shear_parallel: Printed | None = None
    tension_perpendicular: Printed | None = None

    @property
    def values(self) -> dict[str, Printed | None]:
        """Return every printed value by its name, None where it is missing."""
        return {
            each.name: getattr(self, each.name)
            for each in fields(self)
            if each.name not in ("name", "botanical")
        }


def _read(value: float, source: str) -> Printed:
    return Printed(value, source, "read")


def _from_memory(value: float, source: str) -> Printed:
    return Printed(value, source, "from memory")


SPECIES = (
    Species(
        "alder, red",
        "Alnus rubra",
        specific_gravity=_read(0.41, _COPY),
        radial_shrinkage=_read(4.4, _SHRINKAGE),
        tangential_shrinkage=_read(7.3, _SHRINKAGE),
        volumetric_shrinkage=_read(12.6, _SHRINKAGE),
        radial_coefficient=_read(0.00151, _CHANGE),
        tangential_coefficient=_read(0.00256, _CHANGE),
        compression_parallel=_read(5820, _COPY),
        compression_perpendicular=_read(440, _COPY),
        shear_parallel=_read(1080, _COPY),
        tension_perpendicular=_read(420, _COPY),
    ),
    Species(
        "ash, white",
        "Fraxinus americana",
        specific_gravity=_read(0.6, _COPY),
        radial_shrinkage=_read(4.9, _SHRINKAGE),
        tangential_shrinkage=_read(7.8, _SHRINKAGE),
        volumetric_shrinkage=_read(13.3, _SHRINKAGE),
        radial_coefficient=_read(0.00169, _CHANGE),
        tangential_coefficient=_read(0.00274, _CHANGE),
        compression_parallel=_read(7410, _COPY),
        compression_perpendicular=_read(1160, _COPY),
        shear_parallel=_read(1910, _COPY),
        tension_perpendicular=_from_memory(940, _HARDWOODS),
    ),
    Species(
        "basswood",
        "Tilia americana",
        specific_gravity=_read(0.37, _COPY),
        radial_shrinkage=_read(6.6, _SHRINKAGE),
        tangential_shrinkage=_read(9.3, _SHRINKAGE),
        volumetric_shrinkage=_read(15.8, _SHRINKAGE),
        radial_coefficient=_read(0.00230, _CHANGE),
        tangential_coefficient=_read(0.00330, _CHANGE),
        compression_parallel=_read(4730, _COPY),
        compression_perpendicular=_read(370, _COPY),
        shear_parallel=_read(990, _COPY),
        tension_perpendicular=_from_memory(350, _HARDWOODS),
    ),
    Species(
        "beech",
        "Fagus grandifolia",
        specific_gravity=_read(0.64, _COPY),
        radial_shrinkage=_read(5.5, _SHRINKAGE),
        tangential_shrinkage=_read(11.9, _SHRINKAGE),
        volumetric_shrinkage=_read(17.2, _SHRINKAGE),
        radial_coefficient=_read(0.00190, _CHANGE),
        tangential_coefficient=_read(0.00431, _CHANGE),
        compression_parallel=_read(7300, _COPY),
        compression_perpendicular=_read(1010, _COPY),
        shear_parallel=_read(2010, _COPY),
        tension_perpendicular=_from_memory(1010, _HARDWOODS),
    ),
    Species(
        "birch, yellow",
        "Betula alleghaniensis",
        specific_gravity=_read(0.62, _COPY),
        radial_shrinkage=_read(7.3, _SHRINKAGE),
        tangential_shrinkage=_read(9.5, _SHRINKAGE),
        volumetric_shrinkage=_read(16.8, _SHRINKAGE),
        radial_coefficient=_read(0.00256, _CHANGE),
        tangential_coefficient=_read(0.00338, _CHANGE),
        compression_parallel=_read(8170, _COPY),
        compression_perpendicular=_read(970, _COPY),
        shear_parallel=_read(1880, _COPY),
        tension_perpendicular=_from_memory(920, _HARDWOODS),
    ),
    Species(
        "cherry, black",
        "Prunus serotina",
        specific_gravity=_read(0.5, _COPY),
        radial_shrinkage=_read(3.7, _SHRINKAGE),
        tangential_shrinkage=_read(7.1, _SHRINKAGE),
        volumetric_shrinkage=_read(11.5, _SHRINKAGE),
        radial_coefficient=_read(0.00126, _CHANGE),
        tangential_coefficient=_read(0.00248, _CHANGE),
        compression_parallel=_read(7110, _COPY),
        compression_perpendicular=_read(690, _COPY),
        shear_parallel=_read(1700, _COPY),
        tension_perpendicular=_from_memory(560, _HARDWOODS),
    ),
    Species(
        "maple, sugar",
        "Acer saccharum",
        specific_gravity=_read(0.63, _MAPLE_FLOOR),
        radial_shrinkage=_read(4.8, _METRIC_DATA),
        tangential_shrinkage=_read(9.9, _METRIC_DATA),
        volumetric_shrinkage=_read(14.7, _METRIC_DATA),
        radial_coefficient=_read(0.00165, _CHANGE),
        tangential_coefficient=_read(0.00353, _CHANGE),
        compression_parallel=_read(7830, _MAPLE_FLOOR),
        compression_perpendicular=_read(1470, _MAPLE_FLOOR),
        shear_parallel=_read(2330, _MAPLE_FLOOR),
    ),
    Species(
        "oak, northern red",
        "Quercus rubra",
        specific_gravity=_read(0.63, _COLUMN),
        radial_shrinkage=_from_memory(4.0, _SHRINKAGE),
        tangential_shrinkage=_from_memory(8.6, _SHRINKAGE),
        volumetric_shrinkage=_from_memory(13.7, _SHRINKAGE),
        radial_coefficient=_read(0.00158, _CHANGE_RED_OAK),
        tangential_coefficient=_read(0.00369, _CHANGE_RED_OAK),
        compression_parallel=_read(6760, _COLUMN),
        compression_perpendicular=_from_memory(1010, _HARDWOODS),
        shear_parallel=_from_memory(1780, _HARDWOODS),
        tension_perpendicular=_from_memory(800, _HARDWOODS),
    ),
    Species(
        "oak, white",
        "Quercus alba",
        specific_gravity=_read(0.68, _COLUMN),
        radial_shrinkage=_read(5.6, _SHRINKAGE),
        tangential_shrinkage=_read(10.5, _SHRINKAGE),
        volumetric_shrinkage=_read(16.3, _SHRINKAGE),
        radial_coefficient=_read(0.00180, _CHANGE_WHITE_OAK),
        tangential_coefficient=_read(0.00365, _CHANGE_WHITE_OAK),
        compression_parallel=_from_memory(7440, _HARDWOODS),
        compression_perpendicular=_from_memory(1070, _HARDWOODS),
        shear_parallel=_from_memory(2000, _HARDWOODS),
        tension_perpendicular=_from_memory(800, _HARDWOODS),
    ),
    Species(
        "walnut, black",
        "Juglans nigra",
        specific_gravity=_read(0.55, _DEALER),
        radial_shrinkage=_read(5.5, _SHRINKAGE),
        tangential_shrinkage=_read(7.8, _SHRINKAGE),
        volumetric_shrinkage=_read(12.8, _SHRINKAGE),
        radial_coefficient=_read(0.00190, _CHANGE),
        tangential_coefficient=_read(0.00274, _CHANGE),
        compression_parallel=_read(7580, _OTHER_DEALER),
        compression_perpendicular=_from_memory(1010, _HARDWOODS),
        shear_parallel=_from_memory(1370, _HARDWOODS),
        tension_perpendicular=_from_memory(690, _HARDWOODS),
    ),
    Species(
        "yellow-poplar",
        "Liriodendron tulipifera",
        specific_gravity=_from_memory(0.42, _HARDWOODS),
        radial_shrinkage=_read(4.6, _SHRINKAGE),
        tangential_shrinkage=_read(8.2, _SHRINKAGE),
        volumetric_shrinkage=_read(12.7, _SHRINKAGE),
        radial_coefficient=_from_memory(0.00158, _CHANGE),
        tangential_coefficient=_from_memory(0.00289, _CHANGE),
        compression_parallel=_from_memory(5540, _HARDWOODS),
        compression_perpendicular=_from_memory(500, _HARDWOODS),
        shear_parallel=_from_memory(1190, _HARDWOODS),
        tension_perpendicular=_from_memory(540, _HARDWOODS),
    ),
    Species(
        "Douglas-fir, coast",
        "Pseudotsuga menziesii",
        specific_gravity=_read(0.48, _UFC),
        radial_shrinkage=_read(4.8, _SHRINKAGE),
        tangential_shrinkage=_read(7.6, _SHRINKAGE),
        volumetric_shrinkage=_read(12.4, _SHRINKAGE),
        radial_coefficient=_from_memory(0.00165, _CHANGE),
        tangential_coefficient=_read(0.00267, _FLOORING),
        compression_parallel=_from_memory(7230, _SOFTWOODS),
        compression_perpendicular=_from_memory(800, _SOFTWOODS),
        shear_parallel=_from_memory(1130, _SOFTWOODS),
        tension_perpendicular=_from_memory(340, _SOFTWOODS),
    ),
    Species(
        "pine, eastern white",
        "Pinus strobus",
        specific_gravity=_from_memory(0.35, _SOFTWOODS),
        radial_shrinkage=_from_memory(2.1, _SHRINKAGE),
        tangential_shrinkage=_from_memory(6.1, _SHRINKAGE),
        volumetric_shrinkage=_from_memory(8.2, _SHRINKAGE),
        radial_coefficient=_from_memory(0.00071, _CHANGE),
        tangential_coefficient=_from_memory(0.00212, _CHANGE),
        compression_parallel=_from_memory(4800, _SOFTWOODS),
        compression_perpendicular=_from_memory(440, _SOFTWOODS),
        shear_parallel=_from_memory(900, _SOFTWOODS),
        tension_perpendicular=_from_memory(310, _SOFTWOODS),
    ),
    Species(
        "pine, ponderosa",
        "Pinus ponderosa",
        specific_gravity=_read(0.4, _SOFTWOODS),
        compression_parallel=_read(5320, _SOFTWOODS),
        compression_perpendicular=_read(580, _SOFTWOODS),
        shear_parallel=_read(1130, _SOFTWOODS),
        tension_perpendicular=_read(420, _SOFTWOODS),
    ),
)
"""The timbers that the course knows, in the words of their tables."""
