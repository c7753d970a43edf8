"""The settings of the mortise gauge: two pins, both counted from the outer face on which its stock rides."""

from __future__ import annotations

from dataclasses import dataclass

from woodmath.setting_out_derivations import pins_derivation


@dataclass(frozen=True)
class GaugePin:
    """One pin of a gauge.

    Parameters
    ----------
    name : str
        What its line is on the wood.
    distance : float
        From the stock to the pin, > 0, in the unit of the set-back.
    rule : str
        Title of the derivation that it comes from.

    >>> GaugePin("outer cheek", 0.5, "The two pins of the mortise gauge").distance
    0.5
    """

    name: str
    distance: float
    rule: str


def gauge_settings(set_back: float, thickness: float) -> tuple[GaugePin, GaugePin]:
    """Set the two pins of a mortise gauge, from the outer face of the post.

    Parameters
    ----------
    set_back : float
        Outer face of the post to the outer cheek, > 0, in any length unit.
    thickness : float
        Thickness of the tenon, > 0, in the same unit.

    Returns
    -------
    (GaugePin, GaugePin)
        The pin at the outer cheek and the pin at the inner cheek.

    Raises
    ------
    ImpossibleShape
        If either is not a positive number.

    Source: `woodmath.setting_out_derivations.pins_derivation`; all gauging is done from the face side or the
    face edge (common practice).

    >>> [(pin.name, pin.distance) for pin in gauge_settings(set_back=0.5, thickness=0.375)]
    [('outer cheek', 0.5), ('inner cheek', 0.875)]
    """
    rule = pins_derivation()
    inner = rule.function("inner_pin")(set_back=set_back, thickness=thickness)
    return GaugePin("outer cheek", set_back, rule.title), GaugePin("inner cheek", inner, rule.title)
