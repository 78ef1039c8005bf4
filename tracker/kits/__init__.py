"""Needs, netting, reservations. Pure."""
