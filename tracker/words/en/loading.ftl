### Loads: why nothing was written.

load-question = 1 question is open, nothing was written: { $where }{ $what }
    .means = A load is stopped by one open question; it is asked again until it is answered.
load-questions = { $many } questions are open, nothing was written: { $places }.
    .means = A load is stopped by several open questions.
    .terminal = Answer each with --answer.
    .screen = Answer them below.
load-refusal = 1 refusal, nothing was written: { $where }{ $what }
    .means = A load is stopped by one row that cannot be.
    .terminal = Or load the rest with --partial.
    .screen = Or leave the row out and load the rest.
load-refusals = { $many } refusals, nothing was written: { $places }.
    .means = A load is stopped by several rows that cannot be.
    .terminal = Mend them, or load the rest with --partial.
    .screen = Mend them, or leave the rows out and load the rest.
method-refused = the method is refused; the version in force stays
    .means = The sheets of the method contradict themselves or the mill.
demo-not-loaded = the sample workbooks do not load into { $database }: { $why }
    .means = The demonstration was started over a database that is not its own.
demo-not-alone = { $database } holds more than the sample mill
    .means = The demonstration was started over a database that is not its own.
    .hint = name another folder
    .terminal = name another folder with --dir

## What was loaded

loaded = Loaded: { $added ->
        [one] 1 row
       *[other] { $added } rows
    } added, { $changed } changed{ $retired ->
        [0] .{ $added ->
            [0] { $changed ->
                [0] {" "}Nothing had changed.
               *[other] {""}
            }
           *[other] {""}
        }
       *[other] , { $retired } retired.
    }
    .means = What a load wrote.
would-load = Would load: { $added ->
        [one] 1 row
       *[other] { $added } rows
    } added, { $changed } changed{ $retired ->
        [0] {""}
       *[other] , { $retired } retired
    }. Nothing was written.
    .means = What a load that was only tried would write.
value-changed = { $sheet } { $row }: { $heading } { $old } → { $new }
    .means = A value that a load changes.
more-values-changed = … and { $many ->
        [one] 1 more value
       *[other] { $many } more values
    } changed
    .means = The tail of the values that a load changes.
    .terminal = all of them with --json FILE
row-retired = { $sheet } { $row }: { $done ->
        [yes] retired
       *[no] would be retired
    }; the list has it no longer.
    .means = A row has ended by a sheet that is the whole list.
rows-not-in-files = { $sheet }: { $many ->
        [one] 1 row
       *[other] { $many } rows
    } of the database not in these files; they stay.
    .means = The files do not have rows that the database has.
method-version-first = Method version { $version }{ $version ->
        [1] {" "}is the first.
       *[other] .
    }
    .means = A load brought a method, and there is none before it to compare it with.
method-version = Method version { $version } changes the scope of { $looms ->
        [0] no loom
        [one] 1 loom
       *[other] { $looms } looms
    }:
    .means = A load brought another method than the one in force.
method-changes = {"  "}{ $what }
    .means = One of the things that a new method changes.
stock-given-up = Less is there than was held: { $looms }.
    .means = A load of stock leaves less than was reserved.
    .hint = The kits show what each loom lacks.
    .terminal = `beamslot kits` shows what each kit lacks.
loom-gives-up = loom { $loom } gives up { $parts }
    .means = What a loom loses of what was reserved for it.
marked-none = No marked copy was written: there are no findings.
    .means = A marked copy was asked for and there is nothing to mark.
marked-written = Wrote the marked copy { $file }.
    .means = A copy of a file was written with its findings marked.
still-to-load = { $table ->
        [looms] a loom list
        [operations] a method
       *[other] { $table }
    } (sheet { $sheet })
    .means = A plan rests on this and it is not in the database.
