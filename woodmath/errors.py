"""The one family of errors that a maker may meet; each is also the fitting builtin.

Every message says what was given, what is possible, and what to do next.
"""


class WoodmathError(Exception):
    """Anything that the maker can put right: a length, a shape, a piece, a set-up.

    >>> issubclass(BadLength, WoodmathError) and issubclass(BadLength, ValueError)
    True
    """


class BadLength(WoodmathError, ValueError):
    """A length that cannot be read from what was typed, or cannot be marked on a rule."""


class ImpossibleShape(WoodmathError, ValueError):
    """Sizes that no piece of wood, string or steel can have together."""


class BadPiece(WoodmathError, ValueError):
    """A piece file with faults; the message lists every one of them with its key."""


class UnknownName(WoodmathError, LookupError):
    """A name (of a symbol, a question, a piece, a control) that does not exist here."""


class Disagreement(WoodmathError, AssertionError):
    """A number of ours that is further from a published one than the stated tolerance."""


class NotWritten(WoodmathError, OSError):
    """A file that cannot be written where it is asked for; the message says what is in the way."""


class SetUpProblem(WoodmathError, RuntimeError):
    """The set-up of the course could not go on; the message holds the command that mends it."""
