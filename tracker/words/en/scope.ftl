### Scope: why a loom has no work yet, what a changed method changes, what recorded conversions teach.

to-survey = to survey: { $unknown }
    .means = What of a loom must be looked up in the hall before its work is known.
attribute-unknown = { $heading } unknown
    .means = The loom list has no value for what the method asks.
attribute-not-comparable = { $heading } = { $value } not comparable
    .means = The loom list has a value that no condition of the method can be held against.
attributes-unknown = unknown: { $headings }
    .means = What is unknown of the looms that are to survey.
no-work-on-loom = the method gives it no operation on the loom
    .means = No operation of the method holds for a loom.
no-alternative-left = no alternative is left of { $choices }
    .means = A loom's work asks for choices of which the conditions leave nothing.
choice-in-windows = { $choice } ({ $windows ->
        [none] any window
       *[other] window = { $windows }
    })
    .means = A choice, and the kinds of window in which nothing of it is left.
scope-found = { $looms ->
        [one] 1 loom
       *[other] { $looms } looms
    } in { $variants ->
        [one] 1 variant
       *[other] { $variants } variants
    } by method version { $version }.
    .means = What the scoping came to.
looms-to-survey = { $many ->
        [one] 1 is
       *[other] { $many } are
    } to survey ({ $columns }).
    .means = How many looms must be looked at in the hall, and for what.
    .hint = Write the list to walk the hall with, fill it in and load it.
    .terminal = `beamslot scope --survey survey.xlsx` writes the list.
loom-obstacle = loom { $loom }: { $why }
    .means = What stands in the way of a loom's conversion.
loom-left-done = Loom { $loom }: { $operations ->
        [one] 1 operation was
       *[other] { $operations } operations were
    } left done by the conversion that was stopped, and { $operations ->
        [one] is
       *[other] are
    } off its work; what isolates, tests or is held is done again.
    .means = A stopped conversion need not be begun anew.
    .terminal = If all of it was taken off again, say so: `beamslot record LOOM --stage scoped --why TEXT`.
survey-the-loom = What is unknown must be looked up in the hall.
    .means = A loom's work depends on what the loom list does not have.
    .terminal = `beamslot scope --survey survey.xlsx` writes the list of what to look at.

## A changed method

field-changed = { $field } { $old } → { $new }
    .means = A field or condition of a row before and after.
method-row-changed = { $name }: { $changes ->
        [none] { $what ->
            [added] added
           *[removed] removed
        }
       *[other] { $changes }
    }
    .means = What a new method changes in a row.
looms-changed = { $many ->
        [one] loom { $looms }
       *[other] { $many } looms ({ $looms }{ $cut ->
            [yes] , …
           *[no] {""}
        })
    }: { $changes }
    .means = What a new method changes for looms that it changes alike.
operation-added = + { $name }
    .means = An operation that looms now get.
operation-removed = − { $name }
    .means = An operation that looms no longer get.
part-changed = { $part } { QUANTITY($old) } → { QUANTITY($new) }
    .means = How much of a part a loom needs, before and after.
labour-changed = { QUANTITY($hours, signed: "yes") } labour hours each
    .means = How much more or less labour each loom takes.
looms-can-be-planned = can be planned
    .means = Nothing keeps the looms from being planned any more.
method-details-change = choices, settings or checks change
    .means = Work and parts stay, but not what goes with them.
more-of-the-method = … and { $many } more { $what ->
        [rows] rows of the method
       *[changes] kinds of change
    }
    .means = The tail of a list of what a method changes.

## What records teach

learning-of-type = { $machine_type }: { $conversions ->
        [one] 1 conversion
       *[other] { $conversions } conversions
    } recorded; { $curve }; the next is estimated at { NUMBER($factor, style: "percent") } of the method's minutes ({ $source }).{ $biases ->
        [none] {""}
       *[other] {" "}Against the method: { $biases }.
    }
    .means = What the recorded conversions of a machine type say of the next one.
learning-by-the-terms = a fit needs { $missing } more with their minutes, so the curve of the terms holds ({ NUMBER($rate, style: "percent") })
    .means = Too few conversions were recorded to fit a learning curve.
learning-not-seen = no learning seen, they took { NUMBER($level, style: "percent") } of the method's minutes
    .means = The recorded conversions did not become faster.
learning-fitted = each doubling takes { NUMBER($rate, style: "percent") } of the time, the first took { NUMBER($level, style: "percent") } of the method's minutes
    .means = The learning curve that fits the recorded conversions.
operation-bias = { $operation } { QUANTITY($percent, signed: "yes") }%
    .means = How much longer or shorter an operation takes than the method says.
