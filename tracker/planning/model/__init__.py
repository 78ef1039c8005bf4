"""The problem as arrays: clocks, pools, contents, windows, options, their costs, and the rows that limit them."""
