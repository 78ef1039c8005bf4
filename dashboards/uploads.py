"""Files that a browser sent, kept for the session in a folder of their own under their own names."""

from collections.abc import Sequence
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Protocol

import streamlit as st

ENDINGS = ["xlsx", "xlsm", "xls", "ods", "csv", "tsv", "txt"]


class Sent(Protocol):
    """A file as the uploader gives it."""

    @property
    def name(self) -> str: ...

    def getvalue(self) -> bytes: ...


def kept(files: Sequence[Sent]) -> tuple[Path, ...]:
    """The files on disk. Equal content has the same path, so what was worked out for it holds."""
    if "uploads" not in st.session_state:
        st.session_state["uploads"] = TemporaryDirectory(prefix="beamslot-")
    folder = Path(st.session_state["uploads"].name)
    return tuple(_keep(folder, file.name, file.getvalue()) for file in files)


def _keep(folder: Path, name: str, content: bytes) -> Path:
    path = folder / sha256(content).hexdigest()[:16] / Path(name.replace("\\", "/")).name
    if not path.exists():
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)
    return path
