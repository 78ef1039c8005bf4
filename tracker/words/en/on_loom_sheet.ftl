### Everything about one loom.

sheet-title = Loom { $loom }{ $hall ->
        [none] {""}
       *[other] {", "}{ $hall }
    }
    .means = Title of one loom's screen.
sheet-row = row { $at }
    .means = Where a loom stands.
sheet-place = place { $at }
    .means = Where a loom stands.
sheet-as-of = as of { $at }
    .means = The moment that a screen looks at.
sheet-since = since { $at }{ $why ->
        [none] {""}
       *[other] : { $why }
    }
    .means = Since when a loom is at its stage, and why.
sheet-stage = Stage
    .means = Heading, name or note on the screen of one loom.
sheet-next-beam-out = Next beam-out, P50
    .means = Heading, name or note on the screen of one loom.
sheet-not-known = not known
    .means = Heading, name or note on the screen of one loom.
sheet-kit = Kit
    .means = Heading, name or note on the screen of one loom.
sheet-converted = Converted
    .means = Heading, name or note on the screen of one loom.
sheet-by-nobody = crew and minutes were not recorded
    .means = Heading, name or note on the screen of one loom.
sheet-starts = Conversion starts
    .means = Heading, name or note on the screen of one loom.
sheet-not-booked = not booked
    .means = Heading, name or note on the screen of one loom.
sheet-minutes-not-taken = minutes not taken
    .means = Heading, name or note on the screen of one loom.
sheet-conversion = Conversion
    .means = Heading, name or note on the screen of one loom.
sheet-crew = crew
    .means = Heading, name or note on the screen of one loom.
sheet-begun = begun
    .means = Heading, name or note on the screen of one loom.
sheet-ended = ended
    .means = Heading, name or note on the screen of one loom.
sheet-not-recorded = not recorded
    .means = Heading, name or note on the screen of one loom.
sheet-on-loom = on the loom
    .means = Heading, name or note on the screen of one loom.
sheet-window = window
    .means = Heading, name or note on the screen of one loom.
sheet-by-method = by method version
    .means = Heading, name or note on the screen of one loom.
sheet-booking = Booking
    .means = Heading, name or note on the screen of one loom.
sheet-start = start
    .means = Heading, name or note on the screen of one loom.
sheet-end = end
    .means = Heading, name or note on the screen of one loom.
sheet-beam-out-then = beam-out expected when planned
    .means = Heading, name or note on the screen of one loom.
sheet-none = none
    .means = Heading, name or note on the screen of one loom.
sheet-work = work
    .means = Heading, name or note on the screen of one loom.
sheet-cost = cost of the booking
    .means = Heading, name or note on the screen of one loom.
sheet-not-in-plan = The published plan does not have this loom.
    .means = Heading, name or note on the screen of one loom.
sheet-then = this loom's booking shows here then
    .means = Heading, name or note on the screen of one loom.
sheet-chances = Chances to convert
    .means = Heading, name or note on the screen of one loom.
sheet-beam-outs = Beam-outs ahead
    .means = Heading, name or note on the screen of one loom.
sheet-no-window = No beam-out and no standing span before the end of the horizon.
    .means = Heading, name or note on the screen of one loom.
sheet-window-head = Window
    .means = Heading, name or note on the screen of one loom.
sheet-p10 = P10
    .means = Heading, name or note on the screen of one loom.
sheet-p50 = P50
    .means = Heading, name or note on the screen of one loom.
sheet-p90 = P90
    .means = Heading, name or note on the screen of one loom.
sheet-runs-out = Runs out
    .means = Heading, name or note on the screen of one loom.
sheet-comes-in = Comes in
    .means = Heading, name or note on the screen of one loom.
sheet-other-dates = Other dates, and what they would cost more
    .means = Heading, name or note on the screen of one loom.
sheet-choices = Choices
    .means = Heading, name or note on the screen of one loom.
sheet-start-head = Start
    .means = Heading, name or note on the screen of one loom.
sheet-end-head = End
    .means = Heading, name or note on the screen of one loom.
sheet-more = More
    .means = Heading, name or note on the screen of one loom.
sheet-needs = What it needs, and why
    .means = Heading, name or note on the screen of one loom.
sheet-work-for = Work for
    .means = Heading, name or note on the screen of one loom.
sheet-step = Step
    .means = Heading, name or note on the screen of one loom.
sheet-operation = Operation
    .means = Heading, name or note on the screen of one loom.
sheet-where = Place
    .means = Heading, name or note on the screen of one loom.
sheet-minutes = Minutes
    .means = Heading, name or note on the screen of one loom.
sheet-who = Who
    .means = Heading, name or note on the screen of one loom.
sheet-tool = Tool
    .means = Heading, name or note on the screen of one loom.
sheet-torque = Torque
    .means = Heading, name or note on the screen of one loom.
