"""The surroundings in which JupyterLab runs: its own settings, apart from any other Jupyter of the user's.

A user's own configuration, a stray kernel that calls itself python3, or start-up files of IPython cannot
reach the course, and the course changes nothing of theirs.
"""

from __future__ import annotations

from pathlib import Path

from woodmath.school.installing import child_environment

LAB_SETTINGS = Path(__file__).with_name("lab_settings")


def jupyter_environment(home: Path, token: str) -> dict[str, str]:
    """The environment variables of the server and of every kernel that it starts.

    Parameters
    ----------
    home : Path
        The folder for JupyterLab's settings and data.
    token : str
        What a browser must show; kept off the command line, where every user of the machine could read it.

    Returns
    -------
    dict
        The variables.

    >>> jupyter_environment(Path("jupyter"), "secret")["JUPYTER_TOKEN"]
    'secret'
    """
    own = {
        "JUPYTER_CONFIG_DIR": home / "config",
        "JUPYTER_DATA_DIR": home / "data",
        "JUPYTERLAB_SETTINGS_DIR": home / "settings",
        "JUPYTERLAB_WORKSPACES_DIR": home / "workspaces",
        "IPYTHONDIR": home / "ipython",
    }
    kept = {
        name: value
        for name, value in child_environment().items()
        if not name.upper().startswith(("JUPYTER", "IPYTHON")) and name.upper() != "MPLBACKEND"
    }
    return (
        kept
        | {name: str(path) for name, path in own.items()}
        | {
            "JUPYTER_TOKEN": token,
            "JUPYTER_PREFER_ENV_PATH": "1",
            # The kernel need not send back what the slider has just told it.
            "JUPYTER_WIDGETS_ECHO": "0",
        }
    )
