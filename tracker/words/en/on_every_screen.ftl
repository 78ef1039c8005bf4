### What stands on every screen, or on several.

reading-the-database = Reading the database …
    .means = Said while a screen waits for its data.

table-by = Order by
    .means = Above a long table: the heading by which it is ordered.
table-by-none = as it is
    .means = A long table is left in the order that it has.
table-down = downwards
    .means = A long table is ordered the greatest first.
table-page = Page
    .means = Which part of a long table is shown.
table-rows = Rows { $first } to { $last } of { $rows }
    .means = Which rows of a long table are shown.
