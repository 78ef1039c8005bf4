"""SQLAlchemy models, sessions, migrations: the only place that knows the database."""

from tracker.store.opening import Store, open_store
from tracker.store.unit_of_work import UnitOfWork

__all__ = ["Store", "UnitOfWork", "open_store"]
