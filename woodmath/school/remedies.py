"""What can go wrong while setting up: each trouble in one sentence, with the command that mends it.

Texts are plain ASCII, because an old Windows terminal shows nothing else.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from typing import Literal

from woodmath.errors import SetUpProblem

System = Literal["linux", "macos", "windows"]


def this_system() -> System:
    """Name the system that runs this: anything that is neither macOS nor Windows counts as Linux."""
    names: dict[str, System] = {"darwin": "macos", "win32": "windows"}
    return names.get(sys.platform, "linux")


def python_command(system: System) -> str:
    """What starts Python in a terminal of that system.

    >>> python_command("windows")
    'py'
    """
    return "py" if system == "windows" else "python3"


@dataclass(frozen=True)
class Trouble:
    """One thing that can go wrong.

    Parameters
    ----------
    happened : str
        What happened, in one sentence; words in braces are filled in.
    linux, macos, windows : str
        The command that mends it there. `{python}` stands for what starts Python, `{again}` for the
        command that was given.

    >>> trouble = Trouble("The {thing} is missing.", "fetch {thing}", "get {thing}", "load {thing}")
    >>> print(trouble.problem("open", system="macos", thing="glue"))
    The glue is missing.
    To mend it:  get glue
    Then again:  python3 -m woodmath open
    """

    happened: str
    linux: str
    macos: str
    windows: str

    def problem(self, command: str, system: System | None = None, **words: str) -> SetUpProblem:
        """Put it in words for a system.

        Parameters
        ----------
        command : str
            The command of ours that was given, such as "open".
        system : "linux", "macos" or "windows", optional
            Whose remedy to give; this machine's unless named.
        **words : str
            What stands in the braces.

        Returns
        -------
        SetUpProblem
            To be raised; its text is what the maker sees.
        """
        system = system or this_system()
        remedy = {"linux": self.linux, "macos": self.macos, "windows": self.windows}[system]
        python = python_command(system)
        again = f"{python} -m woodmath {command}"
        mending = remedy.format(python=python, again=again, command=command, **words)
        lines = [self.happened.format(**words), f"To mend it:  {mending}"]
        if again not in mending and "-m woodmath" not in mending:
            lines.append(f"Then again:  {again}")
        return SetUpProblem("\n".join(lines))


def _everywhere(happened: str, remedy: str) -> Trouble:
    return Trouble(happened, remedy, remedy, remedy)


NO_VENV = Trouble(
    "This Python cannot make a virtual environment: its module {module} is missing.",
    linux="sudo apt install python{version}-venv",
    macos="brew install python@3.13",
    windows="winget install Python.Python.3.13",
)
VENV_FAILED = Trouble(
    "Python could not make a virtual environment: {words}",
    linux="sudo apt install --reinstall python{version}-venv",
    macos="brew reinstall python@3.13",
    windows="winget install --force Python.Python.3.13",
)
NO_NETWORK = _everywhere(
    "The packages could not be fetched: this machine reached no package server.",
    "connect it to the network and run  {again}    (or, from a folder of packages:  {again} --from FOLDER)",
)
PROXY = Trouble(
    "The packages could not be fetched: a proxy stands between this machine and the package server.",
    linux="export HTTPS_PROXY=http://NAME:PORT    (ask whoever keeps the network for both)",
    macos="export HTTPS_PROXY=http://NAME:PORT    (ask whoever keeps the network for both)",
    windows="set HTTPS_PROXY=http://NAME:PORT    (ask whoever keeps the network for both)",
)
CERTIFICATE = Trouble(
    "The packages could not be fetched: this network shows a certificate that Python does not know.",
    linux="export PIP_CERT=FILE.pem    (the network's own certificate; ask whoever keeps it)",
    macos="export PIP_CERT=FILE.pem    (the network's own certificate; ask whoever keeps it)",
    windows="set PIP_CERT=FILE.pem    (the network's own certificate; ask whoever keeps it)",
)
DISK_FULL = Trouble(
    "The disk is full: the course needs about 600 MB in {folder}.",
    linux="rm -r ~/.cache/pip    (what pip keeps for later; or make room in another way)",
    macos="rm -r ~/Library/Caches/pip    (what pip keeps for later; or make room in another way)",
    windows='rmdir /s /q "%LocalAppData%\\pip\\cache"    (what pip keeps for later; or make room)',
)
NOT_ALLOWED = Trouble(
    "This account may not write in {folder}.",
    linux='sudo chown -R "$USER" "{project}"',
    macos='sudo chown -R "$USER" "{project}"',
    windows='xcopy /E /I "{project}" "%USERPROFILE%\\woodmath"    and go on in that copy',
)
IN_USE = Trouble(
    "A file of the environment is in use: the course is still running in another window.",
    linux="press Ctrl-C in that window",
    macos="press Ctrl-C in that window",
    windows="press Ctrl-C in that window",
)
PATH_TOO_LONG = Trouble(
    "The course lies too deep for this system: some file names come out too long.",
    linux='mv "{project}" ~/woodmath && cd ~/woodmath',
    macos='mv "{project}" ~/woodmath && cd ~/woodmath',
    windows='move "{project}" C:\\woodmath & cd /d C:\\woodmath',
)
NO_WHEEL = Trouble(
    "There is no ready-made {package} for Python {version} on this system.",
    linux="sudo apt install python3.13 python3.13-venv    and run  python3.13 -m woodmath {command}",
    macos="brew install python@3.13    and run  python3.13 -m woodmath {command}",
    windows="winget install Python.Python.3.13    and run  py -3.13 -m woodmath {command}",
)
FOLDER_LACKS = _everywhere(
    "The folder {wheels} holds no {package} that fits this system and Python {version}.",
    "on such a machine with a network, run  {filling}",
)
NO_FOLDER = _everywhere(
    "There is no folder {wheels} to take packages from.",
    "name the folder that holds them:  {again} --from FOLDER",
)
STOPPED_OUTSIDE = _everywhere(
    "The installation was stopped from outside (signal {signal}), perhaps because the memory ran out.",
    "close other programs and run  {again}",
)
PIP_FAILED = _everywhere(
    "pip could not install the packages; it said: {words}",
    "{again}    (all that pip said is in {log})",
)
DOES_NOT_LOAD = _everywhere(
    "The packages are installed but do not load: {words}",
    "{again}    (it starts from nothing; all that was said is in {log})",
)
NOT_A_COPY = Trouble(
    "This woodmath is not in a folder of the course: {project} has no requirements.txt.",
    linux="cd FOLDER    (the one that you downloaded)",
    macos="cd FOLDER    (the one that you downloaded)",
    windows="cd /d FOLDER    (the one that you downloaded)",
)
INTERRUPTED = _everywhere("Stopped before the end; nothing half-made will be used.", "{again}")

# The order matters: a full disk or a lost network also ends in pip's general words further down.
_SIGNS: tuple[tuple[str, Trouble], ...] = (
    (r"No space left on device|Errno 28\b|Disk quota exceeded|Errno 122\b|WinError 112\b", DISK_FULL),
    (r"WinError 206\b|File name too long|Errno 36\b|Windows Long Path support", PATH_TOO_LONG),
    (r"WinError 32\b|being used by another process", IN_USE),
    (r"Permission denied|Errno 13\b|WinError 5\b|Read-only file system|Errno 30\b", NOT_ALLOWED),
    (r"ProxyError|Tunnel connection failed|Proxy Authentication Required|Cannot connect to proxy", PROXY),
    (r"CERTIFICATE_VERIFY_FAILED|certificate verify failed|SSLCertVerificationError", CERTIFICATE),
)
_NETWORK = re.compile(
    r"NewConnectionError|Failed to establish a new connection|Temporary failure in name resolution"
    r"|Name or service not known|getaddrinfo failed|nodename nor servname|Failed to resolve"
    r"|NameResolutionError|Network is unreachable|ConnectTimeout|Read timed out|ReadTimeoutError"
    r"|Connection reset|RemoteDisconnected|IncompleteRead|incomplete-download|Connection broken|SSLEOFError"
    r"|ConnectionError|ProtocolError"
    r"|There was a problem confirming the ssl certificate"
)
# Our pins agree with one another, so a conflict with one of them means that its file is not to be had.
_NOTHING_FITS = re.compile(
    r"No matching distribution found for ([A-Za-z0-9._-]+)"
    r"|satisfies the requirement ([A-Za-z0-9._-]+)"
    r"|Failed to build ([A-Za-z0-9._-]+)"
    r"|The user requested \(constraint\) ([A-Za-z0-9._-]+)"
)


def diagnosed(said: str, offline: bool = False) -> tuple[Trouble, dict[str, str]]:
    """Recognise a trouble in what pip or venv said.

    Parameters
    ----------
    said : str
        All its output.
    offline : bool
        Whether it was told to use a folder of packages only.

    Returns
    -------
    (Trouble, dict)
        The trouble, and the words for its braces that stand in the output.

    >>> trouble, words = diagnosed("ERROR: No matching distribution found for numpy==2.4.6")
    >>> trouble is NO_WHEEL, words["package"]
    (True, 'numpy')
    """
    errors = [line.strip() for line in said.splitlines() if re.match(r"\s*(ERROR|error)\b", line)]
    spoken = [line.strip() for line in said.splitlines() if line.strip()]
    words = {"words": (errors or spoken or ["nothing at all"])[-1].removeprefix("ERROR:").strip()}
    for sign, trouble in _SIGNS:
        if re.search(sign, said):
            return trouble, words
    if not offline and _NETWORK.search(said):
        return NO_NETWORK, words
    missing = _NOTHING_FITS.search(said)
    if missing:
        words["package"] = next(name for name in missing.groups() if name)
        return (FOLDER_LACKS if offline else NO_WHEEL), words
    return PIP_FAILED, words
