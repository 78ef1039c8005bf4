"""SQLAlchemy models, sessions, migrations: the only place that knows the database."""

from tracker.store.unit_of_work import Store, UnitOfWork, open_store

__all__ = ["Store", "UnitOfWork", "open_store"]
