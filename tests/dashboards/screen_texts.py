"""What a screen says, as plain text."""

import re
from html import unescape
from pathlib import Path

from streamlit.testing.v1 import AppTest

import dashboards

APP = str(Path(dashboards.__file__).parent / "app.py")


def words(app: AppTest) -> str:
    """Everything that the screen says."""
    said = [*app.title, *app.header, *app.markdown, *app.caption, *app.info]
    return "\n".join([str(item.value) for item in said] + [plain(item.proto.body) for item in app.get("html")])


def plain(html: str) -> str:
    """HTML without its tags, cells apart."""
    return unescape(re.sub(r"<[^>]*>", "", html.replace("</td>", " | ").replace("</div>", " | ")))
