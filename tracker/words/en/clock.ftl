### Moments, and the clock that a programme may have of its own.

ahead-of-now = { $at } is still to come.
    .means = Something is told as done at a moment that has not come yet by the computer's clock.
    .hint = Say what has happened.
ahead-of-own-clock = { $at } is still to come: this programme has its own clock, and it stands at { $stands }.
    .means = Something is told as done at a moment that has not come yet by the programme's own clock.
    .hint = Say what has happened, or set the clock forward.
    .terminal = Say what has happened, or set the clock forward: beamslot clock { $typed }
own-clock = This programme has its own clock, as invented ones do. It stands at { $stands }.
    .means = Above every screen, and what `beamslot clock` says.
    .terminal = beamslot clock T sets it forward.
    .screen = What was done is recorded up to it; at the terminal it is set forward.
own-clock-set = The clock of this programme stands at { $stands } now.
    .means = What `beamslot clock T` says when it is done.
computers-clock = This programme goes by the computer's clock: { $now }.
    .means = What `beamslot clock` says where the programme has no clock of its own.
clock-is-the-computers = { $database } goes by the computer's clock, which is not set here.
    .means = Somebody wants to set the clock of a real mill.
    .hint = Only a programme of the demo has a clock to set; --as-of looks at another moment.
clock-only-forward = The clock stands at { $stands }; { $asked } lies before it.
    .means = Somebody wants to set the programme's own clock back.
    .hint = It is only set forward, since what was recorded until then would lie ahead.
computer-clock-wrong = this computer's clock says { $at } UTC, which is not within { $first } to { $last }
    .means = The computer's clock is wrong by years.
    .hint = set it right
moment-out-of-years = '{ $typed }' is not within { $first } to { $last }
    .means = A day or moment was typed that nobody plans for.
