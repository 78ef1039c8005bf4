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

## Records: what cannot have been as told

record-ahead = { $at } is still to come; it is { $now } now.
    .means = Something was recorded of a moment in the future.
    .hint = Mend the moment.
card-mistyped = { $card } is no card number: its check character does not fit.
    .means = A card number was typed wrongly.
    .hint = Take it from the top of the card.
card-never-given = There is no card { $card }: no published plan { $plan } books a loom under that number.
    .means = A card number that reads right was never given out.
    .hint = Take it from the top of the card.
card-of-another = Card { $card } is that of loom { $of }, not of { $loom }.
    .means = A card of another loom.
    .hint = Mend the loom or the card number.
operation-not-known = The method (version { $version }) has no operation { $operation }{ $near ->
        [none] {""}
       *[other] ; the nearest is { $near }
    }.
    .means = An operation that the method in force does not have: a slip, or a card of an older version.
    .hint = Write it as the method has it; for a card of an older version leave the line out and record the whole conversion.
record-not-in-work = Loom { $loom } is not in work, and no whole line of Work done says that it was{ $more ->
        [none] {""}
        [one] ; 1 more row of it waits for that line
       *[other] ; { $more } more rows of it wait for that line
    }.
    .means = Work was recorded on a loom whose conversion has not begun, or whose first line is refused. Said once for a loom.
    .hint = Mend the first line of its card (Started, Stage reached), or the loom: the other rows are loaded with it then.
torque-impossible = { NUMBER($torque, maximumFractionDigits: 1) } N·m cannot be{ $most ->
        [none] {""}
       *[other] : the method asks for { NUMBER($target, maximumFractionDigits: 1) } N·m, and a bolt bears no more than { NUMBER($most, maximumFractionDigits: 1) } N·m
    }.
    .means = A torque of 0, or above what the bolt bears.
    .hint = Read it again; change a bolt that was tightened so far.
record-without-end = A conversion that is { $stage } has ended; its end is missing.
    .means = Only a conversion in work has no end yet.
    .hint = Fill in Ended.
stopped-without-reason = A conversion that was stopped needs its reason.
    .means = A conversion was broken off without saying why.
    .hint = Write it under Remark.
minutes-longer = { NUMBER($minutes, maximumFractionDigits: 1) } minutes cannot be{ $stop ->
        [none] {""}
       *[other] : from start to end were { NUMBER($stop, maximumFractionDigits: 1) } minutes
    }.
    .means = Minutes of 0, or longer than the stop.
    .hint = Mend the minutes, or the start and the end.
crew-not-known = There is no crew { $crew }; the crews are { $crews }.
    .means = A crew was named that is not listed.
    .hint = Write it as the sheet Crews has it.
two-crews = Loom { $loom } has crew { $crew } here, and crew { $other } at the same time in another row.
    .means = Two crews are said to have converted one loom at once.
    .hint = Record one conversion by the crew that led it; who helped stands under Done by.
setting-not-known = The method has no setting { $setting }{ $near ->
        [none] {""}
       *[other] ; the nearest is { $near }
    }.
    .means = A value of a setting that the method does not have.
    .hint = Write it as the sheet Setpoints has it.
value-no-number = { $setting } is a number{ $unit ->
        [none] {""}
       *[other] {" "}in { $unit }
    }, and { $value } is none.
    .means = A setting with limits was recorded as a text.
    .hint = Write the number alone.
value-impossible = { $setting } cannot be { NUMBER($value, maximumFractionDigits: 3) } { $unit }.
    .means = A setting outside its physical range, such as an angle of 400 degrees.
    .hint = Read it again: an angle lies from 0 to 360 deg, a force or a current is not below 0.
check-not-known = The method has no check { $check }{ $near ->
        [none] {""}
       *[other] ; the nearest is { $near }
    }.
    .means = A result of a check that the method does not have.
    .hint = Write it as the sheet Checks has it.
result-of-other-kind = { $check } is answered by { $kind ->
        [number] a number
       *[yes] yes or no
    }.
    .means = A number where yes or no is asked, or the other way round.
    .hint = Write it as the check asks.
never-waived = { $check } is never waived: nothing is signed off without it.
    .means = A waiver of a check that somebody could be hurt without.
    .hint = Do what the check asks, and write its result.
side-not-known = { $name } has { $sides ->
        [none] no side
       *[other] the sides { $sides }
    }{ $side ->
        [none] ; none is written here
       *[other] , and not { $side }
    }.
    .means = A side that the method does not have for this setting or check.
    .hint = Write the side as the method has it.
waiver-incomplete = A waiver needs its reason, who answers for it and when that was decided.
    .means = Of the three columns of a waiver one is empty.
    .hint = Fill in Waived because, Waived by and Waived at.
more-than-issued = { QUANTITY($told) } of { $part } are told, and { QUANTITY($issued) } were issued to loom { $loom }.
    .means = More parts used, left over and broken than were handed out.
    .hint = Mend the quantities, or book the issue first.
period-overlaps = The period overlaps another one of the same loom: { $begin } to { $end }.
    .means = Two periods of one loom and cause, or side, that overlap.
    .hint = Mend From or To, or delete the row.
picks-differ = { NUMBER($picks) } picks here, and { NUMBER($other) } in the row of the same loom and period for { $cause ->
        [none] all causes
       *[other] { $cause }
    }.
    .means = The picks of a period are the same whatever the cause.
    .hint = Write the same picks into each cause's row.
record-needs-remark = Loom { $loom } is recorded as { $stage } only with a reason, since { $odd }.
    .means = A card tells of a move out of order.
    .hint = Say why under Remark, or record first what is missing.
