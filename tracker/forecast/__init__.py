"""Beam-out distributions. Pure."""
