### The rehearsal: what it cannot play, what it is told.

spread-out-of-range = { $name } is { $value }; it must lie between { $least } and { $most }
    .means = A rate, share or length that the rehearsal was given is impossible.
nothing-to-rehearse = no booking of the published plan is still to come
    .means = Every loom that the plan books is in work, converted, put off or left out.
    .hint = make a new plan first
no-rehearsal = the published plan was not rehearsed yet
    .means = A report of a rehearsal was asked for, and the plan in force has none.
    .hint = play it first
    .terminal = play it first: beamslot rehearse
rehearsal-stopped-early = stopped before the first run was done; nothing was kept
    .means = The rehearsal was stopped before it had anything to say.
rehearsal-process-lost = one of { $jobs } processes was ended by the machine; nothing was kept
    .means = The system killed a worker process, as it does where memory is short.
    .hint = play it in fewer processes
    .terminal = with fewer --jobs less memory is needed
cluster-not-installed = a cluster cannot be asked: its library is not installed here
    .means = Work was to be done by a Dask cluster, without the extra that speaks to one.
    .hint = install the extra: pip install 'beamslot[cluster]'
cluster-no-address = { $address } is no address of a cluster
    .means = The address of a scheduler names how it is spoken to, the machine and the port.
    .hint = give it as tcp://10.0.0.5:8786
cluster-not-there = no cluster answered at { $address } within { $seconds } s; nothing was written
    .means = No scheduler listens at that address, or it cannot be reached.
    .hint = start it, or let this machine do it
    .terminal = start it, or leave out --cluster to play here
cluster-without-workers = the cluster at { $address } has no worker; nothing was written
    .means = The scheduler answers, but nobody is there to work.
    .hint = start a worker
cluster-lost = the cluster at { $address } was lost; nothing was written
    .means = Scheduler or workers went away while they worked.
    .hint = look at their log, or let this machine do it
    .terminal = look at their log, or leave out --cluster to play here
rehearsal-runs = a rehearsal has 1 to { $most } runs, not { $runs }
    .means = So many runs cannot be asked for.
rehearsal-no-policy = there is no policy { $name }; there are { $names }
    .means = What was to be played is none of the ways in which a hall can be run.
rehearsal-no-spread = nothing varies by the name { $name }; there are { $names }
    .means = A rate or share was given that the rehearsal does not know.
rehearsal-no-source = { $name } is nothing that varies; there are { $names }
    .means = A source was to be switched off that there is not.

## While it plays

runs-played = played { $done } of { $of } times
    .means = How far a rehearsal is: runs of what is held against the others.

tuning-tried = { $tried ->
        [one] 1 way of planning
       *[other] { $tried } ways of planning
    } tried; the best so far costs { MONEY($saves, $currency) } less in the hall
    .means = How far a tuning is.
tuning-judged = the best is judged in other worlds, { $done } of { $of }
    .means = How far the end of a tuning is.

## What lets a plan survive

tuning-worlds = a tuning plays { $least } to { $most } worlds
    .means = So many worlds cannot be asked for.
tuning-stopped-early = stopped before two ways of planning were compared; nothing was kept
    .means = The tuning was stopped before it had anything to say.
not-tuned = nobody has looked yet for terms that let the plan in force survive
    .means = Terms are to be taken over, and the plan in force has no tuning.
    .hint = look for them first
    .terminal = look for them first: beamslot rehearse --tune
tuning-helps-nothing = of what was tried nothing helps for sure; the terms stay as they are
    .means = Terms are to be taken over that were not found to help.
    .hint = tune again with more worlds
tuning-overtaken = what was tuned is overtaken: by the data of now the plan costs { MONEY($now, $currency) }, not { MONEY($then, $currency) }
    .means = Data changed after a tuning, so that nothing is known of the plan that would be made now.
    .hint = tune again
    .terminal = tune again: beamslot rehearse --tune
tuning-basis = { $tried ->
        [one] 1 way
       *[other] { $tried } ways
    } to plan played in the same { $worlds } worlds; the best beside a plan that does nothing to survive, in { $runs } other worlds.{ $light ->
        [judged] {" "}With so many looms what was tried was planned by a light search; the best, and the plan that does nothing to survive, were both planned by the whole one before they were judged.
        [only] {" "}With so many looms what was tried was planned by a light search.
       *[no] {""}
    }{ $stopped ->
        [yes] {" "}It was stopped before the end.
       *[no] {""}
    }
    .means = What a tuning rests on.
tuning-helps = Planned with { $ways }, it costs { MONEY($by, $currency) } { $paper ->
        [dearer] more
       *[cheaper] less
    } on paper and saves { MONEY($saves, $currency) } in the hall, between { MONEY($low, $currency) } and { MONEY($high, $currency) } (95 % sure): there it costs { MONEY($kept, $currency) } instead of { MONEY($without, $currency) }.
    .means = The best that was found is cheaper in the hall for sure.
