"""Headings, units and other words of a sheet in eight languages, as data."""
