### What the reading of a mill's sheets finds. Every text may use $file, $sheet, $cell, $heading, $raw (what stands in the
### cell), $understood; where there are answers to choose from, $options (as one gives them at the reader's edge), $answers,
### $subjects (what they are about) and $meanings (what the value would be then).

## Pieces

or = { " " }or{ " " }
    .means = Between the answers that may be chosen.
with-unit = { NUMBER($number, maximumFractionDigits: 6) }{ $unit ->
        [none] {""}
       *[other] {" "}{ $unit }
    }
    .means = A number and its unit.
answer-option = { $answer }
    .means = One answer that may be chosen; `meaning` is what the value would be then.
    .terminal = --answer "{ $about }={ $answer }"{ $meaning ->
        [none] {""}
       *[other] {" for "}{ $meaning }
    }
    .screen = “{ $answer }” for { $about }{ $meaning ->
        [none] {""}
       *[other] {" ("}{ $meaning })
    }
answer-one = Answer the question.
    .means = What to do about an open question.
    .terminal = Answer { $options }.
    .screen = Answer { $options }.
answer-unknown = the answer { $heading }={ $answer } is not known; say a unit ({ $units }), day first, month first, a field such as speed, ignore, or as written
    .means = An answer was given that is none of the words that answer a question.
answer-about-nothing = no heading or sheet is called '{ $heading }'; there are { $names }
    .means = An answer was given about a heading or sheet that the files do not have.
answer-about-several = '{ $heading }' is a cell of several sheets; name one of { $names }
    .means = An answer names a cell without its sheet, and several sheets have tables there.
understood-empty = empty
    .means = Read as an empty cell.
understood-serial = serial day numbers
    .means = Read as the numbers by which spreadsheets count days.
understood-mixed = fraction up to 1, percent above
    .means = Read as a fraction or as percent, value by value.
understood-whole = whole numbers
    .means = Read without the decimals that mean nothing.
understood-put-back = put back { $order }
    .means = A number that a spreadsheet turned into a date was put back, as answered.
record-differs = { $table } { $row }: { $heading } is { $understood } here, and { $stored } in the records; what was recorded is not overwritten.
    .means = A record stands there already with another value.
    .hint = Mend the cell, or leave it empty to keep what was recorded. What was read again is a row with a moment of its own.
    .terminal = Mend the cell, or leave it empty to keep what was recorded; if that is mistyped, `record … --correct WHY` replaces it. What was read again is a row with a moment of its own.
value-differs = { $heading } { $here } here, { $there } there
    .means = A value that two rows of one key give differently.
hall-without-name = a hall without a name
    .means = Looms for which no hall is named.

## Text files

code-page-doubt = The letters of { $file } can be read in several ways: { $meanings }.
    .means = A text file does not tell its code page, and more than one fits its words.
lost-letters = A byte in these cells is no letter in the code page of the rest; it stands as � here: { $raw }
    .means = Text copied from a file in another code page, or letters that were lost before.
    .hint = Correct the cells, and save the file as CSV UTF-8.

## Sheets and tables

no-table-known = { $file }: { $how ->
        [empty] the file is empty
       *[unknown] no heading row of a table known here was found
    } (sheets: { $sheets }){ $headings ->
        [none] {""}
       *[other] ; a line that may be headings is { $headings }
    }. A loom list needs headings such as Loom, Hall, Machine type.
    .means = A file holds nothing that can be loaded.
    .terminal = { $headings ->
        [none] Start from the template.
       *[other] Say what its headings are, each by an answer such as --answer "HEADING=loom" (loom, hall, machine type, reed width, speed, efficiency, year, frames), or start from the template.
    }
    .screen = { $headings ->
        [none] Start from the template.
       *[other] Say below what its headings are (HEADING=loom, HEADING=machine type and so on), or start from the template.
    }
