"""Kernel messages that leave at once: without this, small packets are held back for about 40 ms."""

from __future__ import annotations

from contextlib import suppress
from typing import Any


def prompt(stock: Any) -> Any:
    """Make a kernel connection that sends small packets at once from one that holds them back.

    Parameters
    ----------
    stock : class
        The server's own connection class, with `connect` and `websocket_handler`.

    Returns
    -------
    class
        A subclass; where the socket knows no such setting it behaves as `stock` does.

    >>> class Stock:
    ...     websocket_handler = None
    ...     def connect(self):
    ...         return "connected"
    >>> prompt(Stock)().connect()
    'connected'
    """

    class PromptConnection(stock):  # type: ignore[misc]
        """The server's own connection, with no-delay set on its socket."""

        def connect(self) -> Any:
            """Set no-delay, then connect."""
            # A lag of 40 ms is no reason to go without a kernel.
            with suppress(Exception):
                self.websocket_handler.set_nodelay(True)
            return super().connect()

    return PromptConnection


def connection_class() -> Any:
    """The prompt connection for the server that is installed; None when it has no class of the known name."""
    try:
        from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection
    except ImportError:
        return None
    return prompt(ZMQChannelsWebsocketConnection)
