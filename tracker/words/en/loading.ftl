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
