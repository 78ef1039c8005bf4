### What the review of a method finds. Texts may use what those of the reading may (reading.ftl).

looms-named = { $many ->
        [one] loom
       *[other] looms
    } { $looms }
    .means = The looms that a finding on the method is about.
kind-number = number
    .means = What a condition puts in order.
kind-date = date
    .means = What a condition puts in order.
kind-text = text
    .means = What a condition puts in order.
unchecked = { $how ->
        [looms] No looms are loaded: conditions are not held against them.
       *[crews] No crews are loaded: trades and heads are not checked.
    }
    .means = A part of the review had nothing to go by.

## Conditions

condition-unreadable = { $why }
    .means = A condition cell is no unary test.
    .hint = A condition is a value, a list, a limit, an interval, not(…) or - for any.
condition-in-cell = { $place ->
        [none] Method
       *[other] { $place }
    }, column { $heading }: { $why }
    .means = Where in the method a condition stands that cannot be read.
cell-too-long = The condition is { $length } characters long; { $most } is the limit.
    .means = A condition that is longer than any that means something.
cell-empty-item = '{ $cell }' has an empty item: take out the comma, or write the value.
    .means = A condition lists nothing before or after a comma.
cell-mixed-interval = '{ $cell }': the two ends of an interval must both be numbers, dates or texts.
    .means = An interval from a value of one kind to one of another.
cell-without-order = '{ $cell }': yes and no have no order.
    .means = A condition asks for more or less than yes or no.
cell-no-day = '{ $cell }': '{ $day }' is no day; write date("2027-01-04").
    .means = A date in a condition that the calendar does not have.
cell-no-value = '{ $cell }': '{ $item }' is no value that can be compared.
    .means = A condition names a number that is beyond all bounds, or nothing.
cell-unequal-sign = '{ $cell }': write not({ $item }) for everything else.
    .means = A condition is written with a sign for unequal.
cell-equals-sign = '{ $cell }': write the value alone, without the equals sign.
    .means = A condition is written with an equals sign.
cell-decimal-comma = '{ $cell }': decimals take a point here, as in [2.5..3.5]; a comma separates values.
    .means = An interval is written with decimal commas.
cell-limit-of-what = '{ $cell }': after < <= > >= comes a number, a date or a text in quotes, without a unit.
    .means = A limit in a condition is followed by what cannot be put in order.
cell-not-inside = '{ $cell }': not(…) must enclose the whole cell, as in not(left, right).
    .means = A condition denies a part of its list only.
cell-unreadable = '{ $cell }': '{ $item }' cannot be read. Write a value, a list (left, both), a limit (<= 12), an interval ([8..16]), not(…) around any of these, or put the text in quotes.
    .means = A condition is none of the forms that there are.
decimal-comma = { $raw } is read as { $first } or { $second }.
    .means = A comma in a condition parts values; a decimal comma is perhaps meant.
    .hint = { $options ->
        [none] Answered: as written.
       *[other] Write { $point } for a decimal; or answer { $options }.
    }
unknown-attribute = { $heading } is no column of the loom list, no choice, and not window.
    .means = A condition column asks for what no loom has.
    .hint = { $options ->
        [none] Answered: as written.
       *[other] { $near ->
            [none] {""}
           *[other] Did you mean { $near }?{" "}
        }If it is still to be surveyed, answer { $options }.
    }
value-unknown = { $raw } is none of: { $known }.
    .means = A condition asks for a window or an alternative that there is not.
    .hint = { $near ->
        [none] {""}
       *[other] Did you mean { $near }?{" "}
    }Write one of them.
value-on-no-loom = No loom has { $heading } = { $raw }{ $missing ->
        [0] .
       *[other] ; { $missing } have none yet.
    }
    .means = A condition asks for a value that no loom has.
    .hint = { $near ->
        [none] {""}
       *[other] Did you mean { $near }?{" "}
    }{ $known ->
        [none] The loom list has no value in this column.
       *[other] The looms have: { $known }.
    }{ $options ->
        [none] {""}
       *[other] {" "}If it is right, answer { $options }.
    }
row-never-holds = { $test } holds for no value at all.
    .means = A condition that no value can meet.
    .hint = { $how ->
        [turned] The ends are the wrong way round, or shut each other out.{" "}
       *[empty] {""}
    }The row would never be taken.
unlike-limits = { $asks } asks for a { $kind }; { $other } asks for a { $other_kind }.
    .means = One attribute is put in order in two ways.
    .hint = Ask for { $heading } in one way.

## Steps

