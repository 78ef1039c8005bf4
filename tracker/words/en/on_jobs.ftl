### Long work on a screen: bar, stop, what came of it.

jobs-begun = It has begun. It goes on while this screen is left; whoever looks sees how far it is.
    .means = Said once a job was started.
jobs-at = { $kind ->
        [plan] Planning
        [scenario] Planning the scenario
        [rehearsal] Playing
        [tuning] Tuning
       *[reading] Reading
    }: { $at }
    .means = On the bar of a job that runs: what it is at.
jobs-began = Begun by { $who } on { $at }.
    .means = Below the bar.
jobs-gaps = Gap to the bound: { $gaps }.
    .means = How the gap of a plan fell since its search began.
jobs-gap = { NUMBER($gap, maximumFractionDigits: 1) } % after { NUMBER($seconds, maximumFractionDigits: 0) } s
    .means = One of the gaps.
jobs-stop = Stop
    .means = The button that asks a job for its end.
jobs-stop-help = The best so far is kept.
    .means = The help of that button.
jobs-stopping = { $who } has stopped it; it ends with the best so far.
    .means = In place of the button once it was pressed.
jobs-ended = { $kind ->
        [plan] The plan
        [scenario] The scenario
        [rehearsal] The rehearsal
        [tuning] The tuning
       *[reading] The reading
    } that { $who } began on { $began }{ $ended ->
        [none] .
       *[other] {", ended on "}{ $ended }{ $stopped_by ->
            [none] .
           *[other] {", stopped by "}{ $stopped_by }.
        }
    }
    .means = Below what came of the newest job.
jobs-again = Start it again
    .means = The button below a job that was broken off.
