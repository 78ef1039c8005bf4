"""Workbooks in and out: read, ask, mark, write; where a value came from; what the database holds, exported."""
