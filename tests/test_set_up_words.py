"""What the set-up says when something is in the way, and to a Python that is too old."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from pathlib import Path

import pytest

from woodmath.errors import SetUpProblem
from woodmath.school import remedies
from woodmath.school.commands import main
from woodmath.school.remedies import Trouble, diagnosed

PROJECT = Path(__file__).resolve().parents[1]
SYSTEMS = ("linux", "macos", "windows")
TROUBLES = {name: value for name, value in vars(remedies).items() if isinstance(value, Trouble)}
WORDS = {
    name: f"<{name}>"
    for name in (
        "filling",
        "folder",
        "log",
        "module",
        "package",
        "project",
        "signal",
        "version",
        "wheels",
        "words",
    )
}

# What pip and venv really print, from trials on Debian 12 (pip 23.0.1) and from the texts of Python's own
# operating-system errors on Windows.
SAID = {
    "NO_NETWORK": (
        "WARNING: Retrying (Retry(total=2)) after connection broken by 'NewConnectionError('<pip._vendor.urllib3"
        ".connection.HTTPSConnection object>: Failed to establish a new connection: [Errno -3] Temporary failure"
        " in name resolution')': /simple/flit-core/\n"
        "ERROR: Could not find a version that satisfies the requirement flit_core==4.2.0 (from versions: none)\n"
        "ERROR: No matching distribution found for flit_core==4.2.0"
    ),
    "PROXY": (
        "WARNING: Retrying (Retry(total=2)) after connection broken by 'ProxyError('Cannot connect to proxy.',"
        " NewConnectionError(': Failed to establish a new connection: [Errno 111] Connection refused'))'\n"
        "ERROR: No matching distribution found for jupyterlab==4.6.6"
    ),
    "CERTIFICATE": (
        "WARNING: Retrying after connection broken by 'SSLError(SSLCertVerificationError(1, '[SSL: "
        "CERTIFICATE_VERIFY_FAILED] certificate verify failed: self signed certificate in chain'))'\n"
        "ERROR: No matching distribution found for jupyterlab==4.6.6"
    ),
    "DISK_FULL": "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device",
    "NOT_ALLOWED": "ERROR: Could not install packages due to an OSError: [Errno 13] Permission denied: '/opt/x'",
    "IN_USE": (
        "ERROR: Could not install packages due to an OSError: [WinError 32] The process cannot access the file"
        " because it is being used by another process: 'c:\\\\course\\\\_zmq.pyd'"
    ),
    "PATH_TOO_LONG": (
        "ERROR: Could not install packages due to an OSError: [WinError 206] The filename or extension is too long"
    ),
    "NO_WHEEL": (
        "ERROR: Could not find a version that satisfies the requirement numpy==2.4.6 (from versions: 2.5.0)\n"
        "ERROR: No matching distribution found for numpy==2.4.6"
    ),
    "PIP_FAILED": "ERROR: Something that nobody has seen before.",
}


@pytest.mark.parametrize("name", TROUBLES)
@pytest.mark.parametrize("system", SYSTEMS)
def test_every_trouble_is_one_sentence_and_a_command_on_each_system(name: str, system: str) -> None:
    text = str(TROUBLES[name].problem("open", system=system, **WORDS))
    happened, mending, *rest = text.splitlines()
    assert happened.count(". ") == 0
    assert mending.startswith("To mend it:  ") and len(mending) > len("To mend it:  ")
    assert "-m woodmath" in text
    assert all(line.startswith("Then again:  ") for line in rest)
    assert "{" not in text and text.isascii()
    assert ("py -m woodmath" in text or "py -3.13" in text) == (system == "windows")


@pytest.mark.parametrize("name", SAID)
def test_what_pip_says_is_recognised(name: str) -> None:
    assert diagnosed(SAID[name])[0] is TROUBLES[name]


def test_a_folder_that_lacks_a_package_is_told_apart_from_a_missing_network() -> None:
    said = (
        "ERROR: Cannot install jupyterlab because these package versions have conflicting dependencies.\n"
        "    httpx 0.28.1 depends on anyio\n"
        "    The user requested (constraint) anyio==4.16.0\n"
        "ERROR: ResolutionImpossible"
    )
    trouble, words = diagnosed(said, offline=True)
    assert trouble is remedies.FOLDER_LACKS
    assert words["package"] == "anyio"


@pytest.mark.parametrize("name", ["__init__.py", "__main__.py"])
def test_any_python_3_can_read_what_it_meets_first(name: str) -> None:
    ast.parse((PROJECT / "woodmath" / name).read_text(encoding="utf-8"), feature_version=(3, 4))
    assert (PROJECT / "woodmath" / name).read_bytes().isascii()


@pytest.mark.parametrize(
    ("platform", "remedy"),
    [
        ("linux", "sudo apt install python3.11 python3.11-venv"),
        ("darwin", "brew install python@3.13"),
        ("win32", "winget install Python.Python.3.13"),
    ],
)
def test_a_python_too_old_gets_a_sentence_and_a_command_and_no_traceback(platform: str, remedy: str) -> None:
    pretend = (
        "import runpy, sys; sys.version_info = (3, 9, 2, 'final', 0); "
        f"sys.platform = {platform!r}; sys.argv = ['woodmath', 'open']; "
        "runpy.run_module('woodmath', run_name='__main__')"
    )
    run = subprocess.run([sys.executable, "-c", pretend], cwd=PROJECT, capture_output=True, encoding="utf-8")
    assert run.returncode == 1
    first, mending, again = run.stderr.splitlines()
    assert first == "The course needs Python 3.11 or newer, and this is Python 3.9."
    assert mending.startswith("To mend it:  " + remedy)
    assert again.endswith("-m woodmath open")


def test_without_a_command_the_possible_ones_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main([]) == 0
    told = capsys.readouterr().out
    assert all(f"-m woodmath {name}" in told for name in ("open", "test", "packet", "figures"))


def test_an_unknown_command_is_answered_with_the_possible_ones(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["opne"]) == 2
    assert (
        capsys.readouterr().err
        == "There is no command 'opne'. The commands are: open, test, packet, figures.\n"
    )


def test_an_unknown_option_of_open_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ending:
        main(["open", "--no-brower"])
    assert ending.value.code == 2
    assert "--no-brower" in capsys.readouterr().err


def test_a_trouble_ends_the_command_with_its_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def in_the_way(self: object) -> Path:
        raise SetUpProblem("The glue is dry.\nTo mend it:  warm it")

    monkeypatch.setattr("woodmath.school.commands.SetUp.ready", in_the_way)
    assert main(["open"]) == 1
    assert capsys.readouterr().err == "The glue is dry.\nTo mend it:  warm it\n"


def test_ctrl_c_during_a_set_up_ends_it_with_a_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(self: object) -> Path:
        raise KeyboardInterrupt

    monkeypatch.setattr("woodmath.school.commands.SetUp.ready", interrupted)
    assert main(["test"]) == 130
    assert "nothing half-made will be used" in capsys.readouterr().err


def test_the_help_of_a_command_is_in_plain_words(capsys: pytest.CaptureFixture[str]) -> None:
    for command in ("open", "test", "packet", "figures"):
        with pytest.raises(SystemExit) as ending:
            main([command, "--help"])
        assert ending.value.code == 0
        assert "--from FOLDER" in capsys.readouterr().out


@pytest.mark.parametrize("variable", ["PYTHONPATH", "PYTHONHOME", "PIP_TARGET"])
def test_variables_that_lead_python_astray_do_not_reach_ours(
    variable: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    from woodmath.school.installing import child_environment

    monkeypatch.setenv(variable, os.curdir)
    assert variable not in child_environment()
