"""Spoil one thing in a copy of the course, and the suite must go red; leave it alone, and it stays green."""

from __future__ import annotations

import compileall
import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from py_compile import PycInvalidationMode

import pytest

PROJECT = Path(__file__).resolve().parent.parent
COPIED = ("woodmath", "notebooks", "figures", "tests", "pyproject.toml", "requirements.txt")
LEFT_OUT = shutil.ignore_patterns("__pycache__", ".ipynb_checkpoints", Path(__file__).name, "browser")

PAGE_BEVEL = "notebooks/06-strike-the-bevel.ipynb"
PAGE_ELLIPSE = "notebooks/10-the-rockers-ellipse.ipynb"
QUESTIONS = "tests/test_questions.py::test_the_truth_is_what_a_maker_works_out_by_hand_for_the_cats_bed"
RULE = "tests/test_rule.py::test_a_length_is_marked_at_the_nearest_line_reduced"
PAGE_SPLAY = "notebooks/03-the-splayed-end.ipynb"
PAGE_CORNER = "notebooks/09-bevels-and-the-bottom.ipynb"
SOLIDS = "tests/test_case_solids.py::test_no_two_parts_want_the_same_wood"
BY_HAND = "tests/test_one_piece_by_hand.py"
CARDS = "tests/test_cards.py::test_unequal_boards_get_a_fence_and_a_stop_of_their_own"
WIDE_SWINGS = "tests/test_rocking.py::test_wide_swings_take_longer_as_worked_out"
PERIODS = "tests/test_rocking_integrated.py::test_periods_agree_with_the_integration"
FOLLOWED = (
    "tests/test_rocking_integrated.py::test_the_weight_goes_along_the_floor_as_far_as_the_rocker_unrolls"
)
PAST_THE_HEEL = "tests/test_rocking_tipping.py::test_a_tall_rocker_that_leans_goes_over_only_past_its_heel"

RINGS = "tests/test_wood_movement.py::test_flat_and_quarter_are_the_two_ends_of_the_angles"
OCTAGON = "tests/test_turning.py::test_an_octagons_sides_are_equal"


@dataclass(frozen=True)
class Alteration:
    """One line of the package made wrong, and the part of the suite that has to notice."""

    file: str
    stands: str
    spoilt: str
    noticed_by: str


