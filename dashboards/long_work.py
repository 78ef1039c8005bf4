"""Work that goes on while its screen is left and looked at again: one at a time for each database, seen and stopped by
whoever looks."""

import traceback
from collections.abc import Callable
from threading import Event, Lock, Thread

from dashboards.speaking import SPEAKER
from tracker.errors import TrackerError

Progress = Callable[[str, float], None]
Stop = Callable[[], bool]
Do = Callable[[Progress, Stop], str]
"""Does it, and gives the line that is said once it is done."""

_GOING: dict[str, "LongWork"] = {}
_LOCK = Lock()


class LongWork:
    """What is being done, how far it is, and in the end what is to be said of it."""

    def __init__(self, do: Do):
        self.at, self.fraction = "it begins", 0.0
        self.says, self.failed = "", False
        self._stop = Event()
        self._thread = Thread(target=self._run, args=(do,), daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """Ask for its end; what is done is kept."""
        self._stop.set()

    @property
    def stopping(self) -> bool:
        return self._stop.is_set()

    @property
    def done(self) -> bool:
        return not self._thread.is_alive()

    def wait(self) -> None:
        """Until it is done."""
        self._thread.join()

    def _run(self, do: Do) -> None:
        try:
            self.says = do(self._tell, self._stop.is_set)
        except TrackerError as error:
            self.says, self.failed = SPEAKER.line(error), True
        except Exception as error:
            traceback.print_exc()
            self.says, self.failed = f"It failed ({type(error).__name__}); nothing was kept.", True

    def _tell(self, text: str, fraction: float) -> None:
        self.at, self.fraction = text, min(1.0, max(0.0, fraction))


def begin(database: str, do: Do) -> LongWork:
    """Begin it, unless something goes on for this database already: then that goes on alone."""
    with _LOCK:
        if database not in _GOING:
            _GOING[database] = LongWork(do)
        return _GOING[database]


def going(database: str) -> LongWork | None:
    return _GOING.get(database)


def forget(database: str) -> None:
    """Once what it says has been said."""
    with _LOCK:
        _GOING.pop(database, None)
