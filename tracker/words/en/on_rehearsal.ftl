### The screen Rehearsal.

rehearsal-play = Play it
    .means = Heading above the form, and its button.
rehearsal-play-help = It goes on while this screen is left, and whoever looks sees how far it is. A stop keeps what is done; what comes of it is kept with the plan. The plan made anew each Monday takes half a minute a run: at most { $most } runs of it are held against another way, and where it is played first no worry is weighed.
    .means = Below the button.
rehearsal-runs-asked = Runs
    .means = How often it is to be played.
rehearsal-played = Played
    .means = Which way of running the hall is played.
rehearsal-held-against = Held against
    .means = Other ways of running the hall, played in the same worlds.
rehearsal-worries-asked = Find out what each worry is worth (takes some four times as long)
    .means = Whether it is played once more with each source of trouble certain.
rehearsal-about = The published plan played from today to its horizon, many times, with beam-outs, work, people, deliveries, failures and orders drawn anew each time. Estimates, not promises.
    .means = Below the title.
rehearsal-then = rehearse it here then
    .means = What comes of a published plan on this screen.
rehearsal-none-yet = The plan in force was not rehearsed yet. { $may ->
        [yes] Say below how often it is to be played.
       *[no] A planner can have it played.
    }
    .means = There is nothing to show yet.
rehearsal-made = Rehearsed { $at } by { $who }, { $runs ->
        [one] { $runs } run
       *[other] { $runs } runs
    }{ $stopped ->
        [yes] , stopped before the end
       *[no] {""}
    }
    .means = When, by whom and how often.
rehearsal-workbook = All of it as a workbook
    .means = Button: downloads everything.

## What came of it

rehearsal-milestones = When so many looms are done
    .means = Heading above a table.
rehearsal-head-looms = Looms
    .means = Heading of a column: how many.
rehearsal-head-reached = Reached
    .means = Heading of a column: the share of runs in which so many were done.
rehearsal-costs = What it costs
    .means = Heading above a chart and a table.
rehearsal-costs-alt = Lines: cost of each way from P10 to P90; the table says the same
    .means = What a reader of screens says of the chart.
rehearsal-costs-help = A line goes from P10 to P90, its dot is P50; the broken line is what the plan itself says.
    .means = Below the chart.
rehearsal-head-mean = Mean ({ $currency })
    .means = Heading of a column.
rehearsal-head-lost-looms = Of lost looms ({ $currency })
    .means = Heading of a column: cost of looms that were not begun before the horizon.
rehearsal-head-idle = Crews idle (h)
    .means = Heading of a column.
rehearsal-worries = What each worry is worth
    .means = Heading above a table.
rehearsal-head-certain = If it were certain
    .means = Heading of a column: what would not vary any more.
rehearsal-head-saves = Saves ({ $currency })
    .means = Heading of a column.
rehearsal-head-least = At least ({ $currency })
    .means = Heading of a column.
rehearsal-head-most = At most ({ $currency })
    .means = Heading of a column.
rehearsal-head-sure = 95 % sure
    .means = Heading of a column.
rehearsal-risks = Bookings at risk
    .means = Heading above a table.
rehearsal-head-on-time = Within a day
    .means = Heading of a column: the share of runs in which a booking began within a day of its start.
rehearsal-head-lost = Lost
    .means = Heading of a column: the share of runs in which a booking did not begin before the horizon.
rehearsal-head-held-up = Held up most by
    .means = Heading of a column.
rehearsal-others = The other { $many }
    .means = Opens the rest of the table.
rehearsal-grounds = What it rests on
    .means = Heading above a table.
rehearsal-head-varies = What varies, and how much
    .means = Heading of a column.
rehearsal-head-whose = Taken for
    .means = Heading of a column: the crews, suppliers or machine types.
rehearsal-head-from = Comes from
    .means = Heading of a column: the mill's records, what was asked for, or what is usual.
rehearsal-head-records = Records
    .means = Heading of a column: how many there are.

## So that it survives

surviving = So that the plan survives
    .means = Heading.
surviving-about = Terms by which a plan leaves room for what a hall does to it, tried out in the same worlds: one by one, together, and among plans that cost the same. The best is judged in worlds that had no say in it. Nothing changes until you take it over.
    .means = Below the heading.
surviving-made = Tuned { $at } by { $who }
    .means = When and by whom.
surviving-ways = Planned with
    .means = Heading of a column.
surviving-paper = On paper ({ $currency })
    .means = Heading of a column: what the plan says that it costs.
surviving-hall = In the hall ({ $currency })
    .means = Heading of a column: what it costs there on average.
surviving-more = More than without ({ $currency })
    .means = Heading of a column: beside a plan without such terms, in the hall.
surviving-from = From ({ $currency })
    .means = Heading of a column: where that begins with 95 % certainty.
surviving-to = To ({ $currency })
    .means = Heading of a column: where that ends with 95 % certainty.
surviving-tune-on = Worlds to try in
    .means = Field.
surviving-judge = Other worlds to judge in
    .means = Field.
surviving-tune = Tune
    .means = Button that begins it.
surviving-tune-help = Some twenty plans are made and played: it takes as long. It goes on while this screen is left; a stop keeps what was compared.
    .means = Below the button.
surviving-accept = Take it over
    .means = Button: sets the terms and makes the plan by them.
surviving-accept-asks = The terms become { $ways }, and the plan by them is made, which takes as long as a plan. It is not in force until you publish it on Bookings.
    .means = Asked before a tuning is taken over.
