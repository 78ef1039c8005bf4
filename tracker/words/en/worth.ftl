### Was it worth it? Verdicts, what stands beside them, savings and payback.

worth-nothing = no stops and no waste widths are loaded{ $article ->
        [none] {""}
       *[other] {" "}of article { $article }
    }
    .means = The sheets Stops and Waste have no period that lies within what was asked for.
    .terminal = load the sheets Stops and Waste week by week, of looms not yet converted too: `beamslot load FILE`.
    .hint = load the sheets Stops and Waste week by week, of looms not yet converted too
cause-unknown = no stop was recorded of cause { $cause }; { $causes ->
        [none] no row names a cause
       *[other] causes are { $causes }
    }
    .means = The cause asked for stands in no row of the sheet Stops within what was asked for.
worth-stops-of = { $cause ->
        [none] stops
       *[other] stops by { $cause }
    }
    .means = What a verdict is about: the stops of all causes together, or of one.
worth-width = waste width
    .means = What a verdict is about: the width of the waste selvedge, both sides together.
worth-efficiency = efficiency
    .means = What a verdict is about: the efficiency of the looms.
worth-change = { QUANTITY($middle, signed: "yes") } % ({ QUANTITY($low, signed: "yes") } to { QUANTITY($high, signed: "yes") } %)
    .means = A change in percent with its 95 % interval.
worth-difference = { QUANTITY($middle, signed: "yes") } ({ QUANTITY($low, signed: "yes") } to { QUANTITY($high, signed: "yes") }) { $figure ->
        [efficiency] percentage points
       *[other] mm
    }
    .means = A difference with its 95 % interval: of widths in millimetres, of efficiencies in percentage points.
worth-amount = { QUANTITY($middle) } ({ QUANTITY($low) } to { QUANTITY($high) })
    .means = An amount with its 95 % interval.
worth-stops-told = { $what }: { $word ->
        [less] fewer, surely
        [more] more, surely
       *[other] no difference to be seen yet
    }: { $observed } seen on { $looms ->
        [one] one converted loom
       *[other] { $looms } converted looms
    } where { $expected } were expected, { $change }{ $more ->
        [none] {""}
       *[other] ; { $more }
    }
    .means = The verdict on stops: those seen on converted looms against those expected from the unconverted ones in the same weeks.
worth-measured-told = { $what }: { $word ->
        [less] { $figure ->
            [efficiency] lower
           *[other] narrower
        }, surely
        [more] { $figure ->
            [efficiency] higher
           *[other] wider
        }, surely
       *[other] no difference to be seen yet
    }: { QUANTITY($observed) } { $figure ->
        [efficiency] %
       *[other] mm
    } on { $looms ->
        [one] one converted loom
       *[other] { $looms } converted looms
    } where { QUANTITY($expected) } were expected, { $change }{ $more ->
        [none] {""}
       *[other] ; { $more }
    }
    .means = The verdict on a waste width or an efficiency, in the same way.
worth-more-picks = about { QUANTITY($millions) } million more picks would tell whether it is { QUANTITY($share) } %
    .means = So much is still to be woven by converted looms until a change as large as is worth knowing is seen with 80 % power.
worth-more-periods = about { $periods } more weeks of looms would tell whether it is { QUANTITY($share) } %
    .means = The same for what is measured once a period and loom.
worth-would-have-shown = { QUANTITY($share) } % would most likely have shown
    .means = Enough was woven to see a change as large as is worth knowing, and none was seen.
worth-cannot-tell = { $what }: cannot be told: { $why }
    .means = There is no verdict on this figure, and why.
worth-nothing-after = no converted loom has a period after its settling time yet
    .means = Nothing was loaded of converted looms since they settled.
worth-nobody-left = in none of those weeks did three looms of the hall still go unconverted
    .means = The hall was converted so fast that nothing is left to compare with.
worth-new-article = what the converted looms weave was first woven when they were converted
    .means = The article and the conversion came together, so that their effects cannot be told apart.
worth-not-tied = those weeks and articles have nothing in common with the looms' own time before
    .means = No chain of common weeks, looms and articles leads from the converted to the unconverted time.
worth-too-few = fewer than four looms, or nothing was expected
    .means = Too little was loaded for an interval.
worth-chosen = looms were chosen by their latest stops
    .means = Without the weeks by which looms may have been chosen, the figures say something else: bad luck came to an end by itself.
worth-too-short = without the four weeks before the conversions, or before the order was decided, nothing is left to compare
    .means = Whether looms were chosen by chance-high weeks cannot be looked into, since too few weeks lie before.
worth-order-decided = { $on ->
        [none] nobody has said when the order of the looms was decided
       *[other] the order of the looms was decided on { $on }
    }; a verdict stands only if it is the same without the weeks by which looms may have been chosen
    .means = The weeks before that day may have decided which looms came first.
    .hint = the term `order decided` holds the day
