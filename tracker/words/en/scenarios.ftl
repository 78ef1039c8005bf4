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
