### What is told of the floor and of the people: stages, conversions, absences, moments.

still-to-come = { $at } is still to come
    .means = Something was told of a moment that lies ahead.
    .hint = record what has happened
before-programme = { $at } is before the programme, which starts on { $start }
    .means = A stock entry was told of a day before the programme; a year typed wrong is the usual cause.
    .hint = say why it is booked here
    .terminal = say with --why TEXT why it is booked here