no-table = The sheet { $sheet } holds no table that is known here; it is passed over.{ $headings ->
        [none] {""}
       *[other] {" "}A line that may be headings is { $headings }.
    }
    .means = A filled sheet out of which nothing is loaded.
    .hint = { $headings ->
        [none] If it is one, answer { $options }.
       *[other] If it is a loom list, say what each heading is, as { $options } does.
    }
foreign-table = The sheet { $sheet } looks like { $table }, but does not read as one; it is passed over.
    .means = A sheet beside the loom list whose values do not bear out its headings.
    .hint = To load it, mend it and answer { $options }.
sheet-ignored = The sheet { $sheet } is left out, as answered.
    .means = An answer said that the sheet is not to be loaded.
hidden-sheet = The hidden sheet { $sheet } holds a table ({ $tables }): is it to be loaded?
    .means = A hidden sheet may be an old copy or the true list.
gone-sheet = The name of the sheet { $sheet } says that its looms are no longer in the mill: is it to be loaded?
    .means = A list of looms sold or scrapped beside the list of the mill.
not-the-loom-list = The table on the sheet { $sheet } names looms but is not the loom list; it is passed over.
    .means = A report or log that mentions looms beside the list itself.
    .hint = If it is one, answer { $options }.
empty-table = The sheet { $sheet } has no rows; the rows in force stay.
    .means = A sheet of the method with headings only takes nothing away.
method-without-operation = { $how ->
        [sheet] The sheet { $sheet } has no operation, and other sheets of the method have rows.
       *[method] The method has no operation.
    }
    .means = A method cannot be without operations.
    .hint = { $how ->
        [sheet] Fill it in, or leave the sheet out to keep the operations in force.
       *[method] Fill in at least one row: step, operation, minutes, trade, heads.
    }

## Columns

heading-understood = { $heading } is read as { $understood }.
    .means = A heading that is not one of the known words was understood.
    .hint = If it is not, answer { $options }.
values-do-not-fit = { $heading } is headed like { $field }, but its values are not such: what is it?
    .means = The values of a column do not bear out its heading.
which-column = { $field } can be { $subjects }.
    .means = Two columns may be the same field.
may-be-field = No column is the { $fields }; is { $heading } the one?
    .means = A list lacks a field, and a column of the mill's own looks like it.
several-in-one-cell = { $heading } holds several values in a cell, the { $fields } among them; it is kept as it stands, and the { $fields } stays empty.
    .means = A column of the mill's own holds a field that the list lacks together with something else.
    .hint = Give each value a column of its own to have it read.
type-spellings = The machine types { $types } differ only in how they are spelt; each counts as a type of its own.
    .means = One machine type seems to be written in several ways.
    .hint = Write one of them throughout if they are one type: it has one pilot then, and learns as one.
no-machine-type = No column is the machine type, which every loom needs.
    .means = A loom list without a machine type.
    .terminal = { $options ->
        [none] Add the column, or name it by --answer "HEADING=machine type".
       *[other] Say which it is: { $options }.
    }
looms-or-count = Does { $heading } name the looms ({ $raw } …), or say how many there are of each kind?
    .means = Whole numbers below a heading such as "Looms" that may be counts, in a table with one row for each type.
    .terminal = If they are loom numbers, or the sheet is to be left out, answer { $options }.
    .screen = If they are loom numbers, or the sheet is to be left out, answer { $options }.
rows-above-headings = { $rows ->
        [one] One row stands
       *[other] { $rows } rows stand
    } above the headings; read as rows of the table like those below.
    .means = Rows of a list above its headings, as sorting leaves them.
beside-the-table = These cells stand beside the table { $table } and belong to none; they are not loaded.
    .means = A legend, or another table, beside a list behind an empty column.
    .hint = Take the empty column out if they belong to the table.
joined-table = The sheet { $sheet } says more of the looms of the list: { $headings }; it is put into their rows.
    .means = A second table that names each loom once and adds columns to it.
    .hint = If it is not to be loaded, answer { $options }.
