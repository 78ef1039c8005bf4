### The list of looms.

looms-back = all looms
    .means = Link back to the list.
looms-unknown = { $what }. The list of all looms leads to each.
    .means = An address names a loom that there is not.
looms-which = { $looms } looms have this number. Which one is meant?
    .means = A number stands in several halls.
looms-no-hall = without a name
    .means = A hall without a name.
looms-shown = { $shown } of { $all ->
        [one] { $all } loom
       *[other] { $all } looms
    } · a click on a loom number opens its sheet
    .means = How many looms a list shows.
looms-none-fits = No loom fits these filters.
    .means = A list is empty by its filters.
looms-loom = Loom
    .means = Heading or filter.
looms-hall = Hall
    .means = Heading or filter.
looms-row = Row
    .means = Heading or filter.
looms-place = Place
    .means = Heading or filter.
looms-type = Machine type
    .means = Heading or filter.
looms-stage = Stage
    .means = Heading or filter.
looms-window = Window
    .means = Heading or filter.
looms-start = Start
    .means = Heading or filter.
looms-end = End
    .means = Heading or filter.
looms-all = all looms
    .means = A filter with nothing chosen.
looms-all-halls = all halls
    .means = A filter with nothing chosen.
looms-all-types = all machine types
    .means = A filter with nothing chosen.
looms-all-stages = all stages
    .means = A filter with nothing chosen.
screen-looms = Looms
    .means = A screen.
