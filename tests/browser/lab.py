"""The pages in a real Chromium: a server of our own, a notebook opened in it, and what the browser says."""

from __future__ import annotations

import json
import os
import shutil
import signal
import subprocess
import sys
import urllib.request
from collections.abc import Sequence
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from playwright.sync_api import Browser, ConsoleMessage, Locator, Page, Request

from woodmath.school.jupyter_home import jupyter_environment

CHROMIUM_FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
CHROMIUM_NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "microsoft-edge",
    "msedge",
)
CHROMIUM_PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
NO_CHROMIUM = (
    "no Chromium, Chrome or Edge on this machine; to mend it: on Linux  sudo apt install chromium , "
    "on macOS  brew install --cask chromium , on Windows  winget install Google.Chrome"
)
PATIENCE = 60_000  # milliseconds before a wait is given up; no wait ever sleeps that long by itself


def chromium() -> str | None:
    """The program of the first Chromium, Chrome or Edge that this machine has."""
    found = (shutil.which(name) for name in CHROMIUM_NAMES)
    lying = (place for place in CHROMIUM_PLACES if Path(place).exists())
    return next((path for path in (*found, *lying) if path), None)


def from_or_to_a_kernel(event: str, frame: dict[str, Any]) -> list[str]:
    """Return a frame in words, or nothing where the server speaks of its files alone, as it does with no kernel."""
    payload = frame["response"]["payloadData"]
    return [] if "events.jupyter.org" in payload else [f"{event}: {payload[:200]}"]


class CourseServer:
    """JupyterLab, started as `open` starts it, on a folder of the test's own.

    Attributes
    ----------
    root : Path
        The folder that it shows.
    home : Path
        JupyterLab's own settings.
    address, token : str
        Where it answers ("http://127.0.0.1:port"), and what it wants to see.
    start_url : str
        The line that it printed for the maker.
    process : subprocess.Popen
        The server.
    """

    def __init__(self, root: Path, home: Path, options: Sequence[str] = ()) -> None:
        self.root = root
        self.home = home
        self.token = "a-token-for-tests"
        command = [sys.executable, "-m", "woodmath.school.server", "--root", str(root), "--no-browser"]
        self.log = home.with_suffix(".log")
        with self.log.open("w", encoding="utf-8") as log:
            self.process = subprocess.Popen(
                [*command, *options],
                env=jupyter_environment(home, self.token) | {"WOODMATH_STRICT": "1"},
                stdin=subprocess.DEVNULL,
                stdout=subprocess.PIPE,
                stderr=log,
                encoding="utf-8",
            )
        assert self.process.stdout is not None
        said = []
        for line in self.process.stdout:
            said.append(line)
            if line.startswith("http://"):
                break
        else:
            raise AssertionError("".join(said) + self.log.read_text(encoding="utf-8"))
        self.start_url = line.strip()
        self.address = "{0.scheme}://{0.netloc}".format(urlsplit(self.start_url))

    def ask(self, path: str, method: str = "GET") -> Any:
        """Ask the server's own interface, and read its answer."""
        request = urllib.request.Request(f"{self.address}/{path}", method=method)
        request.add_header("Authorization", f"token {self.token}")
        with urllib.request.urlopen(request, timeout=30) as answer:
            body = answer.read()
        return json.loads(body) if body else None

    def end_kernels(self) -> None:
        """End every kernel: a page that is opened again would go on with the old one."""
        for session in self.ask("api/sessions"):
            self.ask(f"api/sessions/{session['id']}", "DELETE")
        for kernel in self.ask("api/kernels"):
            self.ask(f"api/kernels/{kernel['id']}", "DELETE")

    def stop(self) -> str:
        """Stop it as Ctrl-C does, and return what it said on its way out."""
        self.process.send_signal(signal.SIGTERM if os.name == "nt" else signal.SIGINT)
        said, _ = self.process.communicate(timeout=30)
        return said


