"""One screen each: filters, one service call, an empty state, charts and tables."""
