### How far the programme is, and what is late.

late-start = Loom { $loom } was to begin on { $start } and is not recorded as begun.
    .means = The booked start has passed without a record.
late-start-follows = Its crew is taken to be free. Record it as in work, or plan again.
    .means = What comes of a booking that passed unrecorded.
late-end = Loom { $loom } is in work; it was to be done on { $end }.
    .means = A conversion is in work past its booked end.
late-end-follows = Its crew is still held and the loom stands. Record its end, or why it goes on.
    .means = What comes of a conversion that takes longer than booked.
late-beam-out = The warp of loom { $loom } should have run out on { $out }, by its reading of { $read }.
    .means = The forecast beam-out has passed.
late-beam-out-follows = Look whether it has, and load a new reading; until then nothing is sure of this loom.
    .means = What comes of a beam-out that should have been.
late-warps-more = { $more ->
        [one] 1 more warp should
       *[other] { $more } more warps should
    } have run out by the readings.
    .means = Of many beam-outs that have passed, those that are not listed.
    .hint = Load new readings.
    .terminal = Load new readings; --json FILE lists all.
late-receipt = Order { $order }: { QUANTITY($quantity, $unit) } of { $part } were due on { $due } and have not come.
    .means = A receipt is past its date.
late-receipt-follows = { $reckoned ->
        [no] They cannot be ordered, so nobody may rely on them.
       *[yes] Reckoned with on { $comes }, as if ordered today.
    } { $many ->
        [0] No booked kit wants the part.
        [one] The kit of loom { $looms } wants the part.
       *[other] The kits of looms { $looms } want the part.
    } Receive them, or correct the day.
    .means = What comes of an order line past its date.
pace = { $how ->
        [ahead] The programme has not begun, so there is no pace yet.
        [soon] The pace shows once the programme has run for a week.
        [never] Nothing was signed off in the last { $days } days; at this pace it never ends.
       *[told] { $done ->
            [one] { $done } loom was
           *[other] { $done } looms were
        } signed off in the last { $days } days; at this pace { $to_come ->
            [one] the one still to come is
           *[other] the { $to_come } still to come are
        } done by { $finish }.
    }
    .means = The finish at the pace of the last four weeks.
pace-done = All looms of the plan are signed off.
    .means = Nothing is still to come.
reference-plan = Planned is what plan { $number } of { $made } says, the first that was published{ $how ->
        [chosen] , as the term chooses it
       *[first] {""}
    }.
    .means = Which plan the planned curve and cost come from.
reference-not-there = The term reference plan names plan { $asked }, which was never published.
    .means = The term names a plan that cannot be the reference.
    .hint = { $numbers ->
        [none] No plan is published yet; leave the term empty.
       *[other] Published are { $numbers }; empty is the first of them.
    }
labour-untimed = { $many ->
        [one] 1 conversion was
       *[other] { $many } conversions were
    } recorded without a time and not counted.
    .means = What the recorded labour leaves out.
finish-without-plan = No plan is published yet.
    .means = There is no finish to tell.
    .terminal = `beamslot plan --publish` makes the first plan.
finish-without-booking = No loom is booked.
    .means = There is no finish to tell.
finish = The last booked conversion ends on { $on }{ $how ->
        [none] {""}
        [on] , on the target
        [after] , { $days ->
            [one] 1 day
           *[other] { $days } days
        } after the target
       *[before] , { $days ->
            [one] 1 day
           *[other] { $days } days
        } before the target
    }{ $left_over ->
        [0] {""}
        [one] ; 1 loom is left over and not in this date
       *[other] ; { $left_over } looms are left over and not in this date
    }.
    .means = When the published plan ends, held against the target.
unbooked-stage = { $stage } on { $since }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = A loom without a booking has gone on, or is not to come.
unbooked-left-over = left over: { $why }
    .means = The published plan leaves a loom over.
unbooked = not in the published plan
    .means = A loom is neither booked nor left over.

## What may go wrong

risk-kit = Loom { $loom }, to start on { $start }: its kit lacks { $parts }, and nothing on order brings that in time.
    .means = A kit of the next fortnight will not be whole.
risk-reading = Loom { $loom }, to start on { $start }: when its warp runs out is told by a reading of { $read }.
    .means = The beam-out of a booking of the next fortnight rests on an old reading.
    .hint = Read it again.
risk-rehearsed = Loom { $loom }, to start on { $start }: starts as booked in { $percent } of 100 rehearsed runs ({ $cause }).
    .means = Rehearsal says that a booking of the next fortnight will hardly start as booked.
risk-order = { QUANTITY($quantity, $unit) } of { $part } are to be ordered by { $by }; else { $many ->
        [one] a booking falls
       *[other] { $many } bookings fall
    }: { $looms }.
    .means = An order of the next fortnight without which bookings fall.