worth-without-weeks = { $what } without the four weeks before { $which ->
        [latest] each conversion
       *[other] that day
    }: { $change }
    .means = The same comparison with the weeks left out by which looms may have been chosen.
worth-silent = { $looms ->
        [one] one loom
       *[other] { $looms } looms
    } had no stop before the conversion and cannot speak
    .means = Converted looms of which nothing is expected, since they never stopped before.
worth-plain = plainly before and after, { $what }: { $change }; do not go by it: season, articles and the order of the looms are in it, and of 500 simulated programmes it holds the truth in at most 3, with 12 looms in 63
    .means = All stops after against all before, as one would do it on paper, shown so that nobody trusts it.
worth-picks = { $looms ->
        [one] one converted loom weaves
       *[other] { $looms } converted looms weave
    } { QUANTITY($millions) } million picks a month
    .means = What the savings of a month are worked out for.
worth-hours = { $hours } h less standing a month, at { QUANTITY($minutes) } min a stop{ $money ->
        [none] {""}
       *[other] , worth { $money } { $currency }
    }
    .means = Stops that no longer happen, in hours and in the contribution of an hour of weaving.
worth-weft = { $kg } kg less weft waste a month{ $money ->
        [none] {""}
       *[other] , worth { $money } { $currency }
    }
    .means = Picks × narrower waste width × weft tex.
worth-leno = { QUANTITY($kg) } kg of leno yarn are used a month; what was used before is not recorded, so that it is no saving here
    .means = Cloth woven × 1.25 m of leno yarn × both sides × its tex.
worth-without-stops = of the stops no saving is counted, since nothing can be told of them
    .means = The verdict on stops is missing, so that their hours are not in the savings.
worth-without-contribution = the hours are worth nothing here, since an article has no contribution per metre or a loom no speed
    .means = An hour of weaving cannot be priced for every converted loom.
    .hint = give it in Articles, and what is on each loom in Warps
worth-without-weft = of the weft waste no saving is counted: no verdict on the waste width, or an article without weft tex or price
    .means = Weft waste cannot be weighed or priced for every converted loom.
    .hint = load Waste, and Weft tex and Weft price per kg in Articles
worth-measured = measured: { $amount } { $currency } a month
    .means = What the converted looms save by what was measured.
worth-claimed = claimed: { MONEY($claimed, $currency) } a month for the same looms{ $unclaimed ->
        [0] {""}
        [one] ; of one loom the list claims nothing
       *[other] ; of { $unclaimed } looms the list claims nothing
    }
    .means = What the loom list says they save, side by side with what was measured and never mixed with it.
worth-payback = the conversions cost { MONEY($cost, $currency) }; by what was measured it { $middle ->
        [none] is not seen to pay back
       *[other] pays back in { QUANTITY($middle) } months ({ QUANTITY($low) } to { $high ->
            [none] never
           *[other] { QUANTITY($high) }
        })
    }
    .means = Parts issued, labour and hours of the conversions ÷ what is saved a month, with its range.
worth-taken-over-now = plans count on { QUANTITY($share) } % of what the list claims, as was taken over
    .means = The term `share of saving` is another than 100.
saving-taken-over = plans count on { QUANTITY($share) } % of the saving that the loom list claims from now on, as measured; it was { QUANTITY($before) } %
    .means = The measured saving was made the term `share of saving`; the loom list keeps what it claims.
    .terminal = `beamslot plan` books by it.
take-over-unmeasured = no saving was measured, so that there is none to take over
    .means = Neither stops nor waste width can be told and priced.
    .terminal = `beamslot worth` says what is missing.
take-over-unclaimed = the loom list claims no saving of the looms that were measured, so that there is nothing to measure it by
    .means = The column Saving per day is empty for every converted loom.
    .hint = give Saving per day in Looms
take-over-beyond = measured are { QUANTITY($share) } % of the claimed saving; a plan takes 0 to { QUANTITY($most) } %
    .means = The conversions save less than nothing, or far more than was claimed.
    .hint = mend Saving per day in Looms if the mill wants to plan by it
worth-take-over-whole = what is taken over is measured on everything that is known now
    .means = The saving is not taken over of one cause, article or period alone, or as of another moment.
    .terminal = give `--take-over` by itself
worth-title = { $programme }: was it worth it?
    .means = Title of the report.
worth-plainly = { $what }, plainly before and after
    .means = A line of a picture that is not to be believed.
worth-week = { $first ->
        [0] the first week
       *[other] week { $first }{ $last ->
            [none] {""}
           *[other] {" "}to { $last }
        }
    } since the restart
    .means = A line of the picture by weeks since the restart; counted from 0.
worth-bar = { $which ->
        [measured] measured
       *[other] claimed by the loom list
    }
    .means = A line of the picture of savings.
worth-looms-figure = { $figure ->
        [stops] stops per 100,000 picks
        [efficiency] efficiency in %
       *[other] waste width in mm
    }
    .means = What the figures of the looms are.
