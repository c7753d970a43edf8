"""What `open` promises, seen from the browser and from outside: a token, this machine only, no news, no network."""

from __future__ import annotations

import json
import sys
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

import psutil
import pytest
from lab import CourseServer, LabPage
from playwright.sync_api import Browser, expect

pytestmark = pytest.mark.browser

OpenPage = Callable[..., LabPage]
TRIAL = "notebooks/trial.ipynb"


@pytest.fixture(scope="module")
def trial(course_root: Path) -> str:
    """A notebook of the test's own, of one cell that names its Python and reads a slider."""
    source = (
        "import os, sys\n"
        "import ipywidgets\n"
        "print(sys.executable, os.environ['JUPYTER_WIDGETS_ECHO'])\n"
        "ipywidgets.IntSlider(description='turns', value=3)"
    )
    cell = {"cell_type": "code", "execution_count": None, "id": "one", "metadata": {}, "outputs": []}
    book = {
        "cells": [cell | {"source": source}],
        "metadata": {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}},
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    (course_root / TRIAL).write_text(json.dumps(book), encoding="utf-8")
    return TRIAL


def test_the_printed_address_opens_the_start_page(course_server: CourseServer, browser: Browser) -> None:
    expected = f"{course_server.address}/lab/tree/notebooks/00-start-here.ipynb?token={course_server.token}"
    assert course_server.start_url == expected
    page = browser.new_page()
    page.goto(course_server.start_url)
    expect(page.locator(".lm-TabBar-tab.jp-mod-current", has_text="00-start-here")).to_be_visible()
    page.close()
    course_server.end_kernels()


def test_without_the_token_nobody_gets_in(course_server: CourseServer, browser: Browser) -> None:
    page = browser.new_page()
    page.goto(course_server.start_url.partition("?")[0])
    assert "/login" in page.url
    assert page.locator(".jp-Notebook").count() == 0
    page.close()
    with pytest.raises(urllib.error.HTTPError) as refused:
        urllib.request.urlopen(f"{course_server.address}/api/contents", timeout=30)
    assert refused.value.code == 403


def test_the_token_is_not_on_the_command_line(course_server: CourseServer) -> None:
    assert course_server.token not in " ".join(psutil.Process(course_server.process.pid).cmdline())


@pytest.fixture(scope="class")
def opened(browser: Browser, course_server: CourseServer, trial: str) -> Iterator[LabPage]:
    """Return one page, open and run, for all that is only looked at."""
    page = LabPage(browser, course_server, trial)
    page.run_all()
    yield page
    page.close()


class TestOnOnePage:
    """What is seen on one page that is open and run."""

    def test_server_and_kernel_listen_on_this_machine_only(
        self, course_server: CourseServer, opened: LabPage
    ) -> None:
        server = psutil.Process(course_server.process.pid)
        processes = [server, *server.children(recursive=True)]
        listening = [
            connection.laddr.ip
            for process in processes
            for connection in process.net_connections("inet")
            if connection.status == psutil.CONN_LISTEN
        ]
        assert len(processes) > 1 and len(listening) > 1
        assert set(listening) == {"127.0.0.1"}

    def test_the_kernel_is_the_python_of_the_environment_and_does_not_echo(self, opened: LabPage) -> None:
        said = opened.page.locator(".jp-OutputArea-output pre").first
        expect(said).to_have_text(f"{sys.executable} 0")

    def test_nobody_asks_about_news_and_nothing_is_reported(self, opened: LabPage) -> None:
        expect(opened.page.locator(".widget-slider .noUi-handle")).to_be_visible()
        assert opened.page.locator(".Toastify__toast").count() == 0
        assert opened.page.get_by_text("Jupyter news").count() == 0
        assert opened.messages == []
        assert opened.outside == []

    def test_what_a_reader_does_is_heard_in_one_thread_and_so_in_its_order(self, opened: LabPage) -> None:
        # A stock JupyterLab opens a second one for widgets, in which a press of a button can overtake a size.
        opened.page.locator(".widget-slider .noUi-handle").press("ArrowRight")
        threads = opened.page.evaluate(
            """async () => {
                const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
                const code = 'import threading; print([each.name for each in threading.enumerate()])';
                const future = kernel.requestExecute({ code });
                let said = '';
                future.onIOPub = message => { said += message.content.text || ''; };
                await future.done;
                return said;
            }"""
        )
        assert "MainThread" in threads and "subshell-" not in threads

    def test_every_cell_is_laid_out_however_far_down_it_is(self, opened: LabPage) -> None:
        mode = opened.page.evaluate(
            "() => window.jupyterapp.shell.currentWidget.content.notebookConfig.windowingMode"
        )
        assert mode == "none"


def test_the_dark_theme_and_a_phones_width_can_be_tried(
    open_in_the_dark: OpenPage, open_on_phone: OpenPage, trial: str
) -> None:
    dark = open_in_the_dark(trial)
    assert dark.page.evaluate("() => document.body.dataset.jpThemeLight") == "false"
    phone = open_on_phone(trial)
    phone.run_all()
    room = phone.notebook.bounding_box()
    assert room is not None and 250 < room["width"] <= 390


def test_a_cell_that_raises_fails_the_run(open_page: OpenPage, course_root: Path, trial: str) -> None:
    book = json.loads((course_root / trial).read_text(encoding="utf-8"))
    book["cells"][0]["source"] = "raise ValueError('the pin is loose')"
    (course_root / "notebooks" / "broken.ipynb").write_text(json.dumps(book), encoding="utf-8")
    page = open_page("notebooks/broken.ipynb")
    with pytest.raises(AssertionError, match="ValueError: the pin is loose"):
        page.run_all()


def test_kernels_end_between_pages(course_server: CourseServer, open_page: OpenPage, trial: str) -> None:
    assert course_server.ask("api/kernels") == []
    page = open_page(trial)
    assert len(course_server.ask("api/kernels")) == 1
    page.close()
    assert course_server.ask("api/kernels") == []
