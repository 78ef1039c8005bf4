"""SQLAlchemy models, sessions, migrations: the only place that knows the database."""