tuning-open = Nothing helps for sure; leave the terms at nothing. The best, { $ways }, costs { MONEY($by, $currency) } { $paper ->
        [dearer] more
       *[cheaper] less
    } on paper, and in the hall between { MONEY($low, $currency) } and { MONEY($high, $currency) } more (below 0: less; 95 % sure).
    .means = What was found may be chance.
tuning-unjudged = The best so far, { $ways }, was not played in other worlds; whether it helps is not known.
    .means = The tuning was stopped before its end.
tuning-term = { $name } { $kind ->
        [share] { NUMBER($value, maximumFractionDigits: 1) } %
        [days] { $value ->
            [one] 1 day
           *[other] { $value } days
        }
        [hours] { NUMBER($value) } h
        [yes] yes
       *[times] { NUMBER($value) }
    }
    .means = One term and its value.
tuning-ways = { $ways }
    .means = How a plan was made, in a row of a table.
tuning-variant = plan { $variant } of those that are as good
    .means = Another plan of the same cost within the gap.
tuning-without = nothing
    .means = A plan without such terms.
tuning-accepted = The terms are set. Plan { $plan } is made by them: { $looms ->
        [one] 1 loom
       *[other] { $looms } looms
    } booked, { MONEY($cost, $currency) }. It is not in force until it is published.
    .means = Said once a tuning was taken over.
    .terminal = beamslot plan --number { $plan } --publish puts it in force.

## What it says

rehearsal-basis = Plan { OWN($plan) } was played { $runs ->
        [one] once
       *[other] { $runs } times
    } as of { $as_of }{ $how ->
        [stopped] {" "}(stopped; { $asked } were asked for)
       *[whole] {""}
    }; it has { $to_do } bookings to come.
    .means = Which plan was rehearsed, how often, and from when on.
rehearsal-done = In 80 of 100 runs at least { $looms } of the { $to_do } are converted before the horizon. The plan itself says all { $to_do } by { $end }.
    .means = How many looms one can promise at all.
rehearsal-date = { $looms } are done by { $half } in half of the runs and by { $sure } in 80 of 100: promise no more than that.
    .means = The most looms that are done in 80 of 100 runs, and by when.
rehearsal-target = By the target, { $day }, at least { $looms } of the { $to_do } are done in 80 of 100 runs, all of them in { $percent } of 100.
    .means = What the target date is worth.
rehearsal-cost = It costs { MONEY($middle, $currency) } as likely as not, between { MONEY($low, $currency) } and { MONEY($high, $currency) } in 80 of 100 runs, { MONEY($mean, $currency) } on average; the plan says { MONEY($says, $currency) }.
    .means = The cost of the programme with its spread, beside what the plan reckons.
rehearsal-lost = { MONEY($cost, $currency) } of it, on average, is the price of looms that were booked and not begun before the horizon: { $looms } as likely as not.
    .means = How much of the cost goes back to lost looms.
rehearsal-against = { $other ->
        [rule-of-thumb] No plan, each beam-out taken as it comes (waiting at most { OWN($limit) } h, the best such limit),
        [replanned] The plan made anew each Monday, from what is known by then,
        [never-cut] The plan kept, but no warp ever cut,
       *[kept] The plan kept as it is
    } { $how ->
        [dearer] costs { MONEY($by, $currency) } more than the plan { $policy ->
            [rule-of-thumb] left aside
            [replanned] made anew each Monday
           *[kept] kept
        }, between { MONEY($low, $currency) } and { MONEY($high, $currency) } (95 % sure, { $runs } runs both ways).
        [cheaper] costs { MONEY($by, $currency) } less than the plan { $policy ->
            [rule-of-thumb] left aside
            [replanned] made anew each Monday
           *[kept] kept
        }, between { MONEY($low, $currency) } and { MONEY($high, $currency) } (95 % sure, { $runs } runs both ways).
       *[open] cannot be told apart from the plan { $policy ->
            [rule-of-thumb] left aside
            [replanned] made anew each Monday
           *[kept] kept
        } in { $runs } runs both ways; about { $more } more would settle it.
    }
    .means = Two ways of running the hall, in the same worlds.
rehearsal-worry = { $source ->
        [beam-outs] Beam-outs that come as forecast are
        [work] Work that takes as long as planned is
        [people] { $crew ->
            [none] A stand-in for everybody who is away unforeseen is
           *[other] A stand-in for { $crew } is
        }
        [receipts] Deliveries whole and on their day are
        [failures] No conversion that fails half way is
       *[orders] No loom protected at short notice is
    } worth about { MONEY($worth, $currency) }, between { MONEY($low, $currency) } and { MONEY($high, $currency) } (95 % sure).
    .means = What the programme would cost less were one thing certain.
rehearsal-worries-open = Not worth anything for sure in so many runs: { $names }.
    .means = Worries whose worth cannot be told from nothing.
rehearsal-rests-on = Taken as is usual, for want of figures of the mill's own: { $names }.
    .means = Which of the figures that a rehearsal rests on are defaults, with their values.
