"""Every page keeps the one anatomy, carries no output, and says in Markdown what its questions ask."""

from __future__ import annotations

import ast
import json
import re
from pathlib import Path
from typing import Any

import pytest

from woodmath import page as page_module
from woodmath.exercises import question_named

PROJECT = Path(__file__).resolve().parent.parent
PAGES = sorted((PROJECT / "notebooks").glob("*.ipynb"))
SECTIONS = (
    "## Look",
    "## Check",
    "## Your turn",
    "### Without a workshop",
    "## At the bench",
    "## What we have learned",
)
LONGEST_CELL = 15

every_page = pytest.mark.parametrize("path", PAGES, ids=[path.stem for path in PAGES])


def read(path: Path) -> dict[str, Any]:
    book: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return book


def cells(path: Path, kind: str) -> list[str]:
    return ["".join(cell["source"]) for cell in read(path)["cells"] if cell["cell_type"] == kind]


def prose(path: Path) -> str:
    return "\n\n".join(cells(path, "markdown"))


def test_the_first_five_pages_are_there() -> None:
    assert {path.stem for path in PAGES} >= {
        "00-start-here",
        "05-the-corner-post",
        "06-strike-the-bevel",
        "08-boring-by-count",
        "10-the-rockers-ellipse",
    }


@every_page
def test_a_page_asks_its_question_first_and_keeps_the_order_of_sections(path: Path) -> None:
    title, *_ = prose(path).splitlines()
    assert title.startswith("# ") and title.endswith("?")
    lines = prose(path).splitlines()
    places = [next(number for number, line in enumerate(lines) if line.startswith(part)) for part in SECTIONS]
    assert places == sorted(places)
    assert any(line.startswith("## Why") for line in lines)
    for part in (
        "**You will be able to**",
        "**You need**",
        "**How to read it.**",
        "**Find out by sliding:**",
    ):
        assert part in prose(path), f"{path.name} has no {part}"


@every_page
def test_a_page_says_what_to_take_care_of_at_the_bench(path: Path) -> None:
    bench = prose(path).split("## At the bench")[1]
    assert "Take care" in bench or "clamp the work" in bench


@every_page
def test_a_page_opens_with_one_import_and_one_piece(path: Path) -> None:
    first = cells(path, "code")[0]
    assert first.startswith("from woodmath.page import ")
    assert len(re.findall(r"^(?:from|import) ", first, re.MULTILINE)) == 1
    assert "piece = Piece.demo(" in first


@every_page
def test_a_page_imports_from_us_only_what_is_offered_to_pages(path: Path) -> None:
    tree = ast.parse("\n".join(cells(path, "code")))
    imported = {
        name.name
        for node in ast.walk(tree)
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("woodmath")
        for name in node.names
    }
    assert imported and imported <= set(page_module.__all__)


def test_everything_that_pages_are_offered_is_there() -> None:
    assert all(getattr(page_module, name) is not None for name in page_module.__all__)
    with pytest.raises(AttributeError, match="There are: Piece"):
        page_module.nonsense  # noqa: B018


@every_page
def test_no_output_no_count_and_no_widget_state_is_committed(path: Path) -> None:
    book = read(path)
    assert "widgets" not in book["metadata"]
    assert book["metadata"]["kernelspec"]["name"] == "python3"
    for cell in book["cells"]:
        assert cell.get("outputs", []) == [] and cell.get("execution_count") is None
        assert cell["id"]


@every_page
def test_code_cells_are_short_and_prose_is_at_least_as_long_as_code(path: Path) -> None:
    code = cells(path, "code")
    assert max(len(cell.splitlines()) for cell in code) <= LONGEST_CELL
    assert len(prose(path).split()) >= len(" ".join(code).split())


@every_page
def test_pictures_and_links_lead_to_files_that_are_here(path: Path) -> None:
    text = prose(path)
    targets = re.findall(r"\]\(([^)#]+)\)", text) + re.findall(r'src="([^"]+)"', text)
    assert any(target.startswith("../figures/") for target in targets)
    for target in targets:
        assert not target.startswith("http"), f"{path.name} needs a network for {target}"
        assert (path.parent / target).is_file(), f"{path.name} points to {target}"


@every_page
def test_every_picture_has_words_for_those_who_cannot_see_it(path: Path) -> None:
    for alt in re.findall(r"!\[([^\]]*)\]", prose(path)):
        assert len(alt.split()) >= 8


@every_page
def test_questions_stand_on_the_page_in_the_words_of_the_package_and_wait_for_an_answer(path: Path) -> None:
    asked = re.findall(r'answer\("([a-z]+-\d)", (.*)\)', "\n".join(cells(path, "code")))
    assert 3 <= len(asked) <= 5
    assert len({key for key, _ in asked}) == len(asked)
    for key, given in asked:
        assert given == "...", f"{path.name} gives {key} away"
        assert question_named(key).ask in prose(path)


@every_page
def test_a_page_is_written_calmly_and_in_british_spelling(path: Path) -> None:
    text = prose(path).replace("![", "[")
    assert "!" not in text
    american = re.findall(r"\b(?:center|color|rabbet|meter|miter)\w*", text, re.IGNORECASE)
    assert not american
