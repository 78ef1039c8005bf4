### Sheets and papers for a person to read: their names, headings, hints and sentences.

## Names of sheets and of files

book-plan = Plan
    .means = Name of a sheet or a file.
book-bookings = Bookings
    .means = Name of a sheet or a file.
book-crew = Crew { $crew }
    .means = Name of a sheet or a file.
book-days = Days { $trade }
    .means = Name of a sheet or a file.
book-bench = Bench work
    .means = Name of a sheet or a file.
book-findings = Findings
    .means = Name of a sheet or a file.
book-stops = Stops to come
    .means = Name of a sheet or a file.
book-kit-needs = Kit needs
    .means = Name of a sheet or a file.
book-net-needs = Net needs
    .means = Name of a sheet or a file.
book-booked-hours = Booked hours by type
    .means = Name of a sheet or a file.
book-costs = Costs
    .means = Name of a sheet or a file.
book-left-over = Left over
    .means = Name of a sheet or a file.
book-other-dates = Other dates
    .means = Name of a sheet or a file.
book-prices = Prices of scarcity
    .means = Name of a sheet or a file.
book-hours-by-type = Hours per loom by type
    .means = Name of a sheet or a file.
book-hours-by-variant = Hours per loom by variant
    .means = Name of a sheet or a file.
book-late = Late
    .means = Name of a sheet or a file.
book-changes = Changes
    .means = Name of a sheet or a file.
book-settings = Settings
    .means = Name of a sheet or a file.
book-alarms = Alarms
    .means = Name of a sheet or a file.
book-visits = Follow-up visits
    .means = Name of a sheet or a file.
book-bobbins = Metres on bobbins
    .means = Name of a sheet or a file.
book-taught = What looms taught
    .means = Name of a sheet or a file.
book-done-by = Done by
    .means = Name of a sheet or a file.
book-worries = Worries
    .means = Name of a sheet or a file.
book-at-risk = Bookings at risk
    .means = Name of a sheet or a file.
book-rests-on = Rests on
    .means = Name of a sheet or a file.
book-orders = Orders
    .means = Name of a sheet or a file.
book-order = Order
    .means = Name of a sheet or a file.
book-cash = Cash by month
    .means = Name of a sheet or a file.
book-picks = Pick list
    .means = Name of a sheet or a file.
book-order-list = order list
    .means = Name of a sheet or a file.
book-order-file = order
    .means = Name of a sheet or a file.

## What every sheet says

book-total = Total
    .means = Said in a workbook or a paper.
book-page = Page &P of &N
    .means = Said in a workbook or a paper.
book-allowed = Allowed
    .means = Said in a workbook or a paper.
book-usual = Usual
    .means = Said in a workbook or a paper.
book-or-more = or more
    .means = Said in a workbook or a paper.
book-day = yyyy-mm-dd
    .means = Said in a workbook or a paper.

## The plan

book-plan-of = { $programme }: plan as of { $at }
    .means = Said in a workbook or a paper.
book-plan-booked = Booked: { $booked }; left over: { $left_over }. The plan is { $status }.
    .means = Said in a workbook or a paper.
book-plan-times = Times are local ({ $zone }), money is in { $currency }. Forecasts are estimates, not promises.
    .means = Said in a workbook or a paper.
book-status = Status
    .means = Said in a workbook or a paper.
book-objective = Cost of the plan (objective)
    .means = Said in a workbook or a paper.
book-bound = No plan can cost less than (bound)
    .means = Said in a workbook or a paper.
book-gap = Gap between the two
    .means = Said in a workbook or a paper.
book-seconds = Time taken to plan
    .means = Said in a workbook or a paper.
book-of-them-firm = of them firm
    .means = Said in a workbook or a paper.
book-of-them-pilots = of them pilots
    .means = Said in a workbook or a paper.
book-crew-changes = Changes of crew within a shift
    .means = Said in a workbook or a paper.
book-first-start = First conversion starts
    .means = Said in a workbook or a paper.
book-last-end = Last conversion ends
    .means = Said in a workbook or a paper.
book-horizon-ends = Horizon ends
    .means = Said in a workbook or a paper.
