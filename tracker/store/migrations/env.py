"""Alembic environment: runs on the connection that `tracker.store.migrate` hands over."""

from alembic import context

from tracker.store import models  # noqa: F401
from tracker.store.base import Base

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=Base.metadata,
    render_as_batch=True,
    compare_type=True,
    user_module_prefix="tracker.store.base.",
)
with context.begin_transaction():
    context.run_migrations()
