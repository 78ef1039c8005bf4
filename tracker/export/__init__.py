"""Workbooks, PDF and other files that leave the house."""
