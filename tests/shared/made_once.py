"""Databases that many tests begin with: each is written once in a process and copied for every further test."""

import pickle
import shutil
import tempfile
from collections.abc import Callable
from functools import wraps
from pathlib import Path
from typing import Any

Make = Callable[..., str]


def made_once(make: Make) -> Make:
    """For a function that writes a database at a path and gives the path. Called again with equal values for a file that is
    not there yet, it copies what it wrote the first time; a database on a server is written each time."""
    written: dict[bytes, Path] = {}
    folder = tempfile.TemporaryDirectory(prefix="made_once_")

    @wraps(make)
    def copied(db: str | Path, *values: Any, **named: Any) -> str:
        if "://" in str(db) or Path(db).exists():
            return make(db, *values, **named)
        asked = pickle.dumps((values, named))
        if asked not in written:
            written[asked] = Path(folder.name) / f"{len(written)}.db"
            make(str(written[asked]), *values, **named)
        shutil.copyfile(written[asked], db)
        return str(db)

    return copied
