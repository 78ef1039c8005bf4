### Plans: what cannot be planned, published.

no-published-plan = no plan is published yet
    .means = What was asked for needs a published plan.
    .hint = publish one
    .terminal = make one: beamslot plan --publish
nothing-can-fall = no plan is published, so nothing can fall
    .means = Without a published plan there are no bookings that could fall.
    .hint = publish one
    .terminal = `beamslot plan --publish` makes one
no-published-plan-touched = history was touched ({ $touched }), and no plan is published yet
    .means = The stored history was changed behind the program's back, and there is no plan to verify.
    .hint = publish one
    .terminal = make one: beamslot plan --publish
loom-not-planned = loom { $loom } was not to be planned when the published plan was made
    .means = A loom is neither booked nor left over in the published plan.
no-such-plan = there is no plan { $number }
    .means = A plan was asked for by a number that none has.
    .terminal = `beamslot plan --list` lists them
plan-of-scenario = plan { $number } is of the scenario { $scenario }
    .means = A plan that was made for a scenario is not published.
    .hint = put the scenario in force, then plan again
    .terminal = put the scenario in force (`beamslot plan --scenario F --enter`), then plan again
plan-published-already = plan { $number } is in force already
    .means = There is nothing to publish.
plan-past = plan { $number } starts loom { $loom } on { $start }, which is past
    .means = A plan that was made earlier begins before now.
    .hint = plan again
scenario-not-published = a scenario is not published
    .means = A plan of a scenario is only for comparison.
    .hint = put it in force, then plan again
    .terminal = put it in force by --enter, then plan again
plan-impossible = there is no plan: { $reasons }{ $more ->
        [0] {""}
       *[other] {" "}(and { $more } more)
    }
    .means = Nothing can be booked by the data.
one-after-another = { $one } { $other }
    .means = Two sentences.
plan-fails-check = the plan does not pass the check: { $finding }{ $more ->
        [0] {""}
       *[other] {" "}(and { $more } more)
    }; nothing was saved
    .means = The check without the solver objects to a plan.
plan-overtaken = another plan was published while this one was made{ $who ->
        [none] {""}
       *[other] , plan { $number } by { $who }
    }; nothing was saved{ $differ ->
        [0] ; both book the same
        [one] ; it books loom { $looms } otherwise
       *[other] ; it books { $differ } looms otherwise: { $looms }
    }
    .means = Two people plan at the same time.
    .hint = plan again
booked-otherwise = loom { $loom }: { $theirs ->
        [none] not booked there
       *[other] { $theirs } there
    }, { $mine ->
        [none] not booked here
       *[other] { $mine } here
    }
    .means = A loom that the plan published meanwhile books otherwise.
placed-not-ahead = loom { $loom } has no booking that lies ahead and could take another date
    .means = Another date was asked for of a loom that is not booked, is under way or whose start has passed.
date-not-listed = the plan in force lists no other date of loom { $loom } on { $start }{ $listed ->
        [none] {""}
       *[other] ; it lists { $listed }
    }
    .means = A booking is to be at another date than those that the plan weighed.
    .terminal = `beamslot plan --dates` lists them with their prices
nothing-ruled-out = loom { $loom } is ruled out nowhere
    .means = A loom is to be allowed again where it was not ruled out.
ruled-out-ends-first = loom { $loom } is to be ruled out from { $first } to { $until }, which ends before it begins
    .means = A span in which a loom is not to be booked ends before it begins.
    .hint = correct one of them
of-scenario = { $name }: { $why }
    .means = Why one of several scenarios cannot be planned.

## What a plan needs

no-looms = there are no looms
    .means = The loom list is empty.
    .hint = load the loom list first
    .terminal = load the loom list first: beamslot load looms.xlsx
no-method = there is no method yet
    .means = No operations are loaded.
    .hint = load a workbook with the sheet Operations
    .terminal = load a workbook with the sheet Operations: beamslot load FILE
horizon-past = the horizon of { $days ->
        [one] one day
       *[other] { $days } days
    } ends on { $end }, and as of is { $as_of }
    .means = The horizon ends before the moment to plan from.
    .hint = raise the term 'horizon (days)'
crews-too-small = the largest crew, { $crew }, has { $heads ->
        [one] 1 head
       *[other] { $heads } heads
    }, and step { $step } { $operation } asks for { $need } × { $trade }
    .means = No crew of the lead trade has the heads that an operation needs.
    .hint = give a crew more heads
no-crew-in-horizon = no crew of the trade '{ $trade }' works before the horizon
    .means = Closures, absences or dates leave no crew of the lead trade.
    .hint = look at Crews and Closures
no-lead-crew = no crew of the lead trade '{ $trade }' is listed
    .means = Nobody could convert.
    .hint = add one to the sheet Crews or change the term
as-of-without-zone = as of { $at } has no time zone
    .means = A program gave a moment without its zone.
    .hint = give it as UTC or with its offset
