"""Typed rows from columns, and what they would change."""
