"""The course's JupyterLab: how it is started, how it ends, and that small packets leave it at once."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from woodmath.school.commands import wait_for
from woodmath.school.environment import work_to_do
from woodmath.school.jupyter_home import LAB_SETTINGS, jupyter_environment
from woodmath.school.pins import Pins
from woodmath.school.places import Places
from woodmath.school.server import START_PAGE, settings
from woodmath.school.websocket import connection_class, prompt

needs_terminal = pytest.mark.skipif(
    os.name == "nt", reason="only on Linux and macOS: Ctrl-C as a terminal sends it"
)

# Runs a server, opens a kernel's websocket in it, and prints whether the server's end has no-delay set.
OPEN_SOCKET = """
import json, os, socket, sys
from pathlib import Path
from tornado.httpclient import AsyncHTTPClient, HTTPRequest
from tornado.websocket import websocket_connect
from woodmath.school import server

if "broken" in sys.argv:
    from jupyter_server.services.kernels.websocket import KernelWebsocketHandler

    def broken(self, value):
        raise AttributeError("no such setting")

    KernelWebsocketHandler.set_nodelay = broken
if "missing" in sys.argv:
    server.connection_class = lambda: None

app = server.make_server(Path(sys.argv[1]), "a.ipynb", browser=False)

async def look():
    try:
        token = {"Authorization": "token " + os.environ["JUPYTER_TOKEN"]}
        address = f"127.0.0.1:{app.port}/api/kernels"
        made = await AsyncHTTPClient().fetch(
            HTTPRequest(f"http://{address}", "POST", headers=token, body="{}", request_timeout=60)
        )
        kernel = json.loads(made.body)["id"]
        link = await websocket_connect(HTTPRequest(f"ws://{address}/{kernel}/channels", headers=token))
        await link.write_message(json.dumps({
            "header": {"msg_id": "1", "msg_type": "kernel_info_request", "session": "s", "username": "", "date": "",
                       "version": "5.3"},
            "parent_header": {}, "metadata": {}, "content": {}, "channel": "shell", "buffers": []}))
        while json.loads(await link.read_message())["msg_type"] != "kernel_info_reply":
            pass
        connection, = app.kernel_websocket_connection_class._open_sockets
        stream = connection.websocket_handler.ws_connection.stream
        print("no-delay:", bool(stream.socket.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY)), flush=True)
    finally:
        app.stop()

