"""Workbooks and text tables as files: guard, open, walk, write, patch. Knows nothing of looms."""
