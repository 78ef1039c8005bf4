### Keeping bookings where they are: what can be held, and what keeping costs.

holds-refused = { $first }{ $more ->
        [0] {""}
       *[other] {" "}(and { $more } more, named below)
    }; nothing was saved
    .means = Bookings that were to stay cannot.
    .hint = leave them out, or lift the limit that is named
cannot-hold = loom { $loom } cannot stay{ $start ->
        [none] {""}
       *[other] {" "}on { $start }
    }: { $why }
    .means = One booking that was to stay, and the limit that does not let it.
hold-not-booked = the published plan does not book it
    .means = There is no booking to hold.
hold-not-to-plan = it is not to be planned: by what was recorded it is done, in work, put off or left out
    .means = A loom whose booking is to be held needs no booking any more.
hold-firm = its firm booking is on { $start }
    .means = A firm booking stays where it is, and another one of the same loom was to be held.
    .terminal = --release { $number } gives it up
hold-past = that moment is past
    .means = A booking to be held lies before the moment from which is planned.
hold-no-work = its work is not known any more{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = The method or the survey no longer says what the loom needs.
hold-no-choice = the method has no conversion with its choices any more
    .means = What was chosen for a booking that is to be held is gone from the method.
hold-no-crew = no crew of the trade '{ $trade }' works in { $hall } then
    .means = A booking to be held would begin where nobody works.
hold-hours-end = the crews' time ends before it is done
    .means = A booking to be held would not end before the horizon.
hold-protected = the loom is protected until { $until } included
    .means = A booking to be held lies on a day on which its loom may not be stopped.
hold-ruled-out = its window was ruled out
    .means = A booking to be held begins in a span in which its loom is not to be converted.
    .hint = allow it again, or do not hold it
hold-closed = its loom would stand open over a closed day (term 'open over closed days')
    .means = By its present length or the present closures a booking to be held would not be done before a closed day.
hold-unwatched = somebody whom its restart needs after it would not be at work (steps after restart, term 'watch')
    .means = A booking to be held would end when nobody can look after its restart.
hold-short = { $short }
    .means = What there is too little of for a booking that is to be held.
stay-dearer = leaving its loom over would cost less
    .means = A booking that can only be left where it is at more than it costs to leave its loom over.
hold-no-window = { $expected ->
        [none] no beam-out, no standing span and no warp to stop is known for it before the horizon
       *[other] { $beam ->
            [yes] its beam-out is now expected on { $expected }, too far from that start
           *[no] its nearest window now begins on { $expected }
        }
    }
    .means = The beam-out or the standing span has left a booking that is to be held.
hold-pilot = { $at ->
        [none] its type, { $type }, has no pilot that can have run { $days } days by then (soak)
       *[other] the pilot of { $type } will have run { $days } days only on { $at } (soak)
    }
    .means = A booking to be held would begin before its type's pilot has proven itself.
nothing-to-keep = no plan is published, so there is no booking to keep
    .means = Bookings were to be held, or few to be moved, without a published plan.
    .hint = publish one
    .terminal = `beamslot plan --publish` makes one
hold-and-release = loom { $loom } cannot be both held and released
    .means = The same loom was named for both.
calm-below-0 = { $moves } more moves than needed: 0 or more are meant
    .means = Fewer moves than the data need cannot be asked for.

## What keeping costs

moves-fewest = { $moves ->
        [0] No booking is moved
        [one] 1 booking is moved
       *[other] { $moves } bookings are moved
    }; { $fewest ->
        [0] none has to be by the data as they are
       *[other] no plan by these data moves fewer than { $fewest }
    }.
    .means = How many published bookings a calm plan moves, and how many it must.
moves-made = { $moves ->
        [0] No booking is moved.
        [one] 1 booking is moved.
       *[other] { $moves } bookings are moved.
    }
    .means = How many published bookings a plan moves.
keeping-costs = The plan that is free to move any moves { $moves } and costs { MONEY($costs, $currency) } less, the price of moves left out; each is within { MONEY($open, $currency) } of the best there can be.
    .means = What holding bookings, or moving few of them, costs beside the plan that need not.
keeping-free = The plan that is free to move any moves { $moves } and would not cost less.
    .means = Holding bookings, or moving few of them, costs nothing.
keeping-unknown = The search was stopped before the plan that is free to move any was found, so what keeping bookings costs is not known.
    .means = Nothing stands beside a plan that keeps bookings.
keeping-leaves = Left over for the sake of few moves, and booked by the plan that is free to move any: { $looms }.
    .means = Looms that a plan that keeps bookings leaves over, because a loom left over is one move and booking it would be more.
