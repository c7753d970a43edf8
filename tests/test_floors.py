"""Nothing imports from a floor above its own, and pages import no plotting library."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

PROJECT = Path(__file__).resolve().parent.parent
PACKAGE = PROJECT / "woodmath"
DEVELOPERS = (PROJECT / "DEVELOPERS.md").read_text(encoding="utf-8")
ONLY_FOR_PAPER = {"drawing_pdf", "paint", "sheets_in_pdf"}


def floors() -> dict[str, int]:
    """Read the table of floors in DEVELOPERS.md: the one place where it is written."""
    found = {}
    for number, names in re.findall(r"^\| (\d) \| (.*?) \|", DEVELOPERS, re.MULTILINE):
        for name in re.findall(r"`(\w+)/?`", names):
            found[name] = int(number)
    return found


FLOORS = floors()


def part_of(module: str) -> str:
    return module.split(".")[1] if "." in module else module


def modules() -> Iterator[tuple[str, Path]]:
    for path in sorted(PACKAGE.rglob("*.py")):
        relative = path.relative_to(PACKAGE)
        yield (relative.parts[0] if len(relative.parts) > 1 else path.stem), path


def imports(path: Path) -> Iterator[str]:
    """Yield the modules that a file imports when it runs; those for the type checker alone do not count."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    checked_only = {
        node
        for branch in ast.walk(tree)
        if isinstance(branch, ast.If) and "TYPE_CHECKING" in ast.dump(branch.test)
        for node in ast.walk(branch)
    }
    for node in ast.walk(tree):
        if node in checked_only:
            continue
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield from (
                [f"woodmath.{name.name}" for name in node.names]
                if node.module == "woodmath"
                else [node.module]
            )


@pytest.mark.parametrize(
    ("part", "path"), list(modules()), ids=lambda value: str(getattr(value, "stem", value))
)
def test_a_module_stands_on_a_floor_and_imports_nothing_from_above(part: str, path: Path) -> None:
    if path == PACKAGE / "__init__.py":
        assert list(imports(path)) == []
        return
    assert part in FLOORS, f"{part} is on no floor in DEVELOPERS.md"
    for module in imports(path):
        if module.startswith("woodmath."):
            below = part_of(module)
            assert FLOORS[below] <= FLOORS[part], f"{part} imports {below} from a floor above"


@pytest.mark.parametrize(
    ("part", "path"), list(modules()), ids=lambda value: str(getattr(value, "stem", value))
)
def test_numpy_and_matplotlib_come_in_only_where_paper_is_painted(part: str, path: Path) -> None:
    heavy = {module.split(".")[0] for module in imports(path)} & {"numpy", "matplotlib", "scipy"}
    assert not heavy or part in ONLY_FOR_PAPER


def test_every_module_that_developers_are_told_of_exists() -> None:
    there = {part for part, _ in modules()}
    assert set(FLOORS) <= there
