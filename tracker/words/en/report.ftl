### The manager's report of a week, on one page.

week-not-begun = week { $week } begins on { $first } and has not begun yet
    .means = A report was asked for of a week that is still to come.
report-week = Week { $week }: { $first } to { $last }{ $over ->
        [yes] {""}
       *[no] , as of { $at }
    }
    .means = Of the manager's report of a week.
report-done = Signed off
    .means = Of the manager's report of a week.
report-done-week = { $done } in this week, planned { $planned }
    .means = Of the manager's report of a week.
report-finish = Finish as planned
    .means = Of the manager's report of a week.
report-pace = At the pace of four weeks
    .means = Of the manager's report of a week.
report-spent = Parts and labour
    .means = Of the manager's report of a week.
report-spent-more = planned { $planned }; { $week } in this week
    .means = Of the manager's report of a week.
report-on-order = On order
    .means = Of the manager's report of a week.
report-on-order-past = not kept of a week that is over
    .means = Of the manager's report of a week.
report-on-order-all = with what is spent { $both }
    .means = Of the manager's report of a week.
report-saved = Saved a month
    .means = Of the manager's report of a week.
report-progress = Looms signed off by the end of each week
    .means = Of the manager's report of a week.
report-months = By month ({ $currency })
    .means = Of the manager's report of a week.
report-planned = Planned
    .means = Of the manager's report of a week.
report-so-far = Spent
    .means = Of the manager's report of a week.
report-open = On order
    .means = Of the manager's report of a week.
report-line-planned = planned
    .means = Of the manager's report of a week.
report-line-done = done
    .means = Of the manager's report of a week.
report-line-expected = expected
    .means = Of the manager's report of a week.
report-late = Late
    .means = Of the manager's report of a week.
report-risks = At risk in the next fortnight
    .means = Of the manager's report of a week.
report-none = Nothing is known.
    .means = Of the manager's report of a week.
report-missed = Planned for this week and not signed off
    .means = Of the manager's report of a week.
report-missed-none = Nothing that was to be done in this week by then is open.
    .means = Of the manager's report of a week.
report-missed-loom = { $loom }, to be done { $end }{ $stage ->
        [none] {""}
       *[other] {" "}({ $stage })
    }
    .means = Of the manager's report of a week.
report-and-more = and { $more } more
    .means = Of the manager's report of a week.
report-made = Made on { $at }; plan { $plan }. History up to then is sealed by
    .means = Of the manager's report of a week.
report-no-history = no seal yet
    .means = Of the manager's report of a week.
