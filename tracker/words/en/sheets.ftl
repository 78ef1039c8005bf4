### Our sheets and what belongs into their columns.

own-sheet-looms = Looms
    .means = Name of one of our sheets.
about-sheet-looms = The looms of the hall. Any other column is kept as an attribute under its own heading.
    .means = What the sheet Looms holds.
own-sheet-warps = Warps
    .means = Name of one of our sheets.
about-sheet-warps = The warps on the looms and those that follow.
    .means = What the sheet Warps holds.
own-sheet-readings = Readings
    .means = Name of one of our sheets.
about-sheet-readings = Readings of the warp left, newer than the warp list.
    .means = What the sheet Readings holds.
own-sheet-articles = Articles
    .means = Name of one of our sheets.
about-sheet-articles = What is woven.
    .means = What the sheet Articles holds.
own-sheet-changes = Changes
    .means = Name of one of our sheets.
about-sheet-changes = How long an ordinary beam change stops a loom.
    .means = What the sheet Changes holds.
own-sheet-standing = Standing
    .means = Name of one of our sheets.
about-sheet-standing = Looms that wait anyway.
    .means = What the sheet Standing holds.
own-sheet-parts = Parts
    .means = Name of one of our sheets.
about-sheet-parts = The parts of the kits.
    .means = What the sheet Parts holds.
own-sheet-receipts = Receipts
    .means = Name of one of our sheets.
about-sheet-receipts = Open order lines.
    .means = What the sheet Receipts holds.
own-sheet-crews = Crews
    .means = Name of one of our sheets.
about-sheet-crews = Crews and their shifts; who is away or stays longer stands in Absences and Overtime.
    .means = What the sheet Crews holds.
own-sheet-absences = Absences
    .means = Name of one of our sheets.
about-sheet-absences = Whole days on which a crew, or some of it, is not there.
    .means = What the sheet Absences holds.
own-sheet-overtime = Overtime
    .means = Name of one of our sheets.
about-sheet-overtime = Hours that a crew works beside its shifts.
    .means = What the sheet Overtime holds.
own-sheet-running = Running
    .means = Name of one of our sheets.
about-sheet-running = When a hall weaves; missing = always.
    .means = What the sheet Running holds.
own-sheet-closures = Closures
    .means = Name of one of our sheets.
about-sheet-closures = Days or hours in which a hall does not weave or nobody converts.
    .means = What the sheet Closures holds.
own-sheet-tools = Tools
    .means = Name of one of our sheets.
about-sheet-tools = Tools that conversions share.
    .means = What the sheet Tools holds.
own-sheet-operations = Operations
    .means = Name of one of our sheets.
about-sheet-operations = The steps of a conversion, with condition columns.
    .means = What the sheet Operations holds.
own-sheet-kit-lines = Kit lines
    .means = Name of one of our sheets.
about-sheet-kit-lines = The parts of a conversion, with condition columns.
    .means = What the sheet Kit lines holds.
own-sheet-choices = Choices
    .means = Name of one of our sheets.
about-sheet-choices = What the planner may choose between, with condition columns.
    .means = What the sheet Choices holds.
own-sheet-setpoints = Setpoints
    .means = Name of one of our sheets.
about-sheet-setpoints = The settings to set, record and hold, with condition columns.
    .means = What the sheet Setpoints holds.
own-sheet-checks = Checks
    .means = Name of one of our sheets.
about-sheet-checks = The checks before sign-off, with condition columns.
    .means = What the sheet Checks holds.
own-sheet-terms = Terms
    .means = Name of one of our sheets.
about-sheet-terms = The terms of the programme.
    .means = What the sheet Terms holds.
own-sheet-work-done = Work done
    .means = Name of one of our sheets.
about-sheet-work-done = Conversions and their operations as they were done.
    .means = What the sheet Work done holds.
own-sheet-set-values = Set values
    .means = Name of one of our sheets.
about-sheet-set-values = Settings as they were found, set and read, one value a row.
    .means = What the sheet Set values holds.
own-sheet-check-results = Check results
    .means = Name of one of our sheets.
about-sheet-check-results = What the checks before sign-off gave.
    .means = What the sheet Check results holds.