loom-not-listed = there is no loom { $loom } in the list
    .means = The data of a plan name a loom that is not listed.
    .hint = load it or take it out of the plan's data
remaining-slots = loom { $loom }: { $slots } working slots left to do must be 0 or more
    .means = A conversion in work has less than nothing left to do.
crew-in-two-halls = crew { $crew } is in { $hall } and in { $other } on { $at }
    .means = Two rows of one crew work in two halls at the same time.
    .hint = change the hours of one row in the sheet Crews, or leave the hall empty where the crew works in any
kit-part-unlisted = loom { $loom } needs part { $part }, which is not in the sheet Parts
    .means = A kit names a part that is not listed.
    .hint = add it
kit-quantity = loom { $loom } needs { QUANTITY($quantity) } of part { $part }
    .means = A kit asks for less than nothing.
    .hint = a quantity must be 0 or more

## What planning is worth, what holds, what falls

baseline-found = Taking each beam-out as it comes and waiting at most { $limit_h } h, the best such limit: { $bookings ->
        [one] 1 booking
       *[other] { $bookings } bookings
    }, { $left_over } left over, { MONEY($cost, $currency) }.
    .means = What a mill without a plan would come to.
baseline-worth = The published plan costs { MONEY($published, $currency) }: planning is worth { MONEY($worth, $currency) }.
    .means = What the published plan saves against taking each beam-out as it comes.
plan-holds = The published plan holds: { $bookings ->
        [one] 1 booking
       *[other] { $bookings } bookings
    } and { $left_over ->
        [one] 1 left-over loom
       *[other] { $left_over } left-over looms
    } passed { $checks } checks; they cost { NUMBER($cost, minimumFractionDigits: 2, maximumFractionDigits: 2) } { $currency }.
    .means = The check without the solver has nothing against the plan in force.
plan-fails = The published plan does not hold any more: { $many ->
        [one] 1 finding
       *[other] { $many } findings
    }.
    .means = The data have changed so that something of the plan in force cannot be.
plan-again = Plan again; what changed and what must move is told there.
    .means = What to do about a plan that does not hold any more.
    .terminal = `beamslot plan` does it.
history-touched = History was touched: { $many ->
        [one] 1 finding
       *[other] { $many } findings
    }.
    .means = Stored history was changed behind the program's back.
history-restore = Restore a backup from before into a new database and compare.
    .means = What to do about touched history.
    .terminal = `beamslot --db before.db restore F` does it.
booking-falls = Loom { $loom }, { $start }, falls: it lacks { $parts }; { $usable ->
        [none] never whole by stock and open orders
       *[other] whole from { $usable }
    }.
    .means = A booking whose kit would not be there.
no-booking-falls = No booking falls.
    .means = A change of stock or orders touches no booking.
lacked-before = { $many ->
        [one] 1 booking
       *[other] { $many } bookings
    } lacked parts already before the change.
    .means = Bookings that fall whatever is asked.
plan-that-follows = The plan that follows moves { $moves ->
        [one] 1 booking
       *[other] { $moves } bookings
    }, leaves over { $left_over ->
        [one] 1 loom
       *[other] { $left_over } looms
    } and costs { MONEY($cost, $currency) }; the published one cost { MONEY($before, $currency) }. Nothing was saved.
    .means = The plan that would be made after a change.

## Why a booking moved

moved-new = { $left ->
        [none] was not booked before
       *[other] was left over before: { $left }
    }
    .means = A loom that the plan before did not book, and why not.
moved-away = no longer among the looms to plan
    .means = A loom that was booked and is not planned any more.
moved-stage = { $stage }
    .means = The stage of a loom that is not booked any more.
moved-since = { $what } ({ $since })
    .means = What does not let a booking stay, and what happened that it is so.
moved-cheaper = { $forecast ->
        [none] { $window ->
            [none] the plan as a whole costs less this way
           *[other] { $window }, since the plan as a whole costs less this way
        }
       *[other] { $forecast }
    }
    .means = A booking moved for the sake of the whole plan, or follows its beam-out.
moved-missed = its start on { $start } passed and nothing was recorded
    .means = A booking whose loom was not begun when it should have been.
moved-broken-off = its conversion was broken off: { $why }
    .means = A loom that was in work and is to be planned again.
