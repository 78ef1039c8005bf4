### Pieces that the speaker itself needs, and the trade's fixed words.

just = { $value }
    .means = One value by itself.
own-value = { OWN($value) }
    .means = A value of the mill's own, as it would write it.
empty-value = empty
    .means = There is no value.
and-more = and {"{n}"} more
    .means = The tail of a list that names only its first entries; {"{n}"} is how many are left.
word-yes = yes
    .means = Yes.
word-no = no
    .means = No.

language-name = English
    .means = The name of this language in itself, to choose it by.
from-to = { $start } to { $end }
    .means = A span of time.

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
word-stopped = stopped
    .means = A conversion was broken off.
word-signed-off = signed off
    .means = The conversion is accepted.
word-put-off = put off
    .means = The loom is not to be planned for now.
word-left-out = left out
    .means = The loom is not to be converted.

## Kinds of window

word-repeat = repeat
    .means = A beam change with the same article knotted in.
word-style = style
    .means = A beam change to another article.
word-standing = standing
    .means = The loom stands anyway.
word-mid-warp = mid-warp
    .means = A warp is stopped for the conversion.

## What a plan's search came to

word-proven-optimal-within-tolerance = proven optimal within tolerance
    .means = No plan costs less by more than the gap asked for.
word-feasible-with-gap = feasible with gap
    .means = The plan can be carried out; a cheaper one may exist.
word-infeasible = infeasible
    .means = No plan can be carried out.
word-timed-out = timed out
    .means = The search was ended before it found its proof.
