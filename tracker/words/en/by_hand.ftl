### Rows that are typed in on a screen.

typed-lacks = { $heading } is empty
    .means = A row that was typed in lacks a value that it needs.
    .hint = give { $possible }
typed-impossible = { $heading } '{ $given }' is not possible
    .means = A value that was typed in does not fit its column.
    .hint = give { $possible }
typed-row = { $row }: { $what }
    .means = A row that was typed in is refused.
typed-refused = { $rows ->
        [one] 1 row does not fit
       *[other] { $rows } rows do not fit
    }; nothing was written
    .means = Rows that were typed in are refused; each is named beside it.
    .hint = mend or empty what is named
row-gone = { $sheet } has no row { $row } any more
    .means = A row that was to be taken out is gone already.
cannot-take-out = rows of { $sheet } are not taken out
    .means = A program asked to take out rows that are history or never end.
told-without-forecast = loom { $loom } cannot be forecast, so no beam-out can be told: { $why }
    .means = A beam-out was told of a loom without a reading or with an impossible value.
    .hint = enter a reading of its warp first
told-too-late = the { NUMBER($left, maximumFractionDigits: 0) } m on loom { $loom } do not last until { $at }, unless it stands
    .means = A beam-out was told so late that the loom would have to stand.
    .hint = enter the time in which it stands, or a reading if a new warp is on
