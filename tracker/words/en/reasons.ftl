### What a plan says of itself: why looms are left over, what became of firm bookings, what was taken for granted.

as-it-stands = { $text }
    .means = A text that was kept before messages had codes.

## Why a loom is left over

left-put-off = put off: { $reason }
    .means = The loom is not to be planned for now.
left-no-window = no beam-out, no standing span and no warp to stop before the horizon
    .means = Nothing before the horizon would let the loom be converted.
left-no-working-time = no working time of a crew in its windows
    .means = No crew of the lead trade works when the loom could be converted.
left-no-kit = no kit before the horizon: part { $part }, { QUANTITY($needed) } needed and { QUANTITY($had) } to be had{ $usable ->
        [none] {""}
       *[other] {" before "}{ $usable }, when an order placed now could be used
    }
    .means = The loom needs more of a part than it can ever have.
left-kit-late = no kit before the horizon: its parts come too late for its windows
    .means = The parts are there at last, but after the loom's windows.
left-protected = protected until { $until }
    .means = The loom is protected through all its windows.
left-ruled-out = its windows were ruled out
    .means = Somebody did not want the loom converted in the windows that it has.
left-never-there = there is never { $what } before the horizon
    .means = The work needs people, tools or places that are not there before the horizon.
left-not-then = { $what } not there at the hours in which its work needs it
    .means = What the work needs is there at other hours than it is needed.
never-nor = { $one } nor { $other }
    .means = Two things of which there is neither.
both-and = { $one } and { $other }
    .means = Two things together.
so-many-of = { $amount } × { $what }
    .means = So many heads of a trade, or so many of a tool.
place-among-stopped = a place among the looms stopped at once (a term)
    .means = The hall's limit of looms stopped for conversion.
left-no-pilot = { $machine_type } has no pilot that can be booked before the horizon, and the others of its type wait for one
    .means = The pilot of the loom's machine type cannot be booked.
left-behind-pilot = no window after { $opens }, when the pilot of { $machine_type } will have run { NUMBER($days) } days (soak)
    .means = All windows of the loom lie before its type's pilot has run long enough.
left-past-horizon = no window in which it would end before the horizon
    .means = Every conversion of the loom would run past the horizon.
left-open-closed = it would stand open over a day on which nobody converts (term 'open over closed days')
    .means = Every conversion of the loom would stand open over a closed day.
left-unwatched = the people whom its restart needs after it would not be at work (steps after restart, term 'watch')
    .means = Nobody would be there to watch the loom's restart.
left-dearer = every date costs more than leaving it over
    .means = Each single option costs more than the loom's penalty.
left-cheaper = leaving it over costs the mill less than any date that is free
    .means = What is free costs more than leaving the loom over.
left-taken = { $limit ->
        [part] no kit: part { $what } is
        [crews] no crew: every { $what } crew is
        [stopped] the looms that may be stopped at once are
        [section] the looms of its section that may be stopped at once are
        [week] the hours of the { $what } crews that may be planned in a week (term 'usual absence') are
       *[other] no { $what }: all are
    } taken in its windows by looms for which that saves more
    .means = The limit that keeps the loom from being booked.
left-no-beam-out = no beam-out with everything free in time
    .means = Taking each beam-out as it comes, the loom found none with crew, kit and tools free.

## What a whole plan says

surviving-reckoned = Of its cost { MONEY($reckoned, $currency) } are reckoned only so that it survives (term 'no second chance') and nobody pays them: without them it costs { MONEY($paid, $currency) }.
    .means = What the plan reckons beside what it costs.
no-loom-booked = No loom can be booked; for { $looms } of { $of } the reason is: { $why }. Lift that limit (a later horizon, more people, an earlier receipt) and plan again.
    .means = Why the plan books nothing at all.
taken-as-they-come = Each beam-out taken as it comes, waiting no longer than { NUMBER($limit_h) } h.
    .means = How the plan without planning was made.
late-pushes = Where the beam comes as late as one in five does, the wait pushes the end past the shift of { $looms }; overtime would end it the same day.
    .means = Bookings whose end a late beam would push past the shift.
loom-and-moment = { $loom } ({ $at })
    .means = A loom and the moment that matters to it.
loom-on-moment = { $loom } on { $at }
    .means = A loom and when it was booked.
planned-as-used-up = Part { $part } comes back after use, but is planned as used up: the looms booked need { QUANTITY($needed) } in all, { QUANTITY($there) } are there or on order; { $left ->
        [0] no loom is
        [one] 1 loom is
       *[other] { $left } looms are
    } left over for want of it.
    .means = What planning a part that comes back as used up costs.

## Firm bookings

firm-let-go = The firm booking of loom { $loom } on { $start } cannot stay: { $why }; { $now ->
        [none] its loom is left over
       *[other] it is booked anew on { $now }
    }.
    .means = A firm booking that the data do not allow any more.
firm-astray = The firm booking of loom { $loom } stays on { $start }, though its beam-out is now expected on { $beam_out }: late beam-out and lost production { MONEY($cost, $currency) }.
    .means = A firm booking whose beam-out has moved away from it.
    .hint = Release it, and it follows.
    .terminal = Let it follow with --release { $number }.
firm-no-crew = no crew of the trade '{ $trade }' works in { $hall } at its start
    .means = Nobody could begin the firm booking.
firm-hours-end = its crews' time ends before it is done
    .means = The crews of the firm booking have not the hours any more.
