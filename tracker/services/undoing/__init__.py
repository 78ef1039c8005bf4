"""Undoing: what was loaded or recorded is taken back by a recorded change of its own."""
