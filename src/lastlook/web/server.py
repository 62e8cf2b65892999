"""The screens on this machine alone: a port taken, the address told, the server run until it is stopped."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable

import uvicorn

from lastlook.web.app import make
from lastlook.web.room import Room

ADDRESS = "127.0.0.1"
USUAL_PORT = 8651
"""86.51: nothing else is known to live there; where it is taken, any free port is used."""


def serve(room: Room, port: int | None, ready: Callable[[str], None]) -> None:
    """Serve the screens until they are stopped; `ready` is told the address once it answers."""
    with _taken(port) as place:
        address = f"http://{ADDRESS}:{place.getsockname()[1]}/"
        config = uvicorn.Config(
            make(room, lambda: ready(address)), log_level="warning", server_header=False, timeout_graceful_shutdown=2
        )
        uvicorn.Server(config).run(sockets=[place])


def _taken(port: int | None) -> socket.socket:
    """Take the port asked for, or the usual one, or any."""
    for wanted in (port,) if port is not None else (USUAL_PORT, 0):
        place = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name == "posix":
            place.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            place.bind((ADDRESS, wanted))
        except OSError:
            place.close()
            continue
        # Whoever is told the address may ask at once: until the server accepts, the asking waits in line.
        place.listen()
        return place
    raise PermissionError(f"Port {port} is in use.")
