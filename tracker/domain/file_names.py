"""Names of files that another person gives, or that come from the mill's own words."""

import re
import unicodedata

NEVER = re.compile(r'[\\/:*?"<>|]')
"""Characters that a file name cannot hold on every system (Naming Files, Paths, and Namespaces, Win32)."""
UNSEEN = ("Cc", "Zl", "Zp")
HIDDEN = ("Cf", "Cs")
"""Unicode categories of characters that show nothing; direction marks among them, which make `exe.xlsx` of `xslx.exe`."""
LONGEST = 80


def file_name(text: str, otherwise: str) -> str:
    """The text as (part of) a file name that shows what it is: no control character, no direction mark, nothing that a
    system forbids, at most 80 characters; `otherwise` where nothing is left."""
    seen = "".join(_seen(char) for char in NEVER.sub(" ", text))
    return re.sub(" +", " ", seen).strip(" .")[:LONGEST].rstrip(" .") or otherwise


def _seen(char: str) -> str:
    category = unicodedata.category(char)
    return "" if category in HIDDEN else " " if category in UNSEEN else char