several-to-a-row = Each row holds { $groups } looms side by side; { $headings } is read for every one of them.
    .means = Columns that the looms of a row share.
units-beside = The column { $heading } gives the units of { $field }.
    .means = A column of units beside one of figures.
column-not-loaded = The column { $heading } has no place in the table { $table }; it is not loaded.
    .means = A table without room for the mill's own columns has one.
no-heading = These cells stand under no heading; they are not loaded.
    .means = Filled cells in a column without a heading.
    .hint = Give the column a heading if it matters.
answer-remembered = { $heading }: the answer of an earlier load was used: { $understood }.
    .means = A question was settled by what was answered in an earlier load.
    .hint = { $options ->
        [none] {""}
       *[other] Say otherwise with { $options }.
    }

no-rows-below = The headings of the sheet { $sheet } have no rows below them, and rows stand above; nothing is loaded from it.
    .means = The headings of a loom list stand behind its rows.
    .terminal = Put the headings first, or answer { $options }.
    .screen = Put the headings first, or answer { $options }.
looms-twice = { $count } looms stand twice in the sheet { $sheet }, such as { $looms }: do their numbers start again in another hall?
    .means = Many loom numbers of a sheet stand again in it without a word for another hall.
    .terminal = Name the halls in a column or a line above them; if they are the same looms, answer { $options }.
    .screen = Name the halls in a column or a line above them; if they are the same looms, answer { $options }.

## Rows

row-passed-over = The line '{ $raw }' { $how ->
        [total] sums up rows
        [heads] stands above rows, and no word tells what it says of them
       *[note] is no row of the table
    }; it is passed over.
    .means = A total or note between the rows of a table, or a line above some of them.
    .hint = { $options ->
        [none] {""}
       *[other] If it names something of the rows below it, answer { $options }.
    }
gone-line = The line '{ $raw }' says that the looms below it are no longer in the mill: are they to be loaded?
    .means = Looms that were sold or scrapped, below a line that says so.
rows-left-out = The looms below '{ $raw }' are left out, as answered.
    .means = Looms below a line that says that they are gone were answered to be left out.
hidden-rows = { $hidden } of { $rows } rows are hidden{ $filter ->
        [none] {""}
       *[other] {" by the filter on "}{ $filter }
    }; they are read like any other.
    .means = Hidden rows are rows.
hidden-columns = Hidden in the sheet: { $headings }; it is read like any other column.
    .means = Hidden columns are columns.
struck-through = Cells of { $struck } of { $rows } rows are struck through; they are read like any other. Take out of the list what holds no more.
    .means = What is struck through is read.
missing-value = { $line } has no { $field ->
        [loom] loom number
       *[other] { $field }
    }.
    .means = A row lacks a value that the table needs.
    .hint = Fill in the cell, or delete the row.
type-says-gone = '{ $raw }' is no machine type, but says that the loom is no longer there.
    .means = A word such as "sold" stands where the machine type belongs.
    .hint = Delete the row, or write the machine type.
says-gone = { $heading } says of { $rows } looms that they are no longer there ('{ $raw }'); they are loaded like any other. Take out of the list what is not in the mill.
    .means = A word such as "sold" in a column of the mill's own.
values-contradict = { $name } { $how ->
        [same] and { $other } are both { $first }
        [later] { $first } is later than { $other } { $second }
       *[more] { $first } is more than { $other } { $second }
    }
    .means = Two values that cannot both be.
contradiction = { $why }.
    .means = Two values of a row that cannot both be.
    .hint = Correct one of the two cells, or delete the row.
double-differs = { $table }: { $raw } stands again in { $places } with other values: { $values }.
    .means = The same key in several rows that say different things.
    .hint = Correct or delete one of the rows, or leave a sheet out.
double-same = { $table }: { $raw } stands again in { $places } with the same values; it is loaded once.
    .means = The same row twice.