sheet-caution = Caution
    .means = Heading, name or note on the screen of one loom.
sheet-why = Why
    .means = Heading, name or note on the screen of one loom.
sheet-part = Part
    .means = Heading, name or note on the screen of one loom.
sheet-quantity = Quantity
    .means = Heading, name or note on the screen of one loom.
sheet-comes-back = Comes back
    .means = Heading, name or note on the screen of one loom.
sheet-target = Target
    .means = Heading, name or note on the screen of one loom.
sheet-low = Low
    .means = Heading, name or note on the screen of one loom.
sheet-high = High
    .means = Heading, name or note on the screen of one loom.
sheet-setting = Setting
    .means = Heading, name or note on the screen of one loom.
sheet-side = Side
    .means = Heading, name or note on the screen of one loom.
sheet-unit = Unit
    .means = Heading, name or note on the screen of one loom.
sheet-check = Check
    .means = Heading, name or note on the screen of one loom.
sheet-kind = Kind
    .means = Heading, name or note on the screen of one loom.
sheet-tab-operations = Operations
    .means = Heading, name or note on the screen of one loom.
sheet-tab-parts = Parts
    .means = Heading, name or note on the screen of one loom.
sheet-tab-settings = Settings
    .means = Heading, name or note on the screen of one loom.
sheet-tab-checks = Checks
    .means = Heading, name or note on the screen of one loom.
sheet-values = What is known, and where it came from
    .means = Heading, name or note on the screen of one loom.
sheet-value-of = Value of
    .means = Heading, name or note on the screen of one loom.
sheet-value = Value
    .means = Heading, name or note on the screen of one loom.
sheet-file = File
    .means = Heading, name or note on the screen of one loom.
sheet-sheet = Sheet
    .means = Heading, name or note on the screen of one loom.
sheet-cell = Cell
    .means = Heading, name or note on the screen of one loom.
sheet-entered = Entered
    .means = Heading, name or note on the screen of one loom.
sheet-entered-by = By
    .means = Heading, name or note on the screen of one loom.
sheet-entered-here = entered here
    .means = Heading, name or note on the screen of one loom.
sheet-correct = Set a value right
    .means = Heading, name or note on the screen of one loom.
sheet-correct-why = Why, or how it is known
    .means = Heading, name or note on the screen of one loom.
sheet-correct-it = Set it right
    .means = Heading, name or note on the screen of one loom.
sheet-kit-state = { $state ->
        [complete] complete
        [issued] issued
        [reserved] reserved
        [short] short
       *[none] none
    }
    .means = The state of a loom's kit.
sheet-by = by { $crew }, { $minutes }
    .means = Who converted a loom and how long it took.
sheet-ends = ends { $at }
    .means = When a booking ends.
sheet-reading = reading of { $at }{ $before ->
        [yes] {", "}before the conversion
       *[no] {""}
    }{ $state ->
        [ok] {""}
        [stale] {", "}stale
        [overdue] {", "}overdue
       *[other] {", "}{ $state }
    }
    .means = By which reading a beam-out is expected.
sheet-lacks = lacks { $parts }
    .means = What a kit lacks.
sheet-crew-named = crew { $crew }
    .means = Which crew has a turn.
sheet-person-hours = { $hours } person-hours
    .means = How much work.
sheet-no-booking = No booking in the published plan; the loom is { $stage }.
    .means = A loom under way or done has no booking.
sheet-left-over = The published plan leaves this loom over: { $why }.
    .means = Why a loom has no booking.
sheet-left-over-cost = Leaving it costs { $cost }.
    .means = What leaving a loom over costs.
sheet-window-state = { $kind }{ $state ->
        [ok] {""}
        [stale] , reading stale
        [overdue] , reading overdue
       *[other] , reading { $state }
    }
    .means = A window and how far its reading can be trusted.
sheet-more-windows = and { $more } more up to the end of the horizon
    .means = More windows than are listed.
sheet-to-survey = To survey: look up { $what } at the loom and load it; the work depends on it.
    .means = What must be known of a loom first.
sheet-work-says = Loom stopped { $stopped }, bench before { $bench }, after restart { $after }{ $later ->
        [none] {""}
       *[other] , bench after { $later }
    }; { $labour } person-hours (likely { $low } to { $high }): { $trades }. Parts { $parts }.
    .means = What a conversion takes.
sheet-unknown = Not known: { $what }.
    .means = Headings without a value.
sheet-new-value = What it is{ $unit ->
        [none] {""}
       *[other] {" "}({ $unit })
    }; empty = not known
    .means = Field for a corrected value.
correct-without-why = A value is set right only with a reason
    .means = A value is corrected without saying why.
correct-no-heading = There is no heading { $heading } in the list of looms
    .means = A value of an unknown heading was corrected.
