### What there is to say of a scenario.

heads-change-nothing = { $crew } takes one conversion at a time, and for that its { $heads ->
        [one] one head is
       *[other] { $heads } heads are
    } enough: more heads change nothing but what an hour costs.
    .means = A scenario gives a crew more heads that cannot take a second conversion.
    .hint = Another crew would change something: [[crew]] in a scenario file.

## What does not fit

scenario-missing = there is no scenario file { $file }
    .means = The path names no file.
scenario-encoding = scenario { $file } is no text in UTF-8
    .means = The file is of another encoding.
    .hint = save it as a TOML file in UTF-8
scenario-unreadable = scenario { $file } cannot be read: { $why }
    .means = The file may not or cannot be opened.
scenario-not-toml = scenario { $file } cannot be read: { $why }
    .means = The file breaks the rules of TOML.
    .hint = mend that line
scenario-named-twice = scenario { $file }: another one is called '{ $name }', too
    .means = Two scenarios that are to be compared have one name.
    .hint = give it a name of its own
scenario-refused = scenario{ $file ->
        [none] {""}
       *[other] {" "}{ $file }
    }{ $place ->
        [none] {""}
       *[other] : { $place }
    }{ $where ->
        [none] {""}
       *[other] {" "}{ $where }
    }{ $how ->
        [lacks] {" "}
       *[wrong] :{" "}
    }{ $what }
    .means = An entry of a scenario does not fit; what is wrong stands behind it.
scenario-entry-unknown = '{ $name }' is not one of name, { $entries }
    .means = A scenario has an entry that there is not.
scenario-entry-shape = { $name } { $value } is not possible
    .means = An entry is written as a value or a list where it is a table.
    .hint = write it as lines under { $place }
scenario-name = name { $value } is not possible
    .means = A name that the lists of plans cannot show.
    .hint = give a text of one line with 1 to { $most } characters
scenario-value = { $value } is not possible
    .means = A value that its field cannot have.
    .hint = give { $possible }
scenario-twice = { $field } is given twice
    .means = One field under two words.
    .hint = leave one of them out
scenario-lacks = has no { $field }
    .means = An entry lacks a field that it must have.
    .hint = give { $possible }
scenario-contradicts = { $what }
    .means = Two fields of an entry contradict each other.
    .hint = correct one of them
scenario-field-unknown = { $kind ->
        [term] there is no term '{ $name }'; the terms are { $names }
       *[field] there is no field '{ $name }'; the fields are { $names }
    }
    .means = An entry has a field that there is not.
scenario-nobody = there is no { $kind ->
        [crew] crew
        [tool] tool
        [trade] trade
       *[part] part
    } '{ $name }'; there are { $names }
    .means = A scenario names what the mill does not have.
scenario-new-order = order { $order } of { $part } is a new one and has no quantity
    .means = A new order line needs its quantity.
    .hint = give a number of at least 0
scenario-shift = { $crew }: shift start and shift end are both { $at }
    .means = A crew of a scenario would work no time or all day.
    .hint = correct one of them

## A scenario put in force

scenario-put-in-force = The scenario { $scenario } is in force: { $values ->
        [one] one value stands
       *[other] { $values } values stand
    } in the mill's data, by change { $number }.
    .means = What a scenario has otherwise was written as the mill's own data.
    .hint = *Changes* takes it back.
    .terminal = `beamslot undo { $number }` takes it back. Next: beamslot plan
scenario-order-left = order { $order } of { $part } stays as it is: the mill's data have of an order line what its supplier has said
    .means = An order line that a scenario supposed to come otherwise is not written.
    .hint = Enter it on *Kits and needs* once it is said or placed.
    .terminal = `beamslot stock expect` enters a new day once it is said, `beamslot stock order` a line that was placed; --said { $order } says that it was.
scenario-leaves-out = of the scenario { $scenario } order line { $orders } would stay out
    .means = Some of a scenario cannot become the mill's data, and nobody accepted that.
    .hint = say that the supplier has said so, or accept that it stays out
    .terminal = --said ORDER says that its supplier has said so, --leave-out accepts that it stays out
scenario-in-force-already = { $left ->
        [none] the mill's data have all of the scenario { $scenario } already
       *[other] nothing of the scenario { $scenario } is left to write: its supplier has not said of order line { $left } what it supposes
    }
    .means = There is nothing that a scenario would change.
scenario-no-order = the scenario has no order { $order }; it has { $orders }
    .means = An order is named as said by its supplier that the scenario does not have.
