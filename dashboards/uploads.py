"""Files that a browser sent, kept for the session in a folder of their own under their own names."""

from collections.abc import Sequence
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Protocol

import streamlit as st

from tracker.domain.file_names import file_name

ENDINGS = ["xlsx", "xlsm", "xls", "ods", "csv", "tsv", "txt"]


class Sent(Protocol):
    """A file as the uploader gives it."""

    @property
    def name(self) -> str: ...

    def getvalue(self) -> bytes: ...


def kept(files: Sequence[Sent]) -> tuple[Path, ...]:
    """The files on disk. Equal content has the same path, so what was worked out for it holds."""
    return tuple(_keep(_folder(), file.name, file.getvalue()) for file in files)


def _folder() -> Path:
    if "uploads" not in st.session_state:
        st.session_state["uploads"] = TemporaryDirectory(prefix="beamslot-")
    return Path(st.session_state["uploads"].name)


def _keep(folder: Path, name: str, content: bytes) -> Path:
    path = folder / sha256(content).hexdigest()[:16] / _plain(name)
    if not path.exists():
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)
    return path


def _plain(name: str) -> str:
    """The name as the person sees it everywhere: `our list.xlsx` of a path, of direction marks within, of 300 characters."""
    sent = Path(name.replace("\\", "/"))
    return f"{file_name(sent.stem, 'file')}.{file_name(sent.suffix, ENDINGS[0])}"