class LabPage:
    """A notebook open in JupyterLab.

    Attributes
    ----------
    page : playwright Page
        The browser's page, for everything that this class does not do.
    messages : list of str
        Warnings and errors of the browser's console, and exceptions that nobody caught.
    outside : list of str
        Every address beyond this machine that was asked for.
    """

    def __init__(self, browser: Browser, server: CourseServer, name: str, **context: Any) -> None:
        self.server = server
        self.name = name
        self.messages: list[str] = []
        self.outside: list[str] = []
        self._context = browser.new_context(**context)
        self._context.set_default_timeout(PATIENCE)
        self.page: Page = self._context.new_page()
        self.page.on("console", self._on_console)
        self.page.on("pageerror", lambda error: self.messages.append(f"uncaught: {error}"))
        self._context.on("request", self._on_request)
        self.page.goto(f"{server.address}/lab/tree/{name}?token={server.token}&reset")
        self._await_kernel()

    def _await_kernel(self) -> None:
        """Wait until the notebook is open and its kernel answers."""
        self.page.evaluate(
            """async name => {
                await new Promise(done => {
                    const look = () => window.jupyterapp ? done() : setTimeout(look, 20);
                    look();
                });
                await window.jupyterapp.restored;
                const open = () => [...window.jupyterapp.shell.widgets('main')]
                    .find(widget => widget.context && widget.context.path === name);
                await new Promise(done => {
                    const look = () => open() ? done() : setTimeout(look, 20);
                    look();
                });
                await open().context.ready;
                await open().sessionContext.ready;
                await open().sessionContext.session.kernel.info;
            }""",
            self.name,
        )

    def turn_to(self, name: str) -> None:
        """Close the notebook and open another in the same JupyterLab, as a reader does who goes on."""
        self.page.evaluate(
            """async () => {
                for (const widget of [...window.jupyterapp.shell.widgets('main')]) {
                    await widget.sessionContext?.shutdown();
                    widget.dispose();
                }
            }"""
        )
        self.server.end_kernels()
        self.name = name
        self.messages.clear()
        self.outside.clear()
        self.command("docmanager:open", path=name)
        self._await_kernel()

    def _on_console(self, message: ConsoleMessage) -> None:
        if message.type in ("warning", "error"):
            self.messages.append(f"{message.type}: {message.text} ({message.location.get('url', '')})")

    def _on_request(self, request: Request) -> None:
        parts = urlsplit(request.url)
        if parts.scheme in ("http", "https", "ws", "wss") and parts.hostname != "127.0.0.1":
            self.outside.append(request.url)

    @property
    def notebook(self) -> Locator:
        """The notebook on the page."""
        return self.page.locator(".jp-Notebook")

    def command(self, name: str, **arguments: Any) -> None:
        """Carry out one of JupyterLab's commands, and wait for its end."""
        self.page.evaluate(
            "async ([name, arguments_]) => { await window.jupyterapp.commands.execute(name, arguments_); }",
            [name, arguments],
        )

    def run_all(self) -> None:
        """Run every cell to the bottom; fail at once when one of them raises."""
        self.command("notebook:run-all-cells")
        raised = self.errors()
        assert not raised, "\n".join(raised)

    def rest(self) -> None:
        """Wait until the kernel has answered all that it was told, and the page shows it, as a reader's hand does.

        A picture comes before the boxes beside it: what is typed between the two would be written over.
        """
        self.page.evaluate(
            """async patience => {
                const kernel = window.jupyterapp.shell.currentWidget.sessionContext.session.kernel;
                let told;
                const hear = (_, { msg }) => { told ||= msg.header.msg_type.startsWith('comm'); };
                const late = new Promise(
                    (_, fail) => setTimeout(() => fail(new Error('the kernel does not come to rest')), patience)
                );
                late.catch(() => null);
                kernel.anyMessage.connect(hear);
                try {
                    do {
                        told = false;
                        await Promise.race([kernel.requestKernelInfo(), late]);
                    } while (told);
                } finally {
                    kernel.anyMessage.disconnect(hear);
                }
            }""",
            PATIENCE,
        )

    def errors(self) -> list[str]:
        """What the cells raised, one text each."""
        found: list[str] = self.page.evaluate(
            """name => [...window.jupyterapp.shell.widgets('main')]
                .find(widget => widget.context && widget.context.path === name)
                .content.widgets.flatMap(cell => cell.model.type === 'code'
                    ? Array.from(cell.model.outputs.toJSON()) : [])
                .filter(output => output.output_type === 'error')
                .map(output => `${output.ename}: ${output.evalue}`)""",
            self.name,
        )
        return found

    def theme(self) -> str:
        """Return the theme that is on."""
        name: str = self.page.evaluate("() => document.body.dataset.jpThemeName")
        return name

    def use_theme(self, theme: str) -> None:
        """Change to a theme, "JupyterLab Dark" or "JupyterLab Light", and wait until it is on."""
        self.command("apputils:change-theme", theme=theme)
        self.page.wait_for_function(
            "theme => document.body.dataset.jpThemeName === theme"
            " && !document.getElementById('jupyterlab-splash')",
            arg=theme,
        )

    def clear_sides(self) -> None:
        """Close JupyterLab's side panel, which leaves a narrow window no room."""
        self.page.evaluate("() => { window.jupyterapp.shell.collapseLeft(); }")

    def close(self) -> None:
        """Close the page and end its kernel."""
        self._context.close()
        self.server.end_kernels()
