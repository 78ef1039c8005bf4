### What several screens show of a rehearsal.

rehearsal-kept = the plan, kept
    .means = A way to run the hall: the published plan as it stands.
rehearsal-replanned = the plan, made anew each Monday
    .means = A way to run the hall: the planner plans anew each Monday from what is known by then.
rehearsal-never-cut = the plan, no warp ever cut
    .means = A way to run the hall.
rehearsal-rule-of-thumb = no plan, beam-outs as they come
    .means = A way to run the hall.
rehearsal-cost-row = cost
    .means = A row: cost from P10 to P90.
rehearsal-done-by = { $looms ->
        [one] { $looms } loom done by
       *[other] { $looms } looms done by
    }
    .means = A row: days from P10 to P90.
rehearsal-sure = sure
    .means = What something is worth is settled.
rehearsal-not-settled = not settled; about { $runs ->
        [one] { $runs } run more would
       *[other] { $runs } runs more would
    }
    .means = What something is worth is not settled, and how many runs would settle it.
rehearsal-p50-says = P50 { MONEY($cost, $currency) }
    .means = Beside a line of a chart.
rehearsal-promise = Promise no sooner than
    .means = Heading of a figure: a day.
rehearsal-promise-more = { $looms ->
        [one] { $looms } loom
       *[other] { $looms } looms
    }, in 80 of 100 runs; { $half } in half of them
    .means = Below that figure.
rehearsal-never = never
    .means = A day that does not come in enough runs.
rehearsal-most-done = Done before the horizon
    .means = Heading of a figure: looms.
rehearsal-some-of = { $some } of { $all }
    .means = So many looms of all that are to do.
rehearsal-at-least = at least, in 80 of 100 runs
    .means = Below that figure.
rehearsal-cost-p50 = Cost, P50
    .means = Heading of a figure.
rehearsal-cost-range = { MONEY($low) } to { MONEY($high) } in 80 of 100 runs
    .means = Below that figure.
rehearsal-plan-says = The plan says
    .means = Heading of a figure: the cost by the plan itself.
rehearsal-all-by = all by { $day }
    .means = Below that figure.
