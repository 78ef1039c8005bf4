"""The migrations in order."""
