### What is written: files, workbooks, standard output, the port of the screens.

target-ending = { $target }: the name must end in { $endings }
    .means = A file was to be written under an ending that is not its kind's.
cannot-write = cannot write { $target }: { $why }{ $where ->
        [none] {""}
       *[other] {" "}in { $where }, where it is made first
    }
    .means = A file may not or cannot be written; nothing was.
target-is-database = it is the database
    .means = Why a file may not be written.
    .hint = name another file
folder-missing = there is no folder { $folder }
    .means = Why a file may not be written.
target-is-folder = it is a folder
    .means = Why a file may not be written.
target-no-file = it is no ordinary file
    .means = Why a file may not be written: it is a device or a pipe.
    .terminal = - is standard output where JSON is asked for
target-denied = permission denied
    .means = Why a file may not be written.
target-there = { $name } is there already{ $how ->
        [changed] , and not as this programme wrote it
       *[unmarked] {""}
    }
    .means = Why a file may not be written: somebody else made it or has worked in it.
    .hint = name another file
    .terminal = name another file, or replace it with --force
cannot-make-folder = cannot make the folder { $folder }: { $why }
    .means = A folder for what is to be written cannot be made.
not-told = { $what }; all else was done
    .means = The work is done and saved, and what there was to tell could not be written.
output-refused = cannot write to standard output: { $why }
    .means = Standard output takes nothing more.

## Workbooks

sheet-too-large = sheet { $sheet }: { $rows } rows × { $columns } columns are more than a workbook holds ({ $most_rows } × { $most_columns })
    .means = A table is larger than a sheet can be.
number-not-held = { QUANTITY($value) } is no number that a workbook can hold
    .means = A cell would hold an infinite number.
text-too-long = the text '{ $begins }'… has { $length } characters; a cell holds { $most }
    .means = A text is longer than a cell can be.
    .hint = shorten it
one-table-to-csv = { $target }: a .csv holds one table
    .means = Several tables were to be written to one text table.
    .hint = name one of { $tables }, or write an .xlsx
marked-over-itself = { $target }: the marked copy would overwrite { $what ->
        [workbook] the workbook itself
       *[file] the file itself
    }
    .means = A marked copy was given the name of what it marks.
    .hint = give it another name
marked-values-only = { $target } holds a copy of the values of { $file } with the marks: such a file cannot be marked itself, so formats and formulas stay behind.
    .means = Only an xlsx can be marked as it is; the copy of another file has its values.
marked-impossible = { $file }: no marked copy can be made of this workbook ({ $why })
    .means = The workbook breaks the rules of its format where a mark would stand.
marked-ending = { $target }: the name of the marked copy of { $file } must end in { $ending }
    .means = A marked copy is of the same kind as its workbook.
marked-endings = { $target }: the name of the marked copies must end in .xlsx
    .means = The copies of several files share the beginning of one name.
report-alone = '{ $name }' is a report of its own
    .means = A report was to be exported together with tables.
    .hint = export it alone
table-unknown = there is no table '{ $name }'; the tables are { $tables }, the reports { $reports }
    .means = A table was to be exported that there is not.
loom-field-unknown = looms have no '{ $name }'; they have { $names }
    .means = The origin of a value was asked for that looms do not have.

## The screens

port-impossible = port { $port } is not between 1 and 65535
    .means = A port was given that there is not.
port-denied = port { $port } on { $address } may not be used by this user
    .means = Low ports are for the system.
    .terminal = choose one above 1023: --port 8501
port-taken = port { $port } on { $address } is taken
    .means = Another program listens there.
    .terminal = choose another: --port { $other }
screens-missing = the dashboards are not installed
    .means = The distribution is not whole.
    .hint = install the distribution again
screens-ended = the screens ended while they started
    .means = The screens' server failed at once.
    .hint = what stands above says why
screens-slow = the screens did not start within { $seconds } s
    .means = The screens' server did not answer in time.
