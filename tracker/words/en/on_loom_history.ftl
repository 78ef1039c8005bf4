### What happened to one loom, and how it is told.

history = What happened
    .means = Heading, field or button below what happened to a loom.
history-stage = Stage
    .means = Heading, field or button below what happened to a loom.
history-since = Since
    .means = Heading, field or button below what happened to a loom.
history-who = Who
    .means = Heading, field or button below what happened to a loom.
history-reason = Reason
    .means = Heading, field or button below what happened to a loom.
history-card = Tell at its card →
    .means = Heading, field or button below what happened to a loom.
history-record = Record where it stands
    .means = Heading, field or button below what happened to a loom.
history-why = Why (needed for stopped, put off, left out and what is out of order)
    .means = Heading, field or button below what happened to a loom.
history-record-it = Record it
    .means = Heading, field or button below what happened to a loom.
history-withdraw = Take back what was recorded last
    .means = Heading, field or button below what happened to a loom.
history-withdraw-why = Why it was a mistake
    .means = Heading, field or button below what happened to a loom.
history-withdraw-it = Take it back
    .means = Heading, field or button below what happened to a loom.
history-day = Day; empty = now
    .means = Heading, field or button below what happened to a loom.
history-time = Time
    .means = Heading, field or button below what happened to a loom.
history-stops = Stops
    .means = Heading, field or button below what happened to a loom.
history-from = From
    .means = Heading, field or button below what happened to a loom.
history-to = To
    .means = Heading, field or button below what happened to a loom.
history-cause = Cause
    .means = Heading, field or button below what happened to a loom.
history-stops-many = Stops
    .means = Heading, field or button below what happened to a loom.
history-picks = Picks
    .means = Heading, field or button below what happened to a loom.
history-all-causes = all causes
    .means = Heading, field or button below what happened to a loom.
history-remarks = Remarks on its conversions
    .means = Heading.
history-remark-line = { $at ->
        [none] {""}
       *[other] { $at }, {""}
    }{ $about ->
        [none] the whole conversion
       *[other] { $about }
    }: { $text }
    .means = A remark on one of the loom's conversions.
history-no-stops = No stops are recorded of this loom.
    .means = Heading, field or button below what happened to a loom.
history-waste = Waste selvedge
    .means = Heading.
history-no-waste = No width of the waste selvedge is recorded of this loom.
    .means = Below the heading.
history-record-waste = Record the width of the waste selvedge
    .means = Opens the form.
history-width = Width (mm)
    .means = Field and heading: of the waste selvedge.
history-side = Side
    .means = Field and heading.
history-side-says = { $side ->
        [left] left
        [right] right
       *[none] both sides
    }
    .means = Which side of the loom, as the weaver sees it.
history-no-bobbins = No bobbin was weighed at this loom.
    .means = Below the heading Bobbins.
history-record-bobbins = Record what is left on a bobbin
    .means = Opens the form.
history-grams = Grams left
    .means = Field and heading: on a leno bobbin.
history-at = When
    .means = Heading: when a bobbin was weighed.
history-record-stops = Record stops of a period
    .means = Heading, field or button below what happened to a loom.
history-deeds = Who did what
    .means = Heading, field or button below what happened to a loom.
history-when = When
    .means = Heading, field or button below what happened to a loom.
history-what = What
    .means = Heading, field or button below what happened to a loom.
history-undo = Undo
    .means = Heading, field or button below what happened to a loom.
history-more = All of it →
    .means = Heading, field or button below what happened to a loom.
history-stopped-asks = The conversion of loom { $loom } is broken off; the next plan books it again.
    .means = What stopping does; asked before.
history-withdraw-asks = That loom { $loom } is { $stage } counts no more, nor does what was recorded with it; it stays in the history as taken back.
    .means = What withdrawing does; asked before.