unknown-term = There is no term '{ $raw }'; the terms are { $terms }, pilot of TYPE.
    .means = A row of the terms that is none.
    .hint = Use one of these words, or delete the row.

## Halls and looms

hall-from-sheet = No column names the hall; it is read from the sheet's name: { $understood }.
    .means = The sheet's name is the hall of its looms.
hall-beside = No heading names the hall; it is read from the cells beside the looms.
    .means = Side labels beside the rows are the halls.
section-lines = { $how ->
        [untyped] No column is the machine type; what do the lines { $raw } name?
        [hallless] No column is the hall; do the lines { $raw } name halls?
       *[again] Loom numbers start again below the lines { $raw }: are these halls?
    }
    .means = Lines between the rows whose meaning no word tells.
type-from-line = The line '{ $raw }' names the machine type of the looms below it: { $understood }.
    .means = A line between the rows says the machine type of a group.
    .hint = If it is none, write the machine type in a column of its own.
type-from-above = The machine type is empty; read as that of the rows above, { $understood }.
    .means = A machine type written once for a group of rows.
hall-from-above = The hall is empty; read as that of the rows above, { $understood }.
    .means = A hall written once for a group of rows.
no-hall = The sheet { $sheet } names no hall; its looms are taken as standing in one hall without a name.
    .means = A loom list without halls.
    .hint = Add a column Hall where loom numbers start again in each hall.
sheet-is-type = No column is the machine type: are { $sheets } the types of the looms on the sheets of these names?
    .means = Lists without a machine type stand on sheets that are called like one; one answer goes for all of them.
type-from-sheet = No column is the machine type; it is read from the sheet's name: { $understood }.
    .means = The sheet's name is the machine type of its looms, as answered.
type-beside-number = Number and machine type stand in one cell: { $raw } is loom { $number } of type { $machine_type }.
    .means = A column holds loom numbers and machine types together; they are read apart.
    .hint = If they are not, give the machine type a column of its own.
sheet-is-hall = No hall is named, and other sheets have halls or the same loom numbers: is { $sheet } a hall of its own?
    .means = Several loom lists without halls share loom numbers.
hall-spelling = The hall '{ $raw }' is taken as '{ $understood }'.
    .means = Two spellings of one hall.
look-alike = '{ $raw }' has a letter that looks like another sign; { $like } { $how ->
        [listed] is in the list too
       *[other] was perhaps meant
    }. It is read as written.
    .means = A letter stands where the others have a figure, or comes from another alphabet.
    .hint = Correct the cell if it is a slip.
number-mark = '{ $raw }' is read as loom { $understood }; the mark is left out.
    .means = A footnote star or an apostrophe at a loom number.
number-of-several = Is '{ $raw }' one loom of that number, or does it stand for several{ $first ->
        [none] {""}
       *[other] {" "}({ $many }, { $first } to { $last })
    }?
    .means = A loom number that looks like a span or a list of several.
    .terminal = { $first ->
        [none] If it is one, answer { $options }; else give each loom a row of its own.
       *[other] Answer { $options }: by the first each of them is a loom with the values of the row.
    }
    .screen = { $first ->
        [none] If it is one, answer “as written”; else give each loom a row of its own.
       *[other] Answer “each”, and each of them is a loom with the values of the row; or “as written” if it is one.
    }
number-with-words = Is '{ $raw }' the loom { $understood } with a remark, or is that its number?
    .means = Words behind a loom number.
number-without-figure = Is '{ $raw }' a loom? The other numbers have figures.
    .means = Words where the loom numbers stand, as in a note between the rows.
    .terminal = If it is one, answer { $options }; else delete the row, or write it below the list.
    .screen = If it is one, answer “as written”; else delete the row, or write it below the list.
number-spelt-twice = Is '{ $number }' the same loom as '{ $other }', in another spelling, or one of its own?
    .means = Two numbers of a hall that differ only in signs between, in case or in noughts.
