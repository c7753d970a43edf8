"""The browser's end of the wire, for tests without a browser: what the kernel sends, and what a reader does."""

from __future__ import annotations

from typing import Any

import comm
import pytest
from comm.base_comm import BaseComm
from ipywidgets import Widget


class Wire(BaseComm):
    """The line between one widget and its picture in the page."""

    def __init__(self, front_end: FrontEnd, **arguments: Any) -> None:
        self.front_end = front_end
        super().__init__(**arguments)

    def publish_msg(
        self,
        msg_type: str,
        data: dict[str, Any] | None = None,
        metadata: dict[str, Any] | None = None,
        buffers: list[bytes] | None = None,
        **keys: Any,
    ) -> None:
        self.front_end.takes(self.comm_id, msg_type, data or {})


class FrontEnd:
    """A page that shows nothing, and remembers.

    Attributes
    ----------
    shown : set of str
        The ids of the widgets that are open in it.
    sent : list of (str, dict)
        What the kernel changed since `forget`: the widget's id, and the values by name.
    """

    def __init__(self) -> None:
        self.shown: set[str] = set()
        self.sent: list[tuple[str, dict[str, Any]]] = []

    @classmethod
    def joined(cls, monkeypatch: pytest.MonkeyPatch) -> FrontEnd:
        """Return a page that every widget made from now on is open in."""
        front_end = cls()
        monkeypatch.setattr(comm, "create_comm", lambda **arguments: Wire(front_end, **arguments))
        return front_end

    def takes(self, widget: str, kind: str, data: dict[str, Any]) -> None:
        """Take a message of the kernel."""
        if kind == "comm_open":
            self.shown.add(widget)
        elif kind == "comm_close":
            self.shown.discard(widget)
        elif data["method"] == "update":
            self.sent.append((widget, data["state"]))

    def forget(self) -> None:
        """Forget what was sent."""
        self.sent.clear()

    def sets(self, widget: Widget, value: Any) -> None:
        """Set a widget's value as a reader does, who moves a slider or types and presses Enter."""
        # By way of a message an error of ours would only be logged.
        widget.set_state({"index" if "index" in widget.keys else "value": value})

    def presses(self, button: Widget) -> None:
        """Press a button."""
        button.comm.handle_msg({"content": {"data": _CLICK}, "buffers": []})


_CLICK = {"method": "custom", "content": {"event": "click"}}