moved-at-a-price = { $forecast ->
        [none] {""}
       *[other] { $forecast }
    }{ $how ->
        [follows] {""}
       *[other] { $forecast ->
            [none] {""}
           *[other] ;{" "}
        }
    }{ $how ->
        [follows] {""}
        [free] its place is still free; the plan as a whole costs less with it elsewhere
        [place] takes the place of { $looms }{ $more ->
            [0] {""}
           *[other] {" "}and { $more } more
        }
       *[room] makes room{ $looms ->
            [none] {""}
           *[other] {" "}for { $looms }{ $more ->
                [0] {""}
               *[other] {" "}and { $more } more
            }
        }: with it there would be { $short }
    }{ $since ->
        [none] {""}
       *[other] {" "}({ $since })
    }{ $root ->
        [none] {""}
       *[other] ; it began with { $root }
    }{ $news ->
        [none] {""}
       *[other] ; new since the plan in force: { $news }
    }{ $window ->
        [none] {""}
       *[other] ; now { $window }
    }{ $instead ->
        [none] {""}
        [one] ; leaving it where it was would move 1 other instead
       *[other] ; leaving it where it was would move { $instead } others instead
    }{ $found ->
        [no] ; no plan was found that leaves it where it was
       *[yes] {""}
    }
    .means = A booking that could have stayed, for which looms it makes room, what began it, and its other beam-out or window.
moved-root = loom { $loom }: { $why }
    .means = The loom with which a chain of moves began.
moved-window = { $after } instead of { $before }
    .means = A booking is in another kind of window now.
moved-beam-out = { $when ->
        [later] at a later beam-out
       *[earlier] at an earlier beam-out
    }
    .means = A booking waits for another beam-out now.
moved-forecast = its beam-out is expected { NUMBER($hours, maximumFractionDigits: 0) } h { $when ->
        [later] later
       *[earlier] earlier
    }
    .means = The forecast of a booking's beam-out has moved.
became-pilot = it became the pilot of { $machine_type }{ $first ->
        [none] {""}
       *[other] , in place of loom { $first }{ $root ->
            [none] , which cannot stay or be the first
           *[other] : { $root }
        }
    }
    .means = A loom is the first of its type now.
waits-for-pilot = it waits until { $at } for the pilot of { $machine_type }, loom { $pilot }, to have run { QUANTITY($days) } days{ $root ->
        [none] {""}
       *[other] ; it began with loom { $first }: { $root }
    }
    .means = A loom's booking lay before the pilot of its type has run long enough.
as-things-stand = things as they stand
    .means = The plan without a scenario, beside which scenarios are set.

## What happened since the plan in force

happened-away = { $how ->
        [back] { $crew } is there after all{" "}
       *[away] { $crew } is away{" "}
    }{ $last ->
        [none] on { $first }
       *[other] from { $first } to { $last }
    }{ $heads ->
        [none] {""}
       *[other] , { $heads } of it
    }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = A crew is away, or an absence was taken back.
happened-overtime = the overtime of { $crew } on { $on }, { $start } to { $end }, was { $how ->
        [given] given
        [changed] changed
       *[taken] taken back
    }
    .means = Hours beside the shifts were added or taken out.
happened-closed = { $hall ->
        [none] the mill
       *[other] { $hall }
    } { $how ->
        [shut] { $stops ->
            [weaving] does not weave
            [work] has no conversions
           *[both] is closed
        }
       *[open] is open after all
    } on { $on }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = A closure was added, changed or taken out.
happened-order = { $how ->
        [new] a receipt of { QUANTITY($quantity, $unit) } { $part } is promised for { $due }
        [gone] the receipt of { QUANTITY($quantity, $unit) } { $part } promised for { $due } is no longer on order
        [moved] the receipt of { QUANTITY($quantity, $unit) } { $part } promised for { $due } is promised for { $now } now
       *[other] the receipt of { QUANTITY($quantity, $unit) } { $part } promised for { $due } is of { QUANTITY($less, $unit) } now
    } (order { $order })
    .means = An order line was added, changed or taken out.
happened-came-late = the receipt of { QUANTITY($quantity, $unit) } { $part } promised for { $due } came on { $came }
    .means = An order line came in after its date.
happened-not-come = the receipt of { QUANTITY($quantity, $unit) } { $part } promised for { $due } has not come (order { $order })
    .means = An order line is past its date.
happened-not-ordered = no more { $part } was ordered: an order placed now comes on { $now }, one placed when the plan was made on { $was }
    .means = A plan could wait for parts to be ordered, and nobody ordered them.
happened-fewer = { QUANTITY($quantity, $unit) } { $part } fewer: { $how ->
        [count] by a count
       *[loss] { $why ->
            [none] taken off the stock
           *[other] { $why }
        }
    }{ $loom ->
        [none] {""}
       *[other] {" "}(loom { $loom })
    }
    .means = A count found less, or parts were lost or scrapped.
happened-issued = { QUANTITY($quantity, $unit) } { $part } handed out{ $loom ->
        [none] {""}
       *[other] {" "}for loom { $loom }
    }
    .means = Parts left the stock for a loom that the plan did not book them for.
happened-method = the method is version { $version } now
    .means = The method was changed.
happened-term = the term { $term } was changed from { $was } to { $now }
    .means = A term was changed.
happened-row = { $what } is { $how ->
        [new] new in
       *[gone] no longer in
    } { $sheet }
    .means = A crew, tool or part was added or taken out.
happened-field = { $heading } of { $what } was changed from { $was } to { $now }
    .means = A value of a crew, a tool, a part or the weaving hours was changed.
