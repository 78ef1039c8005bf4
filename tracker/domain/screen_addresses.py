"""Where a screen lies, for what leads to it from outside: a square code, a calendar."""

from urllib.parse import urlencode

from tracker.domain.mill import LoomKey


def loom_screen(address: str, key: LoomKey) -> str:
    """The loom's screen, below the address of the screens."""
    return f"{address.rstrip('/')}/looms?{urlencode({'loom': key.loom, 'hall': key.hall})}"
