### The screen Programme status.

status-of = { $programme } · as of { $at } · { $looms }
    .means = Below the title.
status-then = it shows here at once
    .means = What comes of a published plan here.

## Key figures

status-worked-out = is being worked out …
    .means = In place of a figure that takes seconds.
status-not-known = not known
    .means = In place of a figure that nobody knows.
status-done = Signed off
    .means = A key figure at the head of the screen.
status-done-share = { $share } of the looms
    .means = A key figure at the head of the screen.
status-finish = Finish as planned
    .means = A key figure at the head of the screen.
status-no-target = no target is set
    .means = A key figure at the head of the screen.
status-target = { $how ->
        [open] target { $target }
        [on] on the target { $target }
       *[other] { $days ->
            [one] { $days } day
           *[other] { $days } days
        } { $how ->
            [after] after
           *[before] before
        } the target { $target }
    }
    .means = A key figure at the head of the screen.
status-pace = At the pace of the last four weeks
    .means = A key figure at the head of the screen.
status-pace-of = { $done } signed off in { $days } days
    .means = A key figure at the head of the screen.
status-rehearsed = rehearsed: { $looms } looms by { $half } (P50), { $sure } (P80)
    .means = A key figure at the head of the screen.
status-spent = Spent so far
    .means = A key figure at the head of the screen.
status-spent-more = planned up to this month { $planned }; on order { $committed }
    .means = A key figure at the head of the screen.
status-saved = Saved, as measured
    .means = A key figure at the head of the screen.
status-saved-not = too little is measured yet
    .means = A key figure at the head of the screen.
status-a-month = { $money } a month
    .means = A key figure at the head of the screen.
status-between = { $low } to { $high }
    .means = A key figure at the head of the screen.
status-week = Week
    .means = The label of a field.
status-report = One-page report (PDF)
    .means = A button.

## Late and at risk

status-late = Late
    .means = A heading on the screen.
head-since = Since
    .means = A heading of a table.
head-days = Days
    .means = A heading of a table.
head-what = What
    .means = A heading of a table.
head-follows = What follows
    .means = A heading of a table.
status-risks = At risk in the next fortnight
    .means = A heading on the screen.
status-risks-none = No booking of the next fourteen days is known to be at risk.
    .means = Said where there is nothing.
head-when = When
    .means = A heading of a table.
head-risk = What may go wrong
    .means = A heading of a table.
head-more = More
    .means = A heading of a table.
status-to-kits = kits
    .means = Leads to another screen.
status-to-orders = orders
    .means = Leads to another screen.
status-to-loom = the loom
    .means = Leads to another screen.
status-to-rehearsal = rehearsal
    .means = Leads to another screen.

## Progress and money

status-progress = Planned and done
    .means = A heading on the screen.
status-progress-none = Nothing is booked or done yet.
    .means = Said where there is nothing.
status-planned = planned: { $looms }
    .means = What a line or mark of a picture is.
status-done-so-far = done: { $looms }
    .means = What a line or mark of a picture is.
status-expected = expected: { $looms }
    .means = What a line or mark of a picture is.
status-all = all { $looms ->
        [one] { $looms } loom
       *[other] { $looms } looms
    }
    .means = What a line or mark of a picture is.
status-progress-alt = Lines: looms planned, done and expected, added up by ISO week
    .means = What a picture shows, for who cannot see it.
status-months = Parts and labour by month
    .means = A heading on the screen.
status-months-none = Nothing is planned, spent or ordered yet.
    .means = Said where there is nothing.
head-month = Month
    .means = A heading of a table.
head-planned = Planned ({ $currency })
    .means = A heading of a table.
head-spent = Spent ({ $currency })
    .means = A heading of a table.
head-on-order = On order ({ $currency })
    .means = A heading of a table.
head-planned-by-then = Planned up to then ({ $currency })
    .means = A heading of a table.
head-both-by-then = Spent and on order up to then ({ $currency })
    .means = A heading of a table.
status-months-help = Planned by the reference plan, in the month in which each booking ends; on order in the month of its due day.
    .means = A line that helps.

## Looms

status-stages = Looms by stage
    .means = A heading on the screen.
status-stages-alt = Bars: looms in each stage of the programme
    .means = What a picture shows, for who cannot see it.
status-next = The next seven days
    .means = A heading on the screen.
status-next-none = No conversion starts or runs in the seven days from now.
    .means = Said where there is nothing.
head-end = End
    .means = A heading of a table.
head-window = Window
    .means = A heading of a table.
head-firm = Firm
    .means = A heading of a table.
head-kit = Kit
    .means = A heading of a table.
head-person-hours = Person-hours
    .means = A heading of a table.
head-cost = Cost ({ $currency })
    .means = A heading of a table.
status-pilot = pilot
    .means = A booking is the first of its type.
status-firm = firm
    .means = A booking cannot be moved.
status-left-over = Left over
    .means = A heading on the screen.
status-left-over-none = No loom waits without a booking.
    .means = Said where there is nothing.
status-left-over-many = { $looms ->
        [one] { $looms } loom
       *[other] { $looms } looms
    } not in this plan:
    .means = Above the list of looms left over.
head-why = Why
    .means = A heading of a table.
head-left-over-cost = Cost of leaving it ({ $currency })
    .means = A heading of a table.

## Below

status-as-rehearsed = As rehearsed
    .means = A heading on the screen.
status-cost = Cost by term
    .means = A heading on the screen.
status-cost-alt = Bars: planned and expected cost by term
    .means = What a picture shows, for who cannot see it.
status-cost-so-far = So far: parts issued { MONEY($parts, $currency) }, labour recorded { MONEY($labour, $currency) } ({ NUMBER($hours, maximumFractionDigits: 1) } person-hours).
    .means = What was spent so far.
status-cost-expected = Expected is what was recorded and what the plan in force estimates for the rest.
    .means = A line that helps.
status-proof = How good the plan is
    .means = A heading on the screen.
status-cost-of = Its cost is { $parts }
    .means = What the plan's cost consists of.
status-proof-cost = cost of the plan
    .means = A fact of the proof.
status-proof-bound = no plan can cost less than
    .means = A fact of the proof.
status-proof-gap = gap
    .means = A fact of the proof.
status-proof-found = found in
    .means = A fact of the proof.
status-proof-made = made for
    .means = A fact of the proof.
