### The stockroom's book: what cannot be received, issued, held or counted.

part-unknown = unknown part { $part }
    .means = A part was asked for that the parts list does not have.
    .hint = choose one of the parts list
    .terminal = `beamslot needs` lists the parts
part-unlisted = unknown part { $part }{ $where ->
        [kit] {" "}in the kit of loom { $loom }
        [order] {" "}in an open order line
       *[book] {""}
    }
    .means = A kit, an order line or an entry names a part that the parts list does not have.
    .hint = add it to the sheet Parts and load that
unit-differs = part { $part } is kept in { $kept ->
        [none] no unit
       *[other] { $kept }
    }, not in { $unit }
    .means = A quantity was given in another unit than that of the part.
    .hint = give the quantity in that
entry-kind-unknown = entry { $number } of the stockroom's book, of part { $part }, is of the kind '{ $kind }'; this version knows { $known }
    .means = A later version, or a hand in the database, wrote an entry of another kind.
    .hint = update Beamslot

## Quantities

quantity-no-number = is no number
    .means = What is wrong with a quantity: it is infinite or none at all.
quantity-above-most = is more than { QUANTITY($most, $unit) }
    .means = What is wrong with a quantity: it is beyond all bounds.
quantity-not-whole = is no whole number of { $unit }
    .means = What is wrong with a quantity: its unit is counted in whole ones.
quantity-too-fine = is finer than { QUANTITY($step, $unit) }
    .means = What is wrong with a quantity: its unit is not counted as finely.
quantity-wrong = part { $part }: { QUANTITY($quantity) } { $wrong }
    .means = A quantity was given that the part's unit does not have.
    .hint = give it as it was counted
entry-quantity = part { $part }: { QUANTITY($quantity) } is no quantity for an entry of kind { $kind }
    .means = An entry of no quantity, or of the wrong sign for its kind.
    .hint = give one above 0
reason-needed = part { $part }: { $how ->
        [receipt] a receipt without an order line
       *[adjustment] an adjustment of { QUANTITY($quantity, signed: "yes") }
    } needs its reason
    .means = What changes the stock without a paper needs to be explained.
    .hint = say why
    .terminal = say it with --why TEXT
stock-above-most = part { $part }: { QUANTITY($quantity) } more would make more than { QUANTITY($most, $unit) } on hand
    .means = An entry would bring the stock beyond all bounds.
    .hint = give it as it was counted
stock-too-little = part { $part }: { QUANTITY($asked) } asked for, { QUANTITY($on_hand) } on hand
    .means = An entry would take more than there is.
    .hint = count the stock or book the receipt first
count-below-zero = part { $part }: { QUANTITY($quantity) } cannot be counted
    .means = A count of less than nothing.
    .hint = a count is 0 or more

## What comes in

receipt-of-what = say what came: an order line, or a part and its quantity
    .means = A receipt was given neither an order line nor a part with its quantity.
order-of-several-parts = order { $order } has lines for { $parts }
    .means = A number of an order with several lines was given without its part.
    .hint = say which part
order-unknown = no open order line { $order }{ $part ->
        [none] {""}
       *[other] {" "}for part { $part }
    }; open are { $open }
    .means = An order line was named that is not open, or not of that part.
short-delivery-impossible = order line { $order }: { QUANTITY($quantity) } is no short delivery of { QUANTITY($ordered) }
    .means = A short delivery of less than nothing or of more than was ordered.
    .hint = give what would come, from 0 to what is open

## What is ordered

order-of-nothing = no line was chosen
    .means = An order was to be entered without a line.
    .hint = choose at least one
order-number-needed = the order line of part { $part } has no number
    .means = An order line was to be entered without its number.
    .hint = give the number of the order and of its line, such as 4500123-10
order-number-taken = there is an order line { $order } already
    .means = A number was given to a new order line that another has or had.
    .hint = give each line a number of its own, such as { $order }-2
order-quantity = part { $part }: { QUANTITY($quantity) } cannot be on order
    .means = An order line of nothing or less.
    .hint = give a quantity above 0
order-due-past = order line { $order }: { $due } is past, today is { $today }
    .means = An order line was to be expected on a day that is over.
    .hint = give the day on which it comes; what has come is received
expect-what = say what changed: the day or the quantity
    .means = An order line was to be expected otherwise, and nothing was said of it.
line-ordered = ordered
    .means = Why there is a new order line, in the book.
