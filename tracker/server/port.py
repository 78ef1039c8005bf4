"""The port that the screens are served on."""

import os
import socket

from tracker.errors import TrackerError, UsageError

ADDRESS = "127.0.0.1"


def bound(port: int, address: str = ADDRESS) -> socket.socket:
    """A socket that holds the port, so that nobody can take it before the screens answer. TrackerError where it is taken."""
    if not 0 < port < 65536:
        raise UsageError("port-impossible", port=str(port))
    try:
        return _bound(port, address)
    except PermissionError:
        raise TrackerError("port-denied", port=str(port), address=address) from None
    except OSError:
        other = port + 1 if port < 65535 else port - 1
        raise TrackerError("port-taken", port=str(port), address=address, other=str(other)) from None


def is_free(port: int) -> bool:
    try:
        _bound(port, ADDRESS).close()
    except (OSError, OverflowError):
        return False
    return True


def _bound(port: int, address: str) -> socket.socket:
    made = socket.socket()
    try:
        if os.name == "posix":  # a port that was just left is free; elsewhere the option shares it with who holds it
            made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        made.bind((address, port))
    except BaseException:
        made.close()
        raise
    return made