looks-like-known-loom = Loom '{ $raw }' is new, and differs from { $twin } of the database only by signs that look alike; it would be a loom of its own.
    .means = A slip of one sign would make a second loom of a known one.
    .hint = Correct the cell if it is a slip.
ambiguous-hall = Loom { $loom } stands in { $halls }; which hall is not said.
    .means = A row names a loom number that several halls have.
    .hint = Write the hall beside it.
unknown-loom = Loom { $loom } { $how ->
        [hall] stands in { $halls }, not in { $hall }
       *[number] is not in the loom list{ $near ->
            [none] {""}
           *[other] ; the nearest is { $near }
        }
    }.
    .means = A row names a loom that is not known.
    .hint = { $how ->
        [hall] Write the hall as the loom list does; a number of one hall only needs none.
       *[number] Correct the number, or load the loom list with it.
    }

## Cells

ditto = '{ $raw }' repeats the cell above.
    .means = A ditto mark.
cell-comment = A comment says: '{ $raw }'. The value is read as it stands.
    .means = A comment on a cell of a list.
    .hint = Correct the cell if the comment says that it is wrong.
placeholder = '{ $raw }' is read as empty.
    .means = A mark that says nothing, such as a dash.
read-as-empty = '{ $raw }' says that nothing is known; read as empty.
    .means = A word that says that the value is not known.
empty-text = The formula in this cell gives nothing; read as empty.
    .means = A formula gave an empty text.
error-cell = The error { $raw } is read as empty.
    .means = A cell shows an error of the spreadsheet.
    .hint = Mend the formula if the value is needed.
formula-without-value = { $field }: the formula in this cell has no stored value.
    .means = A file was written by a program that calculates nothing.
    .hint = Open the file in a spreadsheet, let it calculate, and save it.
in-brackets = {" "}({ $what })
    .means = What a value was taken for, behind it.
impossible-value = { $field }{ $how ->
        [below] {" "}{ $raw }{ $meant } is below the lowest possible, { $limit }
        [above] {" "}{ $raw }{ $meant } is above the highest possible, { $limit }
        [to-come] {" "}{ $understood } is still to come; the latest possible is { $limit }
        [too-early] {" "}{ $understood } is before { $limit }, the earliest possible
       *[term] : '{ $raw }' is not possible here
    }.
    .means = A value that cannot be; its row is refused.
    .hint = { $how ->
        [term] Write { $possible }, or delete the row.
       *[other] Correct the cell or leave it empty.
    }
not-whole = { $field } { $raw } is no whole number.
    .means = A count with decimals.
    .hint = Correct the cell or leave it empty.
not-a-number = { $field } '{ $raw }' cannot be read as a number.
    .means = A text where a number belongs.
    .hint = Correct the cell or leave it empty.
unit-unknown = { $field } '{ $raw }': '{ $unit }' is no unit of it.
    .means = A number with a word behind it that is no unit of the column.
    .hint = Write the number alone{ $units ->
        [none] {""}
       *[other] , or with one of: { $units }
    }.
other-currency = { $field } '{ $raw }' is in another currency than { $most }, in which most of its column is.
    .means = A sum of money in another currency than the others of its column.
    .hint = Write all of the column in the currency of the mill.
not-a-date = { $field } '{ $raw }' cannot be read as a date.
    .means = A text where a date belongs.
    .hint = Write it as 2027-01-31.
not-a-time = { $field } '{ $raw }' cannot be read as a time of day.
    .means = A text where a time of day belongs.
    .hint = Write it as 06:00.
not-a-year = { $field } '{ $raw }' cannot be read as a year.
    .means = A text where a year belongs.
    .hint = Write four digits.
not-weekdays = { $field } '{ $raw }' cannot be read as weekdays.
    .means = A text where weekdays belong.
    .hint = Write Mon-Fri, or Mon, Wed.