book-target-finish = Target finish
    .means = Said in a workbook or a paper.
book-labour = Labour
    .means = Said in a workbook or a paper.
book-left-over-cost = Cost of the looms left over
    .means = Said in a workbook or a paper.
book-none-left-over = None: every loom that can be planned is booked.
    .means = Said in a workbook or a paper.
book-unit-looms = looms
    .means = Said in a workbook or a paper.
book-unit-times = times
    .means = Said in a workbook or a paper.
book-unit-person-hours = person-hours
    .means = Said in a workbook or a paper.
book-firm = firm
    .means = Said in a workbook or a paper.
book-pilot = pilot
    .means = Said in a workbook or a paper.

## Crews, trades, bench, stops

book-crews-as-of = Plan as of { $at }. Times are local ({ $zone }).
    .means = Said in a workbook or a paper.
book-crew-about = Crew { $crew }: conversions by week
    .means = Said in a workbook or a paper.
book-days-about = { $trade }: where and when, day by day
    .means = Said in a workbook or a paper.
book-bench-about = Bench work: what must be ready when the conversion starts, and what is left to do when it is over
    .means = Said in a workbook or a paper.
book-after-restart = after the restart: { $work }
    .means = What a trade does at a loom that runs again.
book-stops-about = Looms that stop for a conversion
    .means = Said in a workbook or a paper.
book-and = {" and "}
    .means = Said in a workbook or a paper.

## Needs and orders

book-kit-needs-by-week = Kit needs by ISO week
    .means = Said in a workbook or a paper.
book-kit-needs-about = What the bookings that start in the week need, less what has been issued to them.
    .means = Said in a workbook or a paper.
book-late-by = late by { $days }
    .means = Said in a workbook or a paper.
book-touched = { $loom } by { $days }
    .means = Said in a workbook or a paper.
book-no-supplier = no supplier named
    .means = Said in a workbook or a paper.
book-orders-title = Order list
    .means = Said in a workbook or a paper.
book-orders-about = { $lines } for { MONEY($amount, $currency) }; { $late } late: the order-by day is past.
    .means = Said in a workbook or a paper.
book-cash-about = Money by month of delivery
    .means = Said in a workbook or a paper.
book-cash-peak = { MONEY($total, $currency) } in all; the most in { $month }: { MONEY($most, $currency) }.
    .means = Said in a workbook or a paper.
book-per-unit = { $currency } per unit
    .means = Said in a workbook or a paper.
book-order-to = { $programme }: order to { $supplier }
    .means = Said in a workbook or a paper.
book-order-sum = { $lines }, { MONEY($amount, $currency) }.
    .means = Said in a workbook or a paper.
book-order-please = Please fill in Quantity and Due with what you confirm, leave the other columns as they are, and send the file back.
    .means = Said in a workbook or a paper.

## Pick lists

book-picks-of = { $programme }: pick list
    .means = Said in a workbook or a paper.
book-picks-for = Pick list for { $on }
    .means = Said in a workbook or a paper.
book-picks-none = Nothing is to be picked.
    .means = Said in a workbook or a paper.
book-short-of = short of { $quantity }
    .means = Said in a workbook or a paper.
book-no-location = no location
    .means = Said in a workbook or a paper.

## Hours, settings, rehearsal

book-hours-about = { $looms } by method version { $version }; the mean over the looms of a row, allowance included, with the choices that take the least.
    .means = Said in a workbook or a paper.
book-rehearsal-about = The plan played many times, from today to its horizon: estimates, not promises.
    .means = Said in a workbook or a paper.
book-plan-itself = The plan itself says { NUMBER($cost, minimumFractionDigits: 2, maximumFractionDigits: 2) } { $currency }.
    .means = Said in a workbook or a paper.
book-worries-about = What the programme would cost less, with its 95 % interval.
    .means = Said in a workbook or a paper.
book-at-risk-about = The likeliest to fail first.
    .means = Said in a workbook or a paper.
book-rests-on-about = From where each figure comes that was drawn by: the mill's own records, what was asked for, or what is usual.
    .means = Said in a workbook or a paper.

