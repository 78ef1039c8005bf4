### Undoing what was loaded or recorded, and saves whose ground has moved.

## Undo

word-undo = undo
    .means = What a role may do: undo what was loaded or recorded.
undone = { $number } is undone: { $back }{ $left ->
        [0] {""}
        [one] ; one other stays, since it was changed since
       *[other] ; { $left } others stay, since they were changed since
    }.
    .means = A load or record was undone.
    .terminal = `beamslot undo { $by }` takes that back.
undo-question = Undo { $number }, by { $who } on { $at }: { $back }?
    .means = Asked before a load or record is undone.
undo-so-many = { $what ->
        [values] { $n ->
            [one] one value as before
           *[other] { $n } values as before
        }
        [rows-in] { $n ->
            [one] one row put in again
           *[other] { $n } rows put in again
        }
        [rows-out] { $n ->
            [one] one row taken out
           *[other] { $n } rows taken out
        }
        [withdrawn] { $n ->
            [one] one row of the records withdrawn
           *[other] { $n } rows of the records withdrawn
        }
        [counting] { $n ->
            [one] one withdrawn row counts again
           *[other] { $n } withdrawn rows count again
        }
        [entries] { $n ->
            [one] one counter entry in the stockroom
           *[other] { $n } counter entries in the stockroom
        }
        [held] { $n ->
            [one] one part held as before
           *[other] { $n } parts held as before
        }
       *[answers] { $n ->
            [one] one answer as before
           *[other] { $n } answers as before
        }
    } ({ $of }{ $more ->
        [0] {""}
       *[other] {" "}…
    })
    .means = What an undo brings back, kind by kind.
undo-method-back = the method as in version { $version }
    .means = An undo brings an earlier version of the method into force.
undo-why = undo of { $number }
    .means = The reason that stands with what an undo writes.
undo-unknown = nothing was done under the number { $number }
    .means = The number to be undone is none of the account of who did what, or it is older than that account.
    .hint = the list of changes has the numbers
    .terminal = `beamslot audit` shows the numbers
undone-already = { $number } was undone already: by { $who } on { $at }, under the number { $by }
    .means = The same thing is undone twice.
    .hint = undo { $by } to have it back
undo-never = { $kind ->
        [plan] { $number } made or published a plan, which is not undone: people, parts and orders go by it
        [rehearsal] { $number } rehearsed a plan, which changed nothing
        [person] { $number } changed an account, which is not undone: who was locked out would be let in
        [door] { $number } is somebody at the sign-in, which changed nothing
       *[nothing] { $number } changed nothing that could be brought back
    }
    .means = What was done under the number cannot be undone.
    .hint = { $kind ->
        [plan] publish an earlier plan again, or plan anew
        [person] change the account anew
       *[nothing] there is nothing to do
    }
    .terminal = { $kind ->
        [plan] `beamslot plan --number N --publish` publishes an earlier one again
        [person] `beamslot people` changes accounts
       *[nothing] there is nothing to do
    }
undo-nothing-left = of { $number } nothing is left to undo{ $moved ->
        [none] {""}
       *[other] : { $moved }
    }
    .means = All that was done is as before already, or was changed since.
undo-changed-since = { $number } is not undone, since { $many ->
        [one] one thing was changed since
       *[other] { $many } things were changed since
    }: { $first }{ $more ->
        [0] {""}
       *[other] {" "}(and { $more } more)
    }. Nothing was written.
    .means = Others changed what would be undone.
    .hint = The others can be undone without it.
    .terminal = `beamslot undo { $number } --rest` undoes the others.
undo-moved = { $what }: { $then } then, { $now } now{ $who ->
        [none] {""}
       *[other] {" "}(by { $who } on { $at })
    }
    .means = One value or row that was changed after what is to be undone.
undo-value = { $sheet } ({ $row }){ $field ->
        [none] {""}
       *[other] {" "}{ $field }
    }
    .means = A value of a row of a sheet, or the row.
undo-there = there
    .means = A row was there.
undo-gone = gone
    .means = A row is no longer there.
undo-there-again = there again
    .means = A row that had ended was put in again.
undo-rested-on = in use by { $by }
    .means = A row that cannot be taken out, since another names it.
undo-history = what was done with it
    .means = Plans, stages and other history that name a row.
undo-recorded-since = recorded since
    .means = Something was told of a conversion after its beginning was recorded.
undo-withdrawn = withdrawn
    .means = A record was withdrawn.
undo-stage = stage of loom { $loom }
    .means = Where a loom stands.
undo-stock = stock of { $part }
    .means = What is on hand of a part.
undo-held = { $part } held for loom { $loom }
    .means = What is held of a part for a loom.
undo-method = version of the method
    .means = Which version of the method is in force.
undo-answer = answer to { $question }
    .means = What was answered to a doubt.
undo-parts-stay = { $parts } stays in the list of parts without stock, since the stockroom's book names it
    .means = Parts that a load added and that have entries in the book are not taken out by an undo.
undo-method-stays = the method stays, since there was none before it
    .means = The first method is not undone.
    .hint = load another
undo-plan-again = plan { $plan } was published since, by what is undone now
    .means = A plan rests on what an undo takes back.
    .hint = plan again
deed-undone = undid { $number }
    .means = Something was undone.

## Saves whose ground has moved

ground-moved = not saved, since what was shown here has changed meanwhile: { $first }{ $more ->
        [0] {""}
       *[other] {" "}(and { $more } more)
    }. Nothing was written.
    .means = Somebody else changed a value while a form that would overwrite it was open.
    .hint = What you typed is still here; sent again, it takes the place of the other.
ground-roles = roles of { $person }
    .means = The roles of an account.
ground-plan = published plan
    .means = Which plan is in force.
