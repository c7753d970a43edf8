"""Is everything here that the pages need? Each thing looked at, and for each that is missing, what mends it."""

from __future__ import annotations

import importlib.metadata
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from woodmath.errors import WoodmathError
from woodmath.piece import Piece
from woodmath.piece_file import demo_names

_PYTHON = "py" if sys.platform == "win32" else "python3"
_MEND = f"close JupyterLab and start the course again with `{_PYTHON} -m woodmath open`"
OLDEST_PYTHON = (3, 11)


@dataclass(frozen=True)
class Check:
    """One thing looked at: what it is, whether it is in order, and what mends it if not."""

    what: str
    found: str
    in_order: bool
    mend: str = ""


@dataclass(frozen=True)
class InstallationReport:
    """Everything that was looked at, shown as a table; `in_order` when nothing is wrong.

    >>> InstallationReport((Check("Python", "3.11", True),)).in_order
    True
    """

    checks: tuple[Check, ...]

    @property
    def in_order(self) -> bool:
        """Whether nothing is wrong."""
        return all(check.in_order for check in self.checks)

    def _repr_markdown_(self) -> str:
        rows = "\n".join(
            f"| {'✓' if check.in_order else '✗'} | {check.what} | {check.found} | "
            f"{'' if check.in_order else check.mend} |"
            for check in self.checks
        )
        verdict = (
            "**All is in order.** You can go on."
            if self.in_order
            else f"**{sum(not check.in_order for check in self.checks)} of these are not in order.** "
            "The last column says what to do."
        )
        return f"{verdict}\n\n| | what | found | what to do |\n|---|---|---|---|\n{rows}"


def check_installation() -> InstallationReport:
    """Look at the Python, the packages, the widgets and the pieces that the pages work with.

    Returns
    -------
    InstallationReport
        Shows itself as a table that names what is wrong and how to mend it.

    >>> check_installation().checks[0].what
    'Python'
    """
    installed = {
        distribution.name.lower(): distribution.version
        for distribution in importlib.metadata.distributions()
        if distribution.name
    }
    return InstallationReport(
        (
            python_check(sys.version_info[:2], sys.executable),
            *package_checks(pinned_versions(), installed),
            widget_check(installed),
            *_piece_checks(),
        )
    )


def python_check(version: tuple[int, int], executable: str) -> Check:
    """Check the version of the Python that runs this page.

    >>> python_check((3, 9), "python3").in_order
    False
    """
    return Check(
        "Python",
        f"{version[0]}.{version[1]}, `{executable}`",
        version >= OLDEST_PYTHON,
        f"install Python {OLDEST_PYTHON[0]}.{OLDEST_PYTHON[1]} or newer, then {_MEND}",
    )


def pinned_versions() -> dict[str, str]:
    """Return the versions that requirements.txt pins, where the project's folder is here to be read.

    >>> isinstance(pinned_versions(), dict)
    True
    """
    listed = Path(__file__).resolve().parent.parent / "requirements.txt"
    if not listed.is_file():
        return {}
    lines = (line.split("#")[0].strip() for line in listed.read_text(encoding="utf-8").splitlines())
    return {name: version for name, pinned, version in (line.partition("==") for line in lines) if pinned}


def package_checks(pinned: Mapping[str, str], installed: Mapping[str, str]) -> Iterator[Check]:
    """Check each pinned package against what is installed.

    >>> [check.in_order for check in package_checks({"sympy": "1.14.0"}, {"sympy": "1.9"})]
    [False]
    """
    for name, version in pinned.items():
        found = installed.get(name.lower(), "missing")
        yield Check(name, found, found == version, f"version {version} is wanted: {_MEND}")


def widget_check(installed: Mapping[str, str]) -> Check:
    """Check that the sliders' two halves, in Python and in the browser, belong together.

    ipywidgets 8 belongs with jupyterlab_widgets 3 (the packages' own release notes).

    >>> widget_check({"ipywidgets": "8.1.9", "jupyterlab-widgets": "3.0.17"}).in_order
    True
    """
    front = installed.get("jupyterlab-widgets") or installed.get("jupyterlab_widgets", "missing")
    back = installed.get("ipywidgets", "missing")
    together = back.split(".")[0] == "8" and front.split(".")[0] == "3"
    return Check("sliders", f"ipywidgets {back} with jupyterlab_widgets {front}", together, _MEND)


def _piece_checks() -> Iterator[Check]:
    for name in demo_names():
        try:
            yield Check(f"piece {name}", Piece.demo(name).name, True)
        except WoodmathError as trouble:
            yield Check(f"piece {name}", "cannot be read", False, str(trouble).replace("\n", " "))
