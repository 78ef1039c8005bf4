"""Somebody's own workbook changed in a few places, every other byte left as it is."""