## Headings

col-what = What
    .means = Heading of a column.
col-mark = Mark
    .means = Heading of a column.
col-week = Week
    .means = Heading of a column.
col-day = Day
    .means = Heading of a column.
col-days = Days
    .means = Heading of a column.
col-window = Window
    .means = Heading of a column.
col-window-number = Window number
    .means = Heading of a column.
col-warp-runs-out = Warp runs out about
    .means = Heading of a column.
col-working-time = Working time
    .means = Heading of a column.
col-labour = Labour
    .means = Heading of a column.
col-total-cost = Total cost
    .means = Heading of a column.
col-pause-from = Pause from
    .means = Heading of a column.
col-pause-to = Pause to
    .means = Heading of a column.
col-lost-production = Lost production
    .means = Heading of a column.
col-late-beam-outs = Late beam-outs
    .means = Heading of a column.
col-labour-cost = Labour cost
    .means = Heading of a column.
col-saving-foregone = Saving foregone
    .means = Heading of a column.
col-moves = Moves
    .means = Heading of a column.
col-surviving = So that it survives (reckoned, not paid)
    .means = A heading: what the term `no second chance` reckons.
col-cost-lost = Lost conversions
    .means = Heading of a column.
col-cost-of-left-over = Looms left over
    .means = Heading of a column.
col-looms-booked = Looms booked
    .means = Heading of a column.
col-looms-left-over = Looms left over
    .means = Heading of a column.
col-labour-per-loom = Labour per loom
    .means = Heading of a column.
col-labour-first = Labour of the first loom
    .means = Heading of a column.
col-labour-last = Labour of the last loom
    .means = Heading of a column.
col-working-time-per-loom = Working time per loom
    .means = Heading of a column.
col-why-left-over = Why it is left over
    .means = Heading of a column.
col-cost-left-over = Cost of leaving it over
    .means = Heading of a column.
col-other-start = Other start
    .means = Heading of a column.
col-other-end = Other end
    .means = Heading of a column.
col-dearer = Dearer than the booking by
    .means = Heading of a column.
col-scarce = What is scarce
    .means = Heading of a column.
col-one-more-saves = One more would save
    .means = Heading of a column.
col-needs = Needs
    .means = Heading of a column.
col-crew-at-loom = Crew at the loom
    .means = Heading of a column.
col-all-its-work = All its work at the loom
    .means = Heading of a column.
col-ready-by = Ready by
    .means = Heading of a column.
col-from-then = From then on
    .means = Heading of a column.
col-then-after-restart = Then, after the restart
    .means = Heading of a column.
col-trades = Trades
    .means = Heading of a column.
col-bench-time = Time on the bench
    .means = Heading of a column.
col-beam-out-p10 = Beam-out P10
    .means = Heading of a column.
col-beam-out-p50 = Beam-out P50
    .means = Heading of a column.
col-beam-out-p90 = Beam-out P90
    .means = Heading of a column.
col-stops-from = Stops from
    .means = Heading of a column.
col-stops-to = Stops to
    .means = Heading of a column.
col-article-next = Article that comes next
    .means = Heading of a column.
col-new-warp-from = New warp from
    .means = Heading of a column.
col-new-warp-by = New warp by
    .means = Heading of a column.
col-all-weeks = All weeks
    .means = Heading of a column.
col-needed-by-bookings = Needed by bookings
    .means = Heading of a column.
col-needed-by-left-over = Needed by left-over looms
    .means = Heading of a column.
col-receipts-due = Receipts due
    .means = Heading of a column.
col-in-stock-at-end = In stock at the end
    .means = Heading of a column.
col-net-need = Net need
    .means = Heading of a column.
col-to-order = To order
    .means = Heading of a column.
col-on-order = On order
    .means = Heading of a column.
col-both = Both
    .means = Heading of a column.
col-month = Month
    .means = Heading of a column.
col-order-by = Order by
    .means = Heading of a column.
col-late = Late
    .means = Heading of a column.
col-looms-touched = Looms touched
    .means = Heading of a column.
