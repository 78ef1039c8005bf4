### What there is to say of a scenario.

heads-change-nothing = { $crew } takes one conversion at a time, and for that its { $heads ->
        [one] one head is
       *[other] { $heads } heads are
    } enough: more heads change nothing but what an hour costs.
    .means = A scenario gives a crew more heads that cannot take a second conversion.
    .hint = Another crew would change something: [[crew]] in a scenario file.