not-yes-or-no = { $field } '{ $raw }' is neither yes nor no.
    .means = A word where yes or no belongs.
    .hint = Write yes or no.
unknown-word = { $field } '{ $raw }' is none of: { $words }.
    .means = A word that is none of those that the column knows.
    .hint = Write one of: { $words }.
number-turned = { $field }: the spreadsheet turned a number such as 10E2 into { $raw }.
    .means = An identifier that a spreadsheet took for a power of ten.
    .hint = Format the cell as text and type the number again.
number-turned-into-date = { $field }: the spreadsheet turned a number into a date.
    .means = An identifier such as 3/12 that a spreadsheet took for a date.

## How a column was read

remark-left-out = '{ $raw }' is read as { $understood }; the words '{ $remark }' are left out.
    .means = Words in brackets behind a number.
    .hint = Move them to a column of notes if they matter.
month-or-day = { $field } '{ $raw }': a month with its year, or a day without one?
    .means = A text such as 01/27 that names a month of a year or a day.
    .terminal = Answer { $options }; or write the days in full, as 2027-01-31.
    .screen = Answer { $options }; or write the days in full, as 2027-01-31.
day-without-year = { $field } '{ $raw }' names no year: is the next one meant?
    .means = A week, month or day without a year where a day belongs.
    .terminal = Answer { $options }; or write the days in full, as 2027-01-31.
    .screen = Answer { $options }; or write the days in full, as 2027-01-31.
day-meant = { $day }
    .means = The day that a text would mean, by an answer.
date-of-span = { $field } '{ $raw }' is read as { $how ->
        [last] its last day,
        [day] the day
       *[first] its first day,
    } { $day }.
    .means = A week, a month or a year where a day belongs.
serial-date = { $field } holds serial day numbers; { $raw } is { $day }.
    .means = Days as the numbers by which spreadsheets count them.
point-zero = { $field } ends in .0 in every row, as programs write whole numbers; the .0 is left out.
    .means = Whole numbers written with a decimal.
unit-understood = { $field } has no unit; read in { $understood }{ $how ->
        [types] , because the machine types say the same width
        [values] , because of the values { $span }
       *[usual] {""}
    }.
    .means = The unit of a column was taken from its values.
percent-mixed = { $field } stands as percent and as fraction: values up to 1 read as fraction.
    .means = One column holds 88 and 0.88.
percent-understood = { $field } is headed %, yet { $span } are fractions: 0.88 is 88 %.
    .means = A column headed % holds fractions.

## What became of the columns and cells

table-meaning = { $file } { $sheet }: { $ours ->
        [yes] { $table }, { $columns } columns under our own headings
       *[no] { $table }
    }
    .means = The heading above the columns of a table, or all that is said of it.
column-meaning = { $how ->
        [asked] { $field ->
            [none] asked
           *[other] { $field }? (asked)
        }
        [field] { $field }{ $unit ->
            [none] {""}
           *[other] , in { $unit }
        }{ $sure ->
            [no] {" "}(perhaps)
           *[yes] {""}
        }
        [own] kept under its own heading
       *[left] left out
    }
    .means = What a column was taken for.
column-taken-for = {"  "}{ $cell } { $heading }: { $what }
    .means = What one column was taken for.
account-of-sheet = { $file } { $sheet }: { $cells ->
        [one] 1 cell
       *[other] { $cells } cells
    }: { $headings } in headings, { $taken } taken, { $own } under own headings, { $refused } refused, { $aside } set aside{ $parts ->
        [none] {""}
       *[other] : { $parts }
    }.
    .means = How many filled cells of a sheet went where; the numbers add up.
