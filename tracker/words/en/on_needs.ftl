### The screen Kits and needs.

## At first glance

needs-then = what it needs shows here at once
    .means = What comes of a published plan here.
needs-kits-whole = Kits whole
    .means = A key figure at the head of the screen.
needs-kits-waiting = { $reserved } waiting for receipts, { $short } short
    .means = A key figure at the head of the screen.
needs-to-place = Orders to place
    .means = A key figure at the head of the screen.
needs-late = { $late ->
        [0] none late
       *[other] { $late } late
    }
    .means = A key figure at the head of the screen.
needs-on-order = On order
    .means = A key figure at the head of the screen.
needs-past-date = { $late ->
        [0] none past its date
       *[other] { $late } past their date
    }
    .means = A key figure at the head of the screen.
needs-money = Money, open orders included
    .means = A key figure at the head of the screen.
needs-dearest = most in { $month }: { $most }
    .means = A key figure at the head of the screen.
needs-overdue = { $many ->
        [one] One more thing
       *[other] { $many } more things
    } should have come or come back
    .means = What is overdue, folded away.
needs-urgent = To order by the end of this week
    .means = A heading on the screen.
needs-urgent-none = Nothing has to be ordered this week{ $following ->
        [none] {""}
       *[other] ; the next by { $following }
    }.
    .means = Said where there is nothing.
needs-short = Kits that lack parts, the first to start
    .means = A heading on the screen.
needs-short-none = No kit lacks what is not on order in time.
    .means = Said where there is nothing.
needs-short-more = and { $more } more below, by Kits
    .means = A line that helps.
needs-area = What to do
    .means = The label of a field.
needs-area-orders = To order
    .means = What can be done on the screen.
needs-area-receipts = On order, receipts
    .means = What can be done on the screen.
needs-area-kits = Kits
    .means = What can be done on the screen.
needs-area-stock = Stock
    .means = What can be done on the screen.
needs-area-weeks = Weeks and money
    .means = What can be done on the screen.

## What to order

needs-order-list = What to order, by when
    .means = A heading on the screen.
needs-order-none = Nothing: stock and open orders cover every need.
    .means = Said where there is nothing.
no-supplier = no supplier named
    .means = A part has no supplier.
head-order-by = Order by
    .means = A heading of a table.
head-in-time = In time?
    .means = A heading of a table.
head-must-be-in = Must be in
    .means = A heading of a table.
head-comes = Comes
    .means = A heading of a table.
head-touched = Looms it comes too late for
    .means = A heading of a table.
head-falls = Looms that fall without it
    .means = A heading of a table.
in-time = in time
    .means = An order can be placed in time.
late-by = late by { $days ->
        [one] { $days } day
       *[other] { $days } days
    }
    .means = By how much an order is late.
touched-by = { $loom } by { $days ->
        [one] { $days } day
       *[other] { $days } days
    }
    .means = By how much an order comes too late for a loom.
order-heading = Place the order to { $supplier }
    .means = A heading on the screen.
order-help = Tick the lines, write the workbook and send it. Once the order has its number, enter it: its lines are expected from then on, and proposed no more.
    .means = A line that helps.
order-first = The first { $shown } of { $all } lines, by the day on which to order.
    .means = A line that helps.
order-line = { $part }{ $description ->
        [none] {""}
       *[other] {", "}{ $description }
    }, order by { $by }
    .means = A line to tick.
order-quantity-of = Quantity of { $part }
    .means = The label of a field.
order-due-of = { $part } comes on
    .means = The label of a field.
order-number = Number of the order
    .means = The label of a field.
order-number-help = Of several lines each gets a number of its own, as 4500123-10, 4500123-20.
    .means = A line that helps.
order-workbook = The order as a workbook
    .means = A button.
order-enter = Enter it as ordered
    .means = A button.

## What is on order

needs-open-lines = On order
    .means = A heading on the screen.
needs-open-none = Nothing is on order.
    .means = Said where there is nothing.
head-due = Due
    .means = A heading of a table.
head-late = Late
    .means = A heading of a table.
head-order = Order
    .means = A heading of a table.
head-open = Open
    .means = A heading of a table.
head-wanted-by = Looms that lack it
    .means = A heading of a table.
receive-which = Which line
    .means = The label of a field.
receive-line = { $order }: { QUANTITY($quantity, $unit) } of { $part }, due { $due }
    .means = An open order line to choose.
receive-heading = Book it in
    .means = A heading on the screen.
receive-quantity = What came
    .means = The label of a field.
receive-rest = The rest of it
    .means = The label of a field.
receive-rest-comes = still comes
    .means = The label of a field.
receive-rest-ends = will not come
    .means = The label of a field.
receive-act = Book in
    .means = A button.
receive-without = Something came without an order
    .means = A heading on the screen.
why = Why
    .means = The label of a field.
why-optional = Why (may stay empty)
    .means = The label of a field.
expect-heading = It comes otherwise
    .means = A heading on the screen.
expect-due = Comes on
    .means = The label of a field.
expect-quantity = So much still comes
    .means = The label of a field.
