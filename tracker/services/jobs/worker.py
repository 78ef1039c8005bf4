"""The process of a job: takes its work, tells how far it is, and hands over what came of it."""

import signal
import traceback
from enum import Enum, auto
from multiprocessing.connection import Connection
from threading import Event

from tracker.errors import Message, TrackerError
from tracker.services.apart import settle_in


class Said(Enum):
    """What a worker says, each with one value."""

    AT = auto()
    """(message, fraction)"""
    FOUND = auto()
    """What `Work.run` gave."""
    REFUSED = auto()
    """The message of why it cannot be done."""
    FAILED = auto()
    """The name of the fault, which stands in the server's log."""


def do(line: Connection) -> None:
    """All that such a process does. JobWork comes by the line; whatever comes after it, or a signal to end, asks for the end with
    the best so far."""
    settle_in()
    ended = Event()
    signal.signal(signal.SIGTERM, lambda *_: ended.set())
    work = line.recv()

    def tell(what: Message, fraction: float) -> None:
        line.send((Said.AT, (what, min(1.0, max(0.0, fraction)))))

    try:
        said = Said.FOUND, work.run(tell, lambda: ended.is_set() or line.poll())
    except TrackerError as error:
        said = Said.REFUSED, error.message
    except Exception as error:
        traceback.print_exc()
        said = Said.FAILED, type(error).__name__
    line.send(said)