record-lacks = a row of { $table } needs its { $field }
    .means = A record was told without something that it needs.
    .terminal = `beamslot record --help` says by which option it is told
record-beyond = { $field } in { $table } cannot be { NUMBER($value) }: it is { $possible }
    .means = A value outside what the column may hold.
photo-no-picture = the photo is no picture of a kind that can be read ({ $formats })
    .means = A file sent as a photo is something else.
    .hint = send it as one of these
photo-broken = the photo cannot be read to its end
    .means = A file sent as a photo is cut off or damaged.
    .hint = take it again
photo-too-large = the photo has { NUMBER($megabytes, maximumFractionDigits: 1) } MB; at most { NUMBER($most) } MB are taken
    .means = A file sent as a photo is too large.
    .hint = take it in a lower resolution
photo-too-fine = the photo has { NUMBER($width) } × { NUMBER($height) } pixels; at most { NUMBER($most) } million are taken
    .means = A file sent as a photo would fill the memory.
    .hint = take it in a lower resolution
photo-without-remark = a photo needs a remark
    .means = A photo was told and nothing said of it.
    .hint = say what it shows
    .terminal = say with --remark TEXT what it shows
photo-unreadable = { $path } cannot be read: { $why }
    .means = The file of a photo.
photo-gone = the photo is not there any more
    .means = A photo was withdrawn meanwhile.
remark-not-begun = the conversion of loom { $loom } has not begun
    .means = A remark was told of a loom at which nobody has begun.
    .hint = start it first
    .terminal = record it in work first
not-yes-no-number = { $text } is neither yes nor no nor a number
    .means = The result of a check was told in another word.
sheets-of-records = The sheet { $sheet } is { $table }, which is no record of what was done.
    .means = A file given to record holds other tables, too.
    .hint = Load it by load.

stopped-not-begun = loom { $loom } is { $stage }: no conversion of it is under way that could be stopped.
    .means = A conversion is said to be broken off that has not begun, or is over.
    .hint = Put the loom off until a date or leave it out, each with the reason; of a conversion that had begun tell first when.
    .terminal = Put it off or leave it out by --stage "put off" or --stage "left out" with --why; if its conversion had begun, record first --stage "in work" with --at T.
record-corrected = { $table } { $row }: { $heading } is corrected from { $stored } to { $understood } ({ $why }).
    .means = A recorded value was replaced by another, with its reason; both stay in the history.
records-refusal = 1 refusal, nothing was written: { $where }{ $what }
    .means = What was recorded is stopped by one row that cannot be.
records-refusals = { $many } refusals, nothing was written: { $places }.
    .means = What was recorded is stopped by several rows that cannot be.
    .hint = Mend them and record it again.

## Signing off

sign-off-open = loom { $loom } cannot be signed off: { $many ->
        [one] one point is open
       *[other] { $many } points are open
    }: { $points }{ $more ->
        [none] {""}
       *[other] {" "}and { $more } more
    }.
    .means = Hold points, checks or settings are not done, not within limits and not waived.
    .hint = Record them, or waive with reason, person and moment what may be waived.
open-hold-point = hold point { $operation } has no name to it
    .means = An operation that nothing waives was not recorded as done by somebody.
open-check = check { $check }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } { $result ->
        [none] is not recorded
       *[other] is { $result }
    }{ $held ->
        [yes] {" "}and never waived
       *[no] {""}
    }
    .means = A check without a result, or with a bad one, and without a waiver.
open-setting = setting { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } { $value ->
        [none] is not recorded
       *[other] is { $value }
    }{ $low ->
        [none] {""}
       *[other] {" "}(limits { $low } to { $high } { $unit })
    }{ $target ->
        [none] {""}
       *[other] {" "}(target { $target })
    }
    .means = A setting that was not read since the conversion began, or lies outside its limits, without a waiver.

## Withdrawing

withdraw-without-reason = a record is withdrawn only with a reason
    .means = What was recorded is taken back without saying why.
    .hint = say why
    .terminal = say it with --why TEXT
withdraw-nothing = nothing is recorded of loom { $loom }, so there is nothing to withdraw
    .means = A stage is withdrawn of a loom that has none recorded.
withdraw-no-stage = loom { $loom } was never recorded as { $stage }; recorded are: { $stages }
    .means = A stage is withdrawn that was not recorded.
withdraw-later-first = loom { $loom } is { $later } since { $at }, which builds on { $stage }: withdraw { $later } first
    .means = A stage is withdrawn before those that were recorded after it.
withdraw-no-row = there is no such row of loom { $loom } in { $table }
    .means = A row is withdrawn that was not recorded, or was withdrawn already.
withdraw-several = several rows of loom { $loom } in { $table } are meant: { $rows }
    .means = A row to be withdrawn is not named closely enough.
    .hint = say side and moment
    .terminal = say with --side, --at or --card which
withdraw-row = ({ $row })
    .means = One row of a sheet of records, as it is named in a list.
withdraw-sign-off-first = the sign-off of loom { $loom } builds on it: withdraw the stage signed off first
    .means = A value or check is withdrawn without which the loom could not have been signed off.
withdrawn = Loom { $loom }: withdrew { $what }, { $rows ->
        [one] 1 row
       *[other] { $rows } rows
    } of the history in all; they stay in it and count no more. { $stage ->
        [none] Nothing is recorded of the loom any more, and the next plan takes it so.
       *[other] The loom is { $stage }, and the next plan takes it so.
    }
    .means = What withdrawing did.
withdrawn-stage = the stage { $stage } and what hung on it
    .means = What was withdrawn: a stage.
withdrawn-row = { $row } from { $table }
    .means = What was withdrawn: a row of a sheet of records.