col-looms-that-fall = Looms that fall without the order
    .means = Heading of a column.
col-looms-touched-if-late = Looms touched if late
    .means = Heading of a column.
col-looms-that-fall-without = Looms that fall without it
    .means = Heading of a column.
col-needed-in-store = Needed in store by
    .means = Heading of a column.
col-expected = Expected
    .means = Heading of a column.
col-amount = Amount
    .means = Heading of a column.
col-short = Short
    .means = Heading of a column.
col-to-pick = To pick
    .means = Heading of a column.
col-picked = Picked
    .means = Heading of a column.
col-since = Since
    .means = Heading of a column.
col-what-follows = What follows
    .means = Heading of a column.
col-when = When
    .means = Heading of a column.
col-told = Told to have done it
    .means = Heading of a column.
col-roles = Roles
    .means = Heading of a column.
col-by = By
    .means = Heading of a column.
col-through = By
    .means = Heading of a column.
col-variant = Variant
    .means = Heading of a column.
col-first-loom = First loom
    .means = Heading of a column.
col-next-loom = Next loom
    .means = Heading of a column.
col-next-loom-trade = Next loom: { $trade } ({ $unit })
    .means = Heading of a column.
col-last-loom = Last loom
    .means = Heading of a column.
col-number-of-last = Number of the last
    .means = Heading of a column.
col-p10 = P10
    .means = Heading of a column.
col-p50 = P50
    .means = Heading of a column.
col-p80 = P80
    .means = Heading of a column.
col-p90 = P90
    .means = Heading of a column.
col-on-the-loom = On the loom
    .means = Heading of a column.
col-on-the-bench = On the bench before
    .means = Heading of a column.
col-after-restart = After restart
    .means = Heading of a column.
col-hours-are = Hours are
    .means = Heading of a column.
col-found = Found
    .means = Heading of a column.
col-set = Set
    .means = Heading of a column.
col-now = Now
    .means = Heading of a column.
col-left = Left
    .means = Heading of a column.
col-right = Right
    .means = Heading of a column.
col-left-less-right = Left less right
    .means = Heading of a column.
col-last-read = Last read
    .means = Heading of a column.
col-read = Read
    .means = Heading of a column.
col-in-words = In words
    .means = Heading of a column.
col-seen = Seen
    .means = Heading of a column.
col-what-was-said = What was said
    .means = Heading of a column.
col-days-after = Days after sign-off
    .means = Heading of a column.
col-done = Done
    .means = Heading of a column.
col-state = State
    .means = Heading of a column.
col-cloth-to-change = Cloth to the next change
    .means = Heading of a column.
col-median = Median
    .means = Heading of a column.
col-spread = Spread
    .means = Heading of a column.
col-method-says = Method says
    .means = Heading of a column.
col-proposed = Proposed
    .means = Heading of a column.
col-looms-done = Looms done
    .means = Heading of a column.
col-reached = Reached (% of runs)
    .means = Heading of a column.
col-played = Played
    .means = Heading of a column.
col-runs = Runs
    .means = Heading of a column.
col-mean = Mean
    .means = Heading of a column.
col-of-it = Of it { $term } ({ $currency })
    .means = Heading of a column.
col-crews-waiting = Crews waiting for beams
    .means = Heading of a column.
col-crews-idle = Crews idle
    .means = Heading of a column.
col-if-certain = If it were certain
    .means = Heading of a column.
col-saves = Saves
    .means = Heading of a column.
col-at-least = At least
    .means = Heading of a column.
col-at-most = At most
    .means = Heading of a column.
col-sure = Sure
    .means = Heading of a column.
col-within-a-day = Within a day (% of runs)
    .means = Heading of a column.
col-lost = Lost (% of runs)
    .means = Heading of a column.
col-held-up-by = Held up most by
    .means = Heading of a column.
col-that-in = That in (% of these)
    .means = Heading of a column.
col-varies = What varies, and how much
    .means = Heading of a column.
col-taken-for = Taken for
    .means = Heading of a column.
col-comes-from = Comes from
    .means = Heading of a column.
col-records = Records
    .means = Heading of a column.
