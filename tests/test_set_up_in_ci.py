"""In CI nothing is skipped unseen; on a maker's machine a missing browser is no failure."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

TRIALS = {
    "a test": "import pytest\ndef test_it():\n    pytest.skip({reason!r})\n",
    "a fixture": (
        "import pytest\n@pytest.fixture\ndef glue():\n    pytest.skip({reason!r})\ndef test_it(glue):\n    pass\n"
    ),
    "a mark": "import pytest\n@pytest.mark.skipif(True, reason={reason!r})\ndef test_it():\n    pass\n",
    "a whole file": (
        "import pytest\npytest.skip({reason!r}, allow_module_level=True)\ndef test_it():\n    pass\n"
    ),
}


def outcome(folder: Path, text: str, ci: str) -> tuple[int, str]:
    shutil.copy(Path(__file__).with_name("conftest.py"), folder)
    (folder / "test_trial.py").write_text(text, encoding="utf-8")
    (folder / "pytest.ini").write_text("[pytest]\n", encoding="utf-8")
    run = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "no:nbval", str(folder)],
        env=os.environ | {"CI": ci},
        cwd=folder,
        capture_output=True,
        encoding="utf-8",
    )
    return run.returncode, run.stdout


@pytest.mark.parametrize("where", TRIALS)
def test_a_skip_that_is_not_on_the_list_fails_in_ci(where: str, tmp_path: Path) -> None:
    code, said = outcome(tmp_path, TRIALS[where].format(reason="no Chromium on this machine"), "true")
    assert code != 0
    assert "Skipped, which CI must not do: no Chromium on this machine" in said


def test_a_skip_that_is_on_the_list_passes_in_ci(tmp_path: Path) -> None:
    code, said = outcome(tmp_path, TRIALS["a mark"].format(reason="only on Windows: long paths"), "true")
    assert code == 0 and "1 skipped" in said


@pytest.mark.parametrize("ci", ["", "false"])
def test_on_a_makers_machine_a_skip_is_no_failure(ci: str, tmp_path: Path) -> None:
    code, said = outcome(tmp_path, TRIALS["a fixture"].format(reason="no Chromium on this machine"), ci)
    assert code == 0 and "1 skipped" in said
