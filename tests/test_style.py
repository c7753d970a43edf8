"""The manner of the code, judged by ruff and mypy with the settings of pyproject.toml."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

PROJECT = Path(__file__).resolve().parents[1]


@pytest.mark.parametrize("tool", ["ruff check", "ruff format --check", "mypy"])
def test_the_code_keeps_to_the_manner_of_the_project(tool: str) -> None:
    run = subprocess.run(
        [sys.executable, "-m", *tool.split()], cwd=PROJECT, capture_output=True, encoding="utf-8"
    )
    assert run.returncode == 0, run.stdout + run.stderr