remark-asked-for = Asked for
    .means = Heading of a column beside those that load.
remark-asked-by = Asked for by
    .means = Heading of a column beside those that load.
remark-total-price = Total price
    .means = Heading of a column beside those that load.

## Hints on headings

hint-mark = Firm: replanning leaves it alone. Pilot: the first of its type.
    .means = Hint on a heading.
hint-mark-firm = Firm: inside the firm period, replanning leaves it alone. Pilot: the first of its type.
    .means = Hint on a heading.
hint-window = The chance that is taken: a beam change (repeat or style), a standing loom, or mid-warp.
    .means = Hint on a heading.
hint-windows = The kinds of window for which the figures hold.
    .means = Hint on a heading.
hint-p50 = P50: as likely earlier as later.
    .means = Hint on a heading.
hint-p10 = One in ten runs out before it.
    .means = Hint on a heading.
hint-p90 = One in ten runs out after it.
    .means = Hint on a heading.
hint-booking-crew = Who does it, in order of time; their hours stand on the sheet of each crew.
    .means = Hint on a heading.
hint-working-time = Working hours from start to end.
    .means = Hint on a heading.
hint-pause-from = The first part is done; the new warp comes in, and nobody is held.
    .means = Hint on a heading.
hint-pause-to = The second part begins.
    .means = Hint on a heading.
hint-one-more-saves = What one more unit in that week would save, from the prices of the relaxed plan: a guide, not a quotation.
    .means = Hint on a heading.
hint-needs = Other trades and tools, from when to when.
    .means = Hint on a heading.
hint-from-then = Work that is left for the bench when the loom runs again.
    .means = Hint on a heading.
hint-then-after-restart = What the crew does at the loom once it runs. It is not kept free for that: it may be at its next loom by then.
    .means = Hint on a heading.
hint-all-its-work = Told once, where it comes to the loom first.
    .means = Hint on a heading.
hint-new-warp-from = The first part is done; the warp can go in.
    .means = Hint on a heading.
hint-new-warp-by = The crew goes on; the warp must be in.
    .means = Hint on a heading.
hint-in-stock-at-end = Projected, the proposed orders taken as received.
    .means = Hint on a heading.
hint-net-need = What lacks to stay at or above the safety stock.
    .means = Hint on a heading.
hint-to-order = The net need in whole lots, at least the minimum order.
    .means = Hint on a heading.
hint-order-line = Number of the line; the supplier's answer carries it back.
    .means = Hint on a heading.
hint-expected = The day it is needed, or for a late line the day on which it comes if ordered today.
    .means = Hint on a heading.
hint-please-quantity = Please fill in: the quantity you confirm; 0 = none.
    .means = Hint on a heading.
hint-please-due = Please fill in: the day on which it arrives here.
    .means = Hint on a heading.
hint-start-of-conversion = Start of the conversion, local time.
    .means = Hint on a heading.
hint-variant = What sets these looms apart.
    .means = Hint on a heading.
hint-first-loom = A crew's first one of the type.
    .means = Hint on a heading.
hint-next-loom = As the next plan counts it.
    .means = Hint on a heading.
hint-last-loom = If one crew did all looms of the type.
    .means = Hint on a heading.
hint-of-the-next = Of the next one, by the method's three-point estimates.
    .means = Hint on a heading.
hint-on-the-loom = Elapsed hours of the next one, loom stopped.
    .means = Hint on a heading.
hint-hours-are = Standard: the learning curve of the terms. Fitted: from recorded conversions.
    .means = Hint on a heading.
hint-left-less-right = Angles the shorter way round.
    .means = Hint on a heading.
hint-not-before-horizon = Empty: not before the horizon.
    .means = Hint on a heading.

## The report of whether it was worth it

pdf-page = page { $page }
    .means = Said in the report of whether it was worth it.
pdf-changes = Change in percent with its 95 % interval: against the same weeks of looms not yet converted, and plainly before and after (brown), which is not to be believed
    .means = Said in the report of whether it was worth it.
pdf-saves = What it saves a month
    .means = Said in the report of whether it was worth it.
