### What is told of the floor and of the people: stages, conversions, absences, moments.

before-programme = { $at } lies before the programme, which began on { $start }
    .means = A stock entry was told of a day before the programme; a year typed wrong is the usual cause.
    .hint = say why it is booked here
    .terminal = say with --why TEXT why it is booked here

## Stages

stage-unknown = stage '{ $stage }' is not one of: { $stages }
    .means = A stage was recorded that there is not, or that the program sets by itself.
stage-without-reason = a loom that is { $stage } needs a reason
    .means = Putting off and leaving out must be explained.
    .hint = say why
    .terminal = say it with --why TEXT
stage-later-known = loom { $loom } is { $stage } since { $at }
    .means = A stage was told of a moment before the last one known.
    .hint = record a later moment
stage-needs-reason = loom { $loom } is recorded as { $stage } only with a reason, since { $odd }
    .means = A move along the stages is out of order or cannot have been as told.
    .hint = say why
    .terminal = say it with --why TEXT
odd-before-programme = { $on } lies before the programme, which began on { $first }
    .means = Work is told of a day before the programme; a year typed wrong is the usual cause.
odd-beside = it is { $stage } and was not taken back with scoped
    .means = A loom that was put off or left out goes on without being taken back.
odd-already = it is { $stage } already
    .means = The stage is recorded twice.
odd-back = it is { $stage } and goes back
    .means = A stage before the one known.
odd-skipped = { $first }{ $second ->
        [none] {" "}was
       *[other] {" "}and { $second } were
    } skipped
    .means = Stages in between were not recorded.
odd-not-booked = it is not booked
    .means = Work begins on a loom that the plan does not book.
odd-no-kit = its kit is not issued
    .means = Work begins without the parts.

## Finished conversions

conversion-not-finished = a finished conversion is recorded with { $first } or { $second }, not with { $stage }
    .means = What a conversion took is told with a stage at which it is not over.
conversion-without-start = a conversion needs its start, before its end
    .means = The start of a finished conversion is missing or lies after its end.
    .hint = say when it began
    .terminal = say it with --started 2027-01-05T06:00
conversion-recorded = the conversion of loom { $loom } is recorded already: by { $crew }, begun { $at }
    .means = A loom is converted once.
no-such-crew = there is no crew { $crew }; the crews are { $crews }
    .means = A crew was named that is not listed.
no-such-operation = operation '{ $operation }' is not in the method in force
    .means = Minutes were told of an operation that there is not.
    .terminal = `beamslot scope LOOM` lists them
operation-minutes = operation '{ $operation }': { QUANTITY($minutes) } minutes is no time it can take
    .means = Minutes below 0 or without end.
total-minutes = { NUMBER($total, maximumFractionDigits: 1) } min in all cannot be: it must be above 0 and no longer than from start to end, { NUMBER($elapsed, maximumFractionDigits: 1) } min
    .means = The total of a conversion is longer than the conversion.
no-such-choice = the method has no choice { $choice }={ $alternative }; it has { $offered }
    .means = An alternative was told that the method does not have.

## Absences

absence-ends-first = the last day, { $last }, is before the first, { $first }
    .means = The days of an absence are the wrong way round.
    .hint = exchange them
absent-already = crew { $crew } is away from { $first } already, to { $last }
    .means = Two absences of a crew would begin on one day.
    .hint = end that one first
    .terminal = --back DAY ends that on the day before
not-absent = crew { $crew } is not away on { $on } by what is recorded
    .means = A crew is said to be back that was not away.

## What was recorded

stage-recorded = Loom { $loom } is { $stage }{ $before ->
        [none] {""}
       *[other] {" "}(was { $before })
    }{ $crew ->
        [none] {""}
       *[other] ; its conversion by { $crew } is recorded
    }.{ $freed ->
        [none] {""}
       *[other] {" "}What was held for it is free again: { $freed }.
    }
    .means = A loom reached a stage.
absence-recorded = { $how ->
        [taken-back] Crew { $crew } was never away from { $first } to { $last }: taken back.
       *[other] { $heads ->
            [none] Crew { $crew } is
            [one] 1 head of crew { $crew } is
           *[other] { $heads } heads of crew { $crew } are
        } away from { $first } to { $last }{ $how ->
            [ended] , no longer
           *[begun] {""}
        }.{ $short ->
            [none] {""}
           *[other] {" "}{ $short }
        }
    }
    .means = Who is away was written down, or taken back.
    .hint = The next plan counts with it.
    .terminal = From now on `beamslot plan` counts with it.
crew-takes-none = Too few are left for a conversion: the crew takes none on these days.
    .means = What an absence leaves of a crew is less than a conversion needs.
