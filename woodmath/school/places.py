"""Where the set-up keeps its things: all of them in `.woodmath`, which may be deleted at any time."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Places:
    """The folders and files of one copy of the course.

    Parameters
    ----------
    project : Path
        The folder that holds `requirements.txt`, `woodmath` and `notebooks`.

    >>> Places(Path("course")).environment.as_posix()
    'course/.woodmath/environment'
    """

    project: Path

    @classmethod
    def here(cls) -> Places:
        """Find the copy of the course that this very module belongs to."""
        return cls(Path(__file__).resolve().parents[2])

    @property
    def requirements(self) -> Path:
        """The packages that the project stands on, with their versions."""
        return self.project / "requirements.txt"

    @property
    def constraints(self) -> Path:
        """The versions of everything that those packages bring along."""
        return self.project / "woodmath" / "school" / "constraints.txt"

    @property
    def description(self) -> Path:
        """What the project says of itself to pip."""
        return self.project / "pyproject.toml"

    @property
    def home(self) -> Path:
        """The folder of everything that the set-up makes."""
        return self.project / ".woodmath"

    @property
    def environment(self) -> Path:
        """The virtual environment."""
        return self.home / "environment"

    @property
    def python(self) -> Path:
        """The Python of the virtual environment."""
        if os.name == "nt":
            return self.environment / "Scripts" / "python.exe"
        return self.environment / "bin" / "python"

    @property
    def marker(self) -> Path:
        """The file that is written last: without it the environment is half-made."""
        return self.environment / "complete.json"

    @property
    def lock(self) -> Path:
        """The file that keeps two set-ups apart."""
        return self.home / "set-up.lock"

    @property
    def log(self) -> Path:
        """All that pip said at the last set-up."""
        return self.home / "set-up.log"

    @property
    def jupyter(self) -> Path:
        """JupyterLab's own settings and data for this course, apart from any other Jupyter."""
        return self.home / "jupyter"