own-sheet-parts-used = Parts used
    .means = Name of one of our sheets.
about-sheet-parts-used = What became of a kit.
    .means = What the sheet Parts used holds.
own-sheet-stops = Stops
    .means = Name of one of our sheets.
about-sheet-stops = How often looms stopped in a period.
    .means = What the sheet Stops holds.
own-sheet-waste = Waste
    .means = Name of one of our sheets.
about-sheet-waste = The width of the waste selvedge in a period.
    .means = What the sheet Waste holds.
own-sheet-bobbins = Bobbins
    .means = Name of one of our sheets.
about-sheet-bobbins = What is left on the leno bobbins.
    .means = What the sheet Bobbins holds.

## What belongs into a column

about-loom = The loom number, as text.
    .means = Hint on a column of our sheets.
about-looms-section = The looms that one weaver minds.
    .means = Hint on a column of our sheets.
about-looms-machine-type = The mill's own code for make and model.
    .means = Hint on a column of our sheets.
about-looms-year = Year built; not in the future.
    .means = Hint on a column of our sheets.
about-looms-saving-per-day = Currency a day once converted.
    .means = Hint on a column of our sheets.
about-looms-capacity-unsold = Yes: a stopped hour costs no contribution.
    .means = Hint on a column of our sheets.
about-looms-protected-until = No conversion before or on this day.
    .means = Hint on a column of our sheets.
about-hall = Needed where loom numbers start again in each hall.
    .means = Hint on a column of our sheets.
about-warps-sequence = 0 = on the loom now.
    .means = Hint on a column of our sheets.
about-warps-read-at = When the warp left was read; local time.
    .means = Hint on a column of our sheets.
about-warps-tail = The last metres that cannot be woven.
    .means = Hint on a column of our sheets.
about-warps-change = How this warp comes in.
    .means = Hint on a column of our sheets.
about-articles-take-up-basis = crimp: (warp - cloth)/cloth; contraction: (warp - cloth)/warp. Empty = crimp.
    .means = Hint on a column of our sheets.
about-articles-contribution-per-metre = Currency per metre of cloth.
    .means = Hint on a column of our sheets.
about-articles-warp-value-per-metre = Currency per metre of warp.
    .means = Hint on a column of our sheets.
about-articles-family = Articles whose settings are compared with each other.
    .means = Hint on a column of our sheets.
about-articles-weft-tex = Yarn count of the weft.
    .means = Hint on a column of our sheets.
about-articles-weft-price-per-kg = Currency per kilogram.
    .means = Hint on a column of our sheets.
about-changes-machine-type = Blank = every type.
    .means = Hint on a column of our sheets.
about-changes-meanwhile = Of these hours, what others do while a conversion goes on; no longer than the change. Empty = 0.
    .means = Hint on a column of our sheets.
about-changes-trade = Who does the change, where the mill plans them.
    .means = Hint on a column of our sheets.
about-changes-heads = How many of that trade.
    .means = Hint on a column of our sheets.
about-parts-on-hand = Counted stock; a change is booked as a count.
    .means = Hint on a column of our sheets.
about-parts-price = Currency per unit.
    .means = Hint on a column of our sheets.
about-parts-location = Where in the stockroom.
    .means = Hint on a column of our sheets.
about-receipts-order = Order and line number.
    .means = Hint on a column of our sheets.
about-receipts-unit = Must be the part's unit, where it is given.
    .means = Hint on a column of our sheets.
about-crews-weekdays = Empty = Monday to Friday.
    .means = Hint on a column of our sheets.
about-crews-breaks = Inside the shift. A half hour that a break touches is not worked.
    .means = Hint on a column of our sheets.
about-crews-hall = Blank = any hall.
    .means = Hint on a column of our sheets.
about-crews-from = First day of this row; empty = always.
    .means = Hint on a column of our sheets.
about-crews-to = Last day of this row, included.
    .means = Hint on a column of our sheets.
about-crews-language = In which this crew's cards speak (ISO 639-1). Empty = as the term `language of cards` says.
    .means = Hint on a column of our sheets.
about-absences-to = Last day, included.
    .means = Hint on a column of our sheets.
about-absences-heads = How many are away; empty = all, 0 = taken back.
    .means = Hint on a column of our sheets.
