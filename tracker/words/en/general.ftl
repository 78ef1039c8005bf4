### Pieces that the speaker itself needs, and the trade's fixed words.

just = { $value }
    .means = One value by itself.
and-more = and {"{n}"} more
    .means = The tail of a list that names only its first entries; {"{n}"} is how many are left.
word-yes = yes
    .means = Yes.
word-no = no
    .means = No.

## Kinds of stock entry

word-opening = opening
    .means = The stock that a part began with.
word-receipt = receipt
    .means = Parts came in.
word-issue = issue
    .means = Parts were handed out.
word-return = return
    .means = Parts came back unused.
word-recovered = recovered
    .means = Parts came back after use.
word-adjustment = adjustment
    .means = Stock was added or taken off, with its reason.
word-count = count
    .means = Stock was counted.

## Stages of a loom

word-surveyed = surveyed
    .means = The loom was looked at in the hall.
word-scoped = scoped
    .means = The loom's work is known and it is to be planned.
word-booked = booked
    .means = The published plan books the loom.
word-kitted = kitted
    .means = The loom's kit is whole.
word-in-work = in work
    .means = The loom is being converted.
word-run-in = run-in
    .means = The loom is converted and is run in.
word-signed-off = signed off
    .means = The conversion is accepted.
word-put-off = put off
    .means = The loom is not to be planned for now.
word-left-out = left out
    .means = The loom is not to be converted.