expect-act = Expect it so
    .means = A button.
what-if-heading = What if it slips?
    .means = A heading on the screen.
what-if-days = Days later
    .means = The label of a field.
what-if-help = Nothing is changed by it.
    .means = A line that helps.
what-if-act = Who falls?
    .means = A button.

## Kits

kits-heading = Kits of the booked looms
    .means = A heading on the screen.
kits-none = No loom is booked.
    .means = Said where there is nothing.
kits-state = State
    .means = The label of a field.
kits-state-count = { $state } ({ $kits })
    .means = A state of kits and how many are in it.
kits-all-states = all states
    .means = The label of a field.
kit-issued = issued
    .means = The state of a kit.
kit-complete = complete
    .means = The state of a kit.
kit-reserved = reserved
    .means = The state of a kit: what lacks is on order and due in time.
kit-short = short
    .means = The state of a kit.
head-lacks = Lacks
    .means = A heading of a table.
head-expected = On order, due by
    .means = A heading of a table.
head-reserved = Reserved
    .means = A heading of a table.
head-issued = Issued
    .means = A heading of a table.
kit-of = { $loom }, { $start }{ $card ->
        [none] {""}
       *[other] {", card "}{ $card }
    }
    .means = A kit to choose.
take-heading = Take from another kit
    .means = A heading on the screen.
take-none = No kit lacks a part that is reserved for another loom.
    .means = Said where there is nothing.
take-for = For
    .means = The label of a field.
take-from = From
    .means = The label of a field.
take-holds = { $loom }: { QUANTITY($quantity) }, { $start ->
        [none] not booked
       *[other] starts { $start }
    }
    .means = A loom whose kit may give a part.
take-quantity = How much
    .means = The label of a field.
take-act = Take it
    .means = A button.
reserve-heading = Reserve
    .means = A heading on the screen.
reserve-none = No kit lacks anything.
    .means = Said where there is nothing.
reserve-for = For
    .means = The label of a field.
reserve-all = all that it lacks
    .means = The label of a field.
reserve-safety = from the safety stock too
    .means = The label of a field.
reserve-act = Reserve
    .means = A button.
release-heading = Release
    .means = A heading on the screen: give up what is reserved for a loom.
release-none = Nothing is reserved.
    .means = Said where there is nothing.
release-of = Of
    .means = The label of a field: whose parts are released.
release-all = all that it holds
    .means = The label of a field.
release-act = Release
    .means = A button.
release-asks = Loom { $loom } gives up { $parts }; that stays free until the next receipt or published plan.
    .means = Asked before reserved parts are released.
issue-heading = Issue to a card
    .means = A heading on the screen.
issue-none = Nothing is reserved that could be issued.
    .means = Said where there is nothing.
issue-to = To
    .means = The label of a field.
issue-all = the whole kit
    .means = The label of a field.
issue-incomplete = also where it lacks something
    .means = The label of a field.
issue-act = Issue
    .means = A button.

## Stock

stock-heading = Stock
    .means = A heading on the screen.
stock-none = There are no parts yet. Load the sheet Parts on the screen Load.
    .means = Said where there is nothing.
head-on-hand = On hand
    .means = A heading of a table.
head-safety = Safety stock
    .means = A heading of a table.
head-free = Free
    .means = A heading of a table.
count-heading = Book a count
    .means = A heading on the screen.
count-found = Counted
    .means = The label of a field.
count-act = Book the count
    .means = A button.

## Weeks and money

cash-heading = Money by month
    .means = A heading on the screen.
cash-none = Nothing is on order and nothing is to be ordered.
    .means = Said where there is nothing.
cash-on-order = on order
    .means = What a bar shows.
cash-to-order = still to order
    .means = What a bar shows.
cash-alt = Bars: money by month, on order and still to order
    .means = What a picture shows.
one-part-heading = One part, week by week
    .means = A heading on the screen.
one-part-none = No part moves.
    .means = Said where there is nothing.
one-part-booked = needed by bookings
    .means = What a bar shows.
one-part-left-over = needed by looms left over
    .means = What a bar shows.
one-part-stock = stock at the week's end
    .means = What a line shows.
one-part-alt = Bars: need of { $part } by week; line: projected stock
    .means = What a picture shows.
one-part-help = The stock takes open receipts and the orders proposed above as received.
    .means = A line that helps.
pieces = pieces
    .means = The unit of a part that has none.
weeks-heading = Net needs by week
    .means = A heading on the screen.
weeks-parts = Parts
    .means = The label of a field.
weeks-all-parts = all parts
    .means = The label of a field.
weeks-only = only what is to be ordered
    .means = The label of a field.
weeks-none = Nothing to order here.
    .means = Said where there is nothing.
head-needed = Needed
    .means = A heading of a table.
head-left-over = By looms left over
    .means = A heading of a table.
head-receipts = Receipts
    .means = A heading of a table.
head-stock-end = Stock at the end
    .means = A heading of a table.
head-net = Net
    .means = A heading of a table.
head-to-order = To order
    .means = A heading of a table.
