"""The set-up at work on a small project of two packages that are made here, so that no network is needed."""

from __future__ import annotations

import io
import json
import os
import socket
import subprocess
import sys
import time
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from woodmath.errors import SetUpProblem
from woodmath.school import environment, installing
from woodmath.school.environment import SetUp, work_to_do
from woodmath.school.installing import Watch, packages_in, run_watched
from woodmath.school.lock import locked
from woodmath.school.pins import Pins
from woodmath.school.places import Places
from woodmath.school.progress import ProgressLine

DESCRIPTION = """
[build-system]
requires = []
[project]
name = "small"
dependencies = ["plane"]
[project.optional-dependencies]
tests = ["chisel==1.0"]
"""


def make_wheel(folder: Path, name: str, version: str) -> None:
    information = f"{name}-{version}.dist-info"
    with zipfile.ZipFile(folder / f"{name}-{version}-py3-none-any.whl", "w") as wheel:
        wheel.writestr(f"{name}.py", f"version = {version!r}\n")
        wheel.writestr(
            f"{information}/METADATA", f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n"
        )
        wheel.writestr(
            f"{information}/WHEEL",
            "Wheel-Version: 1.0\nGenerator: test\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
        )
        wheel.writestr(
            f"{information}/RECORD",
            f"{name}.py,,\n{information}/METADATA,,\n{information}/WHEEL,,\n{information}/RECORD,,\n",
        )


class Course:
    """A small course in a folder, with what its set-up said."""

    def __init__(self, folder: Path) -> None:
        (folder / "woodmath" / "school").mkdir(parents=True)
        self.places = Places(folder)
        self.wheels = folder / "wheels"
        self.wheels.mkdir()
        self.said: list[str] = []
        for name, version in (("plane", "1.0"), ("plane", "2.0"), ("chisel", "1.0")):
            make_wheel(self.wheels, name, version)
        self.places.description.write_text(DESCRIPTION, encoding="utf-8")
        self.need("1.0")

    def need(self, version: str) -> None:
        self.places.requirements.write_text(f"plane=={version}\n", encoding="utf-8")
        self.places.constraints.write_text(
            f"# For the pages\nplane=={version}\n\n# For the tests as well\nchisel==1.0\n", encoding="utf-8"
        )

    @property
    def pins(self) -> Pins:
        return Pins.of(self.places)

    def set_up(self, level: str = "pages", wheels: Path | None = None) -> Path:
        self.said.clear()
        return SetUp(self.places, "open", level, wheels or self.wheels, self.said.append).ready()

    def version_inside(self) -> str:
        command = [str(self.places.python), "-c", "import plane; print(plane.version)"]
        return subprocess.run(command, capture_output=True, check=True, encoding="utf-8").stdout.strip()


