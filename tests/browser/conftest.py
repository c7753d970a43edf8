"""What the browser tests stand on: a server, a Chromium, and pages opened in it.

A test takes `open_page` (or one of its two kin) and works on the `LabPage` that it returns::

    def test_a_page_runs(open_page):
        page = open_page("notebooks/06-strike-the-bevel.ipynb")
        page.run_all()
        page.page.locator(".widget-slider .noUi-handle").first.press("ArrowRight")

All of them skip, with the command that mends it, on a machine without Chromium.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from lab import CHROMIUM_FLAGS, NO_CHROMIUM, PATIENCE, CourseServer, LabPage, chromium
from playwright.sync_api import Browser, expect, sync_playwright

from woodmath.school.places import Places

PHONE = {
    "viewport": {"width": 390, "height": 844},
    "device_scale_factor": 2,
    "has_touch": True,
    "is_mobile": True,
}

OpenPage = Callable[..., LabPage]


@pytest.fixture(scope="session")
def course_root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the notebooks and the figures, so that no test alters the course itself.

    A test may write notebooks of its own into `course_root / "notebooks"`.
    """
    root = tmp_path_factory.mktemp("course")
    for name in ("notebooks", "figures"):
        folder = Places.here().project / name
        if folder.is_dir():
            shutil.copytree(folder, root / name, ignore=shutil.ignore_patterns(".ipynb_checkpoints"))
        else:
            (root / name).mkdir()
    return root


@pytest.fixture(scope="session")
def course_server(course_root: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[CourseServer]:
    """The course's own JupyterLab on that copy, one for the whole run."""
    server = CourseServer(
        course_root, tmp_path_factory.mktemp("jupyter"), ["--LabApp.expose_app_in_browser=True"]
    )
    yield server
    server.stop()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A Chromium without a window, one for the whole run; each page has a fresh profile of its own."""
    program = chromium()
    if program is None:
        pytest.skip(NO_CHROMIUM)
    expect.set_options(timeout=PATIENCE)
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=program, args=list(CHROMIUM_FLAGS))
        yield started
        started.close()


@pytest.fixture
def open_page(browser: Browser, course_server: CourseServer) -> Iterator[OpenPage]:
    """Open a notebook, named as seen from `course_root`, in JupyterLab with its kernel ready.

    Further arguments are Playwright's for a new browser context (`viewport`, `color_scheme`...). When the
    test ends, the pages are closed, their kernels ended, and a request that left this machine fails it.
    """
    opened: list[LabPage] = []

    def open_one(name: str, **context: Any) -> LabPage:
        page = LabPage(browser, course_server, name, **context)
        opened.append(page)
        return page

    yield open_one
    for page in opened:
        page.close()
    assert [url for page in opened for url in page.outside] == []


@pytest.fixture
def open_on_phone(open_page: OpenPage) -> OpenPage:
    """Open a notebook in a window as wide as a phone (390 points), touched and not clicked, panels away."""

    def open_one(name: str) -> LabPage:
        page = open_page(name, **PHONE)
        page.clear_sides()
        return page

    return open_one


@pytest.fixture
def open_in_the_dark(open_page: OpenPage) -> Iterator[OpenPage]:
    """Open a notebook in JupyterLab's dark theme; the light one is back when the test ends."""
    opened: list[LabPage] = []

    def open_one(name: str, **context: Any) -> LabPage:
        page = open_page(name, **context)
        page.use_theme("JupyterLab Dark")
        opened.append(page)
        return page

    yield open_one
    for page in opened:
        page.use_theme("JupyterLab Light")
