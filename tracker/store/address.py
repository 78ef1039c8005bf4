"""The address of a database as the user gave it: read, and shown without its password."""

import re
from pathlib import Path

from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError

from tracker.errors import DataError

EXAMPLE = "postgresql+psycopg://NAME@HOST/DATABASE"
_USER_PASSWORD = re.compile(r"(://[^:/@]*:).*(@)", re.DOTALL)
_QUERY_PASSWORD = re.compile(r"((?:password|passwd|pwd)=)[^&]*", re.IGNORECASE)


def url_of(database: str | Path) -> URL:
    """A SQLAlchemy URL, or that of the path of an SQLite file. DataError where it is neither."""
    text = str(database)
    if not text.strip():
        raise DataError("database-not-named")
    if "://" not in text:
        return URL.create("sqlite", database=text)
    try:
        url = make_url(text)
    except (ArgumentError, ValueError):
        raise DataError("database-address", address=shown(text), example=EXAMPLE) from None
    if "@" in (url.host or ""):  # the rest of the password would be taken for a part of the host, and told
        raise DataError("database-address-at", address=shown(text))
    return url


def shown(database: str | Path) -> str:
    """The address for a person: a password in it is `***`."""
    return _QUERY_PASSWORD.sub(r"\1***", _USER_PASSWORD.sub(r"\1***\2", str(database)))
