### What axes, bars, lines and tips of the charts say.

chart-stage = stage
    .means = Title of an axis and of a tip: stages of looms.
chart-looms = looms
    .means = Title of an axis and of a tip: how many looms.
chart-iso-week = ISO week
    .means = Title of an axis and of a tip.
chart-looms-converted = looms converted
    .means = Title of an axis.
chart-planned = planned
    .means = Bars and lines of what is planned.
chart-done = done
    .means = A line of what is done.
chart-expected = expected
    .means = Bars and lines of what is expected.
chart-in-week = in the week
    .means = Title of a tip.
chart-up-to-end = up to its end
    .means = Title of a tip: the sum up to the end of the week.
chart-cost = cost
    .means = Title of an axis and of a tip.
chart-cost-in = cost ({ $currency })
    .means = Title of an axis, with its currency.
chart-amount = amount
    .means = Title of a tip.
chart-amount-in = amount ({ $currency })
    .means = Title of a tip, with its currency.
chart-month = month
    .means = Title of an axis and of a tip.
chart-money = money
    .means = Title of a tip.
chart-money-in = money ({ $currency })
    .means = Title of an axis, with its currency.
chart-on-order = on order
    .means = Money of what is ordered.
chart-still-to-order = still to order
    .means = Money of what is not ordered yet.
chart-needed = needed by bookings
    .means = Title of a tip: a part's quantity.
chart-needed-left-over = by looms left over
    .means = Title of a tip: a part's quantity.
chart-stock-at-end = stock at the end
    .means = Title of a tip: of the week.
chart-to-order = to order
    .means = Title of a tip.
chart-needed-in-stock = needed, in stock{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }
    .means = Title of an axis, with its unit.
chart-plan = plan
    .means = Title of an axis and of a tip.
chart-left-over = looms left over
    .means = What it costs to leave looms over.
chart-played = played
    .means = Title of an axis and of a tip: the ways a plan was played.
chart-loom = loom
    .means = Title of a tip.
chart-machine-type = machine type
    .means = Title of a tip.
chart-window = window
    .means = Title of a tip.
chart-conversion = conversion
    .means = Title of a tip: from when to when.
chart-beam-out = beam-out P10 to P90
    .means = Title of a tip.
chart-work = work
    .means = Title of a tip.
chart-new-warp = { $span }, new warp { $pause }
    .means = A conversion in two parts: the warp comes in between.
chart-person-hours = person-hours
    .means = The unit of work.

## What a plan's cost consists of

term-lost-production = lost production
    .means = The loom stands where it would have woven.
term-late-beam-outs = late beam-outs
    .means = The beam comes later than the crew.
term-labour = labour
    .means = Hours of people.
term-parts = parts
    .means = Parts that are used.
term-saving-foregone = saving foregone
    .means = What an earlier conversion would have saved.
term-moved-bookings = moved bookings
    .means = The price of moving what was published.
term-surviving = so that it survives (only reckoned)
    .means = What the term `no second chance` reckons.

## What sets a booking apart

mark-firm = firm
    .means = A booking inside the firm period.
mark-pilot = pilot
    .means = The first of its type.
mark-kept = kept
    .means = A booking that the planner keeps where it is.

## What the shapes and lines of the time axis mean

legend-warp-between = the warp comes in between
    .means = A hollow stretch of a bar.
legend-beam-out = beam-out by today's forecast: P10, P50, P90
    .means = A line with three strokes.
legend-nobody = nobody converts
    .means = Shaded time.
legend-now = now
    .means = A broken line.
