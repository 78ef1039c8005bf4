"""Writing a file whole or not at all."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tracker.errors import TrackerError, UsageError


@contextmanager
def written(target: str | Path, *suffixes: str) -> Iterator[Path]:
    """A temporary path beside the target, which takes the target's place once the block ends without error.

    Raises UsageError where the target's ending is none of `suffixes`, TrackerError where it cannot be written.
    """
    target = Path(target)
    if target.suffix.lower() not in suffixes:
        raise UsageError(f"{target}: the name must end in {' or '.join(suffixes)}")
    if target.is_dir():
        raise TrackerError(f"cannot write {target}: it is a folder")
    try:
        handle, name = tempfile.mkstemp(prefix=".", suffix=target.suffix, dir=target.parent)
    except OSError as error:
        raise TrackerError(f"cannot write {target}: {(error.strerror or str(error)).lower()}") from error
    os.close(handle)
    draft = Path(name)
    try:
        yield draft
        draft.chmod(0o666 & ~_umask())
        os.replace(draft, target)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise TrackerError(f"cannot write {target}: {reason}; is it open in another programme?") from error
    finally:
        draft.unlink(missing_ok=True)


def _umask() -> int:
    """The process's mask for new files, which `mkstemp` passes over."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
