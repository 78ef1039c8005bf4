### Settings over time: alarms with their figures, what the looms taught, visits.

setting-outside = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: { QUANTITY($value, $unit) } lies outside its limits, { $limits }
    .means = The last value lies outside the limits of its setpoint. A fact, not a test.
limits-between = { QUANTITY($low) } to { QUANTITY($high, $unit) }
    .means = Both limits of a setpoint.
limits-least = at least { QUANTITY($low, $unit) }
    .means = A setpoint with a low limit only.
limits-most = at most { QUANTITY($high, $unit) }
    .means = A setpoint with a high limit only.
setting-not-target = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: it is { OWN($value) }, the method says { OWN($target) }
    .means = The last value is not the word, or not a number, that the setpoint asks for.
setting-moved = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: moved by { QUANTITY($size, $unit) } since { $since }, now { QUANTITY($value, $unit) }; two readings of one thing differ by less than { QUANTITY($repeatability, $unit) } as a rule
    .means = Two readings or more differ from those before by more than reading alone explains.
setting-drifting = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: drifts by { QUANTITY($per_day, $unit) } a day, { QUANTITY($size, $unit) } over { $readings } readings, now { QUANTITY($value, $unit) }; { $days_to_limit ->
        [none] no limit lies ahead
        [0] it is at its limit or beyond
        [one] it meets its limit in about one day
       *[other] it meets its limit in about { $days_to_limit } days
    }
    .means = The readings follow a straight line that reading alone does not explain.
setting-read-again = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: the last reading, { QUANTITY($value, $unit) }, lies { QUANTITY($size, $unit) } from those before; read it again
    .means = Only the last reading is odd.
setting-rising-or-falling = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: changes one way over { $readings } readings, by { QUANTITY($size, $unit) } in all, now { QUANTITY($value, $unit) }; how finely it can be read is not known
    .means = By their order alone the readings rise or fall more than chance has it; the method gives no repeatability.
setting-out-of-family = loom { $loom }, { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    }: { QUANTITY($value, $unit) } lies { QUANTITY($size, $unit) } from the median { QUANTITY($median, $unit) } of the { $looms } looms of its type and articles
    .means = The last value is farther from its family than the spread of the hall explains.
setting-unsteady = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } is set unsteadily on looms like { $loom }: Western Electric rule { $rule } over { $values } values, centre { QUANTITY($centre, $unit) }, limits { QUANTITY($low) } to { QUANTITY($high, $unit) }; this is outside the rate of false alarms that is held
    .means = The values set on a family of looms do not stay within the limits of their first twenty.
setting-taught = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } on { $machine_type }{ $family ->
        [none] {""}
       *[other] {" "}with articles of { $family }
    }: { $looms } signed-off looms were set to { QUANTITY($proposed, $unit) } in the middle, the method says { QUANTITY($target, $unit) }; consider changing the method
    .means = What was set on signed-off looms differs from the method by more than the repeatability.
settings-read = { $series } settings of { $looms ->
        [one] one loom
       *[other] { $looms } looms
    }, as of { $at }: { $alarms ->
        [0] no alarm
        [one] one alarm
       *[other] { $alarms } alarms
    }
    .means = How much was looked at and how many alarms came of it.
alarms-quiet = { $alarms ->
        [one] one alarm was seen before and stays
       *[other] { $alarms } alarms were seen before and stay
    } quiet until the value changes
    .means = Somebody wrote down that they saw these alarms.
    .terminal = `beamslot settings --alarms` lists them.
alarm-seen = { $alarm }; seen by { $who } on { $at }: { OWN($why) }
    .means = An alarm that somebody has seen, and what they said to it.
alarms-marked-seen = { $alarms ->
        [one] One alarm
       *[other] { $alarms } alarms
    } of loom { $loom } { $alarms ->
        [one] is marked as seen; it stays
       *[other] are marked as seen; they stay
    } quiet until the value changes
    .means = Somebody wrote down that they saw the alarms of a loom.
alarms-none-to-see = loom { $loom } has no alarm that nobody has seen
    .means = There is nothing to mark as seen.
alarms-seen-without-why = it is not said what there is to the alarm
    .means = An alarm was to be marked as seen without a word.
    .hint = say what was found or will be done, such as: bolt tightened, read again on Friday
alarms-seen-alone = alarms are marked as seen of one loom at a time, and nothing else is asked with it
    .means = Alarms are marked as seen loom by loom.
    .terminal = Say it as `beamslot settings 007 --seen "bolt tightened"`
settings-rate = Of alarms that rest on chance one in ten is false on average; on a quiet hall one review in ten shows something, within ten weekly reviews half of quiet halls do. It holds if the repeatability in the method is right.
    .means = What the held false discovery rate means.
settings-without-repeatability = the method gives no repeatability of { $settings }
    .means = Of these settings a change can be told by the order of the readings only.
    .hint = without it a drift is seen late; give it in the sheet Setpoints, column Repeatability.
visits-none = no follow-up visit is due
    .means = None of the looms asked for is signed off.
    .hint = visits follow the sign-off of a loom
settings-none = no value of a setting is recorded yet
    .means = The sheet Set values was never loaded, or has nothing of this loom up to this moment.
    .terminal = Load the sheet Set values: `beamslot load FILE`.
visits-unreadable = term visits: { OWN($text) } is no list of days after sign-off
    .means = The term visits holds something else than whole numbers above 0, separated by commas.
    .hint = write it as 1, 7, 30
proposal-written = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } on { $machine_type }: { QUANTITY($target, $unit) } becomes { QUANTITY($proposed, $unit) }, its limits move with it
    .means = What the workbook of the proposal changes in the sheet Setpoints.
    .terminal = Look at it, then `beamslot load` the workbook: it puts a new version of the method in force.
proposal-unclear = { $setting }{ $side ->
        [none] {""}
       *[other] {" "}{ $side }
    } on { $machine_type }: { QUANTITY($proposed, $unit) } is proposed, but not one row of Setpoints alone is meant by it, or looms propose different values for it
    .means = A proposal that the workbook leaves to a person.
    .hint = change the row in the workbook by hand
proposal-none = no change of the method is proposed that is clear
    .means = Fewer than five looms of a family were signed off, or what was set on them does not differ from the method by more than the repeatability, or it is not clear which row of Setpoints it means.
