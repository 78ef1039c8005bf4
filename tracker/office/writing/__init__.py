"""Workbooks written anew, in one look."""
