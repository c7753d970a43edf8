"""The maker's rule: it reads a length as it is written at the bench, and marks a length to its nearest line.

Inside the package a length is a plain float in the rule's own unit; it is rounded once, here, at the end.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import ceil, gcd
from operator import index
from types import MappingProxyType
from typing import Literal

from woodmath.as_given import quoted
from woodmath.errors import BadLength
from woodmath.fractions_in_print import set_fractions
from woodmath.graduations import DECIMAL_DIVISIONS, INCH_DIVISIONS, is_carried, no_such_rule
from woodmath.rule_reading import INCH, LONGEST_TEXT, millimetres_in

__all__ = [
    "INCH_DIVISIONS",
    "LONGEST_METRES",
    "LONGEST_TEXT",
    "SAME_LENGTH",
    "Rule",
    "set_fractions",
]

LONGEST_METRES = 100

# Binary noise is far below this and no scribed line is as fine: what lies closer together is the same length.
# Without it 0.15 mm, stored a hair under its true value, would round down where 0.25 mm rounds up.
_FINEST = 10**9
SAME_LENGTH = 1 / _FINEST

_OWN_UNIT = MappingProxyType({"inch": INCH, "millimetre": Fraction(1)})


@dataclass(frozen=True)
class Rule:
    """A measuring stick: its unit and the distance between its marks.

    Parameters
    ----------
    unit : "inch" or "millimetre"
        Of every length that the rule reads or marks.
    mark_size : Fraction
        From one mark to the next, in `unit`; make a rule with `Rule.inches` or `Rule.millimetres`.

    Raises
    ------
    BadLength
        If no rule carries such marks.

    >>> rule = Rule.inches(16)
    >>> rule.read("7-5/8"), rule.mark(7.6419), rule.mark_size
    (7.625, '7 5/8', Fraction(1, 16))
    """

    unit: Literal["inch", "millimetre"]
    mark_size: Fraction

    def __post_init__(self) -> None:
        if self.unit not in tuple(_OWN_UNIT) or not isinstance(self.mark_size, Fraction):
            raise no_such_rule(f"the unit {quoted(self.unit)} and marks of {quoted(self.mark_size)}")
        if not is_carried(self.mark_size, self.unit):
            raise no_such_rule(f"marks of {self.mark_size} {self.unit}")

    @classmethod
    def inches(cls, divisions: int = 16) -> "Rule":
        """Rule in inches.

        Parameters
        ----------
        divisions : int
            Marks to the inch: one of `INCH_DIVISIONS`.

        Returns
        -------
        Rule
            In inches.

        Raises
        ------
        BadLength
            If no rule carries so many.

        Source: a steel square carries hundredths, 32nds, 16ths, 12ths, 10ths and 8ths (Noyes, Handwork in
        Wood, 1910, ch. IV); a scale of 50 to the inch is read to 0.01 (US Army OD1641, p. 22).

        >>> Rule.inches(32).mark(1.16), Rule.inches(100).mark(1.16)
        ('1 5/32', '1.16')
        """
        if divisions not in INCH_DIVISIONS:
            raise no_such_rule(f"{quoted(divisions)} marks to the inch")
        return cls("inch", Fraction(1, int(divisions)))

    @classmethod
    def millimetres(cls, spacing: float | Fraction = 1) -> "Rule":
        """Rule in millimetres.

        Parameters
        ----------
        spacing : float or Fraction
            From one mark to the next, in millimetres, 0.01 to 1000: whole millimetres, or a part that goes
            into one millimetre a whole number of times and has at most three decimals.

        Returns
        -------
        Rule
            In millimetres.

        Raises
        ------
        BadLength
            If no rule carries such marks.

        >>> Rule.millimetres(0.5).mark(193.6)
        '193.5'
        """
        try:
            # The decimal that was typed, not the binary number next to it: 0.1 is a tenth.
            size = spacing if isinstance(spacing, Fraction) else Fraction(repr(float(spacing)))
        except (TypeError, ValueError, OverflowError):
            raise no_such_rule(f"marks {quoted(spacing)} mm apart") from None
        return cls("millimetre", size)

    @property
    def unit_mark(self) -> str:
        """What stands after a number: 'in' or 'mm'."""
        return "in" if self.unit == "inch" else "mm"

    @property
    def millimetres_per_unit(self) -> float:
        """Millimetres in the rule's unit: 25.4 or 1 (1 in = 25.4 mm exactly, 1959; from memory)."""
        return float(_OWN_UNIT[self.unit])

    @property
    def one_mark(self) -> float:
        """From one mark to the next, as a float in the rule's unit."""
        return float(self.mark_size)

    @cached_property
    def _longest(self) -> Fraction:
        # Itself a mark, so that rounding never leaves the rule.
        return ceil(LONGEST_METRES * 1000 / _OWN_UNIT[self.unit] / self.mark_size) * self.mark_size

    @cached_property
    def _limit(self) -> float:
        return float(self._longest)

    @cached_property
    def _over_under(self) -> tuple[int, int]:
        return self.mark_size.numerator, self.mark_size.denominator

    @cached_property
    def _rounding(self) -> tuple[int, int, int]:
        # With value = a/b, (p·a + q·b) // (r·b) is the floor of (value + SAME_LENGTH) / mark_size + 1/2:
        # as exact as Fraction and several times faster, which a slider feels.
        over, under = self._over_under
        return 2 * under * _FINEST, 2 * under + over * _FINEST, 2 * over * _FINEST

    def read(self, text: str) -> float:
        r"""Length that is written in `text`, exactly as written, in the rule's unit.

        Parameters
        ----------
        text : str
            As at the bench: 7 5/8, 7-5/8, 7⅝, 7.625, 3/8, with a unit (in, ft, mm, cm, m, feet and inches)
            or without, which then is the rule's own. At most 40 characters and 100 m.

        Returns
        -------
        float
            Length in the rule's unit, 0 to 100 m.

        Raises
        ------
        BadLength
            If it is anything else; nothing is guessed.

        >>> rule = Rule.inches(16)
        >>> [rule.read(text) for text in ("7 5/8", "7⅝", "1' 2 1/4\"", "50.8 mm")]
        [7.625, 7.625, 14.25, 2.0]
        >>> rule.read("7 5/x")  # doctest: +ELLIPSIS
        Traceback (most recent call last):
        woodmath.errors.BadLength: “7 5/x” cannot be read as a length: “/x” is no fraction...
        """
        try:
            length = millimetres_in(text, _OWN_UNIT[self.unit]) / _OWN_UNIT[self.unit]
            if length > self._longest:
                raise BadLength(f"it is longer than {LONGEST_METRES} m, and nothing here is")
        except BadLength as fault:
            here, elsewhere = (7.625, "1' 2 1/4\"") if self.unit == "inch" else (194.0, "19.4 cm")
            raise BadLength(
                f"{quoted(text)} cannot be read as a length: {fault}. "
                f"Write it as on this rule, for example {self.mark(max(here, self.one_mark))} or {elsewhere}."
            ) from None
        return float(length)

    def mark(self, value: float, unit: bool = False, remainder: bool = False) -> str:
        """Nearest mark, written as on the rule.

        Parameters
        ----------
        value : float
            Length in the rule's unit, 0 to 100 m.
        unit : bool
            Whether the unit stands behind the number.
        remainder : bool
            Whether to say how far the length lies over or under the mark.

        Returns
        -------
        str
            A whole number, a fraction reduced, or a decimal, as rules of this kind are read.

        Raises
        ------
        BadLength
            If `value` is negative, infinite, not a number, or longer than 100 m.

        Source: 0.5, not .5; 125, not 125.0; no grouping of digits (Exploring Drafting, 2018, p. 268).

        >>> Rule.inches(16).mark(7.6419, unit=True, remainder=True)
        '7 5/8 in and 0.017 over'
        """
        marks = self.marks(value)
        over, under = self._over_under
        whole, rest = divmod(marks * over, under)
        text = f"{whole}"
        if rest and (self.unit == "millimetre" or under in DECIMAL_DIVISIONS):
            text += f".{rest * 1000 // under:03d}".rstrip("0")
        elif rest:
            common = gcd(rest, under)
            fraction = f"{rest // common}/{under // common}"
            text = f"{whole} {fraction}" if whole else fraction
        if unit:
            text += f" {self.unit_mark}"
        return text + _left_over(float(value) - marks * over / under) if remainder else text

    def marks(self, value: float) -> int:
        """Whole number of marks nearest to a length; half a mark rounds up.

        A length within a thousand-millionth of a unit of the half mark counts as the half mark: the noise of
        binary numbers must not decide which line the knife takes.

        Parameters
        ----------
        value : float
            Length in the rule's unit, 0 to 100 m.

        Returns
        -------
        int
            Marks from the end of the rule, 0 or more.

        Raises
        ------
        BadLength
            As for `mark`.

        >>> Rule.inches(16).marks(0.5), Rule.millimetres(0.1).marks(0.15)
        (8, 2)
        """
        over, under = self._checked(value).as_integer_ratio()
        per_over, per_under, bottom = self._rounding
        return (per_over * over + per_under * under) // (bottom * under)

    def nearest(self, value: float) -> float:
        """Length at the mark nearest to a length; half a mark rounds up, as for `marks`.

        Parameters
        ----------
        value : float
            Length in the rule's unit, 0 to 100 m.

        Returns
        -------
        float
            Length in the rule's unit.

        Raises
        ------
        BadLength
            As for `mark`.

        >>> Rule.inches(16).nearest(7.6419)
        7.625
        """
        over, under = self._over_under
        return self.marks(value) * over / under

    def length(self, marks: int) -> float:
        """Length at so many marks from the end of the rule.

        Parameters
        ----------
        marks : int
            Whole number of marks, 0 or more, up to 100 m.

        Returns
        -------
        float
            Length in the rule's unit.

        Raises
        ------
        BadLength
            If `marks` is not a whole number, is negative, or lies beyond 100 m.

        >>> Rule.inches(16).length(10)
        0.625
        """
        over, under = self._over_under
        try:
            count = index(marks)
        except TypeError:
            count = -1
        if not 0 <= count * over <= self._longest * under:
            raise BadLength(
                f"{quoted(marks)} cannot be a number of marks: this rule has whole marks from 0 to "
                f"{self._longest / self.mark_size}. marks() gives the one nearest to a length."
            )
        return count * over / under

    def convert(self, value: float, to: "Rule") -> float:
        """Length in this rule's unit, given in the unit of another rule, not rounded to a mark.

        Parameters
        ----------
        value : float
            Length in this rule's unit, 0 to 100 m.
        to : Rule
            Rule in whose unit the answer is wanted.

        Returns
        -------
        float
            Length in the other rule's unit.

        Raises
        ------
        BadLength
            As for `mark`.

        >>> Rule.inches(16).convert(7.625, Rule.millimetres(0.5))
        193.675
        """
        factor = _OWN_UNIT[self.unit] / _OWN_UNIT[to.unit]
        over, under = self._checked(value).as_integer_ratio()
        return over * factor.numerator / (under * factor.denominator)

    def _checked(self, value: float) -> float:
        if type(value) is not float:
            value = _as_float(value)
        if 0.0 <= value <= self._limit:
            return value
        if -SAME_LENGTH <= value < 0.0:
            return 0.0
        if value < 0.0:
            fault = "is negative, and a rule begins at 0"
        elif value > self._limit:
            fault = "is infinite" if value == float("inf") else "is too long"
        else:
            fault = "is not a number"
        raise BadLength(
            f"{value:g} {self.unit_mark} {fault}. A length here is from 0 to {LONGEST_METRES} m. "
            "Check the sizes that it was worked out from."
        )


def _left_over(difference: float) -> str:
    if abs(difference) <= SAME_LENGTH:
        return ""
    amount = f"{abs(difference):.3f}".rstrip("0").rstrip(".")
    side = "over" if difference > 0 else "under"
    return f" and {'less than 0.001' if amount == '0' else amount} {side}"


def _as_float(value: object) -> float:
    if not isinstance(value, (str, bytes, bool)):
        try:
            return float(value)  # type: ignore[arg-type]
        except OverflowError:
            return float("inf")
        except (TypeError, ValueError):
            pass
    raise BadLength(
        f"{quoted(value)} is not a number but {type(value).__name__}, and a rule marks numbers only. "
        "read() turns a written length into a number."
    )
