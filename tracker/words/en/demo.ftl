### The demo: what it does, and what it says at its end.

demo-reading = reading the workbooks
    .means = What the demo is doing now.
demo-forecasting = forecasting the beam-outs
    .means = What the demo is doing now.
demo-playing = living through six weeks
    .means = What the demo is doing now.
demo-writing = writing the workbooks
    .means = What the demo is doing now.
demo-read = Read { NUMBER($rows, useGrouping: 0) } rows in { $tables } tables of { $workbooks } workbooks; { $findings ->
        [one] 1 finding
       *[other] { $findings } findings
    }, none refused.
    .means = What the demo loaded.
demo-scoped = Scoped { $looms } looms; { $survey } must be looked at in the hall first.
    .means = What the demo scoped.
demo-booked = Booked { $many } conversions from { $first } to { $last }; { $left_over ->
        [one] 1 loom is
       *[other] { $left_over } looms are
    } left over.
    .means = What the demo's plan books.
demo-proof = Proof: { $status }; cost { MONEY($cost, $currency) }, no plan can cost less than { MONEY($bound, $currency) } (gap { NUMBER($gap, style: "percent", minimumFractionDigits: 3, maximumFractionDigits: 3) }); found in { NUMBER($seconds, minimumFractionDigits: 1, maximumFractionDigits: 1) } s.
    .means = How good the demo's plan is known to be.
demo-weeks = Six weeks on, { $now }: { $signed_off } looms signed off, { $run_in } running in, { $in_work } in work, { $stopped } stopped; { NUMBER($rows, useGrouping: 0) } rows of records and readings loaded. Planned again:
    .means = What the demo's programme did in its six weeks.
demo-there = The demo is in { $database } already and stands at { $now }; nothing was loaded or planned again.
    .means = The demo was run a second time in one folder.
demo-wrote = Wrote { $files }; the database is { $database }.
    .means = Where the demo's files are.
    .terminal = Next: beamslot --db { $database } status, or serve to see it in a browser.
