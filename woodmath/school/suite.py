"""Every test of the course, as `python -m woodmath.school.suite` inside the environment.

One run of pytest does it all: unit and property tests, doctests, browser tests, ruff and mypy (both are
tests in `tests/test_style.py`), and the notebooks through nbval, in its lax mode and with this very Python.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence

from woodmath.school.places import Places


def main(arguments: Sequence[str]) -> int:
    """Run the tests.

    Parameters
    ----------
    arguments : sequence of str
        Handed to pytest; with none, everything is tested.

    Returns
    -------
    int
        pytest's exit code: 0 when everything passed.
    """
    import pytest

    os.chdir(Places.here().project)
    os.environ["WOODMATH_STRICT"] = "1"
    os.environ.pop("MPLBACKEND", None)
    return int(pytest.main(["--nbval-lax", *arguments]))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
