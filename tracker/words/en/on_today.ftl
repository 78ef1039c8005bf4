### The screen Today: what a crew does now, and what it tells at the loom.

screen-today = Today
    .means = A screen.
today-crew = Crew
    .means = Whose work is shown.
today-choose-crew = Choose your crew; the address keeps it.
    .means = Nobody has chosen a crew yet.
today-who = Who tells it
    .means = Field: the name under which it is written down, where nobody signs in.
today-nothing = Nothing is booked for { $crew } today or tomorrow, and nothing is under way.
    .means = A crew has no work.
today-no-crew = The published plan names no crew.
    .means = Bookings are there, but nobody is named for them.
word-under-way = under way
    .means = Why a loom stands in the list of today.
word-beam-out-early = beam-out early
    .means = Why a loom stands in the list of today.
word-overdue = overdue
    .means = Why a loom stands in the list of today.
word-today = today
    .means = Why a loom stands in the list of today.
word-tomorrow = tomorrow
    .means = Why a loom stands in the list of today.
today-line = Loom { $loom } · { $due }
    .means = The button that opens a card.
today-booked = { $window }, { $start } to { $end } · { $type }
    .means = When a conversion is booked, in which window.
today-beam-out = Beam-out about { $at }
    .means = When the warp runs out by today's readings.
today-ready = ✓ Kit handed out, people and tools there as booked
    .means = Nothing is missing.
today-kit-not-issued = ▲ Kit whole, but not handed out yet
    .means = The stockroom still has the kit.
today-lacks = ■ Kit lacks { $parts }
    .means = Parts that are neither handed out nor held.
today-tool-missing = { $tool }: { $wanted } wanted, { $there } there
    .means = A tool is not there as it was booked.
today-away = { $heads ->
        [none] { $crew } is away
       *[other] { $heads } of { $crew } away
    } { $first } to { $last }
    .means = People who are not there as booked.
today-warp = ◆ { $state ->
        [out] The old warp must be out, the new one not in yet
       *[in] The warp must be in
    }
    .means = What an operation needs of the warp.
today-mark = ■ { $what }
    .means = A sign before something that is missing.

today-then = each crew finds its cards here then
    .means = What comes of a published plan on this screen.

## The open card

today-print = Print the card
    .means = Button: the card as PDF.
today-holds = Hold points: { $done } of { $all } signed; { $electrical } are the electrician's
    .means = How far the hold points of a card are.
today-tab-times = Times
    .means = Part of an open card.
today-tab-operations = Operations
    .means = Part of an open card.
today-tab-settings = Settings
    .means = Part of an open card.
today-tab-checks = Checks
    .means = Part of an open card.
today-tab-parts = Parts used
    .means = Part of an open card.
today-parts-none = No parts were handed out for this loom.
    .means = In place of the parts of an open card.
today-part-used = Used
    .means = Field: how much of a part stays in the loom.
today-part-left-over = Left over
    .means = Field: how much of a part goes back to the stockroom.
today-part-broken = Broken
    .means = Field: how much of a part is scrapped.
today-part-told = ✓ used { $used }, left over { $left }, broken { $broken }
    .means = What was told of a part.
today-part-note = Note it
    .means = Button: note what became of a part.
today-tab-end = Remarks, end
    .means = Part of an open card.
today-part = What to tell
    .means = Label of the parts of an open card.
today-start = Start: the loom is stopped now
    .means = Button: the work begins.
today-start-why = Why it begins though its kit is not handed out
    .means = Field: the reason for which work begins out of order.
today-reason = Reason
    .means = Field.
today-before = Begin the work first; then times, operations, settings and checks can be told.
    .means = Nothing can be told of a conversion that has not begun.
today-time-now = { $name }: now
    .means = Button: one of the six times is now.
today-time-told = ✓ { $name } { $at }
    .means = One of the six times as told.
today-time-other = Another time
    .means = A small form for a moment that is not now.
today-time-day = Day
    .means = Field.
today-time-clock = Time
    .means = Field.
today-time-note = Note { $name }
    .means = Button: a moment is told.
today-noted-anew = noted anew at the loom
    .means = The reason kept with what was told again on this screen.
today-operation = { $step } · { $operation }
    .means = An operation of the card.
today-operation-more = { $heads } × { $trade }, { $minutes } min{ $tool ->
        [none] {""}
       *[other] {" · "}{ $tool }
    }
    .means = What an operation takes.
today-hold = ◆ HOLD: nothing is signed off without it
    .means = An operation that nothing waives.
today-neighbours = ◆ Looms beside it must stand
    .means = An operation during which the neighbours stand.
today-caution = ▲ { $caution }
    .means = A caution beside its operation.
today-done = Done
    .means = Button: an operation is done.
today-done-by = ✓ done, { $who }{ $torque ->
        [none] {""}
       *[other] {", "}{ NUMBER($torque, maximumFractionDigits: 1) } N·m
    }
    .means = An operation was done.
today-torque = Torque read, N·m (asked: { NUMBER($target, maximumFractionDigits: 1) })
    .means = Field.
today-for-electrician = for the electrician
    .means = In place of a button that only the electrician may use.
today-setting = { $setting }{ $side ->
        [none] {""}
       *[other] , { $side }
    }{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }
    .means = A setting or check with its side and unit.
