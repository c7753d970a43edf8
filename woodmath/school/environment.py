"""The virtual environment of the course: made once, known to be whole, mended or made again when it is not.

A marker is written last, in one stroke, with a fingerprint of the pins. No marker, no environment: whatever
lies there was left half-made and is made again from nothing.
"""

from __future__ import annotations

import json
import os
import shutil
import sys
from collections.abc import Callable
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from woodmath.errors import SetUpProblem
from woodmath.school.installing import Watch, run_watched
from woodmath.school.lock import locked
from woodmath.school.pins import Level, Pins
from woodmath.school.places import Places
from woodmath.school.progress import ProgressLine
from woodmath.school.remedies import (
    DOES_NOT_LOAD,
    NO_FOLDER,
    NO_VENV,
    NOT_A_COPY,
    PIP_FAILED,
    STOPPED_OUTSIDE,
    VENV_FAILED,
    Trouble,
    diagnosed,
)

LOADED: dict[Level, str] = {
    "pages": "woodmath, ipykernel, ipywidgets, jupyterlab, matplotlib, numpy, sympy",
    "tests": "woodmath, hypothesis, mypy, nbval, playwright, pytest, scipy",
}


@dataclass(frozen=True)
class Work:
    """What a set-up has to do.

    Parameters
    ----------
    why : str
        The reason, in one sentence for the maker.
    afresh : bool
        Whether what lies there is thrown away first.
    """

    why: str
    afresh: bool


def _python_now() -> str:
    return f"{sys.version_info[0]}.{sys.version_info[1]}"


def _base_is_gone(places: Places) -> bool:
    settings = (places.environment / "pyvenv.cfg").read_text(encoding="utf-8")
    homes = [line.partition("=")[2].strip() for line in settings.splitlines() if line.startswith("home")]
    return not places.python.exists() or not all(Path(home).exists() for home in homes)


def work_to_do(places: Places, pins: Pins, level: Level) -> Work | None:
    """Judge the environment as it lies on the disk, without a network and in an instant.

    Parameters
    ----------
    places : Places
        The copy of the course.
    pins : Pins
        What it should hold.
    level : "pages" or "tests"
        What it is needed for.

    Returns
    -------
    Work or None
        What is to be done; None when it is whole.
    """
    if not places.environment.is_dir():
        return Work(
            f"Setting up the course, once: about {pins.count(level)} packages go to {places.environment}.",
            True,
        )
    try:
        marker = json.loads(places.marker.read_text(encoding="utf-8"))
        project, python, digests = marker["project"], marker["python"], dict(marker["digests"])
        base_is_gone = _base_is_gone(places)
    except (OSError, ValueError, KeyError, TypeError):
        return Work("An earlier set-up did not come to its end; it is made again from nothing.", True)
    if project != str(places.project):
        return Work("The course was moved here from another folder; its set-up is made again.", True)
    if python != _python_now():
        return Work(
            f"The course was set up with Python {python}, this is {_python_now()}; it is made again.", True
        )
    if base_is_gone:
        return Work("The Python that the course was set up with is gone; it is made again.", True)
    if level not in digests:
        return Work(f"Adding what the tests need: about {pins.count('tests')} packages in all.", False)
    if digests[level] != pins.digest(level):
        return Work(
            "The versions that the course needs have changed; its packages are brought up to date.", False
        )
    return None