pdf-money = Measured and claimed, { $currency } a month
    .means = Said in the report of whether it was worth it.
pdf-weeks = Stops by weeks since the restart, change in percent
    .means = Said in the report of whether it was worth it.
pdf-believe = How far to believe it
    .means = Said in the report of whether it was worth it.
pdf-range = { $middle } ({ $low } to { $high })
    .means = Said in the report of whether it was worth it.
pdf-before = Before
    .means = Said in the report of whether it was worth it.
pdf-after = After
    .means = Said in the report of whether it was worth it.
pdf-change = Change, 95 % interval
    .means = Said in the report of whether it was worth it.
pdf-more-looms = and { $looms } more looms
    .means = Said in the report of whether it was worth it.
pdf-loom-by-loom = Loom by loom on its own article, { $figure }; the season is in it
    .means = Said in the report of whether it was worth it.

## Workbooks to fill in and load

book-guide = How to fill in
    .means = Said in a workbook or a paper.
book-guide-title = How to fill in this workbook of beamslot
    .means = Said in a workbook or a paper.
book-guide-nothing-deleted = Fill in the sheets you have and leave the others empty; nothing is deleted by loading an emptier sheet.
    .means = Said in a workbook or a paper.
book-guide-needed = Darker headings are needed. Rest the pointer on a heading to read what belongs there.
    .means = Said in a workbook or a paper.
book-guide-numbers = Loom numbers are text: 007, 3/12 and A-07 stay as they are. Units stand in the headings.
    .means = Said in a workbook or a paper.
book-guide-terms = A term whose value is left empty keeps its default, or what was loaded before.
    .means = Said in a workbook or a paper.
book-guide-method = The sheets Operations, Kit lines, Choices, Setpoints and Checks are one method: loading one replaces all its rows.
    .means = Said in a workbook or a paper.
book-guide-where = Where
    .means = Said in a workbook or a paper.
book-guide-what = What belongs there
    .means = Said in a workbook or a paper.
book-guide-sheet = Sheet { $sheet }
    .means = Said in a workbook or a paper.
book-guide-open-attributes = Any other column is kept under its own heading, and the method may ask for it.
    .means = Said in a workbook or a paper.
book-guide-open-conditions = Any other column is a condition: its heading is a column of Looms, `window` or the name of a choice; its cells say for which value the row holds: undrilled; left, both; <= 12; [8..16]; not(none); - or empty for any.
    .means = Said in a workbook or a paper.
book-needed = needed
    .means = Said in a workbook or a paper.
book-one-of = one of: { $words }
    .means = Said in a workbook or a paper.
book-example = For example: { $example }
    .means = Said in a workbook or a paper.
book-from-to = { $low } to { $high }
    .means = Said in a workbook or a paper.
book-from = { $low } or more
    .means = Said in a workbook or a paper.
holds-text = text
    .means = What a column holds, for who fills it in.
holds-identifier = text, also where it looks like a number
    .means = What a column holds, for who fills it in.
holds-number = number
    .means = What a column holds, for who fills it in.
holds-integer = whole number
    .means = What a column holds, for who fills it in.
holds-percent = percent
    .means = What a column holds, for who fills it in.
holds-yes-no = yes or no
    .means = What a column holds, for who fills it in.
holds-date = date
    .means = What a column holds, for who fills it in.
holds-moment = date and time, local
    .means = What a column holds, for who fills it in.
holds-time = time of day
    .means = What a column holds, for who fills it in.
holds-weekdays = weekdays, such as Mon-Fri
    .means = What a column holds, for who fills it in.
holds-any = text, number or date
    .means = What a column holds, for who fills it in.
remark-default = Default
    .means = Heading of a column beside those that load.
remark-meaning = Meaning
    .means = Heading of a column beside those that load.
remark-acts = Where it acts
    .means = Heading of a column beside those that load.
book-none = none
    .means = Said in a workbook or a paper.
book-type = TYPE
    .means = Said in a workbook or a paper.
unit-currency = currency
    .means = Unit of a term, where it is a word.
unit-day = day
    .means = Unit of a term, where it is a word.
unit-looms = looms
    .means = Unit of a term, where it is a word.
