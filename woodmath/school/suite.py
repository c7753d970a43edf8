"""Every test of the course, as `python -m woodmath.school.suite` inside the environment.

Unit and property tests, doctests, browser tests, ruff and mypy (both are tests in `tests/test_style.py`), and the
notebooks through nbval, in its lax mode and with this very Python. A whole run is two runs of pytest side by side: what
is long and measures no time runs on the second core, and what it said is printed after the rest.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Sequence

from woodmath.school.places import Places

BESIDE = (
    "notebooks",
    "tests/test_mutations.py",
    "tests/test_views.py",
    "tests/test_rocking_derivations.py",
    "tests/test_rocking_integrated.py",
    "tests/test_rocking_tipping.py",
    "tests/test_true_scale.py",
    "tests/test_ornament.py",
    "tests/test_turning.py",
    "tests/test_ring_section.py",
    "tests/test_season_views.py",
    "tests/test_patterns.py",
    "tests/test_case_solids.py",
    "tests/test_questions.py",
    "tests/test_findings.py",
    "tests/test_findings_case.py",
    "tests/test_turned_top.py",
    "tests/test_live_rocker.py",
    "tests/test_setting_out.py",
    "tests/test_setting_out_hands.py",
    "tests/test_edges_views.py",
    "tests/test_rocking.py",
    "tests/test_post_joint.py",
    "tests/test_boring.py",
    "tests/test_ellipse.py",
    "tests/test_set_up_in_ci.py",
    "tests/test_rocker_choice.py",
    "tests/test_drawing_pdf.py",
    "tests/test_piece_writing.py",
    "tests/test_figures.py",
    "tests/test_rocking_measured.py",
    "tests/test_cards.py",
    "tests/test_derivation.py",
    "tests/test_wood_movement.py",
    "tests/test_air_and_moisture.py",
    "tests/test_grain_strength.py",
    "tests/test_season_derivations.py",
    "tests/test_scaling.py",
    "tests/test_one_piece_by_hand.py",
)
"""Long, and with no promise about time."""


def main(arguments: Sequence[str]) -> int:
    """Run the tests.

    Parameters
    ----------
    arguments : sequence of str
        Handed to pytest, in one run; with none, everything is tested.

    Returns
    -------
    int
        pytest's exit code: 0 when everything passed.
    """
    import pytest

    os.chdir(Places.here().project)
    os.environ["WOODMATH_STRICT"] = "1"
    os.environ.pop("MPLBACKEND", None)
    if arguments:
        return int(pytest.main(["--nbval-lax", *arguments]))
    with tempfile.TemporaryFile("w+", encoding="utf-8") as said:
        beside = subprocess.Popen(
            [sys.executable, "-m", "pytest", "-p", "no:cacheprovider", "--nbval-lax", *BESIDE],
            stdin=subprocess.DEVNULL,
            stdout=said,
            stderr=subprocess.STDOUT,
        )
        try:
            code = int(pytest.main([f"--ignore={part}" for part in BESIDE]))
            code_beside = beside.wait()
        finally:
            beside.kill()
        said.seek(0)
        print(f"\nBeside it, {', '.join(BESIDE)}:\n{said.read()}", flush=True)
    return code or code_beside


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
