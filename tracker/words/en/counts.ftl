### How many there are of what stands in cells, headings and figures: `count` of tracker/words/formats. A sentence that goes on with a
### verb has a code of its own, below.

so-many-beam-outs = { $n ->
        [one] { $n } beam-out
       *[other] { $n } beam-outs
    }
    .means = How many beam-outs.
so-many-bookings = { $n ->
        [one] { $n } booking
       *[other] { $n } bookings
    }
    .means = How many bookings.
so-many-cells = { $n ->
        [one] { $n } cell
       *[other] { $n } cells
    }
    .means = How many cells.
so-many-days = { $n ->
        [one] { $n } day
       *[other] { $n } days
    }
    .means = How many days.
so-many-doubts = { $n ->
        [one] { $n } doubt
       *[other] { $n } doubts
    }
    .means = How many doubts.
so-many-findings = { $n ->
        [one] { $n } finding
       *[other] { $n } findings
    }
    .means = How many findings.
so-many-lines = { $n ->
        [one] { $n } line
       *[other] { $n } lines
    }
    .means = How many lines.
so-many-looms = { $n ->
        [one] { $n } loom
       *[other] { $n } looms
    }
    .means = How many looms.
so-many-notes = { $n ->
        [one] { $n } note
       *[other] { $n } notes
    }
    .means = How many notes.
so-many-parts = { $n ->
        [one] { $n } part
       *[other] { $n } parts
    }
    .means = How many parts.
so-many-questions = { $n ->
        [one] { $n } question
       *[other] { $n } questions
    }
    .means = How many questions.
so-many-reasons = { $n ->
        [one] { $n } reason
       *[other] { $n } reasons
    }
    .means = How many reasons.
so-many-rows = { $n ->
        [one] { $n } row
       *[other] { $n } rows
    }
    .means = How many rows.
so-many-runs = { $n ->
        [one] { $n } run
       *[other] { $n } runs
    }
    .means = How many runs.
so-many-tables = { $n ->
        [one] { $n } table
       *[other] { $n } tables
    }
    .means = How many tables.
so-many-times = { $n ->
        [one] { $n } time
       *[other] { $n } times
    }
    .means = How many times.
so-many-refused = { $n } refused
    .means = How many findings refuse something.

## Sentences in which the verb follows the number

looms-fall = { $looms ->
        [one] { $looms } loom falls
       *[other] { $looms } looms fall
    }
    .means = So many bookings could not be kept without the order.
bookings-rely = { $bookings ->
        [one] { $bookings } booking relies
       *[other] { $bookings } bookings rely
    } on { $orders ->
        [one] { $orders } order
       *[other] { $orders } orders
    } not placed yet, the first by { $first }
    .means = Bookings of the plan stand only if orders are placed in time.
    .terminal = `beamslot needs --orders` lists them, `--send FOLDER` writes them to send.
picks-listed = { $kits ->
        [one] { $kits } kit
       *[other] { $kits } kits
    }, { $lines ->
        [one] { $lines } line
       *[other] { $lines } lines
    }; { $short ->
        [one] { $short } kit is
       *[other] { $short } kits are
    } short.
    .means = What a pick list holds, and how many of its kits lack something.
left-over-since = { $looms ->
        [one] { $looms } loom that the plan left over was taken up, put off or left out since; planning again takes it off its cost.
       *[other] { $looms } looms that the plan left over were taken up, put off or left out since; planning again takes them off its cost.
    }
    .means = Looms that the published plan leaves over were recorded otherwise since.
nothing-refused = Nothing: { $rows ->
        [one] { $rows } row is
       *[other] { $rows } rows are
    } refused, and { $others ->
        [yes] of the others the database says the same already
       *[no] there are no others
    }.
    .means = A load would change nothing since its rows are refused.
refusals-stand = { $refusals ->
        [one] { $refusals } refusal stands
       *[other] { $refusals } refusals stand
    } against it. Mend the cells and give the file again, or leave these rows out.
    .means = Rows of a file are refused, and the rest can be loaded.
backup-holds = { $rows ->
        [one] { $rows } row
       *[other] { $rows } rows
    } in { $tables ->
        [one] { $tables } table
       *[other] { $tables } tables
    }
    .means = What a backup holds.