cells-set-aside = { $cells } { $reason ->
        [title] above the table
        [heading-again] headings again
        [section] { $cells ->
            [one] line naming a hall, row or type
           *[other] lines naming a hall, row or type
        }
        [total] { $cells ->
            [one] sum
           *[other] sums
        }
        [note] { $cells ->
            [one] note
           *[other] notes
        }
        [number] { $cells ->
            [one] number alone
           *[other] numbers alone
        }
        [empty-value] { $cells ->
            [one] says that there is nothing
           *[other] say that there is nothing
        }
        [no-heading] without heading
        [column] of columns left out
        [beside] beside the table
        [below] below the table
        [same-again] of a row that stands twice
        [table] of a table that is passed over
        [left-out] of a sheet left out
        [own-report] of a report of ours
        [unfilled] of lines that nobody filled in
       *[sheet] of a sheet that is no table of ours
    } ({ $where })
    .means = How many cells of a sheet were set aside, why and where.

## Questions about a column

unit-doubt = { $field } { $headed ->
        [none] has no unit, and { $raw } can be { $answers }
       *[other] is headed { $headed }, yet { $raw } would be unusual
    }.
    .means = The unit of a column of numbers is not sure.
value-doubt = { $field } { $raw } stands among percent: it can be { $meanings }.
    .means = A small number among percents.
odd-value = { $field } { $raw }{ $who ->
        [none] {""}
       *[other] {" "}of { $who }
    } stands apart from the others, { $low } to { $high }{ $how ->
        [inch] , as inches among centimetres do
        [tenth] , as a slip to a tenth does
        [far] {""}
       *[ten] , as a slip to ten times does
    }: is it so?
    .means = A value that stands far from the others, most by the factor of a slip.
    .terminal = If so, answer { $options }; else correct the cell.
    .screen = If so, answer “as written”; else correct the cell.
decimals-doubt = { $field } '{ $raw }' can be { $meanings }.
    .means = A number that either convention fits.
order-doubt = { $how ->
        [turned] { $field }: { $raw } stayed text while no date is later than the 12th of its month, as if the spreadsheet had taken day for month: { $month_first } may be { $day_first }.
        [number] { $field }: the spreadsheet turned a number into the date { $day }; it was { $day_first } or { $month_first }.
        [both] { $field } holds dates in both orders; { $raw } can be { $day_first } or { $month_first }.
       *[either] { $field } { $raw } can be { $day_first } or { $month_first }.
    }
    .means = Day or month may stand first.

## Sheets that are the whole truth

cannot-replace = '{ $name }' cannot be declared the whole truth; { $sheets } can
    .means = A table is declared the whole truth whose rows are never retired.
replaces-nothing = the files hold no table { $sheet } that could replace anything
    .means = A table is declared the whole truth that the files do not bring.
list-not-whole = { $table } has refused rows, so it is not the whole list; no row of the database is retired for it.
    .means = A sheet declared the whole truth has rows that cannot be read.
    .hint = Mend the refused rows and load it again.
no-longer-listed = { $table }: { $rows ->
        [one] one row
       *[other] { $rows } rows
    } of the database { $of ->
        [loom] of looms
        [crew] of crews
       *[other] of suppliers
    } that the list names no longer ({ $who }): have they ended, or do they stay?
    .means = A sheet declared the whole truth does not name some looms, crews or suppliers at all.

## What does not fit the rest of the mill

unknown-article = Article { $article } is not in the list of articles{ $near ->
        [none] {""}
       *[other] ; the nearest is { $near }
    }.
    .means = A warp of an article that is not known.
    .hint = Correct the cell, or load the sheet Articles with it.
hall-without-looms = No loom stands in { $hall }; the halls with looms are { $halls }. The row changes nothing.
    .means = A crew, closure or running time of a hall without looms.
    .hint = Correct the hall if it is a slip.
pilot-of-no-type = { $term }: no loom has the machine type { $type }; there are { $types }.
    .means = A pilot of a machine type that no loom has.
    .hint = Correct it, or the pilot is chosen by cost alone.
