### The halls, row by row.

screen-hall = Hall
    .means = Heading, filter or name on the screen Hall.
hall-kit = Kit
    .means = Heading, filter or name on the screen Hall.
hall-alarms = Alarms
    .means = Heading, filter or name on the screen Hall.
hall-all-kits = all kits
    .means = Heading, filter or name on the screen Hall.
hall-only-alarms = only with alarms
    .means = Heading, filter or name on the screen Hall.
hall-as-table = As a table
    .means = Heading, filter or name on the screen Hall.
hall-no-row = no row
    .means = Heading, filter or name on the screen Hall.
hall-row = Row { $row }
    .means = Name of a row.
hall-place = place { $place }
    .means = Name of a place.
hall-shown = { $shown } of { $all ->
        [one] { $all } loom
       *[other] { $all } looms
    } · a click leads to the loom
    .means = How many looms fit the filters.