rehearsal-rests-on-records = From the mill's own records: { $names }. By how much, from how many records and since when stands in the table of what it rests on.
    .means = For what the mill's own records say how much it varies.
rehearsal-varies = { $source ->
        [beam-outs] use of warp
        [work] work
        [people] absences
        [receipts] deliveries
        [failures] failed conversions
       *[orders] looms protected at short notice
    }
    .means = What varies, in few words.
rehearsal-rests-on-asked = As was asked for, or the terms say: { $names }.
    .means = Which of the figures that a rehearsal rests on were given by who asked for it.
rehearsal-usual = { $name ->
        [day-to-day-variation] use of warp varying by { NUMBER($value, maximumFractionDigits: 1) } % from day to day where a loom has too few daily readings
        [day-to-day-variation-own] use of warp varying by { NUMBER($value, maximumFractionDigits: 1) } % from day to day
        [work-cv] work varying by { NUMBER($value, maximumFractionDigits: 1) } % where the method gives no low and high
        [work-cv-own] work varying by { NUMBER($value, maximumFractionDigits: 1) } %
        [away-share] { NUMBER($value, maximumFractionDigits: 1) } % of days away unforeseen
        [away-days] absences of { NUMBER($value, maximumFractionDigits: 1) } days
        [late-share] { NUMBER($value, maximumFractionDigits: 1) } % of deliveries late
        [late-days] late deliveries by { NUMBER($value, maximumFractionDigits: 1) } days
        [short-share] { NUMBER($value, maximumFractionDigits: 1) } % of deliveries short
        [fail-share] { NUMBER($value, maximumFractionDigits: 1) } % of conversions failing
        [protected-per-week] looms protected at short notice: { NUMBER($value, maximumFractionDigits: 1) } a week
        [protected-days] protected for { NUMBER($value, maximumFractionDigits: 1) } days
       *[reading-error] readings of warps wrong by { NUMBER($value, maximumFractionDigits: 1) } %
    }
    .means = One figure that a rehearsal draws by.
rehearsal-usual-of = { $figure } ({ $names })
    .means = One figure, and for whom it was taken.
rehearsal-records = { $what ->
        [day-to-day-variation] { $count ->
            [one] 1 reading
           *[other] { $count } readings
        }
        [work-cv] { $count ->
            [one] 1 conversion
           *[other] { $count } conversions
        }
        [fail-share] { $count ->
            [one] 1 conversion
           *[other] { $count } conversions
        }
        [away-share] { $count ->
            [one] 1 absence
           *[other] { $count } absences
        }
        [away-days] { $count ->
            [one] 1 absence
           *[other] { $count } absences
        }
        [late-days] { $count ->
            [one] 1 late delivery
           *[other] { $count } late deliveries
        }
        [protected-per-week] { $count ->
            [one] 1 loom
           *[other] { $count } looms
        }
        [protected-days] { $count ->
            [one] 1 loom
           *[other] { $count } looms
        }
       *[late-share] { $count ->
            [one] 1 delivery
           *[other] { $count } deliveries
        }
    } since { $since }
    .means = How many records of what a figure comes from.
rehearsal-from = { $by ->
        [records] own records
        [together] own records, all together
        [asked] as asked for, or by the terms
       *[usual] usual
    }
    .means = From where a figure comes, in a row of a table.
rehearsal-whose = { $names ->
        [none] { $kind ->
            [type] all types
            [crew] everybody
            [supplier] all suppliers
           *[mill] the mill
        }
       *[other] { $names }
    }
    .means = For whom a figure was taken, in a row of a table.
rehearsal-source = { $source ->
        [beam-outs] beam-outs as forecast
        [work] work as long as planned
        [people] { $crew ->
            [none] a stand-in for everybody
           *[other] a stand-in for { $crew }
        }
        [receipts] deliveries whole and on their day
        [failures] no conversion that fails
       *[orders] no loom protected at short notice
    }
    .means = What would be certain, in few words.
rehearsal-cause = { $cause ->
        [beam-out] its beam-out
        [crew-away] a crew away
        [crew-busy] crews busy with others
        [other-trades] another trade busy or away
        [tools] a tool in use
        [protected] protected at short notice
        [pilot] the pilot of its type
        [parts] parts missing
        [looms-stopped] too many looms stopped
        [horizon] no time before the horizon
        [hours] no end that the rules allow
        [failed] failed and done again
       *[nothing] nothing in particular
    }
    .means = What keeps a booking from its date most often.
rehearsed = Rehearsed on { $made } ({ $runs } runs): { $looms ->
        [none] no quarter of the { $to_do } booked looms is done for sure before the horizon
       *[other] { $looms } of the { $to_do } booked looms are done by { $half } (P50), by { $sure } (P80)
    }; in 80 of 100 runs at least { $done } before the horizon, at no more than { MONEY($most, $currency) } (P50 { MONEY($cost, $currency) }).
    .means = The finish and the cost with their spread, as the last rehearsal of the published plan has them.