line-expected-anew = expected anew
    .means = Why an order line changed where no reason was given, in the book.
order-expected = Order { $order }: { QUANTITY($quantity, $unit) } of { $part } expected on { $due }.
    .means = What is open of an order line.
order-closed = Order { $order }: no more of { $part } is expected.
    .means = An order line of which nothing more comes.
kit-is-now = The kit of loom { $loom } is { $state ->
        [issued] issued
        [complete] complete
        [reserved] reserved
       *[short] short
    } now.
    .means = A kit waits otherwise since an order line changed.

## What goes out and comes back

loom-without-booking = loom { $loom } is not booked in the published plan
    .means = Parts were asked for a loom that has no booking, so that its kit is not known.
    .hint = { $then ->
        [issue] issue it part by part
        [reserve] say which part and how much
       *[kit] it has no kit yet
    }
kit-incomplete = the kit of loom { $loom } lacks { $short }
    .means = A whole kit was to be issued and some of it is not reserved.
    .hint = issue it incomplete or part by part
part-quantity = { QUANTITY($quantity) } { $part }
    .means = So many of a part.
nothing-reserved = nothing{ $part ->
        [none] {""}
       *[other] {" "}of part { $part }
    } is reserved for loom { $loom }{ $issued ->
        [yes] ; its kit was issued
       *[no] {""}
    }
    .means = There is nothing to issue or to release for a loom.
issue-quantity = part { $part }: { QUANTITY($quantity) } cannot be issued to loom { $loom }
    .means = The kit needs nothing of a part, or nothing was asked for.
    .hint = say how much, above 0
not-free = part { $part }: { QUANTITY($asked) } asked for loom { $loom }, { QUANTITY($free) } free of { QUANTITY($on_hand) } on hand{ $held ->
        [none] {""}
       *[other] {" "}({ $held })
    }
    .means = More of a part was asked for than is free.
    .hint = take it from another kit or wait for a receipt
held-for-looms = { $looms } reserved
    .means = What of a part is held for other looms.
quantity-for-loom = { QUANTITY($quantity) } for loom { $loom }
    .means = So much of a part for a loom.
held-as-safety = { QUANTITY($quantity) } safety stock
    .means = What of a part is kept as safety stock.
return-without-loom = part { $part }: a return needs the loom whose kit it comes from
    .means = A part came back and its loom is not said.
return-above-issued = part { $part }: { QUANTITY($quantity) } to be returned from loom { $loom }, which holds { QUANTITY($held) } of what was issued to it
    .means = More is to come back than a loom was given.
    .hint = book more as a receipt or a count
nothing-issued = loom { $loom } has nothing{ $part ->
        [none] {""}
       *[other] {" "}of part { $part }
    } of what was issued to it
    .means = There is nothing that a loom could give back.
scrap-above-issued = part { $part }: { QUANTITY($quantity) } cannot be scrapped from loom { $loom }, which has { QUANTITY($held) } of what was issued to it
    .means = More is to be scrapped than a loom was given.
    .hint = what breaks on the shelf is an adjustment
scrap-above-stock = part { $part }: { QUANTITY($quantity) } cannot be scrapped, { QUANTITY($on_hand) } on hand
    .means = More is to be scrapped than there is.
nothing-to-recover = nothing is out with loom { $loom } that comes back by the method
    .means = By the method nothing comes back from a loom, or all of it is back.
part-stays = part { $part } does not come back from loom { $loom } by the method
    .means = A part was to come back after use that by the method stays with the loom.
    .hint = if it was not used, give it back

## What is held

kit-not-needed = loom { $loom } is { $stage }, so nothing is held for it
    .means = A loom is at a stage at which it gets no parts any more.
    .hint = record it as scoped first
kit-lacks-nothing = the kit of loom { $loom } lacks nothing
    .means = There is nothing to reserve.
part-not-lacking = part { $part }: loom { $loom } lacks none of it
    .means = A kit needs nothing more of a part.
    .hint = say how much to reserve, above 0
taken-from-itself = loom { $loom } cannot take from itself
    .means = A part was to go from a loom to the same loom.
taken-above-reserved = part { $part }: { QUANTITY($quantity) } to be taken from loom { $loom }, which has { QUANTITY($held) } reserved
    .means = More is to be taken from a kit than is reserved for it.