about-closures-hall = Blank = all halls.
    .means = Hint on a column of our sheets.
about-closures-start = Empty = from midnight.
    .means = Hint on a column of our sheets.
about-closures-end = Empty = to midnight.
    .means = Hint on a column of our sheets.
about-closures-stops = Empty = both.
    .means = Hint on a column of our sheets.
about-operations-step = Rows with the same step are done side by side.
    .means = Hint on a column of our sheets.
about-operations-minutes-low = Optional three-point estimate.
    .means = Hint on a column of our sheets.
about-operations-place = Empty = on loom. Work on the bench, before or after, takes hours and holds no loom.
    .means = Hint on a column of our sheets.
about-operations-warp = out: needs the old warp out and the new one not yet in; in: needs the warp in. Empty = either. In a beam change the new warp comes in between.
    .means = Hint on a column of our sheets.
about-operations-learns = No: takes what it takes, however often it was done. Empty = yes.
    .means = Hint on a column of our sheets.
about-operations-stops-neighbours = Yes: the looms beside it (by Row and Place) stand meanwhile; what they lose counts.
    .means = Hint on a column of our sheets.
about-operations-waivable = No: nothing is to be signed off without it. Empty = yes. Kept; signing off does not ask for it yet.
    .means = Hint on a column of our sheets.
about-kit-lines-comes-back = Yes: returns to stock afterwards.
    .means = Hint on a column of our sheets.
about-setpoints-repeatability = Two readings of one thing differ by less in 95 of 100 cases (ISO 5725).
    .means = Hint on a column of our sheets.
about-checks-kind = Empty = yes/no.
    .means = Hint on a column of our sheets.
about-checks-safety = Yes: somebody could be hurt.
    .means = Hint on a column of our sheets.
about-checks-waivable = No: nothing is signed off without it. Empty = no for a check marked safety, yes else.
    .means = Hint on a column of our sheets.
about-work-done-card = The number of the work card.
    .means = Hint on a column of our sheets.
about-work-done-operation = Empty = the whole conversion.
    .means = Hint on a column of our sheets.
about-work-done-started = When the loom was stopped for it; not needed for an operation.
    .means = Hint on a column of our sheets.
about-work-done-ended = Needed unless it is in work.
    .means = Hint on a column of our sheets.
about-work-done-stage-reached = Not needed for an operation. Stopped: the conversion failed, and the remark says why.
    .means = Hint on a column of our sheets.
about-work-done-minutes = Elapsed on the loom. May stay empty: the six times are shared over the operations then.
    .means = Hint on a column of our sheets.
about-work-done-done-by = Who did it; a step that nothing waives needs the name.
    .means = Hint on a column of our sheets.
about-work-done-hand-over = Who takes over, where a shift ends before the work does.
    .means = Hint on a column of our sheets.
about-set-values-side = Seen from the weaver's side; empty = the whole loom.
    .means = Hint on a column of our sheets.
about-set-values-why = Empty = read out.
    .means = Hint on a column of our sheets.
about-set-values-article = What was woven.
    .means = Hint on a column of our sheets.
about-set-values-waived-because = Why it may be signed off as it is.
    .means = Hint on a column of our sheets.
about-set-values-waived-by = Who answers for that; needed with a reason.
    .means = Hint on a column of our sheets.
about-set-values-waived-at = When that was decided; needed with a reason.
    .means = Hint on a column of our sheets.
about-check-results-result = Yes, no or a number.
    .means = Hint on a column of our sheets.
about-parts-used-used = What stays in the loom.
    .means = Hint on a column of our sheets.
about-parts-used-left-over = Goes back to the stockroom.
    .means = Hint on a column of our sheets.
about-parts-used-broken = Is scrapped.
    .means = Hint on a column of our sheets.
about-stops-cause = Empty = all causes together.
    .means = Hint on a column of our sheets.
about-stops-picks = Woven meanwhile, whatever the cause.
    .means = Hint on a column of our sheets.
about-stops-hours = Stood for it.
    .means = Hint on a column of our sheets.
about-bobbins-tex = Empty = the term `leno yarn`.
    .means = Hint on a column of our sheets.
