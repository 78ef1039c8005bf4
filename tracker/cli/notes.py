"""What the user should know beside the answer, such as a database on a network drive: told once, on standard error."""

import logging

from tracker.cli import show


class Notes(logging.Handler):
    def __init__(self) -> None:
        super().__init__()
        self.told: set[str] = set()

    def emit(self, record: logging.LogRecord) -> None:
        text = record.getMessage()
        if text not in self.told:
            self.told.add(text)
            show.err.print(f"Note: {text}", soft_wrap=True, markup=False)


def tell() -> None:
    """From here on what the library logs is told."""
    logging.getLogger("tracker").handlers = [Notes()]
