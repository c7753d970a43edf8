"""JupyterLab for the course: on this machine only, behind a token, on a free port, quiet.

Runs inside the environment, as `python -m woodmath.school.server`, with the variables of `jupyter_home`.
"""

from __future__ import annotations

import argparse
import os
import signal
import sys
import tempfile
import webbrowser
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from woodmath.school.jupyter_home import LAB_SETTINGS
from woodmath.school.websocket import connection_class

START_PAGE = "notebooks/00-start-here.ipynb"


def settings(root: Path, page: str, browser: bool) -> list[str]:
    """The options that JupyterLab is started with.

    Parameters
    ----------
    root : Path
        The folder that it shows.
    page : str
        The notebook that it opens on, seen from there.
    browser : bool
        Whether it calls the browser itself.

    Returns
    -------
    list of str
        Options of its command line.

    >>> "--ServerApp.ip=127.0.0.1" in settings(Path("course"), START_PAGE, browser=True)
    True
    """
    options = {
        "ServerApp.ip": "127.0.0.1",
        "ServerApp.port": 0,
        "ServerApp.root_dir": root.resolve(),
        "ServerApp.open_browser": browser,
        "ServerApp.use_redirect_file": False,
        "ServerApp.log_level": "ERROR",
        "LabApp.log_level": "ERROR",
        "LabApp.default_url": f"/lab/tree/{page}",
        "LabApp.app_settings_dir": LAB_SETTINGS,
        "LabApp.extension_manager": "readonly",
        "LabApp.news_url": None,
        # It would look for programs of other languages all over the machine.
        "LanguageServerManager.autodetect": False,
        # Keeps what kernel and server say to each other from other accounts of the machine.
        "KernelManager.transport_encryption": "auto",
    }
    return [f"--{name}={value}" for name, value in options.items()]


def make_server(root: Path, page: str, browser: bool, extra: Sequence[str] = ()) -> Any:
    """Make a server that is ready to be started.

    Parameters
    ----------
    root : Path
        The folder that it shows.
    page : str
        The notebook that it opens on, seen from there.
    browser : bool
        Whether it calls the browser itself.
    extra : sequence of str
        Further options of JupyterLab's command line; they go before ours of the same name.

    Returns
    -------
    ServerApp
        Its `start` runs it until it is stopped.
    """
    from jupyterlab.labapp import LabApp
    from traitlets.config import Config

    config = Config()
    connection = connection_class()
    if connection is not None:
        config.ServerApp.kernel_websocket_connection_class = connection
    named = {option.partition("=")[0] for option in extra}
    ours = [option for option in settings(root, page, browser) if option.partition("=")[0] not in named]
    options = [*ours, *extra]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        options.append("--allow-root")
    return LabApp.initialize_server(argv=options, config=config)


def start_url(server: Any, page: str) -> str:
    """The address of the start page, with the token."""
    return f"http://127.0.0.1:{server.port}/lab/tree/{page}?token={server.identity_provider.token}"


def _a_browser_is_there() -> bool:
    try:
        webbrowser.get()
    except webbrowser.Error:
        return False
    return True


def main(arguments: Sequence[str]) -> int:
    """Run the server until Ctrl-C.

    Parameters
    ----------
    arguments : sequence of str
        `--root FOLDER`, `--page NOTEBOOK`, `--no-browser`; anything else is handed to JupyterLab.

    Returns
    -------
    int
        The exit code.
    """
    parser = argparse.ArgumentParser(prog="python -m woodmath.school.server", allow_abbrev=False)
    parser.add_argument("--root", type=Path, required=True)
    parser.add_argument("--page", default=START_PAGE)
    parser.add_argument("--no-browser", action="store_true")
    given, extra = parser.parse_known_args(arguments)
    # Not in the project: a memory stick or a Windows disk under WSL cannot keep files to one account.
    with tempfile.TemporaryDirectory(prefix="woodmath-", ignore_cleanup_errors=True) as runtime:
        os.environ["JUPYTER_RUNTIME_DIR"] = runtime
        browser = not given.no_browser and _a_browser_is_there()
        server = make_server(given.root, given.page, browser, extra)

        def announce() -> None:
            print(start_url(server, given.page), flush=True)

        def stop(number: int, frame: object) -> None:
            server.stop(from_signal=True)

        signal.signal(signal.SIGINT, stop)
        signal.signal(signal.SIGTERM, stop)
        server.io_loop.add_callback(announce)
        server.start()
    print("JupyterLab has stopped. What you saved is in the notebooks folder.", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
