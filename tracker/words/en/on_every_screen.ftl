### What stands on every screen, or on several.

reading-the-database = Reading the database …
    .means = Said while a screen waits for its data.
screen-failed = This screen failed ({ $kind }); nothing was written. The details stand in the log of who serves the screens.
    .means = A fault of the program, with the name of its kind.

## Nothing to show yet

empty-no-looms = There is no loom yet. Load the mill's loom list on the screen **Load**.
    .means = A screen without looms; the name of the screen stands in bold.
empty-no-plan = No plan is published yet. A planner makes and publishes one on the screen **Bookings**; { $then }.
    .means = A screen without a plan; what comes of one here.
empty-lacks = No plan is published yet, and none can be made before there is { $what }: load it on the screen **Load**.
    .means = A screen without a plan, where something that a plan needs is missing.
all-of-them = { $first } and { $last }
    .means = Several things, the last behind an and.

## Whether the published plan still holds

standing-broken = The published plan cannot be kept as it is: { $findings ->
        [one] { $findings } finding
       *[other] { $findings } findings
    }. The data changed since, and what the screens show of the plan, its proof included, holds no more. Plan again on the screen **Bookings**.
    .means = Above every screen, where the check finds something in the published plan.
standing-what = What cannot be kept
    .means = Opens the list of what the check found.
standing-more = and { $more } more
    .means = Below that list, where it is cut.

## The plan's proof and cost

proof-none = No plan keeps all limits. { $reasons }
    .means = Nothing can be planned, and why.
proof-least = This plan costs { MONEY($cost, $currency) }, and it is proven that none for the same data costs less.
    .means = There is no gap.
proof-within = This plan costs { MONEY($cost, $currency) }. It is proven: no plan for the same data can cost less than { MONEY($bound, $currency) }, so a better one would save at most { MONEY($saves, $currency) } ({ $share }).
    .means = The gap is within what was asked for.
proof-open = This plan costs { MONEY($cost, $currency) } and is not yet proven best: no plan for the same data can cost less than { MONEY($bound, $currency) }, so a better one would save at most { MONEY($saves, $currency) } ({ $share }).{ $how ->
        [stopped] {" "}The search was stopped by its time limit.
       *[feasible] {""}
    } Planning again with more time may close this.
    .means = The gap is wider than what was asked for.
share-least = less than { $share }
    .means = A share that is not nothing, and too small to write.
cost-parts = { MONEY($booked, $currency) } for { $bookings ->
        [one] { $bookings } booking
       *[other] { $bookings } bookings
    }{ $looms ->
        [0] {""}
        [one] {" "}and { MONEY($left, $currency) } for { $looms } loom left over
       *[other] {" "}and { MONEY($left, $currency) } for { $looms } looms left over
    }.
    .means = What a plan's cost consists of.

## Words of several tables

quantity-of-part = { $quantity } of { $part }
    .means = `1 pc of RAIL`.
stage-to-survey = to survey
    .means = The loom must be looked at in the hall before its work is known.
beam-out-stale = stale
    .means = The reading behind a beam-out is old.
beam-out-overdue = overdue
    .means = By its reading the warp should have run out.

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
value-choose = choose
    .means = In a field while nothing is chosen.