today-target = Target { $target ->
        [none] none
       *[other] { $target }
    }{ $low ->
        [none] {""}
       *[other] ; { $low } to { $high }
    }
    .means = What a setting should be.
today-limits = { $low } to { $high }
    .means = What a check must give.
today-found = Found so
    .means = Button: a setting as it was before the conversion.
today-set = Set so
    .means = Button: a setting as it is now.
today-was-found = found { $value }
    .means = A setting as it was before.
today-within = ✓ set { $value }
    .means = A setting lies within its limits.
today-outside = ■ { $value } lies outside the limits
    .means = A setting or check does not lie within its limits.
today-passed = ✓ { $value }
    .means = A check was passed.
today-failed = ■ { $value }: not passed
    .means = A check was not passed.
today-waived = ◆ waived by { $by }: { $why }
    .means = It may be signed off as it is.
today-waive = Waive
    .means = Button: a setting or check may be signed off as it is.
today-waive-why = Why it may stay as it is
    .means = Field.
today-waive-by = Who answers for it
    .means = Field.
today-yes = Yes
    .means = Button: a check is passed.
today-no = No
    .means = Button: a check is not passed.
today-note-value = Note the value
    .means = Button: what a check gave.
today-value = Value
    .means = Field.
today-remark = Remark
    .means = Field.
today-remark-about = About
    .means = Field: the operation that a remark is about.
today-remark-whole = the whole conversion
    .means = A remark is about no single operation.
today-remark-note = Note the remark
    .means = Button.
today-remark-line = { $about ->
        [none] {""}
       *[other] { $about }: {""}
    }{ $text }
    .means = A remark on the conversion that is open.
bobbins = Bobbins
    .means = Heading: what is left on the leno bobbins.
bobbins-weighed = Weigh them once the loom runs: from then on the next change is reckoned.
    .means = Below the heading Bobbins.
bobbins-grams = Grams left, { $side ->
        [left] left
       *[right] right
    }
    .means = Field.
bobbins-told = ✓ { $side ->
        [left] left
       *[right] right
    }: { $grams }
    .means = A bobbin was weighed.
today-kit-where = Where
    .means = Heading: where a part of the kit lies.
today-kit-part = Part
    .means = Heading.
today-kit-what = What it is
    .means = Heading.
today-kit-quantity = Quantity
    .means = Heading.
today-kit-mark = Mark
    .means = Heading: a part lacks, or comes back.
today-needed = Needed: { $heads } × { $trade }, { $at }
    .means = When a conversion needs the people of another trade than the one that converts.
today-photo = Photo (JPEG, PNG or WebP, up to 20 MB)
    .means = Field: takes a photo or a file with one.
today-photo-help = It goes with the remark. Place and device are taken out of it; nobody should be in it, since it is kept.
    .means = Below the field for a photo.
today-photo-by = { $who }, { $at }{ $remark ->
        [none] {""}
       *[other] : { $remark }
    }
    .means = Below a photo: who took it, when, what was said with it.
today-earlier = Remarks of the last three conversions of this type
    .means = Heading.
today-earlier-none = None of them has a remark.
    .means = The last three conversions have no remark.
today-earlier-line = Loom { $loom }, { $at }{ $about ->
        [none] {""}
       *[other] {", "}{ $about }
    }: { $text }
    .means = A remark of an earlier conversion.
today-hand-over = Hand over
    .means = Button and heading.
today-hand-over-to = Who goes on
    .means = Field.
today-handed-over = ✓ handed over to { $who }
    .means = Somebody else goes on.
today-finish = The loom is at speed: run-in begins
    .means = Button: the conversion is over.
today-sign-off = Sign off
    .means = Button.
today-sign-off-asks = Loom { $loom } is signed off as { $who }: everything on its card counts as done, and what is held for it is free again.
    .means = What a sign-off does; asked before it is done.
today-open-points = Open before it can be signed off
    .means = Heading.
today-open-point = □ { $what }
    .means = A point that is open.
today-nothing-open = ✓ Nothing is open.
    .means = A loom can be signed off.
today-break-off = Stop the conversion
    .means = Button and heading: the conversion failed.
today-break-off-asks = The conversion of loom { $loom } is broken off and recorded as stopped; the next plan books it again.
    .means = What stopping does; asked before it is done.
today-is-signed-off = ✓ Loom { $loom } is signed off.
    .means = Nothing more is to be told.

## What was told

told = Loom { $loom }: { $what }.
    .means = What was written down at a loom.
told-begun = begun
    .means = The work began.
told-time = { $name } noted
    .means = One of the six times was told.
told-of = { $name }{ $side ->
        [none] {""}
       *[other] {" "}({ $side })
    }{ $value ->
        [none] {" "}done
       *[other] : { $value }
    }
    .means = An operation was done, or a setting or check has this value.
told-remark = { $photo ->
        [yes] remark and photo noted
       *[no] remark noted
    }
    .means = A remark was told, with or without a photo.
told-hand-over = handed over to { $to }
    .means = Somebody else goes on.
told-bobbin = { $side ->
        [left] left
       *[right] right
    } bobbin: { $grams } g left
    .means = A bobbin was weighed.
told-waived = { $what } waived
    .means = A setting or check may be signed off as it is.
told-run-in = at speed, run-in begins
    .means = The conversion is over.
told-stopped = conversion stopped
    .means = The conversion failed.