class SetUp:
    """A set-up at work, for one command of the maker's.

    Parameters
    ----------
    places : Places
        The copy of the course.
    command : str
        The command that was given, such as "open": remedies name it.
    level : "pages" or "tests"
        What the environment is needed for.
    wheels : Path, optional
        A folder of packages to use in place of a network.
    say : callable, optional
        Takes each sentence for the maker.
    """

    def __init__(
        self,
        places: Places,
        command: str,
        level: Level,
        wheels: Path | None = None,
        say: Callable[[str], None] = print,
    ) -> None:
        self._places = places
        self._command = command
        self._level = level
        self._wheels = wheels
        self._say = say

    def ready(self) -> Path:
        """Make sure that the environment is whole.

        Returns
        -------
        Path
            Its Python.

        Raises
        ------
        SetUpProblem
            When something is in the way; its text says what, and the command that mends it.
        """
        try:
            pins = Pins.of(self._places)
        except OSError:
            raise self._problem(NOT_A_COPY) from None
        if work_to_do(self._places, pins, self._level) is None:
            return self._places.python
        if self._wheels is not None and not self._wheels.is_dir():
            raise self._problem(NO_FOLDER)
        try:
            self._places.home.mkdir(exist_ok=True)
            with locked(self._places.lock, self._tell_of_waiting) as held:
                # The one that we waited for may have done the work.
                work = work_to_do(self._places, pins, self._level)
                if work:
                    self._do(work, pins, held)
        except OSError as error:
            trouble, words = diagnosed(str(error))
            raise self._problem(trouble, **words) from None
        return self._places.python

    def _tell_of_waiting(self) -> None:
        self._say("Another set-up of this course is at work; waiting for it to end.")

    def _problem(self, trouble: Trouble, **words: str) -> SetUpProblem:
        described: dict[str, str] = {
            "project": str(self._places.project),
            "folder": str(self._places.home),
            "log": str(self._places.log),
            "version": _python_now(),
            "wheels": str(self._wheels),
            "package": "package",
            "words": "nothing",
        }
        return trouble.problem(self._command, None, **(described | words))

    def _do(self, work: Work, pins: Pins, held: int) -> None:
        self._say(work.why)
        self._places.log.unlink(missing_ok=True)
        if work.afresh:
            self._clear_away()
            self._make()
        self._install(pins, held)
        self._compile(held)
        self._check_that_it_loads()
        self._mark(pins)

    def _clear_away(self) -> None:
        environment = self._places.environment
        if environment.is_symlink():
            environment.unlink()
        elif environment.exists():
            # Without the marker, whatever a broken removal leaves behind is never taken for whole.
            self._places.marker.unlink(missing_ok=True)
            shutil.rmtree(environment)

    def _make(self) -> None:
        for module in ("venv", "ensurepip"):
            spec = find_spec(module)
            if spec is None or spec.origin is None:
                raise self._problem(NO_VENV, module=module)
        # In two steps, because venv keeps to itself why its own call of ensurepip failed.
        for command in (
            [sys.executable, "-m", "venv", "--without-pip", str(self._places.environment)],
            [str(self._places.python), "-m", "ensurepip", "--upgrade", "--default-pip"],
        ):
            code, said = run_watched(command, self._places.home, self._places.log)
            if code:
                trouble, words = diagnosed(said)
                raise self._problem(VENV_FAILED if trouble is PIP_FAILED else trouble, **words)

    def _install(self, pins: Pins, held: int) -> None:
        command = [str(self._places.python), "-m", "pip", "install", *self._pip_options()]
        command += ["-r", str(self._places.requirements), "-c", str(self._places.constraints)]
        if self._level == "tests":
            command += pins.test_tools
        line = ProgressLine(sys.stderr)
        watch = Watch(line, self._places.environment, pins.count(self._level))
        # Until pip is done the environment has no marker; one that pip had not begun to change gets it back.
        set_aside = self._places.marker.with_suffix(".aside")
        if self._places.marker.exists():
            self._places.marker.replace(set_aside)
        try:
            code, said = run_watched(command, self._places.project, self._places.log, watch, held)
        finally:
            line.close()
            if set_aside.exists() and not watch.installing:
                set_aside.replace(self._places.marker)
        if code < 0:
            raise self._problem(STOPPED_OUTSIDE, signal=str(-code))
        if code:
            trouble, words = diagnosed(said, offline=self._wheels is not None)
            raise self._problem(trouble, filling=self._filling(pins), **words)

    def _pip_options(self) -> list[str]:
        options = ["--disable-pip-version-check", "--no-input", "--progress-bar", "off"]
        # Compiled afterwards, on every core.
        options += ["--no-warn-script-location", "--no-compile", "--only-binary", ":all:"]
        if self._wheels is not None:
            options += ["--no-index", "--find-links", str(self._wheels.resolve())]
        return options

    def _filling(self, pins: Pins) -> str:
        python = self._places.python.relative_to(self._places.project)
        # Not by requirements.txt: pip would pack the whole folder, environment and all, for its last line.
        pinned = [line for line in pins.required if "==" in line]
        wanted = " ".join([*pinned, *pins.build, *(pins.test_tools if self._level == "tests" else ())])
        return (
            f"{python} -m pip download --only-binary :all: -c woodmath/school/constraints.txt "
            f'-d "{self._wheels}" {wanted}'
        )

    def _compile(self, held: int) -> None:
        self._say("Compiling the packages.")
        # Some carry files for another Python: what does not compile is no trouble.
        packages = str(self._places.environment / "lib")
        command = [str(self._places.python), "-m", "compileall", "-q", "-j", "0", packages]
        run_watched(command, self._places.home, self._places.log, held=held)

    def _check_that_it_loads(self) -> None:
        self._say("Trying the packages.")
        names = LOADED["pages"] if self._level == "pages" else f"{LOADED['pages']}, {LOADED['tests']}"
        code, said = run_watched(
            [str(self._places.python), "-P", "-c", f"import {names}"], self._places.home, self._places.log
        )
        if code:
            raise self._problem(DOES_NOT_LOAD, words=(said.strip().splitlines() or ["nothing"])[-1])

    def _mark(self, pins: Pins) -> None:
        self._places.marker.with_suffix(".aside").unlink(missing_ok=True)
        levels: tuple[Level, ...] = ("pages", "tests") if self._level == "tests" else ("pages",)
        whole = {
            "project": str(self._places.project),
            "python": _python_now(),
            "digests": {level: pins.digest(level) for level in levels},
        }
        beginning = self._places.marker.with_suffix(".new")
        with beginning.open("w", encoding="utf-8") as file:
            json.dump(whole, file, indent=1)
            file.flush()
            os.fsync(file.fileno())
        beginning.replace(self._places.marker)
