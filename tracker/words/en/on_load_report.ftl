### What the screen Load shows of files: figures, findings, tables, cells, changes, and the forms for answers.

load-recognised = Recognised
    .means = Heading of a figure: tables that were recognised.
load-passed-over = { $rows ->
        [one] { $rows } row passed over: titles, sums, notes
       *[other] { $rows } rows passed over: titles, sums, notes
    }
    .means = Below the figure of the recognised tables.
load-changes = Would change
    .means = Heading of a figure: rows that would be new or change.
load-new-and-changed = { $added } new, { $changed } changed
    .means = The value of that figure.
load-unchanged = { $unchanged } unchanged
    .means = Below that figure.
load-to-answer = To answer
    .means = Heading of a figure: open questions.
load-not-before = nothing is written before
    .means = Below the figure of open questions.
load-refused = Refused
    .means = Heading of a figure and of a column: what is refused.

## Findings

load-findings = Findings
    .means = Heading above the table of findings.
load-no-findings = None: every cell could be read without doubt.
    .means = There is nothing to find fault with.
load-show = Show
    .means = Label of the choice which findings are shown.
load-severity = { $severity ->
        [refused] ✕ refused
        [doubt] ? doubt
       *[note] i note
    }
    .means = How grave a finding is, with a sign beside the word.
load-severity-count = { $severity } ({ $many })
    .means = How many findings of a severity there are.
load-head-severity = Severity
    .means = Heading of a column.
load-head-file = File
    .means = Heading of a column.
load-head-sheet = Sheet
    .means = Heading of a column.
load-head-cell = Cell
    .means = Heading of a column.
load-head-heading = Heading
    .means = Heading of a column: the heading in the mill's sheet.
load-head-raw = Raw
    .means = Heading of a column: what stands in the cell.
load-head-understood = Understood
    .means = Heading of a column: as what it was read.
load-head-what = What
    .means = Heading of a column: what was found.
load-head-to-do = What to do
    .means = Heading of a column.
load-answer-above = Answer it above.
    .means = What to do about a doubt: the form for answers stands above the table.

## Recognised tables

load-tables = Recognised tables
    .means = Heading above the tables that were recognised.
load-table-named = { $table }: { $file }, sheet { $sheet }
    .means = Which table was recognised where.
load-table-rows = ({ $added } new, { $changed } changed, { $unchanged } unchanged)
    .means = What would become of its rows.
load-headings-in = { $way ->
        [column] Headings in column { $place }.
       *[row] Headings in row { $place }.
    }
    .means = Where the headings of a table stand.
load-head-is = Is
    .means = Heading of a column: what a column of the mill's sheet was taken for.
load-head-unit = Unit
    .means = Heading of a column.
load-head-certainty = Certainty
    .means = Heading of a column: how sure the reading of a heading is.
load-account = Every cell accounted for
    .means = Heading above the account of the cells.
load-head-cells = Cells
    .means = Heading of a column: how many filled cells.
load-head-in-headings = In headings
    .means = Heading of a column.
load-head-taken = Taken
    .means = Heading of a column: cells that were taken over.
load-head-own = Own headings
    .means = Heading of a column: cells kept under a heading of the mill's own.
load-head-aside = Set aside
    .means = Heading of a column.
load-head-aside-why = Set aside, why and where
    .means = Heading of a column.

## What would change

load-would-change = What would change
    .means = Heading above the changes.
load-new-rows = New rows: { $rows }.
    .means = Tables and how many rows each would gain.
load-rows-of = { $many } × { $sheet }
    .means = So many rows of a sheet.
load-head-row = Row
    .means = Heading of a column.
load-head-value-of = Value of
    .means = Heading of a column: the field that changes.
load-head-old = Old
    .means = Heading of a column.
load-head-new = New
    .means = Heading of a column.
load-would-end = { $sheet }: would end: { $rows }.
    .means = Rows that the list names no longer.
load-same-already = Nothing: the database says the same already.
    .means = A load would change nothing.
load-no-rows = Nothing: there are no rows.
    .means = A load would change nothing.
load-new-looms = New looms: { $looms }.
    .means = The numbers of looms that would be new.
load-new-method = A new method version{ $version ->
        [none] {""}
       *[other] {" "}{ $version }
    }:
    .means = Stands above the rows of a method that change.
load-head-method-row = Row of the method
    .means = Heading of a column.
load-head-method-looms = What it changes for which looms
    .means = Heading of a column.

## Answers

load-questions-title = Questions
    .means = Heading above the form for answers.
load-use-answers = Use these answers
    .means = Button of the form for answers.
load-something-else = something else
    .means = The last of the answers to choose from: it is written in the field below.
load-answer-other = Answer something else
    .means = A form for any heading or sheet.
load-heading-or-sheet = Heading or sheet
    .means = Label: what is answered.
load-choose-or-write = choose or write
    .means = Placeholder of that field.
load-answer = Answer
    .means = Label of the field for an answer.
load-answer-such-as = inch, day first, own column, ignore, as written …
    .means = Placeholder with examples: answers are given in these words.
load-use-answer = Use this answer
    .means = Button of that form.
load-answers-given = Answers given: { $answers }.
    .means = What was answered so far.
load-answer-for = “{ $answer }” for { $about }
    .means = One answer given.
load-forget-answers = Forget these answers
    .means = Button: takes all answers back.
load-no-answer = No answer was given yet: choose or write one first.
    .means = The form was sent empty.
load-write-answer = Something else: a unit, an order, the field that the column is, or ignore
    .means = Label of the field below the answers to choose from.
load-only-where = only where none of the answers above fits
    .means = Placeholder of that field.
