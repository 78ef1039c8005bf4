"""One screen each: filters, one service call, an empty state, charts and tables.

The folder is not called `pages`: the screen library takes a folder of that name for itself and would run a file of it
in place of the app where a link leads straight to a screen.
"""