unit-text = text
    .means = Unit of a term, where it is a word.
unit-yes-no = yes or no
    .means = Unit of a term, where it is a word.
unit-loom-number = loom number
    .means = Unit of a term, where it is a word.

## Cards to fill in, and the list to walk the hall with

book-cards = Cards
    .means = Said in a workbook or a paper.
book-cards-title = Cards in this workbook of beamslot
    .means = Said in a workbook or a paper.
book-cards-fill = Fill in the framed cells of the next sheets; a row may stay as it is where nothing is to be said.
    .means = Said in a workbook or a paper.
book-cards-times = Moments are local times of { $zone }. The first row of a loom in Work done is its whole conversion.
    .means = Said in a workbook or a paper.
col-plan = Plan
    .means = Heading of a column.
col-method-version = Method version
    .means = Heading of a column.
book-survey-of = { $programme }: looms to look at in the hall
    .means = Said in a workbook or a paper.
book-survey = Looms to look at in the hall
    .means = Said in a workbook or a paper.
book-survey-fill = { $looms }, { $cells } to fill in. Fill in the framed cells; the others are known or do not matter for that loom.
    .means = Said in a workbook or a paper.
book-survey-load = The drop-downs hold the values that the method knows. Save the list and load it: nothing else is changed.
    .means = Said in a workbook or a paper.
hint-one-of = One of: { $words }
    .means = Hint on a heading.
hint-matters = It matters whether: { $what }
    .means = Hint on a heading.

## By cases

book-turn = { $begins ->
        [begin] begin
        [go-on] go on
       *[take-over] take over from { $before }
    }{ $ends ->
        [finish] , finish
        [warp] , then the new warp
       *[open] {""}
    }{ $follows ->
        [none] {""}
       *[other] ; { $follows } goes on
    }
    .means = What a crew does in one of its turns at a loom.
book-picks-kit = Loom { $loom }{ $machine_type ->
        [none] {""}
       *[other] , { $machine_type }
    }: conversion starts { $at }
    .means = Above the parts of a kit on a pick list.
book-hours-of = { $programme }: hours for one loom, by { $by ->
        [variant] variant
       *[type] machine type
    }
    .means = Above the hours of a conversion.
book-hours-source = { $source ->
        [fitted] fitted
       *[standard] standard
    }
    .means = Where the learning curve of some hours comes from.
visit-state = { $state ->
        [overdue] overdue
        [due] due
        [done] done
       *[other] to come
    }
    .means = How a visit stands.

## The marked copy of a workbook: its list of findings and its comments

book-findings-title = Findings in this workbook by beamslot
    .means = First cell of the list of findings; a load knows the sheet by it.
book-findings-counted = { $many }: { $each ->
        [none] nothing to mend
       *[other] { $each }
    }. Marked cells are coloured and carry a comment that begins with the severity.
    .means = How many findings there are, above the list.
book-findings-mend = Mend the cells in this copy and load it: this sheet is passed over, and everything else is as it was.
    .means = What to do with a marked copy.
book-findings-unnoted = Cells with a discussion take no comment; they are coloured and listed: { $cells }
    .means = Cells that are marked without a comment.
finding-severity = { $severity ->
        [refused] refused
        [doubt] doubt
       *[note] note
    }
    .means = How grave a finding is.
note-read-as = Read as: { $understood }
    .means = In the comment on a marked cell.
note-to-do = What to do: { $hint }
    .means = In the comment on a marked cell.
note-more = more in the sheet { $sheet }
    .means = A comment is too long for its cell.
col-severity = Severity
    .means = Heading of a column.
col-sheet = Sheet
    .means = Heading of a column.
col-cell = Cell
    .means = Heading of a column.
col-heading = Heading
    .means = Heading of a column: the heading in the mill's sheet.
col-in-the-cell = In the cell
    .means = Heading of a column.
col-understood-as = Understood as
    .means = Heading of a column.
col-what-was-found = What was found
    .means = Heading of a column.
col-what-to-do = What to do
    .means = Heading of a column.
col-code = Code
    .means = Heading of a column.
