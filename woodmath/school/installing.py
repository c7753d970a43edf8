"""pip at work: run with a progress line, watched for trouble, stopped cleanly."""

from __future__ import annotations

import os
import queue
import re
import subprocess
import sysconfig
import threading
from collections.abc import Iterable, Sequence
from pathlib import Path

from woodmath.school.progress import ProgressLine

SECONDS_BETWEEN_LOOKS = 0.2

_FOUND = re.compile(
    r"\s*(?:(?:Collecting|Requirement already satisfied:) ([A-Za-z0-9._-]+)"
    r"|Processing .*?([A-Za-z0-9._]+)-[^-/\\\\]+-[^/\\\\]+\.whl)"
)
_INSTALLING = "Installing collected packages: "
_TURNED_ASIDE = ("PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PIP_DRY_RUN", "PIP_REQUIRE_VIRTUALENV")


def child_environment() -> dict[str, str]:
    """The environment variables for a Python of ours: whatever could lead it astray is left out.

    >>> "PYTHONPATH" in child_environment()
    False
    """
    astray = ("PYTHONHOME", "PYTHONPATH", "PYTHONSTARTUP", "PYTHONWARNINGS", "PYTHONUSERBASE", *_TURNED_ASIDE)
    kept = {name: value for name, value in os.environ.items() if name.upper() not in astray}
    # UTF-8 throughout: otherwise Windows reads the path of a course under C:\Users\Jörg in another code page.
    # pip's inner calls hear of fewer retries by this way only: a missing network shows after seconds.
    return kept | {"PYTHONUTF8": "1", "PIP_USER": "0", "PIP_RETRIES": "3"}


def packages_in(environment: Path) -> set[str]:
    """Names of the packages that lie in a virtual environment."""
    where = Path(
        sysconfig.get_path("purelib", "venv", {"base": str(environment), "platbase": str(environment)})
    )
    return {folder.name.split("-")[0] for folder in where.glob("*.dist-info")}


class Watch:
    """What pip is doing, as far as can be told from its lines and from the packages on the disk.

    Parameters
    ----------
    line : ProgressLine
        Where it is shown.
    environment : Path
        The virtual environment that pip installs into.
    about : int
        How many packages are to come; pip knows better once it has found them all.
    """

    def __init__(self, line: ProgressLine, environment: Path, about: int) -> None:
        self._line = line
        self._environment = environment
        self._about = about
        self._found: set[str] = set()
        self._before: set[str] = set()
        self._lying: set[str] = set()
        self._total = 0

    @property
    def installing(self) -> bool:
        """Whether pip has begun to change the environment."""
        return self._total > 0

    def heard(self, text: str) -> None:
        """Take in a line of pip's."""
        found = _FOUND.match(text)
        if found:
            name = (found[1] or found[2]).lower().replace("_", "-")
            self._found.add(name)
            self._line.show(f"Fetching {len(self._found)} of about {self._about}: {name}")
        elif text.startswith(_INSTALLING):
            self._total = len(text.removeprefix(_INSTALLING).split(","))
            self._before = self._lying = packages_in(self._environment)

    def look(self) -> None:
        """Count what lies on the disk: pip is silent while it installs."""
        if not self._total:
            return
        lying = packages_in(self._environment)
        new = lying - self._lying
        if new:
            self._lying = lying
            done = min(len(lying - self._before), self._total)
            name = min(new).lower().replace("_", "-")
            self._line.show(f"Installing {done} of {self._total}: {name}")


def run_watched(
    command: Sequence[str],
    folder: Path,
    log: Path,
    watch: Watch | None = None,
    held: int | None = None,
) -> tuple[int, str]:
    """Run a command, keep all that it says in a file, and stop it when we are stopped.

    Parameters
    ----------
    command : sequence of str
        The command.
    folder : Path
        Where it runs.
    log : Path
        Where its words are added.
    watch : Watch, optional
        Told of every line, and asked to look in between.
    held : int, optional
        The lock's descriptor: the command holds the lock too, in case that we are killed before it ends.

    Returns
    -------
    (int, str)
        Its exit code (negative: the signal that ended it) and its words.
    """
    lines: queue.Queue[str | None] = queue.Queue()
    said: list[str] = []
    with (
        log.open("a", encoding="utf-8") as record,
        subprocess.Popen(
            command,
            cwd=folder,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            encoding="utf-8",
            errors="replace",
            env=child_environment(),
            pass_fds=() if held is None or os.name == "nt" else (held,),
        ) as process,
    ):
        print("$", *command, file=record, flush=True)
        listener = threading.Thread(target=_listen, args=(process.stdout, lines), daemon=True)
        listener.start()
        try:
            while (line := _next(lines)) is not None:
                said.append(line)
                record.write(line)
                record.flush()
                if watch and line:
                    watch.heard(line)
                elif watch:
                    watch.look()
            return process.wait(), "".join(said)
        finally:
            _end(process)
            listener.join()


def _listen(stream: Iterable[str], lines: queue.Queue[str | None]) -> None:
    for line in stream:
        lines.put(line)
    lines.put(None)


def _next(lines: queue.Queue[str | None]) -> str | None:
    try:
        return lines.get(timeout=SECONDS_BETWEEN_LOOKS)
    except queue.Empty:
        return ""


def _end(process: subprocess.Popen[str]) -> None:
    if process.poll() is not None:
        return
    process.terminate()
    try:
        process.wait(timeout=10)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()