pilot-unknown = { $term }: loom { $loom } is not in the loom list.
    .means = A pilot that is no loom of the list.
    .hint = Correct it, or the pilot is chosen by cost alone.
pilot-of-other-type = { $term }: loom { $loom } has the machine type { $types }, not { $type }.
    .means = A pilot of another machine type than said.
    .hint = Correct it, or the pilot is chosen by cost alone.
finish-before-start = The target finish { $finish } is before the start { $start }; no loom can be done by then.
    .means = The terms name a finish before the start.
    .hint = Correct one of the two.
reading-to-come = Loom { $loom }: the warp was read at { $at }{ $others ->
        [0] {""}
       *[other] , and { $others } more of this sheet
    }, later than { $day }.
    .means = A reading of a day to come.
    .hint = Correct the day if it is a slip.

unreadable-break = Crew { $crew }: the break '{ $text }' cannot be read.
    .means = A break of a shift that is no span of hours.
    .hint = Write it as 10:00-10:15, 12:00-12:30.
break-outside-shift = Crew { $crew }: the break { $begin }-{ $until } does not lie inside the shift { $start }-{ $end }.
    .means = A break that is not a part of its shift.
    .hint = Correct the break or the shift.
unknown-crew = There is no crew { $crew }{ $near ->
        [none] {""}
       *[other] ; the nearest is { $near }
    }.
    .means = An absence or overtime of a crew that is not known.
    .hint = Correct the cell, or load the sheet Crews with it.
crew-dates = { $first ->
        [none] always
       *[other] { $first }
    } to { $last ->
        [none] open
       *[other] { $last }
    }
    .means = From when to when a crew is in the list.
outside-crew-dates = Crew { $crew } is not there on { $day } by the sheet Crews ({ $dates }).
    .means = An absence or overtime on a day on which the crew is not in the list.
    .hint = Correct the day, or the dates of the crew.
more-heads-than-crew = Crew { $crew } has { $heads ->
        [one] one head
       *[other] { $heads } heads
    }, and { $away } are to be away.
    .means = More people away than the crew has.
    .hint = Write fewer, or leave the cell empty for all of them.
absences-overlap = Crew { $crew } is away from { $first } to { $last }, and again from { $again } to { $until }.
    .means = Two absences of a crew share days.
    .hint = Give each stretch of days one row, with the heads that are away together.

## Parts and receipts

part-not-listed = Part { $part } is not in the parts list.
    .means = A receipt or kit line of a part that is not known.
    .hint = { $near ->
        [none] {""}
       *[other] Did you mean { $near }?{" "}
    }Add it to the sheet Parts, or mend it.
unit-mismatch = { $how ->
        [ledger] Part { $part } has stock entries in { $kept }; it cannot change to { $unit }.
       *[receipt] Part { $part } is kept in { $kept ->
            [none] no unit
           *[other] { $kept }
        }, not in { $unit }.
    }
    .means = A quantity in another unit than that of the part.
    .hint = { $how ->
        [ledger] Keep the unit, or list the part in the new unit under another name.
       *[receipt] Give the quantity in the part's unit.
    }
order-line-twice = Order line { $order } is for part { $other } and for part { $part }.
    .means = One order line with two parts.
    .hint = Give each line a number of its own, as { $order }-10 and { $order }-20.
received-already = Order line { $order }: { $received } of part { $part } were received and { $open_quantity } are open; { $quantity } would count them twice.
    .means = A receipt brings more than is still open.
    .hint = Give what is still open, or a new line number for what comes beside it.
quantity-impossible = Part { $part }: { QUANTITY($quantity) } { $wrong }.
    .means = A quantity finer than its unit is counted, or beyond all bounds.
    .hint = Correct the cell, or list the part in the unit that it is counted in.

## While lists are read

reading-file = reading { $file }
    .means = Which file is being opened.
reading-tables = reading the tables
    .means = The files are open, their tables are being read.
