"""Spreadsheet → recognised tables → typed rows and findings → changes."""
