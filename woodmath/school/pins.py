"""Which packages at which versions: read from requirements.txt, constraints.txt and pyproject.toml."""

from __future__ import annotations

import hashlib
import json
import tomllib
from dataclasses import dataclass
from typing import Literal

from woodmath.school.places import Places

Level = Literal["pages", "tests"]

_SECTIONS = ("For the pages", "For the tests as well", "On one system only")


def _plain(text: str) -> tuple[str, ...]:
    lines = (line.split(" #")[0].strip() for line in text.splitlines())
    return tuple(line for line in lines if line and not line.startswith("#"))


def _sections(text: str) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {name: [] for name in _SECTIONS}
    current: list[str] = []
    for line in text.splitlines():
        if line.startswith("#"):
            current = found.get(line.removeprefix("#").strip(), [])
        elif line.strip():
            current.append(line.strip())
    return {name: tuple(lines) for name, lines in found.items()}


@dataclass(frozen=True)
class Pins:
    """The packages of the course.

    Parameters
    ----------
    required : tuple of str
        The lines of requirements.txt.
    for_pages, for_tests, for_one_system : tuple of str
        The three parts of constraints.txt, each line `name==version`.
    build, needs, test_tools : tuple of str
        What pyproject.toml names for building, using and testing the package.
    """

    required: tuple[str, ...]
    for_pages: tuple[str, ...]
    for_tests: tuple[str, ...]
    for_one_system: tuple[str, ...]
    build: tuple[str, ...]
    needs: tuple[str, ...]
    test_tools: tuple[str, ...]

    @classmethod
    def of(cls, places: Places) -> Pins:
        """Read them from the three files of a project.

        >>> pins = Pins.of(Places.here())
        >>> pins.required[0].split("==")[0]
        'jupyterlab'
        """
        described = tomllib.loads(places.description.read_text(encoding="utf-8"))
        parts = _sections(places.constraints.read_text(encoding="utf-8"))
        return cls(
            required=_plain(places.requirements.read_text(encoding="utf-8")),
            for_pages=parts[_SECTIONS[0]],
            for_tests=parts[_SECTIONS[1]],
            for_one_system=parts[_SECTIONS[2]],
            build=tuple(described["build-system"]["requires"]),
            needs=tuple(described["project"]["dependencies"]),
            test_tools=tuple(described["project"]["optional-dependencies"]["tests"]),
        )

    def count(self, level: Level) -> int:
        """How many packages a set-up installs, about: one system needs a few more or fewer than another."""
        return len(self.for_pages) + (len(self.for_tests) if level == "tests" else 0)

    def digest(self, level: Level) -> str:
        """A fingerprint of everything that decides what is installed.

        Parameters
        ----------
        level : "pages" or "tests"
            What the environment is for; the pins of the tests alone do not touch an environment for pages.

        Returns
        -------
        str
            64 hexadecimal digits; the same on every system, whatever its line ends.
        """
        parts = [self.required, self.for_pages, self.for_one_system, self.build, self.needs]
        if level == "tests":
            parts += [self.for_tests, self.test_tools]
        return hashlib.sha256(json.dumps(parts).encode("utf-8")).hexdigest()
