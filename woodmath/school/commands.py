"""The commands of the course, in plain words."""

from __future__ import annotations

import argparse
import os
import secrets
import subprocess
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NoReturn

from woodmath.errors import SetUpProblem
from woodmath.school.environment import SetUp
from woodmath.school.installing import child_environment
from woodmath.school.jupyter_home import jupyter_environment
from woodmath.school.packet_run import add_options, options_as_given
from woodmath.school.pins import Level
from woodmath.school.places import Places
from woodmath.school.remedies import INTERRUPTED, python_command, this_system

COMMANDS = {
    "open": "set the course up if need be, and open its pages in the browser",
    "test": "set up what the tests need as well, and run every test",
    "packet": "print a piece: its views, cut list, cards and patterns at true size, as one file",
    "figures": "draw the still pictures in figures/ anew (--check: only see whether they are current)",
}
_FIGURES = "import sys; from woodmath.figures import main; sys.exit(main(sys.argv[1:]))"


class _PlainParser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        print(f"{message[:1].upper()}{message[1:]}.\nFor help:  {_start()} --help", file=sys.stderr)
        sys.exit(2)


def _start() -> str:
    return f"{python_command(this_system())} -m woodmath"


def _parser(command: str) -> argparse.ArgumentParser:
    parser = _PlainParser(
        prog=f"{_start()} {command}", description=f"{COMMANDS[command].capitalize()}.", allow_abbrev=False
    )
    parser.add_argument(
        "--from",
        dest="wheels",
        metavar="FOLDER",
        type=Path,
        help="take the packages from this folder and not from the network",
    )
    if command == "open":
        parser.add_argument(
            "--no-browser", action="store_true", help="only print the address; open it yourself"
        )
    if command == "packet":
        add_options(parser)
    if command == "test":
        parser.usage = "%(prog)s [-h] [--from FOLDER] [anything that pytest understands]"
    return parser


def short_help() -> str:
    """What the commands are, for whoever gives none.

    >>> "open" in short_help()
    True
    """
    lines = [f"  {_start()} {name:<8} {what}" for name, what in COMMANDS.items()]
    return "\n".join(["The commands of the course:", *lines])


def hand_over(command: Sequence[str], environment: Mapping[str, str]) -> int:
    """Let another program take this one's place, so that Ctrl-C goes to it alone.

    Windows cannot do that; there we wait for it and leave Ctrl-C to it.

    Parameters
    ----------
    command : sequence of str
        The program and its arguments.
    environment : mapping
        Its environment variables.

    Returns
    -------
    int
        Its exit code (on Windows only; elsewhere there is nobody left to return to).
    """
    sys.stdout.flush()
    sys.stderr.flush()
    if os.name == "posix":
        os.execve(command[0], list(command), dict(environment))
    return wait_for(command, environment)


def wait_for(command: Sequence[str], environment: Mapping[str, str]) -> int:
    """Run a program to its end, leaving every Ctrl-C to it.

    Parameters
    ----------
    command : sequence of str
        The program and its arguments.
    environment : mapping
        Its environment variables.

    Returns
    -------
    int
        Its exit code.
    """
    process = subprocess.Popen(command, env=dict(environment))
    while True:
        try:
            return process.wait()
        except KeyboardInterrupt:
            continue


def _run(command: str, arguments: Sequence[str]) -> int:
    given, rest = _parser(command).parse_known_args(arguments)
    if command in ("open", "packet") and rest:
        _parser(command).error(f"{command} does not know {' '.join(rest)}")
    level: Level = "tests" if command == "test" else "pages"
    places = Places.here()
    python = str(SetUp(places, command, level, given.wheels).ready())
    if command == "open":
        print("JupyterLab starts. Leave this window open while you work; Ctrl-C here ends it.", flush=True)
        browser = ["--no-browser"] if given.no_browser else []
        return hand_over(
            [python, "-P", "-m", "woodmath.school.server", "--root", str(places.project), *browser],
            jupyter_environment(places.jupyter, secrets.token_urlsafe(24)),
        )
    if command == "test":
        return hand_over([python, "-P", "-m", "woodmath.school.suite", *rest], child_environment())
    if command == "packet":
        run = [python, "-P", "-m", "woodmath.school.packet_run", *options_as_given(given)]
        return hand_over(run, child_environment())
    return hand_over([python, "-P", "-c", _FIGURES, *rest], child_environment())


def main(arguments: Sequence[str]) -> int:
    """Carry out a command.

    Parameters
    ----------
    arguments : sequence of str
        The command and its options.

    Returns
    -------
    int
        0 when it went well, 1 when something was in the way, 2 for a command that there is not,
        130 when it was stopped by Ctrl-C.
    """
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    if not arguments or arguments[0] in ("-h", "--help", "help"):
        print(short_help())
        return 0
    command = arguments[0]
    if command not in COMMANDS:
        possible = ", ".join(COMMANDS)
        print(f"There is no command {command!r}. The commands are: {possible}.", file=sys.stderr)
        return 2
    try:
        return _run(command, arguments[1:])
    except SetUpProblem as problem:
        print(problem, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print(INTERRUPTED.problem(command), file=sys.stderr)
        return 130
