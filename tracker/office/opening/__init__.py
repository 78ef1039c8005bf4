"""A file as sheets of cleaned values."""
