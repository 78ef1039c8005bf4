no-plan-no-cards = no plan is published, so there are no cards yet
    .means = Cards were asked for before any plan was published.
    .hint = Publish a plan first.
    .terminal = `beamslot plan --publish` makes one.
not-booked-no-card = loom { $loom } is not booked in the published plan, so it has no card
    .means = A card was asked for a loom that the published plan does not book.
    .hint = Look at its bookings first.
    .terminal = `beamslot plan --dates LOOM` says where it stands.
card-not-as-booked = loom { $loom } cannot be converted any more as it was booked: its list or the method has changed since
    .means = The method or the loom's attributes no longer give the work that the plan booked.
    .hint = Plan again.
    .terminal = `beamslot scope LOOM` says what it needs now; then `beamslot plan --publish`.
no-cards-of-crew = crew { $crew } has no conversion in week { $week }; { $crews } have
    .means = No crew of that name works on a booked conversion in the week asked for.
no-cards = no conversion begins in week { $week }
    .means = Cards were to be written for a week in which no conversion begins.
    .hint = Choose another week.
    .terminal = `beamslot plan --show` lists the bookings.
no-week = { $text } is no week like 2027-W02
    .means = What was typed as a week is not an ISO 8601 week.
cards-made = { $cards ->
        [one] one card
       *[other] { $cards } cards
    }{ $week ->
        [none] {""}
       *[other] {" "}of week { $week }
    }
    .means = How many cards there are of the week asked for.
cards-without = no card for { $looms }: their list or the method has changed since they were booked
    .means = Booked looms for which no card can be made.
    .hint = Plan again.
    .terminal = `beamslot scope LOOM` says what a loom needs now; then `beamslot plan --publish`.