firm-protected = the loom is protected until { $until } included
    .means = The loom of a firm booking was protected since.
firm-ruled-out = its window was ruled out
    .means = Somebody does not want the loom of a firm booking converted then.
firm-part = it needs { QUANTITY($needed) } of part { $part }, { QUANTITY($there) } can be there
    .means = The kit of a firm booking is not whole.
too-little = too little { $kind ->
        [stopped] room among the looms stopped at once
        [section] room among the looms of a section stopped at once
        [week] of the week's { $what } hours that may be planned
       *[other] { $what }
    } from { $at } on
    .means = Of what there is too little, and when that begins.
firm-as-published = The firm booking of loom { $loom } stays as published: { $why }.
    .means = A firm booking whose work today's data do not give any more.
    .hint = Release it, and it is planned anew.
    .terminal = Plan it anew with --release { $number }.
no-such-work = the method no longer has a conversion with its choices
    .means = The method changed since a booking was made.
firm-other-end = The firm booking of loom { $loom } ends on { $end } instead of { $booked }: { $why ->
        [longer] its work takes { NUMBER($takes_h) } h by now, { NUMBER($booked_h) } h were booked
       *[hours] the hours of the crews have changed
    }.
    .means = A firm booking that ends later or earlier than published.
firm-shorter = The firm booking of loom { $loom } stays as published, { NUMBER($booked_h) } h, though its work takes { NUMBER($takes_h) } h by now.
    .means = A firm booking keeps its crew as long as it was published.
firm-overruns = The firm booking of loom { $loom } overruns: there is { $short }; it is taken to go on all the same.
    .means = A firm booking that takes longer than what it holds is there for.
in-work-overruns = For the looms in work there is { $short }; they are taken to go on all the same.
    .means = Conversions in work hold more than there is.
pilot-not-named = Loom { $named }, named as the pilot of { $machine_type }, cannot be booked: { $why }; { $instead ->
        [none] nor can any other of it
       *[other] loom { $instead } is its pilot instead
    }.
    .means = The pilot that the mill names cannot be one.
pilot-unattended = Loom { $loom }, the pilot of { $machine_type }, is converted without the { $trade } throughout: at no possible start is one at work from beginning to end. Overtime of that trade would let one be.
    .means = Nobody of the trade that is to stay with a pilot is at work long enough.
not-of-its-type = it is none of the { $machine_type } looms to plan
    .means = The named pilot is of another machine type, or not to be planned.

## What was taken for granted

passed-unrecorded = Booked, past and not recorded: { $looms }. Record what was done (in work, run-in, signed off); here they are planned anew.
    .means = Published bookings that were to start before now, of looms of which nothing is recorded.
crew-rows-overlap = Crew { $crew } stands in two rows whose hours overlap, first on { $at }; it counts as one crew there{ $hall ->
        [none] {""}
       *[other] , in { $hall }
    }.
    .means = Two rows of one crew say the same hours.
crew-short-of-heads = Crew { $crew } has fewer than the { $heads ->
        [one] 1 head
       *[other] { $heads } heads
    } that the method asks for on { $days }; it takes no conversion then.
    .means = A crew that is too small on some days.
rateless-trade = No crew of the trade '{ $trade }' is listed: its hours cost nothing here, and what needs it on the loom cannot be booked.
    .means = The method asks for a trade that no crew has.
rates-missing = No rate is given for { $crews }: their hours cost nothing here.
    .means = Crews without an hourly rate.
prices-missing = No price is given for { $parts }: what is used of them costs nothing here.
    .means = Parts without a price.
named-part = part { $part }
    .means = A part by its number.
order-overdue = Order { $order }: { QUANTITY($quantity) } of { $part } were due on { $due } and have not come; they { $comes ->
        [none] count on no day
       *[other] count like an order placed today, due on { $comes }
    }. Receive them, or give the receipt its new date.
    .means = A receipt is past its date.
lead-times-taken = No lead time is given for { $parts }: { $days ->
        [one] 1 day is
       *[other] { $days } days are
    } taken (term 'lead time where none is given').
    .means = Parts without a lead time are reckoned with the term's.
lead-times-none = No lead time is given for { $parts }: by the term 'lead time where none is given' they cannot be ordered.
    .means = Parts without a lead time count as not to be ordered.

## Prices of scarcity

scarce-crew-hour = { $trade } crew-hour
    .means = One hour more of a crew.
scarce-hour = { $what } hour
    .means = One hour more of a trade or a tool.
scarce-stopped = hour of one loom more stopped
    .means = One loom more stopped at once in the hall.
scarce-section = hour of one loom more of a section stopped
    .means = One loom more stopped at once in a weaver's section.
scarce-week = { $trade } crew-hour that may be planned
    .means = One crew-hour more of a week that the term `usual absence` lets be planned.
scarce-part = { $part }
    .means = One more of a part.

## While a plan is made

planning-step = { $beside ->
        [yes] the plan free to move any,{" "}
       *[no] {""}
    }{ $step ->
        [bound] how cheap a plan could be
        [start] a first plan
        [search] improving it
        [stay] leaving bookings where they are
        [price] what leaving each moved one would cost
       *[proof] proving it
    }: { $cost ->
        [none] {""}
       *[other] { MONEY($cost, $currency) },{" "}
    }gap { NUMBER($gap, minimumFractionDigits: 2, maximumFractionDigits: 2) }%
    .means = What the search is at, and how good its best plan is known to be.