ALTERATIONS = {
    "a formula, the bevel's ratio turned over": Alteration(
        "woodmath/bevel.py",
        "equation(sympy.tan(angle), offset / thickness)",
        "equation(sympy.tan(angle), 2 * offset / thickness)",
        PAGE_BEVEL,
    ),
    "a formula, the loop of string": Alteration(
        "woodmath/ellipse_strings.py",
        "equation(loop, string + pin_spacing)",
        "equation(loop, string + 2 * pin_spacing)",
        PAGE_ELLIPSE,
    ),
    "a view": Alteration(
        "woodmath/views/bevel.py",
        "angle = bevel_angle(offset, thickness)",
        'angle = {"offset": bevel_angle(offset, thickness)}["angle"]',
        PAGE_BEVEL,
    ),
    "a slip turned into the right answer, the tied string for the loop": Alteration(
        "woodmath/questions/ellipse.py",
        "truth=lambda piece: ellipse_of(piece).loop,",
        "truth=lambda piece: ellipse_of(piece).tied_string,",
        QUESTIONS,
    ),
    "a slip turned into the right answer, turns counted from the wrong moment": Alteration(
        "woodmath/questions/boring.py",
        'truth=lambda piece: _turns(piece, "lips"),',
        'truth=lambda piece: _turns(piece, "screw"),',
        QUESTIONS,
    ),
    "a formula, the slope without the height": Alteration(
        "woodmath/splay_derivations.py",
        "equation(slope**2, height**2 + outward**2)",
        "equation(slope**2, height**2 + 2 * outward**2)",
        PAGE_SPLAY,
    ),
    "a formula, the tilt of the saw": Alteration(
        "woodmath/regular_mitre.py",
        "equation(sympy.sin(tilt), n_x * m_x + n_y * m_y + n_z * m_z)",
        "equation(2 * sympy.sin(tilt), n_x * m_x + n_y * m_y + n_z * m_z)",
        PAGE_CORNER,
    ),
    "the case, a mortise on the wrong side of its set-back": Alteration(
        "woodmath/case_solids.py",
        "holes = (section.mortise, *apart(section.other_mortise, section.mortise))",
        "holes = (section.mortise,)",
        SOLIDS,
    ),
    "the case, a foot measured upright": Alteration(
        "woodmath/case.py",
        "half_foot=end.bottom / 2 - lower * math.sin(math.radians(splay)),",
        "half_foot=end.bottom / 2 - lower * math.tan(math.radians(splay)),",
        BY_HAND,
    ),
    "a card, the mortises gauged for the wrong tenon": Alteration(
        "woodmath/gauge_card.py",
        '("the sides\' mortises and grooves", "face edge", joint.side_set_back, joint.side_thickness),',
        '("the sides\' mortises and grooves", "face edge", joint.set_back, joint.tenon_thickness),',
        CARDS,
    ),
    "the rule, which rounds down": Alteration(
        "woodmath/rule.py",
        "return (per_over * over + per_under * under) // (bottom * under)",
        "return (per_over * over) // (bottom * under)",
        RULE,
    ),
    "rocking, the weight off to the other side": Alteration(
        "woodmath/rocking_derivations.py",
        "- centre_offset * sympy.sin(tilt)",
        "+ centre_offset * sympy.sin(tilt)",
        PERIODS,
    ),
    "rocking, the weight measured from the ellipse's centre the wrong way": Alteration(
        "woodmath/rocking_derivations.py",
        "+ (centre_height - half_height) * sympy.cos(tilt)",
        "+ (centre_height + half_height) * sympy.cos(tilt)",
        WIDE_SWINGS,
    ),
    "rocking, the pivot plumb below the weight all the way": Alteration(
        "woodmath/rocking_swing_derivations.py",
        "mass * (gyration_radius**2 + height**2 + lever_arm**2) * turning**2 / 2, mass * gravity * fall",
        "mass * (gyration_radius**2 + height**2 + 0 * lever_arm**2) * turning**2 / 2, mass * gravity * fall",
        PERIODS,
    ),
    "rocking, over as soon as the heel touches": Alteration(
        "woodmath/rocking.py",
        "tops = [over_the_heel(*self.to_the_heel(side))] if self._is_held_at_the_heel(side) else []",
        "tops = [(self.balance.heel, self._height(side * self.balance.heel))]",
        PAST_THE_HEEL,
    ),
    "rocking, the force of the moving pivot left out": Alteration(
        "woodmath/rocking_motion_curves.py",
        "+ sympy.diff(heaviness, tilt) * turning**2 / 2",
        "+ 0 * sympy.diff(heaviness, tilt) * turning**2 / 2",
        FOLLOWED,
    ),
    "moving wood, its rings taken for those of the other cut": Alteration(
        "woodmath/wood_movement.py",
        "equation(coefficient, along * sympy.cos(rings) + across * sympy.sin(rings))",
        "equation(coefficient, across * sympy.cos(rings) + along * sympy.sin(rings))",
        RINGS,
    ),
    "an octagon whose flats are a third of the side": Alteration(
        "woodmath/turning_derivations.py",
        "equation(flat - 2 * set_off, 2 * set_off * sympy.cos(sympy.pi / sides))",
        "equation(flat - 2 * set_off, set_off)",
        OCTAGON,
    ),
}


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("spoilt")
    for name in COPIED:
        source = PROJECT / name
        if source.is_dir():
            shutil.copytree(source, folder / name, ignore=LEFT_OUT)
        else:
            shutil.copy(source, folder / name)
    # Bytecode that is checked by the text it was made from: a line altered within the same second is not overlooked.
    by_text = PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(folder / "woodmath", quiet=2, invalidation_mode=by_text)
    return folder


def suite_on(copy: Path, *parts: str) -> subprocess.CompletedProcess[str]:
    """Run a part of the suite on the copy, which goes before the real package in every process."""
    pages = any(part.endswith(".ipynb") for part in parts)
    # What runs pages takes two seconds to load, and is left out where none is run; its options go with it.
    options = ("--nbval-lax",) if pages else ("-p", "no:nbval", "-o", "addopts=--import-mode=importlib")
    return subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", *options, *parts],
        cwd=copy,
        env={**os.environ, "PYTHONPATH": str(copy)},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )


NO_PAGES = sorted(
    {each.noticed_by for each in ALTERATIONS.values() if not each.noticed_by.endswith(".ipynb")}
)


@pytest.mark.parametrize("parts", [(PAGE_BEVEL,), NO_PAGES], ids=["a page", "every test that has to notice"])
def test_unspoilt_the_copy_is_green(copy: Path, parts: Sequence[str]) -> None:
    """Of the pages, which stand on the same folders and are all run on the course itself, one is enough."""
    run = suite_on(copy, *parts)
    assert run.returncode == 0, run.stdout[-2000:]


@pytest.mark.parametrize("alteration", ALTERATIONS.values(), ids=ALTERATIONS.keys())
def test_spoilt_the_suite_goes_red(copy: Path, alteration: Alteration) -> None:
    file = copy / alteration.file
    text = file.read_text(encoding="utf-8")
    assert text.count(alteration.stands) == 1, f"{alteration.file} no longer says {alteration.stands}"
    file.write_text(text.replace(alteration.stands, alteration.spoilt), encoding="utf-8")
    try:
        run = suite_on(copy, alteration.noticed_by)
    finally:
        file.write_text(text, encoding="utf-8")
    assert run.returncode == 1, run.stdout[-2000:]
    assert "failed" in run.stdout