@pytest.fixture(autouse=True)
def small_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(environment, "LOADED", {"pages": "plane", "tests": "chisel"})


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Course:
    """A course that is set up, once for all; each test leaves it whole or says how it breaks it."""
    course = Course(tmp_path_factory.mktemp("course"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(environment, "LOADED", {"pages": "plane", "tests": "chisel"})
        course.set_up()
    return course


@pytest.fixture
def whole(made: Course) -> Course:
    made.need("1.0")
    if work_to_do(made.places, made.pins, "pages"):
        made.set_up()
    return made


def test_a_first_set_up_tells_what_it_does_and_leaves_a_whole_environment(tmp_path: Path) -> None:
    course = Course(tmp_path)
    python = course.set_up()
    assert python.exists()
    assert course.said[0].startswith("Setting up the course, once: about 1 packages go to ")
    assert course.version_inside() == "1.0"
    assert work_to_do(course.places, course.pins, "pages") is None


def test_a_second_start_asks_no_network_and_no_other_program(
    whole: Course, monkeypatch: pytest.MonkeyPatch
) -> None:
    def forbidden(*given: object, **named: object) -> None:
        raise AssertionError("a second start must not do this")

    monkeypatch.setattr(socket, "socket", forbidden)
    monkeypatch.setattr(subprocess, "Popen", forbidden)
    began = time.perf_counter()
    whole.set_up()
    assert time.perf_counter() - began < 0.5
    assert whole.said == []


def test_a_second_start_is_ready_within_two_seconds_from_the_shell(whole: Course) -> None:
    script = (
        "import sys; from pathlib import Path; from woodmath.school import commands, environment; "
        "from woodmath.school.places import Places; "
        "print(environment.SetUp(Places(Path(sys.argv[1])), 'open', 'pages').ready())"
    )
    began = time.perf_counter()
    run = subprocess.run(
        [sys.executable, "-c", script, str(whole.places.project)],
        cwd=Places.here().project,
        capture_output=True,
        encoding="utf-8",
    )
    assert time.perf_counter() - began < 2.0
    assert run.stdout.strip() == str(whole.places.python)


@pytest.mark.parametrize("marker", [None, "", "{", "[]", '{"project": 1}'])
def test_a_set_up_without_a_readable_marker_is_never_taken_for_whole(
    marker: str | None, whole: Course
) -> None:
    kept = whole.places.marker.read_text(encoding="utf-8")
    try:
        if marker is None:
            whole.places.marker.unlink()
        else:
            whole.places.marker.write_text(marker, encoding="utf-8")
        work = work_to_do(whole.places, whole.pins, "pages")
        assert work is not None and work.afresh
        assert work.why == "An earlier set-up did not come to its end; it is made again from nothing."
    finally:
        whole.places.marker.write_text(kept, encoding="utf-8")


def test_what_a_half_made_environment_holds_is_thrown_away(whole: Course) -> None:
    whole.places.marker.unlink()
    leftover = whole.places.environment / "leftover"
    leftover.touch()
    whole.set_up()
    assert not leftover.exists()
    assert whole.version_inside() == "1.0"


def _changed(key: str, value: object) -> Callable[[Course], None]:
    def change(course: Course) -> None:
        marker = json.loads(course.places.marker.read_text(encoding="utf-8"))
        course.places.marker.write_text(json.dumps(marker | {key: value}), encoding="utf-8")

    return change


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (_changed("project", "/elsewhere"), "The course was moved here from another folder"),
        (_changed("python", "3.99"), "The course was set up with Python 3.99"),
    ],
)
def test_an_environment_of_another_folder_or_python_is_made_again(
    change: Callable[[Course], None], told: str, whole: Course
) -> None:
    kept = whole.places.marker.read_text(encoding="utf-8")
    try:
        change(whole)
        work = work_to_do(whole.places, whole.pins, "pages")
        assert work is not None and work.afresh and work.why.startswith(told)
    finally:
        whole.places.marker.write_text(kept, encoding="utf-8")


def test_an_environment_whose_python_is_gone_is_made_again(whole: Course) -> None:
    settings = whole.places.environment / "pyvenv.cfg"
    kept = settings.read_text(encoding="utf-8")
    try:
        settings.write_text("home = /nowhere/bin\n", encoding="utf-8")
        work = work_to_do(whole.places, whole.pins, "pages")
        assert work is not None and work.afresh and "is gone" in work.why
    finally:
        settings.write_text(kept, encoding="utf-8")


def test_changed_pins_are_told_and_brought_up_to_date(whole: Course) -> None:
    whole.need("2.0")
    whole.set_up()
    assert whole.said[0].startswith("The versions that the course needs have changed")
    assert whole.version_inside() == "2.0"


def test_the_tests_add_what_they_need_and_the_pages_stay_whole(whole: Course) -> None:
    whole.set_up("tests")
    assert whole.said[0].startswith("Adding what the tests need")
    assert "chisel" in packages_in(whole.places.environment)
    assert work_to_do(whole.places, whole.pins, "tests") is None
    assert work_to_do(whole.places, whole.pins, "pages") is None