app.io_loop.add_callback(look)
app.start()
"""


def no_delay(tmp_path: Path, variant: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", OPEN_SOCKET, str(tmp_path), variant],
        cwd=Places.here().project,
        env=jupyter_environment(tmp_path / "jupyter", "secret"),
        capture_output=True,
        encoding="utf-8",
        timeout=120,
    )


def test_an_open_kernel_connection_sends_small_packets_at_once(tmp_path: Path) -> None:
    run = no_delay(tmp_path, "ours")
    assert run.stdout.strip() == "no-delay: True", run.stderr


@pytest.mark.parametrize("variant", ["broken", "missing"])
def test_where_no_delay_cannot_be_set_the_kernel_answers_all_the_same(tmp_path: Path, variant: str) -> None:
    run = no_delay(tmp_path, variant)
    assert run.stdout.strip() == "no-delay: False", run.stderr
    assert "Traceback" not in run.stderr


def test_a_server_without_the_known_connection_class_keeps_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "jupyter_server.services.kernels.connection.channels", None)
    assert connection_class() is None


def test_the_prompt_connection_is_the_stock_one_and_nothing_else() -> None:
    calls: list[bool] = []

    class Handler:
        def set_nodelay(self, value: bool) -> None:
            calls.append(value)

    class Stock:
        websocket_handler = Handler()

        def connect(self) -> str:
            return "connected"

    assert prompt(Stock)().connect() == "connected"
    assert calls == [True]
    assert issubclass(prompt(Stock), Stock)


def test_the_server_is_for_this_machine_alone_and_keeps_its_token_off_the_command_line(
    tmp_path: Path,
) -> None:
    options = settings(tmp_path, START_PAGE, browser=True)
    assert "--ServerApp.ip=127.0.0.1" in options
    assert "--LabApp.default_url=/lab/tree/notebooks/00-start-here.ipynb" in options
    assert not any("token" in option or "root=True" in option for option in options)
    assert jupyter_environment(tmp_path, "secret")["JUPYTER_TOKEN"] == "secret"


def test_the_users_own_jupyter_cannot_reach_the_course(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("JUPYTER_PATH", "JUPYTER_CONFIG_PATH", "JUPYTERLAB_DIR", "PYTHONPATH", "MPLBACKEND"):
        monkeypatch.setenv(name, str(tmp_path / "theirs"))
    monkeypatch.setenv("JUPYTER_CONFIG_DIR", str(tmp_path / "theirs"))
    monkeypatch.setenv("IPYTHONDIR", str(tmp_path / "theirs"))
    surroundings = jupyter_environment(tmp_path / "ours", "secret")
    assert not any(str(tmp_path / "theirs") == value for value in surroundings.values())
    assert surroundings["JUPYTER_WIDGETS_ECHO"] == "0"


def test_lab_settings_silence_the_news_and_lay_out_every_cell() -> None:
    overrides = json.loads((LAB_SETTINGS / "overrides.json").read_text(encoding="utf-8"))
    assert overrides["@jupyterlab/apputils-extension:notification"] == {
        "fetchNews": "false",
        "checkForUpdates": False,
    }
    assert overrides["@jupyterlab/notebook-extension:tracker"]["windowingMode"] == "none"


def test_every_setting_that_we_override_exists_in_the_installed_jupyterlab() -> None:
    schemas = Path(sys.prefix) / "share" / "jupyter" / "lab" / "schemas"
    overrides = json.loads((LAB_SETTINGS / "overrides.json").read_text(encoding="utf-8"))
    for plugin, values in overrides.items():
        package, _, name = plugin.partition(":")
        known = json.loads((schemas / package / f"{name}.json").read_text(encoding="utf-8"))["properties"]
        assert set(values) <= set(known)


@needs_terminal
def test_ctrl_c_ends_the_server_with_one_sentence_and_no_question(tmp_path: Path) -> None:
    import pty

    command = [sys.executable, "-m", "woodmath.school.server", "--root", str(tmp_path), "--no-browser"]
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(Places.here().project)
        os.execve(command[0], command, jupyter_environment(tmp_path / "jupyter", "secret"))
    said = b""
    pressed = False
    while True:
        try:
            heard = os.read(terminal, 4096)
        except OSError:
            break
        if not heard:
            break
        said += heard
        if not pressed and b"token=secret" in said:
            pressed = True
            os.write(terminal, b"\x03")
    os.close(terminal)
    _, status = os.waitpid(child, 0)
    assert os.waitstatus_to_exitcode(status) == 0
    address, ending, *rest = said.decode().replace("^C", "").split("\r\n")
    assert address.startswith("http://127.0.0.1:") and address.endswith("?token=secret")
    assert ending == "JupyterLab has stopped. What you saved is in the notebooks folder."
    assert "".join(rest) == ""


def test_where_no_program_can_take_anothers_place_its_end_is_waited_for() -> None:
    assert wait_for([sys.executable, "-c", "raise SystemExit(3)"], dict(os.environ)) == 3


@needs_terminal
def test_a_second_open_takes_under_two_seconds_of_its_own() -> None:
    places = Places.here()
    if work_to_do(places, Pins.of(places), "pages"):
        pytest.skip("the course is not set up in this folder: python3 -m woodmath test")
    began = time.perf_counter()
    with subprocess.Popen(
        [sys.executable, "-m", "woodmath", "open", "--no-browser"],
        cwd=places.project,
        stdout=subprocess.PIPE,
        encoding="utf-8",
    ) as course:
        assert course.stdout is not None
        first = course.stdout.readline()
        own = time.perf_counter() - began
        course.terminate()
        course.communicate()
    assert first.startswith("JupyterLab starts.")
    assert own < 2.0