step-missing = Step { $step } has rows for { $heading } = { $asked }, and none for { $raw }, which { $looms } have.
    .means = A step leaves out a value that looms have and the method never mentions.
    .hint = { $options ->
        [none] Answered: as written.
       *[other] Add a row or widen a condition; if they need none, answer { $options }.
    }
step-doubled = Step { $step } { $raw }: this row and { $other } both hold for { $looms }.
    .means = One operation twice in one step.
    .hint = Narrow the conditions of one of them, or take it out.
step-needs-too-much = Step { $step } takes { $need } × { $what } side by side for { $looms }; there are { $have }.
    .means = The rows of a step together need more heads or tools than there are.
    .hint = Give one of the rows another step number.
step-repeated = Step { $step } comes again after step { $before }; it was used in { $first }.
    .means = The rows of a step do not stand together.
    .hint = Rows of one step are done side by side: put them together, or give this one its own number.
step-in-two-places = Step { $step } is { $place } in row { $line } and { $raw } here.
    .means = The rows of a step are done in different places.
    .hint = Rows of one step are done side by side: give one of them another number.
warp-out-after-in = Step { $step } { $operation } needs the warp out, but step { $other } { $other_operation } ({ $there }) needs it in.
    .means = A step needs the warp out after one that needs it in.
    .hint = The new warp comes in once: put every step that needs it out before those that need it in.
no-work = The method gives no operation to { $looms }.
    .means = Looms without any work.
    .hint = Leave them out of the programme, or mend the conditions.
row-on-no-loom = No loom of the list gets this row.
    .means = A row whose conditions no loom meets.
    .hint = It stays for looms to come.

## Choices

choice-is-attribute = { $raw } is { $how ->
        [window] the kind of window
       *[column] a column of the loom list
    } too.
    .means = A condition under this name could mean either.
    .hint = Give the choice another name, here and above the condition columns.
choice-circular = { $raw } leads back to itself.
    .means = A choice asks for a choice that asks for it.
    .hint = Take out the condition that leads back to it.
choice-without-alternative = { $choice }: no alternative is left for { $looms }{ $why ->
        [none] {""}
       *[other] {" "}({ $why })
    }.
    .means = The conditions leave a loom nothing to choose.
    .hint = Add an alternative for them, as `as it is`, or mend the conditions.
choice-unused = No row asks for the choice { $raw }.
    .means = A choice that changes nothing.
    .hint = It is never asked.

## Figures and supplies

impossible-figure = { $field } is { $value }.
    .means = Minutes, heads or a quantity that cannot be.
    .hint = It must be { $how ->
        [above] a number above 0
       *[least] a number, 0 or more
    }.
three-point-incomplete = Step { $step } { $operation }: a three-point estimate needs both low and high.
    .means = Only one end of a three-point estimate is given.
    .hint = Fill in the other one, or empty both.
three-point-order = Step { $step } { $operation }: low { $low }, likely { $likely }, high { $high } min.
    .means = The minutes of a three-point estimate do not rise.
    .hint = They must rise.
low-above-high = { $name }: low { $low } is above high { $high }.
    .means = The limits of a setting or check are the wrong way round.
    .hint = Exchange them.
target-outside-limits = { $name }: the target { $target } lies outside { $low ->
        [none] …
       *[other] { $low }
    } to { $high ->
        [none] …
       *[other] { $high }
    }.
    .means = A target beyond its own limits.
    .hint = Change the target or the limits.
setpoint-doubled = { $name }: this row and { $other } both hold for { $looms }.
    .means = Two targets for one setting and side.
    .hint = Narrow the conditions of one of them, or take it out.
tool-not-listed = Tool { $raw } is not in the list of tools.
    .means = An operation needs a tool that is not known.
    .hint = { $near ->
        [none] {""}
       *[other] Did you mean { $near }?{" "}
    }Add it to the sheet Tools, or mend it.
trade-without-crew = No crew is of the trade { $raw }.
    .means = An operation needs a trade that no crew has.
    .hint = { $near ->
        [none] {""}
       *[other] Did you mean { $near }?{" "}
    }The crews are: { $trades }.
too-many-heads = Step { $step } { $operation } asks for { $heads } × { $trade }; { $how ->
        [lead] the largest crew of the lead trade has { $most }
       *[other] there are { $most } altogether
    }.
    .means = An operation asks for more heads than a crew, or a trade, has.
    .hint = Ask for fewer, or make the crew larger.
trade-never-together = Step { $step } { $operation } needs { $raw } while a { $lead } crew is at the loom, and by their shifts the two are never at work together.
    .means = The shifts of two trades leave no hour in common.
    .hint = Correct the shifts in the sheet Crews, or the trade.
