"""One dialect for all databases of a kind: what SQLAlchemy has worked out for a statement holds for a dialect, and thousands of
tests begin with a database of their own (a third of the time of a test with several short readings)."""

from functools import lru_cache

from sqlalchemy import URL, Engine, Pool
from sqlalchemy.engine import Dialect
from sqlalchemy.util import LRUCache

from tracker.store import connecting

_make = connecting._engine
_dialects: dict[str, Dialect] = {}
_statements = LRUCache(5000)


def engine(url: URL, pool: type[Pool]) -> Engine:
    """As `tracker.store.connecting` makes it."""
    made = _make(url, pool)
    known = _dialects.get(made.dialect.name)
    if known and known.server_version_info:  # it was connected
        made.dialect = known
    else:
        _dialects[made.dialect.name] = made.dialect
    made.update_execution_options(compiled_cache=_statements)
    return made


def share() -> None:
    connecting._engine = engine
    connecting._kept = lru_cache(maxsize=64)(engine)