taking-costs = Loom { $giver } gives { QUANTITY($quantity, $unit) } of { $part } to loom { $taker }{ $lacks ->
        [none] . It is not booked, so nobody orders it anew.
       *[other] {" "}and then lacks { QUANTITY($lacks, $unit) } for its conversion on { $start }. { $expected ->
            [none] Nothing on order brings that in time.
           *[other] What is on order brings it by { $expected }.
        }
    }
    .means = What a loom loses whose part is taken for another, before it is done.
reservation-below-zero = part { $part }: { QUANTITY($quantity) } cannot be reserved for loom { $loom }
    .means = A reservation of less than nothing.
    .hint = give a quantity above 0
reservations-above-stock = part { $part }: { QUANTITY($reserved) } would be reserved, { QUANTITY($on_hand) } on hand
    .means = Reservations would be made for more than there is.
    .hint = take it from another kit or wait for a receipt
no-kits-yet = no plan is published, so there are no kits yet
    .means = Kits are those of the published plan.
    .terminal = `beamslot plan --publish` makes one
    .screen = publish one

## Kits, choices and needs

kits-counted = { $kits ->
        [one] 1 kit
       *[other] { $kits } kits
    }: { $issued } issued, { $complete } complete, { $reserved } reserved, { $short } short.
    .means = How many kits of booked looms are in which state.
kits-to-pick = { $first }{ $last ->
        [none] {""}
       *[other] {" "}to { $last }
    }: { $kits ->
        [one] 1 kit
       *[other] { $kits } kits
    } to pick, { $short ->
        [0] none short
       *[other] { $short } of them short
    }.
    .means = What is to be picked on some days.
choice-taken = { $taken } taken for { $looms ->
        [one] 1 loom
       *[other] { $looms } looms
    }; { $other } instead: parts { $parts }, labour { $labour }
    .means = What the plan took where the method gives a choice, and what the other would have cost.
money-against = { $how ->
        [same] the same
        [dearer] { MONEY($amount, $currency) } dearer
       *[cheaper] { MONEY($amount, $currency) } cheaper
    }
    .means = By how much something would cost more or less.
no-choices = No booked loom had a choice.
    .means = The method gave the booked looms nothing to choose.
stock-of-part = { $part }: { QUANTITY($on_hand, $unit) } on hand, { QUANTITY($reserved) } reserved, { QUANTITY($free) } free.
    .means = The stock of a part after an entry.
kit-lacks = Loom { $loom } lacks { $parts } ({ $state ->
        [issued] issued
        [complete] complete
        [reserved] reserved
       *[short] short
    }).
    .means = What the kit of a booked loom lacks after an entry.
held-by-hand = reserved by hand
    .means = Why a reservation changed, in the book.
released-by-hand = released by hand
    .means = Why a reservation changed, in the book.
taken-for-loom = taken from loom { $giver } for loom { $taker }
    .means = Why reservations changed, in the book.
needs-of = These are the needs of { $basis }.
    .means = Which bookings the needs are of, where no plan is published.
    .screen = A planner makes and publishes one on the screen Bookings: its kits show here then.
needs-of-published = the published plan
    .means = The needs are those of the plan in force.
needs-of-plan = plan { $number }, which is not published
    .means = The needs are those of a plan that was made and is not in force.
needs-as-they-come = each beam-out taken as it comes, since no plan is made yet
    .means = The needs are those of bookings that nobody planned.
nothing-to-order = Nothing is to be ordered: stock and open orders cover every need.
    .means = No order line is proposed.
order-lines = { $many ->
        [one] 1 order line
       *[other] { $many } order lines
    }, { MONEY($amount, $currency) }.
    .means = What is to be ordered in all.
order-lines-late = { $many ->
        [one] 1 line is
       *[other] { $many } lines are
    } late: the order-by day is past. That touches { $looms ->
        [one] 1 loom
       *[other] { $looms } looms
    }.
    .means = Orders that should have been placed by now.
money-in-all = With the open orders { MONEY($total, $currency) } in all, the most in { $month }: { MONEY($most, $currency) }, taken at delivery.
    .means = What the open orders and those to place cost, and when most of it.
overdue = { $what } { $follows }
    .means = An order line past its date, and what comes of it.
still-out = Loom { $loom } still has { QUANTITY($quantity, $unit) } of { $part } that should have come back on { $due }; counted as there, recover it.
    .means = A part that comes back by the method has not been booked back.
