"""What a page does beside its drawing: hold numbers against published ones, check the set-up, print true to size."""

from __future__ import annotations

import ast
import base64
import json
import re
import subprocess
import sys
from pathlib import Path

import pytest
from machine_speed import slowness
from pdf_reading import page_of

from woodmath.comparison import compare
from woodmath.errors import Disagreement, UnknownName
from woodmath.piece import Piece
from woodmath.self_check import (
    check_installation,
    package_checks,
    pinned_versions,
    python_check,
    widget_check,
)
from woodmath.sheet import sheet_at_true_size
from woodmath.views.post_joint import post_section
from woodmath.views.view import LengthControl

NOTEBOOKS = sorted((Path(__file__).resolve().parent.parent / "notebooks").glob("*.ipynb"))


def first_import(path: Path) -> str:
    """Return the import with which a page begins, in one line."""
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    first = next("".join(cell["source"]) for cell in cells if cell["cell_type"] == "code")
    return ast.unparse(ast.parse(first).body[0])


def test_a_number_within_its_tolerance_is_shown_beside_the_published_one() -> None:
    shown = compare([("mitre, degrees", 44.998, 45.00)], within=0.005, source="a saw manual")
    text = shown._repr_markdown_()
    assert "44.998" in text and "| 45 |" in text and "a saw manual" in text


@pytest.mark.parametrize("ours", [45.006, 44.9, float("nan"), float("inf")])
def test_a_number_beyond_its_tolerance_stops_the_page(ours: float) -> None:
    with pytest.raises(Disagreement, match="look at the derivation"):
        compare([("mitre, degrees", ours, 45.0)], within=0.005, source="a saw manual")


def test_the_second_row_is_held_to_the_tolerance_as_the_first_is() -> None:
    with pytest.raises(AssertionError, match="the second"):
        compare([("the first", 1.0, 1.0), ("the second", 2.0, 1.0)], within=0.1, source="a table")


def test_this_installation_is_in_order() -> None:
    report = check_installation()
    assert report.in_order, report._repr_markdown_()
    assert "All is in order" in report._repr_markdown_()


def test_the_check_reads_the_pins_of_the_six_packages() -> None:
    assert set(pinned_versions()) == {"jupyterlab", "ipywidgets", "matplotlib", "numpy", "sympy", "nbval"}


def test_an_old_python_a_wrong_version_and_a_missing_package_are_named_with_what_mends_them() -> None:
    assert not python_check((3, 10), "python3").in_order
    wrong, missing, right = package_checks(
        {"sympy": "1.14.0", "numpy": "2.4.6", "nbval": "0.11.0"}, {"sympy": "1.9", "nbval": "0.11.0"}
    )
    assert not wrong.in_order and "1.14.0" in wrong.mend and "woodmath open" in wrong.mend
    assert not missing.in_order and missing.found == "missing"
    assert right.in_order


def test_sliders_need_both_of_their_halves() -> None:
    assert not widget_check({"ipywidgets": "8.1.9"}).in_order
    assert not widget_check({"ipywidgets": "7.8.1", "jupyterlab_widgets": "1.1.7"}).in_order
    assert widget_check({"ipywidgets": "8.1.9", "jupyterlab_widgets": "3.0.17"}).in_order


def test_a_report_with_a_cross_says_what_to_do() -> None:
    from woodmath.self_check import InstallationReport

    report = InstallationReport((python_check((3, 9), "python3"),))
    assert not report.in_order
    assert "✗" in report._repr_markdown_() and "install Python 3.11" in report._repr_markdown_()


@pytest.mark.parametrize(("paper", "size"), [("A4", (210.0, 297.0)), ("Letter", (215.9, 279.4))])
def test_a_sheet_comes_on_both_papers_at_their_standard_sizes(paper: str, size: tuple[float, float]) -> None:
    # ISO 216 A4; ASME Y14.1 size A (both read in a drawing text's table of sheet sizes).
    sheet = sheet_at_true_size(post_section, Piece.demo("cat-bed"))
    content = dict(sheet.files)[paper]
    page = page_of(content)
    assert (page.width * 25.4 / 72, page.height * 25.4 / 72) == pytest.approx(size, abs=0.01)


def test_a_sheet_shows_itself_as_links_that_hold_the_whole_file() -> None:
    sheet = sheet_at_true_size(post_section, Piece.demo("cat-bed"))
    links = re.findall(r'href="data:application/pdf;base64,([^"]+)"', sheet._repr_html_())
    assert [base64.b64decode(link) for link in links] == [content for _, content in sheet.files]
    assert "measure the bars" in sheet._repr_html_()


def test_a_drawing_too_large_for_any_paper_is_told_in_a_sentence() -> None:
    from woodmath.views.ellipse import pins_and_string

    sheet = sheet_at_true_size(pins_and_string, Piece.demo("cat-bed"))
    assert sheet.files == ()
    assert "in" in sheet.trouble and sheet.trouble in sheet._repr_html_()


def test_a_setting_that_no_control_has_is_refused_with_the_names_there_are() -> None:
    with pytest.raises(UnknownName, match="tenon_thickness"):
        sheet_at_true_size(post_section, Piece.demo("cat-bed"), thickness=1.0)


def test_a_control_has_its_range_in_the_unit_of_the_rule() -> None:
    control = LengthControl("post", "post, square", ("1", "3"), ("25", "75"))
    assert control.bounds(Piece.demo("cat-bed").rule) == (1.0, 3.0)
    assert control.bounds(Piece.demo("log-box").rule) == (25.0, 75.0)


def test_a_page_imports_neither_numpy_nor_matplotlib() -> None:
    code = (
        "import sys, woodmath.page; every = [getattr(woodmath.page, name) for name in woodmath.page.__all__]; "
        "print(*{'numpy', 'matplotlib', 'scipy'} & set(sys.modules))"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == ""


def test_what_a_page_imports_takes_less_than_six_tenths_of_a_second() -> None:
    # As in a kernel, where IPython is there already; the least of five, since other work may come between. Of all pages
    # the one that asks for most.
    asked = max(map(first_import, NOTEBOOKS), key=lambda line: line.count(","))
    code = f"import IPython, time; begun = time.perf_counter(); {asked}; print(time.perf_counter() - begun)"
    taken = [
        float(subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout)
        for _ in range(5)
    ]
    assert min(taken) / slowness() < 0.6
