"""The few errors that a user meets. Each message is one line that names the thing, the value and what to do."""


class TrackerError(Exception):
    """Something the user can mend; the command prints the message and ends with 1."""


class UsageError(TrackerError):
    """The command or call was put wrongly; the command ends with 2."""


class DataError(TrackerError):
    """The stored data cannot carry what was asked: an unknown loom, an article without pick density, no crew."""


class InputRefused(TrackerError):
    """A file was refused as a whole or in part; nothing was written. `findings` says why, cell by cell."""

    def __init__(self, message: str, findings: tuple = ()):
        super().__init__(message)
        self.findings = findings


class PlanRefused(TrackerError):
    """A plan that the solver-free check rejects, or none within the limits; the message says which limit to lift."""
