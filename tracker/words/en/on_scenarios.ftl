### The screen Scenarios.

scenarios-about = Plans made as if something were otherwise. The published plan stays as it is.
    .means = Below the title.
scenarios-then = compare it here with others then
    .means = What comes of a published plan on this screen.
scenarios-only-one = Only one plan so far.{ $may ->
        [yes] {" "}Make a scenario below.
       *[no] {""}
    }
    .means = There is nothing to compare yet.
scenarios-chart = Bars: cost of each plan by term; the table says the same
    .means = What the picture shows, for who cannot see it.
scenarios-what = What
    .means = Heading of the table's first column.
scenarios-unlike = The plans do not reach equally far: what is left over is counted to the end of each, so the costs compare only in part.
    .means = Below the table, where the plans end on different days.
scenarios-published = published plan
    .means = Name of the plan in force among the scenarios.
scenarios-made = { $name }, made { $at }
    .means = Heading of a scenario's column.
scenarios-cost = cost without moves
    .means = A row of the table.
scenarios-against = against { $name }
    .means = A row of the table: how much dearer a plan is than the first.
scenarios-moves = apart: moved bookings
    .means = A row of the table.
scenarios-surviving = apart: reckoned so that it survives
    .means = A row of the table: what the term `no second chance` adds to the objective.
scenarios-booked = booked
    .means = A row of the table: how many looms.
scenarios-left-over = left over
    .means = A row of the table: how many looms.
scenarios-ends = last conversion ends
    .means = A row of the table: on which day.
scenarios-none = none
    .means = There is no such thing.
scenarios-stopped = weaving hours stopped
    .means = A row of the table.
scenarios-gap = gap of the proof
    .means = A row of the table: by so much a plan might be dearer than the best.

## A new one

scenarios-new = A new scenario
    .means = Heading above the form of a scenario.
scenarios-seconds = Stop the search after (s)
    .means = Seconds after which the best plan found so far is kept.
scenarios-plan = Plan it
    .means = The button below the form.
scenarios-plan-help = It goes on while this screen is left, and whoever looks sees how far it is. At the time limit, and when it is stopped, the best plan found so far is kept.
    .means = Below the button.
scenario-unnamed = the scenario has no name
    .means = A scenario is planned on its screen without a name.
    .hint = give it one
scenario-name-taken = there is a scenario { $name } already
    .means = The scenario named on the screen would stand beside another of its name.
    .hint = choose another name
scenarios-new-about = Say entry by entry what is to be otherwise, then plan it. The mill's own data stay as they are.
    .means = Below the heading.
scenarios-entry = What is to be otherwise
    .means = Field: which kind of entry.
scenarios-kind = { $kind ->
        [terms] A term
        [heads] Heads of a crew
        [tools] How many of a tool
        [crew] A crew more
        [absent] A crew away
        [receipt] An order line
        [closure] A closed day
       *[protect] A loom left alone
    }
    .means = The kinds of entries of a scenario.
scenarios-whose = { $kind ->
        [terms] Term
        [heads] Crew
       *[tools] Tool
    }
    .means = Field: whose value is to be otherwise.
scenarios-instead = Instead
    .means = Field: the value that a scenario has.
scenarios-possible = Possible: { $possible }.
    .means = Below the field.
scenarios-line = Order line that comes otherwise
    .means = Field.
scenarios-line-new = none: a new one
    .means = In the field while it is empty.
scenarios-order = { $order }: { $what }, due { $due }
    .means = An order line to choose.
scenarios-needed = * needed; what is left empty is as it was.
    .means = Below the fields of an entry.
scenarios-add = Add it
    .means = Button below an entry.
scenarios-take-out = Take it out
    .means = Button beside an entry.
scenarios-says = { $kind }: { $values }
    .means = An entry of a scenario.
scenarios-value = { $field } { $value }
    .means = One value of an entry.
scenarios-added = Added: { $entry }
    .means = Said once an entry was added.
scenarios-taken-out = Taken out: { $entry }
    .means = Said once an entry was taken out.
scenario-entry-refused = { $how ->
        [lacks] the entry { $what }
       *[wrong] { $field ->
            [none] {""}
           *[other] { $field }:{" "}
        }{ $what }
    }
    .means = An entry on the screen does not fit; what is wrong stands behind it.
scenarios-name = Name
    .means = Field.
scenarios-name-such-as = rails a week later
    .means = In the field while it is empty.

## What becomes of one

scenarios-in-force = To put a scenario in force
    .means = Heading.
scenarios-in-force-about = What it has otherwise becomes the mill's own data, all of it by one change that can be undone on the screen Changes. Then a plan is made from them, to be looked at and published on the screen Bookings.
    .means = Below that heading.
scenarios-entries-unknown = What { $name } has otherwise was not kept with its plan, which an earlier version made. Plan it again, or enter it where it belongs:
    .means = A scenario cannot be put in force by itself.
scenarios-said = Order { $order } of { $part }: the supplier has said so, or the line was placed so
    .means = A box to tick for an order line that comes otherwise.
scenarios-put = Put it in force
    .means = Button.
scenarios-put-asks = { $values ->
        [one] One value of the scenario { $scenario } becomes
       *[other] { $values } values of the scenario { $scenario } become
    } the mill's own data, for everybody, by one change that can be undone on the screen Changes. { $left ->
        [none] {""}
       *[other] Order { $left } stays as it is: enter it on the screen Kits and needs once its supplier has said so.{" "}
    }Then a plan is made.
    .means = Asked before a scenario is put in force.
scenarios-put-done = The scenario { $scenario } is in force: { $values ->
        [one] one value stands
       *[other] { $values } values stand
    } in the mill's data, by change { $number }. { $why ->
        [none] The plan is being made; look at it and publish it on the screen Bookings.
       *[other] The plan could not be begun: { $why }. Make it on the screen Bookings.
    }
    .means = Said once a scenario was put in force.
scenarios-where = Entered on
    .means = Heading: the screen on which the mill's own data are changed.
scenarios-sheet = { $screen }, sheet { $sheet }
    .means = The screen on which a sheet is loaded.
scenarios-aside = To set a scenario aside
    .means = Heading.
scenarios-aside-about = It is no longer shown among the others. Its plans stay in the list of all plans, and it can be shown again.
    .means = Below that heading.
scenarios-which = Scenario
    .means = Field.
scenarios-set-aside = Set it aside
    .means = Button.
scenarios-list-again = Show it again
    .means = Button.
scenario-aside = { $aside ->
        [yes] Scenario { $scenario } is set aside.
       *[no] Scenario { $scenario } is shown again.
    }
    .means = Said once that was done.
scenario-not-listed = { $aside ->
        [yes] no scenario { $scenario } is shown
       *[no] no scenario { $scenario } is set aside
    }
    .means = A scenario is set aside, or shown again, that is not there or is so already.
    .hint = Choose one of the list.