def test_a_folder_that_lacks_a_package_is_named_and_the_old_environment_stays(
    whole: Course, tmp_path: Path
) -> None:
    whole.need("2.0")
    with pytest.raises(SetUpProblem, match=r"holds no plane that fits this system") as problem:
        whole.set_up(wheels=tmp_path)
    assert f'-d "{tmp_path}"' in str(problem.value)
    whole.need("1.0")
    assert work_to_do(whole.places, whole.pins, "pages") is None


def test_a_folder_that_is_not_there_is_named(whole: Course, tmp_path: Path) -> None:
    whole.need("2.0")
    with pytest.raises(SetUpProblem, match="There is no folder"):
        whole.set_up(wheels=tmp_path / "nowhere")


def test_without_a_network_a_sentence_says_so_and_the_old_environment_stays(
    whole: Course, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in [name for name in os.environ if name.upper().startswith("PIP_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("PIP_CONFIG_FILE", os.devnull)
    monkeypatch.setenv("PIP_INDEX_URL", "https://127.0.0.1:9/simple")
    whole.need("3.0")
    with pytest.raises(SetUpProblem, match="this machine reached no package server"):
        SetUp(whole.places, "open", "pages", None, whole.said.append).ready()
    whole.need("1.0")
    assert work_to_do(whole.places, whole.pins, "pages") is None


def test_an_interruption_while_pip_installs_leaves_no_marker(
    whole: Course, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(command: list[str], folder: Path, log: Path, watch: Watch, held: int) -> None:
        assert not whole.places.marker.exists()
        watch.heard("Installing collected packages: plane\n")
        raise KeyboardInterrupt

    whole.need("2.0")
    with monkeypatch.context() as patch:
        patch.setattr(environment, "run_watched", interrupted)
        with pytest.raises(KeyboardInterrupt):
            whole.set_up()
    work = work_to_do(whole.places, whole.pins, "pages")
    assert work is not None and work.why.startswith("An earlier set-up did not come to its end")


def test_packages_that_do_not_load_leave_no_marker(whole: Course, monkeypatch: pytest.MonkeyPatch) -> None:
    whole.need("2.0")
    monkeypatch.setattr(environment, "LOADED", {"pages": "plane, not_there", "tests": ""})
    with pytest.raises(SetUpProblem, match="No module named 'not_there'"):
        whole.set_up()
    assert not whole.places.marker.exists()


@pytest.mark.parametrize("missing", ["venv", "ensurepip"])
def test_a_python_without_its_venv_is_told_with_the_package_to_install(
    missing: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = environment.find_spec
    monkeypatch.setattr(environment, "find_spec", lambda name: None if name == missing else real(name))
    with pytest.raises(SetUpProblem, match=f"its module {missing} is missing"):
        Course(tmp_path).set_up()


def test_a_full_disk_is_told_in_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*given: object, **named: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(environment, "run_watched", full)
    with pytest.raises(SetUpProblem, match="The disk is full"):
        Course(tmp_path).set_up()


def test_a_folder_that_may_not_be_written_is_told_in_a_sentence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def not_allowed(*given: object, **named: object) -> None:
        raise PermissionError(13, "Permission denied")

    course = Course(tmp_path)
    monkeypatch.setattr(Path, "mkdir", not_allowed)
    with pytest.raises(SetUpProblem, match="This account may not write in"):
        course.set_up()


def test_a_woodmath_outside_a_folder_of_the_course_says_so(tmp_path: Path) -> None:
    with pytest.raises(SetUpProblem, match=r"has no requirements\.txt"):
        SetUp(Places(tmp_path), "open", "pages").ready()


def test_a_program_that_is_watched_ends_when_we_are_stopped(tmp_path: Path) -> None:
    class Impatient(Watch):
        def heard(self, text: str) -> None:
            raise KeyboardInterrupt

    watch = Impatient(ProgressLine(io.StringIO()), tmp_path, about=1)
    script = "import time; print('ready', flush=True); time.sleep(600)"
    began = time.perf_counter()
    with pytest.raises(KeyboardInterrupt):
        run_watched([sys.executable, "-c", script], tmp_path, tmp_path / "log", watch)
    assert time.perf_counter() - began < 15


def test_two_set_ups_wait_for_one_another_and_a_dead_one_holds_nothing(tmp_path: Path) -> None:
    script = (
        "import sys, time; from pathlib import Path; from woodmath.school.lock import locked\n"
        "with locked(Path(sys.argv[1]), print):\n    print('held', flush=True); time.sleep(600)"
    )
    lock = tmp_path / "lock"
    other = subprocess.Popen(
        [sys.executable, "-c", script, str(lock)], cwd=Places.here().project, stdout=subprocess.PIPE
    )
    assert other.stdout is not None and other.stdout.readline().strip() == b"held"
    waited: list[bool] = []

    def waiting() -> None:
        waited.append(True)
        other.kill()

    with locked(lock, waiting):
        assert waited == [True]
    other.communicate()


def test_progress_counts_what_pip_finds_and_what_lies_on_the_disk(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown: list[str] = []
    line = ProgressLine(io.StringIO())
    monkeypatch.setattr(line, "show", shown.append)
    lying = {"pip"}
    monkeypatch.setattr(installing, "packages_in", lambda folder: set(lying))
    watch = Watch(line, tmp_path, about=109)
    watch.heard("Collecting anyio==4.16.0 (from httpx)")
    watch.heard("Processing /shelf/argon2_cffi-25.1.0-py3-none-any.whl (from -r requirements.txt)")
    assert not watch.installing
    watch.heard("Installing collected packages: anyio, argon2_cffi")
    lying.add("anyio")
    watch.look()
    lying.add("argon2_cffi")
    watch.look()
    assert watch.installing
    assert shown == [
        "Fetching 1 of about 109: anyio",
        "Fetching 2 of about 109: argon2-cffi",
        "Installing 1 of 2: anyio",
        "Installing 2 of 2: argon2-cffi",
    ]


def test_progress_rewrites_one_line_on_a_terminal() -> None:
    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    stream = Terminal()
    line = ProgressLine(stream)
    line.show("Installing 1 of 2: anyio")
    line.show("Installing 2 of 2: argon2-cffi")
    line.close()
    assert "\n" not in stream.getvalue()
    assert stream.getvalue().count("\r") == 4


def test_the_pins_of_the_course_are_complete() -> None:
    pins = Pins.of(Places.here())
    bound = {line.split("==")[0] for line in (*pins.for_pages, *pins.for_tests)}
    assert [line for line in pins.required if "==" in line] == [
        "jupyterlab==4.6.6",
        "ipywidgets==8.1.9",
        "matplotlib==3.11.2",
        "numpy==2.4.6",
        "sympy==1.14.0",
        "nbval==0.11.0",
    ]
    assert pins.required[-1] == "--editable ."
    assert set(pins.required[:-1]) <= set(pins.for_pages)
    assert set(pins.test_tools) <= {*pins.for_pages, *pins.for_tests}
    assert set(pins.needs) <= bound
    assert pins.count("tests") == len(bound)


def test_the_pins_of_the_tests_alone_do_not_touch_an_environment_for_pages(tmp_path: Path) -> None:
    course = Course(tmp_path)
    pages, tests = course.pins.digest("pages"), course.pins.digest("tests")
    course.places.description.write_text(DESCRIPTION.replace("chisel==1.0", "chisel==1.1"), encoding="utf-8")
    assert course.pins.digest("pages") == pages
    assert course.pins.digest("tests") != tests


def test_line_ends_do_not_change_the_fingerprint(tmp_path: Path) -> None:
    course = Course(tmp_path)
    before = course.pins.digest("tests")
    for path in (course.places.requirements, course.places.constraints, course.places.description):
        path.write_bytes(path.read_bytes().replace(b"\n", b"\r\n"))
    assert course.pins.digest("tests") == before
